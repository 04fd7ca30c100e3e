"""The rows of a jig label and of a shelf label."""

from collections.abc import Mapping
from typing import Any

from runboard.cards.heading import title_head
from runboard.cards.measure import lines, width
from runboard.cards.model import JigLabel, ShelfLabel
from runboard.cards.row import SMALL, STEP, TEXT, Group, Row, Type, row, text_rows, title_row
from runboard.cards.rows_of_work import care_rows, cell_rows, check_rows, place_rows

_UNTIL = (40, 30, 22, 14)
_LABEL = 34.0  # mm of a setup sheet's label column


def jig_head(card: JigLabel, room: float) -> tuple[dict[str, Any], int]:
    """Operation, station and product."""
    return title_head(card.operation, f"{card.station} · {card.product}", room)


def jig_groups(card: JigLabel, room: float, words: Mapping[str, str]) -> list[Group]:
    """Places of the jig, cautions, setup sheet, start list, first-piece checks."""
    groups = []
    if card.places:
        groups.append(Group(words["places"], tuple(place_rows(card.places, room))))
    if card.care:
        groups.append(Group(card.operation, tuple(care_rows(card.care, room))))
    if card.setup:
        groups.append(Group(card.operation, tuple(part for one in card.setup for part in _setup(one, room))))
    if card.start:
        points = [part for point in card.start for part in _points(point, room)]
        groups.append(Group(words["start-list"], (title_row(words["start-list"]), *points)))
    if card.checks:
        groups.append(Group(card.operation, tuple(check_rows(card.checks, room, words))))
    return groups


def _setup(one: tuple[str, str], room: float) -> list[Row]:
    """One line of the setup sheet: its label beside it, or above it where the label is long."""
    label, text = one
    if width(label, TEXT.points, bold=True) > _LABEL - 1:
        return [*text_rows(((label, True),), room, TEXT, "how"), *text_rows(((text, False),), room, STEP, "step")]
    found = lines(text, room - _LABEL, STEP.points)
    parts = [found[at : at + 6] for at in range(0, len(found), 6)] or [()]
    return [
        row("pair", max(8, STEP.height(len(part)) + 2), label=label if at == 0 else "", lines=part)
        for at, part in enumerate(parts)
    ]


def _points(point: str, room: float) -> list[Row]:
    found = lines(point, room - 6, TEXT.points)
    return [
        row("point", TEXT.height(len(part)) + 1, lines=part, first=at == 0)
        for at, part in ((at, found[at : at + 6]) for at in range(0, len(found), 6))
    ]


def shelf_groups(card: ShelfLabel, room: float, words: Mapping[str, str]) -> list[Group]:
    """Until when the tray stays where it is, what else the label says, and the cautions."""
    points = next((one for one in _UNTIL if width(card.until, one, bold=True) <= room), _UNTIL[-1])
    until = lines(card.until, room, points, bold=True)
    first: list[Row] = text_rows(((words["do-not-move"], True),), room, Type(16, 7), "loud", core=True)
    high = points * 0.42 * len(until) + 2 if until else 20
    first.append(row("until", high, core=True, lines=until, points=points))
    title = text_rows(((card.title, True),), room, STEP, "step", core=True, gap=2)
    cells = list(cell_rows(card.cells, room))
    notes = [part for note in card.notes for part in text_rows(((note, False),), room, SMALL)]
    return [
        Group(words["do-not-move"], (*first, *title, *cells, *notes)),
        Group(card.title, tuple(care_rows(card.care, room))),
    ]
