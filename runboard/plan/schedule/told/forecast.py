"""When it will really be done: the rest of the run many times over, under the plan's dispatch rule, times drawn by chance.

The rule decides by estimates, as people do, and what was begun goes on to its end. A range, no promise.

A length is lognormal about its estimate, which is its mean: with a middle m and a spread s of the logarithm a lognormal's
mean is m·exp(s²/2) (Johnson, Kotz & Balakrishnan, Continuous Univariate Distributions, 14), so its middle lies that much
below. What makes it longer or shorter is drawn apart for all loads of an element, since its estimate may be off; for
those of one session, since a bad evening makes all times long; and for the load itself. Chance is named by run, step,
kind, and day or load: so two plans, or a run with and without a change, meet the same luck.
"""

import hashlib
import math
from bisect import bisect_left
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import Any

from runboard.plan.schedule.problem.hours import open_spans
from runboard.plan.schedule.problem.nouns import FAR, Block, Plan, Problem
from runboard.plan.schedule.rule.greedy import STEP, by_start
from runboard.plan.schedule.rule.rule import Cores, Knobs, Rule

HAND_SPREAD, MACHINE_SPREAD = 0.27, 0.025
QUANTILES = (5, 25, 50, 75, 95)
GOES = 1000
# Where the rule is not compiled: blocks placed while a page waits, some tenths of a second, and the fewest and most goes.
_BLOCKS_PLAIN, _FEWEST_PLAIN, _MOST_PLAIN = 6_000, 20, 200
_STAYS = (0, 10 * STEP, 100 * STEP, 10**7)
# A gap in everybody's hours that makes a day of what lies before it: six hours.
_NIGHT = 6 * 60 * 2


@dataclass(frozen=True)
class Scatter:
    """How much a time differs from its estimate, as standard deviations of logarithms: what all loads of the ``element``
    share, what those of a ``session`` share, and what each ``load`` has to itself."""

    element: float = 0.0
    session: float = 0.0
    load: float = 0.0

    @property
    def total(self) -> float:
        """The standard deviation of the logarithm of one time."""
        return math.sqrt(self.element**2 + self.session**2 + self.load**2)


# How much a time element scatters: one block's, of one kind.
Spread = Callable[[Block, str], Scatter]


def usual_spread(block: Block, kind: str) -> Scatter:
    """How much times by hand and by machine usually differ from load to load, where the estimate is right."""
    return Scatter(load=MACHINE_SPREAD if kind == "machine" else HAND_SPREAD)


@dataclass(frozen=True)
class SpreadTable:
    """The same by (run, step, kind), as plain records: it can be sent to a child process."""

    scatter: Mapping[tuple[str, str, str], Scatter]

    def __call__(self, block: Block, kind: str) -> Scatter:
        return self.scatter[block.run, block.step, kind]


def spread_table(spread: Spread, *problems: Problem) -> SpreadTable:
    """The spread of every time element of some problems."""
    elements = {(block.run, block.step, kind): block for problem in problems for block in problem.blocks
                for kind in (*(stretch.kind for stretch in block.stretches), "setup")}  # fmt: skip
    return SpreadTable({element: spread(block, element[2]) for element, block in elements.items()})


@dataclass(frozen=True)
class Forecast:
    """``finish`` has the ticks before which 5, 25, 50, 75 and 95 of a hundred goes are done. ``by_due`` has for (run, order
    line) the chance that its pieces are there when they are due; ``by_evening`` for the end of each day's hours, as a tick,
    the chance that all is done by then."""

    goes: int
    finish: Mapping[int, int]
    by_due: Mapping[tuple[str, str], float]
    by_evening: tuple[tuple[int, float], ...]


def forecast(
    problem: Problem,
    plan: Plan,
    goes: int | None = None,
    spread: Spread = usual_spread,
    seed: int = 1,
    run: str = "",
    cores: Cores | None = None,
) -> Forecast:
    """What may become of a plan: of all of it, or of one ``run``. ``goes`` is how often the rest of the run is worked
    through, by default a thousand times where the rule is compiled, and where not as often as a page can wait for; the
    same seed meets the same luck, on however many ``cores``."""
    return forecasts(problem, plan, (run,), goes, spread, seed, cores)[run]


def forecasts(
    problem: Problem,
    plan: Plan,
    runs: Iterable[str],
    goes: int | None = None,
    spread: Spread = usual_spread,
    seed: int = 1,
    cores: Cores | None = None,
) -> dict[str, Forecast]:
    """The same of several runs, '' for all of it, from the same goes."""
    import numpy

    rule = Rule(problem)
    plainly = max(_FEWEST_PLAIN, min(_MOST_PLAIN, _BLOCKS_PLAIN // max(1, len(problem.blocks))))
    goes = goes or (GOES if rule.is_compiled else plainly)
    priority, knobs = follow(rule, plan)
    marks = [block.index for block in problem.blocks if block.last]
    reals = drawn_lengths(problem, goes, spread, seed, days_of(problem, plan))
    rows = numpy.array(rule.ends(reals, priority, knobs, marks, cores if rule.is_compiled else None), numpy.int64)
    rows[rows < 0] = FAR  # it found no place
    by_due = dict(_by_due(problem, rows[:, 1:], [problem.blocks[mark] for mark in marks]))
    told = {}
    for run in runs:
        own = [at for at, mark in enumerate(marks, 1) if problem.blocks[mark].run == run]
        ends = rows[:, own].max(axis=1) if own else rows[:, 0]
        finish = numpy.where(rows[:, 0] < FAR, ends, FAR)
        ticks = {share: int(numpy.quantile(finish, share / 100, method="inverted_cdf")) for share in QUANTILES}
        told[run] = Forecast(len(rows), ticks, by_due, tuple(_by_evening(problem, finish)))
    return told


def follow(rule: Rule, plan: Plan) -> tuple[list[int], Knobs]:
    """The priorities and knobs with which the rule comes nearest to a plan: blocks in the plan's order."""
    priority, wanted = by_start([placed.start for placed in plan.placed]), plan.finish(rule.problem)
    others = (False, True) if len(rule.problem.people) > 1 else (False,)

    def away(knobs: Knobs) -> int:
        finish = rule.finish(priority, knobs)
        return FAR if finish < 0 else abs(finish - wanted)

    return priority, min((Knobs(stay, other) for stay in _STAYS for other in others), key=away)


def days_of(problem: Problem, plan: Plan) -> list[str]:
    """For each block the day on which the plan begins it, by the moment when that day's hours end."""
    ends = day_ends(problem)
    names = [*(problem.moment(tick).isoformat() for tick in ends), ""]
    return [names[bisect_left(ends, placed.start + 1)] for placed in plan.placed]


def day_ends(problem: Problem) -> list[int]:
    """The ticks at which somebody's hours end and nobody's begin before the next day."""
    spans = (*open_spans(problem), (FAR + _NIGHT, FAR + _NIGHT))
    return [closes for (_, closes), (opens, _) in pairwise(spans) if opens - closes >= _NIGHT]


def _by_due(problem: Problem, ends: Any, last: Sequence[Block]) -> Iterator[tuple[tuple[str, str], float]]:
    """For (run, order line) with a due moment the chance that its pieces, and those of the lines before it, are there. A
    column of ``ends`` is of a block of ``last``, a row of a go."""
    import numpy

    for order, due in ((order, order.due) for order in problem.orders if order.due is not None):
        own = [at for at, block in enumerate(last) if block.run == order.run]
        in_turn = numpy.argsort(ends[:, own], axis=1, kind="stable")
        made = numpy.cumsum(numpy.array([last[at].pieces for at in own], numpy.int64)[in_turn], axis=1)
        is_there = (made >= order.by_then) & (numpy.sort(ends[:, own], axis=1) <= due)
        yield (order.run, order.line), float(is_there.any(axis=1).mean() if order.by_then > 0 else due >= 0)


def _by_evening(problem: Problem, finish: Any) -> Iterator[tuple[int, float]]:
    """(the end of a day's hours, the chance to be done by then), from the first with a chance to the first that is sure."""
    for evening in day_ends(problem):
        chance = float((finish <= evening).mean())
        if chance > 0:
            yield evening, chance
        if chance == 1:
            return


# how long everything might take


def drawn_lengths(
    problem: Problem, goes: int, spread: Spread = usual_spread, seed: int = 1, days: Sequence[str] = ()
) -> Any:
    """An array of goes × (stretches, then each block's setup), in whole ticks: lognormal, their mean what is estimated.
    ``days`` says for each block in which session it is meant to be; without them all is one session."""
    import numpy

    # What several loads share is drawn once.
    shared = cache(lambda name: _normal(name, goes, seed))
    parts = [(block, stretch.kind, stretch.length) for block in problem.blocks for stretch in block.stretches]
    parts += [(block, "setup", block.setup) for block in problem.blocks]
    columns = numpy.zeros((len(parts), goes), dtype=numpy.int32)
    for column, (block, kind, length) in zip(columns, parts, strict=True):
        if length > 0:
            step, scatter = f"{block.run}|{block.step}", spread(block, kind)
            found = scatter.load * _normal(f"{step}|{block.load}|{kind}", goes, seed) - scatter.total**2 / 2
            if scatter.element > 0:
                found += scatter.element * shared(f"element|{step}|{kind}")
            if scatter.session > 0:
                found += scatter.session * shared(f"day|{step}|{days[block.index] if days else ''}|{kind}")
            column[:] = numpy.maximum(1, numpy.rint(length * numpy.exp(found)))
    return numpy.ascontiguousarray(columns.T)


def _normal(name: str, goes: int, seed: int) -> Any:
    """Chance numbers by their name, one a go."""
    import numpy

    key = int.from_bytes(hashlib.blake2b(f"{seed}|{name}".encode(), digest_size=16).digest(), "big")
    return numpy.random.Generator(numpy.random.Philox(key=key)).standard_normal(goes)
