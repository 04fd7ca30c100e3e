"""The demo: a story told by presses that keeps every rule, and ends in the middle of a run."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from runboard.demo.book import LEAD, demo_book, usual_hours
from runboard.demo.make import make_demo, zone_here
from runboard.demo.phone import HandClock
from runboard.floor.looking.look import state_for
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.run.calls.dues import dues
from runboard.run.fold.fold import fold
from runboard.run.fold.record import Cache, run_text
from runboard.run.fold.state import RunState
from runboard.run.log.event import Event
from runboard.shop.book_json import book_from_json
from runboard.store.open import Store
from tests.core.pressing import conserved

# Three in the morning, a minute before a clock change: the demo is made at any hour.
NOW = datetime(2026, 3, 29, 0, 59, tzinfo=UTC)
ZONE = "Europe/Berlin"


def opened(folder: Path, now: datetime = NOW) -> tuple[Store, Workshop]:
    store, workshop = open_workshop(folder, HandClock(now))
    catch_up(workshop)
    return store, workshop


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    folder = tmp_path_factory.mktemp("demo")
    make_demo(folder, NOW, zone=ZONE)
    store, workshop = opened(folder)
    yield workshop
    store.close()


def the_open_run(workshop: Workshop) -> RunState:
    return next(run for run in workshop.ledger.state.runs.values() if run.state == "open")


def test_a_demo_is_made_though_a_rag_is_due_to_be_looked_at_as_a_run_closes(tmp_path: Path) -> None:
    make_demo(tmp_path, datetime(2026, 11, 30, 7, 25, tzinfo=UTC), zone="UTC")


def test_three_runs_of_rails_and_one_of_boards_are_finished_and_one_is_open(demo: Workshop) -> None:
    runs = demo.ledger.state.runs.values()

    assert [(run.product, run.state) for run in runs] == [
        ("rails", "finished"),
        ("rails", "finished"),
        ("boards", "finished"),
        ("rails", "finished"),
        ("rails", "open"),
    ]
    assert all(not tray.in_process for run in runs if run.state == "finished" for tray in run.trays.values())


def test_no_press_was_refused_and_nothing_is_to_settle(demo: Workshop) -> None:
    state = demo.ledger.state

    refused = demo.log._connections.here().conn.execute("SELECT count(*) FROM refused").fetchone()[0]  # type: ignore[attr-defined]

    assert refused == 0
    assert not state.unsettled
    assert not state.asks


def test_pieces_are_conserved_at_every_moment(demo: Workshop) -> None:
    events = demo.ledger.held

    for number in range(0, len(events), 7):
        state = demo.ledger.at(events[number].moment)

        assert all(conserved(run) for run in state.runs.values())


def test_the_state_is_the_fold_of_its_log(demo: Workshop) -> None:
    assert fold(demo.book, demo.log.events()) == demo.ledger.state


def test_a_station_holds_one_load_and_a_person_is_at_one(demo: Workshop) -> None:
    for event in demo.ledger.held[::5]:
        state = demo.ledger.at(event.moment)
        loads = [load for run in state.runs.values() for load in run.loads.values()]

        held = [load.station for load in loads]
        hands = [person for load in loads for person in load.people]

        assert len(held) == len(set(held))
        assert len(hands) == len(set(hands))


def test_it_goes_on_now(demo: Workshop) -> None:
    """The CNC runs and is watched, somebody is at the bench or the sander, a tray dries, one is held, a line is due."""
    run, state = the_open_run(demo), demo.ledger.state

    cnc = next(load for load in run.loads.values() if load.station == "cnc")
    robin = state.people[LEAD]
    at = run.loads[robin.hands[1]] if robin.hands else None
    late = {one.kind for one in dues(state, demo.book).values() if one.due_at <= NOW}

    assert cnc.state == "running" and cnc.watcher == LEAD
    assert timedelta(minutes=13) < cnc.end_at - NOW < timedelta(minutes=22)
    assert at is not None and at.station in ("bench", "sander")
    assert any(rest.ready_at > NOW for tray in run.trays.values() for rest in tray.rests.values())
    assert any(tray.holds for tray in run.trays.values())
    assert any(one.due and NOW < one.due <= NOW + timedelta(hours=26) for one in run.orders)
    assert any(tray.good for tray in run.trays.values())
    assert not late
    assert robin.until > NOW


def test_its_log_has_what_a_log_has(demo: Workshop) -> None:
    kinds = {event.kind for event in demo.log.events()}

    assert {
        "load stopped", "stop settled", "event undone", "supply out", "supply in", "pieces held", "pieces moved",
        "station out of use", "first piece checked", "checklist ticked", "watch checked", "person called away",
        "job done", "alert answered", "operation given", "person went", "change adopted", "change judged",
    } <= kinds  # fmt: skip


def told(event: Event) -> tuple[Any, ...]:
    """An event without the ids, which the server makes by chance where it opens and closes runs and takes changes."""
    body = {key: value for key, value in (event.body or {}).items() if key not in ("event", "adopted")}
    return (event.kind, event.moment, event.run, event.load, event.tray, event.person, body)


def test_the_same_seed_makes_the_same_shop(demo: Workshop, tmp_path: Path) -> None:
    make_demo(tmp_path, NOW, zone=ZONE)
    store, again = opened(tmp_path)

    assert [told(event) for event in again.log.events()] == [told(event) for event in demo.log.events()]
    store.close()


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_another_seed_keeps_the_rules_too(tmp_path: Path, seed: int) -> None:
    make_demo(tmp_path, NOW, seed, ZONE)
    store, workshop = opened(tmp_path)

    assert not workshop.ledger.state.unsettled
    assert any(load.state == "running" for load in the_open_run(workshop).loads.values())
    store.close()


def test_a_folder_that_holds_a_shop_is_left_as_it_is(tmp_path: Path) -> None:
    make_demo(tmp_path, NOW, zone=ZONE)
    store, workshop = opened(tmp_path)
    before = workshop.log.last_seq()

    make_demo(tmp_path, NOW + timedelta(days=1), zone=ZONE)

    assert store.log.last_seq() == before
    store.close()


def test_a_runs_text_kept_from_one_moment_to_the_next_is_the_text_made_afresh(demo: Workshop) -> None:
    kept = Cache()

    for event in demo.ledger.held[::4]:
        for run in demo.ledger.at(event.moment).runs.values():
            assert run_text(run, kept, demo.book) == run_text(run, Cache(), demo.book)


def test_the_page_can_be_drawn_for_everybody(demo: Workshop) -> None:
    for person in demo.book.people:
        tag, text = state_for(demo, person.key)

        assert tag and text.startswith("{")


@pytest.mark.parametrize("hour", range(24))
def test_usual_hours_hold_at_any_time_of_day(hour: int) -> None:
    now = datetime(2026, 6, 1, hour, 30, tzinfo=UTC)

    windows = usual_hours(now, "UTC")

    book_from_json(demo_book(now, "UTC"))
    assert any(one["from"] <= now.strftime("%H:%M") < one["to"] for one in windows)


def test_the_zone_is_this_computers(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    zones = tmp_path / "zoneinfo" / "Europe"
    zones.mkdir(parents=True)
    (zones / "Berlin").touch()
    (tmp_path / "localtime").symlink_to(zones / "Berlin")

    monkeypatch.delenv("TZ", raising=False)
    assert zone_here(tmp_path / "localtime") == "Europe/Berlin"
    assert zone_here(tmp_path / "nowhere") == "UTC"

    monkeypatch.setenv("TZ", "Asia/Tokyo")
    assert zone_here(tmp_path / "localtime") == "Asia/Tokyo"
    monkeypatch.setenv("TZ", "../nonsense")
    assert zone_here(tmp_path / "nowhere") == "UTC"
