"""Taking a time that was reckoned from a file into a product's route."""

from collections.abc import Iterator
from datetime import timedelta
from functools import partial
from typing import Any

from runboard.plan.before.kind import Keep, Record
from runboard.run.fold.route import Route, Step
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.durations import minutes_of
from runboard.shop.machines import Reckoned
from runboard.shop.record import to_json


def takes(
    book: Book, product: str | None, reckoned: Reckoned, factor: float = 1.0, **only: str | None
) -> Iterator[Keep]:
    """A press for each step of the product whose machine time a file may say: those at machines, ``only`` those at that
    ``station`` or of that ``step`` where they are named. The route gets the reckoned seconds times the station's own factor; beside
    them stays what was reckoned."""
    found = book.product(product) if product else None
    span = timedelta(seconds=max(1, round(reckoned.seconds * factor)))
    steps = Route(found).steps if found else ()
    meant = only.get("step") if any(step.key == only.get("step") for step in steps) else ""
    for step in steps:
        station = book.station(step.operation.station)
        is_here = only.get("station") in (None, "", step.operation.station) and meant in ("", step.key)
        if found and station is not None and station.machine and is_here:
            facts = {"span": span, "step": step.name, "file": reckoned.name, "link": f"/plan/products/{product}"}
            yield Keep(f"take {step.key}", "take", partial(_put, found.key, step, span, reckoned), facts)


def _put(product: str, step: Step, span: timedelta, reckoned: Reckoned, record: Record) -> None:
    """Refused 'step gone' where the route has no such step any more."""
    where = _named(
        _named(_named(record["products"], product)["operations"], step.operation.key)["passes"], step.pass_.key
    )
    where["machine_minutes"] = minutes_of(span)
    where["reckoned"] = to_json(reckoned)


def _named(things: list[Record], key: str) -> Record:
    for thing in things:
        if thing["key"] == key:
            return thing
    raise Refused("step gone")


def undated(record: Any) -> Iterator[Record]:
    """What of a record was reckoned from a file on a day that is not known, however deep within: an answer knows no day."""
    if isinstance(record, dict):
        if record.get("digest") and record.get("day") == "":
            yield record
        record = list(record.values())
    if isinstance(record, list):
        for value in record:
            yield from undated(value)
