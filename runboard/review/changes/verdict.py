"""Did it work: before and after on the elements that an adopted change touched, for as many pieces, with an interval.

The interval is a percentile bootstrap (Efron and Tibshirani, *An Introduction to the Bootstrap*, 1993, chapter 13): the
observations of each element are drawn again with replacement, before and after apart, two thousand times. That the second run
was another evening is in it as well: each side's mean is drawn as sessions of that element differ, by as many as it had.
Without that, a third of changes that changed nothing are said to have saved or cost something.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.change import (
    Change,
    Instead,
    LoadSize,
    OneVisit,
    Swapped,
    Times,
    TraySize,
    services_in,
    singles,
)
from runboard.review.changes.nouns import Adopted, SeenRun, Span3, Verdict
from runboard.review.changes.seen import times_of
from runboard.review.happened.nouns import Happened
from runboard.review.happened.why import SERVICE_TAKEN
from runboard.review.measured.study import ElementStudy, TimeStudy

HANDS = ("setup", "loading", "unloading", "hand")
PER_LOAD = ("setup", "loading", "unloading")
DRAWN = 2000
# Fewer observations of an element tell nothing of it; and where more than so much of the work is of such elements, of nothing.
LEAST = 3
MOST_UNKNOWN = 1 / 3
# Two runs take a like time by their size where one has at least so much of the pieces of the other.
ALIKE = 0.9
_MINUTE = timedelta(minutes=1)

Key = tuple[str, str]


def seen_run(study: TimeStudy, happened: Happened, opened_at: datetime | None = None) -> SeenRun:
    """What a verdict compares of a run that was looked back at."""
    waits = [wait for wait in happened.waiting if wait.why == SERVICE_TAKEN and wait.row != "person"]
    of_trays = [wait.length for wait in waits if wait.row == "tray"]
    waited = sum(of_trays or [wait.length for wait in waits], timedelta())
    took = None if opened_at is None or happened.finished is None else happened.finished - opened_at
    return SeenRun(study, happened.started, waited, happened.a_good_piece, took)


def judged(adopted: Adopted, before: SeenRun, after: SeenRun, seed: int = 1) -> Verdict:
    """What a change saved of the run after it, beside the run before. The same seed draws the same."""
    change = adopted.change
    if change is not None and before.pieces and after.pieces:
        touched = touched_in(change, (before.study, after.study))
        for of, kinds in (("hands", HANDS), ("machine", ("machine",))):
            keys = [key for key in touched if key[1] in kinds]
            if keys:
                return _compared(of, keys, adopted, before, after, seed)
        if services_in(change):
            return _waits_compared(adopted, before, after)
    return Verdict("too little", "", before.pieces, None, adopted.earlier)


def touched_in(change: Change, studies: Iterable[TimeStudy]) -> list[Key]:
    """The time elements that a change touches, as (step, kind), in the order of the route."""
    found: dict[Key, None] = {}
    for study in studies:
        operations = list(dict.fromkeys(element.operation for element in study.elements))
        for element in study.elements:
            if any(_touches(single, element, operations) for single in singles(change)):
                found[element.step, element.kind] = None
    return list(found)


def _touches(change: Change, element: ElementStudy, operations: list[str]) -> bool:
    match change:
        case Times():
            return change.operation in (element.operation, element.step) and change.kind in ("", element.kind)
        case Instead():
            return element.operation == change.operation and change.per_cent != 100
        case LoadSize():
            return element.step == change.step and element.kind != "hand"
        case TraySize():
            return element.kind in PER_LOAD
        case OneVisit() | Swapped():
            at = operations.index(change.first) if change.first in operations else len(operations)
            is_either = element.operation in operations[at : at + 2]
            return is_either and (isinstance(change, OneVisit) or element.kind == "setup")
    return False


@dataclass(frozen=True)
class _Side:
    """An element in one run: its observations in minutes, how many of them each piece of the run asked, and how much their
    mean varies by the sessions that they were in (standard deviation of the logarithm)."""

    minutes: tuple[float, ...]
    a_piece: float
    by_sessions: float = 0.0

    @property
    def is_known(self) -> bool:
        return len(self.minutes) >= LEAST or not self.a_piece


def _compared(of: str, keys: list[Key], adopted: Adopted, before: SeenRun, after: SeenRun, seed: int) -> Verdict:
    import numpy

    promised = adopted.hands if of == "hands" else adopted.earlier
    sides = [(_side(before, key), _side(after, key)) for key in keys]
    known = [pair for pair in sides if all(side.is_known for side in pair)]
    counts = [sum(len(pair[at].minutes) for pair in known) for at in (0, 1)]
    if not known or not any(counts) or _unknown(before, keys, after) > MOST_UNKNOWN:
        return Verdict("too little", of, before.pieces, None, promised, counts[0], counts[1])
    luck = numpy.random.default_rng(seed)
    drawn = sum(_drawn(luck, pair[0]) - _drawn(luck, pair[1]) for pair in known) * before.pieces
    mid = sum(_mean(pair[0]) - _mean(pair[1]) for pair in known) * before.pieces
    low, high = (float(numpy.quantile(drawn, share)) for share in (0.025, 0.975))
    saved = Span3(low * _MINUTE, mid * _MINUTE, high * _MINUTE)
    return Verdict(_code(low, high), of, before.pieces, saved, promised, counts[0], counts[1])


def _code(low: float, high: float) -> str:
    return "saved" if low > 0 else "worse" if high < 0 else "no difference"


def _side(run: SeenRun, key: Key) -> _Side:
    element = _element(run.study, key)
    if element is None:
        return _Side((), 0.0)
    by_sessions = element.by_session / element.sessions**0.5 if element.sessions else 0.0
    return _Side(tuple(length / _MINUTE for length in element.lengths), times_of(element) / run.pieces, by_sessions)


def _element(study: TimeStudy, key: Key) -> ElementStudy | None:
    return next((element for element in study.elements if (element.step, element.kind) == key), None)


def _unknown(before: SeenRun, keys: list[Key], after: SeenRun) -> float:
    """The share of the guessed work of both runs that too few observations are known of."""

    def works() -> Iterator[tuple[float, bool]]:
        for key in keys:
            is_known = all(_side(run, key).is_known for run in (before, after))
            for run in (before, after):
                element = _element(run.study, key)
                if element is not None:
                    yield element.guessed_total / _MINUTE, is_known

    some = list(works())
    whole = sum(work for work, _ in some)
    return sum(work for work, is_known in some if not is_known) / whole if whole else 0.0


def _mean(side: _Side) -> float:
    return side.a_piece * sum(side.minutes) / len(side.minutes) if side.a_piece else 0.0


def _drawn(luck: Any, side: _Side) -> Any:
    """Minutes a piece, as many as are drawn."""
    import numpy

    if not side.a_piece:
        return numpy.zeros(DRAWN)
    some = numpy.array(side.minutes)
    found = side.a_piece * some[luck.integers(0, len(some), (DRAWN, len(some)))].mean(axis=1)
    if not side.by_sessions:
        return found
    return found * numpy.exp(luck.normal(-(side.by_sessions**2) / 2, side.by_sessions, DRAWN))


def _waits_compared(adopted: Adopted, before: SeenRun, after: SeenRun) -> Verdict:
    if before.waited is None or after.waited is None:
        return Verdict("too little", "waiting", before.pieces, None, adopted.earlier)
    as_many = before.pieces / after.pieces
    saved = before.waited - after.waited * as_many
    code = _code(saved / _MINUTE, saved / _MINUTE)
    is_alike = ALIKE <= as_many <= 1 / ALIKE
    return Verdict(
        code, "waiting", before.pieces, Span3(saved, saved, saved), adopted.earlier, 1, 1,
        _both(before.a_good_piece, after.a_good_piece), adopted.hands.mid, _both(before.took, after.took) if is_alike else None,
    )  # fmt: skip


def _both(before: timedelta | None, after: timedelta | None) -> tuple[timedelta, timedelta] | None:
    return None if before is None or after is None else (before, after)
