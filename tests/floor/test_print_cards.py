"""Which trays get a card, and which print of it."""

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.letting_in.print_cards import begin_prints, full_trays, named_trays, next_prints, note_prints
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from tests.floor.fakes import FakeWork, workshop
from tests.scenario import shop


@pytest.fixture
def made() -> Workshop:
    """A run of nine trays, the last of which was merged into the one before."""
    found = workshop(shop())
    open_run(found, Wish("rail", [{"line": "1", "pieces": 45}], start=45), "ann")
    move = {"to": "8", "pieces": 5, "to_operation": "cut", "why": "merge"}
    record_events(found, [new_event(found, "pieces moved", move, run="r1", tray="9", operation="cut")])
    return found


def run(made: Workshop) -> RunState:
    return made.ledger.state.runs["r1"]


@pytest.mark.parametrize(
    ("text", "trays"),
    [
        ("1", "1"),
        ("1,2,5-8", "1 2 5 6 7 8"),
        (" 3 ; 1, 3 ", "3 1"),
        ("9", "9"),
        ("", "1 2 3 4 5 6 7 8"),
        (" , ", "1 2 3 4 5 6 7 8"),
    ],
)
def test_trays_are_named_by_number_and_range(made: Workshop, text: str, trays: str) -> None:
    assert " ".join(named_trays(run(made), text)) == trays


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("12", "tray unknown"),
        ("8-99999999", "tray unknown"),
        ("a-b", "trays unreadable"),
        ("5-2", "trays unreadable"),
        ("-3", "trays unreadable"),
    ],
)
def test_trays_that_are_not_there_are_refused(made: Workshop, text: str, code: str) -> None:
    with pytest.raises(Refused) as caught:
        named_trays(run(made), text)

    assert caught.value.code == code


def test_a_tray_that_holds_nothing_needs_no_card(made: Workshop) -> None:
    assert "9" not in full_trays(run(made))


def test_each_print_of_a_trays_card_has_the_next_number(made: Workshop) -> None:
    note_prints(made, "r1", next_prints(run(made), ["1", "2"]), "ann")
    note_prints(made, "r1", next_prints(run(made), ["1"]), "ann")

    assert next_prints(run(made), ["1", "2", "3"]) == {"1": 3, "2": 2, "3": 1}


def test_a_run_that_is_over_notes_no_print(made: Workshop) -> None:
    record_events(made, [new_event(made, "run finished", {}, run="r1")])
    before = made.log.last_seq()

    with pytest.raises(Refused, match="run closed"):
        note_prints(made, "r1", {"1": 1, "2": 1})

    assert made.log.last_seq() == before


def test_cards_that_were_printed_meanwhile_are_not_begun(made: Workshop) -> None:
    work, prints = FakeWork(), next_prints(run(made), ["1"])
    note_prints(made, "r1", prints, "ben")

    with pytest.raises(Refused, match="cards busy"):
        begin_prints(made, "r1", prints, lambda: work.start("cards", "r1", print), work, "ann")

    assert work.tasks == {}


def test_cards_for_which_there_is_no_room_are_no_print(made: Workshop) -> None:
    work = FakeWork(is_full=True)

    with pytest.raises(Refused, match="cards busy"):
        begin_prints(made, "r1", {"1": 1}, lambda: work.start("cards", "r1", print), work, "ann")

    assert next_prints(run(made), ["1"]) == {"1": 1}


def test_cards_that_are_begun_are_noted(made: Workshop) -> None:
    work = FakeWork()

    task = begin_prints(made, "r1", {"1": 1}, lambda: work.start("cards", "r1", print), work, "ann")

    assert task.id in work.tasks
    assert next_prints(run(made), ["1"]) == {"1": 2}
