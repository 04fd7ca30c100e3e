"""Why a plan is no earlier with less of some work: what became of the time that was won."""

from collections.abc import Callable
from typing import Literal

from runboard.plan.schedule.holding import chain
from runboard.plan.schedule.problem import Block, Plan, Problem

# Not in the chain that ends last; or in it, and behind it the chain waits for somebody to be there; or neither.
Why = Literal["slack", "hours", "tight"]


def why_no_earlier(problem: Problem, plan: Plan, is_it: Callable[[Block], bool], run: str = "") -> Why:
    """``slack`` where the longest chain does not go through the work that ``is_it`` names, ``hours`` where it does and
    waits behind it for hours, so that what is won is lost there; ``tight`` where neither says why."""
    links = chain(problem, plan, run)
    at = [nth for nth, link in enumerate(links) if is_it(problem.blocks[link.block])]
    if not at:
        return "slack"
    return "hours" if any(link.why == "hours" for link in links[at[-1] + 1 :]) else "tight"
