"""What came of a run: yields, what was lost, order lines, plan against actual, the process chart, the plan of then."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise
from typing import Any

import pytest

from runboard.plan.estimates import Estimates
from runboard.review.happened.happened import happened
from runboard.review.happened.nouns import Happened
from tests.core.pasts import past_of
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop

CLEAN = operation("clean", "bench", a_pass(hand=1))
SAND = operation("sand", "sander", a_pass("120", setup=2, hand=2), a_pass("180", hand=1))
PACK = operation("pack", "laser", a_pass(hand=1))


def minutes(length: timedelta | None) -> float | None:
    return None if length is None else round(length.total_seconds() / 60, 1)


def small(*operations: dict[str, Any], trays: int = 2, **body: Any) -> Floor:
    """A run of trays of five, each from a board of its own."""
    floor = Floor()
    product = {"key": "rail", "name": "Rails", "pieces_a_tray": 5, "operations": list(operations)}
    there = [{"tray": str(number), "pieces": 5} for number in range(1, trays + 1)]
    boards = {f"{operations[0]['key']}/b{number}": {str(number): 5} for number in range(1, trays + 1)}
    wanted = {"name": "Rails", "product": product, "orders": [], "trays": there, "boards": boards, "wood": "ash"}
    floor.press("run opened", {**wanted, **body}, run="r1")
    return floor


def works(floor: Floor, load: str, length: float = 5, **body: Any) -> None:
    floor.press("load started", run="r1", load=load)
    floor.wait(length)
    floor.press("load done", body, run="r1", load=load)


def scrap(tray: str, good: int, **why: int) -> dict[str, Any]:
    reasons = [{"why": reason, "pieces": pieces} for reason, pieces in why.items()]
    return {"counts": {tray: {"good": good, "scrap": reasons}}}


def told(floor: Floor) -> Happened:
    return happened(past_of(floor), ((), None))


def with_plan(floor: Floor, **more: Any) -> Happened:
    return happened(past_of(floor, **more))


# yields and what was lost


def test_what_was_lost_is_grouped_by_step_reason_wood_and_board_most_first() -> None:
    floor = small(CLEAN, SAND)
    works(floor, "clean/1", **scrap("1", 4, knot=1))
    works(floor, "clean/2", **scrap("2", 2, chips=3))

    lost = told(floor).lost

    assert [(one.step, one.reason, one.wood, one.board, one.pieces) for one in lost] == [
        ("clean", "chips", "ash", "b2", 3),
        ("clean", "knot", "ash", "b1", 1),
    ]


def test_first_pass_and_rolled_yield_of_scrap_alone() -> None:
    floor = small(CLEAN, PACK)
    works(floor, "clean/1", **scrap("1", 4, knot=1))
    works(floor, "clean/2")
    works(floor, "pack/1", **scrap("1", 3, chips=1))

    found = told(floor)

    assert [(one.step, one.into, one.first_good, one.good) for one in found.yields] == [
        ("clean", 10, 9, 9),
        ("pack", 4, 3, 3),
    ]
    assert found.rolled == pytest.approx(0.9 * 0.75)
    assert found.first_pass == pytest.approx(3 / 5)
    assert (found.started, found.good, found.scrap) == (10, 3, 2)


def test_a_piece_that_was_done_again_is_good_in_the_end_and_not_at_the_first_go() -> None:
    floor = small(CLEAN, PACK, trays=1)
    works(floor, "clean/1")
    again = {"to": "1a", "pieces": 2, "to_operation": "clean", "why": "rework"}
    floor.press("pieces moved", again, run="r1", tray="1", operation="pack")
    before = told(floor).yields[0]
    works(floor, "clean/1a")
    works(floor, "pack/1")
    works(floor, "pack/1a")

    found = told(floor)

    assert (before.into, before.first_good, before.good) == (5, 3, 3)
    assert [(one.into, one.first_good, one.good) for one in found.yields] == [(5, 3, 5), (5, 5, 5)]
    assert found.first_pass == pytest.approx(3 / 5)


def test_without_any_count_no_yield_is_known() -> None:
    found = told(small(CLEAN))

    assert (found.yields, found.rolled, found.first_pass, found.a_good_piece) == ((), None, None, None)


def test_scrap_is_told_by_the_age_of_a_cutter_where_a_change_was_said() -> None:
    floor = Floor()
    floor.open_run(trays=9)
    for board, lost in (("cut/1", 0), ("cut/2", 2), ("cut/3", 0)):
        if board == "cut/3":
            floor.press("setup changed", {"what": "cutter"}, station="cnc")
        floor.press("load started", run="r1", load=board)
        floor.press("machine started", run="r1", load=board)
        floor.wait(45)
        counts = {"*": {"good": 15 - lost, "scrap": [{"why": "chips", "pieces": lost}] if lost else []}}
        floor.press("load done", {"counts": counts}, run="r1", load=board)

    changes = told(floor).since_changes

    assert [(one.station, one.what, one.hours) for one in changes] == [
        ("cnc", "", ((15, 0), (15, 2))),
        ("cnc", "cutter", ((15, 0),)),
    ]


# order lines


def due(floor: Floor, hours: float) -> str:
    return (floor.now + timedelta(hours=hours)).isoformat()


def test_good_pieces_go_to_the_earliest_due_first_and_a_line_is_as_late_as_its_last_piece() -> None:
    floor = Floor()
    orders = [
        {"line": "1", "pieces": 3, "for": "Mill Lane", "due": due(floor, 48)},
        {"line": "2", "pieces": 4, "for": "Quarry Road", "due": due(floor, 1)},
        {"line": "3", "pieces": 9, "due": None},
    ]
    floor = small(CLEAN, orders=orders)
    floor.wait(30)
    works(floor, "clean/1")
    floor.wait(60)
    works(floor, "clean/2")

    lines = told(floor).order_lines

    assert [(one.line, one.whom, one.done is not None, minutes(one.late)) for one in lines] == [
        ("2", "Quarry Road", True, 0.0),
        ("1", "Mill Lane", True, 0.0),
        ("3", "", False, None),
    ]
    assert lines[1].done is not None and lines[0].done is not None
    assert minutes(lines[1].done - lines[0].done) == 65.0


def test_a_line_whose_last_piece_came_after_its_due_is_late_by_that() -> None:
    floor = Floor()
    floor = small(CLEAN, orders=[{"line": "1", "pieces": 6, "due": due(floor, 1)}])
    works(floor, "clean/1")
    floor.wait(90)
    works(floor, "clean/2")

    (line,) = told(floor).order_lines

    assert round(minutes(line.late) or 0) == 40


def test_what_was_good_and_went_back_is_there_when_it_is_good_again() -> None:
    floor = small(CLEAN, PACK, trays=1, orders=[{"line": "1", "pieces": 5}])
    works(floor, "clean/1")
    works(floor, "pack/1")
    floor.press("pieces moved", {"to": "1a", "pieces": 1, "to_operation": "pack", "why": "rework"}, run="r1", tray="1")
    (open_line,) = told(floor).order_lines
    floor.wait(30)
    works(floor, "pack/1a")

    (line,) = told(floor).order_lines

    assert open_line.done is None
    assert line.done == floor.run.past["pack/1a"].done_at


# plan against actual


def test_a_bar_sets_the_guess_for_what_was_done_beside_what_it_took() -> None:
    floor = small(CLEAN, SAND)
    works(floor, "clean/1", 10)
    works(floor, "sand:120/1", 9)
    works(floor, "sand:180/1", 4)

    bars = told(floor).bars

    assert [(one.operation, minutes(one.guess), minutes(one.taken), minutes(one.hands_taken)) for one in bars] == [
        ("clean", 5.0, 10.0, 10.0),
        ("sand", 17.0, 13.0, 13.0),
    ]
    assert [one.operation for one in told(floor).pareto] == ["sand", "clean"]
    assert sum(one.share for one in bars) == pytest.approx(1)


def test_of_what_nobody_measured_the_guess_is_known_and_what_it_took_is_not() -> None:
    floor = small(CLEAN, PACK)
    works(floor, "pack/1")

    (clean, pack) = told(floor).bars

    assert (clean.operation, minutes(clean.guess), clean.taken, clean.hands_taken) == ("clean", 5.0, None, None)
    assert minutes(pack.taken) == 5.0


def test_hands_of_a_machine_load_are_told_from_its_machine() -> None:
    floor = Floor()
    floor.open_run()
    floor.press("load started", run="r1", load="cut/1")
    floor.wait(9)
    floor.press("machine started", run="r1", load="cut/1")
    floor.wait(40)
    floor.press("load done", run="r1", load="cut/1")

    (bar,) = told(floor).bars

    # A setup of 4 and a loading of 2 minutes were believed; without 'at it' the unloading is known of neither.
    assert (minutes(bar.guess), minutes(bar.taken)) == (44.0, 49.0)
    assert (minutes(bar.hands_guess), minutes(bar.hands_taken)) == (6.0, 9.0)


def test_an_estimates_error_is_signed_and_lies_within_its_spread_or_not() -> None:
    floor = small(CLEAN, PACK)
    works(floor, "clean/1", 6)
    works(floor, "pack/1", 40)

    (clean, pack) = told(floor).errors

    assert (clean.kind, clean.n, round(clean.error, 1), clean.is_within) == ("hand", 1, 0.2, True)
    assert (pack.kind, round(pack.error, 1), pack.is_within) == ("hand", 7.0, False)


def test_what_was_interrupted_teaches_no_error() -> None:
    floor = small(CLEAN)
    floor.press("load started", run="r1", load="clean/1")
    floor.wait(3)
    floor.press("person called away")
    floor.press("load done", run="r1", load="clean/1")

    assert told(floor).errors == ()


def test_good_pieces_a_hands_on_hour() -> None:
    floor = small(CLEAN)
    works(floor, "clean/1", 10)

    found = told(floor)

    assert found.pieces_an_hour == pytest.approx(30, rel=0.01)
    assert minutes(found.a_good_piece) == 2.0


# the process chart


def test_the_process_chart_has_the_symbols_times_walks_and_waiting_of_each_step() -> None:
    oil = operation("oil", "finishing", a_pass(hand=1), wait={"why": "dry", "least_minutes": 30})
    floor = small(CLEAN, oil, PACK, trays=1)
    works(floor, "clean/1", 5)
    floor.wait(10)
    works(floor, "oil/1", 5)
    floor.wait(35)
    works(floor, "pack/1", 5)

    lines = told(floor).process

    assert [(one.symbol, one.step, minutes(one.time), one.walks, minutes(one.waited)) for one in lines] == [
        ("operation", "clean", 5.0, 0, 0.0),
        ("operation", "oil", 5.0, 0, 10.0),
        ("delay", "oil", 35.0, 0, None),
        ("transport", "pack", 2.0, 1, None),
        ("operation", "pack", 5.0, 0, 35.0),
        ("storage", "", None, 0, None),
    ]


def test_of_a_step_that_nobody_came_to_no_time_is_known() -> None:
    floor = small(CLEAN, PACK)
    works(floor, "clean/1", 5)

    last = told(floor).process[-1]

    assert (last.step, last.time, last.pieces) == ("pack", None, 0)


# the plan of then


def test_the_plan_at_the_opening_promises_a_finish_whatever_was_done_since() -> None:
    floor = Floor()
    floor.open_run()
    then = with_plan(floor)
    works(floor, "clean/1")
    floor.wait(3000)

    now = with_plan(floor)

    assert then.promised is not None and then.promised > floor.run.opened_at
    assert (now.planned, now.promised) == (then.planned, then.promised)
    assert {(part.row, part.doing) for part in now.planned} >= {("person", "work"), ("station", "work")}
    assert now.finished is None


def test_no_row_of_the_plan_has_two_things_at_once() -> None:
    floor = Floor()
    floor.open_run()
    rows: dict[tuple[str, str], list[Any]] = {}
    for part in with_plan(floor).planned:
        rows.setdefault((part.row, part.key), []).append(part)

    for parts in rows.values():
        assert all(one.ended_at <= other.began_at for one, other in pairwise(parts))


def test_where_nobody_has_usual_hours_no_finish_was_promised() -> None:
    record = shop()
    for person in record["people"]:
        person["hours"] = []
    floor = Floor(record)
    floor.open_run()

    found = with_plan(floor)

    assert (found.planned, found.promised) == ((), None)


def test_what_was_believed_before_moves_what_was_promised() -> None:
    floor = Floor()
    floor.open_run()

    class Slow(Estimates):
        def __call__(self, run: Any, step: Any, part: Any) -> timedelta:
            return 3 * super().__call__(run, step, part)

    usual, slow = with_plan(floor), with_plan(floor, believed=Slow())

    assert usual.promised is not None and slow.promised is not None
    assert slow.promised > usual.promised


# open, closed, given up


def test_a_finished_run_is_finished_when_its_last_load_was_through() -> None:
    floor = small(CLEAN, trays=1)
    works(floor, "clean/1")
    floor.wait(20)
    floor.press("run finished", run="r1")

    assert told(floor).finished == floor.run.past["clean/1"].done_at


def test_a_run_that_was_given_up_never_finished() -> None:
    floor = small(CLEAN)
    works(floor, "clean/1")
    floor.press("run abandoned", run="r1")

    assert told(floor).finished is None


def test_an_empty_run_has_nothing_of_which_anything_is_known() -> None:
    found = told(small(CLEAN))

    assert (found.day, found.bars, found.lost, found.order_lines, found.errors) == ((), (), (), (), ())
    assert found.hands == timedelta(0)


def test_a_step_that_the_route_has_lost_is_told_by_the_route_that_it_was_done_by() -> None:
    floor = Floor()
    floor.open_run(trays=3)
    works(floor, "clean/1")
    shorter = replace_operation(key_rails())
    floor.press("route revised", {"product": shorter, "from_tray": "2"}, run="r1")

    assert [one.step for one in told(floor).yields] == ["cut", "clean"]


def replace_operation(product: dict[str, Any]) -> dict[str, Any]:
    return {**product, "operations": [one for one in product["operations"] if one["key"] != "clean"]}


def test_without_the_events_nothing_breaks() -> None:
    floor = Floor()
    floor.open_run()
    works(floor, "clean/1")
    past = past_of(floor)

    found = happened(replace(past, events=(), arrived={}))

    assert (found.planned, found.promised) == ((), None)
    assert found.good == 0
