"""Rows: what a card is made of. Each knows its height in whole millimetres, so that cards are filled without drawing.

``static/cards/card.css`` gives every kind its places; sizes of type and lines stand there and here alike.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.cards.measure import Line, Run, flow, lines, width

STRIP = 9.0  # the column of marks on the left
MOST_LINES = 6  # in one row of text; a longer text goes on in the next


@dataclass(frozen=True)
class Type:
    """A size of type: points, and the height of a line in mm."""

    points: float
    line: float

    def height(self, lines: int) -> float:
        return lines * self.line


STEP = Type(10, 4.2)
TEXT = Type(9, 4.0)
SMALL = Type(8.5, 3.6)
TINY = Type(8.5, 3.4)
_AGAIN = Type(8.5, 6.0)


@dataclass(frozen=True)
class Row:
    """One row: its kind (a macro of ``templates/cards/rows.html``), height in mm, and what the macro is given.

    ``core`` rows stay together when their group is divided; a ``keep`` row is never the last on a card.
    """

    kind: str
    height: int
    facts: dict[str, Any] = field(default_factory=dict)
    core: bool = False
    keep: bool = False


@dataclass(frozen=True)
class Group:
    """Rows that belong together, and what the group is called where it goes on on another card."""

    name: str
    rows: tuple[Row, ...]

    @property
    def height(self) -> int:
        return sum(row.height for row in self.rows)


def row(kind: str, height: float, core: bool = False, keep: bool = False, **facts: Any) -> Row:
    """A row of at least ``height`` mm."""
    return Row(kind, math.ceil(height - 1e-6), facts, core, keep)


def text_rows(
    runs: Iterable[Run],
    room: float,
    type_: Type = SMALL,
    style: str = "small",
    core: bool = False,
    gap: float = 0.6,
    keep: bool = False,
) -> list[Row]:
    """A text as rows of a few lines each."""
    found = flow(runs, room, type_.points)
    return [
        row("text", type_.height(len(part)) + gap, core, keep, lines=part, style=style)
        for part in in_parts(found, MOST_LINES)
    ]


def title_row(text: str) -> Row:
    """A heading within a card."""
    return row("title", 7, keep=True, text=text)


def again_row(name: str, continued: str, room: float) -> Row:
    """A group's name where it goes on; of a very long one its beginning, since the whole stands before."""
    kept = lines(name, room - width(f"…, {continued}", _AGAIN.points, bold=True), _AGAIN.points, bold=True)
    short = f"{kept[0]}…" if len(kept) > 1 else "".join(kept)
    return row("again", _AGAIN.line, text=f"{short}, {continued}")


def in_parts(lines: Sequence[Line], most: int) -> list[Sequence[Line]]:
    """Lines, so many at a time."""
    return [lines[at : at + most] for at in range(0, len(lines), most)]
