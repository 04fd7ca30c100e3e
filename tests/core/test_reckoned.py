"""A machine time that a program said: what an estimate makes of it, what its station's runs teach, and how it comes into a route."""

import copy
import math
from datetime import timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.before.taking import takes
from runboard.plan.estimates import GUESS_SPREAD, RECKONED_SPREAD, KnownTime, estimates_from
from runboard.plan.program.factor import BETWEEN_PROGRAMS, factor_of, learned
from runboard.plan.program.question import Program, begin
from runboard.plan.program.question import learned as with_factor
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.machines import Reckoned
from runboard.words.route import route_lines, route_times
from tests import scenario
from tests.core.pressing import Floor

RAIL = Reckoned("program", "rail.ngc", "a" * 64, 2100.0)


def reckoned_rails(seconds: float = 2100.0, digest: str = "a" * 64) -> dict[str, Any]:
    rails = scenario.key_rails()
    said = {"what": "program", "name": "rail.ngc", "digest": digest, "seconds": seconds, "day": "2026-05-01"}
    rails["operations"][0]["passes"][0]["reckoned"] = said
    return rails


def floor_with_a_program() -> Floor:
    floor = Floor()
    floor.open_run(trays=9, product=reckoned_rails())
    return floor


def cut(floor: Floor, board: str, minutes: float) -> None:
    floor.press("machine started", run="r1", load=board)
    floor.now += timedelta(minutes=minutes) - timedelta(seconds=1)
    floor.press("machine ended", run="r1", load=board)
    floor.press("load done", run="r1", load=board)


def known(floor: Floor, step: str = "cut") -> KnownTime:
    found = floor.run.route.step(step)
    assert found is not None
    return estimates_from(floor.state, floor.book).of(floor.run, found, "machine")


def test_a_time_from_a_program_is_said_to_be_one_and_is_surer_than_a_guess() -> None:
    floor = floor_with_a_program()

    cutting, engraving = known(floor), known(floor, "engrave")

    assert (cutting.source, cutting.said, cutting.file) == ("program", "program", "rail.ngc")
    assert (engraving.source, engraving.file) == ("guess", "")
    assert cutting.scatter.element == pytest.approx(RECKONED_SPREAD)
    assert engraving.scatter.element == pytest.approx(GUESS_SPREAD)
    assert "from the program rail.ngc" in [
        time.source for time in route_times(estimates_from(floor.state, floor.book), floor.run)
    ]


def test_what_was_measured_moves_it_and_what_a_person_says_takes_its_place() -> None:
    floor = floor_with_a_program()
    cut(floor, "cut/1", 45)

    assert known(floor).said == "measured 1"
    assert timedelta(minutes=38) < known(floor).length < timedelta(minutes=45)


def test_nothing_measured_teaches_no_factor() -> None:
    found = factor_of(floor_with_a_program().state.runs.values(), "cnc")

    assert (found.value, found.times, found.programs) == (1.0, 0, 0)


def test_measured_boards_teach_their_station_its_factor_and_no_other() -> None:
    floor = floor_with_a_program()
    for board in ("cut/1", "cut/2", "cut/3"):
        cut(floor, board, 35 * 1.2)

    found, laser = factor_of(floor.state.runs.values(), "cnc"), factor_of(floor.state.runs.values(), "laser")

    assert (found.times, found.programs) == (3, 1)
    assert 1.1 < found.value < 1.2
    assert BETWEEN_PROGRAMS < found.spread < GUESS_SPREAD
    assert laser.times == 0
    asked = with_factor(floor.book, floor.state, Program("cnc"))
    assert (asked.factor, asked.factor_times) == (found.value, 3)
    assert with_factor(floor.book, floor.state, asked) == asked


@given(st.lists(st.lists(st.floats(-1, 1), min_size=1, max_size=6), max_size=6))
def test_a_factor_lies_between_one_and_what_was_measured(groups: list[list[float]]) -> None:
    found = learned(groups)
    means = [math.fsum(group) / len(group) for group in groups]

    assert min([0.0, *means]) - 1e-9 <= math.log(found.value) <= max([0.0, *means]) + 1e-9
    assert found.spread <= GUESS_SPREAD + BETWEEN_PROGRAMS
    assert learned([*groups, *[[0.3] * 50 for _ in range(400)]]).value == pytest.approx(math.exp(0.3), rel=0.02)


def test_a_time_is_taken_into_each_step_at_a_machine_and_keeps_what_was_reckoned() -> None:
    book = book_from_json(scenario.shop())
    record = book_to_json(book)

    every = list(takes(book, "rail", RAIL, 1.08))
    [one] = takes(book, "rail", RAIL, 1.08, station="cnc", step="")
    one.put(record)

    assert [keep.key for keep in every] == ["take cut", "take engrave"]
    assert (one.facts["span"], one.facts["step"]) == (timedelta(seconds=2268), "Cut")
    pass_ = record["products"][0]["operations"][0]["passes"][0]
    assert pass_["machine_minutes"] == pytest.approx(37.8)
    assert (pass_["reckoned"]["seconds"], pass_["reckoned"]["digest"]) == (2100.0, "a" * 64)
    cut_line = route_lines(book_from_json(record).products[0], book)[0]
    assert "machine time per board (15 pieces), from the program rail.ngc, loading" in cut_line.times[0]


def test_nothing_is_taken_into_a_step_that_is_gone_or_a_product_that_is_not_there() -> None:
    book = book_from_json(scenario.shop())
    record = copy.deepcopy(book_to_json(book))
    del record["products"][0]["operations"][0]

    [one] = takes(book, "rail", RAIL, station="cnc")

    assert list(takes(book, None, RAIL)) == list(takes(book, "no such", RAIL)) == []
    with pytest.raises(Refused, match="step gone"):
        one.put(record)


def test_a_question_begins_with_the_products_step_at_the_machine_that_cuts() -> None:
    book = book_from_json(scenario.shop())

    assert begin(book, {"product": "rail"}) == Program("cnc", "rail", "cut")
    assert begin(book, {"product": "rail", "step": "engrave"}) == Program("laser", "rail", "engrave")
    assert begin(book, {}) == Program("cnc")
    assert begin(book, {"station": "no such", "product": "no such"}) == Program("cnc")
