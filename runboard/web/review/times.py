"""The times of a run: each time element as it was guessed, measured and is believed now."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import timedelta
from itertools import groupby
from typing import Any

from flask import Blueprint, Response, request
from markupsafe import Markup

from runboard.charts.bars import Limits, Strip, control, strip
from runboard.floor.changing.overrule import overrule_time
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import ElementError
from runboard.review.measured.over_runs import element_chart, history_of_estimate
from runboard.review.measured.study import ElementStudy, LearningCurve
from runboard.run.fold.route import Step
from runboard.run.refusal import Refused
from runboard.shop.durations import parse_duration
from runboard.shop.problem import Unreadable
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.review.looked import fine_span, minutes_of, review_of
from runboard.words.facts import date_in_words, list_in_words
from runboard.words.review import Named, little_measured, presses_of
from runboard.words.sentences import say

part = Blueprint("review_times", __name__)


@dataclass(frozen=True)
class Shown:
    """A time element as the page shows it. ``said`` is what there is to say of it, sentence by sentence, ``history`` how its
    estimate went, ``over_runs`` its control chart."""

    key: str
    study: ElementStudy
    kind: str
    times: dict[str, str]
    chart: Markup
    said: tuple[str, ...]
    source: str
    history: tuple[str, ...]
    over_runs: Markup


@part.get("/review/runs/<key>/times")
def times(key: str) -> Response:
    """Every time element, operation by operation."""
    found = review_of(key)
    errors = {(error.step, error.kind): error for error in found.happened.errors}
    shown = [
        _shown(found, at, study, errors.get((study.step, study.kind))) for at, study in enumerate(found.study.elements)
    ]
    return page(
        "review/times.html",
        run=found.past.run,
        steps=[(name, list(here)) for name, here in groupby(shown, key=lambda each: each.study.step_name)],
        percent=int((found.study.share or 0) * 100),
        presses=little_measured(found) or presses_of(found),
    )


@part.post("/review/runs/<key>/times")
def overrule(key: str) -> Response:
    """Somebody says how long it takes, with a reason."""
    run, form = review_of(key).past.run, request.form
    step, kind = form.get("step", ""), form.get("kind", "")
    overrule_time(
        workshop(), run.product, step, kind, _minutes(form.get("length", "")), form.get("why", ""), known_person()
    )
    return see_other(f"/review/runs/{run.id}/times#{step}")


def _minutes(text: str) -> float:
    """A length as one types it: '2 min 30 s', '2.5'. Refused 'time wrong'."""
    try:
        return parse_duration(text.strip()) / timedelta(minutes=1)
    except Unreadable:
        raise Refused("time wrong") from None


def _shown(found: Essentials, at: int, study: ElementStudy, error: ElementError | None) -> Shown:
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
    said = {name: fine_span(span) for name, span in times.items()}
    step = found.past.run.route.step(study.step)
    history = tuple(_history(found, step, study.kind)) if step else ()
    over_runs = _over_runs(found, at, step, study.kind, label) if step else Markup("")
    return Shown(f"e{at}", study, kind, said, chart, tuple(_said(study, error)), _source(study), history, over_runs)


def _source(study: ElementStudy) -> str:
    """Where the estimate comes from."""
    code, _, times = study.source.partition(" ")
    return say("review-source", code, {"count": int(times or 0)})


def _history(found: Essentials, step: Step, kind: str) -> Iterable[str]:
    """How the estimate went, the newest last."""
    past, named = found.past, Named(found.past)
    for was in history_of_estimate(past.estimates, past.run, step, kind, past.book.time_zone):
        facts = {"day": date_in_words(was.at, with_year=True), "length": fine_span(was.length), "count": was.n}
        if was.run or was.overruled is None:
            yield say("review-estimate", "was", facts)
        else:
            word = was.overruled
            yield say("review-estimate", "said", {**facts, "who": named.person(word.person), "why": word.why})


def _over_runs(found: Essentials, at: int, step: Step, kind: str, label: str) -> Markup:
    charted = element_chart(found.past.estimates, found.past.run, step, kind)
    if charted is None:
        return Markup("")
    chart = charted.chart
    lower, centre, upper = (fine_span(timedelta(minutes=line)) for line in (chart.lower, chart.centre, chart.upper))
    limits = Limits(chart.centre, chart.lower, chart.upper)
    return control(f"c{at}", label, chart.points, limits, (lower, centre, upper), chart.out)


def _said(study: ElementStudy, error: ElementError | None) -> Iterable[str]:
    facts: dict[str, Any] = {
        "others": "some" if study.n else "none",
        "count": study.n,
        "spread": fine_span(study.deviation) if study.deviation else "none",
    }
    yield say("review-times", "measured" if study.n else "none", facts)
    if error is not None:
        code = "error within" if error.is_within else "error beyond"
        yield say("review-times", code, {"percent": f"{100 * error.error:+.0f}".replace("-", "−")})
    if study.left_out:
        why = [
            say("review-times", "left out why", {"count": count, "why": say("review-left-out", why)})
            for why, count in study.why_left_out.items()
        ]
        yield say("review-times", "left out", {**facts, "count": len(study.left_out), "why": list_in_words(why)})
    if study.standard is not None:
        yield say("review-times", "standard", {"time": fine_span(study.standard)})
    if study.curve is not None and study.curve.is_clear:
        yield _curve(study.curve)
    if study.n and study.needed:
        yield say("review-times", "needed", {"count": study.needed})


def _curve(curve: LearningCurve) -> str:
    facts = {"first": fine_span(curve.first), "percent": round(100 * curve.rate)}
    return say("review-times", "quicker" if curve.rate < 1 else "slower", facts)
