"""Decide whether a press is taken: refused by the state if it was made up to date, kept if it was made blind."""

from datetime import timedelta

from runboard.run.change import replace
from runboard.run.fold.draft import Draft
from runboard.run.fold.ledger import Ledger, Trial
from runboard.run.log.corrections import press_ids
from runboard.run.log.event import Event, amended, event_to_json, parse_moment
from runboard.run.log.form import check_form
from runboard.run.log.size import check_run
from runboard.run.refusal import Refused
from runboard.run.rules.rules import check_rules

# What makes a run larger.
SIZING = frozenset(("run opened", "route revised", "orders changed", "board added", "pieces moved"))


def decide(ledger: Ledger, event: Event) -> Trial:
    """The trial to keep, of the event as it is to be stored. Refused where ids are unknown, or where an up-to-date press breaks a rule or does not fit."""
    _ids_are_known(ledger, event)
    event = _in_its_run(ledger, event)
    trial = ledger.try_event(event)
    if event.kind in SIZING and event.run in trial.state.runs:
        check_run(trial.state.runs[event.run], ledger.state.runs.get(event.run))
    if is_blind(ledger, event):
        return trial
    check_rules(Draft(trial.before, ledger.book), event)
    listed = trial.state.unsettled.keys() - ledger.state.unsettled.keys() - _unsettled_again(ledger, event)
    if event.id in listed:
        entry = trial.state.unsettled[event.id]
        raise Refused(entry.code, **entry.facts)
    if listed:
        entry = trial.state.unsettled[min(listed)]
        raise Refused("later press", kind=entry.kind, subject=entry.subject, why=entry.code)
    return trial


def _unsettled_again(ledger: Ledger, event: Event) -> set[str]:
    """What an undo of 'entry settled' lists again, as it should."""
    if event.kind != "event undone":
        return set()
    named = (ledger.arrived.get(key) for key in press_ids(event.get("event")))
    return {event.get("event") for event in named if event is not None and event.kind == "entry settled"}


def is_blind(ledger: Ledger, event: Event) -> bool:
    """Whether another device's event had arrived that the presser did not know of."""
    return event.seen < ledger.foreign_seq(event.device)


def _in_its_run(ledger: Ledger, event: Event) -> Event:
    """Nothing happens to a run before it is opened. A press made blind counts from that moment, by the clock that is
    corrected; any other is refused 'before run', and so is an amendment that would bring its event there."""
    amends = event.kind == "event amended" and event.get("at") is not None
    target = ledger.arrived.get(event.get("event")) if amends else event
    run = ledger.state.runs.get(target.run) if target is not None else None
    if target is None or run is None or target.kind == "run opened":
        return event
    moment = parse_moment(event.get("at")) if amends else event.moment
    if moment >= run.opened_at:
        return event
    if amends or not is_blind(ledger, event):
        raise Refused("before run", run=run.name, opened_at=run.opened_at)
    late = run.opened_at + timedelta(milliseconds=1) - event.at
    return replace(event, offset_ms=round(late.total_seconds() * 1000))


def _ids_are_known(ledger: Ledger, event: Event) -> None:
    state, book = ledger.state, ledger.book
    if event.run and event.run not in state.runs and event.kind != "run opened":
        raise Refused("run unknown", run=event.run)
    if event.station and book.station(event.station) is None and event.station not in state.stations:
        raise Refused("station unknown", station=event.station)
    comes = event.kind == "person came" and event.get("name")  # a guest, who is in no book
    if event.person and not comes and book.person(event.person) is None and event.person not in state.people:
        raise Refused("person unknown", person=event.person)
    if event.run in state.runs and event.tray and event.tray not in state.runs[event.run].trays:
        raise Refused("tray unknown", tray=event.tray)
    if event.kind in ("event undone", "event amended") and not any(
        key in ledger.arrived for key in (event.get("event"), f"{event.get('event')}.2")
    ):
        raise Refused("event unknown", event=event.get("event"))
    if event.kind == "event amended":
        _still_has_a_form(ledger, event)


def _still_has_a_form(ledger: Ledger, event: Event) -> None:
    """What is amended must still be an event: a body without its form would stop the fold."""
    target = ledger.arrived.get(event.get("event"))
    if target is None:
        raise Refused("event unknown", event=event.get("event"))
    check_form({**event_to_json(amended(target, event)), "seq": 0})
