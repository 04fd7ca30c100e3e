"""Every sentence of screws, fits, movement and feeds is there with its facts, and none is there for nothing."""

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from runboard.plan.before.asking import question_from
from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book
from runboard.words.before.measures import length_about
from runboard.words.before.said import Said
from runboard.words.before.sayings import said_of
from tests.core.test_feeds import SHOP as FEEDS
from tests.core.test_screws import SHOP as SCREWS

WORDS = Path(__file__).parents[2] / "static" / "words"
ROOT = Path(__file__).parents[2] / "runboard"

ASKED: dict[str, list[tuple[Book, dict[str, Any]]]] = {
    "screw": [
        (SCREWS, {"screw": "hook", "washer": 1, "into": 18.5, "wood": "ash"}),
        (SCREWS, {"screw": "hook", "into": 15, "wood": "spruce"}),
        (SCREWS, {"screw": "hook", "into": 16, "wood": "zebrano", "grain": "end"}),
        (SCREWS, {"gauge": 8, "length": 30, "through": 20, "into": 11, "wood": "oak"}),
        (SCREWS, {"diameter": 3, "length": 6, "through": 1, "into": 4}),
        (SCREWS, {"diameter": 3, "length": 10, "through": 12, "into": 18}),
    ],
    "fit": [
        (SCREWS, {"diameter": 10, "length": 3, "edge": 20}),
        (SCREWS, {"diameter": 10, "length": 3, "thickness": 5, "edge": 6, "fit": "press"}),
        (SCREWS, {"diameter": 10, "length": 3, "thickness": 3, "edge": 4, "hole": 10.1, "depth": 3.2}),
        (SCREWS, {"diameter": 8, "length": 10, "what": "insert"}),
    ],
    "movement": [
        (SCREWS, {"wood": "ash", "width": 160, "room": 1}),
        (SCREWS, {"wood": "oak", "width": 160, "room": 5, "before": 0.12, "after": 0.08, "sawn": "quarter"}),
        (SCREWS, {"coefficient": 0.002, "humidity_before": 0.5, "humidity_after": 0.97}),
        (SCREWS, {"wood": "ash", "before": 0.1, "after": 0.1}),
        (SCREWS, {"wood": "ash", "room": 5}),
    ],
    "feed": [
        (FEEDS, {"cutter": "six", "rpm": 18000, "feed": 1800, "wood": "ash"}),
        (FEEDS, {"cutter": "six", "rpm": 18000, "feed": 3600, "wood": "ash", "torn": 3, "torn_in": "run 4, Cut"}),
        (FEEDS, {"cutter": "six", "rpm": 30000, "chip": 0.1, "wood": "oak", "station": "cnc"}),
        (FEEDS, {"diameter": 6, "surface": 300000, "chip": 0.1, "feed": 2540}),
        (FEEDS, {"flutes": 2, "rpm": 18000, "chip": 0.1, "feed": 2540}),
        (FEEDS, {"flutes": 2, "chip": 0.1, "feed": 2540, "cutter": "six"}),
        (FEEDS, {"cutter": "six", "rpm": 18000, "wood": "ash"}),
        (FEEDS, {"cutter": "six", "rpm": 18000, "feed": 3600, "wood": "ash", "torn": 1}),
    ],
}
CASES = [(kind, book, said) for kind, cases in ASKED.items() for book, said in cases]


def _told(done: int, total: int) -> None:
    """Nobody listens."""


@pytest.mark.parametrize(("kind", "book", "said"), CASES)
@pytest.mark.parametrize("units", ["mm", "in"])
def test_every_answer_is_said_without_a_gap(kind: str, book: Book, said: dict[str, Any], units: Any) -> None:
    asked, told = KINDS[kind], _told
    shop = replace(book, units=units)
    question = asked.question(**said)

    words = said_of(asked, shop, question, asked.answer(shop, question, None, told))

    texts = [
        words.head,
        *words.lines,
        *words.doubts,
        *words.cautions,
        *(cell for table in words.tables for cell in (*table.heads, *table.rows[0])),
    ]
    assert all(text.strip() for text in texts)
    assert not [text for text in texts if re.search(r"[{}]|None|\bnan\b|  ", text)]
    assert words.record["kind"] == kind


def said(kind: str, book: Book = SCREWS, **asked: Any) -> Said:
    question = KINDS[kind].question(**asked)
    return said_of(KINDS[kind], book, question, KINDS[kind].answer(book, question, None, _told))


@pytest.mark.parametrize(
    ("mm", "units", "says"),
    [
        (1.84, "mm", "1.8 mm"),
        (0.03, "mm", "0.03 mm"),
        (0, "mm", "0 mm"),
        (1.7536, "in", "0.069 in"),
        (0.1625, "in", "0.006 in"),
        (3.175, "in", "1/8 in"),
        (0, "in", "0 in"),
        (15.8, "in", "5/8 in"),
    ],
)
def test_a_small_length_is_not_rounded_away(mm: float, units: Any, says: str) -> None:
    assert length_about(mm, units) == says


def test_a_play_that_is_too_small_says_by_how_much() -> None:
    words = said("movement", replace(SCREWS, units="in"), wood="ash", width=160, room=25.4 / 16)

    assert "0.069 in wider" in words.head
    assert words.cautions == ("1/16 in of play is 0.007 in too little: it would jam, or split its frame.",)


def test_a_magnet_in_an_inch_shop_sits_below_the_face() -> None:
    words = said("fit", replace(SCREWS, units="in"), diameter=6, length=2)

    assert "0.240 in, 3/32 in deep" in words.head
    assert "0.015 in deeper than the part, for glue and dust." in words.lines
    assert any("15/64 in" in line and "a press fit" in line for line in words.lines)


def test_what_could_spoil_the_piece_stands_above() -> None:
    assert "Only 2 mm left beside the hole" in " ".join(said("fit", diameter=10, length=3, edge=7.05).cautions)
    assert "tore out in ash before" in said("feed", FEEDS, cutter="six", rpm=18000, feed=3600, wood="ash").cautions[0]
    assert said("feed", FEEDS, cutter="six", rpm=30000, feed=3600, station="cnc").cautions[0].startswith("The spindle")
    assert "Little of it holds" in said("screw", screw="hook", through=9, into=20).cautions[0]


@pytest.mark.parametrize(
    ("units", "feed", "says"),
    [("mm", 3713.6, "3714 mm"), ("in", 2160.2, "85 in"), ("in", 100, "3.9 in"), ("mm", 1778, "1778 mm")],
)
def test_a_feed_is_said_as_it_is_set(units: Any, feed: float, says: str) -> None:
    words = said("feed", replace(FEEDS, units=units), cutter="six", rpm=18000, feed=feed, wood="oak")

    assert f", {says} per minute: " in words.lines[0]


def test_how_many_tore_out_of_how_many_is_said() -> None:
    tore = replace(FEEDS.feeds[1], note="at the end grain\nrun 4, Cut", torn=3, torn_of=20)
    words = said("feed", replace(FEEDS, feeds=(tore,)), cutter="six", rpm=18000, feed=3600, wood="ash")

    assert words.cautions[0] == (
        "Values like these tore out in ash before: 3 of 20 pieces. Seen: at the end grain; run 4, Cut"
    )


def test_the_shops_own_value_is_the_head_where_too_little_is_said() -> None:
    words = said("feed", FEEDS, cutter="six", rpm=18000, wood="ash")

    assert words.head == "The shop's good value for ash: feed 1800 mm per minute at 18,000 turns, 0.05 mm per tooth."
    assert "Seen: clean" in words.lines


def test_a_screw_that_stops_near_the_face_is_said_not_to_come_through() -> None:
    head = said("screw", screw="hook", into=18.5, wood="ash").head

    assert head.startswith("It stays inside, but stops only 2.5 mm short of the far face. You want 3 mm")


def test_the_share_of_a_screw_is_said_only_where_something_is_fastened() -> None:
    assert "% of the screw" not in " ".join(said("screw", screw="hook", into=25, wood="ash").lines)
    assert "% of the screw" in " ".join(said("screw", screw="hook", through=3, into=25, wood="ash").lines)


def test_each_source_says_of_what_it_is() -> None:
    lines = said("screw", screw="hook", into=25, wood="red oak").lines

    assert any(line.startswith("Specific gravity 0.63: Wood Handbook") for line in lines)


def test_no_sentence_of_them_is_there_for_nothing() -> None:
    code = "\n".join(path.read_text("utf-8") for path in ROOT.rglob("*.py"))
    for name in ("screw", "fit", "feed"):
        for message in re.findall(
            r"^(before-[a-z0-9-]+) =", (WORDS / f"en.before.{name}.ftl").read_text("utf-8"), re.M
        ):
            ends = [message.split("-", cut)[-1] for cut in range(1, message.count("-") + 1)]
            assert any(f'"{end}"' in code or f'"{message}"' in code for end in ends), message


def test_a_question_may_come_as_json_in_inches_or_millimetres() -> None:
    shop = replace(SCREWS, units="in")
    typed = {"gauge": 6, "length": "5/8", "into": "19 mm", "wood": "ash"}

    question = question_from(KINDS["screw"], typed, shop)

    answer = KINDS["screw"].answer(shop, question, None, _told)
    assert (question.length, question.into) == (15.875, 19)
    assert said_of(KINDS["screw"], shop, question, answer).record["left_mm"] == 3.125
