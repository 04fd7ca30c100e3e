"""What held a run, in words: on which days, the load that it kept back, and of what an hour is worth something."""

import math
from collections.abc import Iterable, Sequence
from datetime import date, datetime

from runboard.review.held.nouns import A_BREAK, AN_HOUR, Because, Held, HeldStretch, HourValue, What, session_of
from runboard.review.past import Past
from runboard.shop.hours import Span, local_day
from runboard.words.facts import date_in_words, list_in_words, span_in_words, time_of_day, weekday_in_words, zone_of
from runboard.words.review_things import capacity_of
from runboard.words.sentences import say, sentence

_EVENING = 17  # a stretch that begins at this hour or later is of an evening
# So many days are named; of more, how many.
_NAMED = 3
_A_WEEK = 7
# Of hands and machines it is not said what they cost: no run is without any.
COST_IS_SAID = ("service", "wait", "room")
# What costs so many times what it held in the shop's hours, and a break more, is told how.
_TURNED_INTO = 2
# A child's start, and how many loads it weighs in a second: seconds to wait are said in fives.
_START, _LOADS_A_SECOND, _FIVE = 2.0, 40, 5


def held_days(
    time_zone: str, stretches: Iterable[HeldStretch], sessions: Sequence[Span] = (), locale: str = "en"
) -> str:
    """'on Wednesday and Friday evening', 'on Sat 31 Oct and Sat 7 Nov', 'on four days'; of the hours in which somebody was there,
    where anybody was. What is past midnight is of the evening that began before. '' where there is nothing."""
    zone = zone_of(time_zone)
    moments = (moment for one in stretches for moment in ([opens for opens, _ in one.there] or [one.began_at]))
    found = [_of_day(moment, sessions, time_zone) for moment in moments]
    days = sorted({local_day(moment, time_zone) for moment in found})
    if not days:
        return ""
    is_clear = (days[-1] - days[0]).days < _A_WEEK
    names = [weekday_in_words(day, locale) if is_clear else date_in_words(day, locale) for day in days]
    evenings = is_clear and all(moment.astimezone(zone).hour >= _EVENING for moment in found)
    facts = {
        "count": len(days),
        "number": say("review", "count", {"number": len(days)}),
        "days": list_in_words(names, locale),
        "named": "yes" if len(days) <= _NAMED else "no",
        "when": "evening" if evenings else "day",
    }
    return say("review-held", "days", facts)


def because_in_words(past: Past, what: What, named: str, because: Because, sessions: Sequence[Span] = ()) -> str:
    """'Tray 6 was ready for Oil on Fri 2 Oct, 16:26 …': what the log shows of it. ``named`` is what ``what`` is called. '' of
    what nothing is said."""
    step, time_zone = past.run.route.step_name, past.book.time_zone
    since, until = (session_day(moment, sessions, time_zone) for moment in (because.since, because.until))
    facts = {
        "what": named,
        "why": what[0],
        "step": step(because.step),
        "trays": list_in_words(because.trays),
        "count": len(because.trays),
        "waiting": _trays(because.trays),
        "others": _trays(because.by_trays),
        "by": step(because.by_step) if because.by_step else "none",
        "same": "yes" if because.by_step == because.step else "no",
        "since": _moment(because.since, since, time_zone),
        "until": _moment(because.until, until, time_zone),
        "till": time_of_day(because.until, zone_of(time_zone)) if since == until else "none",
        "one": "yes" if capacity_of(past, what[1]) == 1 else "no",
    }
    return sentence("review-held-because", facts)


def pushed_in_words(past: Past, held: Held, cost: str) -> str:
    """How the little that held the run in the shop's hours became what it cost on the clock. '' where both are about the same, or
    where it is not said what it cost."""
    if held.most is None or held.cost is None or held.most[0] not in COST_IS_SAID:
        return ""
    open_ = held.most_open
    if not open_ or held.cost < _TURNED_INTO * open_ or held.cost - open_ < A_BREAK:
        return ""
    time_zone, facts = past.book.time_zone, {"open": span_in_words(open_), "cost": cost, "past": "no"}
    if (because := held.because) is not None:
        since, until = (session_day(moment, held.sessions, time_zone) for moment in (because.since, because.until))
        if since != until:
            facts |= {
                "past": "yes",
                "step": past.run.route.step_name(because.step),
                "waiting": _trays(because.trays),
                "since": date_in_words(since),
                "until": date_in_words(until),
            }
    return say("review-held", "pushed", facts)


def _of_day(moment: datetime, sessions: Sequence[Span], time_zone: str) -> datetime:
    """The moment; where its session began on the day before, when that did."""
    began = session_of(sessions, moment)
    return moment if local_day(began, time_zone) == local_day(moment, time_zone) else began


def session_day(moment: datetime, sessions: Sequence[Span], time_zone: str) -> date:
    """The day of the session that a moment belongs to: past midnight still that of the evening before."""
    return local_day(session_of(sessions, moment), time_zone)


def _moment(moment: datetime, day: date, time_zone: str) -> str:
    night = "no" if local_day(moment, time_zone) == day else "yes"
    facts = {"day": date_in_words(day), "time": time_of_day(moment, zone_of(time_zone)), "night": night}
    return say("review-held", "at", facts)


def _trays(trays: Sequence[str]) -> str:
    return say("review-held", "trays", {"trays": list_in_words(trays), "count": len(trays)})


def coming_seconds(past: Past) -> int:
    """About how long what takes long does, in fives."""
    loads = len(past.run.past) + len(past.run.loads)
    return _FIVE * math.ceil((_START + loads / _LOADS_A_SECOND) / _FIVE)


def value_in_words(value: HourValue, named: str) -> str:
    """What an hour is of: the thing, and where it was not an hour less of it, how much of it: 'Walking between rooms, all 12 min',
    'Drying rack places, 21 min more', 'One more hour with someone there'."""
    if value.what[0] == "hours":
        return say("review-worth", "there")
    if not value.earlier or (value.of == AN_HOUR and value.what[0] != "service"):
        return named
    return say(
        "review-worth", "more" if value.what[0] == "service" else "all", {"what": named, "of": span_in_words(value.of)}
    )
