"""What the demo's finished runs have to tell: a rack that was too small, hooks that take longer, a board that chips."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from runboard.demo.book import RACK, SMALL_RACK
from runboard.demo.make import make_demo
from runboard.demo.phone import HandClock
from runboard.floor.looking.ledger import changes_adopted
from runboard.floor.looking.review import past_of
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.plan.change import Capacity
from runboard.plan.estimates import estimates_from
from runboard.review.changes.ledger import adopted_of
from runboard.review.changes.nouns import Idea
from runboard.review.changes.trying import tried
from runboard.review.changes.verdict import judged, seen_run
from runboard.review.essentials import essentials_of
from runboard.review.happened.lost import lost_in
from runboard.review.held.held import held_of
from runboard.review.held.replayable import replayable
from runboard.run.fold.state import RunState, ShopState
from runboard.run.rules.services import Services
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json

NOW = datetime(2026, 6, 3, 18, 40, tzinfo=UTC)
FIRST, SECOND, THIRD = "r1", "r2", "r4"
MINUTE = timedelta(minutes=1)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    folder: Path = tmp_path_factory.mktemp("demo")
    make_demo(folder, NOW, zone="Europe/Berlin")
    store, workshop = open_workshop(folder, HandClock(NOW))
    catch_up(workshop)
    yield workshop
    store.close()


def run_of(demo: Workshop, run: str) -> RunState:
    return demo.ledger.state.runs[run]


def evenings(demo: Workshop, run: str) -> list[datetime]:
    """When each session of the run ended, by who locked up."""
    found = run_of(demo, run)
    went = (event.moment for event in demo.ledger.held if event.kind == "person went")
    return [at for at in went if found.opened_at < at <= (found.closed_at or NOW)]


def waiting_for_a_place(state: ShopState, book: Book, run: str) -> bool:
    """Whether trays lie before the oil while the rack has not a place left."""
    oil = [tray for tray in state.runs[run].trays.values() if tray.free("oil")]
    return bool(oil) and Services(state, book).now["rack"] >= rack_places(book)


def rack_places(book: Book) -> int:
    return next(service.capacity for service in book.services if service.key == "rack")


def book_at_opening(demo: Workshop, run: str) -> Book:
    opened = next(event for event in demo.ledger.held if event.kind == "run opened" and event.run == run)
    return book_from_json(demo.books.record(opened.get("book_revision")))


def full_evenings(demo: Workshop, run: str) -> int:
    book = book_at_opening(demo, run)
    states = (demo.ledger.at(at - timedelta(seconds=1)) for at in evenings(demo, run))
    return sum(waiting_for_a_place(state, book, run) for state in states)


def test_oiled_trays_wait_for_a_place_on_the_rack_until_it_is_larger(demo: Workshop) -> None:
    found = {run: full_evenings(demo, run) for run in (FIRST, SECOND, THIRD)}

    assert found == {FIRST: 1, SECOND: 1, THIRD: 0}


def test_the_rack_was_made_larger_between_the_second_run_and_the_third(demo: Workshop) -> None:
    places = [rack_places(book_at_opening(demo, run)) for run in (FIRST, SECOND, THIRD)]

    assert places == [SMALL_RACK, SMALL_RACK, RACK]


def test_a_run_of_as_many_boards_takes_an_evening_less_with_the_larger_rack(demo: Workshop) -> None:
    assert [len(evenings(demo, run)) for run in (FIRST, SECOND, THIRD)] == [4, 4, 3]


@pytest.mark.parametrize(("run", "is_rack"), [(FIRST, True), (SECOND, True), (THIRD, False)])
def test_a_replay_finds_that_the_rack_held_the_first_two_runs(demo: Workshop, run: str, is_rack: bool) -> None:
    known = replayable(past_of(demo, run))
    assert known is not None

    found = held_of(known, goes=20)

    assert found is not None
    assert (found.most == ("service", "rack")) == is_rack


def test_hooks_take_longer_than_guessed_and_the_estimate_moves_run_by_run(demo: Workshop) -> None:
    believed = []
    for run in (FIRST, SECOND, THIRD, "r5"):
        found = run_of(demo, run)
        estimates = estimates_from(demo.ledger.at(found.opened_at - timedelta(seconds=1)), demo.book)
        believed.append(estimates.of(found, found.route.by_key["hooks"], "hand").length)

    assert believed[0] == timedelta(minutes=2)
    assert believed == sorted(believed)
    assert timedelta(minutes=3) < believed[-1] < timedelta(minutes=4)


def test_three_pieces_chip_at_clean_up_all_of_one_board(demo: Workshop) -> None:
    chipped = [lost for run in demo.ledger.state.runs.values() for lost in lost_in(run) if lost.reason == "chipped"]
    boards = {tray.board for tray in run_of(demo, SECOND).trays.values()}

    assert [(lost.step, lost.board, lost.pieces) for lost in chipped] == [("clean", "2", 3)]
    assert boards == {"1", "2"}


def test_some_pieces_are_lost_for_ordinary_reasons_and_somebody_is_called_away(demo: Workshop) -> None:
    why = {reason["why"] for run in demo.ledger.state.runs.values() for tray in run.trays.values()
           for reasons in tray.scrap.values() for reason in reasons}  # fmt: skip

    assert len(why - {"chipped"}) >= 2
    assert any(event.kind == "person called away" for event in demo.ledger.held)


def test_the_larger_rack_was_adopted_by_what_its_trial_promises(demo: Workshop) -> None:
    (change,) = demo.ledger.state.changes.values()
    known = replayable(past_of(demo, SECOND))
    assert known is not None

    (found,) = tried(known, [Idea("rack", Capacity("rack", RACK))])

    assert (change.run, change.did, change.because) == (SECOND, "book", "service holds")
    assert change.earlier[1] == pytest.approx(found.earlier.mid / MINUTE, rel=0.02)
    assert max(change.hands[1], found.hands.mid / MINUTE) < 10


def test_the_third_run_judged_that_it_worked_as_the_program_finds(demo: Workshop) -> None:
    (change,) = demo.ledger.state.changes.values()
    before, after = (essentials_of(past_of(demo, run)) for run in (SECOND, THIRD))

    found = judged(adopted_of(change), seen_run(before.study, before.happened), seen_run(after.study, after.happened))

    assert found.saved is not None
    assert (change.verdict, change.judged_after, found.code) == ("kept", THIRD, "saved")
    assert change.saved is not None
    assert change.saved[1] == pytest.approx(found.saved.mid / MINUTE, rel=0.02)


def test_the_ledger_has_the_larger_rack_as_kept(demo: Workshop) -> None:
    _, (entry,) = changes_adopted(demo)

    assert (entry.line.change, entry.line.verdict) == (Capacity("rack", RACK), "kept")
    assert entry.line.saved is not None
    assert 0.5 * entry.line.earlier.mid < entry.line.saved.mid < 1.5 * entry.line.earlier.mid
