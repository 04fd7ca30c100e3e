"""POST /taps: a batch is taken once, what is no batch gets a sentence, and nothing makes the server fail."""

import json
from typing import Any
from urllib.parse import quote

import pytest
from flask.testing import FlaskClient
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from runboard.house import House
from tests.conftest import START

ANN = {"key": "ann", "name": "Ann"}
BOOK = {"runboard_book": 1, "name": "Ann's shop", "rooms": [{"key": "shop", "name": "Shop"}], "people": [ANN]}


@pytest.fixture(autouse=True)
def book(house: House) -> None:
    house.workshop.books.save(BOOK, START)


def came(id_: str = "press-1", **fields: Any) -> dict[str, Any]:
    return {"id": id_, "v": 1, "kind": "person came", "person": "ann", "at": "2026-03-07T09:00:00.000Z", **fields}


def batch(*taps: Any) -> dict[str, Any]:
    return {"device": "phone", "sent_at": "2026-03-07T09:00:00.000Z", "taps": list(taps)}


def test_a_press_is_taken_once(client: FlaskClient, house: House) -> None:
    answers = [client.post("/taps", json=batch(came())).json for _ in range(2)]

    assert [one["taps"][0]["answer"] for one in answers if one] == ["accepted", "known"]
    assert house.store.log.last_seq() == 1


def test_each_press_of_a_batch_gets_its_own_answer(client: FlaskClient) -> None:
    answer = client.post("/taps", json=batch(came("press-1"), came("press-2", person="nobody"), came("press-3")))

    assert answer.json is not None
    assert [(one["id"], one["answer"]) for one in answer.json["taps"]] == [
        ("press-1", "accepted"),
        ("press-2", "refused"),
        ("press-3", "accepted"),
    ]


def test_a_refusal_comes_with_a_sentence_and_is_kept(client: FlaskClient, house: House) -> None:
    answers = [client.post("/taps", json=batch(came(person="nobody"))).json for _ in range(2)]

    told = [one["taps"][0] for one in answers if one]
    assert all(one["sentence"] and one["sentence"] != one["code"] for one in told)
    with house.store.log.write() as write:
        assert write.known(["press-1"])["press-1"].code == told[0]["code"]


def test_the_answer_tells_the_time_and_the_number_of_the_last_event(client: FlaskClient) -> None:
    answer = client.post("/taps", json=batch(came()))

    assert answer.json is not None
    assert (answer.json["now"], answer.json["seq"]) == ("2026-03-07T09:00:00.000Z", 1)


def test_only_json_is_taken(client: FlaskClient) -> None:
    answer = client.post("/taps", data=json.dumps(batch(came())), content_type="text/plain")

    assert answer.status_code == 415
    assert answer.json == {"sentence": "Send taps as application/json."}


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"{",
        b"\xff",
        b"[" * 100_000,
        b'{"taps": NaN}',
        b'{"taps": 1e999}',
        b'{"taps": ' + b"9" * 5000 + b"}",
        b'{"taps": "\\ud83d"}',
        b"null",
        b"[]",
        b'{"taps": {}}',
        b'{"taps": []}',
        b'{"device": "phone", "sent_at": "yesterday", "taps": []}',
    ],
)
def test_what_is_no_batch_gets_a_sentence(client: FlaskClient, house: House, body: bytes) -> None:
    answer = client.post("/taps", data=body, content_type="application/json")

    assert answer.status_code == 400
    assert answer.json is not None and " " in answer.json["sentence"]
    assert house.store.log.last_seq() == 0


@pytest.mark.parametrize(
    "press", [None, 3, {}, {"id": "press-1"}, came(kind="sang"), came(at="yesterday"), came(extra=1)]
)
def test_what_is_no_press_is_refused_and_the_rest_is_taken(client: FlaskClient, press: Any) -> None:
    answer = client.post("/taps", json=batch(press, came("press-2")))

    assert answer.json is not None
    assert [one["answer"] for one in answer.json["taps"]] == ["refused", "accepted"]
    assert answer.json["taps"][0]["sentence"]


def test_a_body_too_large_is_turned_away(client: FlaskClient) -> None:
    answer = client.post("/taps", data=b" " * 3_000_000, content_type="application/json")

    assert answer.status_code == 413


def test_a_press_tells_the_open_pages(client: FlaskClient, house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    told: list[tuple[Any, ...]] = []
    monkeypatch.setattr(house.streams, "_tell", lambda *said: told.append(said))

    client.post("/taps", json=batch(came()))

    assert told == [("changed", {"seq": 1})]


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=20),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner, max_size=4),
    max_leaves=12,
)
FIELDS = st.sampled_from(
    [
        "id",
        "v",
        "kind",
        "run",
        "load",
        "tray",
        "operation",
        "revision",
        "station",
        "person",
        "device",
        "at",
        "offset_ms",
        "seen",
        "basis",
        "body",
        "entered_by",
    ]
)
KINDS = st.sampled_from(["person came", "load started", "run opened", "pieces moved", "event undone", "alert answered"])


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(wrong=st.dictionaries(FIELDS, JSON, max_size=4), kind=KINDS, body=st.dictionaries(st.text(max_size=8), JSON))
def test_no_press_makes_the_server_fail(
    client: FlaskClient, wrong: dict[str, Any], kind: str, body: dict[str, Any]
) -> None:
    press = {**came("fuzzed"), "kind": kind, "body": body, **wrong}

    answer = client.post("/taps", data=json.dumps(batch(press)), content_type="application/json")

    assert answer.status_code in (200, 400)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(body=JSON)
def test_no_json_makes_the_server_fail(client: FlaskClient, body: Any) -> None:
    answer = client.post("/taps", data=json.dumps(body), content_type="application/json")

    assert answer.status_code in (200, 400)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(run=st.text(max_size=20), person=st.text(max_size=20))
def test_no_address_makes_the_server_fail(client: FlaskClient, run: str, person: str) -> None:
    answer = client.get(f"/runs/{quote(run or 'r', safe='')}/trays/1/history", query_string={"person": person})

    assert answer.status_code in (200, 308, 400, 404)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(person=st.text(max_size=20))
def test_whoever_asks_gets_headers_that_can_be_sent(client: FlaskClient, person: str) -> None:
    answer = client.get("/state", query_string={"person": person})

    assert answer.status_code == 200
    assert all(value.isascii() and value.isprintable() for _, value in answer.headers)


@pytest.mark.parametrize(
    "product", [{}, {"key": "rail"}, {"key": "rail", "name": "Rail", "operations": []}, {"a": None}]
)
def test_a_run_without_a_route_is_refused(client: FlaskClient, house: House, product: dict[str, Any]) -> None:
    body = {"name": "Rails", "product": product, "orders": [], "trays": [{"tray": "1", "pieces": 5}]}

    answer = client.post("/taps", json=batch(came("press-1", kind="run opened", run="r1", body=body)))

    assert answer.json is not None
    assert answer.json["taps"][0]["answer"] == "refused"
    assert house.store.log.last_seq() == 0


def test_a_device_that_sends_too_much_is_asked_to_wait_and_nothing_is_taken(client: FlaskClient, house: House) -> None:
    house.workshop.rates._left["phone"] = (-39.0, START)

    answer = client.post("/taps", json=batch(came()))

    assert (answer.status_code, answer.headers["Retry-After"]) == (429, "2")
    assert answer.json is not None and "sends them again in 2 s" in answer.json["sentence"]
    assert house.store.log.last_seq() == 0
