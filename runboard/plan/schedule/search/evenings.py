"""How much of each kind of work each evening holds: a small model of counts, from which a bound comes.

An evening is any stretch of hours in which somebody is there. How many of each group of alike blocks are done in which
evening: no more than its people, machines and services have time for, nothing before what it waits for can be done, and no
more left in clamps or on the rack over a night than there are places. Every plan keeps that, so the least finish of the
counts is a bound.
"""

from dataclasses import replace
from itertools import pairwise
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.alike import Alike, alike
from runboard.plan.schedule.problem.hours import Chains, Presence, common, everybody, open_spans
from runboard.plan.schedule.problem.nouns import Block, Problem, Span
from runboard.plan.schedule.problem.people import cliques, ticks_of
from runboard.plan.schedule.search.solving import SolveLimits, Stop, solved, took


def least_evenings(
    problem: Problem,
    chains: Chains,
    at_least: int,
    before: int,
    limits: SolveLimits,
    same: Alike | None = None,
    stop: Stop | None = None,
) -> tuple[int, float]:
    """A tick before which no plan is finished, as far as it is found within the limits: ``at_least`` is known already, and
    ``before`` the most that is asked for. And the seconds it took."""
    if any(_is_split(block) for block in problem.blocks):  # its parts may be in two evenings: it is counted in one
        return at_least, 0.0
    same, used = same or alike(problem), 0.0
    spans = tuple(span for span in open_spans(problem) if span[0] < before)
    for last, (_, closes) in enumerate(spans):
        if closes < at_least:
            continue
        model = _Counts(problem, chains, same, spans[: last + 1], at_least)
        solver, status = solved(model.model, replace(limits, seconds=max(0.05, limits.seconds - used)), stop)
        used += took(solver, limits)
        if status != cp_model.INFEASIBLE:
            found = 0 if status == cp_model.UNKNOWN else int(solver.best_objective_bound + 0.5)
            return min(before, max(at_least, found)), used
        at_least = max(at_least, closes + 1)
    return min(before, at_least), used


def _is_split(block: Block) -> bool:
    """Whether a block runs alone between two parts that somebody must be there for."""
    return any(stretch.offset + stretch.length != other.offset for stretch, other in pairwise(block.attended))


class _Counts:
    """The model for a last evening that is given."""

    def __init__(self, problem: Problem, chains: Chains, same: Alike, spans: tuple[Span, ...], at_least: int) -> None:
        self.problem, self.chains, self.same, self.spans = problem, chains, same, spans
        self.model = cp_model.CpModel()
        self.groups = [at for at in range(len(same.groups)) if self._block(at).attended and not self._block(at).begun]
        self.count = {at: [self._count(at, evening) for evening in range(len(spans))] for at in self.groups}
        self.finish = self.model.new_int_var(min(at_least, spans[-1][1]), spans[-1][1], "finish")
        for at in self.groups:
            self.model.add(sum(self.count[at]) == len(same.groups[at]))
        self._keep_waits()
        self._keep_places()
        self._keep_hours()
        self.model.minimize(self.finish)

    def _block(self, at: int) -> Block:
        return self.problem.blocks[self.same.groups[at][0]]

    def _starts_in(self, at: int, evening: int) -> Span | None:
        """The first and the last tick at which a block of a group can begin, with what is attended of it in an evening."""
        block, first = self.same.groups[at][0], self._block(at).attended[0].offset
        opens, closes = self.spans[evening]
        found = common(self.chains.starts[block], ((opens - first, closes - first),))
        found = common(found, ((self.chains.begins[block], self.spans[-1][1]),))
        return (found[0][0], found[-1][1] - 1) if found else None

    def _count(self, at: int, evening: int) -> Any:
        most = len(self.same.groups[at]) if self._starts_in(at, evening) else 0
        return self.model.new_int_var(0, most, f"g{at}e{evening}")

    def _until(self, at: int, evening: int) -> Any:
        """How many of a group are done before an evening."""
        return sum(self.count[at][:evening])

    # what waits for what

    def _keep_waits(self) -> None:
        for at in self.groups:
            for before, gap, each, follow in self._near(at):
                for evening in range(len(self.spans)):
                    here = self._starts_in(at, evening)
                    if here is None:
                        continue
                    until = [
                        other + 1
                        for other in range(evening + 1)
                        if (there := self._starts_in(before, other)) and there[0] + gap <= here[1]
                    ]
                    done = self._until(before, max(until, default=0))
                    self.model.add(each * self._until(at, evening + 1) <= follow * done)

    def _near(self, at: int) -> list[tuple[int, int, int, int]]:
        """The attended groups that a group waits for, past what runs alone: (group, ticks from its begin to this one's,
        how many each waits for, how many wait for one)."""
        found = []
        for before, after, each, follow in self.same.links:
            if after != at or self._block(before).begun:
                continue
            lags = self._block(at).lags
            least = min((lag.least for lag in lags if self.same.group_of[lag.before] == before), default=0)
            gap = self._block(before).length + least
            if before in self.count:
                found.append((before, gap, each, follow))
            else:
                found += [(earlier, gap + more, each * m, follow * n) for earlier, more, m, n in self._near(before)]
        return found

    def _keep_places(self) -> None:
        """As an evening begins, what was done before it and has not been taken off since holds its places still."""
        for service, (_, capacity) in enumerate(self.problem.services):
            holds = [
                (at, many)
                for at in range(len(self.same.groups))
                for which, many in self._block(at).holds
                if which == service
            ]
            if sum(many for at, many in holds if self._block(at).begun) > capacity:
                continue  # it has happened
            for evening in range(1, len(self.spans)):
                held = [many * self._held(at, evening) for at, many in holds]
                self.model.add(sum(held) <= capacity)

    def _held(self, at: int, evening: int) -> Any:
        """How many of a group have ended before an evening, less those whose followers may all have begun before it."""
        opens, block = self.spans[evening][0], self._block(at)
        ended: Any = int(block.begun and block.length < opens)
        for other in range(evening) if at in self.count else ():
            here = self._starts_in(at, other)
            if here and here[1] + block.length < opens:
                ended += self.count[at][other]
        off = self.model.new_int_var(0, len(self.same.groups[at]), "")
        is_kept = False
        for before, after, each, follow in self.same.links:
            lags = {self.same.group_of[lag.before] for lag in self._block(after).lags}
            if before == at and at in lags and after in self.count and not self._block(after).attended[0].offset:
                self.model.add(follow * off <= each * self._until(after, evening))
                is_kept = True
        return ended - off if is_kept else 0

    # what an evening holds

    def _keep_hours(self) -> None:
        """What people, stations and services have time for."""
        first = {at: self.same.groups[at][0] for at in self.groups}
        people = everybody(self.problem)
        for clique in cliques(self.problem):
            ticks = {at: ticks_of(self.problem, block, clique) for at, block in first.items()}
            self._keep_row(ticks, people, 1, people.most(self.spans[-1][1]))
        for station in range(len(self.problem.stations)):
            runs = Presence.of([self.problem.stations[station].runs])
            some = [at for at in self.groups if self._block(at).station == station]
            self._keep_row({at: sum(stretch.length for stretch in self._block(at).attended) for at in some}, runs, 1, 1)
        always = Presence.of([((0, self.spans[-1][1]),)])
        for service, (_, capacity) in enumerate(self.problem.services):
            self._keep_row({at: self._drawn(at, service) for at in self.groups}, always, capacity, capacity)

    def _drawn(self, at: int, service: int) -> int:
        draws = [(stretch.length, *draw) for stretch in self._block(at).attended for draw in stretch.draws]
        return sum(length * many for length, which, many in draws if which == service)

    def _keep_row(self, work: dict[int, int], hours: Presence, times: int, most: int) -> None:
        """``work`` ticks of each group take these hours, ``times`` over, or ``most`` at a time."""
        ticks = {at: length for at, length in work.items() if length}
        for evening, (opens, closes) in enumerate(self.spans):
            for head in {opens, *(self._head(at, evening) for at in ticks)}:
                late = [tick * self.count[at][evening] for at, tick in ticks.items() if self._head(at, evening) >= head]
                self.model.add(sum(late) <= times * hours.between(head, closes))
        self._keep_tails(ticks, most)

    def _keep_tails(self, ticks: dict[int, int], most: int) -> None:
        """What is done in the last evening, ``most`` at a time, and what then comes after it, ends by the finish."""
        for tail in {self._tail(at) for at in ticks}:
            late = [at for at in ticks if self._tail(at) >= tail]
            any_late = self.model.new_bool_var("")
            counts = [self.count[at][-1] for at in late]
            self.model.add(sum(counts) == 0).only_enforce_if(any_late.negated())
            head = min(self._head(at, len(self.spans) - 1) for at in late)
            work = sum(ticks[at] * self.count[at][-1] for at in late)
            self.model.add(work <= most * (self.finish - tail - head)).only_enforce_if(any_late)

    def _tail(self, at: int) -> int:
        return self.chains.tails[self.same.groups[at][0]]

    def _head(self, at: int, evening: int) -> int:
        """From when on the attended part of a block can be done in an evening."""
        return max(
            self.spans[evening][0], self.chains.begins[self.same.groups[at][0]] + self._block(at).attended[0].offset
        )
