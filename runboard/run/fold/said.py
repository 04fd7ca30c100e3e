"""Machines that a press says to run which did not fit: it may be true, so they are watched until somebody says that they
do not run, whatever becomes of the press."""

from collections import Counter
from collections.abc import Mapping
from datetime import timedelta

from runboard.run.care.sight import at_hand, must_be_watched
from runboard.run.change import replace
from runboard.run.fold.draft import Draft, put, without
from runboard.run.fold.hands import stand_by
from runboard.run.fold.names import step_of, trays_of
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState
from runboard.run.log.event import Event, parse_moment

# With these presses somebody says that a machine does not run, or no longer.
SAYS_STILL = ("machine ended", "unloading started", "load done", "load stopped", "load taken off")
MOST_OF_A_STATION = 10
ABOUT_A_LOAD = ("machine end", "watch check", "nobody near")


def note_unfit(draft: Draft, event: Event) -> None:
    """A start that does not fit is kept as a load that runs; an end that does not fit ends it."""
    run = draft.base.runs.get(event.run)
    if run is None:
        return
    load = _load(run, event) if event.kind == "machine started" else None
    if load is not None:
        draft.changes["said_running"] = put(draft.shop("said_running"), _key(event), load)
    elif event.kind in SAYS_STILL:
        forget(draft, event)


def forget(draft: Draft, event: Event) -> None:
    """What a press that fits says of a load stands, and nothing else is said of it: it does not run, or is watched."""
    if _key(event) not in draft.shop("said_running"):
        return
    load = draft.load(event.run, event.load)
    watched = event.kind == "machine started" and load is not None and must_be_watched(draft.run(event.run), load)
    if watched or event.kind in SAYS_STILL:
        draft.changes["said_running"] = without(draft.shop("said_running"), _key(event))


def load_of(draft: Draft, run: str, key: str) -> Load | None:
    """The load that a press which did not fit says to run."""
    return draft.shop("said_running").get(f"{run}|{key}")


def answered(draft: Draft, event: Event, again: str | None, run: str, key: str, occurrence: str) -> None:
    """An alert about such a machine is answered: it does not run, it runs for longer, or somebody looked and watches."""
    load = load_of(draft, run, key)
    if load is None or not occurrence.startswith(load.said):
        return
    answer, person = event.get("answer"), draft.person(event.person)
    if answer in ("ended", "stopped", "done"):
        draft.changes["said_running"] = without(draft.shop("said_running"), f"{run}|{key}")
        return
    if answer == "still running" and again:
        load = replace(load, end_at=parse_moment(again), ends=load.ends + 1)
    elif answer == "seen" and at_hand(draft, person, load):
        stand_by(draft, event.person, load)
        load = replace(load, checked_at=event.moment, checks=load.checks + 1, watcher=event.person or load.watcher)
    draft.changes["said_running"] = put(draft.shop("said_running"), f"{run}|{key}", load)


def still_asked(said: Mapping[str, Load]) -> Mapping[str, Load]:
    """Those that ring and that pages show: of each station the newest few. A machine does one thing at a time, and whoever
    makes up starts at one silences no other."""
    if len(said) <= MOST_OF_A_STATION:
        return said
    left = Counter({load.station: MOST_OF_A_STATION for load in said.values()})
    shown = set()
    for key, load in reversed(list(said.items())):
        left[load.station] -= 1
        shown |= {key} if left[load.station] >= 0 else set()
    return {key: load for key, load in said.items() if key in shown}


def _key(event: Event) -> str:
    return f"{event.run}|{event.load}"


def _load(run: RunState, event: Event) -> Load | None:
    """The load that a start says to run, where somebody has to watch it."""
    known = run.loads.get(event.load) or run.past.get(event.load)
    key = event.operation or (known.step if known else step_of(event.load))
    named = [*(event.get("pieces") or {}), *run.boards.get(event.load, ()), *trays_of(event.load)]
    tray = next((run.trays[tray_key] for tray_key in named if tray_key in run.trays), None)
    revision = (run.revision_of(known) if known else 0) or (tray.revision if tray else 0)
    step, revision = _watched(run, key, revision)
    if step is None:
        return None
    said, moment = event.get("minutes"), event.moment
    return Load(
        event.load,
        event.run,
        step.key,
        event.station or (known.station if known else step.operation.station),
        "running",
        pieces={tray.id: tray.started} if tray else {},
        watcher=event.person,
        started_at=moment,
        phase_at=moment,
        end_at=moment + (step.pass_.machine if said is None else timedelta(minutes=said)),
        ends=1,
        checked_at=moment,
        revision=revision,
        said=event.id,
    )


def _watched(run: RunState, key: str, revision: int) -> tuple[Step | None, int]:
    """A step that is watched, and the revision of the route that says so. The one that the load would go by comes first;
    a revision that did not fit, or that is over, may be what whoever pressed had before them."""
    for number in (revision, *range(len(run.revisions), 0, -1)):
        step = run.route_at(number).step(key)
        if step is not None and step.operation.attendance == "watched":
            return step, number
    return None, revision
