"""Filling cards with groups of rows: a group stays whole where it can, and says so where it goes on."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

from runboard.cards.row import Group, Row

NOTES = 12  # mm that must stay free for a pencil on one card at least
WORTH_DIVIDING = 30  # mm left on a card for which a group that does not fit is divided
_FEWEST = 2  # rows on a last card: one alone is overlooked

Again = Callable[[str], Row]


@dataclass
class Filled:
    """The rows of one card, of which group each is, and the mm that are left."""

    left: int
    rows: list[Row] = field(default_factory=list)
    names: list[str] = field(default_factory=list)

    def add(self, rows: Sequence[Row], name: str = "") -> None:
        self.rows += rows
        self.names += [name] * len(rows)
        self.left -= sum(row.height for row in rows)

    def take(self, at: int) -> tuple[list[Row], list[str]]:
        """Its rows from there on, which are on it no more."""
        rows, names = self.rows[at:], self.names[at:]
        del self.rows[at:], self.names[at:]
        self.left += sum(row.height for row in rows)
        return rows, names


def fill(
    groups: Sequence[Group], first: int, next_: int, again: Again, notes: bool = True, worth: int = WORTH_DIVIDING
) -> list[Filled]:
    """Groups on as many cards as they need. The first has ``first`` mm, each other ``next_``.

    ``again`` makes the heading of a group that goes on; one is divided where ``worth`` mm are left. No row, with what it
    keeps beside it, is higher than ``next_``. With ``notes`` one card at least has room for a pencil. The last of several
    cards has two rows at least, where they fit on it.
    """
    cards = [Filled(first)]
    for group in groups:
        if group.height <= cards[-1].left:
            cards[-1].add(group.rows, group.name)
        elif group.height <= next_ and not _can_begin(group, cards[-1], worth):
            cards.append(Filled(next_))
            cards[-1].add(group.rows, group.name)
        else:
            _divide(group, cards, next_, again)
    if notes and max(card.left for card in cards) < NOTES:
        _move_last(cards, groups[-1], next_)
    if len(cards) > 1 and len(_own(cards[-1])) < _FEWEST:
        _keep_company(cards[-2], cards[-1], again, NOTES if notes else 0)
    return cards


def _own(card: Filled) -> list[Row]:
    """Its rows but for the heading of a group that goes on."""
    return [row for row in card.rows if row.kind != "again"]


def _keep_company(before: Filled, last: Filled, again: Again, spare: int) -> None:
    """Let the last rows of the card before come to the last card, a whole group where there is one."""
    room = last.left + sum(row.height for row in last.rows)
    for at in _breaks(before):
        name = before.names[at]
        goes_on = at > 0 and before.names[at - 1] == name
        heading = [again(name)] if goes_on else []
        wanted = [*heading, *before.rows[at:], *_own(last)]
        if len(wanted) - len(heading) >= _FEWEST and sum(row.height for row in wanted) <= room - spare:
            rows, names = before.take(at)
            kept, kept_names = (
                _own(last),
                [name for row, name in zip(last.rows, last.names, strict=True) if row.kind != "again"],
            )
            last.take(0)
            last.add(heading, name)
            for row, of in zip([*rows, *kept], [*names, *kept_names], strict=True):
                last.add([row], of)
            return


def _breaks(card: Filled) -> Iterator[int]:
    """Where its rows may be parted, the best first: between two groups, then within one; from the end."""
    inner = [at for at in range(len(card.rows) - 1, 0, -1) if not card.rows[at - 1].keep]
    yield from (at for at in inner if card.names[at] != card.names[at - 1])
    yield from (at for at in inner if card.names[at] == card.names[at - 1] and not card.rows[at].core)


def _move_last(cards: list[Filled], last: Group, next_: int) -> None:
    """The last group on a card of its own, where there is room for a pencil too."""
    count = len(last.rows)
    if last.height <= next_ - NOTES and tuple(cards[-1].rows[-count:]) == last.rows and count < len(cards[-1].rows):
        cards[-1].take(len(cards[-1].rows) - count)
        cards.append(Filled(next_))
        cards[-1].add(last.rows, last.name)
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


def _can_begin(group: Group, card: Filled, worth: int) -> bool:
    rest = group.height - _core(group)
    return card.left >= worth and _core(group) + min(rest, 10) <= card.left and rest > 0


def _divide(group: Group, cards: list[Filled], next_: int, again: Again) -> None:
    """Row by row, with the group's name again at the top of each further card."""
    if cards[-1].rows and _core(group) > cards[-1].left:
        cards.append(Filled(next_))
    for at, row in enumerate(group.rows):
        if _needs(group.rows, at) > cards[-1].left:
            cards.append(Filled(next_))
            heading = again(group.name)
            if at and heading.height + _needs(group.rows, at) <= next_:
                cards[-1].add([heading], group.name)
        cards[-1].add([row], group.name)


def _needs(rows: Sequence[Row], at: int) -> int:
    """The height of a row, with those after it without which it may not stand."""
    height = rows[at].height
    while rows[at].keep and at + 1 < len(rows):
        at += 1
        height += rows[at].height
    return height
