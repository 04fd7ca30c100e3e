"""The plan as it would have been when the run was opened: by the times of then and everybody's usual hours."""

from collections.abc import Iterator
from datetime import datetime

from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.greedy import RULES, greedy_plan
from runboard.plan.schedule.rule.rule import NoPlace
from runboard.plan.schedule.told.figures import Bar, ChartRow, chart
from runboard.review.happened.nouns import DayPart, Doing
from runboard.review.happened.tiles import tiled
from runboard.review.happened.why import NEEDS_UNLOADING
from runboard.review.opening import opening_state
from runboard.review.past import Past
from runboard.run.refusal import Refused

_DOING: dict[str, Doing] = {"work": "work", "watch": "watching", "walk": "walking", "held": "waiting"}
# Every priority once: as many goes whether or not the rule is compiled, so that one past has one promise.
_GOES = 2 * len(RULES)
# Of what lies over one another in a person's row hands come first.
_ORDER = ("work", "walk", "watch", "held")


Planned = tuple[tuple[DayPart, ...], datetime | None]


def planned_of(past: Past) -> Planned:
    """The rows of people and stations, and the finish that was promised; nothing and None where no plan could be made of all
    that there was to do."""
    state = opening_state(past, ())
    if not state.runs:
        return (), None
    try:
        problem = problem_for(state, past.book, past.run.opened_at, past.believed)
        if not problem.blocks or problem.left_out:
            return (), None
        plan = greedy_plan(problem, _GOES)
    except (Refused, NoPlace):
        return (), None
    return tuple(_parts(problem, plan)), problem.moment(plan.finish(problem))


def _parts(problem: Problem, plan: Plan) -> Iterator[DayPart]:
    for row in chart(problem, plan).rows:
        if row.kind != "service":
            yield from _row(problem, row)


def _row(problem: Problem, row: ChartRow) -> Iterator[DayPart]:
    shown = [bar for bar in row.bars if bar.kind in _ORDER]
    if not shown:
        return
    layers = [
        [(problem.moment(bar.start), problem.moment(bar.end), bar) for bar in shown if bar.kind == kind]
        for kind in _ORDER
    ]
    opens, closes = min(bar.start for bar in shown), max(bar.end for bar in shown)
    for began, ended, bar in tiled(problem.moment(opens), problem.moment(closes), layers, None):
        if bar is not None:
            yield _part(problem, row, bar, began, ended)


def _part(problem: Problem, row: ChartRow, bar: Bar, began: datetime, ended: datetime) -> DayPart:
    block = problem.blocks[bar.block] if bar.block >= 0 else None
    step, load = (block.step, block.load) if block is not None else ("", "")
    why = NEEDS_UNLOADING if bar.kind == "held" else ""
    kind = bar.part if bar.kind == "work" else ""
    if row.kind == "person":
        return DayPart("person", problem.people[row.at].key, began, ended, _DOING[bar.kind], kind, why,
                       step=step, load=load)  # fmt: skip
    return DayPart("station", problem.stations[row.at].key, began, ended, _DOING[bar.kind], kind, why,
                   step=step, load=load)  # fmt: skip
