"""The list of who gets what: what is ready stands first, ticks are pressed there by whoever works in the shop."""

from pathlib import Path

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.runs import Wish, close_run, new_event, open_run, set_orders
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from tests.attack.cast import device_with, shut_house
from tests.conftest import START, HandClock
from tests.scenario import shop
from tests.web.test_shop_pages import words

ORDERS = [
    {"line": "1", "pieces": 3, "for": "Meyer", "text": "12"},
    {"line": "2", "pieces": 2, "for": "Ito", "text": "7a", "due": "2099-01-01T10:00:00+00:00"},
]


def a_run(house: House, good: int = 3) -> str:
    """A run of rails made at the bench alone, so many of them good; answers its id."""
    record = shop()
    record["products"][0]["operations"] = record["products"][0]["operations"][-1:]
    house.workshop.books.save(record, START)
    run = open_run(house.workshop, Wish("rail", ORDERS, start=5), "ann")
    count = {"good": good, "scrap": []}
    if good:
        press(house, "pieces counted", count, run=run, tray="1", operation="hooks")
    return run


def press(house: House, kind: str, body: dict[str, object], **fields: object) -> None:
    record_events(house.workshop, [new_event(house.workshop, kind, body, **{"run": "r1", "person": "ann", **fields})])


def ticked(house: House, line: str, run: str = "r1") -> list[str]:
    return sorted(house.workshop.ledger.state.runs[run].ticks.get(line, ()))


def test_what_can_be_handed_over_stands_first_with_how_much_of_it_is_ready(house: House, client: FlaskClient) -> None:
    a_run(house)

    said = words(client.get("/plan/runs/r1/lines"))

    assert said.index("7a Ito") < said.index("12 Meyer")
    assert "2 of 2 ready" in said
    assert "1 of 3 ready" in said


def test_a_tick_is_pressed_and_taken_back(house: House, client: FlaskClient) -> None:
    a_run(house)

    answer = client.post("/plan/runs/r1/lines?person=ann", data={"line": "2", "on": "packed"})
    assert (answer.status_code, answer.headers["Location"]) == (303, "/plan/runs/r1/lines#line-2")
    assert ticked(house, "2") == ["packed"]
    shown = client.get("/plan/runs/r1/lines").text
    assert 'name="off" value="packed" aria-pressed="true"' in shown
    assert ", Ann" in shown

    client.post("/plan/runs/r1/lines", data={"line": "2", "off": "packed"})
    assert ticked(house, "2") == []


def test_a_press_from_an_old_page_turns_nothing_round(house: House, client: FlaskClient) -> None:
    a_run(house)
    for _ in range(2):
        client.post("/plan/runs/r1/lines", data={"line": "2", "on": "packed"})

    assert ticked(house, "2") == ["packed"]


def test_a_line_that_somebody_took_away_is_said_and_ticks_nothing(house: House, client: FlaskClient) -> None:
    a_run(house)
    set_orders(house.workshop, "r1", ORDERS[:1], "ann")

    answer = client.post("/plan/runs/r1/lines", data={"line": "2", "on": "packed"})

    assert answer.status_code == 422
    assert "no order line '2' any more" in words(answer)


@pytest.mark.parametrize("data", [{}, {"line": "2"}, {"line": "2", "on": "sent"}, {"line": "../x", "on": "paid"}])
def test_a_press_that_says_no_tick_is_refused(house: House, client: FlaskClient, data: dict[str, str]) -> None:
    a_run(house)

    assert client.post("/plan/runs/r1/lines", data=data).status_code == 422
    assert ticked(house, "2") == []


def test_it_is_linked_from_the_run_which_says_what_is_ready(house: House, client: FlaskClient) -> None:
    a_run(house, good=0)
    before = client.get("/plan/runs/r1")
    press(house, "pieces counted", {"good": 5, "scrap": []}, tray="1", operation="hooks")

    after = words(client.get("/plan/runs/r1"))

    assert "/plan/runs/r1/lines" in before.text
    assert "Ready to hand over" not in words(before)
    assert "Ready to hand over" in after
    assert "7a Ito 2 of 2 ready" in after


def test_a_run_that_is_over_goes_on_being_collected(house: House, client: FlaskClient) -> None:
    a_run(house, good=5)
    close_run(house.workshop, "r1", "run finished", "ann")

    assert client.post("/plan/runs/r1/lines", data={"line": "1", "on": "collected"}).status_code == 303
    assert ticked(house, "1") == ["collected"]
    assert "2 of 2 ready" in words(client.get("/plan/runs/r1"))


def test_a_helpers_device_ticks_and_a_strangers_does_not(tmp_path: Path, clock: HandClock) -> None:
    with shut_house(tmp_path, clock) as house:
        run = a_run(house)
        helper, _ = device_with(house, "crew")

        assert "can look at this screen" not in words(helper.get(f"/plan/runs/{run}/lines"))
        assert helper.post(f"/plan/runs/{run}/lines", data={"line": "2", "on": "paid"}).status_code == 303
        stranger = house.app.test_client().post(f"/plan/runs/{run}/lines", data={"line": "1", "on": "paid"})
        assert stranger.status_code == 401
        assert (ticked(house, "2", run), ticked(house, "1", run)) == (["paid"], [])


def test_a_packing_slip_is_printed_for_one_line_also_when_the_run_is_over(house: House, client: FlaskClient) -> None:
    a_run(house, good=5)
    close_run(house.workshop, "r1", "run finished", "ann")

    form = client.get("/plan/runs/r1/cards?kind=slips&line=2").text
    assert 'value="slips" checked' in form
    assert 'name="line" value="2" checked' in form
    assert 'value="travellers"' not in form
    answer = client.post("/plan/runs/r1/cards", data={"kind": "slips", "line": "2", "how": "browser"})
    said = words(client.get(answer.headers["Location"]))
    assert "Ito" in said
    assert "Meyer" not in said


def test_no_traveller_is_printed_beside_slips_of_a_run_that_is_over(house: House, client: FlaskClient) -> None:
    a_run(house, good=5)
    close_run(house.workshop, "r1", "run finished", "ann")

    answer = client.post("/plan/runs/r1/cards", data={"kind": ["slips", "travellers"], "how": "browser"})

    assert answer.status_code == 422
