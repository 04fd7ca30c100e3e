"""How much of each kind of work each evening holds: a small model of counts, from which a bound comes.

An evening is any stretch of hours in which somebody is there. How many of each group of alike blocks are done in which
evening: no more than its people, machines and services have time for, and nothing before what it waits for can be done.
Every plan keeps that, so the least finish of the counts is a bound.
"""

from collections import defaultdict
from dataclasses import dataclass, replace
from itertools import combinations, pairwise
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.alike import Alike, alike
from runboard.plan.schedule.problem.conflicts import Doing, cliques, ticks_of
from runboard.plan.schedule.problem.domains import Chains
from runboard.plan.schedule.problem.nouns import Block, Problem, Span
from runboard.plan.schedule.problem.presence import Presence, common, everybody, open_spans
from runboard.plan.schedule.problem.ways import shortest_ways

# For a group of alike blocks and an evening: how many of it can be through by its end at most.
Caps = dict[tuple[int, int], int]

# The finish counts so much more than how early the work is, which stays below this.
_BELOW_A_TICK = 10_000


@dataclass(frozen=True)
class Evenings:
    """The counts: ``done[group][evening]``, the ``spans`` of the evenings, and the finish that they allow at best;
    ``is_least`` where no counts allow a better one."""

    spans: tuple[Span, ...]
    done: tuple[tuple[int, ...], ...]
    finish: int
    is_least: bool
    seconds: float


def least_evenings(
    problem: Problem,
    chains: Chains,
    at_least: int,
    before: int,
    *,
    seconds: float = 2.0,
    same: Alike | None = None,
    caps: Caps | None = None,
) -> Evenings | None:
    """The counts with the least finish from ``at_least`` on and before ``before``; None where there are none."""
    spans = tuple(span for span in open_spans(problem) if span[0] < before)
    if any(_is_split(block) for block in problem.blocks):  # its parts may be in two evenings: it is counted in one
        return None
    same = same or alike(problem)
    is_least, used = True, 0.0
    for last in range(len(spans)):
        if spans[last][1] < at_least:
            continue
        counts = _Counts(problem, chains, same, spans[: last + 1], at_least)
        counts.keep(caps or {})
        found = counts.solve(seconds - used)
        used += found.seconds
        is_least = is_least and found.is_least
        if found.done or used >= seconds:
            return replace(found, is_least=is_least, seconds=used)
    return None


def _is_split(block: Block) -> bool:
    """Whether a block runs alone between two parts that somebody must be there for."""
    return any(one.offset + one.length != other.offset for one, other in pairwise(block.attended))


class _Counts:
    """The model for a last evening that is given."""

    def __init__(self, problem: Problem, chains: Chains, same: Alike, spans: tuple[Span, ...], at_least: int) -> None:
        self.problem, self.chains, self.same, self.spans = problem, chains, same, spans
        self.model = cp_model.CpModel()
        self.groups = [
            at
            for at, group in enumerate(same.groups)
            if problem.blocks[group[0]].attended and not problem.blocks[group[0]].begun
        ]
        self.count = {at: [self._count(at, evening) for evening in range(len(spans))] for at in self.groups}
        self.finish = self.model.new_int_var(min(at_least, spans[-1][1]), spans[-1][1], "finish")
        for at in self.groups:
            self.model.add(sum(self.count[at]) == len(same.groups[at]))
        self._keep_waits()
        self._keep_pace()
        self.walks = [self._walks(evening) for evening in range(len(spans))]
        for clique in cliques(problem):
            self._keep_people(clique)
        self._keep_stations()
        self.model.minimize(self.finish * _BELOW_A_TICK + self._lateness())

    def _lateness(self) -> Any:
        """Early rather than late, at the same finish: scaled to stay below one tick."""
        weight = max(1, sum(len(self.same.groups[at]) for at in self.groups) * len(self.spans) // 9_000 + 1)
        terms = sum(count * evening for counts in self.count.values() for evening, count in enumerate(counts))
        late = self.model.new_int_var(0, _BELOW_A_TICK - 1, "late")
        self.model.add(late * weight >= terms)
        return late

    def _block(self, at: int) -> Block:
        return self.problem.blocks[self.same.groups[at][0]]

    def _starts_in(self, at: int, evening: int) -> Span | None:
        """The first and the last tick at which a block of a group can begin in an evening."""
        block = self.same.groups[at][0]
        found = common(self.chains.starts[block], (self._begins_in(at, evening),))
        found = common(found, ((self.chains.begins[block], self.spans[-1][1]),))
        return (found[0][0], found[-1][1] - 1) if found else None

    def _begins_in(self, at: int, evening: int) -> Span:
        """An evening, moved so that what is attended of a block is in it."""
        first = self._block(at).attended[0].offset
        return self.spans[evening][0] - first, self.spans[evening][1] - first

    def _count(self, at: int, evening: int) -> Any:
        most = len(self.same.groups[at]) if self._starts_in(at, evening) else 0
        return self.model.new_int_var(0, most, f"g{at}e{evening}")

    def keep(self, caps: Caps) -> None:
        """No more of a group by the end of an evening than it is known to hold."""
        for (at, evening), most in caps.items():
            if at in self.count and evening < len(self.spans):
                self.model.add(sum(self.count[at][: evening + 1]) <= most)

    # what waits for what

    def _keep_waits(self) -> None:
        for at in self.groups:
            for before, gap, each, follow in self._near(at):
                for evening in range(len(self.spans)):
                    here = self._starts_in(at, evening)
                    if here is None:
                        continue
                    until = [
                        other
                        for other in range(evening + 1)
                        if (there := self._starts_in(before, other)) and there[0] + gap <= here[1]
                    ]
                    done = sum(self.count[before][: max(until) + 1]) if until else 0
                    self.model.add(each * sum(self.count[at][: evening + 1]) <= follow * done)

    def _keep_pace(self) -> None:
        """What was not begun before an evening passes each station on its way in the evening, one after the other; then
        the way on must still fit in."""
        for at in self.groups:
            length = self._block(at).attended[-1].offset + self._block(at).attended[-1].length
            for before, gap, each, follow in self._far(at):
                pace = self._pace(before)
                for evening, (_, closes) in enumerate(self.spans):
                    here = self._starts_in(before, evening)
                    if here is None or here[0] + gap + length > closes:
                        continue
                    new = each * sum(self.count[at][: evening + 1]) - follow * sum(self.count[before][:evening])
                    self.model.add(pace * new <= follow * (closes - length - gap - here[0] + pace))

    def _far(self, at: int) -> list[tuple[int, int, int, int]]:
        """As ``_near``, and all that those wait for."""
        found: dict[int, tuple[int, int, int, int]] = {}
        left = self._near(at)
        while left:
            before, gap, each, follow = left.pop()
            if before in found and found[before][1] >= gap:
                continue
            found[before] = (before, gap, each, follow)
            left += [(one, gap + more, each * m, follow * n) for one, more, m, n in self._near(before)]
        return list(found.values())

    def _pace(self, at: int) -> int:
        """Ticks from one load of a group to the next, at best."""
        block, ticks = self._block(at), 0
        while True:
            ticks += block.length
            if block.index not in self.problem.unloaded_by:
                return ticks
            block = self.problem.blocks[self.problem.unloaded_by[block.index]]

    def _near(self, at: int) -> list[tuple[int, int, int, int]]:
        """The attended groups that a group waits for, past what runs alone: (group, ticks from its begin to this one's,
        how many each waits for, how many wait for one)."""
        found = []
        for before, after, each, follow in self.same.links:
            block = self._block(before)
            if after != at or block.begun:
                continue
            gap = block.length + self._least(before, at)
            if before in self.count:
                found.append((before, gap, each, follow))
            else:
                found += [(one, gap + more, each * m, follow * n) for one, more, m, n in self._near(before)]
        return found

    def _least(self, before: int, at: int) -> int:
        return min((lag.least for lag in self._block(at).lags if self.same.group_of[lag.before] == before), default=0)

    # what an evening holds

    def _walks(self, evening: int) -> Any:
        """The least walking of an evening, by the rooms in which there is work: as many ways as rooms, but for one each
        that a person may stay in."""
        rooms: dict[int, list[Any]] = defaultdict(list)
        for at in self.groups:
            rooms[self.problem.stations[self._block(at).station].room].append(self.count[at][evening])
        if len(rooms) > 5:
            return 0
        used = {}
        for room, counts in rooms.items():
            used[room] = self.model.new_bool_var("")
            most = sum(len(self.same.groups[at]) for at in self.groups)
            self.model.add(sum(counts) <= most * used[room])
        walked = self.model.new_int_var(0, 10_000, "")
        people = Presence.of(person.windows for person in self.problem.people)
        there = max(many for start, many in people.steps if start < self.spans[evening][1])
        for size in range(there + 1, len(rooms) + 1):
            for some in combinations(rooms, size):
                ways = sorted(shortest_ways(self.problem, some))[: size - there]
                self.model.add(walked >= sum(ways) * (sum(used[room] for room in some) - size + 1))
        return walked

    def _keep_people(self, clique: frozenset[Doing]) -> None:
        hours = everybody(self.problem)
        ticks = {at: ticks_of(self.problem, self.same.groups[at][0], clique) for at in self.groups}
        some = [at for at in self.groups if ticks[at]]
        for evening, (opens, closes) in enumerate(self.spans):
            heads = {opens, *(self._head(at, evening) for at in some)}
            for head in heads:
                work = sum(ticks[at] * self.count[at][evening] for at in some if self._head(at, evening) >= head)
                free = hours.between(head, closes)
                walks = self.walks[evening] if head == opens else 0
                self.model.add(work + walks <= free)
        most = max((many for start, many in hours.steps if start < self.spans[-1][1]), default=0)
        self._keep_tails({at: ticks[at] for at in some}, most)

    def _keep_tails(self, ticks: dict[int, int], most: int) -> None:
        """What is done in the last evening, ``most`` at a time, and what then comes after it, ends by the finish."""
        opens = self.spans[-1][0]
        for tail in {self._tail(at) for at in ticks}:
            late = [at for at in ticks if self._tail(at) >= tail]
            work = sum(ticks[at] * self.count[at][-1] for at in late)
            any_late = self.model.new_bool_var("")
            self.model.add(sum(self.count[at][-1] for at in late) >= 1).only_enforce_if(any_late)
            self.model.add(sum(self.count[at][-1] for at in late) == 0).only_enforce_if(any_late.negated())
            head = min(self._head(at, len(self.spans) - 1) for at in late)
            self.model.add(work <= most * (self.finish - tail - max(opens, head))).only_enforce_if(any_late)

    def _tail(self, at: int) -> int:
        return self.chains.tails[self.same.groups[at][0]]

    def _head(self, at: int, evening: int) -> int:
        """From when on the attended part of a block can be done in an evening."""
        block = self._block(at)
        return max(self.spans[evening][0], self.chains.begins[block.index] + block.attended[0].offset)

    def _keep_stations(self) -> None:
        for station in range(len(self.problem.stations)):
            some = [at for at in self.groups if self._block(at).station == station]
            runs = Presence.of([self.problem.stations[station].runs])
            ticks = {at: sum(one.length for one in self._block(at).attended) for at in some}
            self._keep_row(ticks, runs, 1)
        for service, (_, capacity) in enumerate(self.problem.services):
            ticks = {at: self._drawn(at, service) for at in self.groups}
            self._keep_row({at: one for at, one in ticks.items() if one}, None, capacity)

    def _drawn(self, at: int, service: int) -> int:
        return sum(
            one.length * many for one in self._block(at).attended for which, many in one.draws if which == service
        )

    def _keep_row(self, ticks: dict[int, int], runs: Presence | None, capacity: int) -> None:
        for evening, (opens, closes) in enumerate(self.spans):
            for head in {opens, *(self._head(at, evening) for at in ticks)}:
                work = sum(
                    one * self.count[at][evening] for at, one in ticks.items() if self._head(at, evening) >= head
                )
                free = capacity * (max(0, closes - head) if runs is None else runs.between(head, closes))
                self.model.add(work <= free)
        self._keep_tails(ticks, capacity)

    def solve(self, seconds: float) -> Evenings:
        """The counts, none where there are none; or none in that time, and then it is not sure."""
        solver = cp_model.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.max_time_in_seconds = max(0.05, seconds)
        status = solver.solve(self.model)
        if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
            return Evenings(self.spans, (), 0, status == cp_model.INFEASIBLE, solver.wall_time)
        done = tuple(
            tuple(solver.value(one) for one in self.count[at]) if at in self.count else ()
            for at in range(len(self.same.groups))
        )
        finish = int(solver.best_objective_bound) // _BELOW_A_TICK
        return Evenings(self.spans, done, finish, True, solver.wall_time)
