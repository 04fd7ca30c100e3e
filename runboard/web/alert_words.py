"""An alert as a message that leaves the building: the same words as on the pages."""

from typing import Any

from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.run.climb import subject_kind
from runboard.run.dues import Due
from runboard.web.sentences import say, zone_of


def alert_words(workshop: Workshop, due: Due) -> tuple[str, str]:
    """(title, body): 'The laser has ended', since when, and how to answer. It never says what may be left alone."""
    with workshop.lock:
        catch_up(workshop)
        book, run = workshop.book, workshop.ledger.state.runs.get(due.run)
    station, person = book.station(due.station), book.person(due.person)
    route = run.route_of(run.trays[due.tray]) if run and due.tray in run.trays else run.route if run else None
    names = [step.name for step in route.steps] if route else []
    keys = [step.key for step in route.steps] if route else []
    at = keys.index(due.step) if due.step in keys else None
    facts: dict[str, Any] = {
        "station": station.name if station else due.station,
        "tray": due.tray,
        "step": due.step if at is None else names[at],
        "next": "" if at is None or at + 1 == len(names) else names[at + 1],
        "person": person.name if person else "",
        "room": next((room.name for room in book.rooms if station and room.key == station.room), ""),
        "supply": due.id.split("|")[2] if due.kind == "supply due" else "",
    }
    zone = zone_of(book.time_zone)
    alert = say("alert", subject_kind(due), facts, zone=zone)
    return alert, say("outside", "body", {"at": due.due_at}, zone=zone)


def words_of_a_test(workshop: Workshop) -> tuple[str, str]:
    """(title, body) of a test, which cannot be taken for an alert."""
    name = workshop.books.latest().name
    return say("outside", "test title", {"shop": name}), say("outside", "test body")
