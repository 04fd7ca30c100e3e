"""The server is killed while an alert waits to go outside: it goes once the server is back, and an answer ends it."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.keeping.outside import STEPS_KEY, add_channel
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from tests.lamp import Lamp
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import running


@pytest.fixture
def lamp() -> Iterator[Lamp]:
    found = Lamp()
    yield found
    found.close()


@pytest.fixture
def data(tmp_path: Path, lamp: Lamp) -> Path:
    """A shop whose CNC ends soon, and whose alerts go outside six seconds later."""
    store, workshop = open_workshop(tmp_path)
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    begun = new_event(workshop, "machine started", {"minutes": 0.05}, run="r1", load="cut/1", person="ann")
    record_events(workshop, [begun])
    add_channel(store.settings, "Lamp", lamp.url, lambda url: True)
    store.settings.put(STEPS_KEY, {"louder": 0.05, "outside": 0.1, "computer": None})
    store.close()
    return tmp_path


def test_an_alert_that_nobody_answered_goes_outside_after_a_kill_and_ends_with_an_answer(
    data: Path, lamp: Lamp
) -> None:
    with running("serve", "--data", str(data)) as server:
        server.kill()
    assert lamp.got == []

    with running("serve", "--data", str(data)) as server:
        assert lamp.titles(1, seconds=30) == ["CNC should be finished. Go and check"]
        phone = Phone(server.address)
        (due,) = [one for one in phone.state()["dues"] if one["kind"] == "machine end"]
        assert due["stage"] == 2
        phone.press("unloading started", run="r1", load="cut/1")
        assert [one for one in phone.state()["dues"] if one["kind"] == "machine end"] == []
        server.kill()

    with running("serve", "--data", str(data)):
        assert len(lamp.titles(2, seconds=5)) == 1
