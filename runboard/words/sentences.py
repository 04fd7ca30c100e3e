"""Codes and facts made sentences, from the one catalogue that the page reads too: ``static/words/<locale>*.ftl``.

The page reads ``en.ftl`` for its first drawing and ``en.sheets.ftl`` a moment later; here they are one.
"""

import re
from collections.abc import Iterable, Mapping
from datetime import UTC, datetime, timedelta, tzinfo
from functools import lru_cache
from typing import Any
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from babel.dates import format_datetime, format_time
from babel.lists import format_list
from fluent.runtime import FluentBundle, FluentResource

from runboard.run.log.event import parse_moment
from runboard.words.places import folder

# What a helper reads and what stands on cards is in all of these; a sentence that is missing in one is said in English.
LANGUAGES = ("en", "de", "es", "fr")
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")
_MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)")


def message_name(family: str, code: str) -> str:
    """The catalogue's name for a code: family ``refused`` and code ``station busy`` make ``refused-station-busy``."""
    return f"{family}-{_NOT_IN_A_NAME.sub('-', code.lower()).strip('-')}"


def say(
    family: str, code: str, facts: Mapping[str, Any] | None = None, *, zone: tzinfo = UTC, locale: str = "en"
) -> str:
    """The sentence of a code, with its facts; moments in ``zone``. A code without a sentence is said as it is."""
    return sentence(message_name(family, code), facts, zone=zone, locale=locale) or code


def sentence(name: str, facts: Mapping[str, Any] | None = None, *, zone: tzinfo = UTC, locale: str = "en") -> str:
    """The sentence of that name in a language, in English where the language lacks it; '' where there is none."""
    for bundle in dict.fromkeys((catalogue(locale), catalogue("en"))):
        pattern = bundle.get_message(name).value if bundle.has_message(name) else None
        if pattern is not None:
            ready = {key: in_words(value, zone, locale) for key, value in (facts or {}).items()}
            # What the catalogue finds wrong (a fact it names and did not get) shows in the sentence; it is no reason to fail.
            said, _wrong = bundle.format_pattern(pattern, ready)
            return str(said)
    return ""


def in_words(value: Any, zone: tzinfo, locale: str = "en") -> str | int | float:
    """A fact as the catalogue takes it: moments in local time, spans in minutes, lists joined, yes and no as words."""
    match value:
        case bool():
            return "yes" if value else "no"
        case int() | float():
            return value
        case None:
            return ""
        case datetime():
            return moment_in_words(value, zone, locale)
        case timedelta():
            return round(value.total_seconds() / 60)
        case str():
            return _text_in_words(value, zone, locale)
        case Mapping():
            return in_words([f"{key}: {in_words(one, zone, locale)}" for key, one in value.items()], zone, locale)
        case Iterable():
            return str(format_list([str(in_words(one, zone, locale)) for one in value], locale=locale))
    return str(value)


def _text_in_words(text: str, zone: tzinfo, locale: str) -> str:
    """A moment is said as one. Somebody may call a thing by one that no calendar has: that is said as it is."""
    if not _MOMENT.fullmatch(text):
        return text
    try:
        return moment_in_words(parse_moment(text), zone, locale)
    except (ValueError, OverflowError):
        return text


def moment_in_words(moment: datetime, zone: tzinfo, locale: str = "en") -> str:
    """Weekday and time of day in the shop's zone: 'Sun 10:50'."""
    local = moment.astimezone(zone)
    return f"{format_datetime(local, 'EEE', locale=locale)} {format_time(local, 'H:mm', locale=locale)}"


def zone_of(name: str) -> tzinfo:
    """The time zone of that name; UTC where the system knows none of that name."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return UTC


@lru_cache(maxsize=8)
def catalogue(locale: str) -> FluentBundle:
    """The catalogue of one language, read once. Without isolating marks: a sentence is compared and copied as text."""
    bundle = FluentBundle([locale], use_isolating=False)
    for part in sorted((folder("static") / "words").glob(f"{locale}.*ftl")):
        bundle.add_resource(FluentResource(part.read_text("utf-8")))
    return bundle
