"""A friend's answers in their file: what is read, and what is turned away with which reason."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.review.answers import (
    MOST_ANSWERS,
    MOST_BYTES,
    MOST_LETTERS,
    WAYS,
    Answer,
    AnswerSheet,
    read_answers,
    sheet_text,
)
from runboard.run.refusal import Refused

OPENED = "2026-03-07T09:00:00Z"
HOOKS = {"operation": "hooks", "do": "simplify", "why": "A stop on the jig.", "saves_minutes": 0.5}


def a_file(*answers: Any, **fields: Any) -> bytes:
    record = {"runboard_answers": 1, "run": "r7", "opened": OPENED, "from": "Sam", "answers": list(answers)}
    return json.dumps({**record, **fields}).encode()


def refused(raw: bytes) -> tuple[str, dict[str, Any]]:
    with pytest.raises(Refused) as why:
        read_answers(raw)
    return why.value.code, why.value.facts


def test_a_file_says_of_which_run_and_what_to_do_with_each_operation() -> None:
    found = read_answers(a_file(HOOKS))

    assert found == AnswerSheet("r7", OPENED, "Sam", (Answer("hooks", "simplify", "A stop on the jig.", 0.5),))


def test_the_same_is_read_from_lines_as_from_json() -> None:
    lines = f"""Hello, here it is:
runboard answers 1
run: r7 {OPENED}
from: Sam
[cut] Cut
do:
why:
saves:
[hooks] Fit hooks
do: Simplify
why: A stop
on the jig.
saves: 0,5
"""
    quoted = "".join(f"> {line}\n" for line in lines.splitlines())

    assert read_answers(lines.encode()) == read_answers(quoted.encode()) == read_answers(a_file(HOOKS))


def test_lines_that_nobody_filled_in_are_read_and_say_nothing() -> None:
    lines = sheet_text("r7", OPENED, [("cut", "Cut"), ("hooks", "Fit hooks")])

    assert read_answers(lines.encode()) == AnswerSheet("r7", OPENED, "", ())


def test_a_sentence_without_a_choice_is_kept_and_changes_nothing() -> None:
    found = read_answers(a_file({"operation": "cut", "why": "Well done."}))

    assert found.answers == (Answer("cut", "leave", "Well done."),)


def test_a_field_of_a_later_version_is_passed_over() -> None:
    assert read_answers(a_file({**HOOKS, "colour": "red"}, mood="good")) == read_answers(a_file(HOOKS))


def test_what_was_written_is_one_line_without_signs_that_cannot_be_seen() -> None:
    found = read_answers(a_file({**HOOKS, "why": "A stop\n\u202e on\tthe jig.\x00"}, **{"from": "S\u200bam\n"}))

    assert (found.answers[0].why, found.friend) == ("A stop on the jig.", "S am")


@pytest.mark.parametrize(
    ("raw", "code"),
    [
        (b" \n", "answers empty"),
        (b"{" + b" " * MOST_BYTES, "answers too long"),
        (b"Dear Ann, all is well.", "answers no file"),
        (b"\xff\xfe\x00", "answers no file"),
        (b'{"runboard_run": 1}', "answers no file"),
        (b'{"runboard_answers": 1', "answers broken"),
        (a_file(runboard_answers=2), "answers version"),
        (b"runboard answers 2\nrun: r7 x\n", "answers version"),
        (a_file(*[HOOKS] * (MOST_ANSWERS + 1)), "answers many"),
        (a_file(answers="all"), "answers wrong"),
        (a_file("all"), "answers wrong"),
        (a_file(run=7), "answers wrong"),
    ],
)
def test_what_is_no_such_file_is_turned_away_with_its_reason(raw: bytes, code: str) -> None:
    assert refused(raw)[0] == code


@pytest.mark.parametrize(
    ("answer", "field"),
    [
        ({"do": "burn"}, "do"),
        ({"do": 1}, "do"),
        ({"why": "x" * (MOST_LETTERS + 1)}, "why"),
        ({"operation": None}, "operation"),
        ({"saves_minutes": -1}, "saves"),
        ({"saves_minutes": 1e9}, "saves"),
        ({"saves_minutes": True}, "saves"),
        ({"saves_minutes": "much"}, "saves"),
    ],
)
def test_a_wrong_answer_is_named_by_its_number_and_field(answer: dict[str, Any], field: str) -> None:
    assert refused(a_file(HOOKS, {**HOOKS, **answer})) == ("answers wrong", {"number": 2, "field": field})


_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner) | st.dictionaries(st.sampled_from([*HOOKS, "run", "answers", "from"]), inner),
    max_leaves=12,
)
_LINES = st.lists(
    st.sampled_from(["run: r7 x", "from: Sam", "[a] b", "[", "do: combine", "why: w", "saves: 1", "", "more"])
)


@given(
    st.binary()
    | st.dictionaries(st.sampled_from(["run", "opened", "from", "answers"]), _JSON).map(
        lambda some: json.dumps({"runboard_answers": 1, **some}).encode()
    )
    | _LINES.map(lambda some: "\n".join(["runboard answers 1", *some]).encode())
)
def test_whatever_is_in_a_file_is_read_or_refused(raw: bytes) -> None:
    try:
        found = read_answers(raw)
    except Refused:
        return

    assert all(one.do in WAYS and len(one.why) <= MOST_LETTERS for one in found.answers)
