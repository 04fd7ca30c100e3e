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

    assert said.index("Ito: “7a”") < said.index("Meyer: “12”")
    assert "2 of 2 ready" in said
    assert "1 of 3 ready" in said


def test_a_tick_is_pressed_and_taken_back(house: House, client: FlaskClient) -> None:
    a_run(house)

    answer = client.post("/plan/runs/r1/lines?person=ann", data={"line": "2", "on": "packed"})
    assert (answer.status_code, answer.headers["Location"]) == (303, "/plan/runs/r1/lines?only=2")
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
    assert "no longer has order line '2'" in words(answer)


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
    assert "Ito: “7a” 2 of 2 ready" in after


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

        assert "can view this screen" not in words(helper.get(f"/plan/runs/{run}/lines"))
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


# not all of it is ready


def pieces_ticked(house: House, line: str, tick: str = "collected") -> int:
    return house.workshop.ledger.state.runs["r1"].ticks[line][tick].pieces


def test_of_what_nothing_is_ready_nothing_is_packed_or_collected_but_it_may_be_paid(
    house: House, client: FlaskClient
) -> None:
    a_run(house, good=2)

    refused = client.post("/plan/runs/r1/lines", data={"line": "1", "on": "packed", "some": "1"})
    assert refused.status_code == 422
    assert "Nothing of it is ready" in words(refused)
    assert client.post("/plan/runs/r1/lines", data={"line": "1", "on": "paid"}).status_code == 303
    assert ticked(house, "1") == ["paid"]


def test_of_what_is_ready_in_part_it_is_asked_first(house: House, client: FlaskClient) -> None:
    a_run(house, good=3)

    answer = client.post("/plan/runs/r1/lines", data={"line": "1", "on": "collected"})
    assert answer.headers["Location"] == "/plan/runs/r1/lines?only=1&ask=collected"
    assert ticked(house, "1") == []
    asked = client.get(answer.headers["Location"])
    assert "Only 1 of 3 is ready. Hand it over now?" in words(asked)
    assert 'name="some" value="1"' in asked.text

    client.post("/plan/runs/r1/lines", data={"line": "1", "on": "collected", "some": "1"})
    assert pieces_ticked(house, "1") == 1


def test_what_is_to_follow_stays_in_sight_and_is_collected_later(house: House, client: FlaskClient) -> None:
    a_run(house, good=3)
    client.post("/plan/runs/r1/lines", data={"line": "1", "on": "collected", "some": "1"})

    said = words(client.get("/plan/runs/r1/lines"))
    assert "1 to hand over, 1 not ready yet, 0 collected." in said
    assert "Collected: 1 of 3," in said
    assert client.post("/plan/runs/r1/lines", data={"line": "1", "on": "collected", "some": "1"}).status_code == 422

    press(house, "pieces counted", {"good": 5, "scrap": []}, tray="1", operation="hooks")
    assert "2 to hand over, 0 not ready yet, 0 collected." in words(client.get("/plan/runs/r1/lines"))
    client.post("/plan/runs/r1/lines", data={"line": "1", "on": "collected"})
    assert pieces_ticked(house, "1") == 0
    assert "1 to hand over, 0 not ready yet, 1 collected." in words(client.get("/plan/runs/r1/lines"))


def test_a_part_is_taken_back(house: House, client: FlaskClient) -> None:
    a_run(house, good=3)
    client.post("/plan/runs/r1/lines", data={"line": "1", "on": "packed", "some": "1"})

    assert 'name="off" value="packed"' in client.get("/plan/runs/r1/lines").text
    client.post("/plan/runs/r1/lines", data={"line": "1", "off": "packed"})
    assert ticked(house, "1") == []


def test_after_a_press_no_other_customers_buttons_are_on_the_page(house: House, client: FlaskClient) -> None:
    a_run(house, good=5)

    answer = client.post("/plan/runs/r1/lines", data={"line": "2", "on": "collected"}, follow_redirects=True)

    assert 'id="line-2"' in answer.text
    assert 'id="line-1"' not in answer.text


def test_a_day_without_a_time_of_day_is_said_as_a_day(house: House, client: FlaskClient) -> None:
    a_run(house)
    set_orders(house.workshop, "r1", [ORDERS[1] | {"due": "2099-01-01T22:59:00+00:00"}], "ann")

    said = words(client.get("/plan/runs/r1/lines"))

    assert "Thu 1 Jan 2099" in said
    assert "23:59" not in said
    assert "23:59" not in client.get("/plan/runs/r1").text
