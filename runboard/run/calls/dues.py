"""What falls due and when, as a projection of the state: it can be thrown away and made again."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta

from runboard.run.calls.signals import looks_ended
from runboard.run.care.care import reminders
from runboard.run.care.sight import must_be_watched, occurrence
from runboard.run.fold.said import ABOUT_A_LOAD, still_asked
from runboard.run.fold.shop_answers import alert_id
from runboard.run.fold.shown import newest
from runboard.run.fold.state import Load, PersonState, RunState, ShopState, Tray
from runboard.run.log.event import parse_moment
from runboard.shop.book import Book
from runboard.shop.care import watch_interval

MISSED_AFTER = timedelta(minutes=1)
KINDS = (
    "machine end",
    "wait over",
    "wait latest",
    "hold over",
    "supply due",
    "station back",
    "session end",
    "ask again",
    "watch check",
    "looks ended",
    "nobody near",
    "call",
    "care start",
    "care end",
    "care again",
    "care morning",
)


@dataclass(frozen=True)
class Due:
    """A moment known ahead at which somebody is wanted. ``id`` is made of kind, subject and occurrence."""

    id: str
    kind: str
    due_at: datetime
    run: str = ""
    load: str = ""
    tray: str = ""
    step: str = ""
    station: str = ""
    person: str = ""

    @property
    def said(self) -> str:
        """The press, where only one that did not fit says that the machine runs; it stands in the id."""
        parts = self.id.split("|")
        return parts[3].rpartition("-")[0] if self.kind in ABOUT_A_LOAD and len(parts) > 3 else ""


def dues(state: ShopState, book: Book) -> dict[str, Due]:
    """Everything that is due or will be, by id; what was answered is left out."""
    found: dict[str, Due] = {}
    for due in _all(state, book):
        # A reminder of care is not dismissed by an alert's answer, only by saying what was done; and a machine that must
        # be watched only by watching it.
        stays = due.kind.startswith("care ") or due.kind in ("watch check", "nobody near")
        answer = None if stays else state.answers.get(due.id)
        if answer is None or answer["answer"] == "claimed":
            found[due.id] = due
        elif answer.get("ask_again_at") and due.kind != "machine end":
            again = parse_moment(answer["ask_again_at"])
            key = alert_id("ask again", due.id, answer["ask_again_at"])
            if key not in state.answers:
                found[key] = Due(
                    key, "ask again", again, due.run, due.load, due.tray, due.step, due.station, due.person
                )
    return found


def _all(state: ShopState, book: Book) -> Iterator[Due]:
    for run in state.open_runs():
        yield from _of_loads(run, run.loads.values(), book)
        yield from _of_trays(run)
        yield from _of_supplies(run)
    for load in still_asked(state.said_running).values():
        yield from _of_loads(state.runs[load.run], (load,), book)
    for load, stopped_at in looks_ended(state):
        if state.runs[load.run].state == "open":
            key = alert_id("looks ended", load.run, load.id, load.ends, _stamp(stopped_at))
            yield Due(key, "looks ended", stopped_at, load.run, load.id, step=load.step, station=load.station)
    for reminder, kind, due_at, entry in reminders(state, book):
        yield Due(reminder, kind, due_at, entry["run"], step=entry["step"], station=entry["station"])
    for station in book.stations:
        seen = state.stations.get(station.key)
        if seen is not None and seen.out is not None and seen.out.get("until"):
            until = parse_moment(seen.out["until"])
            yield Due(alert_id("station back", station.key, _stamp(until)), "station back", until, station=station.key)
    for event, call in state.calls.items():
        at, about = parse_moment(call["at"]), {name: call[name] for name in ("run", "tray", "step", "person")}
        yield Due(alert_id("call", event), "call", at, **about)
    for person in _people(state, book):
        if person.until is not None and person.came_at is not None:
            known = book.person(person.key)
            tidy_up = known.tidy_up if known else timedelta(0)
            key = alert_id("session end", person.key, _stamp(person.until))
            yield Due(key, "session end", person.until - tidy_up, person=person.key)


def _people(state: ShopState, book: Book) -> Iterator[PersonState]:
    """Those of the book, and of guests the newest: whoever makes up many rings no alert for each."""
    guests = {
        key: person for key, person in state.people.items() if book.person(key) is None and person.came_at is not None
    }
    shown = newest(guests)
    return (person for key, person in state.people.items() if key not in guests or key in shown)


def _of_loads(run: RunState, loads: Iterable[Load], book: Book) -> Iterator[Due]:
    for load in loads:
        about = {"run": run.id, "load": load.id, "step": load.step, "station": load.station}
        ends = occurrence(load)
        if load.state in ("running", "ended") and load.end_at is not None:
            yield Due(alert_id("machine end", run.id, load.id, ends), "machine end", load.end_at, **about)
        if not must_be_watched(run, load):
            continue
        step = run.step_of(load)
        every = watch_interval(book, step.operation) if step else None
        if every is not None and load.checked_at is not None:
            key = alert_id("watch check", run.id, load.id, ends, load.checks)
            yield Due(key, "watch check", load.checked_at + every, **about)
        if load.alone_since is not None:
            key = alert_id("nobody near", run.id, load.id, ends, _stamp(load.alone_since))
            yield Due(key, "nobody near", load.alone_since, **about)


def is_missed(due: Due, now: datetime) -> bool:
    """Whether a machine that must be watched was looked at by nobody although it was time: red everywhere."""
    late = MISSED_AFTER if due.kind == "watch check" else timedelta(0)
    return due.kind in ("watch check", "nobody near") and due.due_at + late <= now


def _of_trays(run: RunState) -> Iterator[Due]:
    for tray in run.trays.values():
        if tray.rests:
            yield from _of_rests(run, tray)
        for hold in tray.holds:
            if hold.until is not None:
                key = alert_id("hold over", run.id, tray.id, hold.step, _stamp(hold.until))
                yield Due(key, "hold over", hold.until, run.id, tray=tray.id, step=hold.step)


def _of_rests(run: RunState, tray: Tray) -> Iterator[Due]:
    for step, rest in tray.rests.items():
        if rest.ended_at is not None or not tray.at:
            continue
        occurrence = _stamp(rest.began_at)
        key = alert_id("wait over", run.id, tray.id, step, _stamp(rest.ready_at))
        yield Due(key, "wait over", rest.ready_at, run.id, tray=tray.id, step=step)
        if rest.latest_at is not None:
            key = alert_id("wait latest", run.id, tray.id, step, occurrence)
            yield Due(key, "wait latest", rest.latest_at, run.id, tray=tray.id, step=step)


def _of_supplies(run: RunState) -> Iterator[Due]:
    for supply, until in newest(run.out).items():
        if until is not None:
            yield Due(alert_id("supply due", run.id, supply, _stamp(until)), "supply due", until, run.id)


def _stamp(moment: datetime) -> int:
    return int(moment.timestamp())
