import random
from datetime import timedelta

import pytest

from runboard.run.fold.fold import fold
from runboard.run.fold.ledger import Ledger
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_from_json
from tests.core.pressing import Floor, conserved
from tests.scenario import shop


def a_busy_day() -> Floor:
    floor = Floor()
    floor.press("person came", {"until": "2026-06-01T20:00:00Z"})
    floor.open_run(trays=6)
    for board in "12":
        floor.press("load started", run="r1", load=f"cut/{board}")
        floor.press("machine started", run="r1", load=f"cut/{board}")
        floor.wait(40)
        floor.press("unloading started", run="r1", load=f"cut/{board}")
        floor.press("load done", run="r1", load=f"cut/{board}")
    for tray in "123456":
        floor.press("load started", run="r1", load=f"clean/{tray}")
        floor.wait(4)
        floor.press("load done", run="r1", load=f"clean/{tray}")
    return floor


def test_any_order_of_arrival_gives_the_same_state():
    floor = a_busy_day()
    events = list(floor.ledger.arrived.values())

    random.Random(4).shuffle(events)

    assert fold(floor.book, events) == floor.state


def test_one_event_at_a_time_in_any_order_gives_the_same_state():
    floor = a_busy_day()
    events = list(floor.ledger.arrived.values())
    random.Random(5).shuffle(events)
    ledger = Ledger(floor.book)

    for seq, event in enumerate(events, 1):
        ledger.keep(ledger.try_event(event), seq)

    assert ledger.state == floor.state


def test_an_undone_press_never_happened():
    floor = a_busy_day()
    before = floor.run
    pressed = floor.press("load started", run="r1", load="sand:120/1")

    floor.press("event undone", {"event": pressed.id})

    assert floor.run.loads == before.loads
    assert floor.run.trays == before.trays
    assert floor.state.people["ann"].hands is None


def test_an_undo_can_itself_be_undone():
    floor = a_busy_day()
    pressed = floor.press("load started", run="r1", load="sand:120/1")
    undo = floor.press("event undone", {"event": pressed.id})

    floor.press("event undone", {"event": undo.id})

    assert "sand:120/1" in floor.run.loads


def test_undoing_what_later_presses_lean_on_is_refused():
    floor = a_busy_day()
    moved = {"to": "1a", "pieces": 2, "to_operation": "sand:120", "why": "split"}
    split = floor.press("pieces moved", moved, run="r1", tray="1", operation="sand:120")
    floor.press("load started", run="r1", load="sand:120/1a")

    with pytest.raises(Refused) as refused:
        floor.press("event undone", {"event": split.id})

    assert refused.value.code == "later press"


def test_an_amended_press_counts_as_amended():
    floor = a_busy_day()
    done = floor.press("load done", run="r1", load="sand:120/1")
    counts = {"1": {"good": 4, "scrap": [{"pieces": 1, "why": "tear-out"}]}}

    floor.press("event amended", {"event": done.id, "body": {"counts": counts}})

    assert floor.run.trays["1"].at == {"sand:180": 4}
    assert conserved(floor.run)


def test_a_late_press_rewinds():
    floor = a_busy_day()
    floor.wait(30)

    floor.late(15, "load started", run="r1", load="sand:120/1")
    floor.press("load done", run="r1", load="sand:120/1")

    span = floor.run.past["sand:120/1"].spans[0]
    assert span.ended_at - span.began_at > (floor.now - floor.now) and span.kind == "hand"
    assert (span.ended_at - span.began_at).total_seconds() == pytest.approx(900, abs=3)


def test_a_press_that_comes_a_little_late_folds_only_what_came_after_it_again():
    """Eight phones that press at once are all a little late, and everybody waits while the fold is made again."""
    floor = a_busy_day()
    for person in ("ann", "ben", "ann"):
        floor.press("person came", {"until": "2026-06-01T21:00:00Z"}, person=person)

    a_little_late = floor.event("person came", {}, at=(floor.now - timedelta(seconds=2.5)).isoformat(), person="ben")

    assert floor.ledger.try_event(a_little_late).rewound == 3


def test_nobody_and_nothing_is_in_two_places():
    floor = a_busy_day()
    floor.press("load started", run="r1", load="sand:120/1")
    floor.press("load started", run="r1", load="engrave/2")

    at = [load for load in floor.run.loads.values() if "ann" in load.people]

    assert [load.id for load in at] == ["engrave/2"]


def test_a_restart_asks_what_was_running_until_somebody_answers():
    floor = a_busy_day()
    asked = floor.press("server restarted", {"open": ["r1|sand:120/1"]}, person="")

    assert floor.state.asks[asked.id]["code"] == "what was running"
    floor.press("restart answered", {"restart": asked.id})
    assert floor.state.asks == {}


def test_a_book_that_the_fold_reads_otherwise_is_folded_again():
    floor = a_busy_day()
    record = shop() | {"stations": [one | {"room": "house"} for one in shop()["stations"]]}
    book = book_from_json(record)

    floor.ledger.take_book(book)

    assert floor.state.people["ann"].room == "house"
    assert floor.state == fold(book, floor.ledger.arrived.values())
