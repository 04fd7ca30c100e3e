"""What was learned of how long something takes says nothing of it once a change is adopted: what the change promises is
believed from then on, until it is measured."""

from datetime import timedelta

from runboard.floor.changing.runs import new_event
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.workshop import Workshop
from runboard.plan.change import Change
from runboard.review.changes.believed import believed_with
from runboard.run.change import replace
from runboard.run.fold.state import RunState
from runboard.run.log.event import Event


def promised_times(
    workshop: Workshop, run: RunState, change: Change, adoption: str, why: str, person: str
) -> list[Event]:
    """An event for each time element that a change alters and of which more is known than the route says: so long it takes
    from now on. Their ids follow from that of the ``adoption``, so that they can be taken back with it."""
    made: list[Event] = []
    for (step, kind), known in believed_with(run, estimates_now(workshop), change).items():
        minutes = round(known.after / timedelta(minutes=1), 3)
        body = {"of": run.product, "step": step, "kind": kind, "minutes": minutes, "why": why}
        event = new_event(workshop, "time overruled", body, person=person, device="server")
        made.append(replace(event, id=f"{adoption}-{len(made) + 1}"))
    return made


def taken_back(workshop: Workshop, adoption: str, person: str) -> list[Event]:
    """What takes back those times that were promised with an adoption."""
    said = (one for some in workshop.ledger.state.overruled.values() for one in some)
    mine = sorted(one.event for one in said if one.event.rpartition("-")[0] == adoption)
    return [new_event(workshop, "event undone", {"event": event}, person=person, device="server") for event in mine]
