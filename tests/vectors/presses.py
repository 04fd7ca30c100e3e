"""What somebody could press next, with its weight; people, stations, alerts and runs. The rest is next door.

The vectors and the state machine both press through ``choose``: (kind, envelope fields, body).
"""

from runboard.run.calls.dues import dues
from tests.vectors import at_loads, at_trays, beginnings
from tests.vectors.chooser import Chooser, Maker, Press, about


def choose(it: Chooser) -> Press:
    """One press."""
    return it.choose(MAKERS)


def choose_rare(it: Chooser) -> Press:
    """One press of those that come once in an evening."""
    return it.choose(RARE)


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


def after_a_run(it: Chooser) -> Press:
    run, none = it.run(), {"low": 0, "mid": 0, "high": 0}
    time = {"of": "rail", "step": "cut", "kind": "machine", "minutes": 41, "why": "new program"}
    if run is None:
        return "time overruled", {}, time
    change = {"kind": "capacity", "service": "rack", "capacity": it.one((12, 15))}
    adopted = {"of": run.product, "change": change, "earlier": none, "hands": none, "did": "noted"}
    judged = {"adopted": it.one(list(it.state.changes) or ["event-1"]), "verdict": "kept"}
    return it.one(
        (
            ("time overruled", {}, time),
            ("change adopted", {"run": run.id}, adopted),
            ("change judged", {"run": run.id}, judged),
            ("supply counted", {}, {"supply": "Hooks", "have": it.random.randint(0, 60)}),
            ("supply bought", {}, {"supply": "hooks", "amount": 50}),
            ("look passed", {"run": run.id}, {"check": "stock", "found": "a1", "initials": "AN"}),
            ("order ticked", {"run": run.id}, {"line": "1", "tick": "packed", "on": True}),
        )
    )


def alerts(it: Chooser) -> Press | None:
    due = list(dues(it.state, it.book).values())
    if not due:
        return None
    one = it.one(due)
    again = {"ask_again_at": it.in_minutes(it.one((10, 90)))}
    return it.one(
        (
            ("alert claimed", {}, {"alert": one.id}),
            ("alert answered", {}, {"alert": one.id, "answer": it.one(("ended", "seen", "done"))}),
            ("alert answered", {}, {"alert": one.id, "answer": "still running", **again}),
        )
    )


def _reminder(it: Chooser) -> str:
    known = [due.id for due in dues(it.state, it.book).values() if due.kind.startswith("care ")]
    return it.one(known or ["care end|rags"])


def questions(it: Chooser) -> Press | None:
    if it.state.asks:
        return "restart answered", {}, {"restart": it.one(it.state.asks)}
    return it.one(
        (
            ("reminder answered", {}, {"reminder": _reminder(it), "done": "in the tin"}),
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
        ("operation given", here, {"to": it.one(("ben", "ben", "")), "trays": [tray.id], "look": True}),
        ("look given", {**here, "tray": tray.id}, {"result": "pass"}),
        ("note written", here, {"text": "Ash is dry."}),
        ("lead called", {**here, "tray": tray.id}, {"why": it.one(("look", "help", "hurt"))}),
        ("orders changed", here, {"orders": [{"line": "1", "pieces": it.random.randint(1, 6)}]}),
    ]
    if board:
        some.append(("board lost", here, {"board": board, **it.one(({}, {"why": "split"}))}))
    return it.one(some)


def end_too_early(it: Chooser) -> Press | None:
    """A run is said to be over while a tray of it still waits, with a latest end."""
    for run in it.state.runs.values():
        quiet = run.state == "open" and not any(one.state == "running" or one.people for one in run.loads.values())
        rests = [rest for tray in run.trays.values() if tray.in_process for rest in tray.rests.values()]
        if quiet and it.is_wild() and any(rest.latest_at and rest.ended_at is None for rest in rests):
            return "run finished", {"run": run.id}, {}
    return None


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
    (beginnings.start, 10),
    (beginnings.begin_late, 4),
    (beginnings.skip, 3),
    (at_loads.join, 2),
    (at_loads.machine_start, 6),
    (at_loads.machine_end, 3),
    (at_loads.unload, 4),
    (at_loads.done, 9),
    (at_loads.done_again, 2),
    (at_loads.stray, 6),
    (at_loads.stop, 2),
    (at_loads.settle_stop, 4),
    (at_loads.aside, 2),
    (at_loads.take_off, 1),
    (at_loads.watching, 3),
    (at_trays.count, 4),
    (at_trays.split, 3),
    (at_trays.join_again, 3),
    (at_trays.good_back, 1),
    (at_trays.busy_back, 1),
    (at_trays.hold, 1),
    (at_trays.release, 2),
    (at_trays.wait_over, 2),
    (at_trays.note_tray, 2),
    (people, 4),
    (went, 1),
    (span_answered, 1),
    (stations, 2),
    (alerts, 3),
    (questions, 2),
    (runs, 2),
    (end_too_early, 4),
    (first_piece, 2),
    (settle_entry, 4),
)
RARE = tuple(
    (maker, 1)
    for maker in (
        people,
        went,
        stations,
        alerts,
        questions,
        runs,
        first_piece,
        after_a_run,
        at_trays.note_tray,
        at_loads.watching,
    )
)
