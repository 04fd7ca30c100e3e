"""Putting right what the log holds ahead of now: a server whose clock was wrong for a while, an old version's trust."""

from typing import Any

from runboard.floor.changing.runs import new_event
from runboard.floor.workshop import Workshop
from runboard.floor.writing import writing
from runboard.run.change import replace
from runboard.run.log.ahead import ahead, corrections
from runboard.run.log.event import Event, write_moment


def told_ahead(workshop: Workshop) -> dict[str, Any]:
    """How many events lie ahead of now, the last of them, and now; nothing where there is none."""
    now = workshop.clock.now()
    found = ahead(workshop.ledger.held, now)
    if not found:
        return {}
    return {"count": len(found), "last_at": write_moment(found[-1].moment), "now": write_moment(now)}


def put_right(workshop: Workshop, person: str = "", device: str = "server") -> int:
    """Correct every event that lies ahead of now; answers how many did. All or nothing.

    No rule of the shop is asked: what happened, happened, and only when is corrected.
    """
    with writing(workshop) as (write, now):
        ledger = workshop.ledger
        found = len(ahead(ledger.held, now))
        made: list[Event] = []
        for kind, body in corrections(ledger.arrived, ledger.held, now):
            event = new_event(workshop, kind, body, person=person, device=device, basis="assumed")
            made.append(replace(event, seq=write.append(event, now)))
        ledger.load(made)
    return found
