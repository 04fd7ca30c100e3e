"""The state as the page gets it: the same records as JSON, made once for each record that changed."""

import json
from collections.abc import Callable, Collection, Mapping
from dataclasses import fields
from datetime import datetime, timedelta
from functools import cache, lru_cache, partial
from typing import Any

from runboard.run.calls.dues import Due
from runboard.run.care.care import leaves
from runboard.run.care.cautions import REMINDERS, cautions_at, start_points_of
from runboard.run.fold.route import Route, Step
from runboard.run.fold.shown import LONGEST_BODY, MOST_FIRST_PIECES, MOST_SHOWN, newest
from runboard.run.fold.state import Load, PersonState, RunState, ShopState, Tray, Unsettled
from runboard.run.log.event import write_moment
from runboard.run.rules.materials import FINE, judged
from runboard.run.rules.resting import wait_after
from runboard.run.rules.rules import must_be_shown
from runboard.shop.book import Book, Station, may_work_while_watching
from runboard.shop.care import watch_interval


def dump(value: Any) -> str:
    """Compact JSON."""
    return json.dumps(value, separators=(",", ":"), ensure_ascii=False)


def plain(value: Any) -> Any:
    """A value as JSON takes it: moments as ISO text, spans as minutes, records as objects."""
    if isinstance(value, (str, int, float)):  # by far the most
        return value
    if isinstance(value, datetime):
        return write_moment(value)
    if isinstance(value, timedelta):
        return round(value.total_seconds() / 60, 3)
    if isinstance(value, Mapping):
        return {str(key): plain(part) for key, part in value.items()}
    if isinstance(value, (tuple, list)):
        return [plain(part) for part in value]
    if hasattr(value, "__dataclass_fields__"):
        return record(value)
    return value


def record(thing: Any, leave_out: Collection[str] = ()) -> dict[str, Any]:
    """A record's fields as JSON values; what is empty is left out."""
    return {
        name: plain(value)
        for name in _names(thing.__class__)
        if name not in leave_out and (value := getattr(thing, name)) not in (None, "", (), {}, False)
    }


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind))


def load_record(load: Load) -> dict[str, Any]:
    """A begun load; what teaches times stays on the server, but for the event that began each person's open one."""
    began = {span.person: span.event for span in load.spans if span.person and span.ended_at is None}
    return {**record(load, ("spans", "done_at", "set_up")), **({"began": began} if began else {})}


def tray_record(tray: Tray) -> dict[str, Any]:
    return record(tray)


def step_record(book: Book, route: Route, step: Step) -> dict[str, Any]:
    """A step with all that its checklist, setup sheet and first-piece check show: the wait that follows it, how often a look
    is asked for, what it leaves that may heat by itself, its cautions, whether a helper is shown its station first."""
    operation, pass_ = step.operation, step.pass_
    found: dict[str, Any] = {
        "key": step.key,
        "operation": operation.key,
        "name": step.name,
        "station": operation.station,
        "size": pass_.size,
        "attendance": operation.attendance,
        "machine": step.has_machine,
        "minutes": {name: plain(getattr(pass_, name)) for name in ("setup", "loading", "machine", "unloading", "hand")},
        "last_pass": step.last_pass,
    }
    if step.most_a_load is not None:
        found["load_pieces"] = step.most_a_load
    for name in ("checklist", "setup_sheet", "skill", "personal", "finish", "instructions"):
        if getattr(operation, name):
            found[name] = plain(getattr(operation, name))
    every, left, wait = watch_interval(book, operation), leaves(book, route, step), wait_after(book, route, step)
    care, station = cautions_at(book, route, step), book.station(operation.station)
    if station is not None and must_be_shown(station, step):
        found["shown_first"] = True
    if every:
        found["watch_every"] = plain(every)
    if left:
        found["leaves"] = record(left)
    if care:
        found["care"] = [record(caution) for caution in care]
    if wait:
        found["wait"] = record(wait)
    if operation.checks:
        found["checks"] = [record(check) for check in operation.checks]
    if operation.uses:
        found["uses"] = [record(use) for use in operation.uses]
    return found


class Cache:
    """JSON texts of records by identity. Records never change, so a text made once holds as long as its record."""

    def __init__(self) -> None:
        self._texts: dict[int, tuple[Any, str]] = {}
        self._book: Book | None = None
        self._orders: dict[str, tuple[Any, int, str]] = {}

    def text(self, thing: Any, make: Callable[[Any], Any]) -> str:
        """The JSON text that ``make`` gives for ``thing``."""
        kept = self._texts.get(id(thing))
        if kept is not None and kept[0] is thing:
            return kept[1]
        text = dump(make(thing))
        if len(self._texts) > 4000:
            self._texts.clear()
        self._texts[id(thing)] = (thing, text)
        return text

    def for_book(self, book: Book) -> None:
        """What was made for another book is forgotten: a route's cautions follow from its stations and finishes."""
        if self._book is not book:
            self._book = book
            self._texts.clear()

    def orders(self, run: RunState, good: int) -> str:
        """A run's order lines as JSON text; they change only where the lines or the good pieces do."""
        kept = self._orders.get(run.id)
        if kept is None or kept[0] is not run.orders or kept[1] != good:
            kept = self._orders[run.id] = (run.orders, good, dump(orders_record(run)))
        return kept[2]


def run_text(run: RunState, cache: Cache, book: Book) -> str:
    """One run as JSON text; trays and loads that did not change are not written again."""
    cache.for_book(book)
    trays = ",".join(f"{dump(key)}:{cache.text(tray, tray_record)}" for key, tray in run.trays.items())
    loads = ",".join(f"{dump(key)}:{cache.text(load, load_record)}" for key, load in run.loads.items())
    routes = ",".join(
        f'{{"number":{revision.number},"from_tray":{dump(revision.from_tray)},"steps":{cache.text(revision.route, partial(_steps, book=book))}}}'
        for revision in run.revisions
    )
    good = sum(tray.good for tray in run.trays.values())
    head = {
        "name": run.name,
        "state": run.state,
        "product": run.product,
        "product_name": run.product_name,
        "wood": run.wood,
        "opened_at": write_moment(run.opened_at),
    }
    more: dict[str, Any] = {
        "wanted": sum(order.pieces for order in run.orders),
        "started": sum(tray.started for tray in run.trays.values()),
        "good": good,
        "scrap": sum(tray.scrapped for tray in run.trays.values()),
    }
    # What counts alone do not tell: loads taken off, and boards, whose counts may be of some of their trays.
    off = newest({key: load for key, load in run.past.items() if load.state == "off"})
    past = {key: load for key, load in run.past.items() if key in off or key in run.boards}
    if past:
        more["past"] = {key: load_record(load) for key, load in past.items()}
    for name in ("boards", "first_pieces", "stopped", "out", "given", "looks", "materials"):
        value = getattr(run, name)
        if value:
            more[name] = plain(_shown_of_run(name, value))
    woods = dict.fromkeys((run.wood, *(tray.wood for tray in run.trays.values())))
    verdicts = {wood: judged(wood, book.forbidden) for wood in woods if wood}
    barred = {wood: record(verdict) for wood, verdict in verdicts.items() if verdict.says != FINE}
    if barred:
        more["judged"] = barred
    orders = cache.orders(run, good)
    said = f'{dump(head)[:-1]},"orders":{orders},{dump(more)[1:-1]}'
    return f'{said},"routes":[{routes}],"trays":{{{trays}}},"loads":{{{loads}}}}}'


def _shown_of_run(name: str, value: Any) -> Any:
    """As much of a run's field as a screen shows, where senders name its keys."""
    match name:
        case "out":
            return newest(value)
        case "first_pieces":
            return newest(value, MOST_FIRST_PIECES)
        case "materials":
            return value[-MOST_SHOWN:]
    return value


def _steps(route: Route, book: Book) -> list[dict[str, Any]]:
    return [step_record(book, route, step) for step in route.steps]


def orders_record(run: RunState) -> list[dict[str, Any]]:
    """Order lines with how many good pieces each has: allotted late, the earliest due first. Whose text a piece carries is looked
    at only where it is handed over (``run/rules/allotted.py``): a run is as late as its pieces are few, whoever they are for."""
    left = sum(tray.good for tray in run.trays.values())
    good: dict[str, int] = {}
    for order in run.by_due:
        good[order.line] = min(left, order.pieces)
        left -= good[order.line]
    return [{**record(order), "pieces": order.pieces, "good": good[order.line]} for order in run.orders]


def due_record(due: Due) -> dict[str, Any]:
    return {**record(due), **({"said": due.said} if due.said else {})}


def unsettled_record(entry: Unsettled) -> dict[str, Any]:
    """What did not fit, as both sides say it."""
    found = record(entry, ("source",))
    body = dict(entry.source.body or {})
    for name in ("load", "tray", "operation", "station"):
        if getattr(entry.source, name):
            found[name] = getattr(entry.source, name)
    told = plain(body)
    return {**found, "body": told if len(dump(told)) <= LONGEST_BODY else {}}


def book_record(book: Book) -> dict[str, Any]:
    """What the page needs of the book: names, rooms, finishes; and of the catalogue, which text each reminder has."""
    return {
        "shop": {"name": book.name, "zone": book.time_zone, "units": book.units, "emergency": book.emergency},
        "rooms": {room.key: room.name for room in book.rooms},
        "jobs": {job.key: record(job) for job in book.jobs},
        "finishes": {finish.key: record(finish, ("key",)) for finish in book.finishes},
        "forbidden": list(book.forbidden),
        "reminder_texts": plain(REMINDERS),
    }


def people_record(state: ShopState, book: Book) -> dict[str, Any]:
    """Everybody in the book with what the log says of them."""
    found: dict[str, Any] = {}
    for person in book.people:
        if person.removed:
            continue
        seen = state.people.get(person.key)
        found[person.key] = {
            "name": person.name,
            "access": person.access,
            "tidy_up": plain(person.tidy_up),
            **({} if seen is None else _seen(seen, ("key", "name"))),
        }
    guests = {
        key: person for key, person in state.people.items() if key not in found and person.name and person.came_at
    }
    for key, seen in newest(guests).items():
        found[key] = {"access": "guest", "tidy_up": 0, **_seen(seen, ("key",))}
    return found


def _seen(person: PersonState, leave_out: Collection[str]) -> dict[str, Any]:
    found = record(person, ("declined", *leave_out))
    return {**found, "declined": dict(newest(person.declined))} if person.declined else found


@lru_cache(maxsize=4)
def watch_ok(stations: tuple[Station, ...]) -> dict[str, list[str]]:
    """For each station those at which one may work while watching it."""
    book = Book(stations=stations)
    return {
        station.key: [other.key for other in stations if may_work_while_watching(book, station.key, other.key)]
        for station in stations
    }


def stations_record(state: ShopState, book: Book) -> dict[str, Any]:
    """Every station with what is on it."""
    found: dict[str, Any] = {}
    for station in book.stations:
        seen = state.stations.get(station.key)
        found[station.key] = {
            "name": station.name,
            "kind": station.kind,
            "room": station.room,
            "machine": station.machine,
            "cuts": station.cuts,
            "heats": station.heats,
            "dusty": station.dusty,
            "watch_ok": watch_ok(book.stations)[station.key],
            "setups": 0,
            **({} if seen is None else record(seen, ("key", "loaded"))),
        }
        if station.eyewear:
            found[station.key]["eyewear"] = station.eyewear
        start = start_points_of(station.kind)
        if start:
            found[station.key]["start"] = start
        if must_be_shown(station):
            found[station.key]["shown_first"] = True
    return found
