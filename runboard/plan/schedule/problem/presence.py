"""When somebody is there, as sums: spans joined, how much of them has passed, and when so much of them will have."""

from bisect import bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from itertools import accumulate, pairwise

from runboard.plan.schedule.problem.nouns import FAR, TICK, Problem, Span


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
        return Presence(tuple(zip(at, accumulate(turns[one] for one in at), strict=True)))

    @cached_property
    def _starts(self) -> list[int]:
        return [at for at, _ in self.steps]

    @cached_property
    def _sums(self) -> list[int]:
        """What has passed at the start of each step."""
        return [0, *accumulate((until - at) * many for (at, many), (until, _) in pairwise(self.steps))]

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
    return Presence.of(problem.people[one].windows for one in some)


def open_spans(problem: Problem) -> tuple[Span, ...]:
    """When anybody is there."""
    return joined(window for person in problem.people for window in person.windows)


def open_ticks(problem: Problem, tick: int) -> int:
    """The ticks before ``tick`` at which anybody is there: what gaps are measured in."""
    return Presence.of([open_spans(problem)]).passed(tick)


def open_minutes(problem: Problem, start: int, end: int) -> float:
    """The minutes between two ticks in which anybody is there; none where the second is no later."""
    return Presence.of([open_spans(problem)]).between(start, end) * TICK.total_seconds() / 60
