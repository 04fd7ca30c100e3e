"""The same plan with alike blocks in their order: only names change places, so it ends when it did."""

from runboard.plan.schedule.problem.alike import Alike
from runboard.plan.schedule.problem.nouns import Placed, Plan


def renamed(plan: Plan, same: Alike) -> Plan:
    """The plan in which the first of each group of alike blocks comes first, and so on."""
    placed = list(plan.placed)
    for at in same.ordered:
        group = same.groups[at]
        here = sorted((plan.placed[block] for block in group), key=lambda one: (one.start, one.block))
        for block, one in zip(group, here, strict=True):
            placed[block] = Placed(block, one.start, one.setup, one.hands, one.watchers)
    return Plan(tuple(placed), plan.source)
