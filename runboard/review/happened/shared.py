"""When what several share was taken: services at work and by what rests, and the air of rooms."""

from collections.abc import Iterator
from datetime import datetime, timedelta

from runboard.review.happened.tiles import Spans
from runboard.review.happened.worked import Work, Worked
from runboard.run.rules.air import Coat, coat_of
from runboard.run.rules.services import drawn_by, held_after
from runboard.shop.book import Station
from runboard.shop.hours import Span
from runboard.shop.product import ZERO

_Use = tuple[datetime, datetime, int]


class Shared:
    """By the rules that Now offers loads by, said of a time that is past."""

    def __init__(self, work: Work) -> None:
        self._work, self._book = work, work.past.book
        self._uses: dict[str, list[_Use]] = {}
        self._freed: set[tuple[str, str, str, datetime]] = set()
        self._full: dict[tuple[str, int], Spans] = {}
        self._off: dict[str, Spans] = {}
        self._at_work: dict[tuple[str, bool], Spans] = {}
        self._coats: dict[tuple[str, int, str], Coat | None] = {}
        for worked in work.loads:
            self._note(worked)

    def _note(self, worked: Worked) -> None:
        spans = [(stretch.began_at, stretch.ended_at) for stretch in self._work.of_load.get(worked.number, ())]
        for service in drawn_by(worked.step, worked.station):
            self._uses.setdefault(service, []).extend((*span, 1) for span in Spans(spans).all)
        if worked.step is None or not worked.is_over or worked.load.state == "off":
            return
        route = worked.run.route_at(worked.run.revision_of(worked.load))
        pieces = {tray: worked.load.pieces[tray] for tray in worked.trays}
        holds = held_after(self._book, route, worked.step, pieces) if pieces else {}
        if holds:
            until = max(self._gone_on(worked, tray) for tray in pieces)
            for service, count in holds.items():
                self._uses.setdefault(service, []).append((worked.ended_at, until, count))
                self._freed |= {(worked.run.id, tray, service, until) for tray in pieces}

    def _gone_on(self, worked: Worked, tray: str) -> datetime:
        """When somebody took a tray on after a load."""
        rest = worked.run.trays[tray].rests.get(worked.load.step)
        if rest is not None and rest.ended_at is not None and rest.ended_at >= worked.ended_at:
            return min(rest.ended_at, self._work.closes)
        after = self._work.of_tray[worked.run.id, tray]
        return min(
            (one.began_at for one in after if one.began_at >= worked.ended_at and one is not worked),
            default=self._work.closes,
        )

    # services

    def taken(self, worked: Worked) -> Iterator[tuple[str, Spans]]:
        """When each service that a load asked for had not enough left for it."""
        if worked.step is None:
            return
        route = worked.run.route_at(worked.run.revision_of(worked.load))
        pieces = {tray: worked.load.pieces[tray] for tray in worked.trays}
        needs = dict.fromkeys(drawn_by(worked.step, worked.station), 1)
        for service, count in (held_after(self._book, route, worked.step, pieces) if pieces else {}).items():
            needs[service] = max(count, needs.get(service, 0))
        for service, count in needs.items():
            own = ((worked.run.id, tray, service, worked.began_at) in self._freed for tray in pieces)
            if not any(own):
                yield service, self._full_for(service, count)

    def _full_for(self, service: str, count: int) -> Spans:
        if (service, count) not in self._full:
            capacity = {known.key: known.capacity for known in self._book.services}.get(service)
            spans = [] if capacity is None else list(_over(self._uses.get(service, ()), max(0, capacity - count)))
            self._full[service, count] = Spans(spans)
        return self._full[service, count]

    # air

    def off_air(self, worked: Worked) -> Iterator[Spans]:
        """When a coat in its room kept a load off, or work in the room that a coat is kept from."""
        station = worked.station
        if station is None:
            return
        if station.key not in self._off:
            self._off[station.key] = Spans(self._coats_near(station))
        yield self._off[station.key]
        coat = self._coat(worked)
        if coat is not None:
            key = (station.room, coat.airs is not None)
            if key not in self._at_work:
                self._at_work[key] = Spans(self._work_beside(station.room, coat))
            yield self._at_work[key]

    def _coat(self, worked: Worked) -> Coat | None:
        revision = worked.run.revision_of(worked.load)
        key = (worked.run.id, revision, worked.load.step)
        if key not in self._coats:
            step = worked.step
            self._coats[key] = coat_of(self._book, worked.run.route_at(revision), step) if step else None
        return self._coats[key]

    def _coats_near(self, station: Station) -> Iterator[Span]:
        for worked in self._work.loads:
            coat = self._coat(worked) if worked.room == station.room else None
            off = coat.keeps_off(station) if coat is not None else None
            if coat is not None and off is not None:
                wet = [self._gone_on(worked, tray) for tray in worked.trays] if worked.is_over else []
                until = worked.ended_at + off
                yield worked.began_at, max(worked.ended_at + (coat.airs or ZERO), min([until, *wet]))

    def _work_beside(self, room: str, coat: Coat) -> Iterator[Span]:
        stations = {one.key for one in self._book.stations if one.room == room and coat.keeps_off(one) is not None}
        return (
            (stretch.began_at, stretch.ended_at)
            for stretch in self._work.stretches
            if stretch.load.load.station in stations
        )


def _over(uses: "list[_Use] | tuple[()]", most: int) -> Iterator[Span]:
    """When more than so many are in use."""
    turns: dict[datetime, int] = {}
    for began, ended, count in uses:
        if ended - began > timedelta(0):
            turns[began] = turns.get(began, 0) + count
            turns[ended] = turns.get(ended, 0) - count
    used, since = 0, None
    for moment in sorted(turns):
        used += turns[moment]
        if used > most and since is None:
            since = moment
        elif used <= most and since is not None:
            yield since, moment
            since = None
