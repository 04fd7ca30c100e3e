"""What the planner has done in child processes: the solver's search, a plan's figures, a change tried.

All would hold up a server that answers phones, and the solver is loaded in the child and nowhere else.
"""

from collections.abc import Callable, Collection, Mapping, Sequence
from contextlib import AbstractContextManager
from dataclasses import replace
from typing import TYPE_CHECKING, NamedTuple, Protocol

from runboard.plan.price_search import search_prices
from runboard.plan.prices import Asked as Wanted
from runboard.plan.prices import Price
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.schedule.search.bounds import Bound
from runboard.plan.schedule.told.compared import Compared, Side, compared
from runboard.plan.schedule.told.figures import Figures, FiguresAsked, figures_of
from runboard.plan.schedule.told.forecast import Spread

if TYPE_CHECKING:
    from runboard.plan.schedule.search.best import Improved

Clock = Callable[[], float]
# So long a price is searched for: mostly a small part of it, until nothing is found to be lost.
SECONDS_A_PRICE = 2.0


class StopCall(Protocol):
    """Within ``calls(ask)``, ``ask`` is called on another thread once the search is to stop."""

    def calls(self, ask: Callable[[], object]) -> AbstractContextManager[None]: ...


class Found(NamedTuple):
    """What a search has come to: the best plan so far, None while there is none, and what no plan can beat.
    ``calmer`` is one with fewer walks that is done later. ``is_impossible`` once it is proved that there is none, with the
    blocks that clash. ``prices`` are what it costs beside the plan that somebody begins something else now."""

    plan: Plan | None
    bound: Bound | None = None
    is_impossible: bool = False
    clash: tuple[int, ...] = ()
    calmer: Plan | None = None
    prices: Mapping[Wanted, Price] | None = None


def come_up() -> bool:
    """Load the solver and the compiled rule, which is compiled first where it never was; False where there is no compiler."""
    import runboard.plan.schedule.search.cold
    import runboard.plan.schedule.search.improve  # noqa: F401 - loaded before somebody waits for it

    return warm()


def search(
    problem: Problem,
    plan: Plan | None,
    seconds: float,
    near: Collection[int],
    wanted: Sequence[Wanted],
    told: Callable[..., None],
    stopped: StopCall,
    clock: Clock | None = None,
) -> Found:
    """The best that is found within so many seconds of ``clock`` (those that the solver counts, without one), or until it is
    ``stopped``: never worse than ``plan``, and any plan where there is none. Each better one is told of on the way. It
    is looked first around ``near``, blocks at which something has happened. Then what it costs that somebody begins
    something else: (block, person), for each ``wanted``.

    Only plain records are answered: reading the solver's own would load it where they are read.
    """
    from runboard.plan.schedule.search.cold import cold
    from runboard.plan.schedule.search.improve import improve
    from runboard.plan.schedule.search.solving import Stop

    began, stop = clock() if clock else 0.0, Stop()
    with stopped.calls(stop.ask):
        if plan is None:
            first = cold(problem, seconds, stop)
            if first.plan is None:
                return Found(None, None, first.is_proved, first.clash if first.is_proved else ())
            plan = first.plan
            told(0, 0, Found(plan))

        def tell(done: int, total: int, latest: "Improved | None" = None) -> None:
            told(done, total, None if latest is None else _as_found(latest))

        left = seconds - (clock() - began) if clock else seconds
        found = improve(problem, plan, left, tell, clock=clock, stopped=stop, near=near)
        priced = search_prices(problem, found.plan, wanted, SECONDS_A_PRICE, clock=clock, stopped=stop)
    return _as_found(found)._replace(plan=priced.plan, prices=priced.prices)


def _as_found(improved: "Improved") -> Found:
    return Found(improved.plan, improved.bound, calmer=improved.calmer)


def make_figures(problem: Problem, plan: Plan, asked: FiguresAsked, told: Callable[..., None]) -> Figures:
    """The figures of a plan, by the compiled rule where that is at hand."""
    if asked.is_many:
        warm()
    return figures_of(problem, plan, asked)


def compare(
    now: Problem, changed: Problem, run: str, spread: Spread, is_many: bool, told: Callable[..., None]
) -> Compared:
    """Both plans of a run, as things are and with a change, without their problems: whoever asks has those."""
    if is_many:
        warm()
    found = compared(now, changed, run, spread, None)
    return replace(found, before=_light(found.before), after=_light(found.after))


def _light(side: Side | None) -> Side | None:
    return None if side is None else replace(side, problem=replace(side.problem, blocks=(), left_out=()))
