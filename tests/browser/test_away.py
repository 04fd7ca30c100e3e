"""Called away from a machine that must be watched: it is paused and made safe first, and asked about on return."""

import json
from pathlib import Path

from playwright.sync_api import Page, Route, expect

from tests.browser.beside import arrived, bodies, opened
from tests.phone import Phone
from tests.serving import Served


def test_a_machine_paused_when_called_away_is_the_first_thing_on_return(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("machine started", {"minutes": 30}, run="r1", load="engrave/1")
    opened(phone, server)

    phone.get_by_role("button", name="Called away").click()
    expect(phone.get_by_role("dialog")).to_contain_text("switch its power off")
    phone.get_by_role("button", name="Stopped, checked, power off. I'm off").click()
    phone.get_by_role("button", name="I'm back").click()

    expect(phone.get_by_role("heading", level=1)).to_contain_text("Engrave")
    expect(phone.get_by_text("stopped early").first).to_be_visible()
    arrived(data, "load stopped")
    assert [body["note"] for body in bodies(data, "load stopped")] == ["paused when called away"]


def test_only_who_can_watch_from_where_they_are_is_offered_the_watch(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("machine started", {"minutes": 30}, run="r1", load="engrave/1")
    ben = Phone(server.address, person="ben")
    ben.state()
    ben.press("load started", run="r1", load="sand:120/4")
    opened(phone, server)

    phone.get_by_role("button", name="Called away").click()
    sheet = phone.get_by_role("dialog")
    expect(sheet).to_contain_text("Nobody else can watch it from where they are: stop it first.")
    expect(sheet.get_by_role("button", name="Ben is watching it now")).to_have_count(0)

    ben.press("load put aside", run="r1", load="sand:120/4")
    sheet.get_by_role("button", name="Ben is watching it now").click()
    expect(phone.get_by_role("button", name="I'm back")).to_be_visible()
    arrived(data, "person called away")
    assert len(bodies(data, "watch taken")) == 1


def test_a_watch_refused_for_somebody_else_names_them_above_all_that_rings(
    ann: Phone, phone: Page, server: Served
) -> None:
    ann.press("machine started", {"minutes": 30}, run="r1", load="engrave/1")
    facts = {"station": "Laser", "at": "Sander", "person": "Ben"}

    def refuse(route: Route) -> None:
        found = route.fetch().json()
        watch = [
            tap["id"] for tap in json.loads(route.request.post_data or "{}")["taps"] if tap["kind"] == "watch taken"
        ]
        taps = [
            {**tap, "answer": "refused", "code": "hands elsewhere", "facts": facts} if tap["id"] in watch else tap
            for tap in found["taps"]
        ]
        route.fulfill(json={**found, "taps": taps})

    phone.route("**/taps", refuse)
    opened(phone, server)
    phone.get_by_role("button", name="Called away").click()
    phone.get_by_role("button", name="Ben is watching it now").click()
    ann.press("person called away", person="ben")

    refusal = phone.locator(".panel.look", has_text="Ben can't watch the Laser from the Sander.")
    expect(refusal).to_be_visible()
    expect(phone.locator(".panel.red")).to_be_visible()
    assert phone.evaluate("() => document.querySelector('.panel').matches('.look')")
    phone.unroute_all(behavior="wait")
