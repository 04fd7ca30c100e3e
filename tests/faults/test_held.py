"""Another program holds the shop's database: a press is kept by its phone, and whoever only looks is answered meanwhile."""

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from runboard.app import build
from runboard.floor import writing
from runboard.house import House, Settings
from runboard.run.refusal import NotStored
from runboard.store.connect import FILE_NAME
from runboard.turn import Turn
from tests.conftest import START, HandClock
from tests.pairing import paired
from tests.web.test_taps import BOOK, batch, came


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    built = build(Settings(tmp_path, clock))
    built.workshop.books.save(BOOK, START)
    yield built
    built.close()


@contextmanager
def held(house: House) -> Iterator[None]:
    """By somebody else, until the end of the block."""
    other = sqlite3.connect(house.settings.data / FILE_NAME, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    try:
        yield
    finally:
        other.execute("ROLLBACK")
        other.close()


def test_a_press_is_kept_by_the_phone_and_taken_when_the_database_is_free(
    house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(writing, "PATIENT", 0.1)
    client = house.app.test_client()
    client.set_cookie("runboard", paired(house.settings.data))

    with held(house):
        answer = client.post("/taps", json=batch(came()))
    again = client.post("/taps", json=batch(came()))

    assert answer.status_code == 503
    assert answer.json == {
        "sentence": "Not saved: another program has the shop's database open. Close it. "
        "Your phone keeps it and sends it again by itself."
    }
    assert again.json is not None and again.json["taps"][0]["answer"] == "accepted"


def test_whoever_looks_is_answered_while_presses_wait_for_the_database(
    house: House, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(writing, "PATIENT", 15.0)  # far longer than a look takes
    secret = paired(house.settings.data)
    answers: list[int] = []

    def press(number: int) -> None:
        client = house.app.test_client()
        client.set_cookie("runboard", secret)
        answers.append(client.post("/taps", json=batch(came(f"press-{number}"))).status_code)

    with held(house):
        pressing = [threading.Thread(target=press, args=(number,)) for number in range(2)]
        for one in pressing:
            one.start()
        looking = house.app.test_client()
        looking.set_cookie("runboard", secret)
        looks = [looking.get("/state?person=ann").status_code for _ in range(5)]
        answered_before = list(answers)
    for one in pressing:
        one.join()

    assert looks == [200] * 5
    assert answered_before == []
    assert answers == [200] * 2


def test_a_device_that_asks_is_not_kept_waiting_to_be_noted_as_seen(house: House) -> None:
    client = house.app.test_client()
    client.set_cookie("runboard", paired(house.settings.data))
    done = threading.Event()

    def look() -> None:
        client.get("/shop")
        done.set()

    with held(house):
        looking = threading.Thread(target=look)
        looking.start()
        came_through = done.wait(8)
    looking.join()

    assert came_through


def test_who_cannot_look_since_another_is_at_it_for_long_is_told(house: House) -> None:
    house.workshop.lock = Turn(within=0.05)
    client = house.app.test_client()
    client.set_cookie("runboard", paired(house.settings.data))
    told = threading.Event()

    def hold() -> None:
        with house.workshop.lock:
            told.wait(10)

    holding = threading.Thread(target=hold)
    holding.start()
    answer = client.get("/state?person=ann")
    told.set()
    holding.join()

    assert answer.status_code == 503
    assert answer.json == {
        "sentence": "The shop's database is busy, or another program has it open. Try again in a moment."
    }
    assert client.get("/state?person=ann").status_code == 200


def test_a_lock_is_taken_again_by_who_has_it_and_given_back_once_for_each_time() -> None:
    turn, found = Turn(within=0.05), []

    def take() -> None:
        try:
            with turn:
                found.append("taken")
        except NotStored as busy:
            found.append(busy.why)

    with turn:
        with turn:
            pass
        other = threading.Thread(target=take)
        other.start()
        other.join()
    take()

    assert found == ["busy", "taken"]
