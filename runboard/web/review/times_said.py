"""What there is to say of a time element of a run, sentence by sentence."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from typing import Any

from runboard.plan.estimates import KnownTime
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import ElementError
from runboard.review.measured.matters import moved
from runboard.review.measured.over_runs import history_of_estimate
from runboard.review.measured.study import ElementStudy, LearningCurve
from runboard.run.fold.overruled import Overruled
from runboard.run.fold.route import Step
from runboard.words.facts import date_in_words, fine, fine_span, span_in_words, zone_of
from runboard.words.review_things import Named
from runboard.words.sentences import say

_NO_BREAK = "\u00a0"
# Where more are needed than this, nobody measures them.
_MOST_NEEDED = 20
# Nearer to its guess than so many per cent it is as it was guessed.
_AS_GUESSED = 5
_A_MINUTE = timedelta(minutes=1)


def _said(span: timedelta | None) -> str:
    """No line ends within it."""
    return fine_span(span).replace(" ", _NO_BREAK)


def times_in_words(study: ElementStudy) -> dict[str, str]:
    """Its lengths, all rounded alike."""
    return {name: _said(getattr(study, name)) for name in ("guess", "median", "written", "estimate")}


def per_cent_off(study: ElementStudy) -> int | None:
    """By how much it lay off its guess, reckoned with the two figures that stand beside it; None where there is nothing to."""
    guess = fine(study.guess)
    return round(100 * (fine(study.median) / guess - 1)) if study.median is not None and guess else None


def verdict(study: ElementStudy, error: ElementError | None) -> str:
    """How it lay to its guess, in one sentence; the estimate's own doubt only where it was further off."""
    if not study.n:
        return in_a_line(study, "")
    beyond = error is not None and not error.is_within
    return say("review-times", "verdict", {**_lay(study), "count": study.n, "beyond": "yes" if beyond else "no"})


def in_a_line(study: ElementStudy, kind: str) -> str:
    """The same in a line: '1 min 35 s, guess 1 min 30 s, 6 % more'. ``kind`` is said where the step has others too."""
    return say("review-times", "line" if study.n else "line unmeasured", {**_lay(study), "kind": kind or "none"})


def _lay(study: ElementStudy) -> dict[str, Any]:
    """How it lay to its guess. Where the middle lies below it and all of it above, or the other way round, the average says so."""
    percent, average, guess = per_cent_off(study), _average(study), fine(study.guess)
    way = "none" if percent is None else "same" if abs(percent) <= _AS_GUESSED else "more" if percent > 0 else "less"
    median = study.median
    is_other_way = (
        average is not None
        and median is not None
        and (fine(average) > guess > fine(median) or fine(average) < guess < fine(median))
    )
    facts = {"guess": _said(study.guess), "taken": _said(median), "average": _said(average), "moved": "none"}
    if moved(study) >= _A_MINUTE:
        facts["moved"] = span_in_words(moved(study)).replace(" ", _NO_BREAK)
    return {**facts, "way": "average" if is_other_way else way, "percent": abs(percent or 0)}


def _average(study: ElementStudy) -> timedelta | None:
    """What it took on average in the whole run, as far as that is known."""
    if study.taken_total is None or not study.guessed_of_taken:
        return None
    return study.guess * (study.taken_total / study.guessed_of_taken)


def details(study: ElementStudy) -> Iterator[str]:
    """How often it was measured and how sure that is, its standard time and its learning curve."""
    spread = _said(study.deviation) if study.deviation else "none"
    if study.n > 1:
        yield say("review-times", "measured", {"count": study.n, "spread": spread})
    if study.standard is not None:
        yield say("review-times", "standard", {"time": _said(study.standard)})
    if study.curve is not None and study.curve.is_clear:
        yield _curve(study.curve)
    if study.n and study.needed:
        code = "needed" if study.needed <= _MOST_NEEDED else "scattered"
        yield say("review-times", code, {"count": study.needed})


def left_out(study: ElementStudy) -> list[str]:
    """Why some of its times do not count."""
    return [
        say("review-times", "left out why", {"count": count, "why": say("review-left-out", why)})
        for why, count in study.why_left_out.items()
    ]


def source(found: Essentials, known: KnownTime) -> str:
    """Where the estimate of now comes from."""
    word = known.overruled
    said = {"who": "none", "day": "", "why": ""} if word is None else _word(found, word)
    guess = "said" if word is not None else "file" if known.file else "none"
    return say("review-source", known.source, {**said, "count": known.times, "guess": guess, "file": known.file})


def believed(study: ElementStudy) -> str:
    """What was believed before the run, beside what the route says."""
    times = times_in_words(study)
    same = "yes" if times["guess"] == times["written"] else "no"
    return say("review-times", "believed", {"guess": times["guess"], "written": times["written"], "same": same})


@dataclass(frozen=True)
class Word:
    """What somebody said of a time and holds: the ``event`` to take back, what the page says of it ``beside`` the time, and just after
    it was ``saved``."""

    event: str
    beside: str
    saved: str


def word(found: Essentials, study: ElementStudy) -> Word | None:
    """The last that was said of it, None of nothing."""
    words = found.past.state.overruled.get((found.past.run.product, study.step, study.kind), ())
    if not words:
        return None
    last = words[-1]
    facts = {**_word(found, last), "length": _said(last.length), "name": name_of(study)}
    return Word(last.event, say("review-times", "word", facts), say("review-times", "saved", facts))


def name_of(study: ElementStudy) -> str:
    """'Fit hooks, hand time'"""
    return say("review-times", "name", {"step": study.step_name, "element": say("element", study.kind)})


def history(found: Essentials, step: Step, kind: str) -> Iterable[str]:
    """How the estimate went, the newest last."""
    past = found.past
    for was in history_of_estimate(past.estimates, past.run, step, kind, past.book.time_zone):
        facts = {"day": date_in_words(was.at, with_year=True), "length": _said(was.length), "count": was.n}
        if was.run or was.overruled is None:
            yield say("review-estimate", "was", facts)
        else:
            yield say("review-estimate", "said", {**facts, **_word(found, was.overruled)})


def _word(found: Essentials, word: Overruled) -> dict[str, str]:
    """Who said it, when and why: of one that nobody signed it is 'somebody'."""
    who = Named(found.past).person(word.person) if word.person else "none"
    return {"who": who, "day": _day(word.at, zone_of(found.past.book.time_zone)), "why": word.why}


def _day(moment: datetime, zone: tzinfo) -> str:
    return date_in_words(moment.astimezone(zone).date(), with_year=True)


def _curve(curve: LearningCurve) -> str:
    facts = {"first": _said(curve.first), "percent": round(100 * curve.rate)}
    return say("review-times", "quicker" if curve.rate < 1 else "slower", facts)


def asked_back(length: timedelta, known: timedelta, kind: str) -> str:
    """Whether a length is meant as it was typed: '2 h 45 a piece? It was 3 min 20 s.'"""
    return say("review-times", "far off", {"length": _said(length), "known": _said(known), "kind": kind})
