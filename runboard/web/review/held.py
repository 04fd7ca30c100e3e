"""What held a run: the constraint over time, and what an hour of each thing would have been worth."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Any

from flask import Blueprint, Response
from markupsafe import Markup

from runboard.charts.bars import Bar, Held, bars, over_time
from runboard.review.essentials import Essentials
from runboard.review.held import nouns
from runboard.review.held.nouns import What
from runboard.shop.hours import without
from runboard.web.door.pages import page
from runboard.web.review.looked import minutes_of, review_of
from runboard.words.facts import date_in_words, span_in_words, unbroken
from runboard.words.review import line_said
from runboard.words.review_held import COST_IS_SAID, because_in_words, pushed_in_words, session_day, value_in_words
from runboard.words.review_things import begun, what_in_words
from runboard.words.sentences import say

_NOTHING = timedelta(seconds=30)  # less moves no finish that anybody could tell
_ALIKE = timedelta(minutes=1)
_SHORT = 0.03  # of all hours in the shop is drawn of those in which nobody was
_WAITED = 5

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
        line=unbroken(line_said(found, "held")),
        held=what,
        is_coming=not found.is_weighed,
        over=what and _over(found, what),
        stretches=[(_named(found, each.what), _trimmed(each)) for each in what.stretches] if what else [],
        values=what and _values(found, what),
        hours=[(_valued(found, value), _worth(value.earlier)) for value in what.values] if what else [],
        waited=[] if found.is_weighed or what else _waited(found),
        **_said(found, what),
    )


def _said(found: Essentials, held: nouns.Held | None) -> dict[str, Any]:
    """Why it held by the log, and how far the replay ends from how the run did."""
    if held is None:
        return {"because": "", "pushed": "", "off": None}
    off = _off(held)
    return {
        "most": "short" if held.most and not _is_longest(held) else "longest",
        "cost": span_in_words(held.cost) if held.most and held.most[0] in COST_IS_SAID else "none",
        "pushed": pushed_in_words(found.past, held, span_in_words(held.cost)),
        "because": _because(found, held),
        "off": off and abs(off),
        "is_later": off is not None and off >= timedelta(0),
    }


def _off(held: nouns.Held) -> timedelta | None:
    """By how much the replay ends later than the run did; None where that goes on."""
    off = held.replayed - held.finished if held.finished else None
    return off if off is None or abs(off) >= _ALIKE else timedelta(0)


def _because(found: Essentials, held: nouns.Held) -> str:
    if held.most is None or held.because is None:
        return ""
    return because_in_words(found.past, held.most, what_in_words(found.past, held.most), held.because, held.sessions)


def _is_longest(held: nouns.Held) -> bool:
    others: dict[What, timedelta] = {}
    for each in held.stretches:
        others[each.what] = others.get(each.what, timedelta(0)) + each.open
    return held.most_open >= max(others.values(), default=timedelta(0))


def _waited(found: Essentials) -> list[tuple[str, timedelta]]:
    """What the trays waited for longest, and how long: it is known at once."""
    some = sorted((each for each in found.happened.waiting if each.row == "tray"), key=lambda each: -each.length)
    return [(say("review-waits", each.why), each.length) for each in some[:_WAITED]]


class Clock:
    """A time with all the hours in which somebody was in the shop, and the others drawn short."""

    def __init__(self, held: nouns.Held) -> None:
        self.there = without([span for each in held.stretches for span in each.there], [])
        self.sessions = held.sessions
        away = _SHORT * sum((closes - opens for opens, closes in self.there), timedelta(0))
        self.starts: list[timedelta] = []
        self.away: list[tuple[float, float]] = []
        at = timedelta(0)
        for number, (opens, closes) in enumerate(self.there):
            if number:
                gap = min(away, opens - self.there[number - 1][1])
                self.away.append((minutes_of(at), minutes_of(at + gap)))
                at += gap
            self.starts.append(at)
            at += closes - opens
        self.end = minutes_of(at)

    def at(self, moment: datetime) -> float:
        """Where a moment lies that somebody was there."""
        number = max((at for at, (opens, _) in enumerate(self.there) if opens <= moment), default=0)
        return minutes_of(self.starts[number] + moment - self.there[number][0])

    def days(self, time_zone: str) -> list[tuple[float, Sequence[str]]]:
        """The first hour of each day's session, with its day's words."""
        found: dict[date, float] = {}
        for opens, _ in self.there:
            found.setdefault(session_day(opens, self.sessions, time_zone), self.at(opens))
        return [
            (at, (said := date_in_words(day), said.rsplit(" ", 1)[0], said.split(" ")[0])) for day, at in found.items()
        ]


def _over(found: Essentials, held: nouns.Held) -> Markup:
    """A row for each thing that held the run while somebody was there."""
    rows: dict[What, list[nouns.HeldStretch]] = {}
    for each in held.stretches:
        if each.there:
            rows.setdefault(each.what, []).append(each)
    clock = Clock(held)
    shown = [
        Held(
            _named(found, what),
            span_in_words(sum((each.open for each in some), timedelta(0))),
            [
                (clock.at(opens), clock.at(opens) + minutes_of(closes - opens))
                for each in some
                for opens, closes in each.there
            ],
            what == held.most,
        )
        for what, some in sorted(rows.items(), key=lambda row: row[0] != held.most)
    ]
    days = clock.days(found.past.book.time_zone)
    return over_time("held", say("review-chart", "held"), shown, clock.end, days, clock.away) if shown else Markup("")


def _trimmed(each: nouns.HeldStretch) -> nouns.HeldStretch:
    """From when to when somebody was there in it."""
    return replace(each, began_at=each.there[0][0], ended_at=each.there[-1][1]) if each.there else each


def _values(found: Essentials, held: nouns.Held) -> Markup:
    rows = [
        Bar(_valued(found, value), _moved(value.earlier), _worth(value.earlier), value.what == held.most)
        for value in held.values
    ]
    return bars("values", say("review-chart", "values"), rows)


def _valued(found: Essentials, value: nouns.HourValue) -> str:
    return value_in_words(value, _named(found, value.what))


def _moved(earlier: timedelta) -> float:
    return minutes_of(earlier) if earlier >= _NOTHING else 0.0


def _worth(earlier: timedelta) -> str:
    return span_in_words(earlier) if earlier >= _NOTHING else say("review-worth", "nothing")


def _named(found: Essentials, what: What) -> str:
    return begun(what_in_words(found.past, what))
