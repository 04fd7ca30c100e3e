"""How one fact is written, everywhere alike: a moment, a day, a span, a number, a length, a list.

``static/door/clock.js``, ``lengths.js`` and ``words.js`` write them the same on the page; ``tests/browser/test_facts.py`` compares.
"""

import re
from collections.abc import Iterable
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from decimal import Decimal
from functools import lru_cache
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from babel import Locale, UnknownLocaleError
from babel.core import get_global
from babel.dates import format_datetime, format_skeleton
from babel.lists import format_list
from babel.numbers import format_currency, format_decimal, get_currency_name, get_currency_precision
from babel.units import format_unit

from runboard.shop.durations import format_duration, parse_duration
from runboard.shop.money import Money
from runboard.shop.units import Unit, format_length

# A weekday alone is clear for less than a week.
_CLEAR_FOR = timedelta(days=6)
# A day without a time of day is meant to its end.
END_OF_DAY = time(23, 59)
AT_THE_END = END_OF_DAY.isoformat("minutes")
# Times on labels are said in hours up to here.
_LONG = 48
_FINE_BELOW = timedelta(minutes=20)
_FINE, _SECOND, _MINUTE = timedelta(seconds=5), timedelta(seconds=1), timedelta(minutes=1)
_LETTER_THEN_FIGURE = re.compile(r"(?<=[^\W\d_])(?=[-−]?\d)")
# Where no line may end: between a number and its unit, within a span, a range, a day and its time.
_IN_A_SPAN = re.compile(
    r" (?:(?<=[\d½] )(?=(?:h|min|s|days?|mm|cm|m|ml|l|g|kg|dB|°C|W)\b(?!')|[%€])|(?<=\d h )(?=\d\d\b)|(?<=\d min )(?=\d+ s\b)"
    r"|(?<=\bday )(?=\d+ h\b)|(?<=days )(?=\d+ h\b)"
    r"|(?<=\b(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun) )(?=\d\d?[: ])|(?<=\d )(?=(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b))"
)
_IN_A_RANGE = re.compile(r" (?:(?<=[\dhns½] )(?=to [−\d])|(?<=\bto )(?=[−\d]))")
# What on a page is no text that is set in lines: tags, what a browser sends back as it is, and what people copy.
_MARKUP = re.compile(
    r"(<(?:script|style|textarea|option|pre|code|svg)\b.*?</(?:script|style|textarea|option|pre|code|svg)>|<[^>]*>)",
    re.DOTALL,
)
_NUMBER_BESIDE = re.compile(r"\d \S|\w \d")


def zone_of(name: str) -> tzinfo:
    """The time zone of that name; UTC where the system knows none of that name."""
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return UTC


def time_of_day(moment: datetime, zone: tzinfo) -> str:
    """'08:00'"""
    return f"{moment.astimezone(zone):%H:%M}"


def moment_in_words(
    moment: datetime, zone: tzinfo, locale: str = "en", *, now: datetime | None = None, stays: bool = False
) -> str:
    """'Sun 08:00'; seen from ``now``, '08:00' today, and 'Sun 29 Nov, 08:00' where that is six days or more away. What ``stays``
    longer than the day, as paper does, says the weekday of today too."""
    local = moment.astimezone(zone)
    if now is None or abs(moment - now) < _CLEAR_FOR:
        is_today = now is not None and local.date() == now.astimezone(zone).date()
        weekday = "" if is_today and not stays else format_datetime(local, "EEE ", locale=locale)
        return f"{weekday}{local:%H:%M}"
    return f"{date_in_words(local, locale)}, {local:%H:%M}"


def date_in_words(day: date, locale: str = "en", *, with_year: bool = False) -> str:
    """'Sun 29 Nov'; with its year, 'Sun 29 Nov 2026', where it is looked at long after."""
    at = datetime(day.year, day.month, day.day)  # noqa: DTZ001 - a day of the calendar, in no zone
    if locale == "en":
        return str(format_datetime(at, "EEE d MMM y" if with_year else "EEE d MMM", locale=locale))
    return str(format_skeleton("yMMMEd" if with_year else "MMMEd", at, locale=locale))


def day_of_year(day: date, locale: str = "en") -> str:
    """'14 Mar 2026': the date of a paper, whose weekday nobody asks for."""
    at = datetime(day.year, day.month, day.day)  # noqa: DTZ001 - a day of the calendar, in no zone
    if locale == "en":
        return str(format_datetime(at, "d MMM y", locale=locale))
    return str(format_skeleton("yMMMd", at, locale=locale))


def typed_day(text: str, locale: str = "en") -> str:
    """'14 Mar 2026' of '2026-03-14'; what is no such date as somebody typed it."""
    try:
        return day_of_year(date.fromisoformat(text), locale)
    except ValueError:
        return text


def weekday_in_words(day: date, locale: str = "en") -> str:
    """'Sunday'"""
    return str(format_datetime(datetime(day.year, day.month, day.day), "EEEE", locale=locale))  # noqa: DTZ001 - a day of the calendar


def dated(moment: datetime, zone: tzinfo, locale: str = "en") -> str:
    """'Sun 29 Nov 2026, 08:00'"""
    return f"{date_in_words(moment.astimezone(zone), locale, with_year=True)}, {time_of_day(moment, zone)}"


def seen_from(now: datetime, moment: datetime, zone: tzinfo, locale: str = "en") -> str:
    """As a page says it that is looked at today and in a year: '08:00', 'Sun 08:00', 'Sun 29 Nov, 08:00', and 'Sun 29 Nov 2026, 08:00'
    of another year."""
    same_year = moment.astimezone(zone).year == now.astimezone(zone).year
    is_near = same_year or abs(moment - now) < _CLEAR_FOR
    return moment_in_words(moment, zone, locale, now=now) if is_near else dated(moment, zone, locale)


def due_in_words(due: datetime, zone: tzinfo, locale: str = "en", *, now: datetime | None = None) -> str:
    """'Sun 29 Nov 2026, 08:00', seen from ``now`` as a page says it; the day alone where it is the end of a day."""
    local = due.astimezone(zone)
    if (local.hour, local.minute) == (END_OF_DAY.hour, END_OF_DAY.minute):
        return date_in_words(local, locale, with_year=now is None or local.year != now.astimezone(zone).year)
    return dated(due, zone, locale) if now is None else seen_from(now, due, zone, locale)


def span_in_words(span: timedelta | None, locale: str = "en") -> str:
    """'45 s', '12 min', '1 h 30', '36 h', '14 days', '2 days 4 h'; a dash where there is none."""
    if span is None:
        return "–"
    seconds = round(span.total_seconds())
    if 0 < seconds < 60:
        return f"{seconds} s"
    minutes = (seconds + 30) // 60
    hours, rest = divmod(minutes, 60)
    if not hours:
        return f"{minutes} min"
    if hours < _LONG:
        return f"{hours} h {rest:02d}" if rest else f"{hours} h"
    days, hours = divmod((minutes + 30) // 60, 24)
    said = str(format_unit(days, "duration-day", length="long", locale=locale))
    return f"{said} {hours} h" if hours else said


def exact_span_in_words(span: timedelta) -> str:
    """The same where it loses nothing; else as it is typed: '1 min 30 s'."""
    said = span_in_words(span)
    return said if parse_duration(said) == span else format_duration(span)


def fine_span(span: timedelta | None) -> str:
    """A time element, of which seconds matter: '2 min 40 s', '48 s', '38 min'; '–' where there is none."""
    if span is None or span >= _FINE_BELOW:
        return span_in_words(span)
    return exact_span_in_words(fine(span))


def fine(span: timedelta) -> timedelta:
    """The length that ``fine_span`` says: what is reckoned beside it is reckoned with no other."""
    step = _MINUTE if span >= _FINE_BELOW else _FINE if span >= _MINUTE else _SECOND
    return round(span / step) * step


def number_in_words(number: float, locale: str = "en") -> str:
    """'2.5', '12,500', with the language's own marks: six figures that count, never an exponent."""
    return str(format_decimal(Decimal(f"{number:.6g}"), format="#,##0.######", locale=locale))


def money_in_words(amount: Decimal | float, money: Money, *, exact: bool = False) -> str:
    """An amount as the shop writes it: '23,40 €', '$23.40'; a number alone where no currency is said. ``exact`` keeps every decimal, as a
    rate may have more than an amount."""
    number = amount if isinstance(amount, Decimal) else Decimal(str(amount))
    locale = locale_of(money)
    if not money.currency:
        return str(format_decimal(number if exact else round(number, 2), format="#,##0.00##", locale=locale))
    code = money.currency.upper()
    finer = exact and -int(number.normalize().as_tuple().exponent) > get_currency_precision(code)
    if finer:
        plain = number.normalize()
        return _apart(format_currency(plain, code, locale=locale, currency_digits=False, decimal_quantization=False))
    return _apart(format_currency(number, code, locale=locale))


def _apart(amount: str) -> str:
    """Letters stand apart from the figures (currencySpacing of Unicode's CLDR, which Babel leaves out)."""
    return _LETTER_THEN_FIGURE.sub("\u00a0", amount)


def quantity_in_words(number: Decimal | float, money: Money) -> str:
    """How much of something, written as the amounts beside it are: '1,253', '106'."""
    exact = number if isinstance(number, Decimal) else Decimal(str(number))
    return str(format_decimal(exact, format="#,##0.#####", locale=locale_of(money)))


@lru_cache(maxsize=1)
def currencies_now() -> tuple[tuple[str, str], ...]:
    """(code of ISO 4217, name) of every currency that some territory pays in today, by code."""
    used = {
        code
        for spans in get_global("territory_currencies").values()
        for code, _begins, ends, is_tender in spans
        if ends is None and is_tender
    }
    return tuple((code, str(get_currency_name(code, locale="en"))) for code in sorted(used))


@lru_cache(maxsize=64)
def known_locale(name: str) -> Locale | None:
    """The locale of that name; None where there is none."""
    try:
        return Locale.parse(name.replace("_", "-"), sep="-")
    except (ValueError, UnknownLocaleError):
        return None


def locale_of(money: Money) -> Locale:
    """The locale by which the shop writes amounts; English where it says none, or one that there is not."""
    return known_locale(money.locale or "en") or Locale("en")


def length_in_words(mm: float, units: Unit, locale: str = "en") -> str:
    """A length in the shop's units: '12.5 mm', '5 1/2 in'."""
    return _marked(format_length(mm, units), locale)


def _marked(text: str, locale: str) -> str:
    return text if locale == "en" else text.replace(".", ",")


def list_in_words(some: Iterable[str], locale: str = "en") -> str:
    """'a, b and c'"""
    return str(format_list([*some], locale="en_GB" if locale == "en" else locale))


def unbroken(text: str) -> str:
    """The text, in which no line ends within a span of time or a range of them, or between a number and its unit."""
    return _IN_A_SPAN.sub("\u00a0", _IN_A_RANGE.sub("\u00a0", text))


def unbroken_page(page: str) -> str:
    """The same for the words of an HTML page, but for ranges, in which a line may end."""
    parts = _MARKUP.split(page)  # text, then markup, in turn
    parts[::2] = [_IN_A_SPAN.sub("\u00a0", text) if _NUMBER_BESIDE.search(text) else text for text in parts[::2]]
    return "".join(parts)
