"""The problem that a state is: what is still to be done of every open run, from the fold.

Loads are made as the run would offer them (boards, jigs-full, trays, passes over several trays), each from the pieces that
are at a step or still on their way to it. What no plan can hold is left out, with the reason.
"""

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from runboard.plan.schedule.problem.cannot import Cannot, Wrong, without_what_cannot_be
from runboard.plan.schedule.problem.from_book import Estimate, FromBook, Stretches, as_written, ticks
from runboard.plan.schedule.problem.hours import first_from, starts_of
from runboard.plan.schedule.problem.nouns import TICK, Block, Lag, OrderDue, Problem
from runboard.run.fold.draft import Draft
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState, ShopState, Tray
from runboard.run.refusal import Refused
from runboard.run.rules.air import Coat, coat_of, in_the_air
from runboard.run.rules.loads import loads_at
from runboard.run.rules.resting import done_at, rests_before, wait_after
from runboard.run.rules.services import resting
from runboard.shop.book import Book
from runboard.shop.limits import MOST_LINKS_PLANNED, MOST_PLANNED

# The stretches of a block of a load, and what else is its own.
Part = tuple[Stretches, dict[str, Any]]


def problem_for(state: ShopState, book: Book, now: datetime, estimate: Estimate = as_written) -> Problem:
    """Everything that is still to be done at ``now``, and what it has to keep.

    Refused 'too much to plan' with ``most`` loads, as soon as that many are made: nothing larger is begun with.
    """
    maker = _Maker(state, book, now, estimate)
    for run in state.open_runs():
        maker.take_run(run)
    maker.take_air()
    return maker.problem()


def nothing_of(state: ShopState, book: Book, now: datetime) -> Problem:
    """The same shop and people with nothing to do, for where all that is to be done is too much."""
    return _Maker(replace(state, runs={}), book, now, as_written).problem()


class _Maker:
    """Blocks being made, run by run. ``resting`` has the block of each wait in progress, by run, tray and step."""

    def __init__(self, state: ShopState, book: Book, now: datetime, estimate: Estimate) -> None:
        self.state, self.book, self.now = state, book, now
        draft = Draft(state, book)
        self.shop = FromBook(draft, now, estimate)
        self.cannot = Cannot(draft, now, self.shop.stations, self.shop.people)
        self.blocks: list[Block] = []
        self.wrong: dict[int, Wrong] = {}
        self.resting: dict[tuple[str, str, str], int] = {}
        self.links = 0

    def problem(self) -> Problem:
        """All that was taken, without what no plan can hold."""
        book, wrong = self.book, {**self.cannot.together(self.blocks, self.wrong), **self.wrong}
        blocks, left_out = without_what_cannot_be(self.blocks, wrong)
        whole = Problem(
            self.now,
            self.shop.stations,
            self.shop.people,
            tuple((service.key, service.capacity) for service in book.services),
            tuple(room.key for room in book.rooms),
            tuple(tuple(ticks(book.walk(room.key, other.key)) for other in book.rooms) for room in book.rooms),
            blocks,
            tuple(order for run in self.state.open_runs() for order in self._orders(run)),
            left_out,
            book.late_counts,
        )
        return replace(whole, blocks=tuple(_as_late_as_it_is(whole, block) for block in blocks))

    def _orders(self, run: RunState) -> Iterator[OrderDue]:
        still = -sum(tray.good for tray in run.trays.values())
        for order in run.by_due:
            still += order.pieces
            due = None if order.due is None else (order.due - self.now) // TICK
            yield OrderDue(run.id, order.line, order.pieces, max(0, still), due)

    # a run

    def take_run(self, run: RunState) -> None:
        """All that is still to be done of a run."""
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
                    _note(here, batch.pieces, self._planned(run, batch.step, batch.load, batch.pieces, before))
                before |= here

    def _planned(
        self, run: RunState, step: Step, load: str, pieces: Mapping[str, int], before: Mapping[str, list[int]]
    ) -> int:
        """The blocks of a load that is not begun; answers the last of them."""
        trays = [run.trays[tray] for tray in pieces]
        lags = dict.fromkeys(lag for tray in trays for lag in self._lags(run, tray, step, before))
        lags |= dict.fromkeys(lag for tray in trays for lag in self._rests(run, tray, step))
        release = max(self._release(run, tray, step) for tray in trays)
        own = {"setup": self.shop.setup(run, step), "lags": tuple(lags), "release": release}
        first, second = self.shop.stretches(run, step, sum(pieces.values()))
        return self._chain(run, step, load, pieces, [(first or second, own), *_following(second if first else ())])

    def _lags(self, run: RunState, tray: Tray, step: Step, before: Mapping[str, list[int]]) -> Iterator[Lag]:
        """A lag behind each load of the tray at the step before, by the tray's own route."""
        route = run.route_of(tray)
        at = route.by_key[step.key].index
        wait = wait_after(self.book, route, route.steps[at - 1]) if at else None
        least = 0 if wait is None else ticks(wait.least)
        latest = None if wait is None or wait.latest is None else ticks(wait.latest)
        return (Lag(earlier, least, latest) for earlier in before.get(tray.id, ()))

    def _rests(self, run: RunState, tray: Tray, step: Step) -> Iterator[Lag]:
        """What is left of the waits that have begun before a step."""
        if step.key not in tray.at:
            return
        route = run.route_of(tray)
        for key, rest in rests_before(route, tray, route.by_key[step.key]).items():
            left = ticks(rest.ready_at - self.now)
            latest = None if rest.latest_at is None else max(left, (rest.latest_at - self.now) // TICK)
            yield Lag(self.resting[run.id, tray.id, key], left, latest)

    def _release(self, run: RunState, tray: Tray, step: Step) -> int:
        """When what the tray has at this step may go on."""
        moments = [hold.until for hold in tray.holds if hold.step == step.key and hold.until is not None]
        moments += [until for use in step.operation.uses if (until := run.out.get(use.supply)) is not None]
        return max((ticks(moment - self.now) for moment in moments), default=0)

    def _begun(self, run: RunState, step: Step, load: Load) -> int:
        """The blocks of a load that was begun: what is left of it. Answers the last of them."""
        first, second = self.shop.stretches(run, step, sum(load.pieces.values()))
        here = {"station": self.shop.station_at.get(load.station, -1)}
        if load.state == "running":
            left = 1 if load.end_at is None else max(1, ticks(load.end_at - self.now))
            machine = tuple(replace(stretch, offset=0, length=left) for stretch in first if stretch.kind == "machine")
            runs = {"begun": True, "by": self.shop.person_at.get(load.watcher)}
            return self._chain(run, step, load.id, load.pieces, [(machine, runs), *_following(second)], **here)
        by = next((self.shop.person_at[person] for person in load.people if person in self.shop.person_at), None)
        work, after = (first, second) if first and load.state not in ("ended", "unloading") else (second, ())
        if by is None:  # put aside: its station is held from now on, whenever somebody goes on
            some: list[Part] = [((), {"begun": True}), (work, {})]
        else:
            some = [(_shortened(work, ticks(self.now - (load.phase_at or self.now))), {"begun": True, "by": by})]
        return self._chain(run, step, load.id, load.pieces, [*some, *_following(after)], **here)

    def _chain(
        self, run: RunState, step: Step, load: str, pieces: Mapping[str, int], some: Sequence[Part], **all_have: Any
    ) -> int:
        """Blocks of one load, each of which unloads the one before; answers the last of them."""
        index = None
        for stretches, own in some:
            block = self.shop.block(len(self.blocks), run, step, load, pieces)
            block = replace(block, stretches=stretches, unloads=index, **own, **all_have)
            index = block.index
            self._keep(block)
            before = [there for lag in block.lags if not (there := self.blocks[lag.before]).begun]
            wrong = self.cannot.why(run, step, block, before)
            if wrong is not None and block.unloads not in self.wrong:
                self.wrong[index] = wrong
        return len(self.blocks) - 1

    def _keep(self, block: Block) -> None:
        self.blocks.append(block)
        self.links += len(block.lags)
        if len(self.blocks) > MOST_PLANNED or self.links > MOST_LINKS_PLANNED:
            raise Refused("too much to plan", most=MOST_PLANNED)

    # what rests

    def _take_rests(self, run: RunState) -> None:
        """A block without length for each wait in progress, one for all that wait for it: from it on its places are held, its
        room is wet, its latest end is counted."""
        for rested in resting(run, self.book):
            rest = max(rested.rests.values(), key=lambda rest: rest.ready_at)
            load = f"{rested.step.key}/{'+'.join(rested.rests)}"
            block = self.shop.block(len(self.blocks), run, rested.step, load, dict.fromkeys(rested.rests, 0))
            block = replace(block, begun=True, family="", last=False, holds=self.shop.draws(rested.holds))
            self.resting.update({(run.id, tray, rested.step.key): block.index for tray in rested.rests})
            done = done_at(self.book, rested.route, rested.step, rest)
            self._keep(self._left_of(block, coat_of(self.book, rested.route, rested.step), done))

    def take_air(self) -> None:
        """What is in the air though nothing waits for it: a wait that was ended, the last coat of a run that is closed. It
        is a block like a wait in progress, of no tray."""
        if all(block.begun for block in self.blocks):
            return
        for known in in_the_air(self.state, self.book, self.now):
            if (known.run, known.of, known.key) not in self.resting and known.of not in self.state.runs[
                known.run
            ].loads:
                at = self.shop.station_at[known.station]
                block = Block(
                    len(self.blocks), known.run, known.key, known.key, known.key, (), 0, at, (), (), begun=True
                )
                self._keep(self._left_of(block, known.coat, known.done_at))

    def _left_of(self, block: Block, coat: Coat | None, done: datetime) -> Block:
        """The block with what is left in the air of a coat that was done at a moment."""
        if coat is None:
            return block
        airs = ticks(done + coat.airs - self.now) if coat.airs is not None else 0
        return replace(block, wet=ticks(done + coat.wet - self.now), airs=airs or None)


def _following(stretches: Stretches) -> list[Part]:
    """What follows in a block of its own, if anything does."""
    return [(stretches, {})] if stretches else []


def _shortened(stretches: Stretches, gone: int) -> Stretches:
    """What is left of stretches of which the first has gone on for so many ticks: never nothing."""
    if not stretches:
        return ()
    first = replace(stretches[0], length=max(1, stretches[0].length - gone))
    by = stretches[0].length - first.length
    return (first, *(replace(stretch, offset=stretch.offset - by) for stretch in stretches[1:]))


def _note(here: dict[str, list[int]], pieces: Mapping[str, int], index: int) -> None:
    for tray in pieces:
        here.setdefault(tray, []).append(index)


def _still_to_begin(run: RunState, tray: Tray, key: str) -> int:
    """The pieces of a tray that have still to begin a step of its own route: those there and free, those on their way."""
    route = run.route_of(tray)
    step = route.step(key)
    if step is None:
        return 0
    coming = sum(count for at, count in tray.at.items() if (there := route.step(at)) and there.index <= step.index)
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
    if all(
        walked == sorted(walked, key=place.__getitem__) for walked in (list(route.by_key) for route in routes.values())
    ):
        yield keys, run.trays
        return
    for number, route in routes.items():
        yield list(route.by_key), [tray.id for tray in run.trays.values() if tray.revision == number]


def _as_late_as_it_is(problem: Problem, block: Block) -> Block:
    """A block without the latest ends, of waits that have begun, that its hours cannot keep any more: else one tray that was
    left too long would leave all the others without a plan."""
    begun = [lag for lag in block.lags if problem.blocks[lag.before].begun]
    if block.begun or all(lag.latest is None for lag in begun):
        return block
    ready = max(problem.blocks[lag.before].length + lag.least for lag in begun)
    soonest = first_from(starts_of(problem, block), ready)
    past = [lag for lag in begun if lag.latest is not None and lag.latest < soonest]
    lags = (replace(lag, latest=None) if lag in past else lag for lag in block.lags)
    return replace(block, lags=tuple(lags)) if past else block
