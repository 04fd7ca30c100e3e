"""What held a run: the constraint over time, and what an hour of each thing would have been worth."""

from datetime import timedelta

from flask import Blueprint, Response
from markupsafe import Markup

from runboard.charts.bars import Bar, Held, bars, over_time
from runboard.review.essentials import Essentials
from runboard.review.held import nouns
from runboard.review.held.nouns import What
from runboard.shop.hours import local_day
from runboard.web.door.pages import page
from runboard.web.review.looked import minutes_of, review_of
from runboard.words.facts import date_in_words, span_in_words, zone_of
from runboard.words.review import five_lines, what_in_words
from runboard.words.sentences import say

_NOTHING = timedelta(seconds=30)  # less moves no finish that anybody could tell

part = Blueprint("review_held", __name__)


@part.get("/review/runs/<key>/held")
def held(key: str) -> Response:
    """What held the run, as a strip, as values of an hour, and each as a table; asked for again until it is there."""
    found = review_of(key)
    what = found.held
    return page(
        "review/held.html",
        "held",
        run=found.past.run,
        line=next(line for line in five_lines(found) if line.code == "held"),
        held=what,
        is_coming=not found.is_weighed,
        over=what and _over(found, what),
        stretches=[(_named(found, each.what), each) for each in what.stretches] if what else [],
        values=what and _values(found, what),
        hours=[(_named(found, value.what), _worth(value.earlier)) for value in what.values] if what else [],
        off=what and what.finished and abs(what.replayed - what.finished),
    )


def _over(found: Essentials, held: nouns.Held) -> Markup:
    """A row for each thing that held the run, over its whole time."""
    if not held.stretches:
        return Markup("")
    began, ended = held.stretches[0].began_at, max(each.ended_at for each in held.stretches)
    rows: dict[What, list[nouns.HeldStretch]] = {}
    for each in held.stretches:
        rows.setdefault(each.what, []).append(each)
    shown = [
        Held(
            _named(found, what),
            span_in_words(sum((each.ended_at - each.began_at for each in some), timedelta(0))),
            [(minutes_of(each.began_at - began), minutes_of(each.ended_at - began)) for each in some],
            what[0] != "hours",
        )
        for what, some in rows.items()
    ]
    zone = zone_of(found.past.book.time_zone)
    midnight = began.astimezone(zone).replace(hour=0, minute=0, second=0, microsecond=0)
    days = (local_day(ended, found.past.book.time_zone) - midnight.date()).days
    ticks = [
        (max(0.0, minutes_of(moment - began)), date_in_words(moment))
        for moment in (midnight + timedelta(days=day) for day in range(days + 1))
    ]
    return over_time("held", say("review-chart", "held"), shown, minutes_of(ended - began), ticks)


def _values(found: Essentials, held: nouns.Held) -> Markup:
    rows = [
        Bar(_named(found, value.what), _moved(value.earlier), _worth(value.earlier), value.what == held.most)
        for value in held.values
    ]
    return bars("values", say("review-chart", "values"), rows)


def _moved(earlier: timedelta) -> float:
    return minutes_of(earlier) if earlier >= _NOTHING else 0.0


def _worth(earlier: timedelta) -> str:
    return span_in_words(earlier) if earlier >= _NOTHING else say("review-worth", "nothing")


def _named(found: Essentials, what: What) -> str:
    said = what_in_words(found.past, what)
    return said[:1].upper() + said[1:]
