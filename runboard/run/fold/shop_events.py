"""What happens to stations, alerts, calls, reminders and questions, whoever's run it is."""

from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from typing import Any

from runboard.run.care.care import lifted
from runboard.run.care.sight import must_be_watched
from runboard.run.change import replace
from runboard.run.fold import said
from runboard.run.fold.draft import Draft, open_run, put, without
from runboard.run.fold.overruled import Overruled, TimeKey
from runboard.run.fold.shop_answers import alert_id, note
from runboard.run.fold.shown import LONGEST_NOTE
from runboard.run.fold.state import StationState
from runboard.run.log.event import Event, parse_moment, write_moment
from runboard.run.refusal import Refused
from runboard.run.supplies.noting import cutter_changed
from runboard.shop.care import SELDOM
from runboard.shop.hours import local_day


def out_of_use(draft: Draft, event: Event) -> None:
    draft.put_station(
        replace(_station(draft, event), out={"why": event.get("why", ""), "until": event.get("until", "")})
    )


def back_in_use(draft: Draft, event: Event) -> None:
    draft.put_station(replace(_station(draft, event), out=None))


def setup_changed(draft: Draft, event: Event) -> None:
    """A new cutter, wood, focus or jig seat: what is on the station is fresh again."""
    station = _station(draft, event)
    setups = station.setups + 1
    load = draft.load(*station.load) if station.load else None
    is_for_it = load is not None and all(span.ended_at is None for span in load.spans)
    if load is not None:
        draft.put_load(replace(load, fresh=True, set_up=load.set_up or is_for_it))
    draft.put_station(replace(station, setups=setups, loaded=setups if is_for_it else station.loaded))
    if event.get("what") == "cutter":
        cutter_changed(draft, event)


def ticked(draft: Draft, event: Event) -> None:
    """The full list holds for the day, the setup and the person that ticked it."""
    station = _station(draft, event)
    if event.get("list") == "full":
        day = local_day(event.moment, draft.book.time_zone)
        draft.put_station(replace(station, listed=f"{day}|{station.setups}|{event.person}"))
    load = draft.load(*station.load) if station.load else None
    if load is not None and event.get("list") == "full":
        draft.put_load(replace(load, fresh=False))


def signal(draft: Draft, event: Event) -> None:
    """A sensor saw the station start or stop; ``at`` is when that changed. What is on the station stays as it is."""
    station = _station(draft, event)
    if station.signal is not None and station.signal["on"] == event.get("on"):
        return
    seen = {"on": event.get("on"), "at": write_moment(event.moment), "source": event.get("source", "")}
    draft.put_station(replace(station, signal=seen))


def _station(draft: Draft, event: Event) -> StationState:
    if draft.book.station(event.station) is None and event.station not in draft.base.stations:
        raise Refused("station unknown", station=event.station)
    return draft.station(event.station)


def answered(draft: Draft, event: Event) -> None:
    """One answer stops the alert everywhere. 'Still running' moves the machine's end."""
    alert = event.get("alert")
    again = _ask_again_at(draft, event, *alert.removeprefix("ask again|").split("|")[1:3])
    note(draft, alert, event.get("answer"), event, again)
    calls = draft.shop("calls")
    if alert.removeprefix("call|") in calls:
        draft.changes["calls"] = without(calls, alert.removeprefix("call|"))
    kind, *subject = alert.split("|")
    if kind in said.ABOUT_A_LOAD and len(subject) > 2:
        said.answered(draft, event, again, *subject[:3])
    if kind == "wait over" and event.get("answer") == "still running" and again and len(subject) > 2:
        _not_dry_yet(draft, subject[0], subject[1], subject[2], parse_moment(again))
    if kind == "machine end" and event.get("answer") == "still running" and again and len(subject) >= 2:
        load = draft.load(subject[0], subject[1]) if subject[0] in draft.base.runs else None
        if load is not None and load.state == "running":
            draft.put_load(replace(load, end_at=parse_moment(again), ends=load.ends + 1))


def _not_dry_yet(draft: Draft, run: str, tray: str, step: str, until: datetime) -> None:
    """A wait that somebody found not over goes on until then; nothing is offered before."""
    if run not in draft.base.runs or not draft.has_tray(run, tray):
        return
    held = draft.tray(run, tray)
    rest = held.rests.get(step)
    if rest is not None and rest.ended_at is None:
        longer = replace(rest, ready_at=max(rest.ready_at, until))
        draft.put_tray(run, replace(held, rests=put(held.rests, step, longer)))


def _ask_again_at(draft: Draft, event: Event, run: str = "", key: str = "") -> str | None:
    """When to ask again: as was said, but about a machine that runs and must be watched in half an hour at the latest."""
    again: str | None = event.get("ask_again_at")
    load = said.load_of(draft, run, key) or (draft.load(run, key) if run in draft.base.runs else None)
    latest = event.moment + SELDOM
    if not again or load is None or not must_be_watched(draft.run(run), load) or parse_moment(again) <= latest:
        return again
    return write_moment(latest)


def lead_called(draft: Draft, event: Event) -> None:
    """Who calls again for the same from the same tray rings no second time: the call that is open says how often."""
    run = open_run(draft, event)
    draft.tray(run.id, event.tray)
    calls = draft.shop("calls")
    call = {
        "why": event.get("why"),
        "note": (event.get("note") or "")[:LONGEST_NOTE],
        "person": event.person,
        "at": write_moment(event.moment),
        "run": event.run,
        "tray": event.tray,
        "step": event.operation,
    }
    key = _ringing(draft, calls, call)
    if key:
        again = {name: call[name] for name in ("note", "step") if call[name]}
        call = {**calls[key], **again, "times": calls[key].get("times", 1) + 1}
    draft.changes["calls"] = put(calls, key or event.id, call)


def _ringing(draft: Draft, calls: Mapping[str, Mapping[str, Any]], call: Mapping[str, Any]) -> str:
    """The open call that says the same; '' where there is none, and where somebody said that they come: whoever still
    waits then rings anew."""
    same = ("run", "tray", "person", "why")
    found = (key for key, known in calls.items() if all(known[name] == call[name] for name in same))
    return next((key for key in found if alert_id("call", key) not in draft.base.answers), "")


def claimed(draft: Draft, event: Event) -> None:
    if event.get("alert") not in draft.shop("answers"):
        note(draft, event.get("alert"), "claimed", event)


def reminded(draft: Draft, event: Event) -> None:
    done = {"done": event.get("done"), "person": event.person, "at": write_moment(event.moment)}
    draft.changes["reminders"] = put(draft.shop("reminders"), lifted(draft, event.get("reminder")), done)


def restarted(draft: Draft, event: Event) -> None:
    """After a restart the first question is what was running."""
    facts = {"open": list(event.get("open")), "last_at": event.get("last_at", ""), "at": write_moment(event.moment)}
    draft.changes["asks"] = put(draft.shop("asks"), event.id, {"code": "what was running", "facts": facts})


def restart_answered(draft: Draft, event: Event) -> None:
    draft.changes["asks"] = without(draft.shop("asks"), event.get("restart"))


def overruled(draft: Draft, event: Event) -> None:
    """How long something takes, as somebody says. The newest comes last: those before say what was believed then."""
    key = (event.get("of"), event.get("step"), event.get("kind"))
    length = timedelta(minutes=event.get("minutes"))
    said = Overruled(length, event.get("why"), event.person, event.moment, event.id)
    known: Mapping[TimeKey, tuple[Overruled, ...]] = draft.changes.get("overruled", draft.base.overruled)
    draft.changes["overruled"] = put(known, key, (*known.get(key, ()), said))


def nothing(draft: Draft, event: Event) -> None:
    """Corrections act on the order of events, not on the state."""


HANDLERS: Mapping[str, Callable[[Draft, Event], None]] = {
    "station out of use": out_of_use,
    "station back in use": back_in_use,
    "setup changed": setup_changed,
    "checklist ticked": ticked,
    "signal received": signal,
    "alert answered": answered,
    "alert claimed": claimed,
    "lead called": lead_called,
    "reminder answered": reminded,
    "server restarted": restarted,
    "restart answered": restart_answered,
    "time overruled": overruled,
    "event undone": nothing,
    "event amended": nothing,
}
