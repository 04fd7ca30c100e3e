"""The rules that an up-to-date press must keep. A press made blind is kept all the same: what happened, happened."""

from collections.abc import Callable, Iterator, Mapping

from runboard.run.care.care import lock_up_reminders
from runboard.run.care.sight import at_hand, watched_by
from runboard.run.fold.draft import Draft
from runboard.run.fold.names import pieces_wanted, step_of
from runboard.run.fold.pieces import is_begun
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, RunState
from runboard.run.fold.table import find_row, kinds_of, load_at_hand
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.run.rules.air import at_work_in, clear_at, in_the_air, raises_dust
from runboard.run.rules.materials import FORBIDDEN, LOOK, UNKNOWN, Verdict, judged
from runboard.run.rules.resting import rest_before
from runboard.shop.book import Person, Station, may_work_while_watching
from runboard.shop.care import finish_of
from runboard.shop.product import Operation


def check_rules(draft: Draft, event: Event) -> None:
    """Refused, with the rule's code, where an up-to-date press breaks one of the table's ``should``. ``draft`` is of the state
    at the event's own moment."""
    if event.kind == "person went" or event.kind == "person called away":
        _leaves(draft, event)
    if event.kind == "job started":
        _eyes_for_job(draft, event)
    if event.kind not in kinds_of("load") or event.run not in draft.base.runs:
        return
    check_load(draft, event, *load_at_hand(draft, event))


def check_load(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """The same for a press about a load that was found already."""
    row = find_row("load", event, load.state, step)
    for guard in (row or {}).get("should", ()):
        RULES[guard](draft, event, load, step)


def _leaves(draft: Draft, event: Event) -> None:
    """Nobody is told that they may leave a machine that must be watched: it is made safe first, or handed on."""
    if event.kind == "person called away":
        return
    left = lock_up_reminders(draft.base, draft.book)
    if left:
        raise Refused("rags first", reminders=left)
    for load in watched_by(draft.base, event.person):
        raise Refused("watch first", station=draft.station_name(load.station), trays=list(load.pieces))


def _eyes_for_job(draft: Draft, event: Event) -> None:
    job = next((job for job in draft.book.jobs if job.key == event.get("job")), None)
    for load in watched_by(draft.base, event.person):
        station = draft.book.station(load.station)
        if job is not None and job.room and station is not None and job.room != station.room:
            raise Refused("watch first", station=station.name, trays=list(load.pieces))


def eyes_free(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    mine: list[Load] = draft.once(("watched", event.person), lambda: watched_by(draft.base, event.person))
    for watched in mine:
        same = (watched.run, watched.id) == (load.run, load.id)
        if not same and not may_work_while_watching(draft.book, watched.station, load.station):
            raise Refused("watch first", station=draft.station_name(watched.station), trays=list(watched.pieces))


def station_usable(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    out = draft.station(load.station).out
    if out is not None:
        raise Refused(
            "station out", station=draft.station_name(load.station), why=out.get("why", ""), until=out.get("until", "")
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
        rest = rest_before(run.route_of(tray), tray, step)
        if rest is not None and event.moment < rest.ready_at:
            raise Refused("still waiting", tray=tray_key, why=rest.why, ready_at=rest.ready_at, step=step.name)


def supplies_there(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    out = draft.run(event.run).out
    if step is None or not out:
        return
    for use in step.operation.uses:
        if use.supply in out:
            raise Refused("supply out", supply=use.supply, until=out[use.supply], step=step.name)


def skill(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    person = draft.book.person(event.person)
    if step is not None and person is not None and not has_skill(person, step.operation):
        raise Refused("skill", person=person.name, skill=step.operation.skill, step=step.name)


def has_skill(person: Person, operation: Operation) -> bool:
    """Whether somebody has the skill that an operation needs; the lead may do everything."""
    return not operation.skill or person.access == "lead" or operation.skill in person.skills


def air_clear(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """No dust on a wet finish or where a solvent is in the air, nothing that heats or sparks in solvent, and no solvent
    beside either."""
    station = draft.book.station(load.station)
    if station is None or step is None:
        return
    if station.heats or raises_dust(station):
        air = draft.once(("air", event.moment), lambda: in_the_air(draft.base, draft.book, event.moment))
        until = clear_at(air, station, event.moment)
        if until is not None:
            raise Refused("air not clear", station=station.name, room=_room_name(draft, station.room), until=until)
    finish = finish_of(draft.book, step.operation)
    if finish is None or not finish.solvent:
        return
    for beside in at_work_in(draft.base, draft.book, station.room):
        if beside.heats or raises_dust(beside):
            room = _room_name(draft, station.room)
            raise Refused("solvent beside heat", step=step.name, station=beside.name, room=room)


def _room_name(draft: Draft, key: str) -> str:
    room = draft.book.room(key)
    return room.name if room else key


def material_allowed(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """What is on the shop's forbidden list never comes under a machine that heats."""
    for _, material, verdict, station in _materials(draft, event, load, step):
        if verdict.says == FORBIDDEN:
            raise Refused("material forbidden", material=material, forbidden=verdict.by, station=station)


def material_known(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """A machine that heats starts only on a material that somebody named, and whose data sheet was looked at where its
    name does not tell: once a run."""
    looked_at = (*draft.run(event.run).materials, *(event.get("materials") or ()))
    for tray, material, verdict, station in _materials(draft, event, load, step):
        if verdict.says == UNKNOWN:
            raise Refused("material unknown", tray=tray, station=station)
        if verdict.says == LOOK and material not in looked_at:
            raise Refused("material look", material=material, station=station)


def _materials(draft: Draft, event: Event, load: Load, step: Step | None) -> Iterator[tuple[str, str, Verdict, str]]:
    """(tray, material, verdict, station's name) of what comes under a machine that heats; nothing at another station."""
    station = draft.book.station(load.station)
    if station is None or step is None or not station.heats:
        return
    run = draft.run(event.run)
    for tray in load.pieces if is_begun(load) else pieces_wanted(draft, event, load, step):
        material = draft.tray(event.run, tray).wood or run.wood
        yield tray, material, judged(material, draft.book.forbidden), station.name


def shown(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """A helper who is in no book starts a machine only once the lead has shown it to them."""
    station = draft.book.station(load.station)
    if station is None or draft.book.person(event.person) is not None or not event.person:
        return
    if must_be_shown(station, step) and load.station not in draft.person(event.person).shown:
        raise Refused("not shown", station=station.name, person=draft.person(event.person).name)


def must_be_shown(station: Station, step: Step | None = None) -> bool:
    """Whether a helper who is in no book begins ``step`` at a station only once they were shown it; without a step, whether
    that holds for whatever is done there."""
    is_machine = station.machine or station.cuts or station.kind == "sander"
    return is_machine or (step is not None and step.has_machine)


def looked_at(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """Where the lead asked to see a helper's first piece, the rest waits for that look."""
    if tray := tray_to_show(draft.run(event.run), load, event.person):
        raise Refused("look first", step=step.name if step else load.step, tray=tray)


def tray_to_show(run: RunState, load: Load, person: str) -> str:
    """The first tray of a load whose first piece the lead wants to see from that person, and has not passed; '' for none."""
    for tray in load.pieces:
        given = run.given.get(f"{load.step}|{tray}")
        if given and given["look"] and given["to"] == person and run.looks.get(f"{load.step}|{tray}") != "pass":
            return tray
    return ""


def hands_near(draft: Draft, event: Event, load: Load, step: Step | None) -> None:
    """Nobody watches a machine with hands at a station from where it may not be watched."""
    person = draft.person(event.person)
    if person.hands is not None and not at_hand(draft, person, load):
        run, key = person.hands
        at = draft.load(run, key) if run else None
        job = next((job.name for job in draft.book.jobs if job.key == key), key)
        known = draft.book.person(event.person)
        raise Refused(
            "hands elsewhere",
            station=draft.station_name(load.station),
            at=draft.station_name(at.station) if at else job,
            person=known.name if known else person.name,
        )


Rule = Callable[[Draft, Event, Load, Step | None], None]
RULES: Mapping[str, Rule] = {
    "eyes free": eyes_free,
    "station usable": station_usable,
    "operation allowed": operation_allowed,
    "wait over": wait_over,
    "supplies there": supplies_there,
    "skill": skill,
    "air clear": air_clear,
    "material allowed": material_allowed,
    "material known": material_known,
    "shown": shown,
    "looked at": looked_at,
    "hands near": hands_near,
}
