"""An order laid out: papers and the cards on them, every card in faces of known size, and the faces on sheets."""

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from runboard.cards.boxes import heads_of
from runboard.cards.face import Face, Footing, Head, first_footing, footing
from runboard.cards.heading import next_head, tray_head
from runboard.cards.measure import lines
from runboard.cards.model import (
    Card,
    CardOrder,
    JigLabel,
    PackingSlip,
    RunSheet,
    ShelfLabel,
    StationSheet,
    Traveller,
)
from runboard.cards.pack import Again, Filled, fill
from runboard.cards.papers import PAPERS, Paper, Size
from runboard.cards.row import STRIP, TINY, Group, again_row, row, text_rows, title_row
from runboard.cards.rows_of_labels import (
    jig_groups,
    jig_head,
    run_groups,
    run_head,
    shelf_groups,
    slip_groups,
    slip_head,
)
from runboard.cards.rows_of_stations import station_again, station_groups, station_head, station_note
from runboard.cards.rows_of_work import group_of
from runboard.cards.sides import sides

_HEADS = 4  # mm of the words over the boxes
_HIGH_FOOT = 40  # mm from which on what to do with a bad piece stands on the first side alone


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
            return _traveller(card, paper.card, words) if card.full else sides(card, paper.card, words)
        case StationSheet():
            return _station(card, paper, words)
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
    top = (row("heads", _HEADS, boxes=heads_of(words)),) if kind == "tray" else ()
    high_top = sum(line.height for line in top)
    foot = below = footing(card.foot, width, bad=False)
    if kind == "tray":
        foot, bad = first_footing(card.foot, width, int(height) - first[1] - high_top)
        groups = [Group(card.run, bad), *groups]
    below = below if foot.height > _HIGH_FOOT else foot
    free, free_below = int(height) - foot.height - high_top, int(height) - below.height - high_top

    def further(part: int, parts: int) -> Head:
        return next_head(card.tray, part, parts, card.run, card.link.code, width)

    def filling(high: int) -> list[Filled]:
        return fill(groups, free - first[1], free_below - high, _again(words, width - STRIP), notes=kind == "tray")

    high, filled = _below_a_head(further, filling)
    found = []
    for part, face in enumerate(filled, 1):
        facts, head_height = first if part == 1 else (further(part, len(filled))[0], high)
        name = kind if part == 1 else "further"
        found.append(
            Face(
                name,
                size,
                facts,
                head_height,
                (*top, *face.rows),
                foot if part == 1 else below,
                face.left,
                part,
                len(filled),
                kind == "tray",
                said=f"{words['card']} {part}/{len(filled)}",
            )
        )
    return tuple(found)


def _below_a_head(
    further: Callable[[int, int], Head], filling: Callable[[int], list[Filled]]
) -> tuple[int, list[Filled]]:
    """The height of a further card's head, and the cards: it may need a line more where they have three digits."""
    high = further(88, 88)[1]
    filled = filling(high)
    if len(filled) > 99:
        high = further(888, 888)[1]
        filled = filling(high)
    return high, filled


def _station(card: StationSheet, paper: Paper, words: Mapping[str, str]) -> tuple[Face, ...]:
    """On a sheet of its own where the paper is larger than a card."""
    size = paper.whole
    width, _ = size.room
    foot = footing(card.foot, width, bad=False)
    later = station_again(card, width), foot
    groups = station_groups(card, width, words)
    bare, told = (
        _titled("station", station_head(card, width), some, foot, size, words, later)
        for some in (groups, [*groups, station_note(card, width)])
    )
    return told if len(told) == len(bare) else bare


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
    kind: str,
    head: Head,
    groups: Sequence[Group],
    foot: Footing,
    size: Size,
    words: Mapping[str, str],
    later: tuple[Head, Footing] | None = None,
) -> tuple[Face, ...]:
    """A label or a summary: the same head and foot on each of its faces, or ``later`` ones on all but the first."""
    width, height = size.room
    spilled = [part for text in head[0]["spill"] for part in text_rows(((text, False),), width)]
    first, further = (head, foot), later or (head, foot)
    free, free_further = (int(height) - low.height - top[1] for top, low in (first, further))
    filled = fill([Group("", tuple(spilled)), *groups], free, free_further, _again(words, width), notes=kind == "run")
    found = []
    for part, face in enumerate(filled, 1):
        (facts, high), low = first if part == 1 else further
        left, whole = face.left if kind == "run" else 0, kind in ("run", "station")
        found.append(Face("titled", size, facts, high, tuple(face.rows), low, left, part, len(filled), whole=whole))
    return tuple(found)


def _again(words: Mapping[str, str], room: float) -> Again:
    return lambda name: again_row(name, words["continued"], room)
