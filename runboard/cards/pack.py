"""Filling cards with groups of rows: a group stays whole where it can, and says so where it goes on."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

from runboard.cards.row import Group, Row

NOTES = 12  # mm that must stay free for a pencil on one card at least
_WORTH_DIVIDING = 30  # mm left on a card for which a group that does not fit is divided

Again = Callable[[str], Row]


@dataclass
class Filled:
    """The rows of one card, and the mm that are left."""

    left: int
    rows: list[Row] = field(default_factory=list)

    def add(self, rows: Sequence[Row]) -> None:
        self.rows += rows
        self.left -= sum(row.height for row in rows)


def fill(groups: Sequence[Group], first: int, next_: int, again: Again, notes: bool = True) -> list[Filled]:
    """Groups on as many cards as they need. The first has ``first`` mm, each other ``next_``.

    ``again`` makes the heading of a group that goes on. No row, with what it keeps beside it, is higher than
    ``next_``. With ``notes`` one card at least has room for a pencil.
    """
    cards = [Filled(first)]
    for group in groups:
        if group.height <= cards[-1].left:
            cards[-1].add(group.rows)
        elif group.height <= next_ and not _can_begin(group, cards[-1]):
            cards.append(Filled(next_))
            cards[-1].add(group.rows)
        else:
            _divide(group, cards, next_, again)
    if notes and max(card.left for card in cards) < NOTES:
        _move_last(cards, groups[-1], next_)
    return cards


def _move_last(cards: list[Filled], last: Group, next_: int) -> None:
    """The last group on a card of its own, where there is room for a pencil too."""
    count = len(last.rows)
    if last.height <= next_ - NOTES and tuple(cards[-1].rows[-count:]) == last.rows and count < len(cards[-1].rows):
        del cards[-1].rows[-count:]
        cards[-1].left += last.height
        cards.append(Filled(next_))
        cards[-1].add(last.rows)
    else:
        cards.append(Filled(next_))


def _core(group: Group) -> int:
    """The height of what must stay together at the beginning of a group: the step and its cautions."""
    height = 0
    for row in group.rows:
        if not row.core:
            break
        height += row.height
    return height


def _can_begin(group: Group, card: Filled) -> bool:
    rest = group.height - _core(group)
    return card.left >= _WORTH_DIVIDING and _core(group) + min(rest, 10) <= card.left and rest > 0


def _divide(group: Group, cards: list[Filled], next_: int, again: Again) -> None:
    """Row by row, with the group's name again at the top of each further card."""
    if cards[-1].rows and _core(group) > cards[-1].left:
        cards.append(Filled(next_))
    for at, row in enumerate(group.rows):
        if _needs(group.rows, at) > cards[-1].left:
            cards.append(Filled(next_))
            heading = again(group.name)
            if at and heading.height + _needs(group.rows, at) <= next_:
                cards[-1].add([heading])
        cards[-1].add([row])


def _needs(rows: Sequence[Row], at: int) -> int:
    """The height of a row, with those after it without which it may not stand."""
    height = rows[at].height
    while rows[at].keep and at + 1 < len(rows):
        at += 1
        height += rows[at].height
    return height
