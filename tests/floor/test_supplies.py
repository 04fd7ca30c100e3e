"""Counting, buying and changing, on a workshop: a helper's press, a run's file, a form that comes twice."""

import json

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.changing.supplies import buy_supply, count_supplies, take_learned_use
from runboard.floor.looking.look import state_for
from runboard.floor.looking.shopping import shopping_now
from runboard.floor.pressing.access import check_access
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.plan.supplies.shopping import Row
from runboard.run.fold.outside import first_difference
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from tests.floor.fakes import workshop
from tests.scenario import shop

ONCE, AGAIN = "a" * 32, "b" * 32


@pytest.fixture
def here() -> Workshop:
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    return made


def hooks(here: Workshop) -> Row:
    return next(row for row in shopping_now(here).rows if row.here.word == "hooks")


def press(here: Workshop, kind: str, body: dict[str, object], **more: str) -> Event:
    event = new_event(here, kind, body, person="ben", device="phone", **more)
    record_events(here, [event])
    return event


@pytest.mark.parametrize(
    ("kind", "body"),
    [("supply counted", {"supply": "hooks", "have": 5}), ("supply bought", {"supply": "hooks", "amount": 5})],
)
def test_a_helper_may_count_and_buy_and_a_guest_may_not(here: Workshop, kind: str, body: dict[str, object]) -> None:
    event = press(here, kind, body)

    check_access("crew", event, here.ledger.arrived)
    with pytest.raises(Refused):
        check_access("guest", event, here.ledger.arrived)


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("supply counted", {"supply": "", "have": 5}),
        ("supply counted", {"supply": "hooks", "have": -1}),
        ("supply counted", {"supply": "hooks"}),
        ("supply bought", {"supply": "hooks", "amount": 0}),
        ("supply bought", {"supply": "hooks", "amount": 1e9}),
        ("supply bought", {"supply": "ho\noks", "amount": 1}),
    ],
)
def test_what_counts_nothing_is_no_press(here: Workshop, kind: str, body: dict[str, object]) -> None:
    with pytest.raises(Refused):
        press(here, kind, body)


def test_a_form_that_comes_twice_counts_once(here: Workshop) -> None:
    count_supplies(here, [("hooks", 30)], ONCE, "ann")
    buy_supply(here, "hooks", 50, 1, AGAIN, "ann")

    count_supplies(here, [("hooks", 30)], ONCE, "ann")
    buy_supply(here, "hooks", 50, 1, AGAIN, "ann")

    assert hooks(here).here.there == 80
    assert [one.person for one in here.ledger.state.supplies["hooks"]] == ["ann", "ann"]


def test_one_undo_takes_back_what_one_form_counted(here: Workshop) -> None:
    count_supplies(here, [("hooks", 30), ("oil", 200)], ONCE, "ann")

    press(here, "event undone", {"event": f"{ONCE}-0"})

    assert not here.ledger.state.supplies


def test_what_ran_out_in_a_run_is_the_run_s_own_and_a_count_is_the_shop_s(here: Workshop) -> None:
    """Else no run's file that waited for something could be taken in, or one could say what another shop has."""
    before = here.ledger.state

    press(here, "supply out", {"supply": "hooks"}, run="r1")
    assert first_difference(before, here.ledger.state, here.book, "r1") is None

    press(here, "supply counted", {"supply": "hooks", "have": 5})
    assert first_difference(before, here.ledger.state, here.book, "r1") == ("other", "")


def test_the_learned_use_of_nobody_s_use_is_refused(here: Workshop) -> None:
    with pytest.raises(Refused, match="use unknown"):
        take_learned_use(here, "hooks", "rail", "hooks", 4)


def test_a_phone_is_sent_nothing_more_for_what_is_counted(here: Workshop) -> None:
    """Now is at its limit: the list is a page of the server's."""
    count_supplies(here, [("hooks", 30)], ONCE, "ann")

    _, text = state_for(here, "ann")

    assert "supplies" not in json.loads(text)
    assert "counted" not in text.replace('"kind":"supply counted"', ""), "but for what the last press was"
