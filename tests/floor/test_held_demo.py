"""What held the demo's runs: each has its answer, and the racks that fill are named until the rack is larger."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

import pytest

from runboard.demo.make import make_demo
from runboard.demo.phone import HandClock
from runboard.floor.looking.review import past_of
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.review.held.held import held_of
from runboard.review.held.nouns import Held
from runboard.review.held.replayable import replayable

NOW = datetime(2026, 3, 29, 0, 59, tzinfo=UTC)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    folder = tmp_path_factory.mktemp("held")
    make_demo(folder, NOW, zone="Europe/Berlin")
    store, workshop = open_workshop(folder, HandClock(NOW))
    catch_up(workshop)
    yield workshop
    store.close()


@pytest.fixture(scope="module")
def rails(demo: Workshop) -> list[Held]:
    """What held the runs of key rails that are finished, the oldest first."""
    runs = [run.id for run in demo.ledger.state.runs.values() if run.product == "rails" and run.state == "finished"]
    found = []
    for run in runs:
        known = replayable(past_of(demo, run))
        assert known is not None
        held = held_of(known, goes=1)
        assert held is not None
        found.append(held)
    return found


def test_a_replay_ends_when_the_run_really_ended(rails: list[Held]) -> None:
    for held in rails:
        assert held.finished is not None
        assert abs(held.replayed - held.finished) < timedelta(hours=2)


def test_a_rack_that_fills_is_what_held_a_run_until_it_is_larger(rails: list[Held]) -> None:
    first, second, third = rails

    assert first.most == second.most == ("service", "rack")
    assert first.cost is not None and first.cost > timedelta(hours=12)
    assert third.most != ("service", "rack")
    assert {value.what: value.earlier for value in third.values}["service", "rack"] == timedelta(0)


def test_the_evening_on_which_the_rack_was_full_is_told(rails: list[Held]) -> None:
    full = [stretch for stretch in rails[0].stretches if stretch.what == ("service", "rack")]

    assert any(stretch.open > timedelta(minutes=20) for stretch in full)


def test_a_run_of_boards_and_one_that_goes_on_have_their_answers_too(demo: Workshop) -> None:
    runs = [run.id for run in demo.ledger.state.runs.values() if run.product != "rails" or run.state == "open"]
    for run in runs:
        known = replayable(past_of(demo, run))
        held = known and held_of(known, goes=1)

        assert held
        assert held.stretches
