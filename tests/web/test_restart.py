"""The server comes back after a kill: the timers are there, what fell due comes late, and the first question is asked."""

from pathlib import Path

from runboard.app import build
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.taps import take_taps
from runboard.house import House, Settings
from runboard.run.calls.dues import dues
from tests.conftest import HandClock
from tests.scenario import shop


def begun(folder: Path, clock: HandClock) -> House:
    """A server at which the CNC was started for 38 minutes, and which then died without a word."""
    house = build(Settings(folder, clock))
    house.open()
    house.workshop.books.save(shop(), clock.now())
    run = open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    for number, kind in enumerate(["load started", "machine started"], 1):
        press = {
            "id": f"press-{number}",
            "kind": kind,
            "run": run,
            "load": "cut/1",
            "person": "ann",
            "at": clock.now().isoformat(),
            "body": {"minutes": 38} if kind == "machine started" else {},
        }
        answer = take_taps(house.workshop, {"device": "phone", "taps": [press]})
        assert answer["taps"][0]["answer"] == "accepted"
        clock.forward(minutes=1)
    house.alerts.stop()
    return house


def test_every_timer_is_there_and_the_late_one_says_so(tmp_path: Path, clock: HandClock) -> None:
    dead = begun(tmp_path, clock)
    told: list[dict[str, object]] = []
    clock.forward(minutes=50)

    house = build(Settings(tmp_path, clock))
    house.alerts._tell = told.append  # type: ignore[assignment]
    house.open()

    assert [(one["kind"], one["load"], one["late"]) for one in told if one["kind"] == "machine end"] == [
        ("machine end", "cut/1", True)
    ]
    house.close()
    dead.store.close()


def test_the_first_question_is_what_was_running(tmp_path: Path, clock: HandClock) -> None:
    dead = begun(tmp_path, clock)

    house = build(Settings(tmp_path, clock))
    house.open()
    house.open()

    assert len(house.workshop.ledger.state.asks) == 1
    house.close()
    dead.store.close()


def test_a_demo_just_made_asks_nothing(tmp_path: Path, clock: HandClock) -> None:
    dead = begun(tmp_path, clock)

    house = build(Settings(tmp_path, clock, demo=True, was_served=False))
    house.open()

    assert not house.workshop.ledger.state.asks
    house.close()
    dead.store.close()


def test_the_due_moments_on_disk_are_those_that_the_fold_makes(tmp_path: Path, clock: HandClock) -> None:
    house = begun(tmp_path, clock)
    with house.store.log.write() as write:
        live = write.dues_held()
        write.set_dues([], live)

    house.open()

    with house.store.log.write() as write:
        rebuilt = write.dues_held()
    assert rebuilt.keys() >= live.keys() and live
    assert rebuilt == {key: due.due_at for key, due in dues(house.workshop.ledger.state, house.workshop.book).items()}
    house.close()
