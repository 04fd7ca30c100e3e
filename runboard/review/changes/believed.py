"""How long what a change alters is believed to take, before it and with it: what was learned, less what the change promises."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from runboard.plan.change import KINDS_OF_TIME, Change, Instead, LoadSize, OneVisit, Times, in_order
from runboard.plan.changed_route import load_factor
from runboard.plan.estimates import Estimates
from runboard.review.changes.now import Moved
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState

Key = tuple[str, str]


@dataclass(frozen=True)
class Believed:
    """What a time element is believed to take ``before`` a change and ``after`` it, and what was ``measured`` of it in the run,
    on average; None where nothing was."""

    before: timedelta
    after: timedelta
    measured: timedelta | None = None


def believed_with(run: RunState, estimates: Estimates, change: Change) -> Mapping[Key, Believed]:
    """Of each element, as (step, kind), that a change alters and of which more is known than the route says."""
    found = _Lengths(run, estimates)
    for single in in_order(change):
        found.take(single)
    steps = run.route.by_key
    return {
        (step, kind): Believed(
            estimates.of(run, steps[step], kind).length, length, _measured(run, estimates, (step, kind))
        )
        for (step, kind), length in found.lengths.items()
        if (step, kind) in found.learned and length > timedelta(0)
    }


def _measured(run: RunState, estimates: Estimates, key: Key) -> timedelta | None:
    mine = [one.length for one in estimates.times.get((run.product, *key), ()) if one.session[0] == run.id]
    return sum(mine, timedelta(0)) / len(mine) if mine else None


def as_believed(run: RunState, estimates: Estimates, change: Change, some: Iterable[Moved]) -> tuple[Moved, ...]:
    """What is another, its times as a plan believes them in place of the route's own guesses."""
    steps = run.route.by_key
    known = {(steps[step].name, kind): one for (step, kind), one in believed_with(run, estimates, change).items()}

    def of(moved: Moved) -> Moved:
        one = known.get((moved.name, moved.kind)) if moved.what == "time" else None
        if one is None:
            return moved
        return replace(moved, before=one.before, after=one.after, measured=one.measured)

    return tuple(map(of, some))


def known_before(estimates: Estimates, moment: datetime) -> Estimates:
    """What was known just before a moment."""
    return Estimates(
        {key: [one for one in times if one.at is None or one.at < moment] for key, times in estimates.times.items()},
        {key: [word for word in words if word.at < moment] for key, words in estimates.overruled.items()},
    )


class _Lengths:
    """The lengths of a run's time elements as they are with some changes, by (step, kind); those that were ``learned``."""

    def __init__(self, run: RunState, estimates: Estimates) -> None:
        self.run, self.estimates = run, estimates
        self.lengths: dict[Key, timedelta] = {}
        self.learned: set[Key] = set()

    def take(self, change: Change) -> None:
        """One change more."""
        match change:
            case Times() | Instead():
                kinds = change.kinds if isinstance(change, Times) else KINDS_OF_TIME
                for step in self._steps(change.operation):
                    self._scale(step, kinds, change.per_cent / 100)
            case LoadSize() if change.grows:
                for step in self._steps(change.step):
                    self._scale(step, ("machine",), load_factor(step, change, self._a_tray))
            case OneVisit():
                self._merge(change.first)

    @property
    def _a_tray(self) -> int:
        return max((tray.started for tray in self.run.trays.values()), default=1)

    def _steps(self, named: str) -> Iterator[Step]:
        return (step for step in self.run.route.steps if named in (step.operation.key, step.key))

    def _scale(self, step: Step, kinds: tuple[str, ...], factor: float) -> None:
        for kind in kinds:
            if factor != 1 and getattr(step.pass_, kind):
                self.lengths[step.key, kind] = self._length(step, kind) * factor
                self._note_learned((step.key, kind), step)

    def _merge(self, first: str) -> None:
        """The hand work of an operation and the next is that of the first's last step."""
        operations = list(dict.fromkeys(step.operation.key for step in self.run.route.steps))
        if first not in operations:
            return
        pair = operations[operations.index(first) :][:2]
        last = {step.operation.key: step for step in self.run.route.steps}
        steps = [last[key] for key in pair]
        hands = [self._length(step, "hand") for step in steps if step.pass_.hand]
        for step in steps:
            self._note_learned((steps[0].key, "hand"), step)
        for step in steps[1:]:
            for kind in KINDS_OF_TIME:
                self.lengths.pop((step.key, kind), None)
        self.lengths[steps[0].key, "hand"] = sum(hands, timedelta(0))

    def _note_learned(self, key: Key, step: Step) -> None:
        known = self.estimates.of(self.run, step, key[1])
        if known.times or known.overruled is not None:
            self.learned.add(key)

    def _length(self, step: Step, kind: str) -> timedelta:
        return self.lengths.get((step.key, kind)) or self.estimates.of(self.run, step, kind).length
