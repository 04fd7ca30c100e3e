"""What must not be forgotten: rags of a finish that heats by itself, oily dust in a sander, a cut that burnt.

The fold keeps what happened, judged by the book and the route as they were then; from that follow the reminders, as
moments that fall due. What is open stays open until somebody says what was done, whatever the book says later.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from runboard.run.fold.draft import Draft, put
from runboard.run.fold.names import step_of, trays_of
from runboard.run.fold.route import Route, Step
from runboard.run.fold.shop_answers import alert_id
from runboard.run.fold.state import EMPTY, ShopState, Tray
from runboard.run.log.event import Event, parse_moment, write_moment
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.hours import local_day

RAGS, DUST, SMOULDER = "rags", "dust", "smoulder"
BURNT = "burnt"
LOOK_AGAIN_AFTER = timedelta(hours=1)
# 'Look again next morning': self-heating may take a night. Common practice, no source.
MORNING = time(7)
KEPT_DAYS = 30
_OVER = ("done", "off")
# Kinds of press that say that work was begun or done at a step.
SAYS_WORK = ("load started", "machine started", "machine ended", "unloading started", "load done", "pieces counted")


# what happened


@dataclass
class Mark:
    """What one event means for one thing that must not be forgotten, and how many loads it began and ended."""

    run: str
    step: str
    station: str
    heats: bool
    begins: int = 0
    ends: int = 0


def note(draft: Draft, event: Event) -> None:
    """Keep what this event means for care, however it came in: pressed, in bulk, filled in, counted, from a card."""
    if event.run not in draft.base.runs or not (draft.loads or draft.trays):
        return
    marks: dict[str, Mark] = {}
    before = draft.base.runs[event.run]
    for key in dict.fromkeys((*before.loads, event.load)):
        load = draft.load(event.run, key) if key else None
        if load is not None:
            was_open, is_open = key in before.loads and before.loads[key].state not in _OVER, load.state not in _OVER
            if was_open != is_open:
                run = draft.run(event.run)
                route = run.route_at(run.revision_of(load))
                _mark(draft, event, marks, route, load.step, load.station, begins=is_open, ends=was_open)
    if event.kind != "board lost":
        for key, tray in draft.trays.get(event.run, {}).items():
            old = before.trays.get(key)
            if tray.counts is not (old.counts if old else EMPTY):
                route = draft.run(event.run).route_of(tray)
                for step in _counted_more(old, tray):
                    _mark(draft, event, marks, route, step)
    for key, mark in marks.items():
        _keep(draft, event, key, mark)
    if _is_burnt(event):
        _note_burn(draft, event)


def note_unfit(draft: Draft, event: Event) -> None:
    """A press that does not fit may be true all the same: what it says was coated is asked about at once."""
    run = draft.base.runs.get(event.run)
    if run is None or event.kind not in SAYS_WORK:
        return
    marks: dict[str, Mark] = {}
    key = event.operation or step_of(event.load)
    named = [event.tray, *(event.get("pieces") or {}), *(event.get("counts") or {}), *run.boards.get(event.load, ())]
    trays = [run.trays[tray] for tray in (*named, *trays_of(event.load)) if tray in run.trays]
    for route, at in [(run.route_of(tray), tray.at) for tray in trays] or [(run.route, EMPTY)]:
        last = route.step(key)
        first = min((step.index for step in route.steps if step.key in at), default=None)
        if last is None:
            continue
        for step in route.steps[: last.index + 1]:
            if step is last or (first is not None and first <= step.index):
                _mark(draft, event, marks, route, step.key)
    for thing, mark in marks.items():
        _keep(draft, event, thing, mark)


def _counted_more(old: Tray | None, tray: Tray) -> Iterator[str]:
    for step, counts in tray.counts.items():
        before = old.counts.get(step, EMPTY) if old else EMPTY
        if counts is not before and sum(map(sum, counts.values())) > sum(map(sum, before.values())):
            yield step


def _mark(
    draft: Draft, event: Event, marks: dict[str, Mark], route: Route, key: str, station: str = "", **what: bool
) -> None:
    step = route.step(key)
    left = leaves(draft.book.as_of(event.moment), route, step, station) if step else None
    if step is None or left is None:
        return
    thing = f"{left.what}|{local_day(event.moment, draft.book.time_zone)}|{left.finish}"
    mark = marks.setdefault(thing, Mark(event.run, key, station or step.operation.station, left.heats))
    mark.heats |= left.heats
    mark.begins += what.get("begins", False)
    mark.ends += what.get("ends", False)


@dataclass(frozen=True)
class Left:
    """What work leaves behind that may heat by itself: rags or dust, of which finish, and whether that one does."""

    what: str
    finish: str
    heats: bool


def leaves(book: Book, route: Route, step: Step, station: str = "") -> Left | None:
    """What a step leaves behind, by the book: rags of the finish it brings on, oily dust of one it sands.

    Dust is asked about at a sander, in whose bag it heaps up; the caution beside a step comes wherever dust is made
    (``cautions_at``).
    """
    at = book.station(station or step.operation.station)
    coat, what = step, RAGS
    if at is not None and at.kind == "sander":
        before = finished_before(book, route, step)
        if before is None:
            return None
        coat, what = before, DUST
    finish = finish_of(book, coat.operation)
    return None if finish is None else Left(what, coat.operation.finish or "", finish.self_heats)


def finished_before(book: Book, route: Route, step: Step) -> Step | None:
    """The last step before this one that brings a finish on, if there is one: sanding after it makes oily dust."""
    earlier = reversed(route.steps[: step.index])
    return next((there for there in earlier if finish_of(book, there.operation) is not None), None)


def _keep(draft: Draft, event: Event, key: str, mark: Mark) -> None:
    known = draft.shop("care").get(key)
    if known and known["heats"] and not mark.heats:
        return  # what heats by itself is asked about as it was, and this coat not at all
    entry = dict(known or {"began_at": write_moment(event.moment), "began_by": event.id, "times": 0, "loads": 0})
    entry |= {"run": mark.run, "step": mark.step, "station": mark.station, "last_by": event.id}
    entry["heats"] = mark.heats
    entry["loads"] = max(0, entry["loads"] + mark.begins - mark.ends)
    if entry["loads"]:
        entry |= {"ended_at": "", "ended_by": ""}
    else:
        entry |= {"ended_at": write_moment(event.moment), "ended_by": event.id, "times": entry["times"] + 1}
    _put(draft, event, key, entry)


def _is_burnt(event: Event) -> bool:
    said = [event.get("scrap") or (), *((count.get("scrap") or ()) for count in (event.get("counts") or {}).values())]
    return any(reason["why"] == BURNT for scrap in said for reason in scrap)


def _note_burn(draft: Draft, event: Event) -> None:
    load = draft.load(event.run, event.load) if event.load else None
    run = draft.run(event.run)
    if load is not None:
        step = run.step_of(load)
    else:
        step = run.route_of(draft.tray(event.run, event.tray)).step(event.operation) if event.tray else None
    station = draft.book.as_of(event.moment).station(load.station if load else step.operation.station if step else "")
    if station is None or step is None or not station.dusty:
        return
    key = f"{SMOULDER}|{local_day(event.moment, draft.book.time_zone)}|{station.key}"
    _keep(draft, event, key, Mark(event.run, step.key, station.key, heats=True))


def _put(draft: Draft, event: Event, key: str, entry: Mapping[str, Any]) -> None:
    """Keep it; what is old and was answered to its last reminder goes."""
    oldest = event.moment - timedelta(days=KEPT_DAYS)
    said = draft.base.reminders
    kept = {
        thing: known
        for thing, known in draft.shop("care").items()
        if parse_moment(known["began_at"]) > oldest or reminder_id("care morning", thing, known) not in said
    }
    draft.changes["care"] = put(kept, key, entry)


def lifted(draft: Draft, reminder: str) -> str:
    """A reminder's id as it is made now, of one that was made while it named the count of times and not the press."""
    kind, *subject = reminder.split("|")
    key = "|".join(subject[:3])
    entry = draft.shop("care").get(key)
    if entry is None or (len(subject) > 3 and not (subject[3].isdigit() and len(subject[3]) < 6)):
        return reminder
    return reminder_id(kind, key, entry)


def reminder_id(kind: str, key: str, entry: Mapping[str, Any]) -> str:
    """A reminder's name. It names the press that it follows from: a coat taken back and done again is asked about again."""
    by = {"care start": "began_by", "care end": "ended_by", "care again": "ended_by"}.get(kind, "last_by")
    return alert_id(kind, key, entry[by])


# what follows from it


def heats_by_itself(book: Book, key: str, entry: Mapping[str, Any]) -> bool:
    """Whether an entry is about something that may start a fire by itself: as it was judged then, or is by now."""
    finish = book.finish(key.split("|", 2)[2])
    return bool(entry["heats"]) or (finish is not None and finish.self_heats)


def reminders(state: ShopState, book: Book) -> Iterator[tuple[str, str, datetime, Mapping[str, Any]]]:
    """(id, kind, due at, entry) of every reminder that was not answered with what was done."""
    for key, entry in state.care.items():
        if heats_by_itself(book, key, entry):
            for reminder, kind, due_at in _of_entry(book, key, entry):
                if reminder not in state.reminders:
                    yield reminder, kind, due_at, entry


def _of_entry(book: Book, key: str, entry: Mapping[str, Any]) -> Iterator[tuple[str, str, datetime]]:
    began, ended = parse_moment(entry["began_at"]), entry["ended_at"]
    if not entry["times"]:
        yield reminder_id("care start", key, entry), "care start", began
    if ended:
        yield reminder_id("care end", key, entry), "care end", parse_moment(ended)
        if key.startswith(SMOULDER):
            yield reminder_id("care again", key, entry), "care again", parse_moment(ended) + LOOK_AGAIN_AFTER
    morning = next_morning(parse_moment(ended or entry["began_at"]), book)
    yield reminder_id("care morning", key, entry), "care morning", morning


def next_morning(moment: datetime, book: Book) -> datetime:
    """The morning after, in the shop's zone."""
    zone = ZoneInfo(book.time_zone)
    local = moment.astimezone(zone)
    day = local.date() if local.time() < MORNING else local.date() + timedelta(days=1)
    return datetime.combine(day, MORNING, zone).astimezone(moment.tzinfo)


def lock_up_reminders(state: ShopState, book: Book) -> list[str]:
    """What must be said before a session ends: for each thing once for each time it was taken up or ended, whatever
    the day, until the morning's question about it is answered."""
    return [
        reminder
        for key, entry in state.care.items()
        if heats_by_itself(book, key, entry)
        and reminder_id("care morning", key, entry) not in state.reminders
        and (reminder := reminder_id("care lock-up", key, entry)) not in state.reminders
    ]
