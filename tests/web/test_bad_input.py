"""JSON and numbers that mean harm: each gets a sentence, whoever reads it, and nothing is stored."""

import io
import json
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.changing.shop_book import book_record
from runboard.floor.keeping.signals import make_sensor
from runboard.house import House
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError, book_from_json
from tests.scenario import shop

DIGITS = "9" * 5000
DEEP = "[" * 979 + "]" * 979
BAD = {
    "not a number": '{"runboard_book": 1, "name": NaN}',
    "endless": '{"runboard_book": 1, "noise_limit_db": -Infinity}',
    "half a character": '{"runboard_book": 1, "name": "a\\ud800b"}',
    "digits": f'{{"runboard_book": 1, "revision": {DIGITS}}}',
    "digits behind a point": f'{{"runboard_book": 1, "noise_limit_db": 8e{DIGITS}}}',
    "levels": f'{{"runboard_book": 1, "rooms": {DEEP}}}',
    "no text": b'{"runboard_book": "\xff\xfe"}',
    "cut off": '{"runboard_book": 1, "name": "' + '\\"' * 50_000,
}


@pytest.fixture
def run(house: House) -> str:
    house.workshop.books.save(shop(), house.workshop.clock.now())
    return open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")


def upload(client: FlaskClient, content: str | bytes) -> TestResponse:
    raw = content.encode() if isinstance(content, str) else content
    return client.post(
        "/shop/import", data={"file": (io.BytesIO(raw), "shop.json")}, content_type="multipart/form-data"
    )


@pytest.mark.parametrize("name", BAD)
def test_a_file_that_is_no_plain_json_is_refused_with_a_sentence(
    client: FlaskClient, house: House, run: str, name: str
) -> None:
    before = book_record(house.workshop)

    answer = upload(client, BAD[name])

    assert answer.status_code == 422
    assert "The file " in answer.text
    assert book_record(house.workshop) == before


@pytest.mark.parametrize("name", BAD)
def test_taps_that_are_no_plain_json_are_refused_with_a_sentence(client: FlaskClient, run: str, name: str) -> None:
    raw = BAD[name]

    answer = client.post("/taps", data=raw, content_type="application/json")

    assert answer.status_code == 400
    assert answer.json is not None
    assert "Nothing was saved." in answer.json["sentence"]


@pytest.mark.parametrize(
    "text", ["9" * 309, DIGITS[:3000], f'{{"watts": {"9" * 309}}}', "[" * 979 + "1", DEEP, "NaN", "1e999"]
)
def test_a_machine_that_says_nonsense_is_refused(client: FlaskClient, house: House, run: str, text: str) -> None:
    token = make_sensor(house.leaving.ears, "cnc", "Plug")[0]

    answer = client.post("/signals/cnc", data=text, headers={"Authorization": f"Bearer {token}"})

    assert answer.status_code == 422


@pytest.mark.parametrize(
    ("path", "data"),
    [
        ("/plan/products/new", {"name": "Peg", "text": "cut 5", "pieces_a_tray": DIGITS}),
        ("/plan/products/preview", {"name": "Peg", "text": "cut 5", "pieces_a_tray": DIGITS}),
        ("/plan/runs/new", {"product": "rail", "orders.0.pieces": DIGITS}),
        ("/plan/runs/new", {"product": "rail", "orders.0.pieces": "²"}),
        (
            "/plan/runs/new",
            {"product": "rail", "orders.0.pieces": "2", "orders.0.line": DIGITS, "orders.1.pieces": "3"},
        ),
        ("/plan/runs/new", {"product": "rail", "orders.0.pieces": "2", "certainty": "nan"}),
        ("/plan/runs/new", {"product": "rail", "paste": f"a, b, {DIGITS}"}),
        ("/plan/runs/r1/orders", {"orders.0.pieces": "2", "orders.0.line": DIGITS, "orders.1.pieces": "3"}),
        ("/plan/products/rail/operations/cut", {"passes.0.pieces": DIGITS, "good_rate": "inf", "name": "x"}),
        ("/helpers/hours", {"hours": "nan"}),
        ("/helpers/hours", {"hours": "1" * 400}),
    ],
)
def test_a_number_without_end_in_a_form_is_no_failure(
    client: FlaskClient, house: House, run: str, path: str, data: dict[str, str]
) -> None:
    house.app.testing = False

    answer = client.post(path, data=data)

    assert answer.status_code < 500, answer.text[:300]
    assert list(house.workshop.ledger.state.runs) == ["r1"] or path == "/plan/runs/new"


@pytest.mark.parametrize("trays", [DIGITS, f"1-{DIGITS}", "²-³", "٣-٤"])
def test_trays_without_end_are_no_failure(client: FlaskClient, house: House, run: str, trays: str) -> None:
    house.app.testing = False

    answer = client.get(f"/plan/runs/{run}/cards", query_string={"trays": trays[:4000] if "-" not in trays else trays})

    assert answer.status_code < 500


def test_a_run_with_trays_named_by_endless_numbers_is_shown(client: FlaskClient, house: House, run: str) -> None:
    house.app.testing = False
    record = json.loads(json.dumps(export_run(house.workshop, run)))

    answer = upload(client, json.dumps({**record, "run": DIGITS}))

    assert answer.status_code == 422


def test_of_thousands_of_unknown_fields_a_few_are_named() -> None:
    record: dict[str, Any] = {**shop(), **{f"field-{number}": 1 for number in range(30_000)}}

    with pytest.raises(BookError) as wrong:
        book_from_json(record)

    assert len(wrong.value.problems) <= 10
    assert "29,995 more" in wrong.value.problems[-1].sentence


def test_a_book_with_thousands_of_faults_says_the_first_hundred() -> None:
    record = {**shop(), "rooms": [{"key": "a b", "name": 3, "colour": 1} for _ in range(100)]}

    with pytest.raises(BookError) as wrong:
        book_from_json(record)

    assert len(wrong.value.problems) <= 101


@pytest.mark.parametrize(
    "room",
    [
        {"key": "k" * 100_000, "name": 3},
        {"k" * 100_000: 1},
        {"key": "a", "name": "n" * 100_000},
    ],
)
def test_what_is_wrong_is_said_in_few_words_however_long_it_is(room: dict[str, Any]) -> None:
    with pytest.raises(BookError) as wrong:
        book_from_json({**shop(), "rooms": [room] * 50})

    assert len(str(wrong.value)) < 60_000


def test_a_span_of_time_without_end_is_not_read() -> None:
    record = shop()
    record["jobs"][0]["minutes"] = "1 h " * 100_000
    record["walks"][0]["minutes"] = "9" * 5000

    with pytest.raises(BookError) as wrong:
        book_from_json(record)

    assert "may have 200 characters" in str(wrong.value)
    assert len(str(wrong.value)) < 2000


def test_an_event_s_fault_is_said_in_few_words_too() -> None:
    record = {"id": "press-001", "kind": "load started", "at": "2026-06-01T16:00:00Z", "run": "r1", "load": "cut/1"}

    with pytest.raises(Refused) as refused:
        check_form({**record, "body": {"pieces": {"1": {"x" * 50_000: 1}}, "y" * 50_000: 1}})

    assert len(str(refused.value.facts)) < 500
