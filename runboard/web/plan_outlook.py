"""The forecast of the plan at hand: made once for each plan, when a page asks for it."""

from runboard.floor.plans import Planned, Shown
from runboard.floor.workshop import Workshop
from runboard.plan.schedule.draws import Spread
from runboard.plan.schedule.forecast import Forecast, forecast
from runboard.plan.schedule.problem import Block, Plan
from runboard.plan.schedule.rule import is_warm

# Blocks placed while a page waits, as long as the dispatch rule is not compiled; then no forecast until it is.
MOST_PLAIN = 2_000
GOES_PLAIN = 20


def outlook_of(workshop: Workshop, shown: Shown, run: str = "") -> Forecast | None:
    """How the plan may turn out, of everything or of one run; None where that takes longer than a page may wait, until the rule is compiled."""
    problem = shown.problem
    is_long = not is_warm() and len(problem.blocks) * GOES_PLAIN > MOST_PLAIN
    if is_long or not problem.blocks:
        return None
    warm = is_warm()
    with workshop.lock:
        kept: dict[str, tuple[Plan, bool, Forecast]] = workshop.kept.setdefault("forecasts", {})
        plan, was_warm, found = kept.get(run, (None, False, None))
    if plan is shown.plan and was_warm == warm:
        return found
    made = forecast(problem, shown.plan, None if warm else GOES_PLAIN, spread_of(shown.planned), run=run)
    with workshop.lock:
        kept[run] = (shown.plan, warm, made)
    return made


def spread_of(planned: Planned) -> Spread:
    """The spread of each time element as it was learned."""
    runs = planned.answer.state.runs

    def spread(block: Block, kind: str) -> float:
        step = runs[block.run].route.step(block.step)
        return planned.estimates.of(runs[block.run], step, kind).spread if step is not None else 0.25

    return spread
