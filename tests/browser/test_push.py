"""A person asks for alerts on a locked phone, gets one that the shop sent, and ends it. The maker's server is played by
a push service on this computer: the browser's own is on the internet."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from runboard.opening import open_workshop
from tests.browser.conftest import FLAGS, WHOLE, Phones
from tests.browser.installed import installs, until
from tests.push_service import PushService
from tests.serving import Served

# A browser whose maker's server is out of reach: it asks nothing before the press, and then says what it was told.
PLAYED = """
window.asked = [];
Notification.requestPermission = async () => { window.asked.push("permission"); return "granted"; };
Object.defineProperty(Notification, "permission", { get: () => "default" });
let held = null;
PushManager.prototype.getSubscription = async () => held;
PushManager.prototype.subscribe = async (options) => {
  window.asked.push(["subscribe", options.userVisibleOnly, options.applicationServerKey.length]);
  const record = RECORD;
  held = { ...record, options, toJSON: () => record, unsubscribe: async () => { held = null; } };
  return held;
};
"""
OFFER = "Send alerts to this phone when locked"
END = "Stop alerts to this phone when locked"


@pytest.fixture
def service() -> Iterator[PushService]:
    found = PushService()
    yield found
    found.close()


def played(phones: Phones, service: PushService, endpoint: str) -> Page:
    record = {**service.record(), "endpoint": endpoint}
    return phones.new(init_script=PLAYED.replace("RECORD", json.dumps(record)))


def test_nothing_is_asked_before_the_press_and_one_press_ends_it(
    shop_with_a_run: Path, server: Served, phones: Phones, service: PushService
) -> None:
    page = played(phones, service, "https://push.example.net/phone")
    page.goto(f"{server.address}shop")
    expect(page.get_by_role("button", name=OFFER)).to_be_visible()
    assert page.evaluate("asked") == []
    page.get_by_text("What to expect").tap()
    expect(page.get_by_text("It may come late, or not at all")).to_be_visible()

    page.get_by_role("button", name=OFFER).tap()

    expect(page.get_by_role("button", name=END)).to_be_visible()
    expect(page.get_by_role("button", name=OFFER)).to_be_hidden()
    assert page.evaluate("asked") == ["permission", ["subscribe", True, 65]]
    assert stored(shop_with_a_run) == ["https://push.example.net/phone"]
    page.get_by_role("button", name=END).tap()
    expect(page.get_by_role("button", name=OFFER)).to_be_visible()
    assert stored(shop_with_a_run) == []


def test_what_the_shop_refuses_is_said_beside_the_button(
    shop_with_a_run: Path, server: Served, phones: Phones, service: PushService
) -> None:
    page = played(phones, service, "https://192.168.1.20/phone")
    page.goto(f"{server.address}shop")

    page.get_by_role("button", name=OFFER).tap()

    expect(page.get_by_text("That is not the address of a push service")).to_be_visible()
    expect(page.get_by_role("button", name=OFFER)).to_be_enabled()
    assert stored(shop_with_a_run) == []
    phones.complaints = [
        one for one in phones.complaints if "422" not in one
    ]  # the browser's own line about the answer


@pytest.fixture
def with_notifications(chromium: Browser, data: Path) -> Iterator[Phones]:
    """Phones on the whole browser, which shows notifications."""
    whole = chromium.browser_type.launch(executable_path=WHOLE, args=FLAGS)
    found = Phones(whole, data)
    yield found
    whole.close()
    assert found.complaints == []


def test_what_arrives_is_shown_once_for_each_alert_and_leads_to_now(
    shop_with_a_run: Path, server: Served, with_notifications: Phones
) -> None:
    page = with_notifications.new()
    page.context.grant_permissions(["notifications"], origin=server.address)
    page.goto(server.address)
    page.get_by_role("button", name="Ann", exact=True).click()
    installs(page)

    for says in ("CNC should be finished. Go and check", "The CNC has ended"):
        deliver(page, server.address, {"id": "machine end|r1|cut/1|1", "says": says, "at": "2026-03-07T09:10:00.001Z"})
        until(page, f"(await {SHOWN})[0]?.title === {json.dumps(says)}".join(("(async () => ", ")()")))

    assert page.evaluate(f"(async () => (await {SHOWN}).map(({{title, tag, body}}) => [title, tag, body]))()") == [
        ["The CNC has ended", "machine end|r1|cut/1|1", "10:10"]
    ]


SHOWN = "(await navigator.serviceWorker.ready).getNotifications()"


def deliver(page: Page, address: str, record: dict[str, str]) -> None:
    """What the browser does when its maker's server sends it something."""
    session = page.context.new_cdp_session(page)
    found: list[str] = []
    session.on(
        "ServiceWorker.workerRegistrationUpdated",
        lambda said: found.extend(one["registrationId"] for one in said["registrations"]),
    )
    session.send("ServiceWorker.enable")
    while not found:
        page.wait_for_timeout(20)
    session.send(
        "ServiceWorker.deliverPushMessage",
        {"origin": address.rstrip("/"), "registrationId": found[-1], "data": json.dumps(record)},
    )
    session.detach()


def stored(data: Path) -> list[str]:
    """Where the shop sends to."""
    store, _ = open_workshop(data)
    try:
        return [one.endpoint for one in store.push.subscriptions()]
    finally:
        store.close()
