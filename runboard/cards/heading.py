"""The head of a card: the tray's number as large as it goes, its code, and what it belongs to."""

import math
from collections.abc import Sequence
from typing import Any

from runboard.cards import qr
from runboard.cards.measure import lines, width
from runboard.cards.model import Link
from runboard.cards.row import SMALL, TEXT, TINY, Type

NAME = Type(11, 4.8)
_BESIDE = qr.ROOM + 2
_CODE = 6  # mm under the QR code
_HIGHEST = 62  # above this, names are set small
_PICTURE = 17
# Points of the number, by how it fits into how many mm.
_NUMBERS = ((66, 38.0), (54, 38.0), (40, 38.0), (26, 60.0))


def tray_head(
    tray: str, run: str, product: str, about: Sequence[str], due: str, link: Link, picture: str | None, room: float
) -> tuple[dict[str, Any], int]:
    """The facts of a tray's head, and its height in mm."""
    wide = room - _BESIDE
    number = number_of(tray, wide)
    beside = wide - number["wide"] - 2
    about_lines = [line for part in about for line in lines(part, beside, TEXT.points)] if beside > 14 else []
    below = "" if about_lines else ", ".join(about)
    column = wide - (_PICTURE if picture else 0)
    names = _names(run, product, below, due, column)
    top = max(number["high"], TEXT.height(len(about_lines) + 1) + 2.6)
    height = max(top + names["high"] + 1, qr.ROOM + _CODE, top + _PICTURE if picture else 0)
    facts = {
        "number": number,
        "about": about_lines,
        "names": names,
        "top": math.ceil(top),
        "code": link.code,
        "code_small": width(link.code, 11, bold=True) > qr.ROOM,
        "qr": qr.svg(link.address),
        "picture": picture,
        "tall": len(about_lines) > 3,
    }
    return facts, math.ceil(height)


def number_of(tray: str, room: float) -> dict[str, Any]:
    """The tray's number: the largest size in which it stands in one line, else small and in several."""
    for points, most in _NUMBERS:
        wide = width(tray, points, bold=True)
        if wide <= min(most, room):
            return {"points": points, "lines": (tray,), "wide": wide, "high": points * 0.29}
    text = lines(tray, room, 14, bold=True)
    return {"points": 14, "lines": text, "wide": room, "high": 6 * len(text)}


def _names(run: str, product: str, below: str, due: str, room: float) -> dict[str, Any]:
    """Run, product and due; in the smallest type where they would fill the card."""
    for name, small in ((NAME, SMALL), (TINY, TINY)):
        set_ = {
            "run": lines(run, room, name.points, bold=True),
            "product": lines(product if product != run else "", room, small.points),
            "about": lines(below, room, small.points),
            "due": lines(due, room, TEXT.points, bold=True),
        }
        high = name.height(len(set_["run"])) + TEXT.height(len(set_["due"]))
        high += small.height(len(set_["product"]) + len(set_["about"]))
        if high <= _HIGHEST:
            break
    return {**set_, "high": high, "tiny": name is TINY}


def next_head(tray: str, part: int, parts: int, run: str, code: str, room: float) -> tuple[dict[str, Any], int]:
    """The head of a further card: '4 · 2/2', the run and the code to type."""
    mark = f"{tray} · {part}/{parts}"
    points = next((one for one in (26, 18) if width(mark, one, bold=True) <= room * 0.55), 0)
    wide = width(mark, points, bold=True) if points else 0.0
    marks = (mark,) if points else lines(mark, room, 11, bold=True)
    text = lines(run, room - wide - 3, SMALL.points)
    high = (0 if points else NAME.height(len(marks))) + max(10 if points else 0, SMALL.height(len(text)) + 4.4) + 1
    return {"mark": marks, "points": points or 11, "run": text, "code": code}, math.ceil(high)
