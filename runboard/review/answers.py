"""What a friend answers who was sent a review: at each operation one of five things to do with it, why, and what it saves.

The answers come back as a file of our own, in one of two forms. As JSON, which a press in the friend's file saves::

    {"runboard_answers": 1, "run": "r7", "opened": "2026-03-07T09:00:00Z", "from": "Sam",
     "answers": [{"operation": "hooks", "do": "simplify", "why": "A stop on the jig.", "saves_minutes": 0.5}]}

As text, for a phone on which no script runs: a few lines that are copied, filled in and sent like any message::

    runboard answers 1
    run: r7 2026-03-07T09:00:00Z
    from: Sam
    [hooks] Fit hooks
    do: simplify
    why: A stop on the jig.
    saves: 0.5

``run`` and ``opened`` say which run is meant, for many shops have a run 7; ``from`` may be '', ``saves_minutes`` (of one
piece) null. An operation without an answer is left out, or left empty. How much may be in it: ``MOST_…`` below. Fields
that are not known are passed over, so a later version may add some; another number than 1 is turned away.
"""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from runboard.run.log.one_line import one_line
from runboard.run.refusal import Refused
from runboard.shop.json_text import read_json_text
from runboard.shop.numbers import any_number
from runboard.shop.problem import Unreadable

VERSION = 1
# What may become of an operation: the four of work simplification, in the order in which they are asked, or nothing.
WAYS = ("eliminate", "combine", "rearrange", "simplify", "leave")
MOST_BYTES = 400_000
MOST_ANSWERS = 200  # as a route has steps
MOST_LETTERS = 1_000
MOST_NAME = 60
MOST_MINUTES = 10_000.0
_JSON_MARK, _TEXT_MARK = "runboard_answers", "runboard answers"
_SECTION = re.compile(r"\[([^\[\]]{1,200})\]")
_FIELD = re.compile(r"(run|from|do|why|saves):\s*(.*)", re.IGNORECASE)


@dataclass(frozen=True)
class Answer:
    """What somebody would do with an operation: one of ``WAYS``, why, and how many minutes a piece it would save (None
    where they did not say)."""

    operation: str
    do: str
    why: str = ""
    saves_minutes: float | None = None


@dataclass(frozen=True)
class AnswerSheet:
    """The answers of one friend to the review of one run, which is known by its key and the moment it was ``opened``."""

    run: str
    opened: str
    friend: str
    answers: tuple[Answer, ...]


def read_answers(raw: bytes) -> AnswerSheet:
    """The sheet in a file, in either form.

    Refused 'answers empty', 'answers too long', 'answers no file' (something else), 'answers broken' (``why``),
    'answers version', 'answers many', 'answers wrong' (``number``, ``field``).
    """
    if not raw.strip():
        raise Refused("answers empty")
    if len(raw) > MOST_BYTES:
        raise Refused("answers too long", most=MOST_BYTES // 1000)
    if raw.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(b"{"):
        try:
            record = read_json_text(raw, "the file")
        except Unreadable as bad:
            raise Refused("answers broken", why=str(bad)) from bad
    else:
        record = _record_of_text(raw)
    return sheet_from(record)


def sheet_from(record: Any) -> AnswerSheet:
    """The sheet that a record says, each field looked at. Refused as ``read_answers``."""
    if not isinstance(record, dict) or _JSON_MARK not in record:
        raise Refused("answers no file")
    if record[_JSON_MARK] != VERSION:
        raise Refused("answers version")
    some = record.get("answers")
    if not isinstance(some, list):
        raise Refused("answers wrong", number=0, field="answers")
    if len(some) > MOST_ANSWERS:
        raise Refused("answers many", most=MOST_ANSWERS)
    return AnswerSheet(
        _text(record, "run", 0, MOST_LETTERS),
        _text(record, "opened", 0, MOST_LETTERS),
        one_line(_text(record, "from", 0, MOST_LETTERS), MOST_NAME),
        tuple(_answers(some)),
    )


def _answers(some: Iterable[Any]) -> Iterator[Answer]:
    for number, one in enumerate(some, 1):
        if not isinstance(one, dict):
            raise Refused("answers wrong", number=number, field="answers")
        do, why = _text(one, "do", number, MOST_NAME).strip().lower(), _text(one, "why", number, MOST_LETTERS)
        if do not in (*WAYS, ""):
            raise Refused("answers wrong", number=number, field="do")
        found = Answer(
            _text(one, "operation", number, MOST_LETTERS),
            do or "leave",
            one_line(why, MOST_LETTERS),
            _saves(one, number),
        )
        if do or found.why or found.saves_minutes is not None:
            yield found


def _text(record: Mapping[str, Any], field: str, number: int, most: int) -> str:
    found = record.get(field, "")
    if not isinstance(found, str) or len(found) > most:
        raise Refused("answers wrong", number=number, field=field)
    return found


def _saves(record: Mapping[str, Any], number: int) -> float | None:
    found = record.get("saves_minutes")
    if isinstance(found, str):  # as it was typed
        found = any_number(found.strip()) if found.strip() else None
        if found is None and record["saves_minutes"].strip():
            raise Refused("answers wrong", number=number, field="saves")
    if found is None:
        return None
    if isinstance(found, bool) or not isinstance(found, (int, float)) or not 0 <= found <= MOST_MINUTES:
        raise Refused("answers wrong", number=number, field="saves")
    return float(found)


# as text


def sheet_text(run: str, opened: str, operations: Iterable[tuple[str, str]]) -> str:
    """The lines to fill in, for these operations (key, name)."""
    head = f"{_TEXT_MARK} {VERSION}\nrun: {run} {opened}\nfrom: \n"
    return head + "".join(f"[{key}] {name}\ndo: \nwhy: \nsaves: \n" for key, name in operations)


def _record_of_text(raw: bytes) -> dict[str, Any]:
    """The same record from lines. What a mail program does to them is undone: marks of a quotation, and a long line that
    it broke."""
    try:
        lines = [line.lstrip("> \t").rstrip() for line in raw.decode("utf-8-sig").splitlines()]
    except UnicodeDecodeError:
        raise Refused("answers no file") from None
    starts = [at for at, line in enumerate(lines) if line.lower().startswith(_TEXT_MARK)]
    if not starts:
        raise Refused("answers no file")
    version = lines[starts[0]][len(_TEXT_MARK) :].strip()
    record: dict[str, Any] = {_JSON_MARK: VERSION if version == str(VERSION) else version, "answers": []}
    _fill(record, lines[starts[0] + 1 :])
    run, _, opened = record.get("run", "").strip().rpartition(" ")
    return {**record, "run": run.strip(), "opened": opened}


def _fill(record: dict[str, Any], lines: Iterable[str]) -> None:
    into, last = record, ""
    for line in lines:
        section, field = _SECTION.match(line), _FIELD.match(line)
        if section:
            into, last = {"operation": section[1]}, ""
            record["answers"].append(into)
        elif field:
            last = "saves_minutes" if field[1].lower() == "saves" else field[1].lower()
            into[last] = field[2]
        elif line and last == "why":
            into[last] += f" {line}"
