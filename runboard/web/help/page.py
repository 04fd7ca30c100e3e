"""GET /help: what each place of the program does, what to press there first, and what it does not do."""

from collections.abc import Mapping

from flask import Blueprint, Response

from runboard.floor.looking.at_hand import book_now
from runboard.shop import limits
from runboard.web.door.pages import page, workshop

part = Blueprint("help", __name__)

_SIZES: Mapping[str, int] = {
    "pieces": limits.MOST_PIECES,
    "first": limits.MOST_TRAYS_AT_FIRST,
    "trays": limits.MOST_TRAYS,
    "orders": limits.MOST_ORDER_LINES,
    "loads": limits.MOST_LOADS,
    "steps": limits.MOST_STEPS,
    **{each: limits.MOST_IN_BOOK[each] for each in ("stations", "people", "products")},
}


@part.get("/help")
def how() -> Response:
    """The page, the same for everybody who is paired."""
    return page("help/help.html", emergency=book_now(workshop()).emergency, sizes=_SIZES)
