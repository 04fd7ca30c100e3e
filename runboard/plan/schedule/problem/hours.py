"""When somebody is there and when work may begin, by the clock alone: spans, sums of presence, and each block's starts."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property, reduce
from itertools import accumulate, pairwise

from runboard.plan.schedule.problem.nouns import FAR, TICK, Block, Problem, Span


def joined(spans: Iterable[Span]) -> tuple[Span, ...]:
    """Spans in order, those that touch or overlap made one."""
    found: list[Span] = []
    for opens, closes in sorted(spans):
        if found and opens <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], closes))
        elif opens < closes:
            found.append((opens, closes))
    return tuple(found)


def common(some: tuple[Span, ...], others: tuple[Span, ...]) -> tuple[Span, ...]:
    """What lies in both of two rows of spans, each in order and without overlaps."""
    found, one, other = [], 0, 0
    while one < len(some) and other < len(others):
        opens = max(some[one][0], others[other][0])
        closes = min(some[one][1], others[other][1])
        if opens < closes:
            found.append((opens, closes))
        if some[one][1] < others[other][1]:
            one += 1
        else:
            other += 1
    return tuple(found)


def first_from(spans: tuple[Span, ...], tick: int) -> int:
    """The first tick of these spans that is not before ``tick``; FAR where there is none."""
    return next((max(opens, tick) for opens, closes in spans if closes > tick), FAR)


# presence


@dataclass(frozen=True)
class Presence:
    """How many are there at each tick: ``steps`` are (from, how many), in order."""

    steps: tuple[tuple[int, int], ...]

    @staticmethod
    def of(rows: Iterable[Iterable[Span]]) -> "Presence":
        """Of several people, or stations, each with spans of their own."""
        turns: dict[int, int] = {}
        for row in rows:
            for opens, closes in joined(row):
                turns[opens] = turns.get(opens, 0) + 1
                turns[closes] = turns.get(closes, 0) - 1
        at = sorted(turns)
        return Presence(tuple(zip(at, accumulate(turns[tick] for tick in at), strict=True)))

    @cached_property
    def _starts(self) -> list[int]:
        return [at for at, _ in self.steps]

    @cached_property
    def _sums(self) -> list[int]:
        """What has passed at the start of each step."""
        return [0, *accumulate((until - at) * many for (at, many), (until, _) in pairwise(self.steps))]

    def most(self, before: int) -> int:
        """How many are there at once, at most, before a tick."""
        return max((many for start, many in self.steps if start < before), default=0)

    def passed(self, tick: int) -> int:
        """Ticks of presence, times people, before a tick."""
        step = bisect_right(self._starts, tick) - 1
        if step < 0:
            return 0
        at, many = self.steps[step]
        return self._sums[step] + (tick - at) * many

    def between(self, start: int, end: int) -> int:
        """Ticks of presence, times people, between two."""
        return max(0, self.passed(end) - self.passed(start))

    def after(self, start: int, work: int) -> int:
        """The first tick by which so much presence has passed since ``start``; FAR where it never has."""
        if work <= 0:
            return start
        wanted = self.passed(start) + work
        step = bisect_right(self._sums, wanted - 1) - 1
        if not self.steps or step >= len(self.steps) - 1:
            return FAR
        at, many = self.steps[step]
        return at - (self._sums[step] - wanted) // many


def everybody(problem: Problem, people: Iterable[int] | None = None) -> Presence:
    """The presence of all people, or of these."""
    some = range(len(problem.people)) if people is None else people
    return Presence.of(problem.people[person].windows for person in some)


def open_spans(problem: Problem) -> tuple[Span, ...]:
    """When anybody is there."""
    return joined(window for person in problem.people for window in person.windows)


def open_ticks(problem: Problem, tick: int) -> int:
    """The ticks before ``tick`` at which anybody is there: what gaps are measured in."""
    return Presence.of([open_spans(problem)]).passed(tick)


def open_minutes(problem: Problem, start: int, end: int) -> float:
    """The minutes between two ticks in which anybody is there; none where the second is no later."""
    return Presence.of([open_spans(problem)]).between(start, end) * TICK.total_seconds() / 60


# starts


def within(windows: Iterable[Span], offset: int, length: int) -> tuple[Span, ...]:
    """Half-open spans of ticks at which something may begin whose part ``offset`` … ``offset + length`` must lie in one
    window."""
    return joined((max(0, opens - offset), closes - offset - length + 1) for opens, closes in windows)


def hands_in(block: Block) -> tuple[Span, ...]:
    """The hands-on parts of a block, (offset, length), neighbours made one."""
    spans = joined(
        (stretch.offset, stretch.offset + stretch.length)
        for stretch in block.stretches
        if stretch.attendance == "hands-on"
    )
    return tuple((start, end - start) for start, end in spans)


def starts_of(problem: Problem, block: Block, person: int | None = None) -> tuple[Span, ...]:
    """When a block may begin its own work: with this person's hands, or with anybody's who may."""
    if block.begun:
        return ((0, 1),)
    station, parts = problem.stations[block.station], hands_in(block)
    found = common(within(station.runs, 0, block.length), ((block.release, FAR),))
    found = reduce(
        common, (within(open_spans(problem), stretch.offset, stretch.length) for stretch in block.attended), found
    )
    if not parts:
        return found
    rows = [problem.people[person].windows for person in (block.people if person is None else (person,))]
    return joined(span for row in rows for span in reduce(common, (within(row, *part) for part in parts), found))


class Chains:
    """Earliest ends along what waits for what, through the hours of each block, as if nothing else were in the shop.
    ``waits`` are for each block what it waits for: (block, least ticks from its end). ``tails`` are the ticks that must
    pass from a block's end to the finish, hours aside."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        self.waits = [block.waits for block in problem.blocks]
        self._known: dict[object, tuple[Span, ...]] = {}
        self.starts = [self.starts_by(at, None) for at in range(len(problem.blocks))]
        self.order = self._in_order()
        self.begins = [0] * len(problem.blocks)
        for at in self.order:
            self.begins[at] = self._soonest(at)
        self.tails = self._tails()

    def starts_by(self, at: int, person: int | None) -> tuple[Span, ...]:
        """``starts_of`` a block: those that differ in nothing that it asks about share one answer."""
        block = self.problem.blocks[at]
        asked = (block.begun, block.station, block.release, block.stretches, block.people, person)
        if asked not in self._known:
            self._known[asked] = starts_of(self.problem, block, person)
        return self._known[asked]

    def _in_order(self) -> list[int]:
        """Blocks so that each comes after what it waits for."""
        left = [len({before for before, _ in waits}) for waits in self.waits]
        ready = [at for at, count in enumerate(left) if not count]
        for at in ready:
            for other in self.problem.followers[at]:
                left[other] -= 1
                if not left[other]:
                    ready.append(other)
        return ready

    def _soonest(self, at: int) -> int:
        block = self.problem.blocks[at]
        if block.begun:
            return 0
        ready = [block.release, *(self.end(before) + least for before, least in self.waits[at])]
        return first_from(self.starts[at], max(ready))

    def end(self, at: int) -> int:
        """When a block ends at the soonest."""
        return self.begins[at] + self.problem.blocks[at].length

    def finish_if(self, at: int, ends: int) -> int:
        """The earliest finish if block ``at`` ends no sooner than ``ends``."""
        later, finish = {at: ends}, ends
        for other in self._after[at]:
            ready = max(later[before] + least for before, least in self.waits[other] if before in later)
            begins = first_from(self.starts[other], max(ready, self.begins[other]))
            later[other] = begins + self.problem.blocks[other].length
            finish = max(finish, later[other])
        return finish

    @cached_property
    def _after(self) -> list[tuple[int, ...]]:
        """For each block all that comes after it, in order."""
        rank = {at: nth for nth, at in enumerate(self.order)}
        reached: list[set[int]] = [set() for _ in self.order]
        for at in reversed(self.order):
            for other in self.problem.followers[at]:
                reached[at] |= {other} | reached[other]
        return [tuple(sorted(group, key=rank.__getitem__)) for group in reached]

    def _tails(self) -> list[int]:
        tails = [0] * len(self.problem.blocks)
        for at in reversed(self.order):
            for before, least in self.waits[at]:
                tails[before] = max(tails[before], least + self.problem.blocks[at].length + tails[at])
        return tails
