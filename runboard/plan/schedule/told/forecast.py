"""When it will really be done: the rest of the run many times over, under the plan's dispatch rule, times drawn by chance.

The rule decides by estimates, as people do, and what was begun goes on to its end. A range, no promise.
"""

from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from runboard.plan.schedule.problem.nouns import FAR, Order, Plan, Problem
from runboard.plan.schedule.rule.priorities import STEP, by_start
from runboard.plan.schedule.rule.rule import Cores, Knobs, Rule
from runboard.plan.schedule.told.draws import Spread, day_ends, drawn_lengths, usual_spread

QUANTILES = (5, 25, 50, 75, 95)
GOES = 1000
# Where the rule is not compiled: blocks placed while a page waits, some tenths of a second, and the fewest and most goes.
_BLOCKS_PLAIN, _FEWEST_PLAIN, _MOST_PLAIN = 6_000, 20, 200
_STAYS = (0, 10 * STEP, 100 * STEP, 10**7)


@dataclass(frozen=True)
class Forecast:
    """``finish`` has the ticks before which 5, 25, 50, 75 and 95 of a hundred goes are done. ``by_due`` has for (run, order
    line) the chance that its pieces are there when they are due; ``by_evening`` for the end of each day's hours, as a tick,
    the chance that all is done by then."""

    goes: int
    finish: Mapping[int, int]
    by_due: Mapping[tuple[str, str], float]
    by_evening: tuple[tuple[int, float], ...]

    def moments(self, problem: Problem) -> dict[int, datetime]:
        """The finish as moments: of 5, 25, 50, 75 and 95 of a hundred."""
        return {share: problem.moment(tick) for share, tick in self.finish.items()}


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
    through, by default a thousand times where the rule is compiled and ``plain_goes`` where not; the same seed meets the
    same luck, on however many ``cores``."""
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
    rule = Rule(problem)
    goes = goes or (GOES if rule.is_compiled else plain_goes(problem))
    priority, knobs = follow(rule, plan)
    marks = [block.index for block in problem.blocks if block.last]
    reals = drawn_lengths(problem, goes, spread, seed, days_of(problem, plan))
    found = rule.ends(reals, priority, knobs, marks, cores if rule.is_compiled else None)
    return _told(problem, found, marks, runs)


def days_of(problem: Problem, plan: Plan) -> list[str]:
    """For each block the day on which the plan begins it, by the moment when that day's hours end."""
    ends = day_ends(problem)
    names = [*(problem.moment(tick).isoformat() for tick in ends), ""]
    return [names[bisect_left(ends, placed.start + 1)] for placed in plan.placed]


def plain_goes(problem: Problem) -> int:
    """How many goes plain Python has time for while a page waits."""
    return max(_FEWEST_PLAIN, min(_MOST_PLAIN, _BLOCKS_PLAIN // max(1, len(problem.blocks))))


def follow(rule: Rule, plan: Plan) -> tuple[list[int], Knobs]:
    """The priorities and knobs with which the rule comes nearest to a plan: blocks in the plan's order."""
    priority, wanted = by_start([placed.start for placed in plan.placed]), plan.finish(rule.problem)
    others = (False, True) if len(rule.problem.people) > 1 else (False,)
    tries = [Knobs(stay, other) for stay in _STAYS for other in others]

    def away(knobs: Knobs) -> int:
        finish = rule.finish(priority, knobs)
        return FAR if finish < 0 else abs(finish - wanted)

    return priority, min(tries, key=away)


def _told(problem: Problem, found: Any, marks: Sequence[int], runs: Iterable[str]) -> dict[str, Forecast]:
    import numpy

    rows = numpy.array(found, dtype=numpy.int64)
    by_due = dict(_by_due(problem, rows[:, 1:], marks))
    told = {}
    for run in runs:
        own = [at for at, block in enumerate(marks, 1) if problem.blocks[block].run == run]
        ends = rows[:, own].max(axis=1) if own else rows[:, 0]
        finish = numpy.where((rows[:, 0] < 0) | (ends < 0), FAR, ends)
        ticks = {share: int(numpy.quantile(finish, share / 100, method="inverted_cdf")) for share in QUANTILES}
        told[run] = Forecast(len(rows), ticks, by_due, tuple(_by_evening(problem, finish)))
    return told


def _by_due(problem: Problem, ends: Any, marks: Sequence[int]) -> Iterator[tuple[tuple[str, str], float]]:
    """For (run, order line) with a due moment the chance that its pieces, and those of the lines before it, are there."""
    import numpy

    for run in dict.fromkeys(order.run for order in problem.orders if order.due is not None):
        own = [at for at, block in enumerate(marks) if problem.blocks[block].run == run]
        pieces = numpy.array([problem.blocks[marks[at]].pieces for at in own], dtype=numpy.int64)
        in_turn = numpy.argsort(ends[:, own], axis=1, kind="stable")
        made, sorted_ends = numpy.cumsum(pieces[in_turn], axis=1), numpy.sort(ends[:, own], axis=1)
        for order in problem.orders:
            if order.run == run and order.due is not None:
                there = _there(order, made, sorted_ends, int(pieces.sum()))
                yield (run, order.line), float((there <= order.due).mean())


def _there(order: Order, made: Any, ends: Any, pieces: int) -> Any:
    """For each go when the pieces of an order line, and of those before it, are through the last step. ``made`` counts the
    pieces of the run by their ``ends``."""
    import numpy

    if order.by_then <= 0:
        return numpy.zeros(len(ends), dtype=numpy.int64)
    if pieces < order.by_then:
        return numpy.full(len(ends), FAR)
    enough = (made >= order.by_then).argmax(axis=1)
    return numpy.take_along_axis(ends, enough[:, None], axis=1)[:, 0]


def _by_evening(problem: Problem, finish: Any) -> list[tuple[int, float]]:
    """(the end of a day's hours, the chance to be done by then), from the first with a chance to the first that is sure."""
    found: list[tuple[int, float]] = []
    for evening in day_ends(problem):
        chance = float((finish <= evening).mean())
        if chance > 0:
            found.append((evening, chance))
        if chance == 1:
            break
    return found
