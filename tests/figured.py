"""A plan with its figures, as pages show it: made here and now, as the planner's child makes them."""

from runboard.floor.planning.figures import asked_of, publish
from runboard.floor.planning.plans import Figured, Planned, plan_at_once
from runboard.floor.workshop import Workshop
from runboard.plan.schedule.told.figures import figures_of


def show(workshop: Workshop, planned: Planned | None = None) -> Planned:
    """Have pages show this plan, or one that is made now."""
    workshop.planned = planned = planned or plan_at_once(workshop)
    if planned.plan is not None:
        figures = figures_of(planned.answer.problem, planned.plan, asked_of(workshop, planned))
        publish(workshop, Figured(planned, figures))
    return planned
