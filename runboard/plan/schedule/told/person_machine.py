"""Each machine of a problem as the person-and-machine chart of the handbooks sees it."""

from fractions import Fraction

from runboard.plan.pace import PersonMachine
from runboard.plan.schedule.problem.nouns import Block, Problem


def machines_served(problem: Problem) -> dict[int, PersonMachine[Fraction]]:
    """For each station with a machine and loads still to be begun, the average load as the person-and-machine chart sees
    it: nothing counts but hands. Who must stay and watch, and in which room, is not in it."""
    found = {}
    for at in range(len(problem.stations)):
        loads = [one for one in problem.blocks if one.station == at and not one.begun and _machine(one)]
        hands = sum(one.hands + _unloading(problem, one) for one in loads)
        if hands:
            machine = sum(_machine(one) for one in loads)
            found[at] = PersonMachine(Fraction(hands, len(loads)), Fraction(0), Fraction(machine, len(loads)))
    return found


def _machine(block: Block) -> int:
    return sum(one.length for one in block.stretches if one.kind == "machine")


def _unloading(problem: Problem, block: Block) -> int:
    after = problem.unloaded_by.get(block.index)
    return 0 if after is None else problem.blocks[after].hands
