"""Every doubt about a program has its sentence, with the facts that it names."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest
from fluent.syntax import FluentParser
from fluent.syntax import ast as ftl

from runboard.plan.program.moves import Doubt
from runboard.words.before.doubts import doubt_said
from runboard.words.sentences import message_name, say
from tests.core.test_words import catalogue

ROOT = Path(__file__).parents[2]
PROGRAM = ROOT / "runboard" / "plan" / "program"
WORDS = ROOT / "static" / "words" / "en.before.program.ftl"


def doubts() -> Iterator[tuple[str, frozenset[str]]]:
    """Each code with the facts that come with it."""
    yield "more", frozenset({"line", "count", "of"})
    for path in (PROGRAM / "read.py", PROGRAM / "suspects.py", *sorted((PROGRAM / "language").glob("*.py"))):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            called = ast.unparse(node.func).rpartition("doubts.")[2]
            at = {"LeftOut": 0, "add": 1, "once": 1}.get(called)
            if at is not None and len(node.args) > at and isinstance(node.args[at], ast.Constant):
                code = node.args[at]
                assert isinstance(code, ast.Constant)
                yield str(code.value), frozenset({"line", *(str(one.arg) for one in node.keywords)})


@pytest.mark.parametrize(("code", "facts"), sorted(set(doubts()), key=str))
def test_a_doubt_has_its_sentence_with_its_facts(code: str, facts: frozenset[str]) -> None:
    name = message_name("program-doubt", code)

    assert name in catalogue()
    assert catalogue()[name] <= facts


def test_no_doubt_is_worded_that_nobody_has() -> None:
    entries = [one for one in FluentParser().parse(WORDS.read_text("utf-8")).body if isinstance(one, ftl.Message)]
    worded = {one.id.name for one in entries if one.id.name.startswith("program-doubt-")}

    assert worded == {message_name("program-doubt", code) for code, _ in doubts()}


def test_a_doubt_is_said_with_its_line() -> None:
    said = say("program-doubt", "cutter-radius", {"line": 14, "word": "G41"})

    assert said == "Line 14: G41 shifts the path by the cutter's radius; here it is drawn and timed without that."


def test_a_doubt_s_lengths_and_feeds_are_in_the_shop_s_units() -> None:
    across, fast = Doubt(31, "fast-across", {"z": -4.0}), Doubt(7, "feed-fast", {"feed": 6350.0, "most": 5080.0})

    assert doubt_said(across, "mm") == (
        "Line 31 moves fast across while at Z −4 mm, which is below the top of the stock."
    )
    assert doubt_said(fast, "in") == (
        "From line 7 on: a feed of 250 in/min, and the machine goes 200 in/min at most. The machine's is taken."
    )
