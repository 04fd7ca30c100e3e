"""The first evening: one page that asks what the first run needs of the shop, the usual things ticked."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Response, request

from runboard.floor.changing.first_evening import FAR, HOURS, USUAL, FirstShop, describe_shop
from runboard.floor.looking.at_hand import book_now
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.shop.numbers import whole_number
from runboard.web.door.pages import page, refusal, see_other, workshop
from runboard.words.sentences import sentence

_HERE = "/shop/first"
_MOST_MINUTES = 60

part = Blueprint("first", __name__)


@part.get(_HERE)
def first() -> Response:
    """The page; a shop that has stations is described already."""
    book = book_now(workshop())
    if book.stations:
        return see_other("/shop")
    return _page({**_usual(), "seen": book.revision})


@part.post(_HERE)
def save_first() -> Response:
    """Put what was said into the book, and go on to the first product."""
    typed = _typed()
    try:
        describe_shop(workshop(), _said(typed), whole_number(request.form.get("seen", ""), 10**9) or 0)
    except Refused as refused:
        return _page(typed, 422, refusal(refused))
    except BookError as error:
        return _page(typed, 422, error.problems[0].sentence)
    return see_other("/plan/products/new")


def _usual() -> dict[str, Any]:
    return {
        "lead": "",
        "friend": "",
        "near": sentence("shop-first-near-usual"),
        "far_room": sentence("shop-first-far-usual"),
        "walk": "1",
        "stations": dict.fromkeys(USUAL, True),
        "far": dict.fromkeys(FAR, True),
        "hours": {"evenings": True, "weekends": True},
    }


def _typed() -> dict[str, Any]:
    form = request.form
    texts = {name: form.get(name, "").strip() for name in ("lead", "friend", "near", "far_room", "walk", "seen")}
    ticked = {
        "stations": {key: f"station.{key}" in form for key in USUAL},
        "far": {key: f"far.{key}" in form for key in USUAL},
        "hours": {key: f"hours.{key}" in form for key in HOURS},
    }
    return {**texts, **ticked}


def _said(typed: Mapping[str, Any]) -> FirstShop:
    return FirstShop(
        lead=typed["lead"],
        friend=typed["friend"],
        rooms=(typed["near"] or sentence("shop-first-near-usual"), typed["far_room"]),
        stations={key: sentence(f"shop-first-{key}") for key, there in typed["stations"].items() if there},
        far=frozenset(key for key, there in typed["far"].items() if there),
        walk_minutes=whole_number(typed["walk"], _MOST_MINUTES) or 0,
        hours=tuple(key for key, on in typed["hours"].items() if on),
    )


def _page(typed: Mapping[str, Any], status: int = 200, problem: str = "") -> Response:
    named = [(key, sentence(f"shop-first-{key}")) for key in USUAL]
    hours = [(key, sentence(f"shop-first-hours-{key}")) for key in HOURS]
    book = book_now(workshop())
    return page("shop/first.html", status=status, typed=typed, problem=problem, stations=named, hours=hours, book=book)
