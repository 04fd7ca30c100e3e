"""One fact is written in one way: on a page, on paper, in an alert and to a helper."""

import re
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from runboard.run.log.event import write_moment
from runboard.words import facts
from runboard.words.facts import (
    length_in_words,
    list_in_words,
    moment_in_words,
    number_in_words,
    span_in_words,
    zone_of,
)
from runboard.words.sentences import day_in_words, in_words, share_in_words, tray_numbers, trays_in_words
from runboard.words.speech import Speech
from tests.vectors.facts import DAYS_OF_A_YEAR, LENGTHS, LISTS, MOMENTS, NOW, SPANS, TRAYS, ZONE

BERLIN = zone_of(ZONE)


def speech(family: str, locale: str = "en") -> Speech:
    return Speech(family, locale, BERLIN, "mm", NOW)


def plain(text: str) -> str:
    return text.replace("\u00a0", " ")


@pytest.mark.parametrize(("at", "said"), MOMENTS.items(), ids=str)
def test_a_moment_is_written_one_way(at: datetime, said: str) -> None:
    assert moment_in_words(at, BERLIN, now=NOW) == speech("helper").moment(at) == said
    assert in_words(at, BERLIN, "en", NOW) == in_words(write_moment(at), BERLIN, "en", NOW) == said


@pytest.mark.parametrize(("at", "said"), MOMENTS.items(), ids=str)
def test_what_stays_longer_than_the_day_has_the_weekday_too(at: datetime, said: str) -> None:
    on_paper = said if " " in said else f"Wed {said}"
    assert speech("card").moment(at) == moment_in_words(at, BERLIN, now=NOW, stays=True) == on_paper


@pytest.mark.parametrize(("span", "said"), SPANS.items(), ids=str)
def test_a_span_is_written_one_way(span: timedelta, said: str) -> None:
    assert {span_in_words(span), speech("card").span(span), speech("helper").span(span)} == {said}


def test_what_is_shorter_than_a_minute_is_said_in_seconds_and_what_there_is_not_with_a_dash() -> None:
    assert span_in_words(timedelta(seconds=45)) == "45 s"
    assert span_in_words(None) == "–"


@pytest.mark.parametrize(
    ("seconds", "said"), [(90, "1 min 30 s"), (5400, "1 h 30"), (2280, "38 min"), (1_209_600, "14 days"), (0, "0 min")]
)
def test_a_time_that_somebody_typed_loses_nothing(seconds: int, said: str) -> None:
    assert facts.exact_span_in_words(timedelta(seconds=seconds)) == said


@pytest.mark.parametrize(("length", "said"), LENGTHS.items(), ids=str)
def test_a_length_is_written_one_way(length: tuple[float, str], said: str) -> None:
    mm, units = length

    assert length_in_words(mm, "in" if units == "in" else "mm") == said


@pytest.mark.parametrize(("some", "said"), LISTS.items(), ids=str)
def test_a_list_is_written_one_way(some: tuple[str, ...], said: str) -> None:
    assert list_in_words(some) == said


@pytest.mark.parametrize(("trays", "said"), TRAYS.items(), ids=str)
def test_trays_are_named_one_way(trays: tuple[str, ...], said: str) -> None:
    assert plain(trays_in_words(trays)) == said


def test_where_there_is_little_room_trays_are_their_numbers() -> None:
    assert [tray_numbers(one) for one in (("4",), ("2", "1", "3"), ("1", "2", "4a", "6"))] == ["4", "1–3", "1–2, 4a, 6"]


@pytest.mark.parametrize(
    ("locale", "moment", "span", "length"),
    [
        ("de", "Do., 12. März, 17:00", "14 Tage", "0,5 mm"),
        ("es", "jue, 12 mar, 17:00", "14 días", "0,5 mm"),
        ("fr", "jeu. 12 mars, 17:00", "14 jours", "0,5 mm"),
    ],
)
def test_each_language_has_its_own_days_and_decimal_mark(locale: str, moment: str, span: str, length: str) -> None:
    said = speech("card", locale)

    assert said.moment(datetime(2026, 3, 12, 16, tzinfo=UTC)) == moment
    assert (plain(said.span(timedelta(days=14))), said.length(0.5)) == (span, length)
    assert (number_in_words(2.5, locale), number_in_words(40.0, locale)) == ("2,5", "40")


def test_a_date_that_is_read_long_after_has_its_year() -> None:
    assert facts.date_in_words(date(2026, 9, 3), with_year=True) == "Thu 3 Sep 2026"
    assert speech("card").printed() == "Wed 4 Mar 2026, 16:00"


@pytest.mark.parametrize(("day", "said"), DAYS_OF_A_YEAR.items(), ids=str)
def test_the_date_of_a_paper_is_written_one_way(day: date, said: str) -> None:
    assert facts.day_of_year(day) == in_words(day, BERLIN) == said


@pytest.mark.parametrize(
    ("locale", "day", "number"),
    [
        ("en", "14 Mar 2026", "12,500.5"),
        ("de", "14. März 2026", "12.500,5"),
        ("es", "14 mar 2026", "12.500,5"),
        ("fr", "14 mars 2026", "12 500,5"),
    ],
)
def test_a_date_and_a_number_have_the_marks_of_their_language(locale: str, day: str, number: str) -> None:
    assert facts.day_of_year(date(2026, 3, 14), locale) == day
    assert number_in_words(12500.5, locale).replace("\u202f", " ") == number


def test_a_number_has_no_exponent_and_no_more_figures_than_count() -> None:
    assert [number_in_words(one) for one in (2_500_000, 0.1 + 0.2, 40.0, 0.00123)] == [
        "2,500,000",
        "0.3",
        "40",
        "0.00123",
    ]


@pytest.mark.parametrize(
    "kept",
    [
        "5 h 42",
        "38 min",
        "1 min 30 s",
        "2 days 4 h",
        "20 h to 22 h",
        "0.5 mm",
        "60 %",
        "Sun 17:00",
        "Sun 29 Nov",
        "9½ min",
    ],
)
def test_no_line_ends_within_a_fact(kept: str) -> None:
    assert facts.unbroken(f"So it is {kept} then") == f"So it is {kept.replace(' ', chr(0xA0))} then"


def test_a_page_keeps_what_a_browser_sends_back_as_it_is() -> None:
    page = '<p title="2 h 30">2 h 30</p><input value="2 h 30"><textarea>2 h 30</textarea><option>2 h 30</option>'

    assert facts.unbroken_page("<code>watts 140 W</code>") == "<code>watts 140 W</code>", "people copy it"
    assert facts.unbroken_page(page) == page.replace(">2 h 30</p>", ">2\u00a0h\u00a030</p>")


@pytest.mark.parametrize(
    ("days", "said"),
    [(-1, "yesterday"), (0, "today"), (1, "tomorrow"), (2, "Friday"), (6, "Tuesday"), (7, "Wed 11 Mar")],
)
def test_a_day_is_called_as_people_call_it(days: int, said: str) -> None:
    assert day_in_words(NOW + timedelta(days=days), NOW, BERLIN) == said


@pytest.mark.parametrize(
    ("rate", "share", "chance"),
    [
        (1.0, "all", "almost certain"),
        (0.95, "19 of 20", "19 times in 20"),
        (0.97, "97 of 100", "97 times in 100"),
        (0.99999, "more than 999 of 1000", "almost certain"),
        (0.00001, "fewer than 1 of 1000", "very unlikely"),
    ],
)
def test_a_share_is_never_rounded_up_to_all(rate: float, share: str, chance: str) -> None:
    assert (share_in_words(rate), share_in_words(rate, "chance")) == (share, chance)


# Where a moment is written for a program, a form's field or a file's name, or a time of day that is no moment.
WRITTEN_ELSEWHERE = {
    "floor/looking/look.py", "plan/money/cents.py", "shop/record.py", "store/backup.py", "store/restore.py", "store/dues.py", "run/calls/calendar.py",
    "lan/issue.py", "web/door/run_pages.py", "web/trays/paper.py", "words/trying.py", "words/facts.py",
}  # fmt: skip


def test_nothing_else_writes_moments_or_lists_for_people() -> None:
    writes = re.compile(r"\bbabel\b|strftime|\{[^{}]+:[^{}]*%[aAbBdHMY]")
    package = Path(facts.__file__).parents[1]
    found = {
        path.relative_to(package).as_posix()
        for path in package.rglob("*.py")
        if any(
            writes.search(line) for line in path.read_text("utf-8").splitlines() if not line.lstrip().startswith("#")
        )
    }

    assert found == WRITTEN_ELSEWHERE


@pytest.mark.parametrize(
    ("ahead", "said"),
    [
        (timedelta(hours=1), "{:%H:%M}"),
        (timedelta(days=2), "{:%a %H:%M}"),
        (timedelta(days=9), "{:%a} {0.day} {:%b}, {:%H:%M}"),
        (timedelta(days=-400), "{:%a} {0.day} {:%b %Y}, {:%H:%M}"),
    ],
    ids=str,
)
def test_a_page_says_no_more_of_a_date_than_its_reader_needs(ahead: timedelta, said: str) -> None:
    now = datetime(2026, 6, 16, 12, 0, tzinfo=UTC)
    local = (now + ahead).astimezone(BERLIN)

    assert facts.seen_from(now, now + ahead, BERLIN) == re.sub(r"{(?=[:])", "{0", said).format(local)
    assert facts.due_in_words(now + ahead, BERLIN, now=now) == facts.seen_from(now, now + ahead, BERLIN)
