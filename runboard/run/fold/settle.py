"""A press that did not fit, made to fit because a person said so."""

from collections.abc import Callable
from typing import Any

from runboard.run.change import replace
from runboard.run.fold.draft import Draft
from runboard.run.fold.state import Unsettled
from runboard.run.log.event import Event
from runboard.run.refusal import Refused

Take = Callable[[Draft, Event], None]


def force(draft: Draft, entry: Unsettled, event: Event, take: Take) -> None:
    """Apply ``event`` although it did not fit: what holds the station is taken off, counts shrink to what is there.

    Refused, and so listed again, where even that does not make it fit.
    """
    if entry.code == "station busy":
        _clear_station(draft, entry, event, take)
    elif entry.code in ("counts do not fit", "pieces not there"):
        there = int(entry.facts.get("there", 0))
        if there <= 0:
            raise Refused(entry.code, **entry.facts)
        event = replace(event, body=_shrunk(dict(event.body or {}), there))
    take(draft, event)


def _clear_station(draft: Draft, entry: Unsettled, event: Event, take: Take) -> None:
    run, load = str(entry.facts["run"]), str(entry.facts["load"])
    held = draft.load(run, load)
    if held is not None and draft.station(held.station).load == (run, load):
        if held.state == "running":  # nobody takes a load off a running machine by settling a press
            raise Refused("machine runs", station=draft.station_name(held.station), trays=list(held.pieces))
        take(draft, replace(event, kind="load taken off", run=run, load=load, operation=held.step, body={}))


def _shrunk(body: dict[str, Any], there: int) -> dict[str, Any]:
    """The body with its pieces and counts cut down to what there is."""
    if "good" in body:
        scrap = sum(reason["pieces"] for reason in body.get("scrap", ()))
        body["good"] = max(0, min(body["good"], there - scrap))
    if "pieces" in body and isinstance(body["pieces"], dict):
        body["pieces"] = {tray: min(pieces, there) for tray, pieces in body["pieces"].items()}
    elif "pieces" in body:
        body["pieces"] = min(body["pieces"], there)
    if "counts" in body:
        body["counts"] = {tray: _shrunk(dict(count), there) for tray, count in body["counts"].items()}
    return body
