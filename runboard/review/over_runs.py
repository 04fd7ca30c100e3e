"""Runs beside one another, product by product: what an hour of hands gave, what was good, when it was promised and there; and
one time element over all of them.

It reads each run once and no more of it than its loads and trays, so that many years of runs cost what they hold.
"""

from collections.abc import Iterable, Iterator, Mapping, MutableMapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from runboard.plan.estimates import Estimates
from runboard.plan.observed import guess_of
from runboard.review.happened.happened import finish_of
from runboard.review.hours import HANDS
from runboard.review.measured.over_runs import likely_times
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState
from runboard.shop.product import ZERO

HOUR = timedelta(hours=1)


@dataclass(frozen=True)
class RunFigures:
    """One finished run. ``loads`` are those that are through, ``timed`` those of them of which hands' time is known at all:
    where not all are, ``hands`` is less than it was. ``promised`` is the finish that the plan at the opening promised, None
    where nobody reckoned it or none could be made."""

    id: str
    name: str
    product: str
    product_name: str
    opened_at: datetime
    finished: datetime | None
    good: int
    scrap: int
    hands: timedelta
    loads: int
    timed: int
    promised: datetime | None = None

    @property
    def is_whole(self) -> bool:
        """Whether hands' time is known of every load."""
        return self.timed == self.loads

    @property
    def an_hour(self) -> float | None:
        """Good pieces an hour of hands; None where no time is known."""
        return self.good / (self.hands / HOUR) if self.hands else None

    @property
    def a_good_piece(self) -> timedelta | None:
        """Hands' time for each good piece; None where no time is known, or none is good."""
        return self.hands / self.good if self.hands and self.good else None

    @property
    def good_percent(self) -> int | None:
        """The share of what was good or lost that was good, in whole per cents; None where nothing was either."""
        return percent_of(self.good, self.good + self.scrap)

    @property
    def took(self) -> timedelta | None:
        """From when it was opened until it was done."""
        return None if self.finished is None else self.finished - self.opened_at

    @property
    def later(self) -> timedelta | None:
        """By how much the finish came after the promise, negative before it."""
        return None if self.promised is None or self.finished is None else self.finished - self.promised


# For each run what was read of it, as long as the run is the same.
ReadRuns = MutableMapping[str, tuple[RunState, RunFigures]]


@dataclass(frozen=True)
class ProductRuns:
    """The finished runs of a product, the oldest first. ``name`` is what it was called last."""

    product: str
    name: str
    runs: tuple[RunFigures, ...]

    @property
    def good(self) -> int:
        return sum(run.good for run in self.runs)

    @property
    def good_percent(self) -> int | None:
        """Of all pieces of all these runs the share that came good, in whole per cents."""
        return percent_of(self.good, self.good + sum(run.scrap for run in self.runs))


def percent_of(good: int, begun: int) -> int | None:
    """A share in whole per cents, rounded once: 100 is only where nothing was lost. None of nothing."""
    if not begun:
        return None
    return 100 if good == begun else min(99, round(100 * good / begun))


def by_product(runs: Iterable[RunState], kept: ReadRuns | None = None) -> list[ProductRuns]:
    """The finished runs of each product; that of the newest run comes first. ``kept`` holds what was read of runs before;
    give the same again."""
    kept = {} if kept is None else kept
    found: dict[str, list[RunFigures]] = {}
    for run in runs:
        if run.state == "finished":
            before = kept.get(run.id)
            if before is None or before[0] is not run:
                before = kept[run.id] = (run, figures_of(run))
            found.setdefault(run.product, []).append(before[1])
    made = [
        ProductRuns(product, some[-1].product_name, tuple(some))
        for product, unordered in found.items()
        if (some := sorted(unordered, key=lambda run: (run.opened_at, run.id)))
    ]
    return sorted(made, key=lambda product: product.runs[-1].opened_at, reverse=True)


def figures_of(run: RunState) -> RunFigures:
    """What a run gave, and what it took of people's time."""
    loads = [load for load in run.past.values() if load.state == "done"]
    trays = run.trays.values()
    return RunFigures(
        run.id,
        run.name,
        run.product,
        run.product_name,
        run.opened_at,
        finish_of(run),
        sum(tray.good for tray in trays),
        sum(tray.scrapped for tray in trays),
        sum((length for load in (*run.past.values(), *run.loads.values()) for length in _hands(load)), ZERO),
        len(loads) + _filled_in(run),
        sum(any(True for _ in _hands(load)) for load in loads),
    )


def _hands(load: Load) -> Iterator[timedelta]:
    for span in load.spans:
        if span.kind in HANDS and span.ended_at is not None:
            yield span.ended_at - span.began_at


def _filled_in(run: RunState) -> int:
    """Loads that nobody pressed and whose pieces were counted all the same."""
    return len(
        {
            (step, load)
            for tray in run.trays.values()
            for step, counts in tray.counts.items()
            for load, (good, bad) in counts.items()
            if good + bad and load not in run.past and load not in run.loads
        }
    )


def with_promises(product: ProductRuns, promised: Mapping[str, datetime | None]) -> ProductRuns:
    """The same runs, each with the finish that was promised, by run."""
    return replace(product, runs=tuple(replace(run, promised=promised.get(run.id)) for run in product.runs))


# one time element


@dataclass(frozen=True)
class MeasuredElement:
    """A time element that was measured ``times`` times over all runs of its product; ``run`` is the newest of them, by whose
    route and wood it is looked at. ``kind`` is setup, loading, machine, unloading (of a load) or hand (of a piece)."""

    run: RunState
    step: Step
    kind: str
    times: int

    @property
    def id(self) -> str:
        return f"{self.run.product}|{self.step.key}|{self.kind}"


def measured_elements(runs: Iterable[RunState], estimates: Estimates) -> list[MeasuredElement]:
    """Every time element of which something was measured and that the newest run of its product still has: product by
    product, in the order of the route."""
    newest: dict[str, RunState] = {}
    for run in runs:
        if run.product not in newest or run.opened_at >= newest[run.product].opened_at:
            newest[run.product] = run
    return [
        MeasuredElement(run, step, kind, times)
        for run in sorted(newest.values(), key=lambda run: run.opened_at, reverse=True)
        for step in run.route.steps
        for kind in (*HANDS, "machine")
        if (times := len(likely_times(estimates, run, step, kind)))
    ]


def furthest_moved(elements: Iterable[MeasuredElement], estimates: Estimates) -> MeasuredElement | None:
    """The element that moves its run by most minutes against what the route says, up or down; None of none."""
    return max(elements, key=lambda one: abs(moves_run(one, estimates)), default=None)


def moves_run(one: MeasuredElement, estimates: Estimates) -> timedelta:
    """By how much all of an element in its run takes longer than the route says, by the mean of its times; negative where
    less. A step that the run has not come to counts as one load of one piece."""
    times = likely_times(estimates, one.run, one.step, one.kind)
    if not times:
        return ZERO
    loads = [load for load in one.run.past.values() if load.step == one.step.key and load.state == "done"]
    units = sum(sum(load.pieces.values()) for load in loads) if one.kind == "hand" else len(loads)
    mean = sum((time.length for time in times), ZERO) / len(times)
    return (mean - guess_of(one.step, one.kind)) * max(1, units)
