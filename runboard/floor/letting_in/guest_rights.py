"""What a guest's press may say: their own doing, at the current operation of their one tray."""

from collections.abc import Callable, Mapping
from typing import Any

from runboard.floor.letting_in.helper import TrayWork, is_listed, list_of, places_of, work_at
from runboard.run.fold.state import ShopState
from runboard.run.fold.table import kinds_of
from runboard.run.log.corrections import named_by
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.shop.book import Book

# What a guest may answer: alerts of the load that they are at.
_ALERTS = ("machine end", "looks ended", "watch check", "nobody near")
_SAID = ("note written", "lead called")


class NotForGuest(Refused):
    """A refusal that only a guest meets: its sentence is in the catalogue of the helper's page."""


def guest_person(device_id: str) -> str:
    """The key of the person that a guest's device is."""
    return f"guest-{device_id[:8]}"


def name_of(state: ShopState, book: Book, person: str) -> str:
    """What somebody is called, in the book or as a guest; '' where nobody knows any more."""
    known, came = book.person(person), state.people.get(person)
    return known.name if known and not known.removed else came.name if came else ""


def _lead_of(book: Book) -> str:
    """Whom a guest asks: the same as stands on the tray's card."""
    return next((one.name for one in book.people if one.access == "lead" and not one.removed), "")


def check_guest(
    state: ShopState, book: Book, event: Event, device: str, at: tuple[str, str], arrived: Mapping[str, Event]
) -> None:
    """Refused where this device may not make the event: it works ``at`` (run, tray).

    The kind was looked at before, by the table of who may make what.
    """
    if event.person != guest_person(device) or event.basis != "tapped" or event.entered_by:
        raise NotForGuest("not yourself")
    if event.kind == "event undone":
        return _check_undo(event, device, arrived)
    if event.run not in ("", at[0]) or event.tray not in ("", at[1]):
        raise NotForGuest("not your tray", tray=at[1])
    work = work_at(state, *at)
    if work is None:
        raise NotForGuest("not your tray", tray=at[1])
    if event.kind in ("alert answered", "alert claimed"):
        return _check_alert(work, event)
    if event.kind in _SAID:
        return _check_said(work, event)
    _check_work(work, event)
    _CHECKS.get(event.kind, _nothing_more)(state, book, work, event)
    return None


def _check_undo(event: Event, device: str, arrived: Mapping[str, Event]) -> None:
    if any(event.device != device for event in named_by(event, arrived)):
        raise NotForGuest("not your press")


def _check_alert(work: TrayWork, event: Event) -> None:
    kind, *subject = str(event.get("alert")).split("|")
    load = work.run.loads.get(subject[1]) if len(subject) > 1 else None
    own = load is not None and set(load.pieces) == {work.tray.id}
    if kind not in _ALERTS or subject[0] != work.run.id or not own:
        raise NotForGuest("not your tray", tray=work.tray.id)


def _check_said(work: TrayWork, event: Event) -> None:
    if (event.run, event.tray) != (work.run.id, work.tray.id) or event.load not in ("", work.load_id):
        raise NotForGuest("not your tray", tray=work.tray.id)


def _check_work(work: TrayWork, event: Event) -> None:
    """The operation, the station and the load are the tray's own and current ones."""
    if work.step is None:
        raise NotForGuest("tray through", tray=work.tray.id)
    if event.operation not in ("", work.step.key) or event.station not in ("", work.step.operation.station):
        raise NotForGuest("not this step", step=work.step.name, tray=work.tray.id)
    if event.kind in (*kinds_of("load"), *kinds_of("tray")) and event.load != work.load_id:
        raise NotForGuest("not this step", step=work.step.name, tray=work.tray.id)
    if event.load and work.beside:
        raise NotForGuest("shared load", step=work.step.name, tray=work.tray.id)
    for field in ("pieces", "counts", "places"):
        if not set(event.get(field) or {}) <= {work.tray.id}:
            raise NotForGuest("not your tray", tray=work.tray.id)
    if event.kind not in ("load started", "checklist ticked", "first piece checked") and work.load is None:
        raise NotForGuest("not begun", step=work.step.name)


def _check_start(state: ShopState, book: Book, work: TrayWork, event: Event) -> None:
    to = work.given.get("to")
    if to and to != event.person:
        raise NotForGuest("given to another", person=name_of(state, book, to) or 0, lead=_lead_of(book) or 0)
    if event.get("early"):  # whether a wait is cut short is not asked of somebody who sees the job for the first time
        raise NotForGuest("not early", tray=work.tray.id)
    said: Mapping[str, Any] = event.get("places") or {}
    if said and said != places_of(work):
        raise NotForGuest("texts changed", tray=work.tray.id)


def _check_machine(state: ShopState, book: Book, work: TrayWork, event: Event) -> None:
    step = work.step
    if step is None or not list_of(book, step):
        return
    if not is_listed(state, book, step.operation.station, event.person, event.moment):
        raise NotForGuest("list first", step=step.name)


def _check_list(state: ShopState, book: Book, work: TrayWork, event: Event) -> None:
    if work.step and event.station != work.step.operation.station:
        raise NotForGuest("not this step", step=work.step.name, tray=work.tray.id)


def _check_first_piece(state: ShopState, book: Book, work: TrayWork, event: Event) -> None:
    if work.step and (event.run, event.operation) != (work.run.id, work.step.key):
        raise NotForGuest("not this step", step=work.step.name, tray=work.tray.id)


def _check_watch(state: ShopState, book: Book, work: TrayWork, event: Event) -> None:
    """Nobody watches a machine that they were not shown."""
    seen = state.people.get(event.person)
    station = book.station(work.step.operation.station) if work.step else None
    if station is not None and (seen is None or station.key not in seen.shown):
        raise Refused("not shown", station=station.name, person=seen.name if seen else "")


def _nothing_more(state: ShopState, book: Book, work: TrayWork, event: Event) -> None:
    """What was looked at for every press is enough."""


_CHECKS: Mapping[str, Callable[[ShopState, Book, TrayWork, Event], None]] = {
    "load started": _check_start,
    "machine started": _check_machine,
    "checklist ticked": _check_list,
    "first piece checked": _check_first_piece,
    "watch taken": _check_watch,
}
