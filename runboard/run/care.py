"""What must not be forgotten: rags of a finish that heats by itself, oily dust in a sander, a cut that burnt.

The fold keeps what happened; from that and from the finishes in the book follow the reminders, as moments that fall due.
A reminder is answered only by saying what was done.
"""

from collections.abc import Iterator, Mapping
from datetime import datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from runboard.run.draft import Draft, put
from runboard.run.event import Event, parse_moment, write_moment
from runboard.run.route import Route, Step
from runboard.run.shop_answers import alert_id
from runboard.run.state import Load, ShopState
from runboard.shop.book import Book
from runboard.shop.care import finish_of
from runboard.shop.finish import UNKNOWN_FINISH
from runboard.shop.hours import local_day

RAGS, DUST, SMOULDER = "rags", "dust", "smoulder"
BURNT = "burnt"
LOOK_AGAIN_AFTER = timedelta(hours=1)
# 'Look again next morning': self-heating may take a night. Common practice, no source.
MORNING = time(7)
KEPT_DAYS = 30
_OVER = ("done", "off")
_NOT_BEGUN = ("none", *_OVER)


# what happened


def note(draft: Draft, event: Event) -> None:
    """Keep what this event means for care."""
    if event.run not in draft.base.runs or not (draft.loads or draft.trays):
        return
    before = draft.base.runs[event.run].loads
    for key in dict.fromkeys((*before, event.load)):
        load = draft.load(event.run, key) if key else None
        if load is not None:
            _note_load(draft, event, before.get(key), load)
    if _is_burnt(event):
        _note_burn(draft, event)


def _note_load(draft: Draft, event: Event, before: Load | None, load: Load) -> None:
    was_open = before is not None and before.state not in _NOT_BEGUN
    is_open = load.state not in _NOT_BEGUN
    known = draft.base.runs[event.run].past.get(load.id)
    counted_again = not was_open and not is_open and (known is not None or load.state != "done")
    if was_open == is_open and (is_open or counted_again):
        return
    kind, finish = _of_step(draft, load)
    if kind:
        key = f"{kind}|{local_day(event.moment, draft.book.time_zone)}|{finish}"
        _keep(draft, event, key, load, begins=not was_open, ends=not is_open)


def _of_step(draft: Draft, load: Load) -> tuple[str, str]:
    """(rags or dust, finish) where work on this load leaves something that may heat by itself; else two times nothing."""
    route = draft.run(load.run).route
    step, station = route.step(load.step), draft.book.station(load.station)
    if step is None or station is None:
        return "", ""
    if step.operation.finish or station.kind == "finishing":
        return RAGS, step.operation.finish or ""
    if station.kind == "sander":
        coated = finished_before(draft.book, route, step)
        if coated is not None:
            return DUST, coated.operation.finish or ""
    return "", ""


def finished_before(book: Book, route: Route, step: Step) -> Step | None:
    """The last step before this one that brings a finish on, if there is one: sanding after it makes oily dust."""
    earlier = reversed(route.steps[: step.index])
    return next((one for one in earlier if finish_of(book, one.operation) is not None), None)


def _keep(draft: Draft, event: Event, key: str, load: Load, begins: bool, ends: bool) -> None:
    kept = _care(draft)
    entry = dict(kept.get(key) or {"began_at": write_moment(event.moment), "times": 0, "loads": 0})
    entry |= {"run": load.run, "step": load.step, "station": load.station, "ended_at": ""}
    entry["loads"] = max(0, entry["loads"] + begins - ends)
    if not entry["loads"]:
        entry |= {"ended_at": write_moment(event.moment), "times": entry["times"] + 1}
    _put(draft, event, key, entry)


def _is_burnt(event: Event) -> bool:
    said = [event.get("scrap") or (), *((one.get("scrap") or ()) for one in (event.get("counts") or {}).values())]
    return any(one["why"] == BURNT for scrap in said for one in scrap)


def _note_burn(draft: Draft, event: Event) -> None:
    load = draft.load(event.run, event.load) if event.load else None
    step = draft.run(event.run).route.step(load.step if load else event.operation)
    station = draft.book.station(load.station if load else step.operation.station if step else "")
    if station is None or step is None or not station.dusty:
        return
    key = f"{SMOULDER}|{local_day(event.moment, draft.book.time_zone)}|{station.key}"
    moment = write_moment(event.moment)
    entry = dict(_care(draft).get(key) or {"began_at": moment, "times": 0, "loads": 0})
    entry |= {"run": event.run, "step": step.key, "station": station.key, "ended_at": moment}
    _put(draft, event, key, entry | {"times": entry["times"] + 1})


def _care(draft: Draft) -> Mapping[str, Mapping[str, Any]]:
    found: Mapping[str, Mapping[str, Any]] = draft.changes.get("care", draft.base.care)
    return found


def _put(draft: Draft, event: Event, key: str, entry: Mapping[str, Any]) -> None:
    """Keep it; what is old and was answered to its last reminder goes."""
    oldest = event.moment - timedelta(days=KEPT_DAYS)
    said = draft.base.reminders
    kept = {
        one: known
        for one, known in _care(draft).items()
        if parse_moment(known["began_at"]) > oldest or alert_id("care morning", one) not in said
    }
    draft.changes["care"] = put(kept, key, entry)


# what follows from it


def heats_by_itself(book: Book, key: str) -> bool:
    """Whether an entry is about something that may start a fire by itself; one whose finish nobody wrote down is."""
    kind, _, finish = key.split("|", 2)
    return kind == SMOULDER or (book.finish(finish) or UNKNOWN_FINISH).self_heats


def reminders(state: ShopState, book: Book) -> Iterator[tuple[str, str, datetime, Mapping[str, Any]]]:
    """(id, kind, due at, entry) of every reminder that was not answered with what was done."""
    for key, entry in state.care.items():
        if heats_by_itself(book, key):
            for reminder, kind, due_at in _of_entry(book, key, entry):
                if reminder not in state.reminders:
                    yield reminder, kind, due_at, entry


def _of_entry(book: Book, key: str, entry: Mapping[str, Any]) -> Iterator[tuple[str, str, datetime]]:
    began, ended = parse_moment(entry["began_at"]), entry["ended_at"]
    if not entry["times"]:
        yield alert_id("care start", key), "care start", began
    if ended:
        yield alert_id("care end", key, entry["times"]), "care end", parse_moment(ended)
        if key.startswith(SMOULDER):
            yield alert_id("care again", key, entry["times"]), "care again", parse_moment(ended) + LOOK_AGAIN_AFTER
    yield alert_id("care morning", key), "care morning", next_morning(parse_moment(ended or entry["began_at"]), book)


def next_morning(moment: datetime, book: Book) -> datetime:
    """The morning after, in the shop's zone."""
    zone = ZoneInfo(book.time_zone)
    local = moment.astimezone(zone)
    day = local.date() if local.time() < MORNING else local.date() + timedelta(days=1)
    return datetime.combine(day, MORNING, zone).astimezone(moment.tzinfo)


def lock_up_reminders(state: ShopState, book: Book, now: datetime) -> list[str]:
    """What must be said before a session ends: for each thing of that day, once for each time it was ended anew."""
    today = str(local_day(now, book.time_zone))
    found = [
        alert_id("care lock-up", key, entry["times"])
        for key, entry in state.care.items()
        if key.split("|")[1] == today and heats_by_itself(book, key)
    ]
    return [one for one in found if one not in state.reminders]
