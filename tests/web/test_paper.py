"""Typing in a card: what is written is looked at, then entered; nothing typed is lost."""

import re

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.run.fold.state import Tray
from tests import scenario
from tests.conftest import START, HandClock
from tests.web.test_shop_pages import as_a_browser_posts

PAGE = "/plan/runs/r1/trays/1/paper"


@pytest.fixture(autouse=True)
def _run(house: House, clock: HandClock) -> None:
    """A run opened on Saturday at ten in the morning, shop's time; it is six in the evening now."""
    house.workshop.books.save(scenario.shop(), START)
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")
    clock.forward(hours=8)


def tray(house: House) -> Tray:
    return house.workshop.ledger.state.runs["r1"].trays["1"]


def look(client: FlaskClient, page: str = PAGE, **written: str) -> TestResponse:
    """Type into the form as it is, and look at it; ``cut_good`` is the box Good of the first row."""
    form = as_a_browser_posts(client.get(page).text)
    rows = {"cut": 0, "clean": 1, "sand": 2, "oil": 5, "hooks": 6}
    for name, value in written.items():
        row, _, box = name.partition("_")
        form[f"r{rows[row]}.{box}"] = value
    return client.post(page, data={**form, "how": "look"})


def enter(client: FlaskClient, looked: TestResponse, page: str = PAGE, **changed: str) -> TestResponse:
    """Press 'Enter it' on what was looked at."""
    return client.post(page, data={**as_a_browser_posts(looked.text), "how": "enter", **changed})


def test_what_will_be_entered_is_shown_first_and_nothing_is_stored(client: FlaskClient, house: House) -> None:
    looked = look(client, cut_good="5", cut_person="ann", cut_time="16:20", sand_good="4", sand_scrap="1")

    assert looked.status_code == 200
    assert "This will be saved" in looked.text
    assert "Ann, 16:20" in looked.text
    assert "not on the card, taken as done" in looked.text
    assert "4 good, 1 scrap" in looked.text
    assert house.workshop.log.last_seq() == 1


def test_entered_it_is_in_the_log_as_paper(client: FlaskClient, house: House) -> None:
    client.set_cookie("person", "ann")
    looked = look(client, cut_good="5", cut_person="ben", cut_time="16:20")

    answer = enter(client, looked)

    assert (answer.status_code, answer.location) == (303, "/plan/runs/r1/paper?entered=1")
    assert "Tray 1 is saved" in client.get(answer.location).text
    event = house.workshop.log.events()[-1]
    assert (event.basis, event.person, event.entered_by) == ("paper", "ben", "ann")
    assert event.moment.isoformat() == "2026-03-07T15:20:00+00:00"
    assert tray(house).at == {"clean": 5}


def test_entered_twice_it_is_there_once(client: FlaskClient, house: House) -> None:
    looked = look(client, cut_good="5")

    answers = [enter(client, looked).status_code for _ in range(2)]

    assert answers[0] == 303
    assert house.workshop.log.last_seq() == 2


def test_what_was_changed_after_the_look_is_looked_at_again(client: FlaskClient, house: House) -> None:
    looked = look(client, cut_good="5")

    answer = enter(client, looked, **{"r0.good": "4"})

    assert answer.status_code == 200
    assert "This will be saved" in answer.text
    assert house.workshop.log.last_seq() == 1


def test_a_tray_that_moved_on_meanwhile_is_looked_at_again(client: FlaskClient, house: House) -> None:
    looked = look(client, clean_good="5")
    record_events(house.workshop, [new_event(house.workshop, "load done", {}, run="r1", load="cut/1", person="ann")])

    answer = enter(client, looked)

    assert answer.status_code == 200
    assert house.workshop.log.last_seq() == 2


@pytest.mark.parametrize(
    ("written", "sentence"),
    [
        ({"cut_good": "five"}, "Write a whole number, 0 or more, or leave it empty."),
        ({"cut_scrap": "1"}, "Write how many were good, 0 if none."),
        ({"cut_good": "5", "cut_time": "25:99"}, "That is no time of day. Write it like 20:15."),
        ({"cut_good": "5", "cut_day": "2026-03-07"}, "Write the time too, or leave both empty."),
        (
            {"cut_good": "5", "cut_day": "2026-03-08", "cut_time": "10:00"},
            "Sun\u00a010:00 is still to come. Check the day and the time.",
        ),
        ({"cut_good": "5", "cut_person": "zoe"}, "The shop has nobody called 'zoe'. Look at Shop."),
        ({"cut_good": "9"}, "Tray 1 has 5 free for Cut, not 9. Choose fewer."),
    ],
)
def test_what_is_wrong_is_said_beside_its_box_and_nothing_is_lost(
    client: FlaskClient, house: House, written: dict[str, str], sentence: str
) -> None:
    looked = look(client, **written, hooks_why="a note of mine", hooks_good="0")

    assert looked.status_code == 422
    assert sentence.replace("'", "&#39;") in looked.text
    assert 'aria-invalid="true"' in looked.text
    assert "1 place is marked below, at Cut." in looked.text
    assert "a note of mine" in looked.text
    assert house.workshop.log.last_seq() == 1


def test_an_empty_card_says_so(client: FlaskClient) -> None:
    looked = look(client)

    assert looked.status_code == 422
    assert "Nothing new to save for tray 1." in looked.text


def test_what_is_counted_already_is_shown_and_can_be_left(client: FlaskClient, house: House) -> None:
    record_events(house.workshop, [new_event(house.workshop, "load done", {}, run="r1", load="cut/1", person="ann")])

    assert "counted: 5 good" in client.get(PAGE).text
    enter(client, look(client, clean_good="5", clean_person="ann", clean_time="17:10"))

    assert tray(house).at == {"sand:120": 5}


def test_a_time_without_a_day_is_of_the_row_above(client: FlaskClient, house: House, clock: HandClock) -> None:
    clock.forward(days=3)

    looked = look(client, cut_good="5", cut_day="2026-03-07", cut_time="16:20", clean_good="5", clean_time="17:00")
    enter(client, looked)

    assert [f"{one.moment:%d %H:%M}" for one in house.workshop.log.events()[1:]] == ["07 15:20", "07 16:00"]


def test_a_run_that_is_over_takes_no_card(client: FlaskClient, house: House) -> None:
    record_events(house.workshop, [new_event(house.workshop, "run finished", {}, run="r1")])

    assert "Nothing more can be entered" in client.get(PAGE).text
    assert "Nothing more can be entered" in client.get("/plan/runs/r1/paper").text


def test_unknown_runs_and_trays_are_not_found(client: FlaskClient) -> None:
    assert [client.get(page).status_code for page in ("/plan/runs/r9/paper", "/plan/runs/r1/trays/99/paper")] == [
        404,
        404,
    ]


def test_every_box_has_a_label(client: FlaskClient) -> None:
    text = client.get(PAGE).text

    named = set(re.findall(r'<(?:input|select) id="([^"]+)"', text))
    assert named <= set(re.findall(r'<label for="([^"]+)"', text))
    assert len(named) == 7 * 6
