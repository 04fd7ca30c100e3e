"""Codes and facts made sentences."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from fluent.runtime import FluentBundle, FluentResource

from runboard.words import sentences
from runboard.words.facts import zone_of
from runboard.words.sentences import in_words, message_name, say

WORDS = """
ui-tray = tray { $tray }
ui-trays = trays { $trays }
refused-station-busy = { $station } still holds { $trays }. It is free at { $until }.
refused-only-an-attribute =
    .title = Nothing
"""


@pytest.fixture
def words(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    bundle = FluentBundle(["en"], use_isolating=False)
    bundle.add_resource(FluentResource(WORDS))
    monkeypatch.setattr(sentences, "catalogue", lambda locale: bundle)
    yield


@pytest.mark.parametrize(
    ("code", "name"),
    [("station busy", "refused-station-busy"), ("go on", "refused-go-on"), ("jig 2, seat", "refused-jig-2-seat")],
)
def test_a_code_names_its_message(code: str, name: str) -> None:
    assert message_name("refused", code) == name


@pytest.mark.usefixtures("words")
def test_a_refusal_is_a_sentence_in_the_shops_own_time() -> None:
    facts = {"station": "The CNC", "trays": ["3", "4"], "until": "2026-03-07T09:20:00.000Z"}

    said = say("refused", "station busy", facts, zone=zone_of("Europe/Berlin"))

    assert said == "The CNC still holds trays 3 and 4. It is free at Sat 10:20."


@pytest.mark.usefixtures("words")
@pytest.mark.parametrize("code", ["never heard of", "only an attribute", ""])
def test_a_code_without_a_sentence_is_said_as_it_is(code: str) -> None:
    assert say("refused", code, {"tray": "3"}) == code


@pytest.mark.usefixtures("words")
def test_a_missing_fact_does_not_fail() -> None:
    assert "still holds" in say("refused", "station busy", {})


@pytest.mark.parametrize(
    ("fact", "words_"),
    [
        (True, "yes"),
        (3, 3),
        (0.5, 0.5),
        (None, ""),
        (timedelta(minutes=90), 90),
        (datetime(2026, 7, 5, 8, 50, tzinfo=UTC), "Sun 08:50"),
        (["a", "b", "c"], "a, b and c"),
        ({"4": 5}, "4: 5"),
        ("2026", "2026"),
    ],
)
def test_a_fact_becomes_words(fact: Any, words_: Any) -> None:
    assert in_words(fact, UTC) == words_


def test_an_unknown_zone_is_no_reason_to_fail() -> None:
    assert zone_of("Nowhere/At-all") == UTC
    assert zone_of("../../etc/passwd") == UTC


@pytest.mark.parametrize(
    "text",
    ["9999-12-31T23:59:59-14:00", "0001-01-01T00:00:00+14:00", "0001-01-01T00:00:00Z", "2026-03-07T09:00:00+99:00", "2026-02-30T00:00:00Z"],
)  # fmt: skip
def test_a_name_that_looks_like_a_moment_of_no_calendar_is_said_as_it_is(text: str) -> None:
    assert in_words(text, zone_of("America/New_York")) == text
