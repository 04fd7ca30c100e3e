"""The multiple-activity chart of a plan: people, stations and services against one time scale.

After the person-and-machine chart of the work-study handbooks. Hours in which nothing is done are left out; each stretch
between is a ``Sitting``.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise

from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.problem.people import At, hands_of, walks_of, watching_of, work_of
from runboard.plan.schedule.told.effort import works

# So long with nothing done is left out: an hour and a half.
BREAK = 90 * 2


@dataclass(frozen=True)
class Bar:
    """``kind`` is work (hands, or a station at work), watch, walk, held (an ended load waits at its station), drawn (a
    service) or wait (pieces dry or rest). ``share`` of a service's capacity is drawn. ``part`` says which part it is."""

    start: int
    end: int
    kind: str
    block: int = -1
    part: str = ""
    room: int = -1
    share: float = 1.0


@dataclass(frozen=True)
class Row:
    """``kind`` is person, station or service, ``at`` its place in the problem."""

    kind: str
    at: int
    bars: tuple[Bar, ...] = ()


@dataclass(frozen=True)
class Chart:
    """``sittings`` are the stretches of time that are shown; between them nothing is done but waiting."""

    rows: tuple[Row, ...] = ()
    sittings: tuple[Span, ...] = ()
    breaks: tuple[Span, ...] = field(default=())


@dataclass(frozen=True)
class Part:
    """One sitting of a chart with its bars, cut to it. ``gap`` is what is left out before it, and the blocks whose pieces
    wait meanwhile; ``longest`` is the longest sitting of the whole chart, which all are drawn to the scale of."""

    span: Span
    rows: tuple[Row, ...]
    longest: int
    gap: Span | None = None
    waiting: tuple[int, ...] = ()

    @property
    def bars(self) -> int:
        """How many bars there are to draw."""
        return sum(len(row.bars) for row in self.rows)


def parts(found: Chart) -> Iterator[Part]:
    """A chart, a sitting after the other."""
    longest = max((closes - opens for opens, closes in found.sittings), default=0)
    for at, span in enumerate(found.sittings):
        rows = tuple(Row(row.kind, row.at, tuple(within(row, span))) for row in found.rows)
        gap = found.breaks[at - 1] if at else None
        yield Part(span, rows, longest, gap, tuple(_waiting(found, gap)) if gap else ())


def _waiting(found: Chart, gap: Span) -> Iterator[int]:
    for row in found.rows:
        yield from (bar.block for bar in row.bars if bar.kind == "wait" and bar.start < gap[1] and bar.end > gap[0])


def chart(problem: Problem, plan: Plan) -> Chart:
    """The chart of the whole plan: rows that have nothing in them are left out, but for people."""
    rows = (
        *(Row("person", at, tuple(_of_person(problem, plan, at))) for at in range(len(problem.people))),
        *(Row("station", at, tuple(_of_station(problem, plan, at))) for at in range(len(problem.stations))),
        *(Row("service", at, tuple(_of_service(problem, plan, at))) for at in range(len(problem.services))),
    )
    rows = tuple(row for row in rows if row.bars or (row.kind == "person" and problem.people[row.at].windows))
    sittings = _sittings(problem, plan)
    breaks = tuple((ends, opens) for (_, ends), (opens, _) in pairwise(sittings))
    return Chart(rows, sittings, breaks)


def within(row: Row, sitting: Span) -> Iterator[Bar]:
    """The bars of a row in a sitting, cut to it."""
    opens, closes = sitting
    for bar in row.bars:
        if bar.start < closes and bar.end > opens:
            yield Bar(max(bar.start, opens), min(bar.end, closes), bar.kind, bar.block, bar.part, bar.room, bar.share)


def _of_person(problem: Problem, plan: Plan, person: int) -> Iterator[Bar]:
    for walk in walks_of(problem, plan, person):
        yield Bar(walk.start, walk.end, "walk", room=walk.room)
    for one in work_of(problem, plan, person):
        part = "taking-over" if _takes_over(plan, one) else one.kind
        yield Bar(one.start, one.end, "watch" if one.kind == "watching" else "work", one.block, part)


def _takes_over(plan: Plan, one: At) -> bool:
    """Whether somebody else watched until then."""
    return one.kind == "watching" and one.start > plan.placed[one.block].watchers[0][1]


def _of_station(problem: Problem, plan: Plan, station: int) -> Iterator[Bar]:
    for placed in plan.placed:
        block = problem.blocks[placed.block]
        if block.station != station:
            continue
        ends = plan.end(problem, block.index)
        after = problem.unloaded_by.get(block.index)
        if after is not None and plan.placed[after].start > ends:
            yield Bar(ends, plan.placed[after].start, "held", block.index)
        if placed.setup:
            yield Bar(placed.start, placed.begins(), "work", block.index, "setup")
        for one in block.stretches:
            start = placed.begins() + one.offset
            yield Bar(start, start + one.length, "work", block.index, one.kind)
        for start, end in _waits(problem, plan, block.index):
            yield Bar(start, end, "wait", block.index)


def _waits(problem: Problem, plan: Plan, block: int) -> Iterator[Span]:
    """How long the pieces of a block dry or rest before what follows it."""
    ended = plan.end(problem, block)
    lags = [(lag.least, plan.placed[after].start) for after in problem.followers[block]
            for lag in problem.blocks[after].lags if lag.before == block and lag.least]  # fmt: skip
    if lags:
        yield ended, ended + max(least for least, _ in lags)


def _of_service(problem: Problem, plan: Plan, service: int) -> Iterator[Bar]:
    """What is drawn at once, as steps."""
    turns: dict[int, int] = {}
    for start, end, amount in _drawn(problem, plan, service):
        turns[start] = turns.get(start, 0) + amount
        turns[end] = turns.get(end, 0) - amount
    drawn, capacity, at = 0, max(1, problem.services[service][1]), sorted(turns)
    for start, end in pairwise(at):
        drawn += turns[start]
        if drawn > 0:
            yield Bar(start, end, "drawn", share=min(1.0, drawn / capacity))


def _drawn(problem: Problem, plan: Plan, service: int) -> Iterator[tuple[int, int, int]]:
    for placed in plan.placed:
        for one in problem.blocks[placed.block].stretches:
            start = placed.begins() + one.offset
            yield from ((start, start + one.length, amount) for key, amount in one.draws if key == service)
        holds = problem.blocks[placed.block].holds
        ended, until = plan.end(problem, placed.block), plan.held_until(problem, placed.block) if holds else 0
        yield from ((ended, until, amount) for key, amount in holds if key == service and until > ended)


def _sittings(problem: Problem, plan: Plan) -> tuple[Span, ...]:
    """From the first to the last thing that is done without so long a break between that it is better left out."""
    busy = joined((one.start, one.end) for one in (*hands_of(problem, plan), *watching_of(problem, plan)))
    busy = joined([*busy, *(span for at in range(len(problem.stations)) for span in works(problem, plan, at))])
    found: list[Span] = []
    for start, end in busy:
        if found and start - found[-1][1] <= BREAK:
            found[-1] = (found[-1][0], max(end, found[-1][1]))
        else:
            found.append((start if found or start > BREAK else 0, end))
    return tuple(found)
