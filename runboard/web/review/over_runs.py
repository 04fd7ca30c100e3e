"""All runs beside one another, product by product; one time element of them all; and tables of everything to save."""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import timedelta
from statistics import fmean
from typing import Any

from flask import Blueprint, Response, request
from markupsafe import Markup

from runboard.charts.bars import Bar, Limits, bars, control
from runboard.floor.looking.at_hand import run_now
from runboard.floor.looking.over_runs import ElementOverRuns, OverRuns, over_runs_now, tables_now
from runboard.plan.observed import guess_of
from runboard.review.changes.nouns import Adopted
from runboard.review.measured.over_runs import EstimateWas
from runboard.review.over_runs import MeasuredElement, ProductRuns, RunFigures
from runboard.review.table_files import json_of, zip_of
from runboard.shop.product import ZERO
from runboard.web.door.pages import page, unkept, workshop
from runboard.words.facts import date_in_words, fine_span, number_in_words, span_in_words, unbroken
from runboard.words.sentences import say
from runboard.words.trying import words_of_change

DAY = timedelta(days=1)
_A_MINUTE = timedelta(minutes=1)
# So many of the newest runs have a bar.
CHARTED = 6

part = Blueprint("review_over_runs", __name__)


@dataclass(frozen=True)
class Figure:
    """One figure of a product's runs: a chart, where there are two, and what it says."""

    name: str
    chart: Markup
    said: tuple[str, ...]


@part.get("/review/over-runs")
def over_runs() -> Response:
    """Every product's runs, and the time element that was asked for."""
    found = over_runs_now(workshop(), request.args.get("element", ""))
    return page(
        "review/over_runs.html",
        products=[
            (one, found.older[one.product], list(_figures(at, one)), _changes(one, found.changes))
            for at, one in enumerate(found.products)
        ],
        rows={run.id: _row(run) for one in found.products for run in one.runs},
        elements=_grouped(found.elements),
        shown=found.shown,
        element=found.shown and _element(found, found.shown),
        history=[_entry(was) for was in found.shown.history] if found.shown else [],
        written=found.shown and unbroken(fine_span(guess_of(found.shown.element.step, found.shown.element.kind))),
    )


@part.get("/review/tables.json")
def as_json() -> Response:
    """Everything that reviews rest on, as one JSON object."""
    return _file(json_of(tables_now(workshop())).encode(), "application/json", "runboard-tables.json")


@part.get("/review/tables.zip")
def as_zip() -> Response:
    """The same as a CSV each, in one ZIP."""
    return _file(zip_of(tables_now(workshop())), "application/zip", "runboard-tables.zip")


def _file(content: bytes, kind: str, name: str) -> Response:
    response = Response(content, content_type=kind)
    response.headers.set("Content-Disposition", "attachment", filename=name)
    return unkept(response)


# a product's runs


def _figures(at: int, product: ProductRuns) -> Iterator[Figure]:
    asked: tuple[tuple[str, Callable[[RunFigures], float | None], Callable[[float], str]], ...] = (
        (
            "took",
            lambda run: run.took / DAY if run.took is not None else None,
            lambda value: span_in_words(value * DAY),
        ),
        (
            "a-piece",
            lambda run: run.a_good_piece / DAY if run.a_good_piece else None,
            lambda value: fine_span(value * DAY),
        ),
        ("an-hour", lambda run: run.an_hour, _rounded),
        ("good-share", lambda run: run.good_percent, lambda value: _per_cent(int(value))),
        ("later", lambda run: run.later / DAY if run.later is not None else None, _days),
    )
    for code, value, written in asked:
        known = [(run, found) for run in product.runs if (found := value(run)) is not None]
        yield Figure(
            say("over-runs", code),
            _chart(f"p{at}{code}", product, code, value, written),
            tuple(map(unbroken, _said(code, product, known, written))),
        )


def _per_cent(percent: int) -> str:
    return say("over-runs", "percent", {"percent": percent})


def _changes(product: ProductRuns, changes: Sequence[Adopted]) -> list[tuple[RunFigures | None, str]]:
    """(the first run with it, the change) of each that was adopted for the product; None where no run is finished yet."""
    found = []
    for one in changes:
        run = run_now(workshop(), one.run)
        if one.product == product.product and one.change is not None and run is not None:
            said = words_of_change(workshop().book, run, one.change)
            if one.verdict == "dropped":
                said = say("over-runs", "dropped", {"change": said})
            found.append((next((after for after in product.runs if after.opened_at >= one.at), None), said))
    return found


def _rounded(value: float) -> str:
    return number_in_words(round(value, 1))


def _days(value: float) -> str:
    return say("over-runs", "after" if value > 0 else "before", {"span": span_in_words(abs(value) * DAY)})


def _chart(
    key: str,
    product: ProductRuns,
    code: str,
    value: Callable[[RunFigures], float | None],
    written: Callable[[float], str],
) -> Markup:
    """A bar a run from nought, so that a small difference looks small; what came before its promise has none."""
    newest = [(run, value(run)) for run in product.runs[-CHARTED:]]
    if len(newest) < 2:
        return Markup("")
    rows = [
        Bar(run.name, None if found is None else max(0.0, found), "" if found is None else written(found))
        for run, found in newest
    ]
    label = say("over-runs-chart", code, {"product": product.name, "count": len(rows)})
    return bars(key, label, rows, say("review-chart", "not measured"))


def _said(
    code: str, product: ProductRuns, known: list[tuple[RunFigures, float]], written: Callable[[float], str]
) -> Iterator[str]:
    """The last run of which it is known and the middle of all; and of how many nothing is known."""
    if known:
        run, last = known[-1]
        facts: dict[str, Any] = {"run": run.name, "last": written(last), "count": len(known)}
        facts |= {"good": run.good, "begun": run.good + run.scrap}
        mean = fmean(value for _, value in known)
        if code == "good-share":  # of pieces: runs are not equally large
            mean = product.good_percent or 0
        facts |= {"mean": written(mean), "is_whole": "no" if not run.is_whole else "yes"}
        yield say("over-runs-said", code, facts)
    if len(known) < len(product.runs):
        yield say("over-runs-unknown", code, {"count": len(product.runs) - len(known)})


def _row(run: RunFigures) -> dict[str, str]:
    """What a table says of a run; '–' where nobody knows."""
    share = run.good_percent
    return {
        "an_hour": "–" if run.an_hour is None else _rounded(run.an_hour),
        "a_piece": unbroken(fine_span(run.a_good_piece)),
        "share": "–" if share is None else _per_cent(share),
        "took": span_in_words(run.took),
        "later": "–" if run.later is None else _days(run.later / DAY),
    }


# one time element


def _grouped(elements: Sequence[MeasuredElement]) -> list[tuple[str, list[tuple[str, str]]]]:
    """(product, its elements as (id, name)) in the order of the route; what two products have bears the product's name."""
    found: dict[str, list[MeasuredElement]] = {}
    names = Counter(_named(one) for one in elements)
    for one in elements:
        found.setdefault(one.run.product_name, []).append(one)
    return [
        (product, [(one.id, _of_product(one) if names[_named(one)] > 1 else _named(one)) for one in some])
        for product, some in found.items()
    ]


def _named(one: MeasuredElement) -> str:
    return say("over-runs", "element", {"step": one.step.name, "kind": say("element", one.kind)})


def _of_product(one: MeasuredElement) -> str:
    return say("over-runs", "element of", {"element": _named(one), "product": one.run.product_name})


def _element(found: OverRuns, shown: ElementOverRuns) -> Figure:
    one, charted = shown.element, shown.chart
    name = _of_product(one)
    if charted is None:
        return Figure(name, Markup(""), (say("over-runs-said", "too few"),))
    chart = charted.chart
    lower, centre, upper = (fine_span(timedelta(minutes=value)) for value in (chart.lower, chart.centre, chart.upper))
    label = say("over-runs-chart", "element", {"name": name, "count": len(chart.points)})
    limits = Limits(chart.centre, chart.lower, chart.upper)
    drawn = control("element", label, chart.points, limits, (lower, centre, upper), chart.out)
    facts = {"count": len(chart.points), "out": len(chart.out), "lower": lower, "centre": centre, "upper": upper}
    said = [say("over-runs-said", "element", facts)]
    if one is found.furthest and abs(found.moves) >= _A_MINUTE:
        way = "more" if found.moves > ZERO else "less"
        said.append(say("over-runs-said", "furthest", {"way": way, "span": span_in_words(abs(found.moves))}))
    return Figure(name, drawn, tuple(map(unbroken, said)))


def _entry(was: EstimateWas) -> tuple[str, str, str, int]:
    """(day, which run or whose word, what was believed from then on, how many times were measured)."""
    run = run_now(workshop(), was.run)
    who = say("over-runs", "said") if run is None else run.name
    return date_in_words(was.at, with_year=True), who, unbroken(fine_span(was.length)), was.n
