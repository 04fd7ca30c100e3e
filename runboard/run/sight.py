"""Machines that must be watched, and who was last seen where they can be. Presses prove no presence: 'last seen' only."""

from runboard.run.change import replace
from runboard.run.draft import Draft
from runboard.run.event import Event
from runboard.run.state import Load, PersonState, RunState
from runboard.shop.book import may_work_while_watching

# With these presses somebody says that they are at the machine.
SAYS_NEAR = ("machine started", "watch checked", "watch taken")


def is_watched(run: RunState, load: Load) -> bool:
    """Whether a load's machine must be watched while it runs."""
    step = run.route.step(load.step)
    return step is not None and step.operation.attendance == "watched"


def note(draft: Draft, event: Event) -> None:
    """Keep, for each running machine that must be watched, since when everybody was last seen elsewhere."""
    if draft.people is None and not draft.loads:
        return
    for key, run in (draft.runs or draft.base.runs).items():
        if run.state == "open":
            for load in draft.open_loads(key):
                if load.state == "running" and is_watched(run, load):
                    _note(draft, event, load)
                elif load.alone_since is not None:
                    draft.put_load(replace(load, alone_since=None))


def _note(draft: Draft, event: Event, load: Load) -> None:
    people = {**draft.base.people, **(draft.people or {})}
    said = event.kind in SAYS_NEAR and (event.run, event.load) == (load.run, load.id)
    near = said or not people or any(is_near(draft, person, load) for person in people.values())
    if near and load.alone_since is not None:
        draft.put_load(replace(load, alone_since=None))
    elif not near and load.alone_since is None:
        draft.put_load(replace(load, alone_since=event.moment))


def is_near(draft: Draft, person: PersonState, load: Load) -> bool:
    """Whether a person was last seen where this machine may be watched: hands at a station from where it may be, or
    without work in its room."""
    if person.away:
        return False
    if person.hands is None:
        return _is_in_room(draft, person.room, load)
    run, key = person.hands
    if not run:
        job = next((one for one in draft.book.jobs if one.key == key), None)
        return _is_in_room(draft, (job.room if job else None) or person.room, load)
    other = draft.load(run, key)
    return other is not None and may_work_while_watching(draft.book, load.station, other.station)


def _is_in_room(draft: Draft, room: str, load: Load) -> bool:
    station = draft.book.station(load.station)
    return station is not None and station.room == room
