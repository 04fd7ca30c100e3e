"""The disk is full, read-only or failing: a press is not taken and says so, the shop goes on answering, and the press is
taken when there is room again."""

import resource
from collections.abc import Iterator, Mapping
from datetime import timedelta
from pathlib import Path
from typing import Any
from urllib.error import HTTPError

import pytest

from runboard.alerts.clock import AlertClock
from runboard.app import build
from runboard.floor.changing.runs import Wish, open_run
from runboard.house import House, Settings
from runboard.run.calls.dues import Due
from tests.conftest import START, HandClock
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Running, running
from tests.web.test_taps import BOOK, batch, came

LONG = "x" * 2000


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    built = build(Settings(tmp_path, clock, open_to_all=True))
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

    assert full.status_code == 507
    assert full.json == {
        "sentence": "Not saved: the disk of the shop's computer is full. Make room there. "
        "Your phone keeps it and sends it again by itself."
    }
    assert again.json is not None
    assert [one["answer"] for one in again.json["taps"]] == ["known"] + ["accepted"] * 9
    assert house.workshop.ledger.last_seq == house.store.log.last_seq() == 10


def make_read_only(house: House, yes: bool) -> None:
    house.store.connections.here().conn.execute(f"PRAGMA query_only = {int(yes)}")


def test_a_press_on_a_read_only_disk_is_kept_by_the_phone_while_the_shop_goes_on_answering(house: House) -> None:
    client = house.app.test_client()
    make_read_only(house, True)

    answer = client.post("/taps", json=batch(came()))
    state, page = client.get("/state?person=ann"), client.get("/shop")
    make_read_only(house, False)
    again = client.post("/taps", json=batch(came()))

    assert answer.status_code == 507
    assert answer.json is not None and "is read-only" in answer.json["sentence"]
    assert (state.status_code, page.status_code) == (200, 200)
    assert again.json is not None and again.json["taps"][0]["answer"] == "accepted"


def test_a_form_on_a_read_only_disk_says_what_to_do(house: House) -> None:
    client = house.app.test_client()
    make_read_only(house, True)

    answer = client.post("/shop/rooms/new", data={"name": "House", "seen": "1"})

    make_read_only(house, False)
    assert answer.status_code == 507
    assert "Check it there. Then press again." in answer.get_data(as_text=True)


def test_a_server_comes_up_on_a_read_only_disk(house: House) -> None:
    open_run_with_the_cnc_running(house)
    make_read_only(house, True)

    house.open()

    state = house.app.test_client().get("/state?person=ann")
    house.alerts.stop()
    make_read_only(house, False)
    assert state.json is not None and state.json["runs"]["r1"]["loads"]["cut/1"]["state"] == "running"


def open_run_with_the_cnc_running(house: House) -> None:
    house.workshop.books.save(shop(), START)
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    started = came("press-1", kind="machine started", run="r1", load="cut/1")
    answer = house.app.test_client().post("/taps", json=batch(started))
    assert answer.json is not None and answer.json["taps"][0]["answer"] == "accepted"


def test_an_alert_on_a_read_only_disk_is_told_once(house: House, clock: HandClock) -> None:
    told: list[Mapping[str, Any]] = []
    alerts = AlertClock(house.store.dues, clock, told.append)
    with house.store.log.write() as write:
        write.set_dues([Due("end", "machine end", START + timedelta(minutes=20), run="r1")], [])
    clock.forward(minutes=20)
    make_read_only(house, True)

    rings = [alerts.ring(), alerts.ring()]
    make_read_only(house, False)
    rings += [alerts.ring(), alerts.ring()]

    assert [due["id"] for due in told] == ["end"]
    assert rings == [1, 0, 0, 0]
    assert house.store.dues.next_at() is None


def let_files_grow(server: Running, to: int) -> None:
    """What a process writes beyond so many bytes of a file fails, as on a disk without room."""
    resource.prlimit(server.process.pid, resource.RLIMIT_FSIZE, (to, resource.RLIM_INFINITY))


def test_a_served_shop_outlives_a_disk_that_takes_nothing(tmp_path: Path) -> None:
    built = build(Settings(tmp_path))
    built.workshop.books.save(BOOK, START)
    built.close()

    with running("serve", "--data", str(tmp_path)) as server:
        phone = Phone(server.address)
        first, second = phone.event("person came"), phone.event("person went")
        phone.send(first)
        let_files_grow(server, 0)
        for _ in range(3):
            with pytest.raises(HTTPError) as full:
                phone.send(second)
            assert full.value.code == 507 and b"Your phone keeps it" in full.value.read()
            full.value.close()
        assert phone.state()["seq"] == 1
        let_files_grow(server, resource.RLIM_INFINITY)

        answers = phone.send(first, second)

    assert [one["answer"] for one in answers] == ["known", "accepted"]
