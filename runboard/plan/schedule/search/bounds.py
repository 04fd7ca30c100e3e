"""What no plan can beat, and the rule that makes it so: found without a search.

Each rule takes work that one thing must do alone, sets it on the hours from when it can begin, and adds what must follow
the last of it. The largest wins. A setup counts as nothing here: a plan might not need it.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from runboard.plan.schedule.problem.alike import alike
from runboard.plan.schedule.problem.hours import Chains, Presence, common, everybody, open_spans
from runboard.plan.schedule.problem.nouns import FAR, Problem
from runboard.plan.schedule.problem.people import cliques, ticks_of


@dataclass(frozen=True)
class Bound:
    """No plan is finished before ``tick``. ``rule`` says why: ``hands``, ``station``, ``watched``, ``wait``, ``hours``;
    ``evenings`` where the work does not fit into fewer of them, ``search`` where a search has tried everything earlier.

    ``with_dues`` is said of fewer plans: of those that are no later for the order lines than the plan at hand, none is
    finished before it."""

    tick: int
    rule: str
    facts: dict[str, Any] = field(default_factory=dict)
    with_dues: int = 0


def bound(problem: Problem) -> Bound:
    """The best of all the rules: 0 where nothing is left to do."""
    return max(all_bounds(problem), key=lambda bound: bound.tick, default=Bound(0, "hours"))


def all_bounds(problem: Problem) -> list[Bound]:
    """What each rule says."""
    if not problem.blocks:
        return []
    chains = Chains(problem)
    loads = _Loads(problem, chains)
    found = [_longest_chain(problem, chains), *_of_hands(problem, loads), *_of_stations(problem, loads)]
    return [bound for bound in found if bound.tick < FAR]


def _longest_chain(problem: Problem, chains: Chains) -> Bound:
    """Each block as soon as what it waits for, and the hours, allow; with the longest wait on the chain that ends last."""
    last = at = max(range(len(problem.blocks)), key=chains.end)
    longest, lag = 0, None
    while chains.waits[at]:
        _, least, at = max((chains.end(before) + least, least, before) for before, least in chains.waits[at])
        if least > longest:
            longest, lag = least, problem.blocks[at]
    if lag is None:
        return Bound(chains.end(last), "hours")
    return Bound(chains.end(last), "wait", {"step": lag.step, "run": lag.run})


def _of_hands(problem: Problem, loads: "_Loads") -> Iterable[Bound]:
    """What people must be there for: all of it, and what only some of them may do."""
    for clique in cliques(problem):
        watched = [station for station, kind in clique if kind == "watched"]
        rule = "watched" if watched else "hands"
        facts = {"station": problem.stations[watched[0]].name} if watched else {}
        tick = loads.after(everybody(problem), lambda at, of=clique: ticks_of(problem, at, of))  # type: ignore[misc]
        yield Bound(tick, rule, facts)
    everyone = set(range(len(problem.people)))
    for some in {block.people for block in problem.blocks if block.hands} - {tuple(sorted(everyone))}:
        theirs = loads.after(
            everybody(problem, some),
            lambda at, of=some: problem.blocks[at].hands if set(problem.blocks[at].people) <= set(of) else 0,  # type: ignore[misc]
        )
        yield Bound(theirs, "hands", {"people": [problem.people[person].name for person in some]})


def _of_stations(problem: Problem, loads: "_Loads") -> Iterable[Bound]:
    """What a station must do, one load after the other: while it may run, and with people there."""
    there = open_spans(problem)
    for at, station in enumerate(problem.stations):
        runs = Presence.of([station.runs])
        seen = Presence.of([common(there, station.runs)])

        def length(block: int, at: int = at) -> int:
            return problem.blocks[block].length if problem.blocks[block].station == at else 0

        def attended(block: int, at: int = at) -> int:
            there = problem.blocks[block]
            return sum(stretch.length for stretch in there.attended) if there.station == at else 0

        tick = max(loads.after(runs, length), loads.after(seen, attended))
        yield Bound(tick, "station", {"station": station.name})


class _Loads:
    """Work to be set on hours, by groups of alike blocks."""

    def __init__(self, problem: Problem, chains: Chains) -> None:
        self.chains = chains
        self.groups = [group for group in alike(problem).groups if not problem.blocks[group[0]].begun]
        self._known: dict[tuple[int, int], int] = {}

    def after(self, hours: Presence, work: Callable[[int], int]) -> int:
        """The earliest finish, given that ``work`` ticks of each block take these hours one at a time.

        Of the blocks that can begin at a head or later and have a tail or more after them, one is the last to end: not
        before the hours hold them all; and then its own tail follows, through the hours of each block.
        """
        some = [(group, work(group[0]) * len(group)) for group in self.groups]
        some = [(group, ticks) for group, ticks in some if ticks]
        best = 0
        for head in {self.chains.begins[group[0]] for group, _ in some}:
            for tail in {self.chains.tails[group[0]] for group, _ in some}:
                left = [
                    (group[0], ticks)
                    for group, ticks in some
                    if self.chains.begins[group[0]] >= head and self.chains.tails[group[0]] >= tail
                ]
                if left:
                    ends = hours.after(head, sum(ticks for _, ticks in left))
                    best = max(best, min(self._finish_if(at, ends) for at, _ in left))
        return best

    def _finish_if(self, at: int, ends: int) -> int:
        if ends >= FAR:
            return FAR
        if (at, ends) not in self._known:
            self._known[at, ends] = self.chains.finish_if(at, ends)
        return self._known[at, ends]
