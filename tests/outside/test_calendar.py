"""Our calendar files read by another's reader, `icalendar`, and held to the alarm times and lines that RFC 5545 prints."""

from datetime import UTC, datetime, timedelta

import pytest
from icalendar import Calendar, Event

from runboard.run.calls.calendar import Alarm, CalendarEntry, calendar_text
from tests.outside.said import from_memory, published

NOW = datetime(1997, 3, 1, 12, 0, tzinfo=UTC)


def at(day: int, hour: int, minute: int = 0) -> datetime:
    return datetime(1997, 3, day, hour, minute, tzinfo=UTC)


def entry(
    begins: datetime, ends: datetime, *alarms: Alarm, title: str = "The laser has ended", text: str = ""
) -> CalendarEntry:
    return CalendarEntry("machine-end-r1-engrave/4", title, text, begins, ends, alarms)


def read(made: CalendarEntry) -> Event:
    """The one event of the file, as a calendar program reads it."""
    (event,) = Calendar.from_ical(calendar_text(made, NOW)).walk("VEVENT")
    assert isinstance(event, Event)
    return event


def rings_at(made: CalendarEntry) -> list[datetime]:
    return sorted(time.trigger for time in read(made).alarms.times)


QUARTER = timedelta(minutes=15)
EXAMPLES = {
    # "precise trigger at 9:30 EST on March 17, 1997 that will repeat 4 times at 15 minute intervals": of the same
    # moment, said as the beginning of the event
    "at 13:30, four times more": entry(at(17, 13, 30), at(17, 14), Alarm(again=4, every=QUARTER)),
    # TRIGGER:-PT30M, REPEAT:2, DURATION:PT15M before 08:30
    "30 min before, twice more": entry(at(18, 8, 30), at(18, 9), Alarm(-2 * QUARTER, again=2, every=QUARTER)),
    # TRIGGER;RELATED=END:-P2D before 1997-03-18 08:30
    "two days before the end": entry(at(18, 8), at(18, 8, 30), Alarm(-timedelta(days=2), of_end=True)),
}
RFC_5545 = "RFC 5545, 3.6.6, the examples of VALARM"


@published(
    RFC_5545,
    {
        "at 13:30, four times more": [at(17, 13, 30), at(17, 13, 45), at(17, 14), at(17, 14, 15), at(17, 14, 30)],
        "30 min before, twice more": [at(18, 8), at(18, 8, 15), at(18, 8, 30)],
        "two days before the end": [at(16, 8, 30)],
    },
)
def test_an_alarm_rings_when_the_standards_examples_do(example: str) -> list[datetime]:
    return rings_at(EXAMPLES[example])


def lines_of(made: CalendarEntry) -> list[str]:
    return calendar_text(made, NOW).split("\r\n")


def line_of(made: CalendarEntry, name: str) -> str:
    """The first line of that name: of the event, else of its alarm."""
    return next(line.partition(":")[2] for line in lines_of(made) if line.partition(":")[0].partition(";")[0] == name)


@published(
    RFC_5545,
    {
        ("at 13:30, four times more", "DTSTART"): "19970317T133000Z",
        ("at 13:30, four times more", "REPEAT"): "4",
        ("at 13:30, four times more", "DURATION"): "PT15M",
        ("30 min before, twice more", "TRIGGER"): "-PT30M",
        ("30 min before, twice more", "REPEAT"): "2",
    },
)
def test_the_examples_lines_are_written_as_printed(example: str, name: str) -> str:
    return line_of(EXAMPLES[example], name)


@published("RFC 5545, 3.1: no line over 75 octets without its end (by docs.rs/ics-core)", {"word " * 100: 75})
def test_a_long_text_fills_its_lines_to_what_the_standard_allows(text: str) -> int:
    made = entry(at(17, 12), at(17, 13), title=text)
    assert str(read(made)["SUMMARY"]) == text
    return max(len(line.encode()) for line in lines_of(made))


@from_memory(
    "RFC 5545, 3.3.11, the example of TEXT",
    {
        "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.": (
            r"Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
        )
    },
)
def test_a_text_of_several_lines_is_written_as_printed(text: str) -> str:
    unfolded = calendar_text(entry(at(17, 12), at(17, 13), text=text), NOW).replace("\r\n ", "")
    return next(line for line in unfolded.split("\r\n") if line.startswith("DESCRIPTION:"))[len("DESCRIPTION:") :]


@pytest.mark.parametrize(
    "text", ["Board 3; then, sand \\ oil", "two\nlines", "Schleifen größer als 120 – fertig?" * 9, "木" * 80, ""]
)
def test_any_text_comes_back_as_it_was(text: str) -> None:
    made = entry(at(17, 12), at(17, 13), title=text, text=text)

    event = read(made)

    assert str(event["SUMMARY"]) == text and str(event["DESCRIPTION"]) == text


def test_no_line_is_longer_than_the_standard_allows() -> None:
    made = entry(at(17, 12), at(17, 13), title="木" * 80, text="word " * 100)
    lines = calendar_text(made, NOW).encode().split(b"\r\n")

    assert max(len(line) for line in lines) <= 75
    assert lines[-1] == b""
    assert not any(b"\n" in line for line in lines)


def test_a_later_file_about_the_same_thing_takes_the_earlier_ones_place() -> None:
    first = Calendar.from_ical(calendar_text(entry(at(17, 12), at(17, 13)), NOW)).walk("VEVENT")[0]
    later = Calendar.from_ical(calendar_text(entry(at(17, 14), at(17, 15)), NOW + timedelta(hours=1))).walk("VEVENT")[0]

    assert first["UID"] == later["UID"]
    assert first["SEQUENCE"] < later["SEQUENCE"]
