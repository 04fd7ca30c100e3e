"""A moment as a calendar's file with an alarm, for any calendar program: iCalendar, RFC 5545."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

MOST_OCTETS = 75  # in a line, without its end: RFC 5545, 3.1


@dataclass(frozen=True)
class Alarm:
    """Rings ``after`` the event's beginning, or its end; a negative span is before it. Then ``again`` times more."""

    after: timedelta = timedelta(0)
    of_end: bool = False
    again: int = 0
    every: timedelta = timedelta(minutes=5)


@dataclass(frozen=True)
class CalendarEntry:
    """One event. ``id`` stays the same while it is about the same thing, so that a calendar replaces and does not add."""

    id: str
    title: str
    text: str
    begins_at: datetime
    ends_at: datetime
    alarms: Sequence[Alarm] = ()


def calendar_text(entry: CalendarEntry, now: datetime) -> str:
    """The file's text. ``now`` is when it was made: of two with the same id, the later one holds."""
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        "PRODID:-//runboard//runboard//EN",
        "METHOD:PUBLISH",
        "BEGIN:VEVENT",
        f"UID:{_text(entry.id)}@runboard",
        f"DTSTAMP:{_moment(now)}",
        f"SEQUENCE:{max(0, int(now.timestamp())) % 2**31}",
        f"DTSTART:{_moment(entry.begins_at)}",
        f"DTEND:{_moment(entry.ends_at)}",
        f"SUMMARY:{_text(entry.title)}",
        f"DESCRIPTION:{_text(entry.text)}",
        "TRANSP:TRANSPARENT",
        *(line for alarm in entry.alarms for line in _alarm(alarm, entry.title)),
        "END:VEVENT",
        "END:VCALENDAR",
    ]
    return "".join(f"{_folded(line)}\r\n" for line in lines)


def _alarm(alarm: Alarm, title: str) -> list[str]:
    related = ";RELATED=END" if alarm.of_end else ""
    lines = ["BEGIN:VALARM", "ACTION:DISPLAY", f"DESCRIPTION:{_text(title)}", f"TRIGGER{related}:{_span(alarm.after)}"]
    if alarm.again:
        lines += [f"REPEAT:{alarm.again}", f"DURATION:{_span(alarm.every)}"]
    return [*lines, "END:VALARM"]


def _moment(moment: datetime) -> str:
    return moment.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")


def _span(span: timedelta) -> str:
    """'-PT10M', 'PT1H30M', 'PT0S'."""
    seconds = round(abs(span).total_seconds())
    parts = ((seconds // 3600, "H"), (seconds // 60 % 60, "M"), (seconds % 60, "S"))
    text = "".join(f"{count}{letter}" for count, letter in parts if count)
    return f"{'-' if span < timedelta(0) else ''}PT{text or '0S'}"


def _text(text: str) -> str:
    """A text with what has a meaning in the format written out: RFC 5545, 3.3.11."""
    for sign, written in (("\\", "\\\\"), (";", "\\;"), (",", "\\,"), ("\r\n", "\\n"), ("\n", "\\n")):
        text = text.replace(sign, written)
    return "".join(sign for sign in text if sign.isprintable())


def _folded(line: str) -> str:
    """The line in pieces that are short enough, each further one begun with a space; no character is cut."""
    pieces, room = [""], MOST_OCTETS
    for sign in line:
        octets = len(sign.encode("utf-8", "replace"))
        if octets > room:
            pieces.append("")
            room = MOST_OCTETS - 1
        pieces[-1] += sign
        room -= octets
    return "\r\n ".join(pieces)
