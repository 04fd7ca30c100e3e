"""What a problem takes from the book: people and stations with their hours in ticks, and what the loads of a step share."""

from collections.abc import Callable, Iterable, Mapping
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.schedule.problem.nouns import FAR, TICK, Block, Draws, PlannedStation, Span, Stretch, Worker
from runboard.run.fold.draft import Draft
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import PersonState, RunState
from runboard.run.log.event import parse_moment
from runboard.run.rules.air import coat_of, raises_dust
from runboard.run.rules.resting import wait_after
from runboard.run.rules.rules import has_skill
from runboard.shop import book as the_book
from runboard.shop.hours import next_close, open_windows, running_windows
from runboard.shop.parts import LoadContents, Part, parts

# How long a part of a load takes: the book's own times, or those that were learned.
Estimate = Callable[[RunState, Step, Part], timedelta]
Stretches = tuple[Stretch, ...]

# How far ahead hours are laid out.
HORIZON = timedelta(days=120)


def as_written(run: RunState, step: Step, part: Part) -> timedelta:
    """The time that the route says."""
    return part.length


def ticks(span: timedelta) -> int:
    """Whole ticks that hold a span; none of one that is over."""
    return max(0, -(-span // TICK))


def ticks_in(start: datetime, spans: Iterable[tuple[datetime, datetime]]) -> tuple[Span, ...]:
    """Spans in whole ticks, none longer than it is."""
    found = ((-((start - opens) // TICK), (closes - start) // TICK) for opens, closes in spans)
    return tuple((opens, closes) for opens, closes in found if opens < closes)


def windows_of(
    book: the_book.Book, person: the_book.Person, seen: PersonState | None, now: datetime
) -> tuple[Span, ...]:
    """When somebody works: until when they said today, then their usual hours, start-up and tidy-up taken off. Of hours that
    they went home from, or said they would leave, nothing is left."""
    until = seen.until if seen is not None and seen.came_at is not None else None
    left_at = until or (seen.went_at if seen is not None and seen.came_at is None else None)
    cut_short = next_close(person.hours, book.time_zone, left_at) if left_at is not None else None
    usual = open_windows(person.hours, book.time_zone, max(now, until or now, cut_short or now), now + HORIZON)
    said = []
    if until is not None and until > now:
        said = [(now, until - person.tidy_up)]
        usual = [span for span in usual if span[0] > until]
    return ticks_in(now, said + [(opens + person.start_up, closes - person.tidy_up) for opens, closes in usual])


class FromBook:
    """A shop at a moment. Steps are looked at once for one problem, since most of their loads are alike."""

    def __init__(self, draft: Draft, now: datetime, estimate: Estimate) -> None:
        self.draft, self.book, self.now, self.estimate = draft, draft.book, now, estimate
        staff = [person for person in self.book.people if not person.removed]
        self.room_at = {room.key: at for at, room in enumerate(self.book.rooms)}
        self.station_at = {station.key: at for at, station in enumerate(self.book.stations)}
        self.service_at = {service.key: at for at, service in enumerate(self.book.services)}
        self.person_at = {person.key: at for at, person in enumerate(staff)}
        self.people = tuple(map(self._worker, staff))
        self.stations = tuple(map(self._station, self.book.stations))

    # people and stations

    def _worker(self, person: the_book.Person) -> Worker:
        seen = self.draft.base.people.get(person.key)
        room = self.room_at.get(seen.room, -1) if seen is not None else -1
        return Worker(person.key, person.name, windows_of(self.book, person, seen, self.now), room)

    def _station(self, station: the_book.Station) -> PlannedStation:
        seen = self.draft.base.stations.get(station.key)
        near = (
            at for key, at in self.station_at.items() if the_book.may_work_while_watching(self.book, station.key, key)
        )
        return PlannedStation(
            station.key,
            station.name,
            self.room_at.get(station.room, 0),
            frozenset(near),
            self._runs(station, seen.out if seen is not None else None),
            "|".join(seen.setup) if seen is not None and seen.setup else "",
            station.heats,
            raises_dust(station),
        )

    def _runs(self, station: the_book.Station, out: Mapping[str, Any] | None) -> tuple[Span, ...]:
        """When a station may be used: () where it is out of use and nobody knows until when, or that is over and nobody said
        that it is back."""
        back = self.now if out is None or not out.get("until") else parse_moment(out["until"])
        if out is not None and back <= self.now:
            return ()
        if not station.quiet and out is None:
            return ((0, FAR),)
        spans = running_windows(station.quiet, self.book.time_zone, self.now, self.now + HORIZON)
        return ticks_in(self.now, [(max(opens, back), closes) for opens, closes in spans])

    def draws(self, services: Mapping[str, int]) -> Draws:
        """(service, how many) by number, of those that the book has."""
        return tuple((self.service_at[key], count) for key, count in services.items() if key in self.service_at)

    # a step's loads

    def block(self, index: int, run: RunState, step: Step, load: str, pieces: Mapping[str, int]) -> Block:
        """A block of a load, with nothing done in it yet."""
        trays = tuple(pieces)
        route = run.route_of(run.trays[trays[0]])
        able, holds, wet, airs, last = self.draft.once(
            ("step", run.id, step.key, id(route)), lambda: self._looked_at(route, step)
        )
        if run.given:  # of those able to do it, whoever the lead gave it to
            given = {run.given[key]["to"] for tray in trays if (key := f"{step.key}|{tray}") in run.given}
            able = tuple(at for at in able if not given or self.people[at].key in given)
        return Block(
            index, run.id, load, step.key, step.operation.key, trays, sum(pieces.values()),
            self.station_at.get(step.operation.station, -1), (), able, f"{run.id}|{step.key}",
            holds=holds, wet=wet, airs=airs, last=last,
        )  # fmt: skip

    def _looked_at(self, route: Route, step: Step) -> tuple[tuple[int, ...], Draws, int, int | None, bool]:
        able = (
            person for person in self.book.people if person.key in self.person_at and has_skill(person, step.operation)
        )
        wait, coat = wait_after(self.book, route, step), coat_of(self.book, route, step)
        return (
            tuple(self.person_at[person.key] for person in able),
            self.draws(wait.holds) if wait is not None else (),
            ticks(coat.wet) if coat is not None else 0,
            ticks(coat.airs) if coat is not None and coat.airs is not None else None,
            not route.after(step.key),
        )

    def setup(self, run: RunState, step: Step) -> int:
        """The ticks of a step's setup."""
        part = Part("setup", step.pass_.setup, "hands-on")
        found: int = self.draft.once(("setup", run.id, id(step)), lambda: ticks(self.estimate(run, step, part)))
        return found

    def stretches(self, run: RunState, step: Step, pieces: int) -> tuple[Stretches, Stretches]:
        """(up to the machine's end, what follows it); all of hand work is in the second, without a first."""
        key = ("stretches", run.id, id(step), pieces)  # two revisions may have other times under one key
        found: tuple[Stretches, Stretches] = self.draft.once(key, lambda: self._made(run, step, pieces))
        return found

    def _made(self, run: RunState, step: Step, pieces: int) -> tuple[Stretches, Stretches]:
        first: list[Stretch] = []
        second: list[Stretch] = []
        station = self.book.station(step.operation.station)
        for part in parts(step.operation, LoadContents(step.pass_.key, pieces), station):
            if part.kind not in ("setup", "wait"):
                there = first if part.kind in ("loading", "machine") else second
                offset = there[-1].offset + there[-1].length if there else 0
                length = max(1, ticks(self.estimate(run, step, part)))
                there.append(Stretch(part.kind, offset, length, part.attendance, self.draws(part.services)))
        if not first and not second:  # nobody said how long: it must be done all the same
            second.append(Stretch("hand", 0, 1, "hands-on"))
        return tuple(first), tuple(second)
