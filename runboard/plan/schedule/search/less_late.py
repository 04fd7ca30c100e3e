"""What a search is to look for where order lines have due moments: first to be less late, then to be done sooner in time."""

from runboard.plan.schedule.problem.hours import open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import dated, lateness_of
from runboard.plan.schedule.search.model import Watching, Wish
from runboard.plan.schedule.search.staffing import counts_heads, differ

# By how many evenings the whole may end later for an order line to be in time.
_EVENINGS = 3


def less_late(problem: Problem, plan: Plan, at_least: int) -> Wish:
    """To be less late than a plan, though the whole may end some evenings later for it."""
    finish = plan.finish(problem)
    closes = [closes for _, closes in open_spans(problem) if closes > finish]
    latest = min([2 * finish, *closes[:_EVENINGS][-1:]])
    watching: Watching = "by turns" if differ(problem) else "named"
    return Wish(1 + max(finish, latest), at_least, watching=watching, late=lateness_of(problem, plan), least="late")


def kept_late(problem: Problem, plan: Plan) -> int | None:
    """What a plan that is finished sooner must keep: to be no later for the order lines. None where any such plan does."""
    finish = plan.finish(problem)
    return lateness_of(problem, plan) if any(due < finish for _, due in dated(problem)) else None


def whatever_is_due(problem: Problem, plan: Plan, at_least: int) -> Wish:
    """To be done sooner though order lines are late: it says what being in time costs, and bounds every plan."""
    return Wish(plan.finish(problem), at_least, watching="anyone" if counts_heads(problem) else "named")
