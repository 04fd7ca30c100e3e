"""When each block may start, by the clock alone: hours of people and stations, what it waits for, what waits for it."""

from collections.abc import Iterable
from functools import cached_property, reduce

from runboard.plan.schedule.problem.nouns import FAR, Block, Problem, Span, Stretch
from runboard.plan.schedule.problem.presence import common, joined, open_spans

# A wait that is better spent overnight: three hours.
_LONG = 3 * 120


def within(windows: Iterable[Span], offset: int, length: int) -> tuple[Span, ...]:
    """Half-open spans of ticks at which something may begin whose part ``offset`` … ``offset + length`` must lie in one
    window."""
    return joined((max(0, opens - offset), closes - offset - length + 1) for opens, closes in windows)


def hands_of(block: Block) -> tuple[Span, ...]:
    """The hands-on parts of a block, (offset, length), neighbours made one."""
    return _runs_on([one for one in block.stretches if one.attendance == "hands-on"])


def _runs_on(stretches: list[Stretch]) -> tuple[Span, ...]:
    spans = joined((one.offset, one.offset + one.length) for one in stretches)
    return tuple((start, end - start) for start, end in spans)


def starts_of(problem: Problem, block: Block, person: int | None = None) -> tuple[Span, ...]:
    """When a block may begin its own work: with this person's hands, or with anybody's who may."""
    if block.begun:
        return ((0, 1),)
    station = problem.stations[block.station]
    found = common(within(station.runs, 0, block.length), ((block.release, FAR),))
    found = reduce(common, (within(open_spans(problem), one.offset, one.length) for one in block.attended), found)
    if not hands_of(block):
        return found
    some = block.people if person is None else (person,)
    return joined(span for one in some for span in reduce(common, _by(problem, block, one), found))


def _starts(problem: Problem) -> list[tuple[Span, ...]]:
    """``starts_of`` each block: blocks that differ in nothing that it asks about share one answer."""
    known: dict[object, tuple[Span, ...]] = {}
    found = []
    for block in problem.blocks:
        alike = (block.begun, block.station, block.release, block.stretches, block.people)
        if alike not in known:
            known[alike] = starts_of(problem, block)
        found.append(known[alike])
    return found


def _by(problem: Problem, block: Block, person: int) -> list[tuple[Span, ...]]:
    windows = problem.people[person].windows
    return [within(windows, offset, length) for offset, length in hands_of(block)]


def before_long_waits(problem: Problem) -> frozenset[int]:
    """The blocks after which a wait comes that is better spent overnight."""
    return frozenset(lag.before for block in problem.blocks for lag in block.lags if lag.least >= _LONG)


def first_from(spans: tuple[Span, ...], tick: int) -> int:
    """The first tick of these spans that is not before ``tick``; FAR where there is none."""
    return next((max(opens, tick) for opens, closes in spans if closes > tick), FAR)


class Chains:
    """Earliest ends along what waits for what, through the hours of each block, as if nothing else were in the shop."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.starts = _starts(problem)
        self.order = _in_order(problem)
        self.begins = [0] * len(problem.blocks)
        for at in self.order:
            self.begins[at] = self.soonest(at, self.begins)
        self.tails = self._tails()

    def soonest(self, at: int, begins: list[int], at_least: int = 0) -> int:
        """The first tick at which a block may begin, given when those before it do."""
        block = self.problem.blocks[at]
        if block.begun:
            return 0
        ready = max([at_least, block.release, *(self._end(lag.before, begins) + lag.least for lag in block.lags)])
        if block.unloads is not None:
            ready = max(ready, self._end(block.unloads, begins))
        return first_from(self.starts[at], ready)

    def _end(self, at: int, begins: list[int]) -> int:
        return begins[at] + self.problem.blocks[at].length

    def finish_if(self, at: int, ends: int) -> int:
        """The earliest finish if block ``at`` ends no sooner than ``ends``."""
        begins = {at: ends - self.problem.blocks[at].length}
        finish = ends
        for other in self._after[at]:
            block = self.problem.blocks[other]
            lags = [(lag.before, lag.least) for lag in block.lags]
            lags += [(block.unloads, 0)] if block.unloads is not None else []
            ready = max(begins[one] + self.problem.blocks[one].length + least for one, least in lags if one in begins)
            begins[other] = first_from(self.starts[other], max(ready, self.begins[other]))
            finish = max(finish, begins[other] + block.length)
        return finish

    @cached_property
    def _after(self) -> list[tuple[int, ...]]:
        """For each block all that comes after it, in order."""
        rank = {at: nth for nth, at in enumerate(self.order)}
        reached: list[set[int]] = [set() for _ in self.order]
        for at in reversed(self.order):
            for other in self.problem.followers[at]:
                reached[at] |= {other} | reached[other]
        return [tuple(sorted(one, key=rank.__getitem__)) for one in reached]

    def _tails(self) -> list[int]:
        """For each block the ticks that must pass from its end to the finish, hours aside."""
        tails = [0] * len(self.problem.blocks)
        for at in reversed(self.order):
            block = self.problem.blocks[at]
            for lag in block.lags:
                tails[lag.before] = max(tails[lag.before], lag.least + block.length + tails[at])
            if block.unloads is not None:
                tails[block.unloads] = max(tails[block.unloads], block.length + tails[at])
        return tails


def _in_order(problem: Problem) -> list[int]:
    """Blocks so that each comes after what it waits for."""
    waits = [len({*(lag.before for lag in one.lags), *_unloaded(one)}) for one in problem.blocks]
    ready = [at for at, count in enumerate(waits) if not count]
    for at in ready:
        for other in problem.followers[at]:
            waits[other] -= 1
            if not waits[other]:
                ready.append(other)
    return ready


def _unloaded(block: Block) -> tuple[int, ...]:
    return () if block.unloads is None else (block.unloads,)
