"""Somebody begins a block now: the problem that is left then, with the walk from where they are, and plans of it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import accumulate, islice
from random import Random

from runboard.plan.prices import Price, price_of
from runboard.plan.schedule.problem.nouns import Plan, Problem, Stretch
from runboard.plan.schedule.problem.worth import Value, Worth, worth
from runboard.plan.schedule.rule.greedy import RULES, STEP, Features, ranked
from runboard.plan.schedule.rule.rule import Knobs, Rule

# Walking is dear, or it costs nothing.
STAY = 10**7
# Goes of the rule for each block that is begun, and how many blocks they may place: a few milliseconds.
_FEWEST, _MOST, _BLOCKS = 8, 80, 4000

Try = tuple[Sequence[int], Knobs]


@dataclass(frozen=True)
class Begun:
    """A problem in which somebody has begun something, and a plan of it."""

    problem: Problem
    plan: Plan

    @property
    def worth(self) -> Value:
        return worth(self.problem, self.plan)


def soonest(problem: Problem, person: int) -> int:
    """The last tick at which a beginning still counts as at once: hands free, in their hours, the longest walk done."""
    return _free(problem, person)[0] + max((max(row) for row in problem.walks), default=0) + 1


def begun(problem: Problem, block: int, person: int) -> Problem:
    """The same with ``block`` in the hands of ``person``: begun once these are free and the walk is done, its station set up
    first where it must be. It waits for nothing, as whoever offers it has asked the rules."""
    there = problem.blocks[block]
    free, room, set_up = _free(problem, person)
    place = problem.stations[there.station]
    stands_on = set_up.get(there.station, place.stands_on)
    walk = free + (problem.walks[room][place.room] if room >= 0 else 0)
    setup = there.setup if there.unloads is None and there.family and there.family != stands_on else 0
    # Hands are full on the way, too: blocks are without gaps.
    before = [Stretch(kind, 0, length, "hands-on") for kind, length in (("walk", walk), ("setup", setup)) if length]
    stretches = _one_after_another((*before, *there.stretches))
    by = person if before or there.attended else None
    changed = replace(there, stretches=stretches, setup=0, lags=(), release=0, unloads=None, begun=True, by=by)
    return replace(problem, blocks=(*problem.blocks[:block], changed, *problem.blocks[block + 1 :]))


def begun_together(problem: Problem, blocks: Sequence[int], person: int) -> Problem:
    """The same with hand work of several trays as one load in the hands of ``person``: all of it ends, and goes on, at the
    end of the load."""
    at, *others = blocks
    there = begun(problem, at, person)
    first = there.blocks[at]
    stretches = [*first.stretches, *(stretch for other in others for stretch in problem.blocks[other].stretches)]
    found = {at: replace(first, stretches=_one_after_another(stretches))}
    beside = (Stretch("hand", 0, found[at].length, "none"),)  # there is one pair of hands: the first block's
    for other in others:
        alone = replace(problem.blocks[other], stretches=beside, setup=0, lags=(), release=0, begun=True, by=None)
        found[other] = alone
    return replace(there, blocks=tuple(found.get(block.index, block) for block in there.blocks))


def _one_after_another(stretches: Sequence[Stretch]) -> tuple[Stretch, ...]:
    offsets = accumulate((stretch.length for stretch in stretches), initial=0)
    return tuple(replace(stretch, offset=offset) for stretch, offset in zip(stretches, offsets, strict=False))


def _free(problem: Problem, person: int) -> tuple[int, int, dict[int, str]]:
    """(when somebody's hands are free, in which room they are then, what their begun blocks leave stations set up for)."""
    free = min((opens for opens, _ in problem.people[person].windows), default=0)
    room = problem.people[person].room
    set_up: dict[int, str] = {}
    for block in problem.blocks:
        if block.begun and block.by == person and block.hands:
            hands = max(
                stretch.offset + stretch.length for stretch in block.stretches if stretch.attendance == "hands-on"
            )
            if hands >= free:
                free, room = hands, problem.stations[block.station].room
            set_up[block.station] = block.family
    return free, room, set_up


class BegunNow:
    """Plans in which somebody begins something now, by the priorities that made the plan at hand, by each priority rule, and
    some goes around the best of these. ``rule`` is the problem's."""

    def __init__(self, rule: Rule, plan: Plan, priority: Sequence[int], knobs: Knobs) -> None:
        self._rule, self._plan, self._priority, self._knobs = rule, plan, priority, knobs
        self._limit = worth(rule.problem, plan)
        self._goes = max(_FEWEST, min(_MOST, _BLOCKS // max(1, len(rule.problem.blocks))))

    def best(self, block: int, person: int) -> Begun | None:
        """The best found in which ``person`` begins ``block`` now; None where the rule finds no place for the rest."""
        return self._with(begun(self._rule.problem, block, person))

    def price(self, block: int, person: int) -> Price | None:
        """What it costs that ``person`` begins ``block`` now; None where the rule does not know: it finds no place, or what it
        loses it may have lost without it, too."""
        return self._price(self.best(block, person))

    def together(self, blocks: Sequence[int], person: int) -> Price | None:
        """What it costs that ``person`` begins these blocks of hand work now as one load."""
        return self._price(self._with(begun_together(self._rule.problem, blocks, person)))

    def _with(self, problem: Problem) -> Begun | None:
        plan = self._best(Rule(problem))
        return None if plan is None else Begun(problem, plan)

    def _price(self, found: Begun | None) -> Price | None:
        if found is None:
            return None
        price = price_of(self._rule.problem, self._plan, found.problem, found.plan)
        return price if price.is_small or self.is_true else None

    @cached_property
    def is_true(self) -> bool:
        """Whether the rule makes plans as good as the one at hand: only then is what it loses lost."""
        plan = self._best(self._rule)
        return plan is not None and worth(self._rule.problem, plan) <= self._limit

    def _best(self, rule: Rule) -> Plan | None:
        best: tuple[Value, Sequence[int], Knobs] | None = None
        plan, counted, random = None, Worth(rule.problem), Random(1)  # noqa: S311 - chance that is the same each time, for no secret
        tries = islice(self._tries(), self._goes // 2)
        for _ in range(self._goes):
            tried = next(tries, None) or (best and (_moved(rule.problem, best[1], random), best[2]))
            if tried is None or (best is not None and best[0] <= self._limit):
                break
            if rule.finish(*tried) < 0:
                continue
            value = counted.of(rule.all_ends(), rule.walks())
            if best is None or value < best[0]:
                best, plan = (value, *tried), rule.plan()
        return plan

    def _tries(self) -> Iterator[Try]:
        for knobs in dict.fromkeys((self._knobs, Knobs(STAY), Knobs())):
            yield self._priority, knobs
        for priority in self._ranked:
            for knobs in (Knobs(STAY), Knobs()):
                yield priority, knobs

    @cached_property
    def _ranked(self) -> list[list[int]]:
        features = Features(self._rule.problem)
        return [ranked(features, key) for key in RULES.values()]


def _moved(problem: Problem, priority: Sequence[int], random: Random) -> list[int]:
    """The same with a step, or a tray, sooner or later than it was."""
    some, of_step = random.choice(problem.blocks), random.random() < 0.6
    by = int(random.gauss(0, 0.4) * len(priority) * STEP)
    return [
        rank + by if (block.step == some.step if of_step else block.trays == some.trays) else rank
        for rank, block in zip(priority, problem.blocks, strict=True)
    ]
