"""Presses that begin a load: in time, late, or with operations before it that nobody pressed."""

from typing import Any

from runboard.run.fold.names import next_load
from tests.vectors.chooser import Chooser, Press, free_pieces


def new_load(it: Chooser) -> tuple[dict[str, Any], dict[str, int], Any] | None:
    """A load that could be begun: envelope fields, its pieces, its step."""
    run = it.run()
    ready = free_pieces(it, run) if run else []
    ready = [one for one in ready if it.is_station_free(one[1].operation.station)]
    if run is None or not ready:
        return None
    tray, step, there = it.one(ready)
    pieces = {tray.id: there}
    key = next_load(run, step, (tray.id,))
    board = next((one for one, fed in run.boards.items() if tray.id in fed and one.split("/")[0] == step.key), None)
    if board is not None and it.random.random() < 0.8:
        key, pieces = board, {one: run.trays[one].free(step.key) for one in run.boards[board] if one in run.trays}
    elif there > 1 and it.random.random() < 0.2:
        pieces = {tray.id: it.random.randint(1, there - 1)}
    elif step.pass_.size == "run":
        others = [one.id for one, other, _ in ready if other.key == step.key]
        key = next_load(run, step, tuple(others))
        pieces = {one: run.trays[one].free(step.key) for one in others}
    fields = {"run": run.id, "load": key, "operation": step.key, "station": step.operation.station}
    return fields, {one: count for one, count in pieces.items() if count}, step


def start(it: Chooser) -> Press | None:
    found = new_load(it)
    if found is None:
        return None
    fields, pieces, _ = found
    body: dict[str, Any] = {"early": True} if it.random.random() < 0.5 else {}
    if it.random.random() < 0.7:
        body["pieces"] = pieces
    if it.random.random() < 0.2:
        tray = next(iter(pieces), None)
        placed = [{"position": at, "line": it.one("12-"), "text": "12"} for at in range(1, 3)]
        body |= {"places": {tray: placed}} if tray else {}
    return "load started", fields, body


def begin_late(it: Chooser) -> Press | None:
    """The first press of a load is not its start."""
    found = new_load(it)
    if found is None:
        return None
    fields, pieces, step = found
    kinds = (
        ["machine started", "machine ended", "unloading started", "load done"] if step.has_machine else ["load done"]
    )
    kind = it.one(kinds) if not it.is_wild() else it.one(("machine started", "load put aside", "watch checked"))
    body: dict[str, Any] = {}
    if kind == "load done" and it.random.random() < 0.6:
        body = {"counts": {tray: it.counted(count) for tray, count in pieces.items()}}
    if kind == "machine started" and it.random.random() < 0.5:
        body = {"minutes": it.one((5, 20.5))}
    return kind, fields, body


def skip(it: Chooser) -> Press | None:
    """A later operation is pressed, though nobody pressed the ones before."""
    run = it.run()
    ready = free_pieces(it, run) if run else []
    if run is None or not ready:
        return None
    tray, step, _ = it.one(ready)
    later = run.route_of(tray).steps[step.index + 1 : step.index + 4]
    later = [one for one in later if it.is_station_free(one.operation.station)]
    if not later:
        return None
    to = it.one(later)
    fields = {"run": run.id, "load": next_load(run, to, (tray.id,)), "operation": to.key}
    return it.one((("load started", fields, {"early": True}), ("load done", fields, {})))
