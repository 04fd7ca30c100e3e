"""The rows of one operation on a tray's card: its steps with their boxes, its cautions as signs, texts, and the wait."""

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Literal

from runboard.cards.boxes import room_beside, room_of
from runboard.cards.measure import beginning, lines, width
from runboard.cards.model import CardWait, Care, Cell, Work
from runboard.cards.row import MOST_LINES, SMALL, STEP, STRIP, TEXT, Group, Row, row, text_rows
from runboard.cards.rows_of_work import step_rows, wait_rows

SIGN = 6.2  # mm of a sign and the white after it
_BETWEEN = 2.4
_DOT = "· "  # before words without a sign that stand beside others
_SIGNS_HIGH = 6
_WORDS_HIGH = 4
_CELL = 8  # a pencil needs 8 mm
_MARK = 6.0  # mm of a position's number
_UNTIL = 40.0  # mm of the moment from which on a tray may go on
_MOST_TITLE = 2

Signs = Literal["worded", "once", "bare", "none"]
# Signs that tell what they are about by their words alone.
_GENERAL = frozenset({"M001", "W001"})


def steps_of(work: Work, room: float, words: Mapping[str, str], signs: Signs, said: set[str]) -> Group:
    """The rows of an operation in ``room`` mm of width. ``signs``: each with its two words, those with words that the card has
    not ``said`` already, signs alone, or left to the station's sheet. One that is done is told in a row a step."""
    rows = [part for step in work.steps for part in step_rows(step, room, words)]
    if not work.done:
        cautions = list(_cautions(work.signs, room - STRIP, signs, said))
        beside = _beside(rows[-1], cautions, room_beside(room, words))
        rows = [*rows[:-1], beside] if beside else [*rows, *cautions]
        rows += text_cells(work.places, room - STRIP, words)
    if work.wait:
        rows += go_on_rows(work.wait, room)
    return Group(work.steps[0].name, tuple(rows))


def _beside(step: Row, cautions: Sequence[Row], room: float) -> Row | None:
    """A step's row with its signs, where none of them needs words and they fit beside its name."""
    signed = [item for line in cautions for item in line.facts["signed"]]
    name, where = step.facts["name"], (*step.facts["where"], step.facts["beside"])
    if not signed or any(item["words"] for item in signed) or len(name) != 1:
        return None
    below = "".join(where)
    signs = [sign for item in signed for sign in item["signs"]]
    wide = max(width(name[0], STEP.points, True), width(below, SMALL.points)) + SIGN * len(signs) + 1
    if wide > room or len(step.facts["where"]) > 1:
        return None
    height = math.ceil(STEP.height(1) + SMALL.height(1 if below else 0) + 1)
    return replace(
        step,
        height=max(8, height),
        facts={**step.facts, "beside": "", "where": (below,), "signs": signs, "right": room_of(step.facts["boxes"])},
    )


def _cautions(cautions: Sequence[Care], room: float, signs: Signs, said: set[str]) -> Iterator[Row]:
    match signs:
        case "worded":
            yield from sign_rows(cautions, room, set())
        case "once":
            yield from sign_rows(cautions, room, said)
        case "bare":
            signed = [caution for caution in cautions if caution.signs]
            yield from sign_rows(signed, room, {caution.text for caution in signed})


def sign_rows(cautions: Sequence[Care], room: float, said: set[str]) -> Iterator[Row]:
    """Cautions, as many in a row as there is room for. One that was ``said`` is its sign alone, and they are so placed that
    words stand beside no sign but their own."""
    left = sorted(((caution, _worded(caution, room, said)) for caution in cautions), key=_place)
    said.update(caution.text for caution in cautions)
    while left:
        items: list[dict[str, object]] = []
        free, others = room, list[tuple[Care, str]]()
        for caution, words in left:
            apart = not caution.signs and bool(items)
            wide = _wide(caution, words) + _BETWEEN * apart
            if wide > free and items:
                others.append((caution, words))
                continue
            items.append(
                {"signs": caution.signs, "words": words if items else words.removeprefix(_DOT), "apart": apart}
            )
            free -= wide
        has_signs = any(item["signs"] for item in items)
        yield row(
            "signs" if has_signs else "unsigned", _SIGNS_HIGH if has_signs else _WORDS_HIGH, core=True, signed=items
        )
        left = others


def _wide(caution: Care, words: str) -> float:
    return SIGN * len(caution.signs) + (width(words, TEXT.points) + _BETWEEN if words else 0)


def _place(worded: tuple[Care, str]) -> int:
    """What tells by its words alone first, then signs that need none, signs with words, words without a sign."""
    caution, words = worded
    if _GENERAL & set(caution.signs):
        return 0
    return (2 if words else 1) if caution.signs else 3


def _worded(caution: Care, room: float, said: set[str]) -> str:
    """Its words as far as one line goes; '' where the sign alone says it again."""
    if caution.text in said and caution.signs and not _GENERAL & set(caution.signs):
        return ""
    text = caution.text if caution.signs else f"{_DOT}{caution.text}"
    return beginning(text, room - SIGN * len(caution.signs) - _BETWEEN, TEXT.points)


def text_cells(places: Sequence[Cell], room: float, words: Mapping[str, str]) -> Iterator[Row]:
    """The text of each position beside its number: as many in a row as the longest lets."""
    if not places:
        return
    yield from text_rows(((words["texts"], True),), room, SMALL, keep=True)
    longest = max(width(cell.text, STEP.points, True) for cell in places)
    across = next((count for count in (5, 4, 3, 2) if longest <= room / count - _MARK - 1), 1)
    for at in range(0, len(places), across):
        some = places[at : at + across]
        cells = [(cell.mark, lines(cell.text, room / across - _MARK - 1, STEP.points, True)) for cell in some]
        for start in range(0, max(1, *(len(text) for _, text in cells)), MOST_LINES):
            part = [(mark if start == 0 else "", text[start : start + MOST_LINES]) for mark, text in cells]
            high = max(_CELL, STEP.height(max(len(text) for _, text in part)) + 2)
            yield row("texts", high, cells=part, across=across)


def go_on_rows(wait: CardWait, room: float) -> Iterator[Row]:
    """What it waits for, and from when it may go on: the moment, or a blank to write it in. The label's other times stand on
    the station's sheet."""
    if not wait.bounds:
        return
    first, *latest = wait.cells[: wait.bounds]
    title = lines(wait.title, room - STRIP - _UNTIL - 1, STEP.points, bold=True)
    fits = max(width(first.label, SMALL.points), width(first.text, STEP.points, True)) <= _UNTIL - 2
    if not fits or len(title) > _MOST_TITLE:
        yield from wait_rows(CardWait(wait.title, (first, *latest)), room)
        return
    yield row("goon", 10, core=True, keep=bool(latest), lines=title, label=first.label, text=first.text)
    if latest:
        yield from wait_rows(CardWait("", tuple(latest)), room)
