"""Presses at a load that is begun, or was."""

from typing import Any

from tests.vectors.chooser import Chooser, Press, about


def join(it: Chooser) -> Press | None:
    load = it.load("loading", "working", "unloading")
    return ("load started", about(load), {}) if load else None


def machine_start(it: Chooser) -> Press | None:
    load = it.load("loading", "loading", "stopped", "running", "ended")
    if load is None:
        return None
    return "machine started", about(load), it.one(({}, {"minutes": 12}, {"minutes": 1.5}))


def machine_end(it: Chooser) -> Press | None:
    load = it.load("loading", "running", "running", "ended", "unloading")
    return ("machine ended", about(load), {}) if load else None


def unload(it: Chooser) -> Press | None:
    load = it.load("loading", "running", "ended", "ended", "unloading")
    return ("unloading started", about(load), {}) if load else None


def done(it: Chooser) -> Press | None:
    load = it.load("working", "unloading", "ended", "running", "stopped", "loading")
    if load is None:
        return None
    body: dict[str, Any] = {}
    if it.random.random() < 0.3:
        body = {"counts": {tray: it.counted(count) for tray, count in load.pieces.items()}}
    elif it.random.random() < 0.1:
        body = {"counts": {"*": it.counted(sum(load.pieces.values()))}}
    return "load done", about(load), body


def done_again(it: Chooser) -> Press | None:
    """A count, or another press, for a load that is done or was taken off."""
    run = it.run()
    if run is None or not run.past:
        return None
    load = it.one(run.past.values())
    if load.state == "done" and it.random.random() < 0.6:
        counts = {tray: it.counted(max(1, count)) for tray, count in load.pieces.items()}
        return "load done", about(load), {"counts": counts}
    return it.one(("machine ended", "watch checked", "load done", "load started", "load put aside")), about(load), {}


def stray(it: Chooser) -> Press | None:
    """Any press of a load on any load, or on what nobody knows: only where presses may be wild."""
    run = it.run()
    if run is None or not it.is_wild():
        return None
    known = [*run.loads.values(), *run.past.values()]
    if known and it.random.random() < 0.8:
        load = it.one([one for one in known if one.state in ("off", "stopped")] or known)
        return it.one(PLAIN), about(load), {}
    return it.one(
        (
            ("wood noted", {"run": run.id, "tray": "99"}, {"wood": "oak"}),
            ("setup changed", {"station": "lathe"}, {"what": "jig"}),
            ("board lost", {"run": run.id}, {"board": "cut/9"}),
            ("run finished", {"run": run.id}, {}),
            ("run abandoned", {"run": run.id}, {"why": "no more orders"}),
        )
    )


PLAIN = (
    "load started",
    "machine started",
    "machine ended",
    "unloading started",
    "load done",
    "watch checked",
    "watch checked",
    "watch taken",
    "load put aside",
    "load taken off",
)


def stop(it: Chooser) -> Press | None:
    load = it.load("running", "running", "loading", "working", "ended", "unloading")
    if load is None:
        return None
    body = {"why": it.one(("power", "cutter", "slip", "failed", "other")), "good": [1], "half": [2]}
    return "load stopped", about(load), body


def settle_stop(it: Chooser) -> Press | None:
    load = it.load("stopped")
    if load is None:
        return None
    how = it.one(("resume", "again", "save", "scrap"))
    body: dict[str, Any] = {"how": how}
    if how == "save" and it.random.random() < 0.7:
        body["counts"] = {tray: {"good": min(1, count)} for tray, count in load.pieces.items()}
    return "stop settled", about(load), body


def aside(it: Chooser) -> Press | None:
    load = it.load("loading", "working", "unloading")
    return (it.one(("load put aside", "load put aside", "load taken off")), about(load), {}) if load else None


def take_off(it: Chooser) -> Press | None:
    load = it.load("loading", "working", "running", "ended", "unloading", "stopped")
    return ("load taken off", about(load), {}) if load and it.random.random() < 0.4 else None


def watching(it: Chooser) -> Press | None:
    load = it.load("running")
    if load is None:
        return None
    return it.one((("watch checked", about(load), {"at_check": load.checks}), ("watch taken", about(load), {})))
