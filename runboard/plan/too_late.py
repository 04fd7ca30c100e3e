"""Machines that would be loaded now, were there time: what takes longer than somebody has left today."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.plan.candidates import Scene, candidates, time_left
from runboard.plan.next_move import after_hands, station_at
from runboard.run.fold.state import ShopState
from runboard.shop.book import Book

# With more time left than this nobody thinks of going home yet.
NEAR_THE_END = timedelta(hours=1)


@dataclass(frozen=True)
class TooLate:
    """A machine with work for it, which takes so many ``minutes`` of hands and eyes; work is stopped ``at``."""

    station: str
    run: str
    step: str
    minutes: float
    at: datetime


def too_late(state: ShopState, book: Book, person: str, now: datetime) -> list[TooLate]:
    """What it is too late to load for somebody who has said how long they have: one for each machine."""
    scene = Scene(after_hands(state, book, person, now), book, person, now, station_at(state, person))
    left = time_left(scene)
    if not timedelta(0) < left <= NEAR_THE_END:
        return []
    found: dict[str, TooLate] = {}
    for one in sorted(candidates(scene), key=lambda one: one.length):
        if one.step.has_machine and one.station.key not in found:
            minutes = round(one.length.total_seconds() / 60, 1)
            found[one.station.key] = TooLate(one.station.key, one.run.id, one.step.key, minutes, now + left)
    return [one for one in found.values() if timedelta(minutes=one.minutes) > left]
