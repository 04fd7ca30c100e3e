"""A stranger scans a tray's card with a phone of their own, works the tray, and gets nowhere else."""

import json
import re
import sqlite3
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.letting_in.travellers import read_keys, set_hours, traveller_link
from runboard.opening import open_workshop
from tests.browser.beside import arrived, bodies, later
from tests.browser.conftest import Phones
from tests.browser.looking import Looking
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Here, Served

EVERYTHING_ELSE = [
    "",
    "trays",
    "plan",
    "review",
    "shop",
    "wall",
    "runs/r1/trays/1/history",
    "state",
    "pictures/x.jpg",
    "stream",
]


@pytest.fixture
def shop_with_a_run(data: Path) -> Path:
    """The small shop: tray 1 at the laser, trays 4 and 5 to be sanded. Its laser is looked at each half minute."""
    record = shop()
    operations = {one["key"]: one for one in record["products"][0]["operations"]}
    operations["sand"]["instructions"] = [{"text": "Sand with the grain.", "picture": None}]
    operations["engrave"]["watch_every_minutes"] = 0.5
    store, workshop = open_workshop(data)
    workshop.books.save(record, workshop.clock.now())
    orders = [{"line": str(number), "pieces": 1, "text": f"No. {number}"} for number in range(1, 31)]
    begun = {"1": "engrave", "4": "sand:120", "5": "sand:120"}
    open_run(workshop, Wish("rail", orders, name="Key rails", begun=begun), "ann")
    store.close()
    return data


@pytest.fixture
def strangers(chromium: Browser, server: Served) -> Iterator[Phones]:
    """Phones that the shop does not know. Their browsers complain of each 401 and 403: no mistake of the page."""
    found = Phones(chromium)
    yield found
    assert [one for one in found.complaints if "401" not in one and "403" not in one] == []


def address_of(data: Path, server: Served, tray: str) -> str:
    """The address in the square code of a tray's card."""
    store, _ = open_workshop(data)
    link = traveller_link(read_keys(store.settings), "r1", tray)
    store.close()
    return server.address.rstrip("/") + link.path


def scans(strangers: Phones, data: Path, server: Served, tray: str = "4", name: str = "Mia", **how: Any) -> Page:
    """A fresh phone with the card's address open, its helper come in."""
    page = strangers.new(**how)
    page.goto(address_of(data, server, tray))
    page.get_by_label("Your first name").fill(name)
    page.get_by_role("button", name="Start helping").click()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    return page


def person_of(page: Page) -> str:
    return str(page.evaluate("async () => (await (await fetch('/helper/state')).json()).person"))


def shown(ann: Phone, page: Page, station: str) -> None:
    ann.state()
    ann.press("shown how", {"person": person_of(page)}, station=station)


def log_of(data: Path) -> list[tuple[str, str, str, str]]:
    """(kind, load, tray, person) of everything that guests pressed."""
    store = sqlite3.connect(data / "shop.db")
    found = store.execute(
        "select kind, load, tray, person from event where person like 'guest-%' order by seq"
    ).fetchall()
    store.close()
    return found


def test_a_helper_works_a_tray_counts_it_and_gets_nowhere_else(
    strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Served
) -> None:
    page = scans(strangers, shop_with_a_run, server)
    expect(page.get_by_role("heading", level=1)).to_have_text("Sand 120")
    expect(page.get_by_text("Sand with the grain.")).to_be_visible()
    expect(page.get_by_text("Ask the lead to show you: Sander")).to_be_visible()
    expect(page.get_by_role("button", name="Start", exact=True)).to_be_hidden()
    page.get_by_role("button", name="Call the lead to show me").click()
    expect(page.get_by_text("Lead called at")).to_be_visible()

    shown(ann, page, "sander")
    page.get_by_role("button", name="Start", exact=True).click()
    page.get_by_role("button", name="Some are bad").click()
    page.get_by_role("button", name="torn out").click()
    page.get_by_role("button", name="Done: 4 good, 1 bad").click()

    expect(page.get_by_role("heading", level=1)).to_have_text("Sand 180")
    expect(page.get_by_text("Sand 120 is done: 4 good.")).to_be_visible()
    expect(page.locator(".pressed")).to_contain_text("sent")
    for place in EVERYTHING_ELSE:
        found = page.evaluate(
            "async (at) => { const a = await fetch('/' + at); return [a.status, await a.text()]; }", place
        )
        assert found[0] == 403 and "only for tray 4" in found[1], place
        assert "Ann" not in found[1] and "tray 5" not in found[1]
    page.goto(f"{server.address}trays")
    expect(page.get_by_role("heading", level=1)).to_contain_text("This phone is only for tray 4")
    page.get_by_role("link", name="Go to the tray").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sand 180")
    assert pressed_for_tray_5(page) == "This phone is only for tray 4."

    mia = person_of(page)
    assert log_of(shop_with_a_run) == [
        ("person came", "", "", mia),
        ("lead called", "sand:120/4", "4", mia),
        ("load started", "sand:120/4", "", mia),
        ("load done", "sand:120/4", "", mia),
    ]
    counts = {"4": {"good": 4, "scrap": [{"pieces": 1, "why": "tear-out"}]}}
    assert bodies(shop_with_a_run, "load done") == [{"counts": counts}]


def pressed_for_tray_5(page: Page) -> str:
    """The sentence that a made-up press of another tray gets."""
    answer = page.evaluate(
        """async () => {
          const state = await (await fetch("/helper/state")).json();
          const tap = {id: "made-up-1", kind: "load started", at: state.now, person: state.person, run: "r1", tray: "5",
                       load: "sand:180/5", operation: "sand:180", body: {}};
          const headers = {"Content-Type": "application/json"};
          return (await fetch("/taps", {method: "POST", headers, body: JSON.stringify({device: "x", taps: [tap]})})).json();
        }"""
    )
    return str(answer["taps"][0]["sentence"])


def test_the_lead_shuts_the_phone_out_and_the_next_press_is_refused_with_a_sentence(
    strangers: Phones, phone: Page, ann: Phone, shop_with_a_run: Path, server: Served
) -> None:
    strangers.forgive_silence_of_the_server()
    page = scans(strangers, shop_with_a_run, server)
    shown(ann, page, "sander")
    expect(page.get_by_role("button", name="Start", exact=True)).to_be_visible()
    page.context.set_offline(True)  # so that it has not heard of it when it presses

    phone.goto(f"{server.address}shop")
    phone.get_by_role("link", name="Mia").click()
    phone.get_by_role("button", name="Shut this phone out now").click()
    expect(phone.get_by_text("tray 4 of Key rails, revoked")).to_be_visible()
    page.get_by_role("button", name="Start", exact=True).click()
    page.context.set_offline(False)

    expect(page.get_by_role("heading", level=1)).to_have_text("Your help at this tray has ended. Ask the lead.")
    expect(page.get_by_text("Entries not sent yet stay on this phone.")).to_be_visible()
    assert [kind for kind, *_ in log_of(shop_with_a_run)] == ["person came", "person went"]

    phone.get_by_role("link", name="Mia").click()
    phone.get_by_role("button", name="Let in again").click()
    expect(page.get_by_role("button", name="Done: all 5 good")).to_be_visible()
    arrived(shop_with_a_run, "load started")
    assert [kind for kind, *_ in log_of(shop_with_a_run)][-2:] == ["person came", "load started"]


def test_after_their_hours_the_next_press_is_refused_with_a_sentence(
    strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Here
) -> None:
    store, _ = open_workshop(shop_with_a_run)
    set_hours(store.settings, 2)
    store.close()
    page = scans(strangers, shop_with_a_run, server)
    shown(ann, page, "sander")
    page.get_by_role("button", name="Start", exact=True).click()
    arrived(shop_with_a_run, "load started")

    later(page, server, hours=2)

    expect(page.get_by_role("heading", level=1)).to_have_text(re.compile("Your hours at this tray are over"))

    answer = page.evaluate(
        """async () => { const headers = {"Content-Type": "application/json"};
          const answer = await fetch("/taps", {method: "POST", headers, body: JSON.stringify({device: "x", taps: []})});
          return [answer.status, (await answer.json()).sentence]; }"""
    )
    assert answer == [401, "Your hours at this tray are over. Ask the lead to let you in again."]
    assert [kind for kind, *_ in log_of(shop_with_a_run)] == ["person came", "load started"]


def test_without_a_network_nothing_is_lost(
    strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Served
) -> None:
    strangers.forgive_silence_of_the_server()
    page = scans(strangers, shop_with_a_run, server)
    shown(ann, page, "sander")
    expect(page.get_by_role("button", name="Start", exact=True)).to_be_visible()

    page.context.set_offline(True)
    page.get_by_role("button", name="Start", exact=True).click()
    expect(page.locator(".pressed")).to_contain_text("Started")
    expect(page.locator(".pressed")).to_contain_text("saved here, sent later")
    page.get_by_role("button", name="Done: all 5 good").click()
    expect(page.get_by_text("The next step appears here once this is sent.")).to_be_visible()
    expect(page.get_by_text("No answer from the server.")).to_be_visible()
    page.context.set_offline(False)

    expect(page.get_by_role("heading", level=1)).to_have_text("Sand 180")
    expect(page.locator(".pressed")).to_contain_text("Done")
    assert [kind for kind, *_ in log_of(shop_with_a_run)] == ["person came", "load started", "load done"]
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sand 120")


def test_a_machine_is_listed_started_watched_and_stopped(
    strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Here
) -> None:
    page = scans(strangers, shop_with_a_run, server, tray="1")
    shown(ann, page, "laser")
    page.get_by_role("button", name="Start", exact=True).click()
    page.get_by_role("button", name="Open start list").click()
    expect(page.get_by_role("button", name=re.compile("left to tick"))).to_be_disabled()
    for point in page.get_by_role("checkbox").all():
        point.check()
    page.get_by_role("button", name="All ticked: it's running now").click()
    expect(page.get_by_role("heading", name="Running")).to_be_visible()
    expect(page.get_by_text("Stay and watch.", exact=False).first).to_be_visible()

    look = page.get_by_role("button", name="No flame, work flat, air assist and exhaust on")
    expect(look).to_have_count(0)
    later(page, server, seconds=31)  # half a minute after the start
    expect(look).to_be_visible()
    expect(page.get_by_text("It is not a fire watch.")).to_be_visible()
    look.click()
    expect(look).to_be_hidden()

    page.get_by_role("button", name="Something is wrong").click()
    expect(
        page.get_by_text("Fire or injury: hit the emergency stop if you can do it safely. Get out. Call 112.")
    ).to_be_visible()
    page.get_by_role("button", name="The machine stopped").click()
    page.get_by_role("button", name="power cut").click()
    expect(page.get_by_text("Leave everything as it is. The lead decides what comes next.")).to_be_visible()
    expect(page.get_by_text("(it stopped)")).to_be_visible()
    arrived(shop_with_a_run, "lead called")
    assert [kind for kind, *_ in log_of(shop_with_a_run)] == [
        "person came", "load started", "checklist ticked", "machine started", "watch checked", "load stopped", "lead called",
    ]  # fmt: skip


@pytest.mark.parametrize("language", ["en", "de"])
def test_the_page_is_sound_in_each_size_and_light(
    strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Served, language: str
) -> None:
    """Nothing that axe finds, nothing too wide, nothing under the bar, everything high enough for a glove."""
    page = strangers.new()
    looking = Looking(page, server.address)
    page.goto(f"{address_of(shop_with_a_run, server, '1')}?language={language}")
    looking.at(f"helper-card-{language}")
    page.locator("#name").fill("Mia")
    page.locator("button.go").click()
    expect(page.locator(".bar .go")).to_be_visible()
    looking.at(f"helper-not-shown-{language}")
    shown(ann, page, "laser")
    page.locator(".bar .go").filter(has_text=re.compile("^(Start|Anfangen)$")).click()
    expect(page.locator(".work h2")).to_have_text(re.compile("^(Load it|Einlegen)$"))
    looking.at(f"helper-loading-{language}")
    page.locator(".bar .go").click()
    looking.at(f"helper-list-{language}")
    page.locator("#helper .quiet").click()
    page.locator(".bar .pair button").first.click()
    looking.at(f"helper-wrong-{language}")
    page.goto(f"{server.address}trays")
    looking.at(f"helper-shut-{language}")
    page.goto(f"{server.address}t")
    looking.at(f"helper-code-{language}")

    assert looking.wrong == []


def test_the_state_carries_no_other_tray(strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Served) -> None:
    page = scans(strangers, shop_with_a_run, server)

    state = page.evaluate("async () => (await fetch('/helper/state')).text()")

    assert "No. 1" not in state and '"5"' not in json.dumps(json.loads(state)["about"])


def test_a_bad_piece_shows_on_the_helpers_own_button_at_once(
    strangers: Phones, ann: Phone, shop_with_a_run: Path, server: Served
) -> None:
    page = scans(strangers, shop_with_a_run, server)
    shown(ann, page, "sander")
    page.get_by_role("button", name="Start", exact=True).click()
    expect(page.get_by_role("button", name="Done: all 5 good")).to_be_visible()

    page.get_by_role("button", name="Something is wrong").click()
    page.get_by_role("button", name="A bad piece").click()
    page.get_by_role("button", name="torn out").click()

    done = page.get_by_role("button", name="Done: 4 good, 1 bad")
    expect(done).to_be_visible()
    expect(page.locator(".pressed")).to_contain_text("sent")
    expect(done).to_be_visible()
    done.click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Sand 180")
    assert ann.state()["runs"]["r1"]["trays"]["4"]["counts"]["sand:120"]["sand:120/4"] == [4, 1]


def test_a_text_that_nobody_translated_is_read_out_as_english(
    strangers: Phones, shop_with_a_run: Path, server: Served
) -> None:
    page = scans(strangers, shop_with_a_run, server)

    page.goto(f"{server.address}helper?language=de")

    expect(page.locator(".do-this [lang=en]")).to_have_text("Sand with the grain.")
    expect(page.locator("h1[lang=en]")).to_have_text("Sand 120")
    expect(page.locator(".work [lang]")).to_have_count(0)


def test_what_an_emergency_needs_stands_first_and_one_press_calls_everybody(
    strangers: Phones, shop_with_a_run: Path, server: Served
) -> None:
    page = scans(strangers, shop_with_a_run, server)

    page.get_by_role("button", name="Something is wrong").click()

    first = page.locator("#helper h1 + *")
    expect(first).to_contain_text("Someone is hurt, or there's a fire")
    expect(first).to_contain_text("call 112", ignore_case=True)
    link = first.get_by_role("link", name=re.compile("112$"))
    expect(link).to_have_attribute("href", "tel:112")
    expect(link).to_have_class(re.compile(r"\bdanger\b"))
    first.get_by_role("button").click()
    arrived(shop_with_a_run, "lead called")
    assert bodies(shop_with_a_run, "lead called") == [{"why": "hurt"}]
