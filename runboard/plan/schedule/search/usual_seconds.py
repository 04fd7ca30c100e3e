"""How many seconds work takes on a usual computer: counted where no clock says it, so that a search is the same anywhere."""

from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.rule.greedy import warm

# How many blocks the dispatch rule places in a second, compiled or not; and seconds to make a model, for a block and a person.
_BLOCKS_A_SECOND = 1_500_000
_BLOCKS_PLAIN = 15_000
_MAKING = 0.0004


def of_a_go(problem: Problem) -> float:
    """What the dispatch rule takes to make one plan."""
    return len(problem.blocks) / (_BLOCKS_A_SECOND if warm() else _BLOCKS_PLAIN)


def of_making(problem: Problem, blocks: int) -> float:
    """Roughly what making a model of so many blocks takes, which the solver's own seconds leave out."""
    return _MAKING * blocks * len(problem.people)
