"""A run as a JSON file says it: its form, checked before anything is stored."""

from collections.abc import Mapping
from dataclasses import dataclass

from runboard.run.event import Event
from runboard.run.form import check_form
from runboard.run.refusal import Refused
from runboard.shop.book import Product
from runboard.shop.book_json import BookError, product_from_json

VERSION = 1


@dataclass(frozen=True)
class RunFile:
    """A run as a file says it, its form checked."""

    run: str
    time_zone: str
    opened: Event
    product: Product
    events: tuple[Event, ...]
    stand_ins: tuple[tuple[str, Event], ...]

    @property
    def ids(self) -> list[str]:
        return [one.id for one in self.events] + [name for source, one in self.stand_ins for name in (source, one.id)]


def read_run_file(record: object) -> RunFile:
    """What a JSON record says. Refused 'file no run', 'file event wrong'."""
    if not isinstance(record, Mapping) or record.get("runboard_run") != VERSION:
        raise Refused("file no run")
    run, events, stand_ins = record.get("run"), record.get("events"), record.get("stand_ins", [])
    if not isinstance(run, str) or not isinstance(events, list) or not isinstance(stand_ins, list):
        raise Refused("file no run")
    read = tuple(_read_event(one, at) for at, one in enumerate(events, 1))
    standing = tuple(_read_stand_in(one, at) for at, one in enumerate(stand_ins, 1))
    opened = next((one for one in read if one.kind == "run opened" and one.run == run), None)
    if opened is None:
        raise Refused("file no run")
    return RunFile(run, str(record.get("time_zone", "")), opened, _read_product(opened), read, standing)


def _read_event(record: object, at: int) -> Event:
    try:
        return check_form(record)
    except Refused as refusal:
        raise Refused("file event wrong", number=at, **refusal.facts) from None


def _read_product(opened: Event) -> Product:
    try:
        return product_from_json(opened.get("product"))
    except BookError as error:
        raise Refused("file event wrong", number=1, where="product", what=error.problems[0].sentence) from None


def _read_stand_in(record: object, at: int) -> tuple[str, Event]:
    if not isinstance(record, Mapping) or not isinstance(record.get("for"), str):
        raise Refused("file event wrong", number=at, where="stand_ins", what="must name what it stands for")
    return record["for"], _read_event(record.get("event"), at)
