"""The Review screen: the runs, and what a review says first: five lines and one picture. Noise and dust by day."""

from datetime import timedelta
from itertools import groupby
from urllib.parse import urlsplit

from flask import Blueprint, Response
from markupsafe import Markup

from runboard.charts.bars import Beside, bars_beside
from runboard.floor.changing.answers import new_answers
from runboard.floor.looking.at_hand import names_now
from runboard.floor.looking.glance import Glance, runs_at_a_glance
from runboard.floor.looking.look_back import exposures_of_days
from runboard.review.dust_limits import DUST_LIMITS
from runboard.review.essentials import Essentials
from runboard.review.exposure import noise_rule
from runboard.review.happened.nouns import OperationBar
from runboard.web.door.pages import page, workshop
from runboard.web.fittings import fittings
from runboard.web.review.looked import review_of
from runboard.words.facts import date_in_words, number_in_words, span_in_words, unbroken
from runboard.words.review import Line, five_lines, little_measured
from runboard.words.review_done import done_in_words
from runboard.words.review_things import piece_time
from runboard.words.sentences import say

EXPOSURE_DAYS = 7
NOUGHT = timedelta(0)
EVIDENCE = {
    "pieces": "happened#hands", "furthest": "times", "lost": "happened#lost", "held": "held", "try": "changes",
}  # fmt: skip

part = Blueprint("review", __name__)


@part.get("/review")
def review() -> Response:
    """Every run, the newest first."""
    return page(
        "review/review.html",
        runs=[(one.run, at_a_glance(one), one.run.state) for one in runs_at_a_glance(workshop())],
    )


@part.get("/review/runs/<key>")
def run(key: str) -> Response:
    """One run in five lines and one picture. What is worked out still comes as a part of the page, asked for again."""
    found = review_of(key)
    lines = five_lines(found)
    return page(
        "review/run.html",
        "lines",
        run=found.past.run,
        is_empty=not (found.happened.hands or found.happened.good or found.happened.scrap),
        little=little_measured(found),
        done=unbroken(done_in_words(found)),
        lines=[
            (line, *_unbroken(line), f"/review/runs/{found.past.run.id}/{_evidence(found, line)}") for line in lines
        ],
        is_coming=any(line.is_coming for line in lines),
        picture=picture(found),
        bars=found.happened.bars,
        answers=new_answers(fittings().settings, found.past.run.id),
    )


def _evidence(found: Essentials, line: Line) -> str:
    """Where the evidence of a line is: of the furthest from its guess the first of its times."""
    furthest = found.furthest if line.code == "furthest" else None
    steps = (each.step for each in found.study.elements if furthest and each.operation == furthest.operation)
    step = next(steps, "")
    return EVIDENCE[line.code] + (f"#{step}" if step else "")


def at_a_glance(one: Glance) -> str:
    """What came of a run, as it stands in the list: an open one has no time of a piece."""
    piece = "none" if one.a_piece is None or one.run.state == "open" else piece_time(one.a_piece)
    more = "yes" if one.good > one.wanted else "no"
    return say("review", "at a glance", {"good": one.good, "wanted": one.wanted, "more": more, "piece": piece})


def _unbroken(line: Line) -> tuple[str, ...]:
    """Its parts, with no line's end within a span of time."""
    return tuple(map(unbroken, line.parts))


def picture(found: Essentials) -> Markup:
    """One bar an operation, what hands and machines took over what was guessed."""
    rows = [
        Beside(
            bar.name,
            bar.guess.total_seconds(),
            None if bar.taken is None else bar.taken.total_seconds(),
            span_in_words(bar.taken),
            _machine(bar).total_seconds(),
        )
        for bar in found.happened.bars
    ]
    return bars_beside("operations", say("review-chart", "operations"), rows, say("review-chart", "not measured"))


def _machine(bar: OperationBar) -> timedelta:
    """The machine's part of what an operation took."""
    return (bar.taken or NOUGHT) - (bar.hands_taken or NOUGHT)


@part.get("/review/days")
def days() -> Response:
    """Noise and dust of each person on the last days, as information."""
    found, names = exposures_of_days(workshop(), EXPOSURE_DAYS), names_now(workshop())
    rule = noise_rule(names.book)
    return page(
        "review/days.html",
        days=[
            (date_in_words(day, with_year=True), list(here)) for day, here in groupby(found, key=lambda each: each.day)
        ],
        who={exposure.person: names.person(exposure.person) for exposure in found},
        stations={key: names.station(key) for exposure in found for key in exposure.unknown},
        doses={exposure.dose: whole_percent(exposure.dose) for exposure in found if exposure.dose is not None},
        levels={exposure.level: round(exposure.level) for exposure in found if exposure.level is not None},
        rule=(figure(rule.limit_db), figure(rule.exchange_db)),
        limits=[
            (say("dust-limit-of", limit.of), say("dust-limit", limit.dust), figure(limit.mg_m3), _host(limit.source))
            for limit in DUST_LIMITS
        ],
        sources={limit.source: _host(limit.source) for limit in DUST_LIMITS},
    )


def _host(address: str) -> str:
    return urlsplit(address).netloc


def whole_percent(dose: float) -> int:
    """A dose in whole per cent; one that is too small for it is 0, which is said as 'under 1 %' and never as nothing."""
    return 0 if dose < 1 else round(dose)


def figure(number: float) -> str:
    """A number without a decimal that says nothing: 85, 0.5."""
    return number_in_words(number)
