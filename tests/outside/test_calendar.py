"""Our calendar files read by another's reader, `icalendar`, and held to the alarm times that RFC 5545 prints.

Source: RFC 5545, section 3.6.6, the examples of VALARM.
"""

from datetime import UTC, datetime, timedelta

import pytest
from icalendar import Calendar, Event

from runboard.run.calendar import MOST_OCTETS, Alarm, Entry, calendar_text

NOW = datetime(1997, 3, 1, 12, 0, tzinfo=UTC)


def at(day: int, hour: int, minute: int = 0) -> datetime:
    return datetime(1997, 3, day, hour, minute, tzinfo=UTC)


def entry(
    begins: datetime, ends: datetime, *alarms: Alarm, title: str = "The laser has ended", text: str = ""
) -> Entry:
    return Entry("machine-end-r1-engrave/4", title, text, begins, ends, alarms)


def read(made: Entry) -> Event:
    """The one event of the file, as a calendar program reads it."""
    (event,) = Calendar.from_ical(calendar_text(made, NOW)).walk("VEVENT")
    assert isinstance(event, Event)
    return event


def rings_at(made: Entry) -> list[datetime]:
    return sorted(time.trigger for time in read(made).alarms.times)


@pytest.mark.parametrize(
    ("made", "printed"),
    [
        # "precise trigger at 9:30 EST on March 17, 1997 that will repeat 4 times at 15 minute intervals": of the same
        # moment, said as the beginning of the event
        (
            entry(at(17, 13, 30), at(17, 14), Alarm(again=4, every=timedelta(minutes=15))),
            [at(17, 13, 30), at(17, 13, 45), at(17, 14), at(17, 14, 15), at(17, 14, 30)],
        ),
        # TRIGGER:-PT30M, REPEAT:2, DURATION:PT15M before 08:30
        (
            entry(at(18, 8, 30), at(18, 9), Alarm(-timedelta(minutes=30), again=2, every=timedelta(minutes=15))),
            [at(18, 8), at(18, 8, 15), at(18, 8, 30)],
        ),
        # TRIGGER;RELATED=END:-P2D before 1997-03-18 08:30
        (entry(at(18, 8), at(18, 8, 30), Alarm(-timedelta(days=2), of_end=True)), [at(16, 8, 30)]),
    ],
)
def test_an_alarm_rings_when_the_standards_examples_do(made: Entry, printed: list[datetime]) -> None:
    assert rings_at(made) == printed


def test_the_reader_finds_the_alarm_times_that_the_standard_prints() -> None:
    """The reader itself is held to the example with a moment of its own, which we do not write."""
    text = calendar_text(entry(at(17, 12), at(17, 13), Alarm(again=4, every=timedelta(minutes=15))), NOW)
    theirs = text.replace("TRIGGER:PT0S", "TRIGGER;VALUE=DATE-TIME:19970317T133000Z")
    (event,) = Calendar.from_ical(theirs).walk("VEVENT")

    assert isinstance(event, Event)
    assert sorted(time.trigger for time in event.alarms.times) == [
        at(17, 13, 30), at(17, 13, 45), at(17, 14), at(17, 14, 15), at(17, 14, 30)
    ]  # fmt: skip


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

    assert max(len(line) for line in lines) <= MOST_OCTETS
    assert lines[-1] == b""
    assert not any(b"\n" in line for line in lines)


def test_a_later_file_about_the_same_thing_takes_the_earlier_ones_place() -> None:
    first = Calendar.from_ical(calendar_text(entry(at(17, 12), at(17, 13)), NOW)).walk("VEVENT")[0]
    later = Calendar.from_ical(calendar_text(entry(at(17, 14), at(17, 15)), NOW + timedelta(hours=1))).walk("VEVENT")[0]

    assert first["UID"] == later["UID"]
    assert first["SEQUENCE"] < later["SEQUENCE"]
