"""Machines that must be watched, start lists, rags and finishes: what the page asks, and what the log holds afterwards."""

import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Locator, Page, Route, expect

from runboard.opening import open_workshop
from tests.browser.beside import ago, arrived, bodies, opened
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Served, running, serving

LOOKED = "No flame, work flat, air assist and exhaust on"
IN_WATER = "In water in the metal can, lid on"


@pytest.fixture
def careful_shop(shop_with_a_run: Path) -> Path:
    """The shop with eyewear at its laser, a forbidden list, and a finish whose label was read."""
    record = shop()
    record["forbidden"] = ["PVC", "polycarbonate"]
    record["finishes"] = [oil()]
    next(one for one in record["stations"] if one["key"] == "laser")["eyewear"] = "OD 6+ at 10 600 nm"
    store, workshop = open_workshop(shop_with_a_run)
    workshop.books.save(record, workshop.clock.now())
    store.close()
    return shop_with_a_run


def oil() -> dict[str, Any]:
    times = {"recoat_minutes": 480, "handle_minutes": 1440, "cure_minutes": 20160, "airing_minutes": 120}
    about = {"key": "oil", "name": "Hard wax oil", "self_heats": True, "solvent": True, "ventilation": "windows open"}
    return {**about, **times, "sheet_date": "2026-03-01"}


def alert(page: Page) -> Locator:
    return page.locator("[role=alert] .panel").first


# a machine that must be watched


def test_a_look_is_asked_for_calmly_and_answered_with_one_tap(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(2.1))
    opened(phone, server)
    expect(alert(phone)).to_contain_text("Look at the Laser. Stay and watch")
    expect(alert(phone)).to_contain_text("It only shows that someone answered. It is not a fire watch.")
    expect(alert(phone)).to_have_class(re.compile(r"\bact\b"))

    alert(phone).get_by_role("button", name=LOOKED).tap()

    expect(alert(phone)).to_be_hidden()
    arrived(data, "watch checked")
    assert bodies(data, "watch checked") == [{"at_check": 0}]
    assert [one["answer"] for one in bodies(data, "alert answered")] == ["seen"]


def test_a_minute_later_it_is_red_and_so_is_the_machine(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(3.1))

    opened(phone, server)

    expect(alert(phone)).to_contain_text("Laser running, check missed. Go and look now")
    expect(alert(phone)).to_have_class(re.compile(r"\bred\b"))
    expect(phone.get_by_role("button", name=re.compile("^Laser.*watch check missed"))).to_be_visible()


def test_everybody_last_seen_elsewhere_is_red_at_once_until_somebody_is_at_it(
    ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1")
    ann.press("room changed", {"room": "shop"})
    opened(phone, server)
    expect(alert(phone)).to_contain_text("Laser running with nobody near. Someone go to it now")
    expect(alert(phone)).to_have_class(re.compile(r"\bred\b"))
    expect(phone.get_by_text("present")).to_have_count(0)

    alert(phone).get_by_role("button", name=LOOKED).tap()

    expect(alert(phone)).to_be_hidden()
    arrived(data, "watch checked")
    state = ann.state()
    assert [one for one in state["dues"] if one["kind"] == "nobody near" and one["due_at"] <= state["now"]] == []


def test_a_look_that_was_missed_while_the_server_was_dead_is_red_on_its_return(
    shop_with_a_run: Path, phones: Phones
) -> None:
    with running("serve", "--data", str(shop_with_a_run)) as server:
        ann = Phone(server.address)
        ann.state()
        ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(4))
        server.kill()

    with running("serve", "--data", str(shop_with_a_run)) as server:
        page = opened(phones.new(), server)

        expect(alert(page)).to_have_class(re.compile(r"\bred\b"))
        expect(alert(page)).to_contain_text("Laser running, check missed. Go and look now")
        expect(alert(page)).to_contain_text("This comes late: the server was away.")
        # The danger comes before the question of what was running.
        first = page.locator(".attention .panel").first
        expect(first).to_contain_text("check missed")
        page.close()


# the start list


def start_list(page: Page) -> Locator:
    page.get_by_role("button", name="Open start list").first.click()
    return page.get_by_role("dialog", name=re.compile("^Start list"))


def test_the_whole_list_once_then_one_press_a_load_and_anew_for_another_person(
    careful_shop: Path, ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("load started", run="r1", load="engrave/1")
    opened(phone, server)
    sheet = start_list(phone)
    runs = sheet.get_by_role("button", name=re.compile("to tick$|started$"))
    expect(runs).to_be_disabled()
    expect(sheet).to_contain_text("OD 6+ at 10 600 nm")
    expect(sheet).to_contain_text("Never: PVC and polycarbonate.")
    for point in sheet.get_by_role("checkbox").all():
        point.check()
    runs.click()
    arrived(data, "machine started")
    ann.state()
    for kind in ("machine ended", "unloading started", "load done"):
        ann.press(kind, run="r1", load="engrave/1")
    ann.press("load started", run="r1", load="engrave/2")

    phone.get_by_role("button", name="Checked as before: Laser started").click()

    expect(phone.get_by_role("button", name=re.compile("^Laser.*running, tray 2"))).to_be_visible()
    arrived(data, "machine started", number=2)
    full, short = bodies(data, "checklist ticked")
    assert (full["list"], len(full["items"]), short) == ("full", 8, {"list": "short"})
    ann.state()
    for kind in ("machine ended", "unloading started", "load done"):
        ann.press(kind, run="r1", load="engrave/2")
    Phone(server.address, person="ben").press("load started", run="r1", load="engrave/3")
    phone.get_by_role("button", name="Ben", exact=True).click()
    expect(phone.get_by_role("button", name="Open start list")).to_be_visible()


def test_a_material_that_nobody_noted_cannot_be_ticked_and_neither_can_one_that_is_forbidden(
    careful_shop: Path, ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    ann.press("load started", run="r1", load="engrave/1")
    phone.route("**/state?*", without_wood)
    opened(phone, server)
    sheet = start_list(phone)
    material = sheet.get_by_role("checkbox", name=re.compile("^I know what it is"))
    expect(material).to_be_disabled()
    expect(sheet).to_contain_text("Material not recorded. Not sure what it is? Don't start.")

    sheet.get_by_label("What is it made of?").fill("polycarbonate")
    sheet.get_by_role("button", name="Note it").click()

    expect(sheet).to_contain_text("polycarbonate is on the shop's banned list.")
    expect(material).to_be_disabled()
    arrived(data, "wood noted")
    assert bodies(data, "wood noted") == [{"wood": "polycarbonate"}]
    phone.unroute_all(behavior="wait")


def without_wood(route: Route) -> None:
    """The server's state, but of a run of which nobody wrote down the wood."""
    found = route.fetch()
    state = found.json() if found.status == 200 else {}
    for run in state.get("runs", {}).values():
        run["wood"] = ""
        for tray in run["trays"].values():
            tray["wood"] = "" if tray["wood"] == "ash" else tray["wood"]
    if state:
        route.fulfill(response=found, json=state)
    else:
        route.fulfill(response=found)


# cautions and signs


def test_the_cautions_of_a_machine_that_is_watched_stay_on_the_screen(ann: Phone, phone: Page, server: Served) -> None:
    ann.press("machine started", {"minutes": 22}, run="r1", load="engrave/1", at=ago(0.2))
    opened(phone, server)

    expect(phone.locator(".second-column ul.cautions")).to_contain_text("Fire risk")
    expect(phone.locator("details.care")).to_contain_text("Laser beam: eyewear for its wavelength")


def test_cautions_stand_with_the_step_with_their_signs(ann: Phone, phone: Page, server: Served) -> None:
    opened(phone, server)
    cautions = phone.locator("section.now ul.cautions")
    expect(cautions.get_by_text("No gloves or loose sleeves near rotating cutters.")).to_be_visible()
    signs_are_drawn(cautions)
    ann.press("load started", run="r1", load="sand:120/1")
    expect(phone.locator("details.care")).to_contain_text("Eye protection on.")
    phone.goto(f"{server.address}trays")
    phone.get_by_text("Steps, lists and setup sheets").click()
    phone.locator("summary", has_text="Cut").first.click()
    step = phone.locator("details", has_text="Cut").last
    expect(step.get_by_text("Disconnect before changing the cutter.")).to_be_visible()
    expect(step.get_by_text("The work is held down")).to_be_visible()


def signs_are_drawn(place: Locator) -> None:
    signs = place.locator("img.sign")
    expect(signs.first).to_be_visible()
    for sign in signs.all():
        assert re.match(r"ISO 7010 sign [WMPEF]\d{3}$", sign.get_attribute("alt") or "")
        sign.scroll_into_view_if_needed()
        sign.evaluate("one => one.decode()")
        assert sign.evaluate("one => one.naturalWidth") > 0


# rags and finishes


def test_rags_are_asked_about_at_the_start_and_the_end_and_nobody_goes_before_it_is_said(
    careful_shop: Path, ann: Phone, phone: Page, server: Served, data: Path
) -> None:
    opened(phone, server)
    ann.press("load started", run="r1", load="oil/1")
    expect(alert(phone)).to_contain_text("Before you open the tin")
    expect(alert(phone).get_by_role("button")).to_have_count(2)  # the two answers: there is no other way
    alert(phone).get_by_role("button", name="The lidded metal can with water is ready").click()
    expect(alert(phone)).to_be_hidden()
    ann.state()
    ann.press("load done", run="r1", load="oil/1")
    expect(alert(phone)).to_contain_text("single layer outdoors in the shade, away from buildings")
    expect(alert(phone).get_by_role("button", name="Seen")).to_have_count(0)

    phone.get_by_role("button", name="Finish for today").last.click()
    sheet = phone.get_by_role("dialog", name="Before you go")
    expect(sheet.get_by_role("checkbox")).to_have_count(5)
    for point in sheet.get_by_role("checkbox").all():
        point.check()
    expect(sheet.get_by_role("button", name="Say what was done first")).to_be_disabled()
    expect(sheet.get_by_role("button", name="Finish anyway, not all done")).to_have_count(0)
    sheet.get_by_role("button", name="Something else …").click()
    sheet.get_by_label("What was done?").last.fill("Hung over the fence, one by one")
    sheet.get_by_role("button", name="Finish for today").click()

    arrived(data, "person went")
    assert len(bodies(data, "person went")) == 1
    done = {one["reminder"].split("|")[0]: one["done"] for one in bodies(data, "reminder answered")}
    assert done == {
        "care start": "The lidded metal can with water is ready",
        "care lock-up": "Hung over the fence, one by one",
        "care end": "Hung over the fence, one by one",
    }
    expect(alert(phone)).to_be_hidden()


def test_the_label_is_read_before_the_coat_and_says_from_when_a_piece_may_be_touched(
    shop_with_a_run: Path, phones: Phones
) -> None:
    record = shop()
    record["finishes"] = [oil()]
    product = record["products"][0]
    next(one for one in product["operations"] if one["key"] == "oil")["finish"] = "oil"
    store, workshop = open_workshop(shop_with_a_run)
    workshop.books.save(record, workshop.clock.now())
    store.close()

    with serving(shop_with_a_run) as server:
        ann = Phone(server.address)
        ann.state()
        ann.press("route revised", {"product": product, "from_tray": "1"}, run="r1", at=ago(4))
        ann.press("load started", run="r1", load="oil/1", at=ago(3))
        page = opened(phones.new(), server)
        label = page.locator("p.label")
        expect(label).to_contain_text("Hard wax oil · label of 1 Mar 2026")
        expect(label).to_contain_text("Ventilation: windows open")
        expect(label).to_contain_text("no laser, sanding, heater or charger in this room for 2 h after the coat")

        ann.press("load done", run="r1", load="oil/1")
        row = page.locator("li", has_text="Oil: drying")
        expect(row).to_contain_text(
            re.compile(r"recoat from .+ · handle from .+ · full cure .+ · label of 1\sMar\s2026")
        )
        expect(row).to_contain_text("Dry to the touch is not cured.")
        page.close()
    assert bodies(shop_with_a_run, "load done") == [{}]


def test_a_coat_at_a_bench_asks_for_its_label_as_one_at_a_finishing_station_does(
    shop_with_a_run: Path, phones: Phones
) -> None:
    product = shop()["products"][0]
    next(one for one in product["operations"] if one["key"] == "oil")["station"] = "bench"

    with serving(shop_with_a_run) as server:
        ann = Phone(server.address)
        ann.state()
        ann.press("route revised", {"product": product, "from_tray": "1"}, run="r1", at=ago(4))
        ann.press("load started", run="r1", load="oil/1", at=ago(3))
        page = opened(phones.new(), server)
        expect(page.locator("p.label")).to_contain_text("No finish recorded for this step.")

        ann.press("load done", run="r1", load="oil/1")
        expect(page.locator("li", has_text="Oil: drying")).to_contain_text("Dry to the touch is not cured.")
        page.close()
    assert bodies(shop_with_a_run, "load done") == [{}]


def test_a_wait_is_not_ended_early_without_a_question(ann: Phone, phone: Page, server: Served, data: Path) -> None:
    ann.press("load started", run="r1", load="oil/1")
    ann.press("load done", run="r1", load="oil/1")
    opened(phone, server)
    phone.goto(f"{server.address}trays")
    tray = phone.get_by_role("article").filter(has=phone.get_by_role("heading", name="tray 1", exact=True))
    tray.get_by_text("Assign, move, count, hold, history").click()

    tray.get_by_role("button", name="End the wait: Oil").click()
    sheet = phone.get_by_role("dialog")
    expect(sheet).to_contain_text("Dry to the touch is not cured.")
    expect(sheet).to_contain_text("No finish recorded for this step.")
    sheet.get_by_role("button", name="End it early: tray 1").click()

    arrived(data, "wait ended")
    assert bodies(data, "wait ended") == [{"early": True}]
