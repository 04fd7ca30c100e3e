"""The problem that a state is: what is still to be done of every open run, from the fold.

Loads are made as the run would offer them (boards, jigs-full, trays, passes over several trays), each from the pieces that
are at a step or still on their way to it. What no plan can hold is left out, with the reason.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from runboard.plan.schedule.calendar import runs_of, windows_of
from runboard.plan.schedule.cannot import Wrong, never_set_up, too_soon, what_is_wrong, without_what_cannot_be
from runboard.plan.schedule.fitting import Fitting
from runboard.plan.schedule.loads import Batch, batches
from runboard.plan.schedule.problem import (
    TICK,
    Block,
    Draws,
    Lag,
    Order,
    Problem,
    Station,
    Stretch,
    Worker,
)
from runboard.run.route import Step
from runboard.run.state import Load, RunState, ShopState, Tray
from runboard.shop.book import ZERO, Book, may_work_while_watching
from runboard.shop.care import finish_of
from runboard.shop.parts import LoadContents, Part, parts

# How long a part of a load takes: the book's own times, or those that were learned.
Estimate = Callable[[RunState, Step, Part], timedelta]


def as_written(run: RunState, step: Step, part: Part) -> timedelta:
    """The time that the route says."""
    return part.length


def ticks(span: timedelta) -> int:
    """Whole ticks that hold a span."""
    return max(0, -(-span // TICK))


def problem_for(state: ShopState, book: Book, now: datetime, estimate: Estimate = as_written) -> Problem:
    """Everything that is still to be done at ``now``, and what it has to keep."""
    maker = _Maker(state, book, now, estimate)
    for run in state.runs.values():
        if run.state == "open":
            maker.take_run(run)
    blocks, left_out = without_what_cannot_be(maker.blocks, maker.all_wrong())
    return Problem(
        now,
        maker.stations,
        maker.people,
        tuple((service.key, service.capacity) for service in book.services),
        tuple(room.key for room in book.rooms),
        tuple(tuple(ticks(book.walk(one.key, other.key)) for other in book.rooms) for one in book.rooms),
        blocks,
        tuple(order for run in state.runs.values() if run.state == "open" for order in _orders(run, now)),
        left_out,
    )


def _orders(run: RunState, now: datetime) -> list[Order]:
    good, by_then, found = sum(tray.good for tray in run.trays.values()), 0, []
    far = datetime.max.replace(tzinfo=now.tzinfo)
    for order in sorted(run.orders, key=lambda one: one.due or far):
        by_then += order.pieces
        due = None if order.due is None else (order.due - now) // TICK
        found.append(Order(run.id, order.line, order.pieces, max(0, by_then - good), due))
    return found


@dataclass
class _Maker:
    """Blocks being made, run by run."""

    state: ShopState
    book: Book
    now: datetime
    estimate: Estimate
    blocks: list[Block] = field(default_factory=list)
    wrong: dict[int, Wrong] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.room_at = {room.key: at for at, room in enumerate(self.book.rooms)}
        self.station_at = {station.key: at for at, station in enumerate(self.book.stations)}
        self.service_at = {service.key: at for at, service in enumerate(self.book.services)}
        known = [one for one in self.book.people if not one.removed]
        self.person_at = {person.key: at for at, person in enumerate(known)}
        self.people = tuple(
            Worker(
                person.key,
                person.name,
                windows_of(self.book, person, self.state.people.get(person.key), self.now),
                self._room_of(person.key),
            )
            for person in known
        )
        self.stations = tuple(
            Station(
                station.key,
                station.name,
                self.room_at.get(station.room, 0),
                frozenset(
                    at
                    for other, at in self.station_at.items()
                    if may_work_while_watching(self.book, station.key, other)
                ),
                runs_of(self.book, station, self.state.stations.get(station.key), self.now),
                self._stands_on(station.key),
                station.heats,
                station.kind == "sander",
            )
            for station in self.book.stations
        )

        self.fitting = Fitting(self.now, self.stations, self.people)

    def _room_of(self, person: str) -> int:
        seen = self.state.people.get(person)
        return self.room_at.get(seen.room, -1) if seen is not None else -1

    def _stands_on(self, station: str) -> str:
        seen = self.state.stations.get(station)
        return "|".join(seen.setup) if seen is not None and seen.setup else ""

    # a run

    def take_run(self, run: RunState) -> None:
        before: dict[str, list[int]] = {}
        for step in run.route.steps:
            here: dict[str, list[int]] = {}
            for load in run.loads.values():
                if load.step == step.key:
                    index = self._begun(run, step, load)
                    for tray in load.pieces:
                        here.setdefault(tray, []).append(index)
            for batch in batches(run, step):
                index = self._planned(run, step, batch, before)
                for tray in batch.pieces:
                    here.setdefault(tray, []).append(index)
            before = {**before, **here}

    def _planned(self, run: RunState, step: Step, batch: Batch, before: Mapping[str, list[int]]) -> int:
        """The blocks of a load that is not begun; answers the last of them."""
        pieces = sum(batch.pieces.values())
        previous = run.route.steps[step.index - 1] if step.index else None
        lags = tuple(dict.fromkeys(self._lag(previous, one) for tray in batch.pieces for one in before.get(tray, ())))
        if previous is not None:
            lags += tuple(lag for tray in batch.pieces for lag in self._resting(run, previous, run.trays[tray]))
        release = max((self._release(run, run.trays[tray], step) for tray in batch.pieces), default=0)
        first, second = self._stretches(run, step, pieces)
        block = self._block(run, step, batch.load, tuple(batch.pieces), pieces, first)
        setup = ticks(self.estimate(run, step, Part("setup", step.pass_.setup, "hands-on")))
        block = replace(block, setup=setup, lags=lags, release=release)
        if not first:
            block = replace(block, stretches=second)
            return self._add(run, step, block)
        index = self._add(run, step, block)
        if not second:
            return index
        after = self._block(run, step, batch.load, tuple(batch.pieces), pieces, second)
        return self._add(run, step, replace(after, unloads=index))

    def _lag(self, previous: Step | None, before: int) -> Lag:
        wait = previous.operation.wait if previous is not None and previous.last_pass else None
        if wait is None:
            return Lag(before)
        latest = None if wait.latest is None else ticks(wait.latest)
        return Lag(before, ticks(wait.least), latest, self._draws(wait.holds))

    def _resting(self, run: RunState, previous: Step, tray: Tray) -> list[Lag]:
        """What is left of a wait that has begun: a block without length, after which its room is wet, its places are held,
        and its latest end is counted."""
        rest = tray.rests.get(previous.key)
        if rest is None or rest.ended_at is not None:
            return []
        wait = previous.operation.wait
        left = ticks(max(ZERO, rest.ready_at - self.now))
        block = self._block(run, previous, f"{previous.key}/{tray.id}", (tray.id,), 0, ())
        wet = left if rest.why in ("dry", "cure") else 0
        index = self._add(run, previous, replace(block, begun=True, family="", wet=wet, airs=False, last=False))
        latest = None if rest.latest_at is None else max(left, (rest.latest_at - self.now) // TICK)
        return [Lag(index, left, latest, self._draws(wait.holds) if wait is not None and left else ())]

    def _release(self, run: RunState, tray: Tray, step: Step) -> int:
        """When what the tray has at this step may go on."""
        moments = [hold.until for hold in tray.holds if hold.step == step.key and hold.until is not None]
        moments += [until for use in step.operation.uses if (until := run.out.get(use.supply)) is not None]
        return max((max(0, -((self.now - one) // TICK)) for one in moments), default=0)

    def _begun(self, run: RunState, step: Step, load: Load) -> int:
        """The blocks of a load that was begun: what is left of it. Answers the last of them."""
        pieces = sum(load.pieces.values())
        first, second = self._stretches(run, step, pieces)
        gone = ticks(max(ZERO, self.now - (load.phase_at or self.now)))
        by = next((self.person_at[one] for one in load.people if one in self.person_at), None)
        if load.state == "running":
            left = 1 if load.end_at is None else max(1, -((self.now - load.end_at) // TICK))
            machine = [replace(one, offset=0, length=left) for one in first if one.kind == "machine"]
            return self._held(run, step, load, tuple(machine), second)
        if load.state in ("ended", "unloading"):
            return self._then(run, step, load, _shortened(second, gone if by is not None else 0), by)
        work = first or second
        return self._then(run, step, load, _shortened(work, gone if by is not None else 0), by, second if first else ())

    def _held(
        self,
        run: RunState,
        step: Step,
        load: Load,
        first: tuple[Stretch, ...],
        second: tuple[Stretch, ...],
    ) -> int:
        block = self._block(run, step, load.id, tuple(load.pieces), sum(load.pieces.values()), first)
        watcher = self.person_at.get(load.watcher)
        index = self._add(run, step, replace(block, station=self._at(load), begun=True, by=watcher))
        if not second:
            return index
        after = self._block(run, step, load.id, tuple(load.pieces), sum(load.pieces.values()), second)
        return self._add(run, step, replace(after, station=self._at(load), unloads=index))

    def _then(
        self,
        run: RunState,
        step: Step,
        load: Load,
        stretches: tuple[Stretch, ...],
        by: int | None,
        after: tuple[Stretch, ...] = (),
    ) -> int:
        """What is left of a load that holds its station: somebody is at it, or it was put aside."""
        index = None
        if by is None:  # its station is held from now on, whenever somebody goes on
            empty = self._block(run, step, load.id, tuple(load.pieces), sum(load.pieces.values()), ())
            index = self._add(run, step, replace(empty, station=self._at(load), begun=True))
        block = self._block(run, step, load.id, tuple(load.pieces), sum(load.pieces.values()), stretches)
        block = replace(block, station=self._at(load), begun=by is not None, by=by, unloads=index)
        index = self._add(run, step, block)
        if not after:
            return index
        end = self._block(run, step, load.id, tuple(load.pieces), sum(load.pieces.values()), after)
        return self._add(run, step, replace(end, station=self._at(load), unloads=index))

    def _at(self, load: Load) -> int:
        return self.station_at.get(load.station, -1)

    def _stretches(self, run: RunState, step: Step, pieces: int) -> tuple[tuple[Stretch, ...], tuple[Stretch, ...]]:
        """(up to the machine's end, what follows it); all of hand work is in the second, without a first."""
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
            there.append(Stretch(part.kind, offset, length, part.attendance, self._draws(part.services)))
        if not first and not second:  # nobody said how long: it must be done all the same
            second.append(Stretch("hand", 0, 1, "hands-on"))
        return tuple(first), tuple(second)

    def _draws(self, services: Mapping[str, int]) -> Draws:
        return tuple((self.service_at[key], count) for key, count in services.items() if key in self.service_at)

    def _block(
        self, run: RunState, step: Step, load: str, trays: tuple[str, ...], pieces: int, stretches: tuple[Stretch, ...]
    ) -> Block:
        operation = step.operation
        finish = finish_of(self.book, operation)
        wait = operation.wait if step.last_pass else None
        wet = ticks(wait.least) if wait is not None and wait.why in ("dry", "cure") else 0
        airs = finish is not None and finish.solvent
        if finish is not None and finish.solvent and finish.airing is not None:
            wet = max(wet, ticks(finish.airing))
        return Block(
            index=len(self.blocks),
            run=run.id,
            load=load,
            step=step.key,
            operation=operation.key,
            trays=trays,
            pieces=pieces,
            station=self.station_at.get(operation.station, -1),
            stretches=stretches,
            people=self._eligible(run, step, trays),
            family=f"{run.id}|{step.key}",
            wet=wet,
            airs=airs,
            last=step.index == len(run.route.steps) - 1,
        )

    def _eligible(self, run: RunState, step: Step, trays: tuple[str, ...]) -> tuple[int, ...]:
        given = {run.given[f"{step.key}|{tray}"]["to"] for tray in trays if f"{step.key}|{tray}" in run.given}
        needed = step.operation.skill
        return tuple(
            at
            for key, at in self.person_at.items()
            if (person := self.book.person(key)) is not None
            and (not given or key in given)
            and (not needed or person.access == "lead" or needed in person.skills)
        )

    def all_wrong(self) -> dict[int, Wrong]:
        """Why no plan can hold some blocks, by their index."""
        right = [block for block in self.blocks if block.index not in self.wrong]
        return {**dict(too_soon(self.blocks)), **dict(never_set_up(self.fitting, right)), **self.wrong}

    def _add(self, run: RunState, step: Step, block: Block) -> int:
        block = replace(block, index=len(self.blocks))
        self.blocks.append(block)
        wrong = what_is_wrong(self.book, self.fitting, run, step, block)
        if wrong is not None and block.unloads not in self.wrong:
            self.wrong[block.index] = wrong
        return block.index


def _shortened(stretches: tuple[Stretch, ...], gone: int) -> tuple[Stretch, ...]:
    """What is left of stretches of which the first has gone on for so many ticks: never nothing."""
    if not stretches:
        return ()
    first = replace(stretches[0], length=max(1, stretches[0].length - gone))
    by = stretches[0].length - first.length
    return (first, *(replace(one, offset=one.offset - by) for one in stretches[1:]))
