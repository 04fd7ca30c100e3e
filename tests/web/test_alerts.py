"""The clock that rings: every step says whether it found work, so nothing here sleeps."""

import threading
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from runboard.alerts.clock import AlertClock
from runboard.run.calls.dues import Due
from runboard.run.refusal import NotStored
from runboard.store.open import open_store
from tests.conftest import START, HandClock

MINUTE = timedelta(minutes=1)


class Shop:
    """A store, a clock that a test moves, and what the pages were told."""

    def __init__(self, folder: Path, clock: HandClock) -> None:
        self.store = open_store(folder)
        self.clock = clock
        self.told: list[Any] = []
        self.alerts = AlertClock(self.store.dues, clock, self.told.append)

    def put(self, *dues: Due, drop: tuple[str, ...] = ()) -> None:
        with self.store.log.write() as write:
            write.set_dues(dues, drop)


@pytest.fixture
def shop(tmp_path: Path, clock: HandClock) -> Any:
    opened = Shop(tmp_path, clock)
    yield opened
    opened.alerts.stop()
    opened.store.close()


def machine_end(minutes: int, id_: str = "end") -> Due:
    return Due(id=id_, kind="machine end", due_at=START + minutes * MINUTE, run="r1", load="cut/1", station="cnc")


def test_nothing_rings_before_its_moment(shop: Shop) -> None:
    shop.put(machine_end(20))

    shop.clock.forward(minutes=19, seconds=59)

    assert shop.alerts.ring() == 0
    assert shop.told == []


def test_a_machine_that_ends_is_told_once(shop: Shop) -> None:
    shop.put(machine_end(20))

    shop.clock.forward(minutes=20)

    assert [shop.alerts.ring(), shop.alerts.ring()] == [1, 0]
    assert shop.told == [
        {
            "id": "end",
            "kind": "machine end",
            "due_at": "2026-03-07T09:20:00.000Z",
            "run": "r1",
            "load": "cut/1",
            "station": "cnc",
        }
    ]


def test_two_clocks_on_one_shop_tell_it_once(shop: Shop) -> None:
    other = AlertClock(shop.store.dues, shop.clock, shop.told.append)
    shop.put(machine_end(0))

    assert shop.alerts.ring() + other.ring() == 1


def test_an_alert_that_waited_says_when_it_fell_due_and_that_it_is_late(shop: Shop) -> None:
    shop.put(machine_end(20))

    shop.clock.forward(hours=3)
    shop.alerts.ring()

    assert (shop.told[0]["due_at"], shop.told[0]["late"]) == ("2026-03-07T09:20:00.000Z", True)


def test_what_fell_due_while_the_server_was_down_is_told_as_it_starts(shop: Shop) -> None:
    shop.put(machine_end(5, "first"), machine_end(3, "second"))

    shop.clock.forward(minutes=30)
    shop.alerts.start()

    assert [one["id"] for one in shop.told] == ["second", "first"]


def test_the_alarm_moves_only_when_the_next_moment_does(shop: Shop) -> None:
    shop.alerts.start()
    shop.put(machine_end(20))

    assert [shop.alerts.wake(), shop.alerts.wake()] == [True, False]

    shop.put(machine_end(25))
    assert shop.alerts.wake()

    shop.put(drop=("end",))
    assert shop.alerts.wake()


def test_the_alarm_rings_by_itself(shop: Shop) -> None:
    heard = threading.Event()
    alerts = AlertClock(shop.store.dues, shop.clock, lambda record: heard.set())
    alerts.start()
    shop.put(machine_end(0))

    alerts.wake()

    assert heard.wait(timeout=5)
    alerts.stop()


def test_what_falls_due_while_another_is_told_rings_right_after(shop: Shop) -> None:
    told: list[str] = []
    both = threading.Event()

    def tell(record: Any) -> None:
        told.append(record["id"])
        if len(told) == 1:  # a press arrives in the middle of it
            shop.put(machine_end(0, "second"))
            assert not alerts.wake()
        else:
            both.set()

    alerts = AlertClock(shop.store.dues, shop.clock, tell)
    alerts.start()
    shop.put(machine_end(0, "first"))
    alerts.wake()

    assert both.wait(timeout=5)
    alerts.stop()
    assert told == ["first", "second"]


def test_whoever_finishes_tells_what_passed_meanwhile(shop: Shop) -> None:
    """A moment that lies behind when a press is stored waits for no thread of the clock's."""
    shop.alerts.start()
    shop.put(machine_end(0))

    shop.alerts.wake()

    assert [one["id"] for one in shop.told] == ["end"]


def test_an_answer_that_ends_after_a_moment_tells_it(shop: Shop) -> None:
    shop.alerts.start()
    shop.put(machine_end(20))
    shop.alerts.wake()

    assert not shop.alerts.passed()
    shop.clock.forward(minutes=20)
    assert shop.alerts.passed()
    assert [one["id"] for one in shop.told] == ["end"]
    assert not shop.alerts.passed()


def test_a_write_that_takes_long_keeps_no_alarm_back(shop: Shop, tmp_path: Path) -> None:
    """Pages are let look at once; it is told by name, and once, when the disk has time for it."""
    other = open_store(tmp_path)
    hints: list[None] = []
    alerts = AlertClock(shop.store.dues, shop.clock, shop.told.append, lambda: hints.append(None))
    shop.put(machine_end(0))

    with other.log.write():
        assert alerts.ring() == 0
        assert hints == [None]

    assert [alerts.ring(), alerts.ring()] == [1, 0]
    assert shop.store.dues.next_at() is None
    other.close()


def test_two_who_finish_at_once_tell_it_once(shop: Shop) -> None:
    shop.alerts.start()
    shop.put(machine_end(0))
    asked = threading.Barrier(8)

    def finishes() -> None:
        asked.wait()
        shop.alerts.wake()
        shop.alerts.passed()

    threads = [threading.Thread(target=finishes) for _ in range(8)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()

    assert [one["id"] for one in shop.told] == ["end"]


def test_what_was_answered_before_it_was_stored_as_told_holds_up_nothing_after(
    shop: Shop, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Told while the disk was full, and answered as soon as it was not: no later moment waits for it, and its own rings
    again should the answer be taken back."""

    def full(due_id: str, now: datetime) -> bool:
        raise NotStored("full")

    shop.put(machine_end(0))
    with monkeypatch.context() as patch:
        patch.setattr(shop.store.dues, "claim", full)
        assert [shop.alerts.ring(), shop.alerts.ring()] == [1, 0]

    shop.put(drop=("end",))
    shop.alerts.ring()
    shop.put(machine_end(0))

    assert shop.alerts.ring() == 1
