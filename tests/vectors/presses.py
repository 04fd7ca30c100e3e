"""What somebody could press next, chosen by chance from a state: mostly what is possible, sometimes what is not.

``choose`` gives (kind, envelope fields, body). The vectors and the state machine both press through it.
"""

from collections.abc import Callable
from datetime import datetime, timedelta
from random import Random
from typing import Any

from runboard.run.dues import dues
from runboard.run.event import write_moment
from runboard.run.names import next_load
from runboard.run.state import Load, RunState, ShopState, Tray
from runboard.shop.book import Book

Press = tuple[str, dict[str, Any], dict[str, Any]]
WHY = ("tear-out", "knot", "burnt")


class Chooser:
    """Somebody at a moment in a state. ``wild`` is the share of presses that need not make sense."""

    def __init__(self, state: ShopState, book: Book, random: Random, now: datetime, wild: float = 0.1) -> None:
        self.state, self.book, self.random, self.now, self.wild = state, book, random, now, wild

    def choose(self) -> Press:
        makers = [one for one, weight in MAKERS for _ in range(weight)]
        while True:
            press = self.random.choice(makers)(self)
            if press is not None:
                return press

    # what there is

    def is_wild(self) -> bool:
        return self.random.random() < self.wild

    def one(self, some: Any) -> Any:
        return self.random.choice(list(some))

    def in_minutes(self, minutes: float) -> str:
        return write_moment(self.now + timedelta(minutes=minutes))

    def run(self) -> RunState | None:
        runs = [run for run in self.state.runs.values() if run.state == "open" or self.is_wild()]
        return self.one(runs) if runs else None

    def tray(self, run: RunState) -> Tray:
        return self.one(run.trays.values())

    def load(self, *states: str) -> Load | None:
        """An open load in one of these states; any where the press is a wild one."""
        loads = [load for run in self.state.runs.values() if run.state == "open" for load in run.loads.values()]
        fit = [load for load in loads if load.state in states]
        return self.one(fit or loads) if fit or (loads and self.is_wild()) else None

    def is_station_free(self, key: str) -> bool:
        station = self.state.stations.get(key)
        return station is None or (station.load is None and station.out is None) or self.is_wild()

    def counted(self, there: int) -> dict[str, Any]:
        """A count of ``there`` pieces: mostly all good."""
        scrap = min(there, 1) if self.random.random() < 0.3 else 0
        short = 1 if self.random.random() < 0.1 else 0
        over = 3 if self.is_wild() and self.is_wild() else 0
        found: dict[str, Any] = {"good": max(0, there - scrap - short) + over}
        if scrap:
            found["scrap"] = [{"pieces": scrap, "why": self.one(WHY), "positions": [self.one((1, 2, 3))]}]
        return found


Maker = Callable[[Chooser], Press | None]


def about(load: Load) -> dict[str, Any]:
    return {"run": load.run, "load": load.id, "operation": load.step, "station": load.station}


def free_pieces(it: Chooser, run: RunState) -> list[tuple[Tray, Any, int]]:
    """(tray, step, free pieces) wherever pieces of a run wait for somebody."""
    found = []
    for tray in run.trays.values():
        for step in run.route_of(tray).steps:
            if tray.free(step.key):
                found.append((tray, step, tray.free(step.key)))
    return found


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


def people(it: Chooser) -> Press | None:
    return it.one(
        (
            ("person came", {}, {"until": it.in_minutes(120), "room": "shop"}),
            ("person came", {}, {}),
            ("person called away", {}, {}),
            ("person came back", {}, {}),
            ("room changed", {}, {"room": it.one(("shop", "house"))}),
            ("time said", {}, {"until": it.in_minutes(90)}),
            ("job started", {}, {"job": "bins"}),
            ("job done", {}, {"job": "bins"}),
            ("move declined", {}, {"move": "start|r1|cut/1", "because": "later", "until": it.in_minutes(30)}),
            ("move declined", {}, {"move": "job|bins", "because": "done"}),
            ("shown how", {"station": "laser"}, {"person": "ben"}),
        )
    )


def went(it: Chooser) -> Press | None:
    return ("person went", {}, {"ticked": ["rags"]}) if it.random.random() < 0.3 else None


def span_answered(it: Chooser) -> Press | None:
    run = it.run()
    past = [load for load in run.past.values() if load.spans] if run else []
    if not past:
        return None
    load = it.one(past)
    body = it.one(({"answer": "all"}, {"answer": "unknown"}, {"answer": "about", "minutes": 4}))
    return "span answered", about(load), {"span": load.spans[0].event, **body}


def stations(it: Chooser) -> Press | None:
    out = [one.key for one in it.state.stations.values() if one.out]
    if out:
        return "station back in use", {"station": it.one(out)}, {}
    station = it.one(("cnc", "bench", "sander", "laser"))
    return it.one(
        (
            ("station out of use", {"station": "laser"}, {"why": "lens", "until": it.in_minutes(60)}),
            ("station out of use", {"station": "sander"}, {}),
            ("setup changed", {"station": station}, {"what": "cutter"}),
            ("checklist ticked", {"station": station}, {"list": "full", "items": ["guard"]}),
            ("checklist ticked", {"station": station}, {"list": "short"}),
            ("signal received", {"station": "cnc"}, {"on": True, "source": "plug"}),
        )
    )


def alerts(it: Chooser) -> Press | None:
    due = list(dues(it.state, it.book).values())
    if not due:
        return None
    one = it.one(due)
    again = {"ask_again_at": it.in_minutes(10)}
    return it.one(
        (
            ("alert claimed", {}, {"alert": one.id}),
            ("alert answered", {}, {"alert": one.id, "answer": it.one(("ended", "seen", "done"))}),
            ("alert answered", {}, {"alert": one.id, "answer": "still running", **again}),
        )
    )


def questions(it: Chooser) -> Press | None:
    if it.state.asks:
        return "restart answered", {}, {"restart": it.one(it.state.asks)}
    return it.one(
        (
            ("reminder answered", {}, {"reminder": "rags", "done": "in the tin"}),
            ("server restarted", {"person": ""}, {"open": ["r1|cut/1"], "last_at": it.in_minutes(-5)}),
        )
    )


def runs(it: Chooser) -> Press | None:
    run = it.run()
    if run is None:
        return None
    tray, step = it.tray(run), it.one(run.route.steps)
    here = {"run": run.id, "operation": step.key}
    board = it.one((*run.boards, "")) if run.boards else ""
    some = [
        ("supply out", here, {"supply": "hooks", "until": it.in_minutes(240)}),
        ("supply in", here, {"supply": "hooks"}),
        ("operation given", here, {"to": "ben", "trays": [tray.id], "look": True}),
        ("look given", {**here, "tray": tray.id}, {"result": "pass"}),
        ("note written", here, {"text": "Ash is dry."}),
        ("orders changed", here, {"orders": [{"line": "1", "pieces": it.random.randint(1, 6)}]}),
    ]
    if board:
        some.append(("board lost", here, {"board": board, **it.one(({}, {"why": "split"}))}))
    return it.one(some)


def first_piece(it: Chooser) -> Press | None:
    run = it.run()
    if run is None:
        return None
    if run.stopped:
        return (
            "first piece decided",
            {"run": run.id, "operation": it.one(run.stopped)},
            {"what": it.one(("go on", "check again"))},
        )
    checked = [step for step in run.route.steps if step.operation.checks]
    step = it.one(checked or run.route.steps)
    check = it.one([one.key for one in step.operation.checks] or ["edge"])
    fields = {"run": run.id, "operation": step.key, "load": it.one([*run.loads, f"{step.key}/1"])}
    return "first piece checked", fields, {"result": it.one(("pass", "pass", "fail")), "check": check}


def settle_entry(it: Chooser) -> Press | None:
    if not it.state.unsettled:
        return ("entry settled", {}, {"event": "press-gone", "keep": "shop"}) if it.is_wild() else None
    entry = it.one(it.state.unsettled.values())
    body = {"event": entry.event, "keep": it.one(("shop", "press"))}
    return "entry settled", {"run": entry.run} if entry.run in it.state.runs else {}, body


MAKERS: tuple[tuple[Maker, int], ...] = (
    (start, 10),
    (begin_late, 4),
    (skip, 3),
    (join, 2),
    (machine_start, 6),
    (machine_end, 3),
    (unload, 4),
    (done, 9),
    (done_again, 2),
    (stray, 6),
    (stop, 2),
    (settle_stop, 4),
    (aside, 2),
    (take_off, 1),
    (watching, 3),
    (count, 4),
    (split, 3),
    (join_again, 3),
    (good_back, 1),
    (busy_back, 1),
    (hold, 1),
    (release, 2),
    (wait_over, 2),
    (note_tray, 2),
    (people, 4),
    (went, 1),
    (span_answered, 1),
    (stations, 2),
    (alerts, 3),
    (questions, 1),
    (runs, 2),
    (first_piece, 2),
    (settle_entry, 4),
)
