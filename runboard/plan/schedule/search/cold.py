"""Any plan at all, from nothing: where what is begun, latest ends and wet rooms leave the dispatch rule no place.

The model is asked for a plan before an early horizon, and where it has none before later ones, twice as many hours each
time; if there is none before the end of all hours, there is none.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import Chains, Presence, open_spans
from runboard.plan.schedule.problem.nouns import FAR, Plan, Problem, leading_to, only
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, SolveLimits, Stop, Watching
from runboard.plan.schedule.search.staffing import counts_heads, staffed
from runboard.plan.schedule.search.walks import WHOLE

# The share of the time that is left for one horizon, and the least of it in seconds; and for telling what clashes.
_SHARE, _LEAST, _CLASH = 0.3, 0.2, 0.5


@dataclass(frozen=True)
class Cold:
    """A plan that keeps all rules; or none, ``is_proved`` where there is none: then ``clash`` are blocks that cannot all be
    done, with what leads to them, the last of them the one that is too much; () where that was not found. No plan and no
    proof: nobody knows."""

    plan: Plan | None
    is_proved: bool = False
    clash: tuple[int, ...] = ()


def cold(problem: Problem, seconds: float, stop: Stop | None = None) -> Cold:
    """Any plan of a problem, without one at hand, within some seconds of the solver; or the proof that there is none."""
    looking = _Looking(seconds, stop)
    found = looking.plan_of(problem)
    if not found.is_proved:
        return found
    looking.left = max(looking.left, _CLASH)
    return Cold(None, True, looking.clash(problem))


class _Looking:
    """Questions to the model, as long as seconds are ``left``."""

    def __init__(self, seconds: float, stop: Stop | None) -> None:
        self.left, self.stop = seconds, stop

    def plan_of(self, problem: Problem) -> Cold:
        """Any plan, at ever later horizons."""
        if not problem.blocks:
            return Cold(Plan(()))
        chains, horizons = Chains(problem), list(_horizons(problem))
        for horizon in horizons[:-1]:
            for in_order in (True, False) if len(problem.blocks) > WHOLE else (False, True):
                found = self._before(problem, horizon, chains, "named", in_order)
                if found.plan is not None:
                    return found
                if found.is_proved:  # of this horizon alone
                    break
        ways: list[Watching] = ["named", "by turns", "anyone"] if counts_heads(problem) else ["named"]
        for watching in ways:
            found = self._before(problem, horizons[-1], chains, watching)
            if found.plan is not None or found.is_proved:
                return found
        return Cold(None)

    def _before(
        self, problem: Problem, horizon: int, chains: Chains, watching: Watching, in_order: bool = False
    ) -> Cold:
        """A plan that ends before a horizon; whether there is none."""
        if self.left <= 0:
            return Cold(None)
        model = Model(problem, Aim(horizon, watching=watching, least="nothing"), chains)
        limits = SolveLimits(min(self.left, max(_LEAST, self.left * _SHARE)), in_order=in_order)
        answer = model.solve(limits, stop=self.stop)
        self.left -= answer.seconds
        plan = staffed(problem, answer.plan) if answer.plan and watching == "anyone" else answer.plan
        if plan is not None and not broken(problem, plan):
            return Cold(plan)
        return Cold(None, answer.is_all and answer.plan is None and model.is_bound)

    def clash(self, problem: Problem) -> tuple[int, ...]:
        """Of blocks in an order in which each comes after what it waits for: the first that is too much for those before
        it, and of those the first that is too much beside it."""
        order = Chains(problem).order
        last = self._first_too_many(len(order), lambda many: self._is_too_much(problem, order[:many]))
        if last is None:
            return ()
        least = leading_to(problem, [order[last - 1]])
        alone = [block.index for block in least]
        other = self._first_too_many(last, lambda many: self._is_too_much(problem, [*order[:many], *alone]))
        if other is None:
            return (order[last - 1],)
        return tuple(dict.fromkeys((order[other - 1], order[last - 1]))) if other else (order[last - 1],)

    def _first_too_many(self, many: int, is_too_much: Callable[[int], bool]) -> int | None:
        """The least count from 0 to ``many`` that is too much; None where time ran out."""
        few = 0
        while few < many:
            if self.left <= 0:
                return None
            half = (few + many) // 2
            few, many = (few, half) if is_too_much(half) else (half + 1, many)
        return many

    def _is_too_much(self, problem: Problem, blocks: Sequence[int]) -> bool:
        return self.plan_of(only(problem, leading_to(problem, blocks))).is_proved


def _horizons(problem: Problem) -> Iterator[int]:
    """Ticks after ever more hours, twice as many each time, from twice those that any plan takes; last one by which every
    plan is through, if there is one."""
    least, hours = bound(problem).tick, Presence.of([open_spans(problem)])
    open_ticks = max(1, hours.passed(least))
    while (horizon := hours.after(0, 2 * open_ticks)) < FAR:
        yield max(horizon, 2 * least) + 1
        open_ticks *= 2
    yield FAR + max(block.length + block.release for block in problem.blocks) + 1
