"""What each person's ears and lungs met on each day of the shop, reckoned from presses and the stations' own figures.

It is information and no measurement: nobody wore a dosemeter, no air was sampled. Hands at a station count at its figure
for the whole of their span, setting up and loading included, and so does watching its running machine; what others do
nearby is not in it. Where one person is at several stations at once, their sound levels add by energy, as those of
separate sources do, and the minutes count once. A station without a figure is not taken as quiet: its time is named.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from itertools import pairwise

from runboard.review.noise import NoiseRule, dose, level_of_day, level_together
from runboard.review.stays import Stay, stays
from runboard.run.fold.state import ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.hours import day_bounds, local_day
from runboard.shop.product import ZERO


@dataclass(frozen=True)
class Exposure:
    """One person's day. ``dose`` is the noise in per cent of the shop's rule, ``level`` the constant level of eight hours
    with the same dose (TWA, dB(A)), both ``None`` where no station had a figure. ``unknown`` has the time at each station
    without one. ``dust`` is the time at stations that make dust, ``dust_open`` the part of it without extraction.
    ``going_on`` means counted until now."""

    day: date
    person: str
    dose: float | None
    level: float | None
    heard: timedelta
    unknown: Mapping[str, timedelta]
    dust: timedelta
    dust_open: timedelta
    going_on: bool

    @property
    def is_over(self) -> bool:
        """Whether what is known makes more than the shop's rule allows for a day."""
        return self.dose is not None and self.dose > 100


def noise_rule(book: Book) -> NoiseRule:
    """The shop's own rule."""
    return NoiseRule(book.noise_limit_db, book.noise_exchange_db)


def exposures(
    book: Book, state: ShopState, events: Iterable[Event], days: Sequence[date], now: datetime
) -> list[Exposure]:
    """Each person's days among ``days``, the newest first; days without a stay are left out. ``events`` are those that
    hold, in the fold's order."""
    if not days:
        return []
    zone = book.time_zone
    from_ = day_bounds(min(days), zone)[0]
    found: dict[tuple[date, str], list[Stay]] = {}
    for stay in stays(book, state, events, from_, now):
        for day, part in _by_day(stay, zone):
            if day in days:
                found.setdefault((day, part.person), []).append(part)
    made = [_exposure(book, day, person, here) for (day, person), here in found.items()]
    return sorted(made, key=lambda exposure: (-exposure.day.toordinal(), exposure.person))


def _by_day(stay: Stay, zone: str) -> Iterator[tuple[date, Stay]]:
    """A stay cut at the shop's midnights."""
    began = stay.began_at
    while began < stay.ended_at:
        day = local_day(began, zone)
        ended = min(stay.ended_at, day_bounds(day, zone)[1])
        yield day, replace(stay, began_at=began, ended_at=ended, going_on=stay.going_on and ended == stay.ended_at)
        began = ended


def _exposure(book: Book, day: date, person: str, here: list[Stay]) -> Exposure:
    figures = {station.key: station.noise_db for station in book.stations}
    dusty = {station.key for station in book.stations if station.dusty}
    heard: list[tuple[float, timedelta]] = []
    unknown: dict[str, timedelta] = {}
    dust = dust_open = ZERO
    for length, at_once in _slices(here):
        at = {stay.station for stay in at_once}
        level = level_together(figure for key in at if (figure := figures.get(key)) is not None)
        if level is not None:
            heard.append((level, length))
        for key in at:
            if figures.get(key) is None:
                unknown[key] = unknown.get(key, ZERO) + length
        dusts = [stay for stay in at_once if stay.station in dusty]
        dust += length if dusts else ZERO
        dust_open += length if any(not stay.extracted for stay in dusts) else ZERO
    rule = noise_rule(book)
    percent = dose(heard, rule) if heard else None
    return Exposure(
        day,
        person,
        percent,
        None if percent is None else level_of_day(percent, rule),
        sum((length for _, length in heard), ZERO),
        unknown,
        dust,
        dust_open,
        any(stay.going_on for stay in here),
    )


def _slices(here: Iterable[Stay]) -> Iterator[tuple[timedelta, list[Stay]]]:
    """The stretches between any two beginnings and ends, each with the stays that it lies in."""
    here = list(here)
    cuts = sorted({moment for stay in here for moment in (stay.began_at, stay.ended_at)})
    for start, end in pairwise(cuts):
        at_once = [stay for stay in here if stay.began_at <= start and end <= stay.ended_at]
        if at_once:
            yield end - start, at_once
