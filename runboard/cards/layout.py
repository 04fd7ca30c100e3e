"""An order laid out: papers and the cards on them, every card in faces of known size, and the faces on sheets."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any

from runboard.cards.boxes import heads_of
from runboard.cards.heading import next_head, tray_head
from runboard.cards.measure import lines
from runboard.cards.model import Card, CardOrder, Foot, JigLabel, PackingSlip, RunSheet, ShelfLabel, Traveller
from runboard.cards.pack import Again, Filled, fill
from runboard.cards.row import SMALL, STRIP, TINY, Group, Row, Type, again_row, row, text_rows, title_row
from runboard.cards.rows_of_labels import (
    jig_groups,
    jig_head,
    run_groups,
    run_head,
    shelf_groups,
    slip_groups,
    slip_head,
)
from runboard.cards.rows_of_work import group_of

MARGIN = 5  # white on each side of a card, so that a cut a little off takes nothing
DANGER = Type(8.5, 3.7)
_HIGHEST = 22  # mm beside each other
_FRAME = 2.2  # the danger line's frame and padding
_HEADS = 4  # mm of the words over the boxes
Head = tuple[dict[str, Any], int]


# papers, in millimetres


@dataclass(frozen=True)
class Paper:
    """A sheet, and how many cards of what size it takes, in rows from the top left."""

    key: str
    width: float
    height: float
    columns: int = 1
    rows: int = 1

    @property
    def places(self) -> int:
        return self.columns * self.rows

    @property
    def card(self) -> "Size":
        return Size(self.width / self.columns, self.height / self.rows)

    @property
    def whole(self) -> "Size":
        return Size(self.width, self.height)


@dataclass(frozen=True)
class Size:
    """The size of one card. ``room`` is what its margins leave."""

    width: float
    height: float

    @property
    def room(self) -> tuple[float, float]:
        return self.width - 2 * MARGIN, self.height - 2 * MARGIN


PAPERS: Mapping[str, Paper] = MappingProxyType(
    {
        "a6": Paper("a6", 105, 148),
        "4x6": Paper("4x6", 101.6, 152.4),
        "a4": Paper("a4", 210, 297, 2, 2),
        "letter": Paper("letter", 215.9, 279.4, 2, 2),
    }
)


# one card as it is printed


@dataclass(frozen=True)
class Footing:
    """The foot in lines, and its height in mm. ``stacked``: one above the other; ``tiny``: in the smallest type."""

    bad: tuple[str, ...]
    danger: tuple[str, ...]
    print: tuple[str, ...]
    stacked: bool
    tiny: bool
    height: int


@dataclass(frozen=True)
class Face:
    """One printed card. ``head`` is what its macro is given, ``head_height`` in mm; ``left`` is the room for a pencil.
    ``part`` of ``parts`` where one card does not hold it all. ``strip``: its rows leave the column of marks free.
    ``whole`` faces take a sheet of their own."""

    kind: str
    size: Size
    head: dict[str, Any]
    head_height: int
    rows: tuple[Row, ...]
    foot: Footing
    left: int
    part: int = 1
    parts: int = 1
    strip: bool = False
    whole: bool = False


def footing(foot: Foot, room: float, bad: bool = True) -> Footing:
    """The foot set in ``room`` mm of width. ``bad``: with what to do with a bad piece, beside the framed line or above
    it, whichever is lower; small where names in them are long."""
    print_ = lines(foot.print, room, TINY.points)
    for small, danger in ((SMALL, DANGER), (TINY, TINY)):
        half = (room / 2 - 1) if bad else room
        beside = _set(foot, bad, half, half, small, danger)
        above = _set(foot, bad, room, room, small, danger)
        high = max(small.height(len(beside[0])), danger.height(len(beside[1])) + _FRAME)
        stacked = small.height(len(above[0])) + danger.height(len(above[1])) + _FRAME + 0.5
        if min(high, stacked) <= _HIGHEST:
            break
    said = above if stacked < high else beside
    height = math.ceil(min(high, stacked) + TINY.height(len(print_)) + 1)
    return Footing(*said, print_, stacked < high, danger is TINY, height)


def _set(
    foot: Foot, bad: bool, left: float, right: float, small: Type, danger: Type
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    said = lines(foot.bad, left, small.points) if bad else ()
    return said, lines(foot.danger, right - 3, danger.points, bold=True)


# an order


@dataclass(frozen=True)
class Sheet:
    """One sheet of paper with its faces; ``cut`` where they are cut apart."""

    faces: tuple[Face, ...]
    cut: bool


def sheets(order: CardOrder) -> tuple[Sheet, ...]:
    """The sheets of an order, in its order. Raises ``KeyError`` for a paper that there is not."""
    paper = PAPERS[order.paper]
    found: list[Sheet] = []
    for card in order.cards:
        for face in faces(card, paper, order.words):
            last = found[-1] if found else None
            if last is None or face.whole or not last.cut or len(last.faces) == paper.places:
                found.append(Sheet((face,), cut=paper.places > 1 and not face.whole))
            else:
                found[-1] = replace(last, faces=(*last.faces, face))
    return tuple(found)


def faces(card: Card, paper: Paper, words: Mapping[str, str]) -> tuple[Face, ...]:
    """One card on as many faces as it needs."""
    match card:
        case Traveller():
            return _traveller(card, paper.card, words)
        case JigLabel():
            return _jig(card, paper.card, words)
        case ShelfLabel():
            return _shelf(card, paper.card, words)
        case RunSheet():
            return _run(card, paper, words)
        case PackingSlip():
            return _slip(card, paper.card, words)


def _traveller(card: Traveller, size: Size, words: Mapping[str, str]) -> tuple[Face, ...]:
    width, _ = size.room
    head = tray_head(card, card.due, card.orders, card.picture, width)
    spilled = [part for text in head[0]["names"]["spill"] for part in text_rows(((text, False),), width - STRIP)]
    groups = [Group(card.run, tuple(spilled)), *(group_of(work, width, words) for work in card.works)]
    if card.orders and not head[0]["names"]["orders"]:
        lines = [part for line in card.orders for part in text_rows(((line, False),), width - STRIP)]
        groups.append(Group(words["orders"], (title_row(words["orders"]), *lines)))
    return _of_tray("tray", card, head, groups, size, words)


def _shelf(card: ShelfLabel, size: Size, words: Mapping[str, str]) -> tuple[Face, ...]:
    width, _ = size.room
    head = tray_head(card, "", (), None, width)
    spilled = [part for text in head[0]["names"]["spill"] for part in text_rows(((text, False),), width)]
    groups = [*shelf_groups(card, width, words), Group(card.run, tuple(spilled))]
    return _of_tray("shelf", card, head, groups, size, words)


def _of_tray(
    kind: str, card: Traveller | ShelfLabel, first: Head, groups: Sequence[Group], size: Size, words: Mapping[str, str]
) -> tuple[Face, ...]:
    """A tray's card: its further faces have a small head, with which of how many they are."""
    width, height = size.room
    foot = footing(card.foot, width, bad=kind == "tray")
    top = (row("heads", _HEADS, boxes=heads_of(words)),) if kind == "tray" else ()
    free = int(height) - foot.height - sum(line.height for line in top)

    def further(part: int, parts: int) -> Head:
        return next_head(card.tray, part, parts, card.run, card.link.code, width)

    def filling(high: int) -> list[Filled]:
        return fill(groups, free - first[1], free - high, _again(words, width - STRIP), notes=kind == "tray")

    # The head of a further card may need a line more where the cards have three digits.
    high = further(88, 88)[1]
    filled = filling(high)
    if len(filled) > 99:
        high = further(888, 888)[1]
        filled = filling(high)
    found = []
    for part, face in enumerate(filled, 1):
        facts, head_height = first if part == 1 else (further(part, len(filled))[0], high)
        name = kind if part == 1 else "further"
        found.append(
            Face(name, size, facts, head_height, (*top, *face.rows), foot, face.left, part, len(filled), kind == "tray")
        )
    return tuple(found)


def _jig(card: JigLabel, size: Size, words: Mapping[str, str]) -> tuple[Face, ...]:
    width, _ = size.room
    return _titled(
        "jig", jig_head(card, width), jig_groups(card, width, words), footing(card.foot, width, bad=False), size, words
    )


def _slip(card: PackingSlip, size: Size, words: Mapping[str, str]) -> tuple[Face, ...]:
    width, _ = size.room
    foot = lines(card.foot.print, width, TINY.points)
    footing = Footing((), (), foot, False, False, math.ceil(TINY.height(len(foot)) + 1))
    return _titled("slip", slip_head(card, width), slip_groups(card, width, words), footing, size, words)


def _run(card: RunSheet, paper: Paper, words: Mapping[str, str]) -> tuple[Face, ...]:
    size = paper.whole
    width, _ = size.room
    return _titled(
        "run", run_head(card, width), run_groups(card, width, words), footing(card.foot, width, bad=False), size, words
    )


def _titled(
    kind: str, head: Head, groups: Sequence[Group], foot: Footing, size: Size, words: Mapping[str, str]
) -> tuple[Face, ...]:
    """A label or a summary: the same head on each of its faces."""
    facts, high = head
    spilled = [part for text in facts["spill"] for part in text_rows(((text, False),), size.room[0])]
    groups = [Group("", tuple(spilled)), *groups]
    free = int(size.room[1]) - foot.height - high
    filled = fill(groups, free, free, _again(words, size.room[0]), notes=kind == "run")
    return tuple(
        Face(
            "titled",
            size,
            facts,
            high,
            tuple(face.rows),
            foot,
            face.left if kind == "run" else 0,
            part,
            len(filled),
            whole=kind == "run",
        )
        for part, face in enumerate(filled, 1)
    )


def _again(words: Mapping[str, str], room: float) -> Again:
    return lambda name: again_row(name, words["continued"], room)
