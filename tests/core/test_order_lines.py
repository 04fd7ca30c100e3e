"""Who gets what: which good pieces are whose, and the three ticks of an order line, whatever comes late, twice or after the end."""

import random

import pytest

from runboard.run.fold.fold import fold
from runboard.run.refusal import Refused
from runboard.run.rules.allotted import allotted, lines_of
from tests.core.pressing import Floor
from tests.scenario import key_rails

SOON, LATER = "2026-06-05T10:00:00Z", "2026-06-09T10:00:00Z"


def plain_rails() -> dict[str, object]:
    """Rails without a text of their own, made by hand at one bench."""
    record = key_rails()
    record["operations"] = [one for one in record["operations"] if one["key"] in ("clean", "hooks")]
    return record


def a_run(orders: list[dict[str, object]] | None = None, trays: int = 2, **body: object) -> Floor:
    floor = Floor()
    lines = orders or [
        {"line": "1", "pieces": 4, "for": "Meyer", "due": LATER},
        {"line": "2", "pieces": 3, "for": "Ito", "due": SOON},
        {"line": "3", "pieces": 2},
    ]
    floor.open_run(trays, orders=lines, product=plain_rails(), boards={}, **body)
    return floor


def done(floor: Floor, tray: str, good: int = 5) -> None:
    """A tray through its last operation, so many of it good."""
    scrap = [{"pieces": 5 - good, "why": "split"}] if good < 5 else []
    floor.press("pieces counted", {"good": good, "scrap": scrap}, run="r1", tray=tray, operation="hooks")


def tick(floor: Floor, tick: str = "packed", on: bool = True, line: str = "1", **more: object) -> None:
    floor.press("order ticked", {"line": line, "tick": tick, "on": on}, run="r1", **more)


def ticks(floor: Floor, line: str = "1") -> list[str]:
    return sorted(floor.run.ticks.get(line, ()))


def test_good_pieces_go_to_the_earliest_due_first() -> None:
    floor = a_run()

    assert allotted(floor.run) == {"2": 0, "1": 0, "3": 0}
    done(floor, "1")
    assert allotted(floor.run) == {"2": 3, "1": 2, "3": 0}
    done(floor, "2")
    assert allotted(floor.run) == {"2": 3, "1": 4, "3": 2}


def test_a_piece_with_a_text_is_its_line_s_and_nobody_else_s() -> None:
    floor = a_run([{"line": "1", "pieces": 3, "text": "12", "due": LATER}, {"line": "2", "pieces": 3, "due": SOON}])
    placed = [{"position": at, "line": "1", "text": "12"} for at in (1, 2, 3)]
    floor.press("texts placed", {"places": placed}, run="r1", tray="1")
    done(floor, "1")

    assert allotted(floor.run) == {"2": 2, "1": 3}


def test_a_piece_whose_line_is_no_longer_wanted_goes_to_nobody() -> None:
    floor = a_run([{"line": "1", "pieces": 5, "text": "12"}, {"line": "2", "pieces": 3}])
    floor.press(
        "texts placed",
        {"places": [{"position": at, "line": "1", "text": "12"} for at in (1, 2, 3, 4)]},
        run="r1",
        tray="1",
    )
    floor.press("orders changed", {"orders": [{"line": "2", "pieces": 3}]}, run="r1")
    done(floor, "1")

    assert allotted(floor.run) == {"2": 1}


def test_what_is_ready_and_not_collected_stands_first() -> None:
    floor = a_run()
    done(floor, "1")

    assert [(one.order.line, one.ready) for one in lines_of(floor.run)] == [("2", 3), ("1", 2), ("3", 0)]
    tick(floor, "collected", line="2")
    assert [one.order.line for one in lines_of(floor.run)] == ["1", "3", "2"]


def test_a_tick_says_who_and_when_and_is_taken_back_by_pressing_again() -> None:
    floor = a_run()
    pressed = floor.press("order ticked", {"line": "1", "tick": "packed", "on": True}, run="r1", person="ben")

    assert floor.run.ticks["1"]["packed"].person == "ben"
    assert floor.run.ticks["1"]["packed"].at == pressed.moment
    tick(floor, on=False)
    assert ticks(floor) == []


def test_a_tick_pressed_twice_counts_once_and_one_that_is_off_may_be_taken_off() -> None:
    floor = a_run()
    tick(floor, person="ann")
    first = floor.run.ticks["1"]["packed"]
    tick(floor, person="ben")

    assert floor.run.ticks["1"]["packed"] == first
    tick(floor, "paid", on=False)
    assert ticks(floor) == ["packed"]


def test_an_edited_order_line_keeps_its_ticks() -> None:
    floor = a_run()
    tick(floor)
    tick(floor, "paid")

    floor.press("orders changed", {"orders": [{"line": "1", "pieces": 2, "for": "Meyer jr"}]}, run="r1")

    assert ticks(floor) == ["packed", "paid"]


def test_a_line_that_there_is_not_is_refused_up_to_date_and_kept_blind() -> None:
    floor = a_run()

    with pytest.raises(Refused, match="line unknown"):
        tick(floor, line="9")
    floor.blind("order ticked", {"line": "9", "tick": "paid", "on": True}, run="r1")
    assert [entry.code for entry in floor.state.unsettled.values()] == ["line unknown"]


@pytest.mark.parametrize("end", ["run finished", "run abandoned"])
def test_pieces_are_collected_and_paid_after_the_run_is_over(end: str) -> None:
    floor = a_run()
    done(floor, "1")
    done(floor, "2")
    floor.press(end, run="r1")

    tick(floor, "collected")
    floor.blind("order ticked", {"line": "1", "tick": "paid", "on": True}, run="r1")

    assert ticks(floor) == ["collected", "paid"]
    assert not floor.state.unsettled


def test_a_late_tick_does_not_outlive_one_that_was_pressed_after_it() -> None:
    floor = a_run()
    floor.wait(60)
    tick(floor, on=False)
    floor.late(30, "order ticked", {"line": "1", "tick": "packed", "on": True}, run="r1", device="other phone")

    assert ticks(floor) == []


def test_an_undone_tick_never_was() -> None:
    floor = a_run()
    pressed = floor.press("order ticked", {"line": "1", "tick": "packed", "on": True}, run="r1")
    floor.press("event undone", {"event": pressed.id})

    assert ticks(floor) == []


@pytest.mark.parametrize("seed", range(6))
def test_ticks_in_any_order_of_arrival_give_the_same_state(seed: int) -> None:
    floor, dice = a_run(), random.Random(seed)
    for _ in range(30):
        tick(floor, dice.choice(("packed", "collected", "paid")), dice.random() < 0.6, dice.choice("123"))
    done(floor, "1", 3)
    floor.press("run abandoned", run="r1")
    tick(floor, "paid", line="2")
    events = list(floor.ledger.arrived.values())

    dice.shuffle(events)

    assert fold(floor.book, events) == floor.state


def test_a_tick_that_was_meant_for_another_line_is_put_right_by_an_amendment() -> None:
    floor = a_run()
    pressed = floor.press("order ticked", {"line": "1", "tick": "packed", "on": True}, run="r1")

    floor.press("event amended", {"event": pressed.id, "body": {"line": "2"}})

    assert (ticks(floor, "1"), ticks(floor, "2")) == ([], ["packed"])


def test_a_blind_tick_of_a_line_that_came_later_is_settled_by_pressing_it_after_all() -> None:
    floor = a_run()
    blind = floor.blind("order ticked", {"line": "9", "tick": "paid", "on": True}, run="r1")
    floor.press("orders changed", {"orders": [{"line": "9", "pieces": 1}]}, run="r1")

    floor.press("entry settled", {"event": blind.id, "keep": "press"})

    assert ticks(floor, "9") == ["paid"]
    assert not floor.state.unsettled


def test_a_part_is_ticked_until_the_rest_is_too_and_nothing_less_comes_after_all() -> None:
    floor = a_run()
    done(floor, "1")
    for pieces, held in ((2, 2), (2, 2), (3, 3), (0, 0), (2, 0)):
        more = {"pieces": pieces} if pieces else {}
        floor.press("order ticked", {"line": "1", "tick": "collected", "on": True, **more}, run="r1")
        assert floor.run.ticks["1"]["collected"].pieces == held


def test_a_line_of_which_a_part_is_collected_is_for_now_again_when_more_of_it_is_ready() -> None:
    floor = a_run()
    done(floor, "1")
    floor.press("order ticked", {"line": "1", "tick": "collected", "on": True, "pieces": 2}, run="r1")
    assert [(one.order.line, one.is_for_now, one.is_over) for one in lines_of(floor.run)] == [
        ("2", True, False),
        ("1", False, False),
        ("3", False, False),
    ]

    done(floor, "2")

    assert [one.order.line for one in lines_of(floor.run) if one.is_for_now] == ["2", "1", "3"]
