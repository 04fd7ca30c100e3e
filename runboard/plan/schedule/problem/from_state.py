"""The problem that a state is: what is still to be done of every open run, from the fold.

Loads are made as the run would offer them (boards, jigs-full, trays, passes over several trays), each from the pieces that
are at a step or still on their way to it. What no plan can hold is left out, with the reason.
"""

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any

from runboard.plan.schedule.problem.calendar import runs_of, windows_of
from runboard.plan.schedule.problem.cannot import Wrong, never_set_up, too_soon, what_is_wrong, without_what_cannot_be
from runboard.plan.schedule.problem.fitting import Fitting
from runboard.plan.schedule.problem.nouns import (
    TICK,
    Block,
    Lag,
    Order,
    Problem,
    Station,
    Stretch,
    Worker,
)
from runboard.plan.schedule.problem.step_work import Estimate, StepWork, as_written, ticks
from runboard.run.air import Coat, coat_of, in_the_air, raises_dust
from runboard.run.draft import Draft
from runboard.run.loads import Batch, loads_at
from runboard.run.refusal import Refused
from runboard.run.resting import done_at, rests_before, wait_after
from runboard.run.route import Step
from runboard.run.services import resting
from runboard.run.state import Load, RunState, ShopState, Tray
from runboard.shop.book import ZERO, Book, may_work_while_watching
from runboard.shop.limits import MOST_LINKS_PLANNED, MOST_PLANNED


def problem_for(state: ShopState, book: Book, now: datetime, estimate: Estimate = as_written) -> Problem:
    """Everything that is still to be done at ``now``, and what it has to keep.

    Refused 'too much to plan' with ``most`` loads, as soon as that many are made: nothing larger is begun with.
    """
    maker = _Maker(state, book, now, estimate)
    for run in state.open_runs():
        maker.take_run(run)
    maker.take_air()
    return _problem(maker)


def nothing_of(state: ShopState, book: Book, now: datetime) -> Problem:
    """The same shop and people with nothing to do, for where all that is to be done is too much."""
    return _problem(_Maker(replace(state, runs={}), book, now, as_written))


def _problem(maker: "_Maker") -> Problem:
    state, book, now = maker.state, maker.book, maker.now
    blocks, left_out = without_what_cannot_be(maker.blocks, maker.all_wrong())
    return Problem(
        now,
        maker.stations,
        maker.people,
        tuple((service.key, service.capacity) for service in book.services),
        tuple(room.key for room in book.rooms),
        tuple(tuple(ticks(book.walk(one.key, other.key)) for other in book.rooms) for one in book.rooms),
        blocks,
        tuple(order for run in state.open_runs() for order in _orders(run, now)),
        left_out,
        book.late_counts,
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
    resting: dict[tuple[str, str, str], int] = field(default_factory=dict)
    links: int = 0

    def __post_init__(self) -> None:
        self.draft = Draft(self.state, self.book)
        self.work = StepWork(self.book, self.estimate)
        self.room_at, self.station_at, self.person_at = self.work.room_at, self.work.station_at, self.work.person_at
        self.people = tuple(
            Worker(
                person.key,
                person.name,
                windows_of(self.book, person, self.state.people.get(person.key), self.now),
                self._room_of(person.key),
            )
            for person in self.work.people
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
                raises_dust(station),
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
        self._take_rests(run)
        for keys, trays in _walks(run):
            before: dict[str, list[int]] = {}
            for key in keys:
                here: dict[str, list[int]] = {}
                for load in run.loads.values():
                    step = run.step_of(load) if load.step == key else None
                    if step is not None and next(iter(load.pieces), "") in trays:
                        _note(here, load.pieces, self._begun(run, step, load))
                coming = {tray: count for tray in trays if (count := _still_to_begin(run, run.trays[tray], key))}
                for batch in loads_at(run, key, coming, hands_by_tray=True):
                    _note(here, batch.pieces, self._planned(run, batch, before))
                before = {**before, **here}

    def _planned(self, run: RunState, batch: Batch, before: Mapping[str, list[int]]) -> int:
        """The blocks of a load that is not begun; answers the last of them."""
        step, pieces = batch.step, sum(batch.pieces.values())
        lags = dict.fromkeys(lag for tray in batch.pieces for lag in self._lags(run, run.trays[tray], step, before))
        lags |= dict.fromkeys(lag for tray in batch.pieces for lag in self._resting(run, run.trays[tray], step))
        release = max((self._release(run, run.trays[tray], step) for tray in batch.pieces), default=0)
        first, second = self.work.stretches(run, step, pieces)
        trays, setup = tuple(batch.pieces), self.work.setup(run, step)
        block = self._block(
            run, step, batch.load, trays, pieces, first or second, setup=setup, lags=tuple(lags), release=release
        )
        index = self._add(run, step, block)
        if not first or not second:
            return index
        return self._add(run, step, self._block(run, step, batch.load, trays, pieces, second, unloads=index))

    def _lags(self, run: RunState, tray: Tray, step: Step, before: Mapping[str, list[int]]) -> Iterator[Lag]:
        """A lag behind each load of the tray at the step before, by the tray's own route."""
        route = run.route_of(tray)
        at = route.by_key[step.key].index
        wait = wait_after(self.book, route, route.steps[at - 1]) if at else None
        for one in before.get(tray.id, ()):
            if wait is None:
                yield Lag(one)
            else:
                yield Lag(one, ticks(wait.least), None if wait.latest is None else ticks(wait.latest))

    def _take_rests(self, run: RunState) -> None:
        """A block without length for each wait in progress, one for all that wait for it: from it on its places are held, its
        room is wet, its latest end is counted."""
        for one in resting(run, self.book):
            trays, rest = tuple(one.rests), max(one.rests.values(), key=lambda rest: rest.ready_at)
            block = self._block(run, one.step, f"{one.step.key}/{'+'.join(trays)}", trays, 0, ())
            block = replace(block, begun=True, family="", last=False, holds=self.work.draws(one.holds))
            done = done_at(self.book, one.route, one.step, rest)
            self.resting.update({(run.id, tray, one.step.key): len(self.blocks) for tray in trays})
            self._keep(self._left_of(block, coat_of(self.book, one.route, one.step), done))

    def _resting(self, run: RunState, tray: Tray, step: Step) -> Iterator[Lag]:
        """What is left of the waits that have begun before a step."""
        if step.key not in tray.at:
            return
        route = run.route_of(tray)
        for key, rest in rests_before(route, tray, route.by_key[step.key]).items():
            left = ticks(rest.ready_at - self.now)
            latest = None if rest.latest_at is None else max(left, (rest.latest_at - self.now) // TICK)
            yield Lag(self.resting[run.id, tray.id, key], left, latest)

    def _left_of(self, block: Block, coat: Coat | None, done: datetime) -> Block:
        """The block with what is left in the air of a coat that was done at a moment."""
        if coat is None:
            return block
        airs = ticks(done + coat.airs - self.now) if coat.airs is not None else 0
        return replace(block, wet=ticks(done + coat.wet - self.now), airs=airs or None)

    def take_air(self) -> None:
        """What is in the air though nothing waits for it: a wait that was ended, the last coat of a run that is closed. It
        is a block like a wait in progress, of no tray."""
        if all(block.begun for block in self.blocks):
            return
        for one in in_the_air(self.state, self.book, self.now):
            run = self.state.runs[one.run]
            if (one.run, one.of, one.key) in self.resting or one.of in run.loads:
                continue
            at = self.station_at[one.station]
            block = Block(len(self.blocks), one.run, one.key, one.key, one.key, (), 0, at, (), (), begun=True)
            self._keep(self._left_of(block, one.coat, one.done_at))

    def _release(self, run: RunState, tray: Tray, step: Step) -> int:
        """When what the tray has at this step may go on."""
        moments = [hold.until for hold in tray.holds if hold.step == step.key and hold.until is not None]
        moments += [until for use in step.operation.uses if (until := run.out.get(use.supply)) is not None]
        return max((max(0, -((self.now - one) // TICK)) for one in moments), default=0)

    def _begun(self, run: RunState, step: Step, load: Load) -> int:
        """The blocks of a load that was begun: what is left of it. Answers the last of them."""
        pieces = sum(load.pieces.values())
        first, second = self.work.stretches(run, step, pieces)
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

    def _block(
        self,
        run: RunState,
        step: Step,
        load: str,
        trays: tuple[str, ...],
        pieces: int,
        stretches: tuple[Stretch, ...],
        **more: Any,
    ) -> Block:
        return self.work.block(len(self.blocks), run, step, load, trays, pieces, stretches, **more)

    def all_wrong(self) -> dict[int, Wrong]:
        """Why no plan can hold some blocks, by their index."""
        right = [block for block in self.blocks if block.index not in self.wrong]
        return {**dict(too_soon(self.blocks)), **dict(never_set_up(self.fitting, right)), **self.wrong}

    def _add(self, run: RunState, step: Step, block: Block) -> int:
        if block.index != len(self.blocks):
            block = replace(block, index=len(self.blocks))
        self._keep(block)
        before = [one for lag in block.lags if not (one := self.blocks[lag.before]).begun]
        wrong = what_is_wrong(self.draft, self.fitting, run, step, block, before)
        if wrong is not None and block.unloads not in self.wrong:
            self.wrong[block.index] = wrong
        return block.index

    def _keep(self, block: Block) -> None:
        self.blocks.append(block)
        self.links += len(block.lags)
        if len(self.blocks) > MOST_PLANNED or self.links > MOST_LINKS_PLANNED:
            raise Refused("too much to plan", most=MOST_PLANNED)


def _shortened(stretches: tuple[Stretch, ...], gone: int) -> tuple[Stretch, ...]:
    """What is left of stretches of which the first has gone on for so many ticks: never nothing."""
    if not stretches:
        return ()
    first = replace(stretches[0], length=max(1, stretches[0].length - gone))
    by = stretches[0].length - first.length
    return (first, *(replace(one, offset=one.offset - by) for one in stretches[1:]))


def _note(here: dict[str, list[int]], pieces: Mapping[str, int], index: int) -> None:
    for tray in pieces:
        here.setdefault(tray, []).append(index)


def _still_to_begin(run: RunState, tray: Tray, key: str) -> int:
    """The pieces of a tray that have still to begin a step of its own route: those there and free, those on their way."""
    route = run.route_of(tray)
    step = route.step(key)
    if step is None:
        return 0
    coming = sum(count for at, count in tray.at.items() if (one := route.step(at)) and one.index <= step.index)
    return max(0, coming - tray.busy.get(key, 0))


def _walks(run: RunState) -> Iterator[tuple[list[str], Collection[str]]]:
    """The keys of the run's steps in an order that the route of every tray keeps, with the trays: all of them at once, but
    where two revisions turn steps round those of each apart."""
    routes = {tray.revision: run.route_of(tray) for tray in run.trays.values()}
    keys: list[str] = []
    for number in sorted(routes, reverse=True):
        for step in routes[number].steps:
            if step.key not in keys:
                keys.insert(keys.index(routes[number].steps[step.index - 1].key) + 1 if step.index else 0, step.key)
    place = {key: at for at, key in enumerate(keys)}
    if all(one == sorted(one, key=place.__getitem__) for one in (list(route.by_key) for route in routes.values())):
        yield keys, run.trays
        return
    for number, route in routes.items():
        yield list(route.by_key), [tray.id for tray in run.trays.values() if tray.revision == number]
