"""What blocks of a plan share, and when it kept one from starting: units of a service that were taken, and the air of a room."""

from bisect import bisect_right
from collections.abc import Iterator
from itertools import groupby

from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem

# (until when, which block it was, which service or room)
Until = tuple[int, int, int]


def uses(problem: Problem, plan: Plan, placed: Placed) -> Iterator[tuple[int, int, int, int, int]]:
    """What a block takes: (from, until, which block gives it back, service, how many). A hold is given back by the start of its
    last taker."""
    block = problem.blocks[placed.block]
    for stretch in block.stretches:
        start = placed.begins() + stretch.offset
        for service, count in stretch.draws:
            yield start, start + stretch.length, block.index, service, count
    end = plan.end(problem, block.index)
    last = max(problem.waiting[block.index], key=lambda taker: plan.placed[taker].start, default=block.index)
    for service, count in block.holds:
        yield end, plan.held_until(problem, block.index), last, service, count


class Released:
    """When units of services were given back of which too few were left before."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem, self.plan = problem, plan
        turns: list[list[tuple[int, int, int, int]]] = [[] for _ in problem.services]
        for placed, block in zip(plan.placed, problem.blocks, strict=True):
            for start, end, by, service, count in uses(problem, plan, placed):
                turns[service] += [(start, count, by, block.index), (end, -count, by, block.index)]
        # Of each service the moments of giving back: (tick, how many were taken just before, the block whose start or end it is,
        # the one that had taken them).
        self._given_back = [list(_given_back(turn)) for turn in turns]
        self._short: dict[tuple[int, int], list[tuple[int, int, int]]] = {}

    def before(self, placed: Placed) -> Iterator[Until]:
        """Of each service that a block takes the last moment, no later than its start, before which not enough was left for it;
        what its own pieces lie in is free for it."""
        block = self.problem.blocks[placed.block]
        wanted: dict[int, int] = {}
        for service, count in (*block.holds, *(draw for stretch in block.stretches for draw in stretch.draws)):
            wanted[service] = max(wanted.get(service, 0), count)
        for lag in block.lags if wanted else ():
            if self.plan.held_until(self.problem, lag.before) == placed.start:
                for service, count in self.problem.blocks[lag.before].holds:
                    wanted[service] = wanted.get(service, 0) - count
        for service, count in wanted.items():
            if count > 0:
                row = self._moments(service, count)
                at = bisect_right(row, placed.start, key=lambda moment: moment[0]) - 1
                if at >= 0:
                    tick, by, taker = row[at]
                    # What is taken off in the same moment is no reason of its own: what lay there is.
                    yield tick, by if self.plan.placed[by].start < placed.start else taker, service

    def _moments(self, service: int, count: int) -> list[tuple[int, int, int]]:
        """(tick, by which block, taken by which) of giving back where before it fewer than ``count`` were left."""
        if (service, count) not in self._short:
            _, capacity = self.problem.services[service]
            self._short[service, count] = [
                (tick, by, taker) for tick, taken, by, taker in self._given_back[service] if taken + count > capacity
            ]
        return self._short[service, count]


def _given_back(turns: list[tuple[int, int, int, int]]) -> Iterator[tuple[int, int, int, int]]:
    taken = 0
    for tick, some in groupby(sorted(turns), key=lambda turn: turn[0]):
        here = list(some)
        back = [(by, taker) for _, count, by, taker in here if count < 0]
        if back:
            yield tick, taken, *min(back)
        taken += sum(count for _, count, _, _ in here)


class Airs:
    """Until when dust was kept off a wet finish, and heat off solvent; and a finish off work that makes dust or heats."""

    def __init__(self, problem: Problem, plan: Plan) -> None:
        self.problem, self.plan = problem, plan
        self._rows: dict[tuple[int, bool, bool], list[tuple[int, int]]] = {}

    def before(self, placed: Placed) -> Iterator[Until]:
        """Of the air in a block's room the last moment, no later than its start, before which it could not be at work."""
        block = self.problem.blocks[placed.block]
        station = self.problem.stations[block.station]
        rows = []
        if station.heats or station.dusty:
            rows.append(self._coats(station.room, heats=station.heats, dusty=station.dusty))
        if block.is_coat:
            rows += [
                self._spoiling(station.room, heats=heats, dusty=dusty)
                for heats, dusty in ((True, False), (False, True), (True, True))
                if block.keeps_off(heats=heats, dusty=dusty) is not None
            ]
        for row in rows:
            at = bisect_right(row, (placed.start, len(self.problem.blocks))) - 1
            if at >= 0:
                yield *row[at], station.room

    def _coats(self, room: int, *, heats: bool, dusty: bool) -> list[tuple[int, int]]:
        """(until when, coat) of those that keep such work off."""
        key = (room, heats, dusty)
        if key not in self._rows:
            coats = [block for block in self.problem.blocks if block.is_coat and self._room(block) == room]
            self._rows[key] = sorted(
                (self.plan.end(self.problem, block.index) + off, block.index)
                for block in coats
                if (off := block.keeps_off(heats=heats, dusty=dusty)) is not None
            )
        return self._rows[key]

    def _spoiling(self, room: int, *, heats: bool, dusty: bool) -> list[tuple[int, int]]:
        """(end, block) of the work of such stations in a room."""
        key = (-1 - room, heats, dusty)
        if key not in self._rows:
            self._rows[key] = sorted(
                (self.plan.end(self.problem, block.index), block.index)
                for block in self.problem.blocks
                if self._room(block) == room
                and self.problem.stations[block.station].heats == heats
                and self.problem.stations[block.station].dusty == dusty
            )
        return self._rows[key]

    def _room(self, block: Block) -> int:
        return self.problem.stations[block.station].room
