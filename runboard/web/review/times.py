"""The times of a run: each time element as it was guessed, measured and is believed now, those that matter first."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from itertools import groupby

from flask import Blueprint, Response, request
from markupsafe import Markup

from runboard.charts.bars import Limits, Strip, control, strip
from runboard.floor.changing.overrule import is_far_off, length_said, overrule_time, take_back_time
from runboard.floor.looking.at_hand import first_person
from runboard.review.essentials import Essentials
from runboard.review.measured.matters import moved, what_matters
from runboard.review.measured.over_runs import element_chart
from runboard.review.measured.study import ElementStudy
from runboard.run.fold.route import Step
from runboard.run.refusal import Refused
from runboard.shop.product import ZERO
from runboard.web.door.pages import asking_person, page, refusal, see_other, workshop
from runboard.web.review import times_said
from runboard.web.review.looked import minutes_of, review_of
from runboard.words.facts import fine_span
from runboard.words.review import furthest_named, little_measured, presses_of
from runboard.words.sentences import say

part = Blueprint("review_times", __name__)


@dataclass(frozen=True)
class Shown:
    """A time element as the page shows it. ``said`` is what there is to say of it, sentence by sentence, ``left_out`` why some
    of its times do not count, ``history`` how its estimate went, ``over_runs`` its control chart,
    ``word`` what somebody said of it."""

    key: str
    study: ElementStudy
    kind: str
    times: dict[str, str]
    chart: Markup
    verdict: str
    said: Sequence[str]
    left_out: Sequence[str]
    believed: str
    source: str
    history: Sequence[str]
    over_runs: Markup
    word: times_said.Word | None = None


@dataclass(frozen=True)
class Folded:
    """The other elements of an operation, and what its one line says of them."""

    step: str
    name: str
    line: str
    elements: Sequence[Shown]
    is_open: bool


@dataclass(frozen=True)
class Typed:
    """A length that was not taken yet: what was typed, and what there is to ask or to put right. ``sure`` comes back with it
    where it is meant."""

    study: ElementStudy
    name: str
    length: str
    why: str
    problem: str
    sure: str = ""


@part.get("/review/runs/<key>/times")
def times(key: str) -> Response:
    """Those that matter, and every other one a press away."""
    return _page(review_of(key))


def _page(found: Essentials, typed: Typed | None = None, status: int = 200) -> Response:
    first = what_matters(found.study, furthest_named(found))
    shown = {id(study): _shown(found, at, study) for at, study in enumerate(found.study.elements)}
    others = [study for study in found.study.elements if study not in first]
    return page(
        "review/times.html",
        status=status,
        run=found.past.run,
        first=[(times_said.name_of(study), shown[id(study)]) for study in first],
        others=_others(found, others, shown),
        anchors=_anchors(first),
        all=list(shown.values()),
        typed=typed,
        saved=next(
            (one.word for one in shown.values() if one.word and one.word.event == request.args.get("saved")), None
        ),
        back=say("review-times", "back") if request.args.get("back") else "",
        percent=int((found.study.share or 0) * 100),
        presses=little_measured(found) or presses_of(found),
    )


def _anchors(first: Sequence[ElementStudy]) -> dict[str, str]:
    """By step the kind of its first element of those that are shown first: it bears the step's anchor."""
    found: dict[str, str] = {}
    for study in first:
        found.setdefault(study.step, study.kind)
    return found


@part.post("/review/runs/<key>/times")
def overrule(key: str) -> Response:
    """Somebody says how long it takes, with a reason; what is far off is asked about first."""
    found, form = review_of(key), request.form
    run, step, kind = found.past.run, form.get("step", ""), form.get("kind", "")
    study = next((each for each in found.study.elements if (each.step, each.kind) == (step, kind)), None)
    try:
        length = length_said(form.get("length", ""))
        if study and str(length) != form.get("sure") and is_far_off(length, (study.estimate, study.median)):
            asked = times_said.asked_back(length, study.median or study.estimate, kind)
            return _page(found, _typed(study, asked, str(length)), 409)
        person = first_person(workshop(), asking_person())
        said = overrule_time(workshop(), run.product, step, kind, minutes_of(length), form.get("why", ""), person)
    except Refused as refused:
        if study is None:
            raise
        return _page(found, _typed(study, refusal(refused)), 409)
    return see_other(f"/review/runs/{run.id}/times?step={step}&saved={said.id}#saved")


@part.post("/review/runs/<key>/times/back")
def take_back(key: str) -> Response:
    """What somebody said of a time never was."""
    run = review_of(key).past.run
    take_back_time(workshop(), request.form.get("event", ""), first_person(workshop(), asking_person()))
    return see_other(f"/review/runs/{run.id}/times?back=1#saved")


def _typed(study: ElementStudy, problem: str, sure: str = "") -> Typed:
    form = request.form
    return Typed(
        study, times_said.name_of(study), form.get("length", "")[:40], form.get("why", "")[:500], problem, sure
    )


def _others(found: Essentials, others: Sequence[ElementStudy], shown: dict[int, Shown]) -> list[Folded]:
    """Step by step, the one that moved the run most first; those that did not, in the order of the route."""
    steps = [list(here) for _, here in groupby(others, lambda study: study.step)]
    steps.sort(key=lambda here: max(map(moved, here)), reverse=True)
    return [_folded(found, here, shown) for here in steps]


def _folded(found: Essentials, studies: Sequence[ElementStudy], shown: dict[int, Shown]) -> Folded:
    """The line is of the element that moved the run most, else of the one that there is most of."""
    most = max(studies, key=lambda study: (study.n > 0, moved(study) if study.n else ZERO, study.guessed_total))
    step, asked = most.step, request.args.get("step", "")
    is_one_of_many = sum(study.step == step for study in found.study.elements) > 1
    line = times_said.in_a_line(most, say("element", most.kind) if is_one_of_many else "")
    return Folded(step, most.step_name, line, [shown[id(study)] for study in studies], asked in (step, most.operation))


def _shown(found: Essentials, at: int, study: ElementStudy) -> Shown:
    error = next((each for each in found.happened.errors if (each.step, each.kind) == (study.step, study.kind)), None)
    step = found.past.run.route.step(study.step)
    label = say(
        "review-chart", "strip", {"step": study.step_name, "kind": say("element", study.kind), "count": study.n}
    )
    return Shown(
        f"e{at}",
        study,
        say("element", study.kind),
        times_said.times_in_words(study),
        _strip(f"e{at}", label, study),
        times_said.verdict(study, error),
        tuple(times_said.details(study)),
        times_said.left_out(study),
        times_said.believed(study),
        times_said.source(found, found.past.estimates.of(found.past.run, step, study.kind)) if step else "",
        tuple(times_said.history(found, step, study.kind)) if step else (),
        _over_runs(found, at, step, study.kind, label) if step else Markup(""),
        times_said.word(found, study),
    )


def _strip(key: str, label: str, study: ElementStudy) -> Markup:
    if not study.n:
        return Markup("")
    out = [left.length for left in study.left_out]
    lengths = Strip(
        [minutes_of(length) for length in study.lengths],
        minutes_of(study.guess),
        [minutes_of(length) for length in out if length is not None],
    )
    most = max([*study.lengths, study.guess]) * 1.15
    return strip(key, label, lengths, minutes_of(most), ("0", fine_span(most)))


def _over_runs(found: Essentials, at: int, step: Step, kind: str, label: str) -> Markup:
    charted = element_chart(found.past.estimates, found.past.run, step, kind)
    if charted is None:
        return Markup("")
    chart = charted.chart
    lower, centre, upper = (fine_span(timedelta(minutes=line)) for line in (chart.lower, chart.centre, chart.upper))
    limits = Limits(chart.centre, chart.lower, chart.upper)
    return control(f"c{at}", label, chart.points, limits, (lower, centre, upper), chart.out)
