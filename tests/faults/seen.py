"""What a phone saw, as the state that it was made from: the JSON of ``/state`` read back into the fold's records.

What the page is not told (the spans of a load, what is long done) is empty here, as it is on the page.
"""

from collections.abc import Mapping
from dataclasses import fields
from datetime import datetime
from functools import cache
from types import NoneType, UnionType
from typing import Any, get_args, get_origin, get_type_hints

from runboard.run.fold.route import Route
from runboard.run.fold.state import (
    Load,
    OrderLine,
    PersonState,
    Revision,
    RunState,
    ShopState,
    StationState,
    Tray,
    Unsettled,
)
from runboard.run.log.event import Event, parse_moment
from runboard.shop.book import Book


def read_state(said: Mapping[str, Any], book: Book) -> ShopState:
    """The state behind the JSON that a page gets."""
    return ShopState(
        people={key: _read(PersonState, one, key=key) for key, one in said["people"].items()},
        stations={key: _read(StationState, one, key=key) for key, one in said["stations"].items()},
        runs={key: _run(key, one, book) for key, one in said["runs"].items()},
        answers=said["answers"],
        unsettled={one["event"]: _unsettled(one) for one in said["unsettled"]},
        asks=said["asks"],
    )


def _run(key: str, said: Mapping[str, Any], book: Book) -> RunState:
    product = book.product(said["product"])
    assert product is not None
    return RunState(
        id=key,
        name=said["name"],
        state=said["state"],
        opened_at=parse_moment(said["opened_at"]),
        product=product.key,
        product_name=said["product_name"],
        revisions=tuple(Revision(one["number"], one["from_tray"], Route(product)) for one in said["routes"]),
        orders=tuple(_read(OrderLine, one) for one in said["orders"]),
        wood=said["wood"],
        trays={tray: _read(Tray, one) for tray, one in said["trays"].items()},
        loads={load: _read(Load, one) for load, one in said["loads"].items()},
        past={load: _read(Load, one) for load, one in said.get("past", {}).items()},
        boards=said.get("boards", {}),
        first_pieces=said.get("first_pieces", {}),
        stopped=said.get("stopped", {}),
        out=_value(Mapping[str, datetime | None], said.get("out", {})),
        given=said.get("given", {}),
        looks=said.get("looks", {}),
    )


def _unsettled(said: Mapping[str, Any]) -> Unsettled:
    at = parse_moment(said["at"])
    source = Event(id=said["event"], kind=said["kind"], at=at, body=said.get("body", {}))
    return _read(Unsettled, {"run": "", "subject": "", "person": "", "facts": {}, **said}, source=source)


def _read(kind: type[Any], said: Mapping[str, Any], **more: Any) -> Any:
    """A record from its JSON; what the record does not have is passed over, and a nought is not written there."""
    hints = _hints(kind)
    noughts = {name: 0 for name, hint in hints.items() if hint is int and name not in said}
    return kind(**noughts, **{name: _value(hints[name], one) for name, one in said.items() if name in hints}, **more)


@cache
def _hints(kind: type) -> dict[str, Any]:
    known = get_type_hints(kind)
    return {one.name: known[one.name] for one in fields(kind)}


def _value(hint: Any, said: Any) -> Any:
    origin, inside = get_origin(hint), get_args(hint)
    if origin is UnionType:
        kind = next(one for one in inside if one is not NoneType)
        return None if said is None else _value(kind, said)
    if origin is tuple:
        kinds = [inside[0]] * len(said) if inside[-1] is ... else inside
        return tuple(_value(kind, one) for kind, one in zip(kinds, said, strict=True))
    if origin is Mapping:
        return {inside[0](key): _value(inside[1], one) for key, one in said.items()}
    if hint is datetime:
        return parse_moment(said)
    return _read(hint, said) if hasattr(hint, "__dataclass_fields__") else said
