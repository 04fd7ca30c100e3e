"""Whose open pages would sound now, and which devices are whose: known by their asking, and forgotten at a restart."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.run.calls.climb import asked_first, is_asked_of_all
from runboard.run.calls.dues import Due

# A page in sight asks every two seconds. One that a slow network keeps from asking for longer counts as silent: then
# everybody is asked at once.
LISTENS_FOR = timedelta(seconds=12)


@dataclass
class Pages:
    """When a page in sight with its sound on last asked, by person; and as whom each device asked last."""

    heard: dict[str, datetime] = field(default_factory=dict)
    devices: dict[str, str] = field(default_factory=dict)


def note_page(workshop: Workshop, person: str, device: str, hears: bool) -> None:
    """A page asked for the state as ``person``; ``hears`` if it is in sight and may sound."""
    with workshop.lock:
        if workshop.book.person(person) is None and person not in workshop.ledger.state.people:
            return
        pages = _pages(workshop)
        if device:
            pages.devices[device] = person
        if hears:
            pages.heard[person] = workshop.clock.now()


def listening(workshop: Workshop, now: datetime) -> frozenset[str]:
    """The people who have a page in sight that may sound."""
    return frozenset(person for person, at in _pages(workshop).heard.items() if now - at <= LISTENS_FOR)


def pushed_to(workshop: Workshop, due: Due) -> list[str]:
    """The devices that are sent an alert by now: '' alone for all; of a look that its watcher hears, only theirs at first."""
    with workshop.lock:
        catch_up(workshop)
        now = workshop.clock.now()
        first = asked_first(workshop.ledger.state, due, listening(workshop, now))
        if not first or is_asked_of_all(due, now):
            return [""]
        devices: Mapping[str, str] = _pages(workshop).devices
        return [device for device, person in devices.items() if person == first]


def _pages(workshop: Workshop) -> Pages:
    pages: Pages = workshop.kept.setdefault("pages", Pages())
    return pages
