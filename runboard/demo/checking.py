"""What the demo's people look at, find and say they did: the start list, the first piece, a bad piece now and then, and each
reminder of rags, oily dust and burnt cuts soon after it comes."""

from collections.abc import Iterator
from typing import Any

from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.run.care.care import DUST, RAGS, lock_up_reminders
from runboard.run.care.cautions import start_points
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load
from runboard.shop.hours import local_day
from runboard.shop.product import Check

GOOD_RATE = 0.99
REWORK = 0.2
_DONE = {
    "care start": "The lidded metal can with water is ready",
    "care end": "In water in the metal can, lid on",
    "care lock-up": "In water in the metal can, lid on",
    "care again": "Looked again: no smoke, no smell, no warmth",
    "care morning": "Looked: cold, and no smell",
}
_OF_DUST = "The dust is outdoors, in water in the metal can, lid on"
_OF_A_BIN = "Bin emptied outdoors"
_WHY = {"cut": "tear-out", "flatten": "tear-out", "round": "tear-out", "engrave": "engraving", "clean": "crack"}
# Where a piece that does not pass goes back to, and what had been done badly there.
_BACK_TO = {"rails": "hooks", "boards": "oil"}


def list_for(floor: Shopfloor, step: Step) -> list[str]:
    """What is ticked before a machine starts: the catalogue's points for the station, then the operation's own."""
    return [*start_points(floor.book, step.operation), *step.operation.checklist]


def wants_full_list(floor: Shopfloor, load: Load, person: str) -> bool:
    """The full start list: once a session, and again after any change at the station or for another person."""
    station = floor.state.stations.get(load.station)
    session = f"{local_day(floor.now, floor.book.time_zone)}|{station.setups if station else 0}|{person}"
    return station is None or load.fresh or station.listed != session


def answers_to_checks(floor: Shopfloor, load: Load, step: Step) -> list[Draft]:
    """A press for each first-piece check that is open for this load: all of them pass, with a measure near nominal."""
    return [_passed(floor, load, check) for check in step.operation.checks if _is_open(floor, load, check)]


def _is_open(floor: Shopfloor, load: Load, check: Check) -> bool:
    station = floor.state.stations.get(load.station)
    day = f"{station.setups if station else 0}|{local_day(floor.now, floor.book.time_zone)}"
    scope = {"run": "run", "load": load.id, "setup": day}[check.per]
    return f"{load.step}|{scope}|{check.key}" not in floor.state.runs[load.run].first_pieces


def _passed(floor: Shopfloor, load: Load, check: Check) -> Draft:
    body: dict[str, Any] = {"result": "pass", "check": check.key}
    if check.nominal is not None:
        lowest, highest = check.nominal - (check.minus or 0), check.nominal + (check.plus or 0)
        measure = floor.chance.triangular(lowest, highest)
        body["measures"] = {check.key: round(measure, 2)}
    return draft("first piece checked", body, run=load.run, load=load.id, operation=load.step, station=load.station)


def spoiled(floor: Shopfloor, load: Load, step: Step) -> tuple[dict[str, Any], Draft | None]:
    """(counts of the trays in which a piece came out bad, a piece that goes back) for a load that is through."""
    rate = step.operation.good_rate or GOOD_RATE
    counts = {}
    for tray, pieces in load.pieces.items():
        chips = floor.chips.get((step.key, tray), 0)
        bad = chips or sum(floor.chance.random() > rate for _ in range(pieces))
        if bad and pieces > bad:
            why = "chipped" if chips else _WHY.get(step.operation.key, "surface")
            scrap: dict[str, Any] = {"pieces": bad, "why": why}
            places = list(floor.state.runs[load.run].trays[tray].places)
            if places:
                scrap["positions"] = sorted(floor.chance.sample(places, min(bad, len(places))))
            counts[tray] = {"good": pieces - bad, "scrap": [scrap]}
    return counts, None if counts else _rework(floor, load)


def _rework(floor: Shopfloor, load: Load) -> Draft | None:
    """At the inspection one piece may have to go back; it leaves as a tray of its own, and keeps its text."""
    run = floor.state.runs[load.run]
    tray = next(iter(load.pieces))
    back_to = _BACK_TO.get(run.product, "")
    if load.step != "pack" or not tray.isdecimal() or load.pieces[tray] < 2 or f"{tray}a" in run.trays:
        return None
    if floor.chance.random() >= REWORK:
        return None
    body: dict[str, Any] = {"to": f"{tray}a", "pieces": 1, "to_operation": back_to, "why": "rework"}
    body["cause_operation"] = back_to
    places = list(run.trays[tray].places)
    if places:
        body["positions"] = places[-1:]
    return draft("pieces moved", body, run=load.run, tray=tray, operation=load.step)


def answers_to_reminders(floor: Shopfloor) -> Iterator[Draft]:
    """A press for each reminder that is due now."""
    for kind in ("care start", "care end", "care again", "care morning"):
        yield from (_answer(due.id) for due in floor.ringing(kind))


def answers_at_lock_up(floor: Shopfloor) -> list[Draft]:
    """What has to be said about today's rags before a session ends."""
    return [_answer(reminder) for reminder in lock_up_reminders(floor.state, floor.book)]


def _answer(reminder: str) -> Draft:
    kind, thing = reminder.split("|")[:2]
    done = _DONE[kind]
    if kind in ("care end", "care lock-up") and thing != RAGS:
        done = _OF_DUST if thing == DUST else _OF_A_BIN
    return draft("reminder answered", {"reminder": reminder, "done": done})
