"""A run's time study: every time element with what was observed, what it says, what was left out and why."""

from collections import Counter
from collections.abc import Iterable, Sequence
from datetime import timedelta
from statistics import fmean, median

from runboard.plan.change import KINDS_OF_TIME
from runboard.plan.estimates import Estimates
from runboard.plan.observed import guess_of
from runboard.review.measured.learning import fitted
from runboard.review.measured.presses import presses_that_tell
from runboard.review.measured.samples import deviation, needed
from runboard.review.measured.seen import Seen, seen_in
from runboard.review.measured.standards import normal_time, standard_time
from runboard.review.measured.study import ElementStudy, LeftOut, TimeStudy
from runboard.review.past import Past
from runboard.run.fold.route import Step
from runboard.shop.book import Book
from runboard.shop.hours import local_day
from runboard.shop.product import ZERO


def time_study(past: Past) -> TimeStudy:
    """Everything that the log says of how long things took in a run, an element at a time in the order of the route."""
    seen = seen_in(past)
    of: dict[tuple[str, str], list[Seen]] = {}
    steps = {step.key: step for step in past.run.route.steps}
    for one in seen:
        steps.setdefault(one.step.key, one.step)
        of.setdefault((one.step.key, one.kind), []).append(one)
    asked = [(step, kind, of.get((step.key, kind), [])) for step in steps.values() for kind in KINDS_OF_TIME]
    guesses = {(step.key, kind): past.believed.of(past.run, step, kind).length for step, kind, _ in asked}
    learned = past.estimates.with_words_until(past.until)
    studies = [
        _study(past, learned, step, kind, guesses[step.key, kind], observed)
        for step, kind, observed in asked
        if observed or guess_of(step, kind)
    ]
    unknown = [(one, guesses[one.step.key, one.kind] * one.units) for one in seen if one.counts and one.taken is None]
    return TimeStudy(tuple(studies), _share(seen, guesses), presses_that_tell(unknown))


def _study(
    past: Past, learned: Estimates, step: Step, kind: str, guess: timedelta, observed: Sequence[Seen]
) -> ElementStudy:
    known, then = past.estimates.of(past.run, step, kind), learned.of(past.run, step, kind)
    done = [one for one in observed if one.counts]
    counted = [(number, one) for number, one in enumerate(done, 1) if one.length is not None]
    lengths = tuple(one.length for _, one in counted if one.length is not None)
    seconds = [length.total_seconds() for length in lengths]
    spread = deviation(seconds)
    taken = [one.taken for one in done if one.taken is not None]
    return ElementStudy(
        step=step.key,
        step_name=step.name,
        operation=step.operation.key,
        kind=kind,
        guess=guess,
        written=guess_of(step, kind),
        estimate=known.length,
        source=known.said,
        lengths=lengths,
        median=timedelta(seconds=median(seconds)) if seconds else None,
        mean=timedelta(seconds=fmean(seconds)) if seconds else None,
        deviation=None if spread is None else timedelta(seconds=spread),
        left_out=tuple(LeftOut(one.element, one.why, one.seems) for one in observed if one.why),
        curve=fitted([(number, length) for (number, _), length in zip(counted, seconds, strict=True)]),
        needed=needed(seconds),
        guessed_total=guess * _units(done),
        taken_total=sum(taken, ZERO) if taken else None,
        standard=_standard(past.book, seconds, kind),
        guessed_of_taken=guess * _units(one for one in done if one.taken is not None),
        by_session=then.scatter.session,
        sessions=_sessions(past.book, [one for _, one in counted]),
    )


def _sessions(book: Book, counted: Sequence[Seen]) -> float:
    many = Counter(local_day(one.element.began_at, book.time_zone) for one in counted if one.element.began_at)
    return many.total() ** 2 / sum(each**2 for each in many.values()) if many else 0.0


def _standard(book: Book, seconds: Sequence[float], kind: str) -> timedelta | None:
    """What hands' work takes at a usual pace with the shop's allowance; a machine keeps its own pace."""
    if book.allowance is None or not seconds:
        return None
    normal = normal_time(fmean(seconds), 1.0 if kind == "machine" or book.rating is None else book.rating)
    return timedelta(seconds=standard_time(normal, book.allowance, book.allowance_of))


def _units(observed: Iterable[Seen]) -> int:
    return sum(one.units for one in observed)


def _share(seen: Sequence[Seen], guesses: dict[tuple[str, str], timedelta]) -> float | None:
    """How much of the work that is over was measured, each element by its guess; None where nothing is over."""
    whole = measured = ZERO
    for one in seen:
        if one.counts:
            length = guesses[one.step.key, one.kind] * one.units
            whole += length
            measured += length if one.is_measured else ZERO
    return measured / whole if whole else None
