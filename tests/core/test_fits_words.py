"""Every sentence of screws, fits, movement and feeds is there with its facts, and none is there for nothing."""

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from runboard.plan.before.asking import question_from
from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book
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
