"""The head of a card: the tray's number as large as it goes, its code, and what it belongs to."""

import math
from collections.abc import Sequence
from typing import Any

from runboard.cards import qr
from runboard.cards.measure import beginning, lines, width
from runboard.cards.model import ShelfLabel, Traveller
from runboard.cards.row import SMALL, TEXT, TINY, Type

NAME = Type(11, 4.8)
_BORDER = 2.4  # mm of the code's own white that lie over the margin
_BESIDE = qr.ROOM - _BORDER + 1.5
_CODE = 5.6  # mm under the QR code
_HIGHEST = 36  # mm of names; above this they are set small
_LEAST_BESIDE = 14  # mm beside the number that are worth using
_MOST_BESIDE = 5  # lines there
_BOLD = ("run", "due")
_PICTURE = 17
_FEW = 3  # lines of orders that stand in the head
_MOST_ABOUT = 3
_MOST_FURTHER = 2  # lines of the run's name on a further card
_TITLES = ((2, Type(22, 9.2)), (4, Type(12, 5.4)))  # lines at most, in which type
# Points of the number, by how it fits into how many mm.
_NUMBERS = ((66, 38.0), (54, 38.0), (40, 38.0), (26, 60.0))


def tray_head(
    card: Traveller | ShelfLabel, due: str, orders: Sequence[str], picture: str | None, room: float
) -> tuple[dict[str, Any], int]:
    """The facts of a tray's head, and its height in mm. ``orders`` stand in it if they are few."""
    wide = room - _BESIDE
    number = number_of(card.tray, wide)
    beside = wide - number["wide"] - 2
    about = [line for part in card.about for line in lines(part, beside, TEXT.points)] if beside > _LEAST_BESIDE else []
    if len(about) > _MOST_BESIDE:
        about = []
    below = "" if about else ", ".join(card.about)
    names = _names(card, below, due, orders, wide - (_PICTURE if picture else 0))
    top = math.ceil(max(number["high"], TEXT.height(len(about) + 1) + 2.6))
    height = max(top + names["high"] + 1, qr.ROOM - _BORDER + _CODE, top + _PICTURE if picture else 0)
    facts = {
        "number": number,
        "about": about,
        "beside": beside,
        "names": names,
        "top": top,
        "code": card.link.code,
        "code_small": width(card.link.code, 11, bold=True) > qr.ROOM,
        "qr": qr.svg(card.link.address),
        "picture": picture,
    }
    return facts, math.ceil(height)


def number_of(tray: str, room: float) -> dict[str, Any]:
    """The tray's number: the largest size in which it stands in one line, else small and in several."""
    for points, most in _NUMBERS:
        wide = width(tray, points, bold=True)
        if wide <= min(most, room):
            return {"points": points, "lines": (tray,), "wide": wide, "high": points * 0.29}
    points, line = (14, 6.0) if width(tray, 14, bold=True) <= 2 * room else (9, 4.0)
    text = lines(tray, room, points, bold=True)
    return {"points": points, "lines": text, "wide": room, "high": line * len(text)}


def _names(card: Traveller | ShelfLabel, below: str, due: str, orders: Sequence[str], room: float) -> dict[str, Any]:
    """Run, product, due and few orders. Where they would fill the card they are set small; where even that is too much
    their beginnings stand here, and ``spill`` has what has to be said whole below."""
    ordered = [line for order in orders for line in lines(order, room, SMALL.points)]
    few = ordered if len(ordered) <= _FEW else []
    said = {"run": card.run, "product": card.product if card.product != card.run else "", "about": below, "due": due}
    for name, small, due_, short in ((NAME, SMALL, TEXT, False), (TINY, TINY, TINY, False), (TINY, TINY, TINY, True)):
        types = {"run": name, "product": small, "about": small, "due": due_}
        found = {part: lines(text, room, types[part].points, part in _BOLD) for part, text in said.items()}
        spill = [text for part, text in said.items() if short and len(found[part]) > 1]
        if short:
            found = {part: _beginning(text, room, types[part].points, part in _BOLD) for part, text in said.items()}
        high = sum(types[part].height(len(text)) for part, text in found.items()) + SMALL.height(len(few))
        if high <= _HIGHEST:
            break
    return {**found, "orders": few, "high": high, "tiny": name is TINY, "spill": spill}


def _beginning(text: str, room: float, points: float, bold: bool) -> tuple[str, ...]:
    """A text in one line at most."""
    return (beginning(text, room, points, bold),) if text else ()


def title_head(title: str, about: str, room: float) -> tuple[dict[str, Any], int]:
    """The head of a label or a summary: a title as large as it goes, and a line or three about it. Of what is too long
    the beginning stands here, and ``spill`` has the whole."""
    most, name = next((t for t in _TITLES if len(lines(title, room, t[1].points, True)) <= t[0]), _TITLES[-1])
    found, where = lines(title, room, name.points, bold=True), lines(about, room, TEXT.points)
    spill = [text for text, long in ((title, len(found) > most), (about, len(where) > _MOST_ABOUT)) if long]
    if title in spill:
        found = _beginning(title, room, name.points, True)
    if about in spill:
        where = _beginning(about, room, TEXT.points, False)
    high = name.height(len(found)) + TEXT.height(len(where)) + 2
    facts = {"name": found, "less": name is _TITLES[-1][1], "where": where, "spill": spill}
    return facts, math.ceil(high)


def next_head(tray: str, part: int, parts: int, run: str, code: str, room: float) -> tuple[dict[str, Any], int]:
    """The head of a further card: '4 · 2/2', the run and the code to type."""
    mark = f"{tray} · {part}/{parts}"
    points = next((size for size in (26, 18) if width(mark, size, bold=True) <= room * 0.55), 0)
    wide = width(mark, points, bold=True) if points else 0.0
    marks = (mark,) if points else lines(mark, room, 11, bold=True)
    text = lines(run, room - wide - 3, SMALL.points)
    if len(text) > _MOST_FURTHER:  # the whole stands on the first card
        text = _beginning(run, room - wide - 3, SMALL.points, False)
    high = (0 if points else NAME.height(len(marks))) + max(10 if points else 0, SMALL.height(len(text)) + 4.4) + 1
    return {"mark": marks, "points": points or 11, "run": text, "code": code}, math.ceil(high)
