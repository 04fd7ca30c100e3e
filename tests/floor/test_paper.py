"""What was written on a card, typed in afterwards."""

import json
from datetime import datetime, timedelta

import pytest

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.looking.look import state_for
from runboard.floor.looking.look_back import history_of, study_run
from runboard.floor.pressing.paper import TypedCard, enter_paper, try_paper
from runboard.floor.pressing.paper_rows import CardRow, RowRefused
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.review.time_study import MEASURED
from runboard.run.fold.state import Tray
from runboard.run.refusal import Refused
from tests.floor.fakes import MONDAY, workshop
from tests.scenario import key_rails, operation, shop

ONCE = "a" * 32


@pytest.fixture
def made() -> Workshop:
    """A run of fifteen in three trays, opened at four; it is nine in the evening now."""
    found = workshop(shop())
    open_run(found, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")
    found.clock.pass_(5 * 60)
    return found


def hour(time: str) -> datetime:
    """That time of the day, UTC."""
    hours, minutes = time.split(":")
    return MONDAY.replace(hour=int(hours), minute=int(minutes))


def paper(*rows: CardRow, tray: str = "1", once: str = ONCE) -> TypedCard:
    return TypedCard("r1", tray, rows, "ann", once)


def tray(made: Workshop, key: str = "1") -> Tray:
    return made.ledger.state.runs["r1"].trays[key]


def press(made: Workshop, kind: str, body: dict | None = None, **fields: str) -> None:
    record_events(made, [new_event(made, kind, body or {}, run="r1", person="ann", **fields)])


def test_a_card_is_entered_row_by_row_with_who_did_it_and_who_typed_it(made):
    card = paper(CardRow("cut", 5, 0, "", "ann", hour("17:00")), CardRow("clean", 4, 1, "crack", "ben", hour("17:40")))

    enter_paper(made, card)

    assert tray(made).at == {"sand:120": 4}
    assert tray(made).scrapped == 1
    events = made.log.events()[1:]
    assert [(one.basis, one.person, one.entered_by, one.moment) for one in events] == [
        ("paper", "ann", "ann", hour("17:00")),
        ("paper", "ben", "ann", hour("17:40")),
    ]


def test_looking_at_it_stores_nothing_and_says_what_would_be_entered(made):
    card = paper(CardRow("cut", 5, None, "", "ann", hour("17:00")), CardRow("sand:120", 5, 0, "", "ben", hour("18:30")))

    outcome = try_paper(made, card)

    assert [(one.name, one.how, one.good, one.scrap) for one in outcome.lines] == [
        ("Cut", "written", 5, 0),
        ("Clean", "assumed", 5, 0),
        ("Sand 120", "written", 5, 0),
    ]
    assert outcome.left == (("Sand 180", 5),)
    assert made.log.last_seq() == 1


def test_what_does_not_fit_names_its_row_and_nothing_is_stored(made):
    card = paper(CardRow("cut", 5, 0, "", "ann", hour("17:00")), CardRow("clean", 7, 0, "", "ben", hour("17:40")))

    with pytest.raises(RowRefused) as caught:
        enter_paper(made, card)

    assert (caught.value.step, caught.value.refused.code) == ("clean", "pieces not there")
    assert made.log.last_seq() == 1
    assert tray(made).at == {"cut": 5}


def test_the_same_typing_twice_is_entered_once(made):
    card = paper(CardRow("cut", 5, 0, "", "ann", hour("17:00")))

    enter_paper(made, card)
    enter_paper(made, card)

    assert made.log.last_seq() == 2


def test_a_board_is_counted_tray_by_tray(made):
    for key in ("1", "2", "3"):
        enter_paper(made, paper(CardRow("cut", 5, 0, "", "ann", hour("17:00")), tray=key, once=key * 32))

    assert [tray(made, key).at for key in ("1", "2", "3")] == [{"clean": 5}] * 3
    assert {one.load for one in made.log.events()[1:]} == {"cut/1"}


def test_what_is_counted_already_is_left_as_it_is(made):
    press(made, "load done", {}, load="cut/1")
    before = made.log.last_seq()

    outcome = try_paper(made, paper(CardRow("cut", 5, 0, "", "ann", hour("17:00"))))

    assert [one.how for one in outcome.lines] == ["as it was"]
    with pytest.raises(Refused, match="nothing written"):
        enter_paper(made, paper(CardRow("cut", 5, 0, "", "ann", hour("17:00"))))
    assert made.log.last_seq() == before


def test_a_card_that_says_less_than_the_log_takes_nothing_away(made):
    press(made, "load done", {}, load="cut/1")
    press(made, "load done", {}, load="clean/1")

    enter_paper(made, paper(CardRow("sand:120", 5, 0, "", "ben", None)))

    assert tray(made).at == {"sand:180": 5}


def test_the_card_corrects_a_count_whose_pieces_have_not_gone_on(made):
    press(made, "load done", {}, load="cut/1")

    enter_paper(made, paper(CardRow("cut", 4, 1, "knot", "ann", hour("17:00"))))

    assert tray(made).at == {"clean": 4}
    assert [one["why"] for one in tray(made).scrap["cut"]] == ["knot"]
    assert [tray(made, key).at for key in ("2", "3")] == [{"clean": 5}] * 2


def test_pieces_that_have_gone_on_are_not_counted_away(made):
    press(made, "load done", {}, load="cut/1")
    press(made, "load done", {}, load="clean/1")

    with pytest.raises(RowRefused) as caught:
        enter_paper(made, paper(CardRow("cut", 4, 0, "", "ann", None)))

    assert caught.value.refused.code == "counts gone on"


def test_what_was_only_assumed_gets_its_person_and_its_moment(made):
    press(made, "load done", {}, load="sand:120/1")

    enter_paper(made, paper(CardRow("clean", 5, 0, "", "ben", hour("17:00"))))

    event = made.log.events()[-1]
    assert (event.person, event.moment, tray(made).at) == ("ben", hour("17:00"), {"sand:180": 5})


def test_a_load_that_is_open_ends_with_the_card(made):
    press(made, "load done", {}, load="cut/1")
    press(made, "load started", {}, load="clean/1")

    enter_paper(made, paper(CardRow("clean", 5, 0, "", "ann", None)))

    run = made.ledger.state.runs["r1"]
    assert run.loads == {}
    assert made.ledger.state.people["ann"].hands is None
    assert not any(span.measured for span in run.past["clean/1"].spans)


def test_a_load_of_several_trays_goes_on_for_the_others(made):
    press(made, "load done", {}, load="sand:180/1")
    press(made, "load done", {}, load="sand:180/2")
    press(made, "load started", {}, load="oil/1+2")

    enter_paper(made, paper(CardRow("oil", 5, 0, "", "ann", None)))

    assert (tray(made).at, tray(made, "2").at) == ({"hooks": 5}, {"oil": 5})
    assert "oil/1+2" in made.ledger.state.runs["r1"].loads


def test_paper_teaches_no_time(made):
    enter_paper(
        made, paper(CardRow("cut", 5, 0, "", "ann", hour("17:00")), CardRow("clean", 5, 0, "", "ben", hour("17:40")))
    )

    _, elements = study_run(made, "r1")

    assert elements
    assert MEASURED not in {one.known for one in elements}


def test_the_wait_begins_when_the_card_says_and_ends_with_what_follows(made):
    enter_paper(made, paper(CardRow("oil", 5, 0, "", "ann", hour("17:00"))))
    assert tray(made).rests["oil"].ready_at == hour("17:00") + timedelta(hours=12)
    made.clock.pass_(14 * 60)

    enter_paper(made, paper(CardRow("hooks", 5, 0, "", "ann", None), once="b" * 32))

    assert tray(made).rests["oil"].ended_at is not None
    assert tray(made).good == 5


def test_oil_that_only_the_card_knew_of_still_asks_for_its_rags(made):
    enter_paper(made, paper(CardRow("oil", 5, 0, "", "ann", hour("17:00"))))

    assert any(due.kind.startswith("care") for due in made.log.dues.values())


def test_rows_without_a_time_keep_their_order(made):
    enter_paper(
        made,
        paper(CardRow("cut", 5), CardRow("clean", 5, 0, "", "", hour("17:40")), CardRow("sand:120", 4, 1, "crack")),
    )

    moments = [one.moment for one in made.log.events()]
    assert moments == sorted(moments)
    assert moments[2] == hour("17:40")
    assert tray(made).at == {"sand:180": 4}


def test_two_rows_of_one_minute_follow_each_other(made):
    enter_paper(
        made,
        paper(CardRow("cut", 5, 0, "", "ann", hour("17:00")), CardRow("clean", 4, 1, "crack", "ann", hour("17:00"))),
    )

    assert tray(made).at == {"sand:120": 4}


@pytest.mark.parametrize(
    ("rows", "code"),
    [
        (
            [CardRow("cut", 5, 0, "", "", hour("17:00")), CardRow("clean", 5, 0, "", "", hour("16:50"))],
            "earlier than row",
        ),
        ([CardRow("cut", 5, 0, "", "", hour("22:00"))], "moment to come"),
        ([CardRow("cut", 5, 0, "", "", hour("15:00"))], "before the run"),
    ],
)
def test_a_moment_that_cannot_be_is_refused(made, rows, code):
    with pytest.raises(RowRefused) as caught:
        try_paper(made, paper(*rows))

    assert caught.value.refused.code == code


def test_a_run_that_is_over_takes_no_card(made):
    press(made, "run finished")

    with pytest.raises(RowRefused) as caught:
        enter_paper(made, paper(CardRow("cut", 5)))

    assert caught.value.refused.code == "run closed"


def test_a_count_of_several_loads_counts_on_in_the_last():
    made = workshop({**shop(), "products": [jigs_of_three()]})
    open_run(made, Wish("small", [{"line": "1", "pieces": 5}], start=5), "ann")
    for load, pieces in (("engrave/1", 3), ("engrave/1.2", 1)):
        press(made, "load done", {"counts": {"1": {"good": pieces}}}, load=load)

    enter_paper(made, paper(CardRow("engrave", 4, 1, "burnt", "ann", None)))

    found = tray(made)
    assert (found.good, found.scrapped, found.at) == (4, 1, {})
    assert found.counts["engrave"] == {"engrave/1": (3, 0), "engrave/1.2": (1, 1)}


def jigs_of_three() -> dict:
    one_pass = key_rails()["operations"][3]["passes"][0] | {"pieces": 3}
    return {**key_rails(), "key": "small", "name": "Small", "operations": [operation("engrave", "laser", one_pass)]}


def test_it_stands_in_the_trays_history_as_from_paper(made):
    enter_paper(made, paper(CardRow("cut", 4, 1, "knot", "ben", hour("17:00"))))

    entry = history_of(made, "r1", "1")[-1]

    assert (entry.basis, entry.person, entry.facts["good"], entry.facts["scrap"]) == ("paper", "ben", 4, 1)


def test_the_page_gets_what_was_entered(made):
    enter_paper(made, paper(CardRow("cut", 5, 0, "", "ann", hour("17:00"))))

    _, text = state_for(made, "ann")

    assert json.loads(text)["runs"]["r1"]["trays"]["1"]["at"] == {"clean": 5}
