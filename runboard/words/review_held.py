"""What held a run, in words: on which days, the load that it kept back, and of what an hour is worth something."""

from collections.abc import Iterable, Sequence
from datetime import datetime

from runboard.review.held.nouns import AN_HOUR, Because, HeldStretch, HourValue, What
from runboard.review.past import Past
from runboard.shop.hours import local_day
from runboard.words.facts import date_in_words, list_in_words, span_in_words, time_of_day, weekday_in_words, zone_of
from runboard.words.sentences import say, sentence

_EVENING = 17  # a stretch that begins at this hour or later is of an evening
# So many days are named; of more, how many.
_NAMED = 3
_A_WEEK = 7


def held_days(time_zone: str, stretches: Iterable[HeldStretch], locale: str = "en") -> str:
    """'on Wednesday and Friday evening', 'on Sat 31 Oct and Sat 7 Nov', 'on four days'; of the hours in which somebody was there,
    where anybody was. '' where there is nothing."""
    zone = zone_of(time_zone)
    found = [moment for one in stretches for moment in ([opens for opens, _ in one.there] or [one.began_at])]
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


def because_in_words(past: Past, what: What, named: str, because: Because) -> str:
    """'Tray 6 was ready for Oil on Fri 2 Oct at 16:26 …': what the log shows of it. ``named`` is what ``what`` is called. '' of
    what nothing is said."""
    step, zone = past.run.route.step_name, zone_of(past.book.time_zone)
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
        "since": _moment(because.since, past.book.time_zone),
        "until": _moment(because.until, past.book.time_zone),
        "till": time_of_day(because.until, zone)
        if local_day(because.since, past.book.time_zone) == local_day(because.until, past.book.time_zone)
        else "none",
        "one": "yes" if _capacity(past, what[1]) == 1 else "no",
    }
    return sentence("review-held-because", facts)


def _capacity(past: Past, service: str) -> int:
    return next((each.capacity for each in past.book.services if each.key == service), 0)


def _moment(moment: datetime, time_zone: str) -> str:
    zone = zone_of(time_zone)
    facts = {"day": date_in_words(moment.astimezone(zone)), "time": time_of_day(moment, zone)}
    return say("review-held", "at", facts)


def _trays(trays: Sequence[str]) -> str:
    return say("review-held", "trays", {"trays": list_in_words(trays), "count": len(trays)})


def value_in_words(value: HourValue, named: str) -> str:
    """What an hour is of: the thing, and where it was not an hour less of it, how much of it: 'Walking between rooms, all 12 min',
    'Drying rack places, 21 min more', 'Somebody there, an hour more'."""
    if value.what[0] == "hours":
        return say("review-worth", "there")
    if not value.earlier or (value.of == AN_HOUR and value.what[0] != "service"):
        return named
    return say(
        "review-worth", "more" if value.what[0] == "service" else "all", {"what": named, "of": span_in_words(value.of)}
    )
