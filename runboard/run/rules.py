"""The rules that an up-to-date press must keep. A press made blind is kept all the same: what happened, happened."""

from collections.abc import Callable, Mapping

from runboard.run.draft import Draft
from runboard.run.event import Event
from runboard.run.names import pieces_wanted, step_of
from runboard.run.refusal import Refused
from runboard.run.route import Step
from runboard.run.state import Load, ShopState
from runboard.run.table import find_row, kinds_of, load_at_hand
from runboard.shop.book import Book, may_work_while_watching


def check_rules(state: ShopState, event: Event, book: Book) -> None:
    """Refused, with the rule's code, where an up-to-date press breaks one of the table's ``should``."""
    draft = Draft(state, book)
    if event.kind == "person went" or event.kind == "person called away":
        _leaves(draft, event)
    if event.kind == "job started":
        _eyes_for_job(draft, event)
    if event.kind not in kinds_of("load") or event.run not in state.runs:
        return
    load, step = load_at_hand(draft, event)
    row = find_row("load", event, load.state, step)
    for guard in (row or {}).get("should", ()):
        RULES[guard](draft, event, load, step)


def _leaves(draft: Draft, event: Event) -> None:
    """Nobody is told that they may leave a machine that must be watched: it is made safe first, or handed on."""
    if event.kind == "person called away":
        return
    for load in _watched_by(draft, event.person):
        raise Refused("watch first", station=_station_name(draft, load), trays=list(load.pieces))


def _watched_by(draft: Draft, person: str) -> list[Load]:
    found = []
    for run in draft.base.runs.values():
        if run.state == "open":
            for load in run.loads.values():
                step = run.route.step(load.step)
                watched = step is not None and step.operation.attendance == "watched"
                if load.state == "running" and watched and load.watcher == person:
                    found.append(load)
    return found


def _station_name(draft: Draft, load: Load) -> str:
    station = draft.book.station(load.station)
    return station.name if station else load.station


def _eyes_for_job(draft: Draft, event: Event) -> None:
    job = next((one for one in draft.book.jobs if one.key == event.get("job")), None)
    for load in _watched_by(draft, event.person):
        station = draft.book.station(load.station)
        if job is not None and job.room and station is not None and job.room != station.room:
            raise Refused("watch first", station=station.name, trays=list(load.pieces))


def eyes_free(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    for watched in _watched_by(draft, event.person):
        same = (watched.run, watched.id) == (load.run, load.id)
        if not same and not may_work_while_watching(draft.book, watched.station, load.station):
            raise Refused("watch first", station=_station_name(draft, watched), trays=list(watched.pieces))


def station_usable(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    out = draft.station(load.station).out
    if out is not None:
        raise Refused(
            "station out", station=_station_name(draft, load), why=out.get("why", ""), until=out.get("until", "")
        )


def operation_allowed(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    key = step.key if step else step_of(load.id)
    if key in draft.run(event.run).stopped:
        raise Refused("first piece failed", step=step.name if step else key)


def wait_over(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """A wait that is not over is asked about; the press that says ``early`` is taken."""
    if event.get("early") or step is None:
        return
    run = draft.run(event.run)
    for tray_key in pieces_wanted(draft, event, load, step):
        tray = draft.tray(event.run, tray_key)
        for key, rest in tray.rests.items():
            follows = run.route_of(tray).after(key) == step.key
            if follows and rest.ended_at is None and event.moment < rest.ready_at:
                raise Refused("still waiting", tray=tray_key, why=rest.why, ready_at=rest.ready_at, step=step.name)


def supplies_there(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    out = draft.run(event.run).out
    if step is None or not out:
        return
    for use in step.operation.uses:
        if use.supply in out:
            raise Refused("supply out", supply=use.supply, until=out[use.supply], step=step.name)


def skill(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    needed = step.operation.skill if step else None
    person = draft.book.person(event.person)
    if needed and person is not None and person.access != "lead" and needed not in person.skills:
        raise Refused("skill", person=person.name, skill=needed, step=step.name if step else "")


Rule = Callable[[Draft, Event, Load, Step | None], None]
RULES: Mapping[str, Rule] = {
    "eyes free": eyes_free,
    "station usable": station_usable,
    "operation allowed": operation_allowed,
    "wait over": wait_over,
    "supplies there": supplies_there,
    "skill": skill,
}
