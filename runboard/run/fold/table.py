"""The one table of states and transitions, read from ``table.json``, which the page interprets too."""

import json
from functools import cache
from importlib.resources import files
from typing import Any

from runboard.run.change import replace
from runboard.run.fold.draft import Draft, open_run
from runboard.run.fold.effects import EFFECTS, Scene
from runboard.run.fold.hands import busy
from runboard.run.fold.names import counted_before, step_of, trays_of
from runboard.run.fold.pieces import assumed_load, is_begun
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load
from runboard.run.log.event import Event
from runboard.run.refusal import Refused

Row = dict[str, Any]


@cache
def table_text() -> str:
    """The table as JSON text, as the page gets it."""
    return files("runboard.run.fold").joinpath("table.json").read_text(encoding="utf-8")


@cache
def rows() -> dict[str, dict[tuple[str, str], list[Row]]]:
    """For load and tray: the rows under (kind, state)."""
    table = json.loads(table_text())
    found: dict[str, dict[tuple[str, str], list[Row]]] = {"load": {}, "tray": {}}
    for subject in found:
        for row in table[subject]["rows"]:
            for state in row["from"]:
                found[subject].setdefault((row["kind"], state), []).append(row)
    return found


@cache
def kinds_of(subject: str) -> frozenset[str]:
    """The kinds that the table has rows for."""
    return frozenset(kind for kind, _ in rows()[subject])


def transit(draft: Draft, event: Event) -> None:
    """Take the row for this kind and state: its guards, its effects, its next state. Refused where none fits."""
    subject = "load" if event.kind in kinds_of("load") else "tray"
    open_run(draft, event)
    if subject == "load":
        load, step = load_at_hand(draft, event)
        state = load.state
    else:
        load, step, state = tray_at_hand(draft, event)
    row = find_row(subject, event, state, step)
    if row is None:
        raise Refused(
            "transition",
            state="not begun" if state in ("none", "off") else state,
            kind=event.kind,
            step=step.name if step else step_of(load.id),
            trays=list(load.pieces) or ([event.tray] if event.tray else trays_of(load.id)),
        )
    to = state if row["to"] == "same" else row["to"]
    scene = Scene(draft, event, load, step, to)
    if "station free" in row["must"]:
        held_by = draft.station(load.station).load
        if held_by is not None and held_by != (load.run, load.id):
            raise busy(draft, held_by)
    for effect in row["do"]:
        EFFECTS[effect](scene)
    if subject == "load":
        load = scene.load
        if to == "none":
            return
        changed = load.state != to or load.phase_at is None
        draft.put_load(replace(load, state=to, phase_at=event.moment if changed else load.phase_at))


def find_row(subject: str, event: Event, state: str, step: Step | None) -> Row | None:
    """The first row for this kind and state whose ``when`` holds."""
    for row in rows()[subject].get((event.kind, state), ()):
        if all(_holds(condition, event, step) for condition in row.get("when", ())):
            return row
    return None


def _holds(condition: str, event: Event, step: Step | None) -> bool:
    if condition == "machine":
        return step is not None and step.has_machine
    if condition == "by hand":
        return step is not None and not step.has_machine
    return bool(event.get("how") == condition.removeprefix("how "))


def load_at_hand(draft: Draft, event: Event) -> tuple[Load, Step | None]:
    """The load that a press names, as it stands or not begun yet, and its step."""
    load = draft.load(event.run, event.load)
    key = load.step if load else (event.operation or step_of(event.load))
    step = _step_for(draft, event, key, load)
    if step is None:
        raise Refused("step unknown", step=key, tray=event.tray)
    if load is None:
        load = Load(event.load, event.run, step.key, event.station or step.operation.station, "none")
    if is_begun(load):
        return load, step
    load = _as_counted(draft, load)
    if load.state != "done":  # begun anew, and perhaps at another station than the one it was taken off
        load = replace(load, station=event.station or step.operation.station)
    return load, step


def _as_counted(draft: Draft, load: Load) -> Load:
    """A load that is not begun now is done as far as it was counted; the page knows no more than that."""
    before = counted_before(draft, load.run, load.id, load.step)
    if before:
        return replace(load, state="done", pieces=before)
    return replace(load, state="off") if load.state == "done" else load


def _step_for(draft: Draft, event: Event, key: str, load: Load | None) -> Step | None:
    run = draft.run(event.run)
    if load is not None and is_begun(load):
        return run.step_of(load)
    trays = list(load.pieces) if load else [*(event.get("pieces") or {}), *trays_of(event.load)]
    for tray in trays:
        if draft.has_tray(event.run, tray):
            return run.route_of(draft.tray(event.run, tray)).step(key)
    return run.route.step(key)


def tray_at_hand(draft: Draft, event: Event) -> tuple[Load, Step | None, str]:
    """The tray that a press names: the load it is counted in, its step, and whether pieces are in process."""
    tray = draft.tray(event.run, event.tray)
    step = draft.run(event.run).route_of(tray).step(event.operation) if event.operation else None
    if step is None and event.kind in ("pieces counted", "pieces held", "wait ended"):
        raise Refused("step unknown", step=event.operation, tray=event.tray)
    state = "open" if tray.in_process else "closed"
    none = Load("", event.run, "", "", "none")
    if step is None:
        return none, step, state
    load = draft.load(event.run, event.load) if event.load else None
    if load is None:
        inside = (load for load in draft.open_loads(event.run) if load.step == step.key and load.pieces.get(tray.id))
        load = next(inside, None)
    if load is None:
        key = event.load or assumed_load(step, tray.id)
        load = draft.load(event.run, key) or Load(key, event.run, step.key, step.operation.station, "none")
    return load, step, state
