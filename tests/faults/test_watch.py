"""The server is killed while a machine that must be watched runs: on its return the look that nobody gave is missed."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

from runboard.floor.changing.runs import Wish, open_run
from runboard.opening import open_workshop
from runboard.run.calls.climb import LOUDER
from runboard.run.log.event import parse_moment
from tests.conftest import HandClock
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import running


def test_a_look_that_was_due_while_the_server_was_dead_is_missed_and_has_climbed(tmp_path: Path) -> None:
    an_hour_ago = HandClock(datetime.now(UTC) - timedelta(hours=1))
    store, workshop = open_workshop(tmp_path, an_hour_ago)
    workshop.books.save(shop(), an_hour_ago.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 24}]), "ann")
    store.close()
    began = datetime.now(UTC) - timedelta(minutes=5)
    with running("serve", "--data", str(tmp_path)) as server:
        phone = Phone(server.address)
        phone.press("machine started", {"minutes": 40}, run="r1", load="engrave/1", at=began.isoformat())
        server.kill()

    with running("serve", "--data", str(tmp_path)) as server:
        phone = Phone(server.address)
        (due,) = [one for one in phone.state()["dues"] if one["kind"] == "watch check"]
        assert abs(parse_moment(due["due_at"]) - began - timedelta(minutes=2)) < timedelta(seconds=5)
        assert due["late"]
        assert due["stage"] >= LOUDER

        phone.press("watch checked", run="r1", load="engrave/1")
        (following,) = [one for one in phone.state()["dues"] if one["kind"] == "watch check"]

    assert following["id"] != due["id"]
    assert parse_moment(following["due_at"]) > datetime.now(UTC)
