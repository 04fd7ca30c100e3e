"""A time element over runs: how its estimate went, and its control chart."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from runboard.plan.estimates import (
    Estimates,
    Measured,
    Session,
    by_session,
    is_of_wood,
    moved,
    reckoned_from,
    spread_of,
    usual_of,
)
from runboard.plan.observed import guess_of, is_likely, word_before
from runboard.review.measured.charts import ControlChart, individuals
from runboard.run.fold.overruled import Overruled
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState
from runboard.shop.hours import local_day

MINUTE = timedelta(minutes=1)


@dataclass(frozen=True)
class ChartedElement:
    """A control chart of an element in minutes, with the run and the day of each point."""

    chart: ControlChart
    sessions: tuple[tuple[str, date], ...]


@dataclass(frozen=True)
class EstimateWas:
    """What was believed of an element after a run, or once somebody overruled it ('' for the run): on which day, how many times
    that run measured it (``n``), and how long it was thought to take. ``source`` is 'guess', 'said' or 'measured 9', by all
    until then; ``overruled`` is whose word it goes by, if anybody's."""

    at: date
    run: str
    n: int
    length: timedelta
    source: str
    overruled: Overruled | None = None


def element_chart(estimates: Estimates, run: RunState, step: Step, kind: str) -> ChartedElement | None:
    """Every likely time that was measured of the element on this run's wood, in order; None of fewer than two. No lower limit
    lies below nought: a time cannot."""
    likely = likely_times(estimates, run, step, kind)
    chart = individuals([one.length / MINUTE for one in likely])
    if chart is None:
        return None
    return ChartedElement(replace(chart, lower=max(0.0, chart.lower)), tuple(one.session for one in likely))


def likely_times(estimates: Estimates, run: RunState, step: Step, kind: str) -> list[Measured]:
    """Every likely time that was measured of the element on this run's wood, in order, whatever somebody said of it since."""
    times = _in_order(estimates, run, step, kind)
    return [one for one in times if is_likely(estimates.guess_then(run, step, kind, one.at), one.length)]


def history_of_estimate(
    estimates: Estimates, run: RunState, step: Step, kind: str, zone: str
) -> tuple[EstimateWas, ...]:
    """How an element's estimate went, in the order of time: one entry for each run that measured it and one for each word that
    overruled it. A run that was measured before and after such a word has two. Days are those of the shop's ``zone``."""
    times = _in_order(estimates, run, step, kind)
    words = estimates.words(run, step, kind)
    found: list[EstimateWas] = []
    for word in (None, *words):
        if word is not None:
            found.append(EstimateWas(local_day(word.at, zone), "", 0, word.length, "said", word))
        after = [one for one in times if word_before(words, one.at) is word]
        guess = guess_of(step, kind) if word is None else word.length
        spread = spread_of(reckoned_from(step, kind) if word is None else None)
        found += _by_run(guess, spread, after, kind, word)
    return tuple(found)


def _in_order(estimates: Estimates, run: RunState, step: Step, kind: str) -> list[Measured]:
    times = estimates.times.get((run.product, step.key, kind), ())
    fitting = (one for one in times if is_of_wood(run, one.wood))
    return sorted(fitting, key=lambda one: (one.session[1], one.at.timestamp() if one.at else 0.0))


def _by_run(
    guess: timedelta, spread: float, times: Sequence[Measured], kind: str, word: Overruled | None
) -> Iterator[EstimateWas]:
    of_run: dict[str, list[tuple[date, Session]]] = {}
    for (run, day), session in by_session(guess, times).items():
        of_run.setdefault(run, []).append((day, session))
    so_far: list[Session] = []
    for run, fresh in sorted(of_run.items(), key=lambda of: max(day for day, _ in of[1])):
        so_far += [session for _, session in fresh]
        known = moved(guess, so_far, usual_of(kind), spread)
        n = sum(session.times for _, session in fresh)
        yield EstimateWas(max(day for day, _ in fresh), run, n, known.length, known.said, word)
