"""What the transition table's effects do. Each takes the draft, the event and the load or tray at hand.

An effect that meets pieces that are not there, or counts that do not fit, refuses; the draft is then thrown away.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import timedelta
from math import floor
from typing import Any

from runboard.run.care.sight import at_hand
from runboard.run.change import replace
from runboard.run.fold import moves_of_pieces, shop_answers
from runboard.run.fold.draft import Draft, put
from runboard.run.fold.hands import (
    begin_span,
    busy,
    end_spans,
    free_hands,
    leave_station,
    stand_by,
    take_hands,
    unhand,
)
from runboard.run.fold.names import pieces_wanted
from runboard.run.fold.pieces import count_tray, counted, fill_earlier, hold, is_begun, keep_busy, remaining, spread
from runboard.run.fold.route import Step
from runboard.run.fold.shop_answers import alert_id
from runboard.run.fold.state import Load
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.run.rules.resting import rests_before


@dataclass
class Scene:
    """What an event is about while its effects run: the load as it stands, its step, and the row's next state."""

    draft: Draft
    event: Event
    load: Load
    step: Step | None
    to: str

    @property
    def run(self) -> str:
        return self.event.run

    def keep(self, load: Load) -> None:
        self.load = load
        self.draft.put_load(load)

    def fresh(self) -> None:
        """Read the load again after something else changed it."""
        self.load = self.draft.load(self.load.run, self.load.id) or self.load

    def the_step(self) -> Step:
        if self.step is None:
            raise Refused("step unknown", step=self.event.operation, tray=self.event.tray)
        return self.step


SPAN_OF = {"loading": "loading", "working": "hand", "unloading": "unloading"}


def take_pieces(scene: Scene) -> None:
    """The pieces go into the load; earlier operations that nobody pressed are filled in as assumed, all good."""
    draft, event, step = scene.draft, scene.event, scene.the_step()
    wanted = pieces_wanted(draft, event, scene.load, step)
    if event.kind == "pieces counted":
        for tray, pieces in wanted.items():
            fill_earlier(draft, scene.run, tray, step, pieces, event.moment)
        return
    if not any(wanted.values()):
        tray = next(iter(wanted), event.tray)
        raise Refused("pieces not there", tray=tray, step=step.name, wanted=1, there=0)
    for tray_key, pieces in wanted.items():
        there = fill_earlier(draft, scene.run, tray_key, step, pieces, event.moment)
        if there < pieces:
            raise Refused("pieces not there", tray=tray_key, step=step.name, wanted=pieces, there=there)
        draft.put_tray(scene.run, keep_busy(draft.tray(scene.run, tray_key), step.key, pieces))
        end_rest_before(scene, tray_key, step)
    places = event.get("places") or {}
    for tray_key, placed in places.items():
        moves_of_pieces.place(draft, scene.run, tray_key, placed)
    known = {tray: sum(counted(draft.tray(scene.run, tray), step.key, scene.load.id)) for tray in wanted}
    taken = {tray: wanted[tray] + known[tray] for tray in wanted}
    begun = scene.to if scene.to not in ("done", "off") else "working"
    scene.load = replace(
        scene.load,
        pieces=taken,
        started_at=event.moment,
        phase_at=event.moment,
        state=begun,
        stop=None,
        revision=draft.tray(scene.run, next(iter(taken))).revision,
    )


def end_rest_before(scene: Scene, tray_key: str, step: Step) -> None:
    """The wait before ``step`` ends when somebody goes on; before its time it was cut short."""
    tray, moment = scene.draft.tray(scene.run, tray_key), scene.event.moment
    waits = rests_before(scene.draft.run(scene.run).route_of(tray), tray, step)
    if waits:
        ended = {key: replace(rest, ended_at=moment, early=moment < rest.ready_at) for key, rest in waits.items()}
        scene.draft.put_tray(scene.run, replace(tray, rests={**tray.rests, **ended}))


def take_station(scene: Scene) -> None:
    """The load holds its station; a change of step, run or wood makes it fresh: setup, full list, first piece."""
    draft, load = scene.draft, scene.load
    station = draft.station(load.station)
    if station.load is not None and station.load != (load.run, load.id):
        raise busy(draft, station.load)
    setup = (load.run, load.step)
    fresh = station.setup != setup
    setups = station.setups + (1 if fresh else 0)
    draft.put_station(replace(station, load=(load.run, load.id), setup=setup, setups=setups, loaded=setups))
    scene.keep(replace(load, fresh=fresh, set_up=load.set_up or setups > station.loaded))


def leave(scene: Scene) -> None:
    """The station is free."""
    leave_station(scene.draft, scene.load)


def give_back(scene: Scene) -> None:
    """Pieces of the load that were not counted are free again at the step."""
    for tray_key in scene.load.pieces:
        tray = scene.draft.tray(scene.run, tray_key)
        left = remaining(scene.load, tray)
        if left:
            scene.draft.put_tray(scene.run, keep_busy(tray, scene.load.step, -left))
    if scene.to == "off":
        scene.load = replace(scene.load, done_at=scene.event.moment)


def hands_on(scene: Scene) -> None:
    """The person's hands are at the load."""
    kind = SPAN_OF.get(scene.to, "hand")
    person = scene.draft.person(scene.event.person)
    if person.hands == (scene.load.run, scene.load.id) and scene.load.state == scene.to:
        return
    scene.draft.put_load(scene.load)
    scene.load = take_hands(scene.draft, scene.load, scene.event, kind)


def hands_off(scene: Scene) -> None:
    """This person's hands leave the load; it keeps its station."""
    free_hands(scene.draft, scene.event.person, scene.event.moment, measured=False)
    scene.fresh()


def all_hands_off(scene: Scene) -> None:
    """Everybody's hands leave the load."""
    for person in scene.load.people:
        unhand(scene.draft, person, scene.load)
    pressed = scene.event.basis == "tapped"
    load = end_spans(scene.load, scene.event.moment, pressed, lambda span: span.kind != "machine")
    scene.load = replace(load, people=())


def set_end(scene: Scene) -> None:
    """The machine runs and is thought to end in so many minutes: those said, else the step's machine time."""
    step, event = scene.the_step(), scene.event
    said = event.get("minutes")
    length = timedelta(minutes=said) if said is not None else step.pass_.machine
    load = scene.load
    if load.state != "running" or not any(span.kind == "machine" and span.ended_at is None for span in load.spans):
        load = begin_span(load, "machine", "", event.moment, event.id, event.basis in ("tapped", "sensor"))
        load = replace(load, phase_at=event.moment, stop=None)
    scene.load = replace(load, end_at=event.moment + length, ends=load.ends + 1)


def machine_off(scene: Scene) -> None:
    """The machine has stopped. Its span was measured if a sensor, an 'ended' press or a watching person said so."""
    load, event = scene.load, scene.event
    seen = event.basis == "sensor" or event.kind in ("machine ended", "load stopped")
    if not seen and event.kind == "unloading started" and scene.step is not None:
        seen = scene.step.operation.attendance == "watched"
    done = event.kind != "load stopped" and seen and event.basis in ("tapped", "sensor")
    scene.load = end_spans(load, event.moment, done, lambda span: span.kind == "machine")
    if scene.to == "ended":
        scene.load = replace(scene.load, end_at=event.moment)
        if event.person:
            shop_answers.note(scene.draft, alert_id("machine end", load.run, load.id, load.ends), "ended", event)


def watch(scene: Scene) -> None:
    """The person who pressed watches the machine, and was last seen there; nobody does with hands elsewhere."""
    if scene.event.kind == "watch taken" and not _is_at_hand(scene):
        return
    scene.load = replace(scene.load, watcher=scene.event.person or scene.load.watcher)
    stand_by(scene.draft, scene.event.person, scene.load)
    if scene.load.checked_at is None or scene.event.kind == "machine started":
        scene.load = replace(scene.load, checked_at=scene.event.moment)


def note_check(scene: Scene) -> None:
    """Somebody looked at the running machine, was last seen there, and watches it from then on."""
    if not _is_at_hand(scene):
        return
    stand_by(scene.draft, scene.event.person, scene.load)
    load, event = scene.load, scene.event
    watcher = event.person or load.watcher
    scene.load = replace(load, checked_at=event.moment, checks=load.checks + 1, watcher=watcher)


def _is_at_hand(scene: Scene) -> bool:
    return at_hand(scene.draft, scene.draft.person(scene.event.person), scene.load)


def note_materials(scene: Scene) -> None:
    """Materials whose data sheet somebody looked at: they are asked about once a run."""
    run = scene.draft.run(scene.run)
    fresh = tuple(material for material in scene.event.get("materials") or () if material not in run.materials)
    if fresh:
        scene.draft.put_run(replace(run, materials=(*run.materials, *fresh)))


def note_stop(scene: Scene) -> None:
    """Where it stopped is kept, with how long it would have run on; a cutter, a slip or a failure opens the first-piece check again."""
    body, end_at = dict(scene.event.body or {}), scene.load.end_at
    if scene.load.state == "running" and end_at is not None and end_at > scene.event.moment:
        body["left_minutes"] = floor((end_at - scene.event.moment) / timedelta(minutes=1) * 10) / 10
    scene.load = replace(scene.load, stop=body, end_at=None)
    if body.get("why") in ("cutter", "slip", "failed"):
        station = scene.draft.station(scene.load.station)
        scene.draft.put_station(replace(station, setups=station.setups + 1))
        scene.load = replace(scene.load, fresh=True)


def put_counts(scene: Scene) -> None:
    """Absolute counts for each tray of the load; all that is left is good where nothing is said."""
    event, load, draft = scene.event, scene.load, scene.draft
    if event.kind == "pieces counted":  # of one tray at one step, in the load named or in the one the tray is in
        count_tray(draft, load, event.tray, event.get("good"), tuple(event.get("scrap") or ()), event.moment)
        return
    given = spread(event.get("counts") or {}, load.pieces) if load.pieces else dict(event.get("counts") or {})
    for tray_key in dict.fromkeys((*load.pieces, *given)):
        said = given.get(tray_key)
        tray = draft.tray(scene.run, tray_key)
        if said is not None:
            count_tray(draft, load, tray_key, said["good"], tuple(said.get("scrap", ())), event.moment)
        elif is_begun(load):
            good, left = counted(tray, load.step, load.id)[0], remaining(load, tray)
            if event.get("how") == "scrap":
                mine = (reason for reason in tray.scrap.get(load.step, ()) if reason["load"] == load.id)
                kept = tuple({"pieces": reason["pieces"], "why": reason["why"]} for reason in mine)
                count_tray(draft, load, tray_key, good, (*kept, {"pieces": left, "why": "stopped"}), event.moment)
            else:
                count_tray(draft, load, tray_key, good + left, None, event.moment)
    scene.load = replace(load, done_at=load.done_at or event.moment)


def hold_pieces(scene: Scene) -> None:
    body: Mapping[str, Any] = scene.event.body or {}
    hold(scene.draft, scene.run, scene.event.tray, scene.the_step(), body.get("pieces"), body, scene.event.moment)


def release_pieces(scene: Scene) -> None:
    tray = scene.draft.tray(scene.run, scene.event.tray)
    step = scene.event.operation
    kept = tuple(hold for hold in tray.holds if step and hold.step != step)
    scene.draft.put_tray(scene.run, replace(tray, holds=kept))


def end_wait(scene: Scene) -> None:
    tray = scene.draft.tray(scene.run, scene.event.tray)
    rest = tray.rests.get(scene.event.operation)
    if rest is not None:
        early = scene.event.moment < rest.ready_at
        ended = replace(rest, ended_at=scene.event.moment, early=early)
        scene.draft.put_tray(scene.run, replace(tray, rests=put(tray.rests, scene.event.operation, ended)))


EFFECTS: Mapping[str, Callable[[Scene], None]] = {
    "take pieces": take_pieces,
    "give back": give_back,
    "take station": take_station,
    "leave station": leave,
    "hands on": hands_on,
    "hands off": hands_off,
    "all hands off": all_hands_off,
    "set end": set_end,
    "machine off": machine_off,
    "watch": watch,
    "note materials": note_materials,
    "note check": note_check,
    "note stop": note_stop,
    "put counts": put_counts,
    "move pieces": lambda scene: moves_of_pieces.move(scene.draft, scene.event),
    "hold pieces": hold_pieces,
    "release pieces": release_pieces,
    "end wait": end_wait,
    "note tray": lambda scene: moves_of_pieces.note(scene.draft, scene.event),
}
