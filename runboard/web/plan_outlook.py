"""The forecast of the plan at hand: made once for each plan, when a page asks for it."""

import os
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager

from runboard.floor.plans import Planned, Shown
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import spread_in
from runboard.plan.schedule.draws import Spread
from runboard.plan.schedule.forecast import Forecast, forecast
from runboard.plan.schedule.problem import Plan
from runboard.plan.schedule.rule import Cores, is_warm


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
    with all_cores() as cores:
        made = forecast(problem, shown.plan, spread=spread_of(shown.planned), run=run, cores=cores)
    with workshop.lock:
        kept[run] = (shown.plan, warm, made)
    return made


@contextmanager
def all_cores() -> Iterator[Cores]:
    """This computer's cores, as threads: the compiled rule lets them work at the same time."""
    many = os.cpu_count() or 1
    with ThreadPoolExecutor(many) as threads:
        yield Cores(many, threads.map)


def spread_of(planned: Planned) -> Spread:
    """The spread of each time element as it was learned."""
    return spread_in(planned.answer.state, planned.estimates)
