"""Supplies and cutters: counted, bought, changed; and what was learned of a use taken into the route. A form that comes twice says it
once."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from runboard.floor.changing.products import product_place
from runboard.floor.changing.runs import new_event
from runboard.floor.changing.shop_book import change_book
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.supplies.at_hand import all_at_hand
from runboard.plan.supplies.wear import Wear
from runboard.run.care.sight import running
from runboard.run.log.corrections import press_of
from runboard.run.refusal import Refused
from runboard.run.supplies.said import word_of

Record = dict[str, Any]
# A press has so many events at most, which an undo takes back together.
_A_PRESS = 9
_ONCE = re.compile(r"[0-9a-f]{32}")


def count_supplies(workshop: Workshop, counts: Sequence[tuple[str, float]], once: str, person: str = "") -> None:
    """So much of each is there now. Refused 'nothing counted' where none is said."""
    if not counts:
        raise Refused("nothing counted")
    said = [{"supply": name, "have": have} for name, have in counts]
    _happened(workshop, once, [("supply counted", body, {}) for body in said], person)


def buy_supply(workshop: Workshop, name: str, amount: float, times: int, once: str, person: str = "") -> None:
    """So much more is there. ``times`` is how often something was said of it when the page was made: refused 'supply said' where
    somebody said more since, for that may be the same purchase."""
    with workshop.lock:
        if _is_known(workshop, once):
            return
        if len(workshop.ledger.state.supplies.get(word_of(name), ())) != times:
            raise Refused("supply said", supply=name)
        _happened(workshop, once, [("supply bought", {"supply": name, "amount": amount}, {})], person)


def change_cutter(
    workshop: Workshop, wear: Wear, station: str, times: int, once: str, person: str = "", is_off: bool = False
) -> None:
    """A new cutter is in at that station: its life begins, and with it the full list and the first piece. ``times`` is how often it
    had been changed when the page was made; ``is_off`` where somebody says that the machine does not run. Refused 'cutter changed',
    'station unknown', and 'cutter at work' where it runs by the shop's account and nobody said otherwise."""
    with workshop.lock:
        if _is_known(workshop, once):
            return
        if wear.times != times:
            raise Refused("cutter changed", cutter=wear.cutter.name)
        known = workshop.book.station(station)
        if known is None:
            raise Refused("station unknown", station=station)
        if not is_off and _runs(workshop, station):
            raise Refused("cutter at work", station=known.name)
        body = {"what": "cutter", "cutter": wear.cutter.key}
        _happened(workshop, once, [("setup changed", body, {"station": station})], person)


def _runs(workshop: Workshop, station: str) -> bool:
    state = workshop.ledger.state
    at = state.stations.get(station)
    is_seen = at is not None and at.signal is not None and bool(at.signal["on"])
    return is_seen or any(load.station == station for _, load in running(state))


def standing(workshop: Workshop, once: str) -> list[str]:
    """The presses of a form that said something of supplies or cutters which still holds."""
    state = workshop.ledger.state
    said = {one.event for some in state.supplies.values() for one in some}
    said |= {one.event for some in state.cutters.values() for one in some}
    return sorted({press_of(event) for event in said if once and event.startswith(f"{once}-")})


def take_back(workshop: Workshop, once: str, person: str = "") -> None:
    """What a form said never was. Refused 'said no more' where none of it holds."""
    with workshop.lock:
        catch_up(workshop)
        presses = standing(workshop, once)
        if not presses:
            raise Refused("said no more")
        made = [new_event(workshop, "event undone", {"event": key}, person=person, device="server") for key in presses]
        record_events(workshop, made)


def _is_known(workshop: Workshop, once: str) -> bool:
    """Whether this form came before."""
    catch_up(workshop)
    return f"{once}-0" in workshop.ledger.arrived


def _happened(
    workshop: Workshop, once: str, said: Sequence[tuple[str, Mapping[str, Any], Mapping[str, str]]], person: str
) -> None:
    if not _ONCE.fullmatch(once):
        raise Refused("form", where="once", what=once[:40])
    with workshop.lock:
        if _is_known(workshop, once):
            return
        made = [new_event(workshop, kind, body, person=person, device="server", **more) for kind, body, more in said]
        record_events(workshop, [replace(event, id=_id(once, at)) for at, event in enumerate(made)])


def _id(once: str, at: int) -> str:
    press, number = divmod(at, _A_PRESS)
    return f"{once}-{press}" if not number else f"{once}-{press}.{number + 1}"


def take_learned_use(workshop: Workshop, word: str, product: str, operation: str, written: float) -> None:
    """From the next run on the route says what a piece was measured to use. Refused 'use unknown' where the route writes it
    otherwise by now, or nothing is learned of it."""
    with workshop.lock:
        catch_up(workshop)
        here = next((one for one in all_at_hand(workshop.book, workshop.ledger.state) if one.word == word), None)
        learned = here.learned.get((product, operation, written)) if here is not None else None
        if learned is None:
            raise Refused("use unknown")
        each = float(f"{learned.each:.3g}")

        def change(record: Record) -> None:
            uses = [use for use in _uses(record, product, operation) if word_of(use["supply"]) == word]
            mine = [use for use in uses if use["each"] == written]
            if not mine:
                raise Refused("use unknown")
            for use in mine:
                use["each"] = each

        change_book(workshop, workshop.book.revision, change, lambda record: None)


def _uses(record: Record, product: str, operation: str) -> list[Record]:
    steps = record["products"][product_place(record, product)]["operations"]
    return [use for step in steps if step["key"] == operation for use in step["uses"]]
