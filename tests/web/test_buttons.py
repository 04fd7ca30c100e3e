"""A button at a station presses Now's big button for whose hands are there, and less than that where it matters."""

import re
from dataclasses import dataclass
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.keeping.buttons import make_button
from runboard.floor.keeping.signals import make_sensor
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.run.fold.state import Load
from tests.conftest import HandClock
from tests.scenario import shop


@dataclass
class Foot:
    """Whoever presses a foot switch, and what stands in the log."""

    house: House
    client: FlaskClient
    tokens: dict[str, str]

    def press(self, station: str, token: str = "") -> TestResponse:
        told = {"Authorization": f"Bearer {token or self.tokens[station]}"}
        return self.client.post(f"/buttons/{station}", headers=told)

    def did(self, station: str) -> Any:
        answer = self.press(station)
        assert answer.status_code == 200
        return answer.json["did"]

    def says(self, kind: str, person: str = "ann", body: dict[str, Any] | None = None, **fields: Any) -> None:
        event = new_event(self.house.workshop, kind, body or {}, run="r1", person=person, **fields)
        record_events(self.house.workshop, [event])

    def load(self, key: str) -> Load:
        run = self.house.workshop.ledger.state.runs["r1"]
        return run.loads.get(key) or run.past[key]

    def cut(self) -> None:
        """A board is cut, so that there is work by hand."""
        self.says("machine started", load="cut/1")
        self.says("unloading started", load="cut/1")
        self.says("load done", load="cut/1")

    def cleans(self, person: str = "ann", load: str = "clean/1", tray: str = "1") -> None:
        self.says("load started", person, {"pieces": {tray: 5}}, load=load, operation="clean", station="bench")


@pytest.fixture
def foot(house: House, client: FlaskClient) -> Foot:
    """A run that is open; buttons at the bench and at the CNC."""
    workshop = house.workshop
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    tokens = {station: make_button(house.leaving.ears, station, "Foot switch")[0] for station in ("bench", "cnc")}
    return Foot(house, client, tokens)


def test_a_press_ends_what_hands_are_at_there_all_good(foot: Foot) -> None:
    foot.cut()
    foot.cleans()

    said = foot.press("bench").json

    assert said["did"] == "done"
    assert said["person"] == "Ann"
    assert foot.load("clean/1").state == "done"
    assert foot.house.workshop.ledger.state.runs["r1"].trays["1"].counts["clean"]["clean/1"] == (5, 0)


def test_the_same_press_begins_what_now_says_next(foot: Foot) -> None:
    foot.cut()
    foot.cleans()

    foot.press("bench")

    state = foot.house.workshop.ledger.state
    assert state.people["ann"].hands is not None
    assert state.people["ann"].hands != ("r1", "clean/1")


def test_a_second_press_within_five_seconds_takes_it_back(foot: Foot, clock: HandClock) -> None:
    foot.cut()
    foot.cleans()
    foot.press("bench")
    clock.forward(seconds=4)

    assert foot.did("bench") == "taken back"
    assert foot.load("clean/1").state == "working"
    assert foot.house.workshop.ledger.state.people["ann"].hands == ("r1", "clean/1")


def test_after_five_seconds_it_is_a_press_of_its_own(foot: Foot, clock: HandClock) -> None:
    foot.cut()
    foot.cleans()
    foot.press("bench")
    clock.forward(seconds=6)

    foot.press("bench")

    assert foot.load("clean/1").state == "done"


def test_what_was_taken_back_is_pressed_anew_by_the_third(foot: Foot, clock: HandClock) -> None:
    foot.cut()
    foot.cleans()
    foot.press("bench")
    clock.forward(seconds=2)
    foot.press("bench")
    clock.forward(seconds=2)

    assert foot.did("bench") == "done"
    assert foot.load("clean/1").state == "done"


def test_a_button_that_bounces_presses_once(foot: Foot, clock: HandClock) -> None:
    foot.cut()
    foot.cleans()
    first = foot.press("bench").json
    clock.forward(seconds=0.2)

    again = foot.press("bench").json

    assert again == first
    assert foot.load("clean/1").state == "done"


def test_it_never_starts_a_machine_that_asks_for_a_list(foot: Foot) -> None:
    foot.says("load started", body={"pieces": {"1": 5, "2": 5, "3": 5}}, load="cut/1", operation="cut", station="cnc")

    said = foot.press("cnc").json

    assert said["did"] == "nothing"
    assert said["code"] == "button list"
    assert foot.load("cut/1").state == "loading"


def test_not_even_where_the_list_was_ticked_today(foot: Foot) -> None:
    foot.says("load started", body={"pieces": {"1": 5, "2": 5, "3": 5}}, load="cut/1", operation="cut", station="cnc")
    foot.says("checklist ticked", body={"list": "full", "items": ["a"]}, load="cut/1", station="cnc", operation="cut")

    assert foot.did("cnc") == "nothing"
    assert foot.load("cut/1").state == "loading"


def test_a_machine_that_is_unloaded_is_done_by_it(foot: Foot) -> None:
    foot.says("machine started", load="cut/1")
    foot.says("unloading started", load="cut/1")

    foot.press("cnc")

    assert foot.load("cut/1").state == "done"


def test_a_running_machine_is_not_touched(foot: Foot) -> None:
    foot.says("machine started", load="cut/1")

    assert foot.did("cnc") == "nothing"
    assert foot.load("cut/1").state == "running"


def test_it_does_nothing_where_two_people_are_at_the_station(foot: Foot) -> None:
    foot.cut()
    foot.cleans()
    foot.says("load started", "ben", {"pieces": {"1": 5}}, load="clean/1", operation="clean", station="bench")

    said = foot.press("bench").json

    assert (said["did"], said["code"]) == ("nothing", "button two people")
    assert foot.load("clean/1").state == "working"


def test_it_does_nothing_where_nobody_is_at_the_station(foot: Foot) -> None:
    said = foot.press("bench").json

    assert (said["did"], said["code"]) == ("nothing", "button nobody")
    assert "bench" in said["sentence"].lower()


def test_it_answers_no_alert(foot: Foot, clock: HandClock) -> None:
    foot.says("machine started", load="cut/1", body={"minutes": 1})
    clock.forward(minutes=5)
    before = dict(foot.house.workshop.ledger.state.answers)

    foot.press("cnc")

    assert foot.house.workshop.ledger.state.answers == before


def test_the_first_piece_that_the_lead_wants_to_see_is_shown_first(foot: Foot) -> None:
    foot.cut()
    foot.says("operation given", body={"to": "ben", "look": True, "trays": ["1"]}, operation="clean")
    foot.cleans("ben")

    said = foot.press("bench").json

    assert (said["did"], said["code"]) == ("nothing", "button look")


# who may press


def test_a_wrong_token_presses_nothing(foot: Foot) -> None:
    foot.cut()
    foot.cleans()

    answer = foot.press("bench", "wrong")

    assert answer.status_code == 401
    assert foot.load("clean/1").state == "working"


def test_a_token_presses_at_its_own_station_only(foot: Foot) -> None:
    assert foot.press("bench", foot.tokens["cnc"]).status_code == 401


def test_a_sensors_token_presses_nothing_and_a_button_says_no_signal(foot: Foot) -> None:
    sensor = make_sensor(foot.house.leaving.ears, "bench", "Plug")[0]
    button = {"Authorization": f"Bearer {foot.tokens['bench']}"}

    assert foot.press("bench", sensor).status_code == 401
    assert foot.client.post("/signals/bench", data="140", headers=button).status_code == 401


def test_the_open_pages_hear_what_it_did(foot: Foot) -> None:
    foot.cut()
    foot.cleans()
    before = foot.client.get("/state?person=ann")

    foot.press("bench")

    after = foot.client.get("/state?person=ann")
    assert after.headers["ETag"] != before.headers["ETag"]
    assert after.json["pressed"]["did"] == "done"
    assert after.json["pressed"]["station"] == "bench"


def test_a_press_that_did_nothing_is_heard_too(foot: Foot) -> None:
    before = foot.client.get("/state?person=ann").headers["ETag"]

    foot.press("bench")

    after = foot.client.get("/state?person=ann")
    assert after.headers["ETag"] != before
    assert after.json["pressed"]["did"] == "nothing"


# by hand at a cutter, and the page where a button is made


def test_at_a_router_table_the_list_is_said_on_the_phone_first(foot: Foot) -> None:
    record = shop()
    record["stations"][1]["kind"] = "hand cutter"
    foot.house.workshop.books.save(record, foot.house.workshop.clock.now())
    foot.cut()
    foot.cleans()

    assert foot.press("bench").json["code"] == "button list"

    foot.says("checklist ticked", body={"list": "short"}, load="clean/1", station="bench", operation="clean")
    foot.house.workshop.clock.forward(seconds=1)  # type: ignore[attr-defined]

    assert foot.did("bench") == "done"


def test_the_page_shows_its_token_once_with_a_line_to_try_it(foot: Foot) -> None:
    made = foot.client.post("/shop/signals/bench/buttons", data={"name": "Foot switch"})
    (line,) = re.findall(r"curl -X POST -H 'Authorization: Bearer (\S+)' \S+/buttons/bench", made.text)

    assert "Foot switch" in made.text
    assert foot.press("bench", line).status_code == 200
    assert line not in foot.client.get("/shop/signals/bench").text


def test_a_button_that_was_revoked_presses_no_more(foot: Foot) -> None:
    foot.client.get("/shop/signals/bench")
    (button,) = [one for one in foot.house.leaving.ears.sensors.sensors() if one.station == "bench"]

    foot.client.post(f"/shop/signals/bench/tokens/{button.id}/revoke")

    assert foot.press("bench").status_code == 401
