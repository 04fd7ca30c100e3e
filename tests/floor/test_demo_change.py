"""The change that the demo's shop adopted between its runs, and what the run after it says of that."""

from datetime import UTC, datetime
from pathlib import Path

from runboard.demo.book import RACK
from runboard.demo.make import make_demo
from runboard.demo.phone import HandClock
from runboard.floor.looking.ledger import changes_adopted
from runboard.opening import open_workshop
from runboard.plan.change import Capacity

NOW = datetime(2026, 6, 3, 18, 40, tzinfo=UTC)


def test_the_larger_rack_was_adopted_after_the_second_run_and_the_third_says_that_it_worked(tmp_path: Path) -> None:
    make_demo(tmp_path, NOW, zone="Europe/Berlin")
    store, workshop = open_workshop(tmp_path, HandClock(NOW))

    _, (entry,) = changes_adopted(workshop)
    store.close()

    assert (entry.line.change, entry.line.did, entry.line.run) == (Capacity("rack", RACK), "book", "r2")
    assert entry.after is not None
    assert entry.verdict is not None
    assert (entry.after.id, entry.verdict.code, entry.verdict.of) == ("r4", "saved", "waiting")
    assert entry.verdict.saved is not None
    promised = entry.verdict.promised.mid
    assert 0.5 * promised < entry.verdict.saved.mid < 1.5 * promised
