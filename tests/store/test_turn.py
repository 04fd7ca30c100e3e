"""Who writes on and on gives way to whoever else of the process wants to write: a device that pairs, an alert that is told."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from runboard.floor.letting_in.devices import Door, begin_session
from runboard.floor.pressing.taps import take_taps
from runboard.opening import open_workshop
from runboard.run.calls.device import Device
from runboard.run.refusal import NotStored
from runboard.store.connect import WAIT_SECONDS, Connections
from runboard.store.events import LogWriting
from tests.conftest import START, HandClock
from tests.web.test_taps import BOOK, batch, came


def until_somebody_waits(connections: Connections) -> None:
    # Not for ever: where nobody comes, the test fails by what it asserts.
    for _ in range(1000):
        if connections.turn.waiting:
            return
        threading.Event().wait(0.005)


def test_another_writes_before_a_batch_is_through(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    store, workshop = open_workshop(tmp_path, HandClock(START))
    workshop.books.save(BOOK, START)
    begin_session(Door(store.devices, workshop.clock), Device("d1", "before", "crew", START), START)
    other = threading.Thread(target=store.devices.rename, args=("d1", "after"))
    names: list[str] = []
    write = store.log.write

    @contextmanager
    def watched(wait: float = WAIT_SECONDS) -> Iterator[LogWriting]:
        with write(wait) as writing:
            device = store.devices.device("d1")
            names.append(device.name if device else "")
            if len(names) == 1:
                other.start()
                until_somebody_waits(store.connections)
            yield writing

    monkeypatch.setattr(store.log, "write", watched)
    take_taps(workshop, batch(*(came(f"press-{at:03d}") for at in range(50))))
    other.join()
    store.close()

    assert names[:2] == ["before", "after"]


def test_who_waits_in_vain_for_the_turn_is_told_so(tmp_path: Path) -> None:
    store, _ = open_workshop(tmp_path, HandClock(START))
    said: list[str] = []

    def writes() -> None:
        try:
            with store.connections.write(wait=0.01):
                said.append("written")
        except NotStored as failed:
            said.append(failed.why)

    with store.connections.write():
        other = threading.Thread(target=writes)
        other.start()
        other.join()
    writes()
    store.close()

    assert said == ["busy", "written"]
