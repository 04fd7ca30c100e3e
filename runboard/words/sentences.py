"""Codes and facts made sentences, from the one catalogue that the page reads too: ``static/words/<locale>*.ftl``.

The page reads ``en.ftl`` for its first drawing and ``en.sheets.ftl`` a moment later; here they are one.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, date, datetime, timedelta, tzinfo
from functools import lru_cache
from itertools import pairwise
from typing import Any

from fluent.runtime import FluentBundle, FluentResource

from runboard.places import folder
from runboard.run.log.event import parse_moment
from runboard.shop.numbers import whole_number
from runboard.words.facts import date_in_words, day_of_year, list_in_words, moment_in_words, weekday_in_words

# What a helper reads and what stands on cards is in all of these; a sentence that is missing in one is said in English.
LANGUAGES: Mapping[str, str] = {"en": "English", "de": "Deutsch", "es": "Español", "fr": "Français"}
# What the shop's own book is written in, and what is said where a language lacks a sentence.
ENGLISH = "en"
_NOT_IN_A_NAME = re.compile(r"[^a-z0-9]+")
_MOMENT = re.compile(r"\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)")
_DIGITS = re.compile(r"\d+")
# Where a message or a term begins, and what one refers to within braces.
_ENTRY = re.compile(r"^(-?[a-zA-Z][\w-]*) *=", re.MULTILINE)
_REFERENCE = re.compile(r"\{\s*(-?[a-zA-Z][\w-]*)")
# More rows of trays than this are only counted.
_MOST_NAMED = 5


def message_name(family: str, code: str) -> str:
    """The catalogue's name for a code: family ``refused`` and code ``station busy`` make ``refused-station-busy``."""
    return f"{family}-{_NOT_IN_A_NAME.sub('-', code.lower()).strip('-')}"


def say(
    family: str, code: str, facts: Mapping[str, Any] | None = None, *, zone: tzinfo = UTC, now: datetime | None = None
) -> str:
    """The sentence of a code, with its facts; moments in ``zone``, dated where they are far from ``now``. A code without a
    sentence is said as it is."""
    return sentence(message_name(family, code), facts, zone=zone, now=now) or code


def sentence(
    name: str,
    facts: Mapping[str, Any] | None = None,
    *,
    zone: tzinfo = UTC,
    locale: str = "en",
    now: datetime | None = None,
) -> str:
    """The sentence of that name in a language, in English where the language lacks it; '' where there is none."""
    for language in dict.fromkeys((locale, ENGLISH)):
        bundle = catalogue(language)
        pattern = bundle.get_message(name).value if bundle.has_message(name) else None
        if pattern is not None:
            ready = {key: _ready(key, value, zone, locale, now) for key, value in (facts or {}).items()}
            # What the catalogue finds wrong (a fact it names and did not get) shows in the sentence; it is no reason to fail.
            said, _wrong = bundle.format_pattern(pattern, ready)
            return str(said) if language == locale else InEnglish(said)
    return ""


def _ready(name: str, value: Any, zone: tzinfo, locale: str, now: datetime | None) -> str | int | float:
    """A fact by its name: a list of trays is named as trays are."""
    return (
        trays_in_words(value)
        if name == "trays" and isinstance(value, list | tuple)
        else in_words(value, zone, locale, now)
    )


def in_words(value: Any, zone: tzinfo, locale: str = "en", now: datetime | None = None) -> str | int | float:
    """A fact as the catalogue takes it: moments in local time, spans in minutes, lists joined, yes and no as words."""
    match value:
        case bool():
            return "yes" if value else "no"
        case int() | float():
            return value
        case None:
            return ""
        case datetime():
            return moment_in_words(value, zone, locale, now=now)
        case date():
            return day_of_year(value, locale)
        case timedelta():
            return round(value.total_seconds() / 60)
        case str():
            return _text_in_words(value, zone, locale, now)
        case Mapping():
            return in_words(
                [f"{key}: {in_words(each, zone, locale, now)}" for key, each in value.items()], zone, locale
            )
        case Iterable():
            return list_in_words((str(in_words(each, zone, locale, now)) for each in value), locale)
    return str(value)


def _text_in_words(text: str, zone: tzinfo, locale: str, now: datetime | None) -> str:
    """A moment is said as one. Somebody may call a thing by one that no calendar has: that is said as it is."""
    if not _MOMENT.fullmatch(text):
        return text
    try:
        return moment_in_words(parse_moment(text), zone, locale, now=now)
    except (ValueError, OverflowError):
        return text


class InEnglish(str):
    """A text that stays English on a page or a card in another language: a page says so to what reads it out."""

    __slots__ = ()


def lang_of(text: str) -> str:
    """The language of a text where it is not that of its page or card; '' where it is."""
    return ENGLISH if isinstance(text, InEnglish) else ""


class Catalogue:
    """The messages of one language, each parsed when it is first asked for: all of them take a tenth of a second, and a page
    says a few. Without isolating marks: a sentence is compared and copied as text."""

    def __init__(self, locale: str, parts: Iterable[str]) -> None:
        self._bundle = FluentBundle([locale], use_isolating=False)
        self._texts: dict[str, str] = {}
        for part in parts:
            starts = [*_ENTRY.finditer(part)]
            for start, following in zip(starts, [*starts[1:], None], strict=True):
                self._texts.setdefault(start[1], part[start.start() : following.start() if following else None])
        self._parsed: set[str] = set()

    @property
    def names(self) -> frozenset[str]:
        """The name of every message."""
        return frozenset(name for name in self._texts if not name.startswith("-"))

    def has_message(self, name: str) -> bool:
        """Whether there is a message of that name."""
        return name in self._texts

    def get_message(self, name: str) -> Any:
        """The message of that name, and what it refers to at hand. Raises ``LookupError`` where there is none."""
        self._parse(name)
        return self._bundle.get_message(name)

    def format_pattern(self, pattern: Any, facts: Mapping[str, Any]) -> tuple[Any, list[Exception]]:
        """What it says with these facts, and what was wrong with them."""
        return self._bundle.format_pattern(pattern, dict(facts))

    def _parse(self, name: str, *asked_by: str) -> None:
        if name in self._parsed or name in asked_by or name not in self._texts:
            return
        self._bundle.add_resource(FluentResource(self._texts[name]))
        for other in _REFERENCE.findall(self._texts[name]):
            self._parse(other, name, *asked_by)
        self._parsed.add(name)  # only now: another thread that asks meanwhile parses it for itself


@lru_cache(maxsize=8)
def catalogue(locale: str) -> Catalogue:
    """The catalogue of one language, read once."""
    parts = sorted((folder("static") / "words").glob(f"{locale}.*ftl"))
    return Catalogue(locale, [part.read_text("utf-8") for part in parts])


# What the catalogue says of a single fact


def day_in_words(moment: datetime, now: datetime, zone: tzinfo) -> str:
    """'yesterday', 'today', 'tomorrow', 'Thursday' in the days after, else 'Thu 12 Jun'."""
    local = moment.astimezone(zone)
    days = (local.date() - now.astimezone(zone).date()).days
    named = {-1: "yesterday", 0: "today", 1: "tomorrow"}.get(days)
    if named:
        return sentence(f"day-{named}")
    return weekday_in_words(local) if 1 < days < 7 else date_in_words(local)


def share_in_words(rate: float, name: str = "share") -> str:
    """A share: '19 of 20', '97 of 100', or 'all'. Never rounded up to all. As ``chance``: '19 times in 20', 'always'."""
    for whole in (10, 20, 100, 1000):
        some = round(rate * whole)
        if rate < 1 and abs(some / whole - rate) < 0.02 / (whole / 10) and 0 < some < whole:
            return sentence(f"{name}-some", {"some": str(some), "whole": str(whole)})
    return sentence(f"{name}-{'all' if rate >= 1 else 'nearly' if rate > 0.5 else 'hardly'}")


def trays_in_words(trays: Iterable[str]) -> str:
    """'tray 4', 'trays 4 to 6', 'trays 1, 3 and 5 to 8'; '8 trays' where that would be long."""
    found = [*trays]
    if len(found) == 1:
        return sentence("ui-tray", {"tray": found[0]})
    named = [part for row in _rows(found) for part in _named(row)]
    if len(named) > _MOST_NAMED:
        return sentence("ui-trays-count", {"count": len(found)})
    return sentence("ui-trays", {"trays": list_in_words(named)})


def _named(row: Sequence[str]) -> Sequence[str]:
    return row if len(row) < 3 else [sentence("ui-from-to", {"from": row[0], "to": row[-1]})]


def tray_numbers(trays: Iterable[str]) -> str:
    """'4', '1–3', '1–3, 4a': where there is room for little more than the numbers."""
    return ", ".join(row[0] if len(row) == 1 else f"{row[0]}–{row[-1]}" for row in _rows(trays))


def _rows(trays: Iterable[str]) -> list[list[str]]:
    """Trays in their order, 4a after 4, those in a row together."""
    ordered = sorted(trays, key=lambda tray: (int((_DIGITS.match(tray) or ["0"])[0]), tray))
    rows = [ordered[:1]] if ordered else []
    for before, tray in pairwise(ordered):
        numbers = whole_number(before), whole_number(tray)
        if None not in numbers and numbers[1] == (numbers[0] or 0) + 1:
            rows[-1].append(tray)
        else:
            rows.append([tray])
    return rows
