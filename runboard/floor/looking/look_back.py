"""Looking back: a run's time elements, what happened to a tray, and what people's ears and lungs met on the last days."""

from datetime import timedelta

from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.review.exposure import Exposure, exposures
from runboard.review.history import Entry, tray_history
from runboard.review.time_study import Element, loads_after_a_change, time_elements
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.hours import local_day


def study_run(workshop: Workshop, run: str) -> tuple[RunState, list[Element]]:
    """The run and its time elements. Refused 'run unknown'."""
    with workshop.lock:  # what is read goes on being written; what is reckoned of it holds up nobody
        found, state = find_run(workshop, run), workshop.ledger.state
        events, arrived = list(workshop.ledger.held), dict(workshop.ledger.arrived)
    return found, time_elements(found, arrived, workshop.clock.now(), loads_after_a_change(state, run, events))


def history_of(workshop: Workshop, run: str, tray: str) -> list[Entry]:
    """What happened to a tray. Refused 'run unknown', 'tray unknown'."""
    with workshop.lock:
        found = find_run(workshop, run)
        arrived, unsettled = dict(workshop.ledger.arrived), workshop.ledger.state.unsettled
    if tray not in found.trays:
        raise Refused("tray unknown", tray=tray)
    return tray_history(found, tray, arrived, unsettled)


def exposures_of_days(workshop: Workshop, days: int) -> list[Exposure]:
    """Noise and dust of each person on the last so many days of the shop, today among them, the newest first."""
    with workshop.lock:
        catch_up(workshop)
        book, state, events = workshop.ledger.book, workshop.ledger.state, list(workshop.ledger.held)
    now = workshop.clock.now()
    today = local_day(now, book.time_zone)
    return exposures(book, state, events, [today - timedelta(days=back) for back in range(days)], now)
