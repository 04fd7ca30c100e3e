from datetime import timedelta

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.restart import come_back
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from tests.floor.fakes import Told, workshop
from tests.scenario import shop


def with_the_cnc_running() -> Workshop:
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    record_events(made, [new_event(made, "machine started", {}, run="r1", load="cut/1", person="ann")])
    return made


def served_again(made: Workshop) -> Workshop:
    return Workshop(made.log, made.books, made.clock, Told())


def test_after_a_restart_the_first_question_is_what_was_running():
    again = served_again(with_the_cnc_running())

    come_back(again)

    ask = next(iter(again.ledger.state.asks.values()))
    assert ask["code"] == "what was running"
    assert ask["facts"]["open"] == ["r1|cut/1"]


def test_the_question_is_asked_once():
    again = served_again(with_the_cnc_running())
    come_back(again)

    assert not come_back(served_again(again))


def test_nothing_is_asked_where_nothing_was_going_on():
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")

    assert not come_back(served_again(made))


def test_due_moments_are_made_again_from_the_fold():
    made = with_the_cnc_running()
    made.log.dues.clear()
    again = served_again(made)

    come_back(again)

    due = next(iter(made.log.dues.values()))
    assert due.kind == "machine end"
    assert due.due_at - made.clock.now() == pytest.approx(timedelta(minutes=38), abs=timedelta(seconds=1))
