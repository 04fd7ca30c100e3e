"""What was learned of how long something takes says nothing of it once a change is adopted: what the change promises is
believed from then on, until it is measured."""

from collections.abc import Iterator
from datetime import timedelta

from runboard.floor.changing.runs import new_event
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.workshop import Workshop
from runboard.plan.change import KINDS_OF_TIME, Change, Instead, LoadSize, OneVisit, Times, in_order
from runboard.plan.changed_route import load_factor
from runboard.plan.estimates import Estimates
from runboard.run.change import replace
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState
from runboard.run.log.event import Event

_Key = tuple[str, str]


def promised_times(
    workshop: Workshop, run: RunState, change: Change, adoption: str, why: str, person: str
) -> list[Event]:
    """An event for each time element that a change alters and of which more is known than the route says: so long it takes
    from now on. Their ids follow from that of the ``adoption``, so that they can be taken back with it."""
    found = _Lengths(run, estimates_now(workshop))
    for single in in_order(change):
        found.take(single)
    made: list[Event] = []
    for (step, kind), length in found.lengths.items():
        if (step, kind) in found.learned and length > timedelta(0):
            minutes = round(length / timedelta(minutes=1), 3)
            body = {"of": run.product, "step": step, "kind": kind, "minutes": minutes, "why": why}
            event = new_event(workshop, "time overruled", body, person=person, device="server")
            made.append(replace(event, id=f"{adoption}-{len(made) + 1}"))
    return made


def taken_back(workshop: Workshop, adoption: str, person: str) -> list[Event]:
    """What takes back those times that were promised with an adoption."""
    said = (one for some in workshop.ledger.state.overruled.values() for one in some)
    mine = sorted(one.event for one in said if one.event.rpartition("-")[0] == adoption)
    return [new_event(workshop, "event undone", {"event": event}, person=person, device="server") for event in mine]


class _Lengths:
    """The lengths of a run's time elements as they are with some changes, by (step, kind); those that were ``learned``."""

    def __init__(self, run: RunState, estimates: Estimates) -> None:
        self.run, self.estimates = run, estimates
        self.lengths: dict[_Key, timedelta] = {}
        self.learned: set[_Key] = set()

    def take(self, change: Change) -> None:
        """One change more."""
        match change:
            case Times() | Instead():
                kinds = (change.kind,) if isinstance(change, Times) and change.kind else KINDS_OF_TIME
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

    def _note_learned(self, key: _Key, step: Step) -> None:
        known = self.estimates.of(self.run, step, key[1])
        if known.times or known.overruled is not None:
            self.learned.add(key)

    def _length(self, step: Step, kind: str) -> timedelta:
        return self.lengths.get((step.key, kind)) or self.estimates.of(self.run, step, kind).length
