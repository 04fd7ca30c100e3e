"""Spans of time as people write them: '40' (minutes), '90 s', '1h30', '1:30', '2 h', '3 days', 'overnight'."""

import re
from datetime import timedelta
from fractions import Fraction

from runboard.shop.problem import Unreadable

LONGEST = timedelta(minutes=100_000)
# From the last evening hour to a morning, as waits are usually told.
OVERNIGHT = timedelta(hours=12)

_SECONDS = {"s": 1, "min": 60, "h": 3600, "d": 86400, "w": 604800}
_UNITS = (
    ("s", r"s|secs?|seconds?"),
    ("min", r"m|mins?|minutes?"),
    ("h", r"h|hrs?|hours?"),
    ("d", r"d|days?"),
    ("w", r"w|weeks?"),
)
_NUMBER = r"\d{1,9}(?:[.,]\d{1,9})?"
_PART = re.compile(
    rf"\s*({_NUMBER})\s*(?:" + "|".join(f"(?P<{unit}>{words})" for unit, words in _UNITS) + r")?(?![a-z])"
)
_CLOCK = re.compile(r"(\d{1,4}):([0-5]\d)(?::([0-5]\d))?")


def parse_duration(text: str, overnight: timedelta | None = None) -> timedelta:
    """The span that ``text`` says; a bare number is minutes, '1h30' has minutes after the hours, '1:30' is h:mm.

    'overnight' is read only where ``overnight`` gives its length: a wait may be overnight, a cut may not. Refuses
    anything else with ``Unreadable``.
    """
    plain = text.strip().lower()
    if plain == "overnight" and overnight is not None:
        return overnight
    clock = _CLOCK.fullmatch(plain)
    seconds = _clock_seconds(clock) if clock else _part_seconds(plain, text)
    if seconds > LONGEST.total_seconds():
        raise Unreadable("time too long", text=text)
    return timedelta(microseconds=round(seconds * 1_000_000))


def _clock_seconds(clock: re.Match[str]) -> Fraction:
    hours, minutes, seconds = clock.groups(default="0")
    return Fraction(int(hours) * 3600 + int(minutes) * 60 + int(seconds))


# What a number without a unit is, after which unit: minutes alone or after hours, seconds after minutes.
_BARE = {None: "min", "h": "min", "min": "s"}


def _part_seconds(plain: str, text: str) -> Fraction:
    total, at = Fraction(0), 0
    before, may_follow = None, True
    while at < len(plain):
        part = _PART.match(plain, at)
        unit = part and (part.lastgroup or _BARE.get(before))
        if not part or not unit or not may_follow or (before and _SECONDS[unit] >= _SECONDS[before]):
            raise Unreadable("time unreadable", text=text)
        total += Fraction(part[1].replace(",", ".")) * _SECONDS[unit]
        at, before, may_follow = part.end(), unit, part.lastgroup is not None
    if before is None:
        raise Unreadable("time unreadable", text=text)
    return total


def format_duration(span: timedelta) -> str:
    """A span as ``parse_duration`` reads it back exactly: '40 min', '1 h 30 min', '12 h', '3 d', '1 min 30 s'."""
    left = span // timedelta(microseconds=1)
    said = []
    for unit, size in (("d", 86400), ("h", 3600), ("min", 60)):
        count, left = divmod(left, size * 1_000_000)
        if count:
            said.append(f"{count} {unit}")
    if left:
        said.append(f"{left // 1_000_000}.{left % 1_000_000:06d}".rstrip("0").rstrip(".") + " s")
    return " ".join(said) or "0 min"


def minutes_of(span: timedelta) -> int | float:
    """A span in minutes as JSON writes it: whole where it is whole."""
    minutes = span / timedelta(minutes=1)
    return int(minutes) if minutes.is_integer() else minutes
