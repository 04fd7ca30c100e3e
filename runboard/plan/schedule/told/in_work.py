"""How many trays of a plan are in work at once, how often one comes off, and how long each takes. Spans are ticks in which
somebody is there: a night in which oil dries is no longer than the work around it."""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from fractions import Fraction

from runboard.plan.schedule.problem.hours import Presence, open_spans
from runboard.plan.schedule.problem.nouns import Plan, Problem, Span
from runboard.run.state import RunState, ShopState


@dataclass(frozen=True)
class InWork:
    """Trays between their first step and their last. ``area`` is under the curve of how many there are at each of the
    ``hours``; ``through`` is what they take, all together."""

    trays: int
    hours: int
    area: int
    through: int

    @property
    def average(self) -> Fraction:
        """How many there are on average: by Little's law ``rate`` times ``time_through``."""
        return Fraction(self.area, self.hours)

    @property
    def rate(self) -> Fraction:
        """Trays that come off in a tick."""
        return Fraction(self.trays, self.hours)

    @property
    def time_through(self) -> Fraction:
        """Ticks that a tray takes from its first step to its last, on average."""
        return Fraction(self.through, self.trays)


def trays_in_work(problem: Problem, plan: Plan, begun: Collection[tuple[str, str]] = ()) -> InWork | None:
    """How many trays are in work until the last of them is done; ``begun`` are those (run, tray) that are already. None
    where nothing is left, or nobody is there meanwhile."""
    spans = _from_first_to_last(problem, plan, begun)
    there = Presence.of([open_spans(problem)])
    hours = there.passed(max((end for _, end in spans), default=0))
    if not hours:
        return None
    at_once = Presence.of([span] for span in spans)
    area = sum(at_once.between(opens, closes) for opens, closes in open_spans(problem))
    return InWork(len(spans), hours, area, sum(there.between(*span) for span in spans))


def trays_begun(state: ShopState) -> frozenset[tuple[str, str]]:
    """The trays (run, tray) whose first step is over or under way."""
    return frozenset((run.id, tray) for run in state.open_runs() for tray in _begun(run))


def _begun(run: RunState) -> Iterator[str]:
    first = run.route.steps[0].key
    for tray in run.trays.values():
        if set(tray.at) - {first} or tray.good or tray.busy:
            yield tray.id


def _from_first_to_last(problem: Problem, plan: Plan, begun: Collection[tuple[str, str]]) -> list[Span]:
    found: dict[tuple[str, str], Span] = {}
    for placed in plan.placed:
        block, start, end = problem.blocks[placed.block], placed.start, plan.end(problem, placed.block)
        for tray in block.trays:
            key = (block.run, tray)
            first, last = found.get(key, (0 if key in begun else start, end))
            found[key] = (min(first, start), max(last, end))
    return list(found.values())
