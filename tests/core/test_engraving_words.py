"""What is said of an engraving and of a jig, and the record that a program reads."""

from dataclasses import replace

import pytest

from runboard.plan.before.kind import File
from runboard.plan.engraving.answer import worked_out
from runboard.plan.engraving.kind import keeps
from runboard.plan.engraving.question import Engraving, begin
from runboard.plan.jig.places import laid_out
from runboard.plan.jig.question import Layout
from runboard.plan.jig.question import begin as begin_jig
from runboard.shop.book import Book, Room, Station
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.machines import Jig, Motion
from runboard.shop.product import Operation, Pass, Product
from runboard.web.before.of_engraving import draw_engraving
from runboard.web.before.of_jig import draw_jig
from runboard.words.before import engraving, jig
from runboard.words.facts import exact_span_in_words

LASER = Station(
    "laser", "Laser", "laser", "shop", motion=Motion(400, 400, scan_speed=250, scan_accel=3000, line_spacing=0.1)
)
RAIL = Product(
    "rail", "Key rail", (Operation("number", "Number", "laser", (Pass("one", "1", "jig", 5),), "watched", jig="five"),)
)
FIVE = Jig("five", "Five rails", "laser", 1, 5, 300, 40, 310, 50, 10.5, 20)
BOOK = Book(rooms=(Room("shop", "Shop"),), stations=(LASER,), products=(RAIL,), jigs=(FIVE,))
ASKED = begin(BOOK, {"product": "rail"})
DRAWING = File(
    "five.svg",
    b'<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="250mm" viewBox="0 0 300 250">\n<text x="9" y="20">12</text><rect x="100" y="200" width="20" height="20"/></svg>',
)


def test_a_form_begins_with_the_products_step_its_laser_and_its_jig() -> None:
    assert (ASKED.station, ASKED.step, ASKED.columns, ASKED.rows, ASKED.pitch_y) == ("laser", "number", 1, 5, 50)


def test_the_minutes_of_each_method_are_said_beside_the_others() -> None:
    answer = worked_out(BOOK, replace(ASKED, pieces=20, trace_speed=10.0, line=80.0), None)

    said = engraving.said(BOOK, ASKED, answer)

    assert (
        said.head
        == "Row by row, or piece by piece: 6 min 59 s per full jig, 8 min 21 s less than sweeping the whole jig."
    )
    assert said.lines[0] == "In the run: 4 full jigs, 27 min 56 s altogether, without loading."
    assert [row[0] for row in said.tables[0].rows] == [
        "Row by row, or piece by piece",
        "The whole jig at once",
        "Tracing the lines",
    ]
    assert any("look different" in line for line in said.lines)
    assert said.doubts == ()


def test_cautions_say_to_stay_and_never_to_leave() -> None:
    answer = worked_out(BOOK, ASKED, None)

    cautions = " ".join(engraving.said(BOOK, ASKED, answer).cautions)

    assert "Stay at the laser" in cautions
    assert "Extraction on" in cautions
    assert "only what you know" in cautions


def test_what_a_drawing_holds_that_is_not_followed_is_a_doubt_with_its_line() -> None:
    answer = worked_out(BOOK, ASKED, DRAWING)

    said = engraving.said(BOOK, ASKED, answer)

    assert said.changes_time
    assert any(text.startswith("Line 2: letters") for text in said.doubts)
    assert said.record["doubts"][0]["line"] == 2


def test_the_record_has_the_methods_by_name_and_minutes() -> None:
    record = engraving.said(BOOK, ASKED, worked_out(BOOK, ASKED, None)).record

    assert record["kind"] == "engraving"
    assert [one["name"] for one in record["methods"]] == ["whole", "rows", "pieces"]
    assert all(one["minutes"] > 0 for one in record["methods"])


def test_machine_values_that_nobody_wrote_down_are_a_doubt() -> None:
    answer = worked_out(Book(), Engraving(), None)

    said = engraving.said(Book(), Engraving(), answer)

    assert "sweeping speed, acceleration and line spacing are missing" in said.doubts[0]
    assert not said.changes_time


def test_minutes_are_taken_into_the_step_that_engraves() -> None:
    answer = worked_out(BOOK, ASKED, DRAWING)
    first, *others = keeps(BOOK, ASKED, answer)
    record = book_to_json(BOOK)

    first.put(record)

    pass_ = book_from_json(record).products[0].operations[0].passes[0]
    seconds = answer.method(answer.best).seconds  # type: ignore[union-attr]
    assert pass_.machine.total_seconds() == pytest.approx(seconds, abs=0.6)
    assert pass_.reckoned is not None
    assert (pass_.reckoned.what, pass_.reckoned.name, len(pass_.reckoned.digest)) == ("engraving", "five.svg", 64)
    assert len({first.key, *(one.key for one in others)}) == len([first, *others])


def test_a_time_is_taken_as_it_is_said_once_for_ways_that_come_to_the_same() -> None:
    answer = worked_out(BOOK, replace(ASKED, line=80.0), None)
    spans = [(one.facts["method"], exact_span_in_words(one.facts["span"])) for one in keeps(BOOK, ASKED, answer)]

    assert [name for name, _ in spans] == ["rows", "whole", "trace"]
    assert spans[0][1] in engraving.said(BOOK, ASKED, answer).head


def test_tracing_is_not_taken_for_a_drawing_in_which_something_is_filled() -> None:
    lines = File(
        "lines.svg", DRAWING.content.replace(b"<rect", b'<rect fill="none" stroke="black"').replace(b"12<", b"<")
    )

    filled, drawn = (worked_out(BOOK, ASKED, one) for one in (DRAWING, lines))

    assert "trace" not in [one.facts["method"] for one in keeps(BOOK, ASKED, filled)]
    assert "trace" in [one.facts["method"] for one in keeps(BOOK, ASKED, drawn)]


def test_a_load_of_a_tray_takes_as_many_jig_fulls_as_it_needs() -> None:
    tray = replace(
        RAIL, pieces_a_tray=12, operations=(replace(RAIL.operations[0], passes=(Pass("one", "1", "tray"),)),)
    )
    book = replace(BOOK, products=(tray,))
    answer = worked_out(book, ASKED, None)

    first = next(iter(keeps(book, ASKED, answer)))
    record = book_to_json(book)
    first.put(record)

    seconds = answer.method(answer.best).seconds  # type: ignore[union-attr]
    span = book_from_json(record).products[0].operations[0].passes[0].machine
    assert span.total_seconds() == pytest.approx(3 * seconds, abs=0.6)


def test_a_drawing_shows_solid_where_the_beam_is_on_and_dashes_where_it_is_off() -> None:
    drawn = draw_engraving(BOOK, ASKED, worked_out(BOOK, ASKED, DRAWING))

    best, others = drawn
    assert "<details" not in best and best.count("<svg") == 1
    assert others.startswith("<details>") and others.count("<svg") >= 1
    for one in drawn:
        assert 'class="on"' in one and 'class="off"' in one
        assert "#" not in one.replace("&#", "")


# jigs


def test_a_jig_says_its_places_its_sizes_and_offers_its_file() -> None:
    asked = Layout(station="laser", piece_length=300, piece_width=40, pieces=5)
    answer = laid_out(BOOK, asked, None)

    said = jig.said(BOOK, asked, answer)

    assert said.head == "5 places in a column, on a plate of 320.1 mm by 260.5 mm."
    assert said.downloads[0].name.endswith(".svg")
    assert said.downloads[0].text.startswith("<svg ")
    assert said.record["places"][1] == {"number": 2, "x": 10, "y": 60.1}
    assert len(draw_jig(BOOK, asked, answer)) == 1


def test_a_jig_that_does_not_fit_says_how_many_would() -> None:
    asked = Layout(station="laser", piece_length=300, piece_width=40, columns=1, rows=9)

    said = jig.said(BOOK, asked, laid_out(BOOK, asked, None))

    assert said.doubts[0].startswith(
        "It does not fit: the plate is 320.1 mm by 460.9 mm, the bed 400 mm by 400 mm. 1 across and 7 down fit."
    )


def test_a_jig_that_the_step_has_already_is_said() -> None:
    asked = replace(begin_jig(BOOK, {"product": "rail"}), piece_length=300, piece_width=40)

    said = jig.said(BOOK, asked, laid_out(BOOK, asked, None))

    assert "Number already has a jig: Five rails, 5 places, 50 mm from row to row." in said.lines


def test_a_kept_jig_says_how_it_is_put_back() -> None:
    steps = jig.put_back(BOOK, FIVE)

    assert steps[0] == "Send Laser to its own zero, beam off."
    assert steps[1].startswith("Move the head to x 10.5, y 20")
    assert "x 330.7, y 20" in steps[2]
    assert jig.put_back(BOOK, replace(FIVE, corner_y=None))[0].startswith("Its corner on Laser is missing.")


def test_lengths_are_said_in_the_shops_units() -> None:
    inches = replace(BOOK, units="in")
    asked = Layout(station="laser", piece_length=254, piece_width=50.8, pieces=2, clearance=0, gap=25.4, margin=25.4)

    said = jig.said(inches, asked, laid_out(inches, asked, None))

    assert said.head == "2 places in a column, on a plate of 12 in by 7 in."
