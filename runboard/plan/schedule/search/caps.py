"""How many of a kind of work can be through by the end of an evening at most: tried with every rule, and nothing else to do.

Counts of what evenings hold leave out who is where when. So what they ask of the first evenings is put to the full model,
with only the work that leads to it: where that is impossible, one fewer is the most, and the counts are made again
(a decomposition by logic: Hooker and Ottosson 2003).
"""

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field, replace

from runboard.plan.schedule.problem.alike import Alike
from runboard.plan.schedule.problem.domains import Chains, before_long_waits
from runboard.plan.schedule.problem.nouns import Problem
from runboard.plan.schedule.problem.one_run import leading_to, only
from runboard.plan.schedule.search.cpsat import Limits, Model, Wish
from runboard.plan.schedule.search.evenings import Caps, Evenings, least_evenings

# A question with more blocks than this is not answered in the time that there is.
_MOST_BLOCKS = 150
_EACH_SECONDS = 1.0


@dataclass
class Capped:
    """The counts as far as they are known not to ask too much, with the seconds that they took."""

    problem: Problem
    chains: Chains
    same: Alike
    before: int
    limits: Limits
    caps: Caps = field(default_factory=dict)
    seconds: float = 0.0
    _asked: set[tuple[int, int, int]] = field(default_factory=set)

    def find(self, at_least: int, told: Callable[[Evenings], None]) -> None:
        """The counts with the least finish from ``at_least`` on: ``told`` hears of each that is surely the least."""
        while True:
            left = max(0.05, self.limits.seconds - self.seconds)
            found = least_evenings(
                self.problem, self.chains, at_least, self.before, seconds=left, same=self.same, caps=self.caps
            )
            if found is None:
                return
            self.seconds += found.seconds
            if not found.is_least or not found.done:
                return
            told(found)
            at_least = max(at_least, found.finish)
            if not self._asks_too_much(found):
                return

    def _asks_too_much(self, found: Evenings) -> bool:
        """Whether one of the counts was found to be too much; what is not known in time is let stand."""
        for group, evening, many in self._questions(found):
            if self.seconds >= self.limits.seconds:
                return False
            self._asked.add((group, evening, many))
            if self._is_too_much(group, evening, many, found.spans[evening][1]):
                self.caps[group, evening] = many - 1
                return True
        return False

    def _questions(self, found: Evenings) -> Iterator[tuple[int, int, int]]:
        waits = before_long_waits(self.problem)
        groups = [at for at in self.same.ordered if found.done[at] and self._matters(at, waits)]
        for evening in range(len(found.spans)):
            for group in groups:
                many = sum(found.done[group][: evening + 1])
                if many and (group, evening, many) not in self._asked:
                    yield group, evening, many

    def _matters(self, group: int, waits: Collection[int]) -> bool:
        """Whether a long wait follows, and somebody is there to the end."""
        first = self.problem.blocks[self.same.groups[group][0]]
        return first.index in waits and not first.begun and first.attended[-1:] == first.stretches[-1:]

    def _is_too_much(self, group: int, evening: int, many: int, closes: int) -> bool:
        part = only(self.problem, leading_to(self.problem, self.same.groups[group][:many]))
        if len(part.blocks) > _MOST_BLOCKS:
            return False
        model = Model(part, Wish(closes + 1, closes, watching="anyone"))
        if not model.is_bound:
            return False
        each = min(_EACH_SECONDS, self.limits.seconds - self.seconds)
        answer = model.solve(replace(self.limits, seconds=max(0.05, each)))
        self.seconds += answer.seconds
        return answer.plan is None and answer.is_all
