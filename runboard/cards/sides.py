"""A tray's card: one card with two sides. Where that is too little the least important gives way: first the words at a sign
that had them further up, then all of them, then the signs; they stand on the station's sheet; never a step, its boxes or the code."""

from collections.abc import Mapping
from typing import Any

from runboard.cards.boxes import heads_of
from runboard.cards.face import Face, Footing, first_footing, footing
from runboard.cards.heading import next_head, tray_head
from runboard.cards.measure import width
from runboard.cards.model import Foot, Traveller
from runboard.cards.pack import WORTH_DIVIDING, Filled, fill
from runboard.cards.papers import Size
from runboard.cards.row import STEP, STRIP, TEXT, Group, Row, again_row, row, text_rows, title_row
from runboard.cards.rows_of_steps import Signs, steps_of

_HEADS = 4  # mm of the words over the boxes
_BOTH = 2
_WHOLE = 1000  # mm: no operation is divided that could stand whole on the other side
# What is tried, in this order: how cautions stand, and for how many mm left an operation is divided.
_TRIED: tuple[tuple[Signs, int], ...] = (
    ("worded", _WHOLE),
    ("worded", WORTH_DIVIDING),
    ("once", _WHOLE),
    ("once", WORTH_DIVIDING),
    ("once", 10),
    ("bare", _WHOLE),
    ("bare", 10),
    ("none", _WHOLE),
    ("none", 10),
)


def sides(card: Traveller, size: Size, words: Mapping[str, str]) -> tuple[Face, ...]:
    """A tray's card on its two sides; on more, and it says so, where even its steps alone are too many."""
    laying = _Laying(card, size, words)
    for signs, worth in _TRIED:
        filled, top = laying.filled(signs, worth)
        if len(filled) <= _BOTH:
            return laying.faces(filled, top)
    note = tuple(text_rows(((words["on-more-cards"], True),), size.room[0] - STRIP, STEP, "step"))
    return laying.faces(*laying.filled("worded", WORTH_DIVIDING, note))


class _Laying:
    """One card being laid out: what is the same however its rows are filled in."""

    def __init__(self, card: Traveller, size: Size, words: Mapping[str, str]) -> None:
        self.card, self.size, self.words = card, size, words
        self.width, height = size.room
        self.head = tray_head(card, card.due, card.orders, None, self.width)
        first, self.bad = first_footing(card.foot, self.width, int(height) - self.head[1] - _HEADS)
        self.feet = (first, footing(Foot("", card.foot.danger, ""), self.width, bad=False))
        self.free = tuple(int(height) - foot.height - _HEADS for foot in self.feet)

    def filled(self, signs: Signs, worth: int, note: tuple[Row, ...] = ()) -> tuple[list[Filled], tuple[Row, ...]]:
        """Its rows on as many sides as they need, and what stands at the top of each."""
        told = "cautions-on-sheet" if signs in ("bare", "none") else ""
        top = (*note, *(text_rows(((self.words[told], True),), self.width - STRIP, STEP, "step") if told else ()))
        high = sum(line.height for line in top)
        groups = self._groups(signs)

        def fitted(parts: int) -> list[Filled]:
            first, next_ = self.free[0] - self.head[1] - high, self.free[1] - self._further(parts, parts)[1] - high
            return fill(groups, first, next_, self._again, notes=False, worth=worth)

        found = fitted(88)
        return (fitted(888) if len(found) > 99 else found), top

    def faces(self, filled: list[Filled], top: tuple[Row, ...]) -> tuple[Face, ...]:
        """The sides as they are printed."""
        return tuple(self._face(part, len(filled), rows, top) for part, rows in enumerate(filled, 1))

    def _face(self, part: int, parts: int, filled: Filled, top: tuple[Row, ...]) -> Face:
        first = part == 1
        facts, high = self.head if first else self._further(part, parts)
        if not first:
            high = self._further(888 if parts > 99 else 88, 888 if parts > 99 else 88)[1]
        said = f"{self.words['side']} {part}/{parts}"
        if first and width(longer := f"{said}, {self.words['turn-over']}", TEXT.points) <= facts["beside"]:
            said = longer
        heads = row("heads", _HEADS, boxes=heads_of(self.words))
        rows = (*top, heads, *filled.rows)
        foot: Footing = self.feet[0 if first else 1]
        return Face(
            "tray" if first else "further",
            self.size,
            facts,
            high,
            rows,
            foot,
            filled.left,
            part,
            parts,
            True,
            said=said,
        )

    def _further(self, part: int, parts: int) -> tuple[dict[str, Any], int]:
        return next_head(self.card.tray, part, parts, self.card.run, self.card.link.code, self.width)

    def _groups(self, signs: Signs) -> list[Group]:
        card, names = self.card, self.head[0]["names"]
        spilled = [part for text in names["spill"] for part in text_rows(((text, False),), self.width - STRIP)]
        groups = [Group(card.run, (*spilled, *self.bad))]
        said: set[str] = set()
        groups += [steps_of(work, self.width, self.words, signs, said) for work in card.works]
        if card.orders and not names["orders"]:
            lines = [part for line in card.orders for part in text_rows(((line, False),), self.width - STRIP)]
            groups.append(Group(self.words["orders"], (title_row(self.words["orders"]), *lines)))
        return groups

    def _again(self, name: str) -> Row:
        return again_row(name, self.words["continued"], self.width - STRIP)
