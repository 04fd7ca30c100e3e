"""An order laid out: every card in faces of known size, and the faces on sheets."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from runboard.cards.face import Face, Footing, footing
from runboard.cards.heading import next_head, tray_head
from runboard.cards.model import Card, CardOrder, JigLabel, RunSheet, ShelfLabel, Traveller
from runboard.cards.pack import Again, Filled, fill
from runboard.cards.paper import PAPERS, Paper, Size
from runboard.cards.row import STRIP, Group, again_row, row, text_rows, title_row
from runboard.cards.rows_of_label import jig_groups, jig_head, shelf_groups
from runboard.cards.rows_of_run import run_groups, run_head
from runboard.cards.rows_of_work import group_of

_HEADS = 4  # mm of the words over the boxes

Head = tuple[dict[str, Any], int]


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
    top = (row("heads", _HEADS),) if kind == "tray" else ()
    free = int(height) - foot.height - sum(one.height for one in top)

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
    for part, one in enumerate(filled, 1):
        facts, head_height = first if part == 1 else (further(part, len(filled))[0], high)
        name = kind if part == 1 else "further"
        found.append(
            Face(name, size, facts, head_height, (*top, *one.rows), foot, one.left, part, len(filled), kind == "tray")
        )
    return tuple(found)


def _jig(card: JigLabel, size: Size, words: Mapping[str, str]) -> tuple[Face, ...]:
    width, _ = size.room
    return _titled(
        "jig", jig_head(card, width), jig_groups(card, width, words), footing(card.foot, width, bad=False), size, words
    )


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
            tuple(one.rows),
            foot,
            one.left if kind == "run" else 0,
            part,
            len(filled),
            whole=kind == "run",
        )
        for part, one in enumerate(filled, 1)
    )


def _again(words: Mapping[str, str], room: float) -> Again:
    return lambda name: again_row(name, words["continued"], room)
