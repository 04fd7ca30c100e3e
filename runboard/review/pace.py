"""Figures of pace that a review can be made of, from the work-study handbooks: what a person with machines leaves idle and
costs, how a line is balanced, what is in work, what comes through without a defect. What a plan tells is in ``plan/pace``.

Person and machine as in the texts on machine assignment (Niebel, *Motion and Time Study*; Groover, *Work Systems*;
Tompkins et al., *Facilities Planning*). Little 1961, 'A proof for the queuing formula L = λW', *Operations Research* 9,
383-387.
"""

import math
from datetime import timedelta

from runboard.plan.pace import Number, PersonMachine, StationLine, Time


def ideal_machines(served: PersonMachine[Time]) -> float:
    """n' = (a + t) / (a + b): so many machines and neither ever waits. ZeroDivisionError where nobody is needed."""
    return float(served.of_machine / served.of_person)


def cycle(served: PersonMachine[Time], machines: int) -> Time:
    """T = max(a + t, n (a + b)): after so long all n machines have had their turn."""
    return max(served.of_machine, machines * served.of_person)


def person_idle(served: PersonMachine[Time], machines: int) -> Time:
    """What the person has left of a cycle."""
    return cycle(served, machines) - machines * served.of_person


def machine_idle(served: PersonMachine[Time], machines: int) -> Time:
    """How long each machine waits for the person in a cycle."""
    return cycle(served, machines) - served.of_machine


def unit_cost(served: PersonMachine[timedelta], machines: int, person: float, machine: float) -> float:
    """TC(n) = (Co + n Cm) T / n: what one piece of one machine costs, at these rates an hour."""
    hours = cycle(served, machines) / timedelta(hours=1)
    return (person + machines * machine) * hours / machines


def cheapest(served: PersonMachine[timedelta], person: float, machine: float) -> int:
    """How many machines make the piece cheapest: one of the two whole numbers beside n', and never none."""
    beside = {max(1, served.whole), served.whole + 1}
    return min(sorted(beside), key=lambda machines: unit_cost(served, machines, person, machine))


def fewest_stations(work: Time, a_cycle: Time) -> int:
    """⌈Σt / C⌉: with fewer stations a piece every cycle is not possible. More may be needed: tasks are whole."""
    return int(-(-work // a_cycle))


def idle(line: StationLine[Time], a_cycle: Time | None = None) -> Time:
    """What the stations wait in a cycle, all together; in the line's own one, or a slower one that is given."""
    each = line.cycle if a_cycle is None else a_cycle
    return len(line.loads) * each - line.work


def balance_delay(line: StationLine[Time], a_cycle: Time | None = None) -> float:
    """The share of the stations' time in which they wait, in the line's own cycle or a slower one."""
    return 1 - line.efficiency(a_cycle)


def average_in_work(rate: Number, time_through: Number) -> Number:
    """Little's law, L = λW: what is begun and not done, on average, from how many come off in a unit of time and how long
    each takes from its first step to its last. Exact for any stretch of time of which both are counted."""
    return rate * time_through


def throughput_yield(defects: float, units: float) -> float:
    """The share of units without a defect, e^(-dpu), where defects fall on units at random (Poisson)."""
    return math.exp(-defects / units)
