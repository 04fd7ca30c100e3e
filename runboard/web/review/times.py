"""The times of a run: each time element as it was guessed, measured and is believed now."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from flask import Blueprint, Response
from markupsafe import Markup

from runboard.charts.bars import Strip, strip
from runboard.review.happened.nouns import ElementError
from runboard.review.measured.study import ElementStudy, LearningCurve
from runboard.web.door.pages import page
from runboard.web.review.looked import fine_span, minutes_of, review_of
from runboard.words.facts import list_in_words
from runboard.words.review import little_measured, presses_of
from runboard.words.sentences import say

part = Blueprint("review_times", __name__)


@dataclass(frozen=True)
class Shown:
    """A time element as the page shows it. ``said`` is what there is to say of it, sentence by sentence."""

    study: ElementStudy
    kind: str
    times: dict[str, str]
    chart: Markup
    said: tuple[str, ...]


@part.get("/review/runs/<key>/times")
def times(key: str) -> Response:
    """Every time element, operation by operation."""
    found = review_of(key)
    errors = {(error.step, error.kind): error for error in found.happened.errors}
    shown = [_shown(at, study, errors.get((study.step, study.kind))) for at, study in enumerate(found.study.elements)]
    return page(
        "review/times.html",
        run=found.past.run,
        steps=[(name, list(here)) for name, here in groupby(shown, key=lambda each: each.study.step_name)],
        percent=int((found.study.share or 0) * 100),
        presses=little_measured(found) or presses_of(found),
    )


def _shown(at: int, study: ElementStudy, error: ElementError | None) -> Shown:
    times = {name: getattr(study, name) for name in ("guess", "median", "written", "estimate")}
    out = [left.length for left in study.left_out]
    lengths = Strip(
        [minutes_of(length) for length in study.lengths],
        minutes_of(study.guess),
        [minutes_of(length) for length in out if length is not None],
    )
    most = max([*study.lengths, study.guess]) * 1.15
    kind = say("element", study.kind)
    label = say("review-chart", "strip", {"step": study.step_name, "kind": kind, "count": study.n})
    chart = strip(f"e{at}", label, lengths, minutes_of(most), ("0", fine_span(most))) if study.n else Markup("")
    return Shown(
        study, kind, {name: fine_span(span) for name, span in times.items()}, chart, tuple(_said(study, error))
    )


def _said(study: ElementStudy, error: ElementError | None) -> Iterable[str]:
    facts: dict[str, Any] = {"count": study.n, "spread": fine_span(study.deviation) if study.deviation else "none"}
    yield say("review-times", "measured" if study.n else "none", facts)
    if error is not None:
        code = "error within" if error.is_within else "error beyond"
        yield say("review-times", code, {"percent": f"{100 * error.error:+.0f}".replace("-", "−")})
    if study.left_out:
        why = [
            say("review-times", "left out why", {"count": count, "why": say("review-left-out", why)})
            for why, count in study.why_left_out.items()
        ]
        yield say("review-times", "left out", {"count": len(study.left_out), "why": list_in_words(why)})
    if study.curve is not None and study.curve.is_clear:
        yield _curve(study.curve)
    if study.n and study.needed:
        yield say("review-times", "needed", {"count": study.needed})


def _curve(curve: LearningCurve) -> str:
    facts = {"first": fine_span(curve.first), "percent": round(100 * curve.rate)}
    return say("review-times", "quicker" if curve.rate < 1 else "slower", facts)
