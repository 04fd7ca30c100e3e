"""A run as a JSON file says it: its form, and what of it is the run's own, checked before anything is stored."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from runboard.floor.changing.run_alone import STAND_INS
from runboard.run.log.corrections import effective, press_ids, press_of
from runboard.run.log.event import Event, event_to_json
from runboard.run.log.form import check_form
from runboard.run.log.kinds import KINDS
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, product_from_json
from runboard.shop.product import Product

VERSION = 1
CORRECTING = ("event undone", "event amended", "entry settled")
# Kinds about a person that are about one run all the same.
_OF_A_RUN = ("span answered", "note written")


@dataclass(frozen=True)
class RunFile:
    """A run as a file says it. ``own`` are the events of the run alone, ``shops`` those of the shop that it was worked in,
    ``stand_ins`` what says again what others changed in it, each with the event that it stands for."""

    run: str
    time_zone: str
    opened: Event
    products: tuple[Product, ...]
    own: tuple[Event, ...]
    shops: tuple[Event, ...]
    stand_ins: tuple[tuple[str, Event], ...]

    @property
    def events(self) -> tuple[Event, ...]:
        return (*self.own, *self.shops)


def is_own(event: Event, run: str) -> bool:
    """Whether an event is one of the run, and nothing else's."""
    return event.run == run and (KINDS[event.kind].subject in ("run", "load", "tray") or event.kind in _OF_A_RUN)


def own_events(events: Sequence[Event], run: str) -> list[Event]:
    """Those of ``events`` that are the run's own: its presses, the corrections that name one of them, and the answers to
    its alerts and calls."""
    named = {event.id for event in events if is_own(event, run)}
    named |= {press_of(key) for key in named}
    return [
        event
        for event in events
        if is_own(event, run)
        or (not event.run and event.kind in CORRECTING and event.get("event") in named)
        or (event.kind.startswith("alert ") and _is_of(str(event.get("alert")), run, named))
    ]


def _is_of(alert: str, run: str, named: set[str]) -> bool:
    kind, *subject = alert.removeprefix("ask again|").split("|")
    return subject[0] in named if kind == "call" and subject else subject[:1] == [run]


def read_run_file(record: object) -> RunFile:
    """What a JSON record says. Refused 'file no run', 'file event wrong', 'file other run'."""
    if not isinstance(record, Mapping) or record.get("runboard_run") != VERSION:
        raise Refused("file no run")
    run, events, stand_ins = record.get("run"), record.get("events"), record.get("stand_ins", [])
    if not isinstance(run, str) or not isinstance(events, list) or not isinstance(stand_ins, list):
        raise Refused("file no run")
    read = tuple(_read_event(event, at) for at, event in enumerate(events, 1))
    standing = tuple(_read_stand_in(said, at, run) for at, said in enumerate(stand_ins, 1))
    opened = next((event for event in read if event.kind == "run opened" and event.run == run), None)
    if opened is None:
        raise Refused("file no run")
    _check_amended(read)
    own = tuple(own_events(read, run))
    kept = {event.id for event in own}
    shops = tuple(event for event in read if event.id not in kept)
    _check_no_other_run(read, shops, run)
    products = tuple(_products(effective(read)))
    return RunFile(run, str(record.get("time_zone", "")), opened, products, own, shops, standing)


def _check_no_other_run(read: Sequence[Event], shops: Sequence[Event], run: str) -> None:
    """Nothing in a run's file is of another run, or corrects what is not in the file."""
    there = {event.id for event in read}
    for number, event in enumerate(read, 1):
        if event.run not in ("", run) or (event.kind == "run opened" and event.id not in there):
            raise Refused("file other run", number=number, run=event.run)
    for event in shops:
        if event.kind in CORRECTING and there.isdisjoint(press_ids(str(event.get("event")))):
            raise Refused("file other run", number=read.index(event) + 1, run=str(event.get("event")))


def _check_amended(read: Sequence[Event]) -> None:
    """What was amended must still be an event: a body without its form would stop the fold."""
    known = {event.id: event for event in read}
    for event in effective(read):
        if event != known[event.id]:
            _read_event({**event_to_json(event), "seq": 0}, list(known).index(event.id) + 1)


def _read_event(record: object, at: int) -> Event:
    try:
        return check_form(record)
    except Refused as refusal:
        if refusal.code != "form":
            raise
        raise Refused("file event wrong", number=at, **refusal.facts) from None


def _products(events: Sequence[Event]) -> Iterator[Product]:
    for number, event in enumerate(events, 1):
        if event.get("product") is not None:
            try:
                yield product_from_json(event.get("product"))
            except BookError as error:
                facts: dict[str, Any] = {"where": "product", "what": error.problems[0].sentence}
                raise Refused("file event wrong", number=number, **facts) from None


def _read_stand_in(record: object, at: int, run: str) -> tuple[str, Event]:
    if not isinstance(record, Mapping) or not isinstance(record.get("for"), str):
        raise Refused("file event wrong", number=at, where="stand_ins", what="must name what it stands for")
    event = _read_event(record.get("event"), at)
    if event.kind not in STAND_INS or event.run not in ("", run):
        raise Refused("file event wrong", number=at, where="stand_ins", what=f"cannot be '{event.kind}'")
    return record["for"], event
