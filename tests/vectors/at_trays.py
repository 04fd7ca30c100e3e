"""Presses at a tray: counts, moves, holds, waits, notes."""

from typing import Any

from tests.vectors.chooser import Chooser, Press, free_pieces


def count(it: Chooser) -> Press | None:
    run = it.run()
    if run is None:
        return None
    tray = it.tray(run)
    begun = [load for load in run.loads.values() if tray.id in load.pieces]
    if begun and it.random.random() < 0.7:
        load = it.one(begun)
        fields = {"run": run.id, "tray": tray.id, "operation": load.step}
        fields |= {"load": load.id} if it.random.random() < 0.5 else {}
        return "pieces counted", fields, it.counted(it.random.randint(1, max(1, load.pieces[tray.id])))
    at = list(tray.at) or [step.key for step in run.route_of(tray).steps]
    step = it.one(at) if not it.is_wild() else it.one((*run.route_of(tray).by_key, "nowhere"))
    fields = {"run": run.id, "tray": tray.id, "operation": step}
    return "pieces counted", fields, it.counted(it.random.randint(1, max(1, tray.at.get(step, 1))))


def split(it: Chooser) -> Press | None:
    """Some pieces leave as a tray of their own, at the same operation or an earlier one."""
    run = it.run()
    ready = [one for one in free_pieces(it, run) if one[2] > 1] if run else []
    if run is None or not ready:
        return None
    tray, step, there = it.one(ready)
    steps = run.route_of(tray).steps
    rework = it.random.random() < 0.5
    to = it.one(steps[: step.index + 1]) if rework else step
    if it.is_wild():
        to = it.one(steps)
    base = tray.id.rstrip("abcdefghijklmnopqrstuvwxyz")
    name = next(base + letter for letter in "abcdefghijklmnopqrstuvwxyz" if base + letter not in run.trays)
    body: dict[str, Any] = {"to": name, "pieces": it.random.randint(1, there - 1), "to_operation": to.key}
    body |= {"why": "rework" if rework else "split", "positions": [it.one((1, 2))]}
    return "pieces moved", {"run": run.id, "tray": tray.id, "operation": step.key}, body


def join_again(it: Chooser) -> Press | None:
    """Pieces go to another tray at the same operation: rework joins again, trays merge, a jig is filled."""
    run = it.run()
    if run is None:
        return None
    ready = free_pieces(it, run)
    pairs = [
        (tray, step, there, other)
        for tray, step, there in ready
        for other in run.trays.values()
        if other.id != tray.id and (other.at.get(step.key) or it.is_wild())
    ]
    if not pairs:
        return None
    back = [one for one in pairs if one[0].of]
    tray, step, there, other = it.one(back or pairs)
    body = {"to": other.id, "pieces": there, "to_operation": step.key, "why": it.one(("merge", "fill", "borrow"))}
    return "pieces moved", {"run": run.id, "tray": tray.id, "operation": step.key}, body


def good_back(it: Chooser) -> Press | None:
    """A piece that was good goes back."""
    run = it.run()
    good = [tray for tray in run.trays.values() if tray.good] if run else []
    if run is None or not good:
        return None
    tray = it.one(good)
    body = {
        "to": it.one((tray.id, f"{tray.id}x")),
        "pieces": 1,
        "to_operation": run.route.steps[-1].key,
        "why": "rework",
    }
    return "pieces moved", {"run": run.id, "tray": tray.id}, body


def busy_back(it: Chooser) -> Press | None:
    """Pieces leave a load that is begun; or more than there are, or none, or to where they are."""
    load = it.load("loading", "working", "unloading", "stopped", "ended")
    if load is None or not load.pieces:
        return None
    tray = it.one(load.pieces)
    body: dict[str, Any] = {"to": f"{tray}w", "pieces": 1, "to_operation": load.step, "why": "rework"}
    if it.is_wild():
        body |= it.one(({"pieces": 90}, {"pieces": 0}, {"to": tray}, {"to_operation": "nowhere"}))
    return "pieces moved", {"run": load.run, "tray": tray, "operation": load.step}, body


def hold(it: Chooser) -> Press | None:
    run = it.run()
    ready = free_pieces(it, run) if run else []
    if run is None or not ready:
        return None
    tray, step, there = it.one(ready)
    body: dict[str, Any] = {"why": "crack"}
    if it.random.random() < 0.6:
        body |= {"pieces": it.random.randint(1, there + (5 if it.is_wild() else 0)), "until": it.in_minutes(60)}
    return "pieces held", {"run": run.id, "tray": tray.id, "operation": step.key}, body


def release(it: Chooser) -> Press | None:
    run = it.run()
    held = [tray for tray in run.trays.values() if tray.holds or it.is_wild()] if run else []
    if run is None or not held:
        return None
    tray = it.one(held)
    step = tray.holds[0].step if tray.holds else ""
    fields = {"run": run.id, "tray": tray.id, **({"operation": step} if step and it.random.random() < 0.7 else {})}
    return "pieces released", fields, {}


def wait_over(it: Chooser) -> Press | None:
    run = it.run()
    resting = [tray for tray in run.trays.values() if tray.rests] if run else []
    if run is None or not resting:
        return None
    tray = it.one(resting)
    return "wait ended", {"run": run.id, "tray": tray.id, "operation": it.one(tray.rests)}, {}


def note_tray(it: Chooser) -> Press | None:
    run = it.run()
    if run is None:
        return None
    fields = {"run": run.id, "tray": it.tray(run).id if not it.is_wild() else "1"}
    placed = [{"position": at, "line": it.one("12-"), "text": "12"} for at in (1, 2, 3)]
    return it.one(
        (
            ("wood noted", fields, {"wood": "oak"}),
            ("wood noted", fields, {"board": "7"}),
            ("texts placed", fields, {"places": placed}),
            ("card printed", fields, {"print": it.random.randint(1, 3)}),
        )
    )
