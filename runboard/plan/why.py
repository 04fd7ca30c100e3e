"""Why a plan begins something: what waits behind it, and what it frees."""

from collections.abc import Callable, Mapping
from typing import Any

from runboard.plan.next_move import LONG_WAIT
from runboard.plan.prices import Question
from runboard.plan.schedule.problem.nouns import TICK, Block, Plan, Problem
from runboard.run.fold.state import ShopState

# What the greedy rule says of a move where the plan's reason would say the same again.
SAID_ALREADY = {
    "unload": ("machine due", "machine waits"),
    "machine runs": ("machine earns",),
    "then it waits": ("then it waits",),
}


def why(question: Question, block: int) -> dict[str, Any]:
    """Why the plan begins a block now, as a code with its facts: what waits behind it, and what it frees."""
    problem, plan = question.problem, question.plan
    there, end = problem.blocks[block], plan.end(problem, block)
    station = problem.stations[there.station].name
    if there.unloads is not None:
        after = _next_at(problem, plan, there.station, end)
        if after is None:
            return {"code": "unload", "facts": {"station": station}}
        return {"code": "frees", "facts": {"station": station, "next": step_name(question.state, after)}}
    behind = min((problem.blocks[at] for at in problem.followers[block]), key=_start_in(plan), default=None)
    if there.watched is not None or any(stretch.kind == "machine" for stretch in there.stretches):
        return {"code": "machine runs", "facts": {"station": station, "at": problem.moment(end)}}
    if behind is None:
        return {"code": "last", "facts": {"station": station}}
    lag = max((lag.least for lag in behind.lags if lag.before == block), default=0)
    facts: dict[str, Any] = {"next": step_name(question.state, behind)}
    facts["at"] = problem.moment(plan.placed[behind.index].start)
    if lag * TICK >= LONG_WAIT:
        return {"code": "then it waits", "facts": facts}
    return {"code": "waited for", "facts": facts}


def says_more(reason: Mapping[str, Any], because: Mapping[str, Any]) -> bool:
    """Whether the plan's ``reason`` adds something to what the greedy rule says of a move. That nothing waits behind it is
    no reason to begin with it."""
    code = reason.get("code", "last")
    return code != "last" and because.get("code") not in SAID_ALREADY.get(code, ())


def _next_at(problem: Problem, plan: Plan, station: int, tick: int) -> Block | None:
    """What the plan begins at a station next."""
    there = [block for block in problem.blocks if block.station == station and plan.placed[block.index].start >= tick]
    return min(there, key=_start_in(plan), default=None)


def _start_in(plan: Plan) -> Callable[[Block], int]:
    return lambda block: plan.placed[block.index].start


def step_name(state: ShopState, block: Block) -> str:
    """What people call the step that a block is of."""
    run = state.runs.get(block.run)
    return run.route.step_name(block.step) if run is not None else block.step
