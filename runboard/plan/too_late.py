"""Machines that would be loaded now, were there time: what takes longer than somebody has left today."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.plan.candidates import WhoAsks, candidates, time_left
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
    asks = WhoAsks(after_hands(state, book, person, now), book, person, now, station_at(state, person))
    left = time_left(asks)
    if not timedelta(0) < left <= NEAR_THE_END:
        return []
    found: dict[str, TooLate] = {}
    for candidate in sorted(candidates(asks), key=lambda candidate: candidate.length):
        if candidate.step.has_machine and candidate.station.key not in found:
            minutes = round(candidate.length.total_seconds() / 60, 1)
            found[candidate.station.key] = TooLate(
                candidate.station.key, candidate.run.id, candidate.step.key, minutes, now + left
            )
    return [too_late for too_late in found.values() if timedelta(minutes=too_late.minutes) > left]
