"""A machine's end or a wait as an entry for somebody's own calendar, which rings where no page can."""

from collections.abc import Callable
from datetime import timedelta
from typing import Any

from runboard.floor.warm import find_run
from runboard.floor.workshop import Workshop
from runboard.run.calls.calendar import Alarm, CalendarEntry, calendar_text
from runboard.run.refusal import Refused

# Gives the sentence of a code with its facts.
Say = Callable[[str, str, dict[str, Any]], str]
AGAIN, EVERY = 2, timedelta(minutes=3)
BEFORE_LATEST = timedelta(minutes=10)


def load_calendar(workshop: Workshop, run: str, load_id: str, say: Say) -> str:
    """A running machine's end as a calendar's file. Refused 'run unknown', 'load unknown', 'nothing runs'."""
    load = find_run(workshop, run).loads.get(load_id)
    if load is None:
        raise Refused("load unknown", load=load_id)
    if load.state != "running" or load.end_at is None:
        raise Refused("nothing runs", load=load_id)
    station = workshop.book.station(load.station)
    title = say("alert", "machine end", {"station": station.name if station else load.station})
    ends = load.end_at
    entry = CalendarEntry(
        f"machine-end-{run}-{load_id}",
        title,
        say("calendar", "estimate", {}),
        ends,
        ends + timedelta(minutes=5),
        (Alarm(again=AGAIN, every=EVERY),),
    )
    return calendar_text(entry, workshop.clock.now())


def wait_calendar(workshop: Workshop, run: str, tray_id: str, step_key: str, say: Say) -> str:
    """A wait's end as a calendar's file, with its latest end where it has one.

    Refused 'run unknown', 'tray unknown', 'no wait'.
    """
    state = find_run(workshop, run)
    tray = state.trays.get(tray_id)
    if tray is None:
        raise Refused("tray unknown", tray=tray_id)
    rest = tray.rests.get(step_key)
    if rest is None or rest.ended_at is not None:
        raise Refused("no wait", tray=tray_id)
    title = say("alert", "wait over", {"tray": tray_id, "step": state.route_of(tray).step_name(step_key)})
    alarms = [Alarm(again=AGAIN, every=EVERY)]
    ends = rest.ready_at + timedelta(minutes=5)
    if rest.latest_at is not None:
        ends = max(rest.latest_at, rest.ready_at)
        alarms.append(Alarm(-BEFORE_LATEST, of_end=True))
    code = "latest" if rest.latest_at else "wait"
    text = say("calendar", code, {"latest": rest.latest_at} if rest.latest_at else {})
    entry = CalendarEntry(f"wait-{run}-{tray_id}-{step_key}", title, text, rest.ready_at, ends, tuple(alarms))
    return calendar_text(entry, workshop.clock.now())
