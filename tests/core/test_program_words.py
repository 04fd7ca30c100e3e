"""A program's answer in words and as JSON."""

from dataclasses import replace
from typing import Any

import pytest

from runboard.plan.before.kind import File
from runboard.plan.program.kind import Looked, answer, keeps
from runboard.plan.program.question import Program
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from runboard.words.before.program import said
from runboard.words.before.said import Said
from runboard.words.facts import exact_span_in_words
from tests import scenario

BOOK = book_from_json(scenario.shop())
# Holes here and there, each with its plunge: the file goes to and fro.
TO_AND_FRO = (
    "G21 G90\nG0 Z5\n"
    + "".join(f"G0 X{x} Y0\nG1 Z-3 F200\nG0 Z5\n" for x in (0, 600, 10, 590, 20, 580, 30, 570))
    + "M2\n"
)


def looked(text: str, book: Book = BOOK, question: Program | None = None) -> Looked:
    return answer(book, question or Program("cnc"), File("rail.ngc", text.encode()), lambda done, total: None)


def told(text: str, book: Book = BOOK, **asked: Any) -> Said:
    question = Program("cnc", **asked)
    return said(book, question, looked(text, book, question))


def test_what_measured_runs_taught_is_said_and_leaves_the_record_as_it_was_reckoned() -> None:
    plain, learned = told(TO_AND_FRO), told(TO_AND_FRO, factor=1.5, factor_times=12, factor_programs=3)

    assert "CNC takes 1.5 times the estimate, measured 12 times. Estimate:" in learned.lines[0]
    assert learned.head != plain.head
    assert learned.record["seconds"] == plain.record["seconds"]
    expected = learned.record["station_factor"]["expected_seconds"]
    assert expected == pytest.approx(1.5 * plain.record["seconds"]["total"], abs=0.01)
    assert "station_factor" not in plain.record


def test_a_better_order_is_advice_in_seconds_a_load_and_of_all_loads() -> None:
    once, often = told(TO_AND_FRO), told(TO_AND_FRO, loads=40)

    order = once.record["visit_order"]
    assert order["places"] == 8
    assert 0 < order["saving_seconds"] <= order["bound_seconds"]
    [advice] = [line for line in once.lines if "would save" in line]
    assert "8 places" in advice and "per load." in advice
    [advice] = [line for line in often.lines if "would save" in line]
    assert "in 40 loads" in advice
    [table] = [table for table in often.tables if table.title == "Travel between places"]
    assert table.heads == ("Order", "Per load", "All loads")
    assert len(table.rows) == 4


def test_one_place_is_no_order() -> None:
    found = told("G21\nG0 Z5\nG0 X1 Y1\nG1 Z-1 F100\nG1 X50 F600\nG0 Z5\nM2\n")

    assert found.record["visit_order"]["saving_seconds"] == 0
    assert not any("places" in line for line in found.lines)


def test_lengths_are_said_in_the_shop_s_units_and_written_in_millimetres() -> None:
    inches = replace(BOOK, units="in")
    text = "G21\nG0 Z5\nG0 X0 Y0\nG1 Z-3.175 F300\nG1 X2540 F1200\nG0 Z5\nM2\n"

    here, there = told(text), told(text, inches)

    assert ("Cutting", "2 min 5 s", "2.5 m") in here.tables[0].rows
    assert ("Cutting", "2 min 5 s", "8.3 ft") in there.tables[0].rows
    assert ("X", "0 in", "100 in", "100 in") in there.tables[-1].rows
    assert here.record == there.record | {"doubts": here.record["doubts"]}


def test_a_program_that_does_nothing_says_so() -> None:
    found = told("(nothing yet)\nM2\n")

    assert found.head == "Nothing in it takes time"
    assert (found.record["extent_mm"], found.record["seconds"]["total"]) == ({}, 0)


def test_its_stops_are_named_by_their_lines() -> None:
    found = told("G21\nG0 Z5\nM0\nG0 X5 Y5\nM0\nM2\n")

    assert "It stops for a person in lines 3 and 5." in found.lines


def test_each_doubt_has_its_line_and_says_whether_the_time_may_be_another() -> None:
    found = told("G21\nG0 Z5\nG0 X0 Y0\nG1 X50\nM2\n")

    assert found.changes_time
    assert found.record["doubts"][0]["line"] == 4
    assert found.record["doubts"][0]["text"] == found.cautions[0]
    assert all("{" not in doubt for doubt in (*found.cautions, *found.doubts))


def test_cuts_without_a_spindle_s_start_are_a_soft_doubt() -> None:
    still, turning = (
        told("G21\nG0 Z5\nG0 X0 Y0\nG1 X50 F600\nM2\n"),
        told("G21 M03 S9\nG0 Z5\nG0 X0 Y0\nG1 X50 F600\nM2\n"),
    )

    assert any("has no M3 or M4 to start the spindle" in doubt for doubt in still.doubts)
    assert not still.changes_time
    assert not any("spindle" in doubt for doubt in turning.doubts)


def test_where_a_series_of_holes_goes_back_to_after_g99_is_said() -> None:
    found = told("G21 M3 S9\nG0 X0 Y0 Z20\nG99 G81 X1 Y1 Z-5 R2 F99\nG98 X2\nX3\nG80\nM2\n")
    whole = told("G21 M3 S9\nG0 X0 Y0 Z20\nG98 G81 X1 Y1 Z-5 R2 F99\nX2\nG99 X3\nG80\nM2\n")

    [doubt] = [doubt for doubt in found.doubts if "G98" in doubt]
    assert doubt.startswith("Line 4:") and "2 mm" in doubt and "20 mm" in doubt and "NISTIR 6556" in doubt
    assert not any("G98" in doubt for doubt in whole.doubts)


def test_what_would_stop_or_spoil_stands_first_and_not_among_the_doubts() -> None:
    far = told("G21 M3 S9\nG0 X0 Y0 Z5\nG1 Z-20 F99\nX90 F900\nG0 Z5\nM2\n", stock_length=80, stock_thickness=18)

    assert ["the stock is" in one or "thick" in one for one in far.cautions] == [True, True]
    assert far.doubts == ()
    assert len(far.record["doubts"]) == 2


def test_many_of_one_kind_are_one_caution_that_says_how_many() -> None:
    found = told("G21 M3 S9\nG0 X0 Y0 Z5\nG1 Z-1\n" + "".join(f"X{x}\n" for x in range(1, 200)) + "G0 Z5\nM2\n")

    assert "The same 199 times more" in found.cautions[0]
    assert found.head.startswith("1 s per load, plus cuts without a feed")


def test_a_time_that_nobody_can_plan_with_is_not_offered_to_be_taken() -> None:
    question = Program("cnc", "rail")
    fine, slow = "G21 M3 S9\nG0 X0 Y0 Z5\nG1 Z-1 F99\nX90\nG0 Z5\nM2\n", "G21 M3 S9\nG0 X0 Y0 Z5\nG1 Z-1\nG0 Z5\nM2\n"

    assert len(list(keeps(BOOK, question, looked(fine)))) == 1
    assert list(keeps(BOOK, question, looked(slow))) == []
    assert "can’t go into a route yet" in told(slow).cautions[-1]


def test_the_time_in_the_headline_is_the_one_that_is_taken() -> None:
    text = "G21 M3 S9\nG0 X0 Y0 Z5\nG1 Z-1 F99\nX2203 F700\nG0 Z5\nM2\n"
    [offered] = keeps(BOOK, Program("cnc", "rail"), looked(text))

    assert f"About {exact_span_in_words(offered.facts['span'])} per load" in told(text).head


def test_a_program_that_only_drills_says_so() -> None:
    assert "drilling" in told("G21 M3 S9\nG0 X0 Y0 Z5\nG81 X1 Y1 Z-9 R2 F99\nG80\nM2\n").head


def test_the_change_back_to_the_first_cutter_is_said_unless_it_runs_once() -> None:
    text = "G21\nT1 M6\nM3 S9\nG0 X0 Y0 Z5\nG1 Z-1 F99\nG0 Z5\nT2 M6\nM3\nG1 Z-1\nG0 Z5\nM2\n"

    assert any("T1 goes in again first. Those" in line for line in told(text).lines)
    assert not any("goes in again" in line for line in told(text, loads=1).lines)


def test_advice_about_the_order_says_what_to_do() -> None:
    found = told(TO_AND_FRO)

    [at] = [at for at, line in enumerate(found.lines) if "would save" in line]
    assert found.lines[at + 1].startswith("To get there, sort the places")
