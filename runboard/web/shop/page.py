"""The Shop screen: the book's own things through ordinary forms, and the whole book as a file."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any
from urllib.parse import urlencode

from flask import Blueprint, Response, abort, request

from runboard.floor.changing.first_evening import first_steps
from runboard.floor.changing.shop_book import book_record, record_at_work
from runboard.floor.letting_in.devices import devices_shown
from runboard.floor.letting_in.guests import guests
from runboard.floor.letting_in.travellers import hours_in_words
from runboard.floor.looking.at_hand import book_now
from runboard.floor.pressing.access import LEAD
from runboard.shop.book import Book
from runboard.shop.common_screws import begin_screw, common_screws
from runboard.shop.finish import begin_from, common_finishes
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.sessions import access, asking_device, door
from runboard.web.door.ways import could_be_secure, first_page, ways
from runboard.web.fittings import fittings
from runboard.web.forms.asked import Record, choice_word
from runboard.web.forms.field import Section
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.saving import save_form
from runboard.web.forms.shop import (
    THINGS,
    head_form,
    limits_form,
    limits_said,
    limits_shown,
    money_form,
    money_said,
    name_in,
    put_thing,
    take_out,
    thing_form,
    thing_shown,
)
from runboard.web.shop.backup import copies_shown, folder_shown
from runboard.web.shop.friend import friend_with_a_phone
from runboard.web.shop.jigs import jigs_on, put_back_of
from runboard.web.shop.outside import channels_shown
from runboard.web.shop.push import push_troubles
from runboard.web.shop.rows import lists_of
from runboard.words.sentences import sentence

Change = Callable[[Record], None]

part = Blueprint("shop", __name__)


@dataclass(frozen=True)
class _Sheet:
    """A form of what the book has once, and how it shows and says it."""

    title: str
    form: Callable[[Record], Sequence[Section]]
    shown: Callable[[Record], Record] = dict
    said: Callable[[Record], Record] = dict


_SHEETS = {
    "about": _Sheet("shop-title", head_form),
    "limits": _Sheet("shop-limits", limits_form, limits_shown, limits_said),
    "money": _Sheet("shop-money", money_form, said=money_said),
}


@part.get("/shop")
def shop() -> Response:
    """Everything that the shop has, each to be looked at and changed."""
    record = record_at_work(workshop())
    return page(
        "shop/shop.html",
        book=record,
        lists=lists_of(record, request.args.get("in", "")),
        kept=_kept(record),
        late=_late(record["late_counts"]),
        first_steps=first_steps(workshop()),
        money=_money(record["money"]),
        channels=channels_shown(),
        push_device=asking_device(),
        push_troubles=push_troubles(),
        copies=copies_shown(),
        folder=folder_shown(),
        network=ways(),
        first_page=first_page(),
        could_be_secure=could_be_secure(),
        friend=friend_with_a_phone(),
        **_let_in(),
    )


def _let_in() -> Record:
    """Devices and helpers, for a lead where somebody has to pair; else none."""
    shut = door() if access() == LEAD else None
    return {
        "devices": devices_shown(shut) if shut else None,
        "helpers": list(guests(workshop(), shut)) if shut else None,
        "hours": hours_in_words(fittings().settings),
    }


def _money(money: Record) -> Record:
    return {**money, **{name: f"{100 * money[name]:g}" for name in ("margin", "fee_share")}}


def _late(counts: str) -> str:
    return choice_word(Book, "late_counts", counts)


@dataclass(frozen=True)
class _Kept:
    """What was saved, and where it stands on this page."""

    text: str
    link: str = ""
    is_person: bool = False


def _kept(record: Record) -> _Kept | None:
    """What the form saved that led back here, as the address says."""
    sheet, thing, key = (request.args.get(name) for name in ("sheet", "in", "saved"))
    if sheet in _SHEETS:
        return _Kept(sentence("shop-kept-sheet", {"title": sentence(_SHEETS[sheet].title)}))
    if thing is None or thing not in THINGS or key is None:
        return None
    title = THINGS[thing].title
    if not key:
        return _Kept(sentence("shop-kept-removed", {"title": title}))
    name = next((name_in(thing, record, each) for each in record[thing] if each["key"] == key), None)
    return (
        None
        if name is None
        else _Kept(sentence("shop-kept", {"name": name, "title": title}), f"#{thing}.{key}", thing == "people")
    )


@part.get("/shop/<any(about,limits,money):about>")
def about(about: str) -> Response:
    """The form of the shop's name, zone, units and emergency number, of forbidden materials and the rule for noise, or of
    money."""
    return _sheet_page(about, _sheet(about, book_record(workshop())))


@part.post("/shop/<any(about,limits,money):about>")
def save_about(about: str) -> Response:
    """Save them."""
    sheet = _SHEETS[about]
    form = posted(sheet.form(book_record(workshop())), request.form)

    def change(record: Record) -> None:
        record.update(sheet.said(form.record()))

    if save_form(form, change, form.part_of, "", lambda record: _sheet(about, record)):
        return see_other(f"/shop?sheet={about}")
    return _sheet_page(about, form, 422)


def _sheet(about: str, record: Record) -> Form:
    form = shown(_SHEETS[about].form(record), _SHEETS[about].shown(record))
    form.seen = record["revision"]
    return form


def _sheet_page(about: str, form: Form, status: int = 200) -> Response:
    return page(
        "shop/form.html", status=status, form=form, title=sentence(_SHEETS[about].title), action=f"/shop/{about}"
    )


@part.get("/shop/<thing>/<key>")
def one(thing: str, key: str) -> Response:
    """The form of one thing; ``new`` for another one."""
    record, key = _known(thing, key)
    return _thing_page(thing, key, _thing(thing, key, record), record)


@part.post("/shop/<thing>/<key>")
def save_one(thing: str, key: str) -> Response:
    """Save it. What is wrong comes back at its field, with all that was typed."""
    record, key = _known(thing, key)
    form = posted(thing_form(thing, record, key), request.form, record["units"])

    put: list[str] = []

    def change(latest: Record) -> None:
        put.append(latest[thing][put_thing(thing, latest, key, form.record())]["key"])

    return _saved(thing, key, form, record, change, f"{thing}[{_place(thing, key, record)}]", put)


@part.post("/shop/<thing>/<key>/remove")
def remove_one(thing: str, key: str) -> Response:
    """Take it out of the book; what still needs it is said."""
    record, key = _known(thing, key)
    form = _thing(thing, key, record)

    def change(latest: Record) -> None:
        take_out(thing, latest, key)

    return _saved(thing, key, form, record, change, "nothing here", [])


def _saved(
    thing: str, key: str, form: Form, record: Record, change: Change, prefix: str, put: Sequence[str]
) -> Response:
    """Back to the list; ``put`` holds the key of what was put there by then."""

    def shown_of(latest: Record) -> object:
        return thing_shown(thing, latest, key) if key else None

    if save_form(form, change, shown_of, prefix, lambda latest: _thing(thing, key, latest)):
        return see_other(f"/shop?{urlencode({'in': thing, 'saved': put[-1] if put else ''})}")
    return _thing_page(thing, key, form, record, 422)


def _place(thing: str, key: str, record: Record) -> int:
    keys = [each["key"] for each in record[thing]]
    return keys.index(key) if key else len(keys)


def _thing(thing: str, key: str, record: Record) -> Form:
    said = thing_shown(thing, record, key)
    if thing in _USUAL and not key:
        said |= _USUAL[thing].begin(request.args.get("like", ""))
    form = shown(thing_form(thing, record, key), said, record["units"])
    form.seen = record["revision"]
    return form


def _thing_page(thing: str, key: str, form: Form, record: Record, status: int = 200) -> Response:
    called = (name_in(thing, record, each) for each in record[thing] if each["key"] == key)
    name = next(called, f"New {THINGS[thing].one}")
    context = {"form": form, "title": name, "thing": THINGS[thing], "key": key, **_kinds(thing, key)}
    context["back"] = put_back_of(book_now(workshop()), key) if thing == "jigs" else None
    context["jigs"] = jigs_on(book_now(workshop()), key) if thing == "stations" else ()
    context["friend"] = friend_with_a_phone() if thing == "people" else None
    return page("shop/form.html", status=status, action=f"/shop/{thing}/{key or 'new'}", **context)


@dataclass(frozen=True)
class _Usual:
    """Kinds of a thing that a new one may begin with, and with which figures."""

    kinds: Callable[[], Mapping[str, Mapping[str, Any]]]
    begin: Callable[[str], Record]


_USUAL = {"finishes": _Usual(common_finishes, begin_from), "screws": _Usual(common_screws, begin_screw)}


def _kinds(thing: str, key: str) -> Record:
    """The kinds that a new one may begin with, or the one that it began with."""
    if thing not in _USUAL or key or request.method == "POST":
        return {}
    kinds = _USUAL[thing].kinds()
    begun = kinds.get(request.args.get("like", ""))
    return {"begun": begun} if begun else {"kinds": list(kinds.values())}


def _known(thing: str, key: str) -> tuple[Record, str]:
    """The record, and the key ('' for a new one); 404 for what is not in the book."""
    record = book_record(workshop())
    if thing not in THINGS:
        abort(404)
    if key == "new":
        return record, ""
    if not any(each["key"] == key and not each.get("removed") for each in record[thing]):
        abort(404)
    return record, key
