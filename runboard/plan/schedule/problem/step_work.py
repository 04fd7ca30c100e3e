"""What the loads of a step have in common: how long each part takes, what it draws on, who may do it, what it leaves wet."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Any

from runboard.plan.schedule.problem.nouns import TICK, Block, Draws, Stretch
from runboard.run.air import coat_of
from runboard.run.resting import wait_after
from runboard.run.route import Route, Step
from runboard.run.rules import has_skill
from runboard.run.state import RunState, Tray
from runboard.shop.book import Book
from runboard.shop.parts import LoadContents, Part, parts

# How long a part of a load takes: the book's own times, or those that were learned.
Estimate = Callable[[RunState, Step, Part], timedelta]
Stretches = tuple[Stretch, ...]


def as_written(run: RunState, step: Step, part: Part) -> timedelta:
    """The time that the route says."""
    return part.length


def ticks(span: timedelta) -> int:
    """Whole ticks that hold a span."""
    return max(0, -(-span // TICK))


@dataclass(frozen=True)
class _Common:
    """What every block of a step is like; ``people`` where nobody in particular was given it."""

    station: int
    people: tuple[int, ...]
    holds: Draws
    wet: int
    airs: int | None
    last: bool


class StepWork:
    """The steps of a book's open runs, each looked at once for one problem: most of their loads are alike."""

    def __init__(self, book: Book, estimate: Estimate) -> None:
        self.book, self.estimate = book, estimate
        self.people = [one for one in book.people if not one.removed]
        self.room_at = {room.key: at for at, room in enumerate(book.rooms)}
        self.station_at = {station.key: at for at, station in enumerate(book.stations)}
        self.service_at = {service.key: at for at, service in enumerate(book.services)}
        self.person_at = {person.key: at for at, person in enumerate(self.people)}
        self._common: dict[tuple[str, str, int], _Common] = {}
        self._setups: dict[tuple[str, int], int] = {}
        self._stretches: dict[tuple[str, int, int], tuple[Stretches, Stretches]] = {}

    def block(
        self, index: int, run: RunState, step: Step, load: str, trays: tuple[str, ...], pieces: int, stretches: Stretches,
        **more: Any,
    ) -> Block:  # fmt: skip
        """A block of a load, with ``more`` of its fields."""
        common = self._of(run, step, run.trays[trays[0]])
        return Block(
            index=index,
            run=run.id,
            load=load,
            step=step.key,
            operation=step.operation.key,
            trays=trays,
            pieces=pieces,
            station=common.station,
            stretches=stretches,
            people=self._given(run, step, trays, common.people),
            family=f"{run.id}|{step.key}",
            holds=common.holds,
            wet=common.wet,
            airs=common.airs,
            last=common.last,
            **more,
        )

    def setup(self, run: RunState, step: Step) -> int:
        """The ticks of a step's setup."""
        key = run.id, id(step)
        if key not in self._setups:
            self._setups[key] = ticks(self.estimate(run, step, Part("setup", step.pass_.setup, "hands-on")))
        return self._setups[key]

    def stretches(self, run: RunState, step: Step, pieces: int) -> tuple[Stretches, Stretches]:
        """(up to the machine's end, what follows it); all of hand work is in the second, without a first."""
        key = run.id, id(step), pieces  # two revisions may have other times under one key
        if key not in self._stretches:
            self._stretches[key] = self._made(run, step, pieces)
        return self._stretches[key]

    def draws(self, services: Mapping[str, int]) -> Draws:
        """(service, how many) by number, of those that the book has."""
        return tuple((self.service_at[key], count) for key, count in services.items() if key in self.service_at)

    def _made(self, run: RunState, step: Step, pieces: int) -> tuple[Stretches, Stretches]:
        station = self.book.station(step.operation.station)
        found = parts(step.operation, LoadContents(step.pass_.key, pieces), station)
        first: list[Stretch] = []
        second: list[Stretch] = []
        for part in found:
            if part.kind in ("setup", "wait"):
                continue
            there = first if part.kind in ("loading", "machine") else second
            offset = there[-1].offset + there[-1].length if there else 0
            length = max(1, ticks(self.estimate(run, step, part)))
            there.append(Stretch(part.kind, offset, length, part.attendance, self.draws(part.services)))
        if not first and not second:  # nobody said how long: it must be done all the same
            second.append(Stretch("hand", 0, 1, "hands-on"))
        return tuple(first), tuple(second)

    def _of(self, run: RunState, step: Step, tray: Tray) -> _Common:
        key = run.id, step.key, tray.revision
        if key not in self._common:
            self._common[key] = self._looked_at(run.route_of(tray), step)
        return self._common[key]

    def _looked_at(self, route: Route, step: Step) -> _Common:
        operation = step.operation
        wait, coat = wait_after(self.book, route, step), coat_of(self.book, route, step)
        able = (one for one in self.people if has_skill(one, operation))
        return _Common(
            self.station_at.get(operation.station, -1),
            tuple(self.person_at[one.key] for one in able),
            self.draws(wait.holds) if wait is not None else (),
            ticks(coat.wet) if coat is not None else 0,
            ticks(coat.airs) if coat is not None and coat.airs is not None else None,
            not route.after(step.key),
        )

    def _given(self, run: RunState, step: Step, trays: tuple[str, ...], able: tuple[int, ...]) -> tuple[int, ...]:
        """Of those able to do it, whoever the lead gave it to."""
        if not run.given:
            return able
        given = {run.given[f"{step.key}|{tray}"]["to"] for tray in trays if f"{step.key}|{tray}" in run.given}
        return tuple(at for at in able if not given or self.people[at].key in given)
