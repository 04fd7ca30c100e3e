"""Figures of pace that a plan tells, from the work-study handbooks: person and machine, takt time, line balance.

Spans are timedeltas or plain numbers (ticks, seconds), the same kind within one figure; what comes out is of that kind.

Person and machine as in the texts on machine assignment (Niebel, *Motion and Time Study*; Groover, *Work Systems*;
Tompkins et al., *Facilities Planning*). Takt time as in Rother and Shook, *Learning to See* (from memory).
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
    def whole(self) -> int:
        """The most machines that one person keeps going without any of them waiting: n' rounded down."""
        return int(self.of_machine // self.of_person)


def takt_time(available: Time, pieces: int) -> Time:
    """The hours there are until pieces are due, over those still to make: one is needed every so often. ``pieces`` at
    least one."""
    return available / pieces


@dataclass(frozen=True)
class StationLine(Generic[Time]):
    """Stations that each piece passes: ``loads`` is the work on one piece at each, at least one of them not nought."""

    loads: Sequence[Time]

    @property
    def cycle(self) -> Time:
        """One piece comes off every so often: the slowest station's load. Time saved elsewhere saves none of it."""
        return max(self.loads)

    def efficiency(self, cycle: Time | None = None) -> float:
        """Work over the time of all stations in a cycle."""
        each = self.cycle if cycle is None else cycle
        return float(self.work / (len(self.loads) * each))

    @property
    def work(self) -> Time:
        """The work on one piece, over all stations."""
        return sum(self.loads[1:], self.loads[0])
