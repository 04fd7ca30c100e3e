"""What a sensor makes a page ask, and how an alert that nobody answers gets louder there."""

import re
import urllib.request
from pathlib import Path

import pytest
from playwright.sync_api import expect

from runboard.app import build
from runboard.floor.keeping.outside import STEPS_KEY
from runboard.floor.keeping.signals import make_sensor
from runboard.house import Settings
from tests.browser.beside import arrived
from tests.browser.conftest import Phones
from tests.browser.test_alarm import SPY
from tests.phone import Phone
from tests.serving import Served


@pytest.fixture
def token(shop_with_a_run: Path) -> str:
    """The token of the plug at the CNC; alerts get louder after three seconds."""
    house = build(Settings(shop_with_a_run))
    house.store.settings.put(STEPS_KEY, {"louder": 0.05, "outside": None, "computer": None})
    made, _ = make_sensor(house.leaving.ears, "cnc", "Plug")
    house.close()
    return made


def says(server: Served, token: str, text: str) -> None:
    request = urllib.request.Request(
        f"{server.address}signals/cnc", text.encode(), {"Authorization": f"Bearer {token}"}
    )
    with urllib.request.urlopen(request, timeout=10) as answer:
        assert answer.status == 200


def test_a_machine_that_looks_ended_is_asked_about_and_a_person_says_what_it_is(
    token: str, server: Served, phones: Phones
) -> None:
    ben = Phone(server.address, person="ben")
    ben.state()
    ben.press("machine started", {"minutes": 40}, run="r1", load="cut/1")
    says(server, token, "on")
    page = phones.new(init_script=SPY)
    page.goto(server.address)
    page.get_by_role("button", name="Turn on sound").click()

    says(server, token, "off")

    alert = page.get_by_role("alert").filter(has_text="seems to have finished")
    expect(alert).to_contain_text("A paused machine looks like that too")
    expect(page).to_have_title(re.compile("^▲ CNC seems to have finished"))
    assert ben.state()["runs"]["r1"]["loads"]["cut/1"]["state"] == "running"
    page.wait_for_function("() => window.tones.some((tone) => tone.volume === 1)")

    says(server, token, "on")
    expect(alert).to_be_hidden()

    says(server, token, "off")
    alert.get_by_role("button", name="Finished, nobody there").click()
    expect(alert).to_be_hidden()
    expect(page.get_by_role("button", name="CNC needs unloading")).to_be_visible()
    arrived(server.data, "machine ended")
    state = ben.state()
    assert state["runs"]["r1"]["loads"]["cut/1"]["state"] == "ended"
    assert [due["kind"] for due in state["dues"] if due.get("load")] == []
