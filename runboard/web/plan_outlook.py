"""The forecast of the plan at hand: made once for each plan, when a page asks for it."""

from runboard.floor.plans import Planned, Shown
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import spread_in
from runboard.plan.schedule.draws import Spread
from runboard.plan.schedule.forecast import Forecast, forecast
from runboard.plan.schedule.problem import Plan
from runboard.plan.schedule.rule import is_warm


def outlook_of(workshop: Workshop, shown: Shown, run: str = "") -> Forecast | None:
    """How the plan may turn out, of everything or of one run; None where nothing is left. As long as the dispatch rule is
    not compiled it is from fewer goes, and once it is, it is made again."""
    problem, warm = shown.problem, is_warm()
    if not problem.blocks:
        return None
    with workshop.lock:
        kept: dict[str, tuple[Plan, bool, Forecast]] = workshop.kept.setdefault("forecasts", {})
        plan, was_warm, found = kept.get(run, (None, False, None))
    if plan is shown.plan and was_warm == warm:
        return found
    made = forecast(problem, shown.plan, spread=spread_of(shown.planned), run=run)
    with workshop.lock:
        kept[run] = (shown.plan, warm, made)
    return made


def spread_of(planned: Planned) -> Spread:
    """The spread of each time element as it was learned."""
    return spread_in(planned.answer.state, planned.estimates)
