"""The book's file is read to the last field, refused with sentences that say where and what, and written back."""

import json
from typing import Any

import pytest
from hypothesis import given, settings

from runboard.shop.book import Book
from runboard.shop.book_json import (
    BookError,
    book_from_json,
    book_to_json,
    product_from_json,
    product_to_json,
)
from tests.core.books import books, everything


def problems_of(record: object) -> list[str]:
    with pytest.raises(BookError) as refused:
        book_from_json(record)
    return [problem.sentence for problem in refused.value.problems]


def operation(record: dict[str, Any]) -> dict[str, Any]:
    found: dict[str, Any] = record["products"][0]["operations"][0]
    return found


@settings(max_examples=40)
@given(books())
def test_a_book_written_as_json_reads_back_the_same(book: Book) -> None:
    text = json.dumps(book_to_json(book))

    read = book_from_json(json.loads(text))

    assert read == book
    assert json.dumps(book_to_json(read)) == text
    assert [product_from_json(product_to_json(one), book) for one in book.products] == list(book.products)


def test_every_field_that_is_written_is_read_and_every_one_read_is_written() -> None:
    record = everything()

    written = book_to_json(book_from_json(record))

    assert written["products"] == record["products"]
    assert written["stations"][0] == record["stations"][0]
    assert written["people"] == record["people"]
    assert written["walks"] == [{"rooms": ["house", "shop"], "minutes": 2}]
    assert set(written) == set(record)


def test_an_almost_empty_file_is_a_book() -> None:
    book = book_from_json({"runboard_book": 1})

    assert book == Book()


def test_a_product_without_its_shop_is_read_though_its_station_is_gone() -> None:
    record = everything()["products"][0]
    record["operations"][0]["station"] = "sold"

    product = product_from_json(record)

    assert product.operations[0].station == "sold"


def test_lengths_and_spans_may_be_text_and_are_written_as_numbers() -> None:
    record = everything()
    operation(record)["checks"][0]["nominal"] = "5 1/2"
    operation(record)["passes"][0]["machine_minutes"] = "1h30"
    operation(record)["wait"].update(least_minutes="overnight", latest_minutes="1 d")

    written = operation(book_to_json(book_from_json(record)))

    assert written["checks"][0]["nominal"] == pytest.approx(139.7)
    assert written["passes"][0]["machine_minutes"] == 90
    assert written["wait"]["least_minutes"] == 720


def test_a_window_to_24_00_ends_with_the_day() -> None:
    station = book_from_json(everything()).stations[0]

    assert [window.weekday for window in station.quiet] == [0, 6]
    assert station.quiet[0].closes.isoformat() == "00:00:00"


def test_a_station_that_is_not_there_is_named_with_those_that_are() -> None:
    record = everything()
    operation(record)["station"] = "sandr"

    said = problems_of(record)

    assert said == ["Product 'rail', operation 'cut': there is no station 'sandr'. Stations are: cnc, bench, laser."]


def test_a_problem_has_the_path_a_program_can_follow() -> None:
    record = everything()
    operation(record)["passes"][0]["hand_minutes"] = -1

    with pytest.raises(BookError) as refused:
        book_from_json(record)

    assert refused.value.problems[0].path == "products[0].operations[0].passes[0].hand_minutes"
    assert refused.value.problems[0].code == "too small"


def test_all_problems_are_said_at_once() -> None:
    record = everything()
    record["time_zone"] = "Mars/Base"
    del record["rooms"][1]["name"]
    operation(record)["statoin"] = "cnc"
    operation(record)["checks"][0]["plus"] = "wide"

    said = problems_of(record)

    assert said[0].startswith("There is no time zone 'Mars/Base'.") or said[0].startswith("Room 'house'")
    assert "Room 'house': the field 'name' is missing." in said
    assert any("there is no field 'statoin' here. Did you mean 'station'?" in one for one in said)
    assert any("check 'width': 'wide' is no length" in one for one in said)
    assert len(said) == 4


@pytest.mark.parametrize("kind", ["cnc", "laser", "heater", "hand cutter"])
def test_nothing_that_cuts_or_heats_runs_without_attendance(kind: str) -> None:
    record = everything()
    record["stations"][0]["kind"] = kind
    record["stations"][0]["watch_from"] = None
    operation(record)["attendance"] = "none"

    said = problems_of(record)

    assert len(said) == 1
    assert f"'none' is not enough at 'cnc': a {kind} asks for at least" in said[0]


def test_watching_is_not_enough_at_a_hand_cutter() -> None:
    record = everything()
    record["stations"][0]["kind"] = "hand cutter"

    said = problems_of(record)

    assert said == [
        "Product 'rail', operation 'cut': 'watched' is not enough at 'cnc': a hand cutter asks for at least 'hands-on'."
    ]


def test_nobody_works_at_a_cutter_while_a_laser_runs() -> None:
    record = everything()
    record["stations"][2]["watch_from"] = ["cnc"]

    said = problems_of(record)

    assert "'cnc' cuts, and nobody may work at a cutter while a laser runs" in said[0]


@pytest.mark.parametrize(
    ("where", "change", "said"),
    [
        ("rooms", {"key": "shop", "name": "Again"}, "the key 'shop' is used twice in rooms"),
        ("rooms", {"key": "wash room", "name": "Wash"}, "a key is letters, digits, points and dashes"),
        ("rooms", "shop", "'rooms[2]' must be an object in braces"),
        ("walks", {"rooms": ["house", "shop"], "minutes": 3}, "the walk between 'house' and 'shop' is written twice"),
        ("walks", {"rooms": ["house", "attic"], "minutes": 3}, "there is no room 'attic'"),
        ("walks", {"rooms": ["house"], "minutes": 3}, "must be a list of two rooms"),
        ("services", {"key": "rack", "name": "Rack", "capacity": 0}, "'capacity' must be at least 1, not 0"),
        ("stations", {"key": "saw", "name": "Saw", "kind": "saw", "room": "shop"}, "Choose one of: bench, cnc,"),
        ("stations", {"key": "saw", "name": "Saw", "kind": "bench", "room": "attic"}, "there is no room 'attic'"),
        ("jobs", {"key": "x", "name": "X", "minutes": float("nan")}, "must be minutes, as a number"),
        ("jobs", {"key": "x", "name": "X", "minutes": "soon"}, "'soon' is no span of time"),
        ("jobs", {"key": "x", "name": "X \ud800", "minutes": 1}, "characters that cannot be stored"),
        ("people", {"key": "bo", "name": "", "access": "crew"}, "'name' must not be empty"),
        ("people", {"key": "bo", "name": "Bo", "access": "boss"}, "Choose one of: lead, crew"),
    ],
)
def test_a_wrong_entry_is_refused_with_its_reason(where: str, change: object, said: str) -> None:
    record = everything()
    record[where].append(change)

    sentences = problems_of(record)

    assert len(sentences) == 1
    assert said in sentences[0]


@pytest.mark.parametrize(
    ("change", "said"),
    [
        ({"from": "22:00", "to": "06:00"}, "For hours over midnight write two"),
        ({"from": "9", "to": "12:00"}, "'from' must be a time of day such as 18:30"),
        ({"days": ["mon", "mon"]}, "'days' lists \"mon\" twice"),
        ({"days": []}, "'days' needs at least 1 day"),
    ],
)
def test_hours_that_cannot_be_are_refused(change: dict[str, object], said: str) -> None:
    record = everything()
    record["people"][0]["hours"][0].update(change)

    sentences = problems_of(record)

    assert len(sentences) == 1
    assert said in sentences[0]


def test_a_wait_ends_no_sooner_than_it_must() -> None:
    record = everything()
    operation(record)["wait"]["latest_minutes"] = 5

    said = problems_of(record)

    assert said == [
        "Product 'rail', operation 'cut', wait: 'latest_minutes' (5) must not be less than 'least_minutes' (10)."
    ]


def test_a_wait_cannot_hold_more_than_the_shop_has() -> None:
    record = everything()
    operation(record)["wait"]["holds"] = {"clamps": 13}

    said = problems_of(record)

    assert "13 of 'clamps' are asked for, but the shop has 12" in said[0]


def test_a_board_says_how_many_pieces_it_takes() -> None:
    record = everything()
    operation(record)["passes"][0]["pieces"] = None

    said = problems_of(record)

    assert said == [
        "Product 'rail', operation 'cut', pass 'a': a load that is a board needs 'pieces': how many pieces it takes."
    ]


@pytest.mark.parametrize("record", [None, [], "book", {}, {"runboard_book": 2}, {"runboard_book": True}])
def test_what_is_no_book_is_refused(record: object) -> None:
    said = problems_of(record)

    assert len(said) == 1


def test_a_finish_that_is_not_there_is_named_with_those_that_are():
    record = everything()
    operation(record)["finish"] = "shellac"

    assert problems_of(record)[0].endswith("Finishes are: hard-oil.")
