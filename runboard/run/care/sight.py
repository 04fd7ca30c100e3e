"""Machines that must be watched, and who was last seen where they can be. Presses prove no presence: 'last seen' only."""

from collections.abc import Iterator
from datetime import datetime

from runboard.run.change import replace
from runboard.run.fold.draft import Draft, put
from runboard.run.fold.state import Load, PersonState, RunState, ShopState
from runboard.run.log.event import Event
from runboard.shop.book import may_work_while_watching
from runboard.shop.care import watch_interval


def must_be_watched(run: RunState, load: Load) -> bool:
    """Whether somebody must watch this load's machine now, by the route that it began by."""
    step = run.step_of(load)
    return load.state == "running" and (step is None or step.operation.attendance == "watched")


def running(state: ShopState) -> Iterator[tuple[RunState, Load]]:
    """Every load whose machine runs, and those that a press which did not fit says to run."""
    yield from ((run, load) for run, load in state.open_loads() if load.state == "running")
    yield from ((state.runs[load.run], load) for load in state.said_running.values())


def watched_by(state: ShopState, person: str) -> list[Load]:
    """Running loads that a person must keep in sight."""
    return [load for run, load in running(state) if load.watcher == person and must_be_watched(run, load)]


def occurrence(load: Load) -> str:
    """Which of a load's ends an alert means; one that is only said to run names the press."""
    return f"{load.said}-{load.ends}" if load.said else str(load.ends)


# what follows from an event


def note(draft: Draft, event: Event) -> None:
    """Keep, for each running machine that must be watched, from when nobody counts as near."""
    if draft.people is None and not draft.loads and "said_running" not in draft.changes:
        return
    for key, run in (draft.runs or draft.base.runs).items():
        if run.state == "open":
            for load in draft.open_loads(key):
                since = _alone_since(draft, event.moment, load) if must_be_watched(run, load) else None
                if load.alone_since != since:
                    draft.put_load(replace(load, alone_since=since))
    said = draft.shop("said_running")
    for key, load in said.items():
        said = put(said, key, replace(load, alone_since=_alone_since(draft, event.moment, load)))
    if said:
        draft.changes["said_running"] = said


def _alone_since(draft: Draft, now: datetime, load: Load) -> datetime | None:
    """From when nobody counts as near a running machine; ahead where it is the end of somebody's session."""
    people = {**draft.base.people, **(draft.people or {})}
    ends = [_near_until(draft, person, load) for person in people.values() if is_near(draft, person, load)]
    if not people or None in ends:
        return None
    gone = max((end for end in ends if end is not None), default=now)
    old = load.alone_since
    return old if old is not None and old <= now and gone <= now else gone


def _near_until(draft: Draft, person: PersonState, load: Load) -> datetime | None:
    """Until when a person counts as near: to the end of their session; who looked after it, until the next look."""
    if person.until is None or load.checked_at is None or person.until > load.checked_at or load.watcher != person.key:
        return person.until
    step = draft.run(load.run).step_of(load)
    every = watch_interval(draft.book, step.operation) if step is not None else None
    return load.checked_at + every if every is not None else person.until


def is_near(draft: Draft, person: PersonState, load: Load) -> bool:
    """Whether a person was last seen where this machine may be watched: hands at a station from where it may be, or
    without work in its room."""
    if person.away:
        return False
    return _is_in_room(draft, person.room, load) if person.hands is None else at_hand(draft, person, load)


def at_hand(draft: Draft, person: PersonState, load: Load) -> bool:
    """Whether this person may watch a machine as far as their hands go: free, or where it may be watched from."""
    if person.hands is None:
        return True
    run, key = person.hands
    if not run:
        job = next((job for job in draft.book.jobs if job.key == key), None)
        return _is_in_room(draft, (job.room if job else None) or person.room, load)
    other = draft.load(run, key)
    return other is not None and may_work_while_watching(draft.book, load.station, other.station)


def _is_in_room(draft: Draft, room: str, load: Load) -> bool:
    station = draft.book.station(load.station)
    return station is not None and station.room == room
