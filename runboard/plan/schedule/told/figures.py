"""The figures of one plan that pages show, made once: finishes, hours, chances, what is late, what holds it, pace, and its
multiple-activity chart.

Plain records all through, so that a child process can make them and send them back. The chart has people, stations and
services against one time scale, after the person-and-machine chart of the work-study handbooks. Hours in which nothing is
done are left out of it; each stretch between is a sitting.
"""

import pickle
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise

from runboard.plan.pace import PersonMachine
from runboard.plan.schedule.problem.hours import joined
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.plan.schedule.problem.people import walks_of, work_of
from runboard.plan.schedule.problem.worth import Late, late_orders
from runboard.plan.schedule.told.effort import (
    PersonLoad,
    StationLoad,
    finish_of,
    hands_ticks,
    person_loads,
    station_loads,
    works,
)
from runboard.plan.schedule.told.forecast import Forecast, Spread, forecasts
from runboard.plan.schedule.told.holding import Holder, Name, chain, holder
from runboard.plan.schedule.told.pacing import InWork, RunPace, machines_served, run_paces, trays_in_work

# So long with nothing done is left out: an hour and a half.
BREAK = 90 * 2


@dataclass(frozen=True)
class FiguresAsked:
    """What the figures are made of, beside problem and plan. ``begun`` are the trays (run, tray) in work already, ``before``
    is what held the last plan; ``is_many`` has chances reckoned from as many goes as the compiled rule has time for."""

    spread: Spread
    begun: Collection[tuple[str, str]] = ()
    before: Name = ()
    is_many: bool = False


@dataclass(frozen=True)
class Share:
    """What is asked by one run, or by all there is: the tick of its finish, hands-on ticks, each person's load, its chances
    (None where nothing is left)."""

    finish: int = 0
    hands: int = 0
    loads: tuple[PersonLoad, ...] = ()
    outlook: Forecast | None = None


@dataclass(frozen=True)
class Figures:
    """``whole`` is of everything, ``runs`` of each run of which something is still to be done. ``charts`` are the sittings
    of the chart, each packed by itself (``part``): a long plan has fifty, and a page shows a few."""

    whole: Share = field(default_factory=Share)
    runs: Mapping[str, Share] = field(default_factory=dict)
    late: tuple[Late, ...] = ()
    holder: Holder | None = None
    stations: tuple[StationLoad, ...] = ()
    paces: tuple[RunPace, ...] = ()
    machines: Mapping[int, PersonMachine[Fraction]] = field(default_factory=dict)
    in_work: InWork | None = None
    charts: tuple[bytes, ...] = ()

    def part(self, at: int) -> "ChartSitting":
        """One sitting of the chart."""
        found: ChartSitting = pickle.loads(self.charts[at])  # noqa: S301 - packed by ``figures_of``, and by nobody else
        return found


def figures_of(problem: Problem, plan: Plan, asked: FiguresAsked) -> Figures:
    """All the figures of a plan. Seconds of work where it is long: for a child process."""
    runs = list(dict.fromkeys(block.run for block in problem.blocks))
    told = forecasts(problem, plan, ("", *runs), spread=asked.spread) if runs else {}

    def share(run: str) -> Share:
        loads = tuple(person_loads(problem, plan, run))
        return Share(finish_of(problem, plan, run), hands_ticks(problem, plan, run), loads, told.get(run))

    return Figures(
        share(""),
        {run: share(run) for run in runs},
        tuple(late_orders(problem, plan)),
        holder(problem, plan, "", asked.before),
        tuple(station_loads(problem, plan)),
        tuple(run_paces(problem, plan)),
        machines_served(problem),
        trays_in_work(problem, plan, asked.begun),
        tuple(pickle.dumps(sitting) for sitting in parts(chart(problem, plan))),
    )


# the chart


@dataclass(frozen=True)
class Bar:
    """``kind`` is work (hands, or a station at work), watch, walk, held (an ended load waits at its station), drawn (a
    service) or wait (pieces dry or rest). ``share`` of a service's capacity is drawn. ``part`` says which part it is. Where it
    was cut to its sitting, ``since`` is when it really began, ``until`` when it really ends."""

    start: int
    end: int
    kind: str
    block: int = -1
    part: str = ""
    room: int = -1
    share: float = 1.0
    since: int | None = None
    until: int | None = None


@dataclass(frozen=True)
class ChartRow:
    """``kind`` is person, station or service, ``at`` its place in the problem. ``holds`` is for a service for which the chain that
    ends last had to wait, since all of it was taken."""

    kind: str
    at: int
    bars: tuple[Bar, ...] = ()
    holds: bool = False


@dataclass(frozen=True)
class Chart:
    """``sittings`` are the stretches of time that are shown; between them nothing is done but waiting."""

    rows: tuple[ChartRow, ...] = ()
    sittings: tuple[Span, ...] = ()

    @property
    def breaks(self) -> tuple[Span, ...]:
        return tuple((ends, opens) for (_, ends), (opens, _) in pairwise(self.sittings))


@dataclass(frozen=True)
class ChartSitting:
    """One sitting of a chart with its bars, cut to it. ``gap`` is what is left out before it, and the blocks whose pieces
    wait meanwhile."""

    span: Span
    rows: tuple[ChartRow, ...]
    gap: Span | None = None
    waiting: tuple[int, ...] = ()

    @property
    def bars(self) -> int:
        """How many bars there are to draw."""
        return sum(len(row.bars) for row in self.rows)


def parts(found: Chart) -> Iterator[ChartSitting]:
    """A chart, a sitting after the other."""
    for span, gap in zip(found.sittings, (None, *found.breaks), strict=False):
        rows = tuple(replace(row, bars=tuple(within(row, span))) for row in found.rows)
        waits = (bar for row in found.rows if gap for bar in within(row, gap) if bar.kind == "wait")
        yield ChartSitting(span, rows, gap, tuple(bar.block for bar in waits))


def within(row: ChartRow, sitting: Span) -> Iterator[Bar]:
    """The bars of a row in a sitting, cut to it."""
    opens, closes = sitting
    for bar in row.bars:
        if bar.start < closes and bar.end > opens:
            since = bar.start if bar.start < opens and bar.since is None else bar.since
            until = bar.end if bar.end > closes and bar.until is None else bar.until
            yield replace(bar, start=max(bar.start, opens), end=min(bar.end, closes), since=since, until=until)


def bands(found: ChartSitting, most: int) -> Iterator[ChartSitting]:
    """A sitting in as few stretches of about the same length as are no longer: what is cut goes on in the next."""
    opens, closes = found.span
    many = max(1, -(-(closes - opens) // most))
    for at in range(many):
        span = opens + (closes - opens) * at // many, opens + (closes - opens) * (at + 1) // many
        yield ChartSitting(span, tuple(replace(row, bars=tuple(within(row, span))) for row in found.rows))


def chart(problem: Problem, plan: Plan) -> Chart:
    """The chart of the whole plan: rows that have nothing in them are left out, but for people."""
    people, stations, services = map(range, map(len, (problem.people, problem.stations, problem.services)))
    waited_for = {link.which for link in chain(problem, plan) if link.why == "service"}
    rows = (
        *(ChartRow("person", at, tuple(_of_person(problem, plan, at))) for at in people),
        *(ChartRow("station", at, tuple(_of_station(problem, plan, at))) for at in stations),
        *(ChartRow("service", at, tuple(_of_service(problem, plan, at)), at in waited_for) for at in services),
    )
    shown = (row for row in rows if row.bars or (row.kind == "person" and problem.people[row.at].windows))
    return Chart(tuple(shown), _sittings(problem, plan))


def _of_person(problem: Problem, plan: Plan, person: int) -> Iterator[Bar]:
    for walk in walks_of(problem, plan, person):
        yield Bar(walk.start, walk.end, "walk", room=walk.room)
    for at in work_of(problem, plan, person):
        if at.kind != "watching":
            yield Bar(at.start, at.end, "work", at.block, at.kind)
        else:  # who is not the first has taken over
            is_first = at.start <= plan.placed[at.block].watchers[0][1]
            yield Bar(at.start, at.end, "watch", at.block, "watching" if is_first else "taking-over")


def _of_station(problem: Problem, plan: Plan, station: int) -> Iterator[Bar]:
    for block in (there for there in problem.blocks if there.station == station):
        placed, ends = plan.placed[block.index], plan.end(problem, block.index)
        after = problem.unloaded_by.get(block.index)
        if after is not None and plan.placed[after].start > ends:
            yield Bar(ends, plan.placed[after].start, "held", block.index)
        if placed.setup:
            yield Bar(placed.start, placed.begins(), "work", block.index, "setup")
        for stretch in block.stretches:
            start = placed.begins() + stretch.offset
            yield Bar(start, start + stretch.length, "work", block.index, stretch.kind)
        behind = (lag for follower in problem.followers[block.index] for lag in problem.blocks[follower].lags)
        if least := max((lag.least for lag in behind if lag.before == block.index), default=0):
            yield Bar(ends, ends + least, "wait", block.index)


def _of_service(problem: Problem, plan: Plan, service: int) -> Iterator[Bar]:
    """What is drawn at once, as steps."""
    turns: dict[int, int] = {}
    for start, end, amount in _drawn(problem, plan, service):
        turns[start] = turns.get(start, 0) + amount
        turns[end] = turns.get(end, 0) - amount
    drawn, capacity = 0, max(1, problem.services[service][1])
    for start, end in pairwise(sorted(turns)):
        drawn += turns[start]
        if drawn > 0:
            yield Bar(start, end, "drawn", share=min(1.0, drawn / capacity))


def _drawn(problem: Problem, plan: Plan, service: int) -> Iterator[tuple[int, int, int]]:
    for placed in plan.placed:
        for stretch in problem.blocks[placed.block].stretches:
            start = placed.begins() + stretch.offset
            yield from ((start, start + stretch.length, amount) for key, amount in stretch.draws if key == service)
        block, ended = problem.blocks[placed.block], plan.end(problem, placed.block)
        until = plan.held_until(problem, block.index) if block.holds else ended
        yield from ((ended, until, amount) for key, amount in block.holds if key == service and until > ended)


def _sittings(problem: Problem, plan: Plan) -> tuple[Span, ...]:
    """From the first to the last thing that is done without so long a break between that it is better left out."""
    busy = [(span.start, span.end) for at in range(len(problem.people)) for span in work_of(problem, plan, at)]
    found: list[Span] = []
    for start, end in joined(
        [*busy, *(span for at in range(len(problem.stations)) for span in works(problem, plan, at))]
    ):
        if found and start - found[-1][1] <= BREAK:
            found[-1] = (found[-1][0], end)
        else:
            found.append((start if found or start > BREAK else 0, end))
    return tuple(found)
