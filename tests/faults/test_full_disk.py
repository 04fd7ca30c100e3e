"""The disk is full: a press is not taken, says so, and is taken when there is room again."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from runboard.app import House, Settings, build
from tests.conftest import START, HandClock
from tests.web.test_taps import BOOK, batch, came

LONG = "x" * 2000


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    built = build(Settings(tmp_path, clock))
    built.workshop.books.save(BOOK, START)
    yield built
    built.close()


def most_pages(house: House, more: int) -> None:
    """Let the database grow by so many pages only."""
    connection = house.store.connections.here().conn
    (pages,) = connection.execute("PRAGMA page_count").fetchone()
    connection.execute(f"PRAGMA max_page_count = {pages + more}")


def test_a_press_that_finds_no_room_is_not_lost_and_not_half_taken(house: House) -> None:
    client = house.app.test_client()
    client.post("/taps", json=batch(came("press-1")))
    notes = [came(f"press-2{at}", kind="person went", body={"ticked": [LONG]}) for at in range(9)]
    most_pages(house, 2)

    full = client.post("/taps", json=batch(*notes))
    most_pages(house, 1000)
    again = client.post("/taps", json=batch(came("press-1"), *notes))

    assert full.status_code == 500
    assert full.json is not None and "nothing was stored" in full.json["sentence"]
    assert again.json is not None
    assert [one["answer"] for one in again.json["taps"]] == ["known"] + ["accepted"] * 9
    assert house.workshop.ledger.last_seq == house.store.log.last_seq() == 10
