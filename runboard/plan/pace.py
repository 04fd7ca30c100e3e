"""Figures of pace from the work-study handbooks: person and machine, takt time, line balance, trays in work.

Spans are timedeltas or plain numbers (ticks, seconds), the same kind within one figure; what comes out is of that kind.

Person and machine as in the texts on machine assignment (Niebel, *Motion and Time Study*; Groover, *Work Systems*;
Tompkins et al., *Facilities Planning*). Takt time as in Rother and Shook, *Learning to See* (from memory). Little 1961, 'A
proof for the queuing formula L = λW', *Operations Research* 9, 383-387.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from fractions import Fraction
from typing import Generic, TypeVar

Time = TypeVar("Time", timedelta, float, Fraction)
Number = TypeVar("Number", float, Fraction)


@dataclass(frozen=True)
class PersonMachine(Generic[Time]):
    """One person and alike machines. Of each machine's cycle ``concurrent`` is what takes both (loading, unloading),
    ``independent`` what the person does apart from it (look over, walk on), ``machine`` its run by itself."""

    concurrent: Time
    independent: Time
    machine: Time

    @property
    def of_machine(self) -> Time:
        """a + t: the cycle of one machine that nobody keeps waiting."""
        return self.concurrent + self.machine

    @property
    def of_person(self) -> Time:
        """a + b: what one cycle of one machine takes of the person."""
        return self.concurrent + self.independent

    @property
    def ideal(self) -> float:
        """n' = (a + t) / (a + b): so many machines and neither ever waits. ZeroDivisionError where nobody is needed."""
        return float(self.of_machine / self.of_person)

    @property
    def whole(self) -> int:
        """The most machines that one person keeps going without any of them waiting: n' rounded down."""
        return int(self.of_machine // self.of_person)

    def cycle(self, machines: int) -> Time:
        """T = max(a + t, n (a + b)): after so long all n machines have had their turn."""
        return max(self.of_machine, machines * self.of_person)

    def person_idle(self, machines: int) -> Time:
        """What the person has left of a cycle."""
        return self.cycle(machines) - machines * self.of_person

    def machine_idle(self, machines: int) -> Time:
        """How long each machine waits for the person in a cycle."""
        return self.cycle(machines) - self.of_machine

    def unit_cost(self: "PersonMachine[timedelta]", machines: int, person: float, machine: float) -> float:
        """TC(n) = (Co + n Cm) T / n: what one piece of one machine costs, at these rates an hour."""
        hours = self.cycle(machines) / timedelta(hours=1)
        return (person + machines * machine) * hours / machines

    def cheapest(self: "PersonMachine[timedelta]", person: float, machine: float) -> int:
        """How many machines make the piece cheapest: one of the two whole numbers beside n', and never none."""
        beside = {max(1, self.whole), self.whole + 1}
        return min(sorted(beside), key=lambda machines: self.unit_cost(machines, person, machine))


def takt_time(available: Time, pieces: int) -> Time:
    """The hours there are until pieces are due, over those still to make: one is needed every so often. ``pieces`` at
    least one."""
    return available / pieces


def fewest_stations(work: Time, cycle: Time) -> int:
    """⌈Σt / C⌉: with fewer stations a piece every ``cycle`` is not possible. More may be needed: tasks are whole."""
    return int(-(-work // cycle))


@dataclass(frozen=True)
class Line(Generic[Time]):
    """Stations that each piece passes: ``loads`` is the work on one piece at each, at least one of them not nought."""

    loads: Sequence[Time]

    @property
    def cycle(self) -> Time:
        """One piece comes off every so often: the slowest station's load. Time saved elsewhere saves none of it."""
        return max(self.loads)

    def idle(self, cycle: Time | None = None) -> Time:
        """What the stations wait in a cycle, all together; in the line's own one, or a slower one that is given."""
        each = self.cycle if cycle is None else cycle
        return len(self.loads) * each - self._work

    def efficiency(self, cycle: Time | None = None) -> float:
        """Work over the time of all stations in a cycle."""
        each = self.cycle if cycle is None else cycle
        return float(self._work / (len(self.loads) * each))

    def balance_delay(self, cycle: Time | None = None) -> float:
        """The share of the stations' time in which they wait."""
        return 1 - self.efficiency(cycle)

    @property
    def _work(self) -> Time:
        return sum(self.loads[1:], self.loads[0])


def average_in_work(rate: Number, time_through: Number) -> Number:
    """Little's law, L = λW: what is begun and not done, on average, from how many come off in a unit of time and how long
    each takes from its first step to its last. Exact for any stretch of time of which both are counted."""
    return rate * time_through
