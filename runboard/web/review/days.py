"""The multiple-activity chart of a run as it was, day by day, with the planned one in narrow rows beside it, and the same
as a list."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta, tzinfo

from markupsafe import Markup

from runboard.charts.activity import Row, Stretch, activity, hours_of
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import DayPart
from runboard.shop.hours import local_day
from runboard.web.review.looked import minutes_of
from runboard.words.facts import date_in_words, span_in_words, time_of_day, zone_of
from runboard.words.review import Named, within
from runboard.words.sentences import say

# So near to each other the words of the hours would run into one another, in minutes of a day's chart.
_HOURS_APART = 9.0
_KINDS = {"watching": "watch", "walking": "walk", "waiting": "idle"}


@dataclass(frozen=True)
class Day:
    """One day of the chart: drawn both ways, and said line by line."""

    title: str
    chart: Markup
    said: tuple[str, ...]


def charts_of(found: Essentials, named: Named) -> list[Day]:
    """Each day on which somebody or a machine was at work for the run, with who and what was."""
    book = found.past.book
    days: dict[date, list[DayPart]] = {}
    for each in found.happened.day:
        days.setdefault(local_day(each.began_at, book.time_zone), []).append(each)
    planned: dict[date, list[DayPart]] = {}
    for each in found.happened.planned:
        planned.setdefault(local_day(each.began_at, book.time_zone), []).append(each)
    zone = zone_of(book.time_zone)
    return [
        _day(number, day, parts, planned.get(day, []), named, zone)
        for number, (day, parts) in enumerate(sorted(days.items()))
        if any(part.doing in ("work", "watching") for part in parts)
    ]


def _day(
    number: int, day: date, real: Sequence[DayPart], planned: Sequence[DayPart], named: Named, zone: tzinfo
) -> Day:
    busy = {(part.row, part.key): part for part in (*real, *planned) if part.doing in ("work", "watching")}
    keys = sorted(busy, key=lambda one: one[0])
    shown = [part for part in (*real, *planned) if (part.row, part.key) in busy and part.doing != "away"]
    opens, closes = min(part.began_at for part in shown), max(part.ended_at for part in shown)
    first = opens.astimezone(zone).replace(minute=0, second=0, microsecond=0)
    end = minutes_of(closes - first)
    rows = [
        Row(named.who(*key), _stretches(real, key, first, named), _stretches(planned, key, first, named))
        for key in keys
    ]
    hours = [(at, time_of_day(first + timedelta(minutes=at), zone)) for at in hours_of(0, end, end / _HOURS_APART)]
    title = date_in_words(day)
    label = say("review-chart", "day", {"day": title})
    said = tuple(_said(part, named, zone) for part in real if (part.row, part.key) in busy and part.doing != "away")
    return Day(title, activity(f"d{number}", label, rows, end, hours), said)


def _stretches(parts: Iterable[DayPart], key: tuple[str, str], first: datetime, named: Named) -> tuple[Stretch, ...]:
    return tuple(
        Stretch(
            minutes_of(part.began_at - first),
            minutes_of(part.ended_at - first),
            "setup" if part.kind == "setup" else _KINDS.get(part.doing, "work"),
            named.step(part.step),
        )
        for part in parts
        if (part.row, part.key) == key and part.doing != "away"
    )


def _said(part: DayPart, named: Named, zone: tzinfo) -> str:
    facts = {
        "from": time_of_day(part.began_at, zone),
        "to": time_of_day(part.ended_at, zone),
        "who": named.who(part.row, part.key),
        "step": named.step(part.step),
        "why": within(say("review-waits", part.why)) if part.why else "none",
        "span": span_in_words(part.length),
        "kind": say("element", part.kind) if part.kind else "none",
    }
    return say("review-did", part.doing, facts)
