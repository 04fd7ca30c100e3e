"""The server is killed in the middle of a run, as by a power cut, and started again on the same data folder."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from runboard.run.log.event import parse_moment
from runboard.store.connect import FILE_NAME, Connections
from tests.conftest import HandClock
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import running


@pytest.fixture
def data(tmp_path: Path) -> Iterator[Path]:
    """A data folder with the small shop and a run of key rails."""
    store, workshop = open_workshop(tmp_path)
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 24}]), "ann")
    store.close()
    yield tmp_path


def test_after_a_kill_every_timer_is_there_and_the_first_question_is_what_was_running(data: Path) -> None:
    with running("serve", "--data", str(data)) as server:
        phone = Phone(server.address)
        phone.press("load started", run="r1", load="cut/1")
        phone.press("machine started", {"minutes": 30}, run="r1", load="cut/1")
        before = phone.state()
        server.kill()

    with running("serve", "--data", str(data)) as server:
        after = Phone(server.address).state()

    assert after["dues"] == before["dues"]
    assert after["runs"]["r1"]["loads"] == before["runs"]["r1"]["loads"]
    (ask,) = after["asks"].values()
    assert ask["code"] == "what was running"
    assert ask["facts"]["open"] == ["r1|cut/1"]


def test_an_alert_that_fell_due_meanwhile_comes_at_once_and_says_so(tmp_path: Path) -> None:
    # The server lived 50 minutes ago, started a machine for 38 minutes, and then the power went.
    an_hour_ago = HandClock(datetime.now(UTC) - timedelta(minutes=60))
    store, workshop = open_workshop(tmp_path, an_hour_ago)
    workshop.books.save(shop(), an_hour_ago.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 24}]), "ann")
    an_hour_ago.forward(minutes=10)
    record_events(workshop, [new_event(workshop, "machine started", {}, run="r1", load="cut/1", person="ann")])
    store.close()

    with running("serve", "--data", str(tmp_path)) as server:
        state = Phone(server.address).state()

    (due,) = [one for one in state["dues"] if one["kind"] == "machine end"]
    assert due["late"]
    assert parse_moment(due["due_at"]) < datetime.now(UTC) - timedelta(minutes=11)
    # So does the look at the CNC that nobody gave.
    assert set(_told(tmp_path)) == {due["id"], "watch check|r1|cut/1|1|0"}


def test_no_press_that_was_answered_is_lost(data: Path) -> None:
    sent = []
    for _ in range(3):
        with running("serve", "--data", str(data)) as server:
            phone = Phone(server.address)
            phone.state()
            for number in range(15):
                event = phone.event("note written", {"text": f"note {number}"}, run="r1")
                assert phone.send(event)[0]["answer"] == "accepted"
                sent.append(event)
            server.kill()

    with running("serve", "--data", str(data)) as server:
        answers = Phone(server.address, device=sent[0]["device"]).send(*sent)

    assert [one["answer"] for one in answers] == ["known"] * len(sent)
    store, workshop = open_workshop(data)
    assert len([event for event in workshop.log.events() if event.kind == "note written"]) == len(sent)
    store.close()


def _told(data: Path) -> list[str]:
    connections = Connections(data / FILE_NAME)
    rows = connections.here().execute("select id from due where told_at is not null").fetchall()
    connections.close()
    return [row[0] for row in rows]


def test_a_stream_hears_of_an_alert_when_it_falls_due(data: Path) -> None:
    with running("serve", "--data", str(data)) as server:
        phone = Phone(server.address)
        with phone.listening() as stream:
            phone.press("machine started", {"minutes": 0.02}, run="r1", load="cut/1")
            heard = stream.next("due")

    assert heard["id"] == "machine end|r1|cut/1|1"
