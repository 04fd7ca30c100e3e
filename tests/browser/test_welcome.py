"""A phone on plain http looks at the way up, trusts the shop's certificate, and goes over as the device that it is."""

from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, expect

from runboard.web.door.sessions import COOKIE
from tests.browser.conftest import PHONE
from tests.browser.looking import Looking
from tests.browser.test_trusted_certificate import believe, computer
from tests.browser.test_trusted_certificate import home as home
from tests.pairing import paired
from tests.web.test_lan import Shop

KINDS = {
    "iphone": "Mozilla/5.0 (iPhone)",
    "android": "Mozilla/5.0 (Linux; Android 15)",
    "computer": "Mozilla/5.0 (X11)",
}


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    with Shop(tmp_path / "shop").serving() as found:
        yield found


def plain(shop: Shop, name: str = "127.0.0.1") -> str:
    return f"http://{name}:{shop.plain}/"


def looked_at(page: Page, address: str, name: str) -> None:
    looking = Looking(page, address)
    page.goto(address)
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    looking.at(f"welcome {name}")
    looking.unfold()
    looking.at(f"welcome {name} unfolded")
    assert looking.wrong == []


@pytest.mark.parametrize("kind", KINDS)
def test_the_steps_are_in_order_for_a_device_that_is_not_paired(chromium: Browser, shop: Shop, kind: str) -> None:
    context = chromium.new_context(viewport=PHONE, user_agent=KINDS[kind])

    looked_at(context.new_page(), f"{plain(shop)}welcome", kind)

    context.close()


def test_a_paired_phone_trusts_the_certificate_and_goes_over(chromium: Browser, shop: Shop, home: Path) -> None:
    assert shop.network.trusted
    believe(home, shop.network.trusted.der)
    name = "shop-pc.local"
    token = paired(shop.folder, name="Ann's phone")
    (before,) = shop.house.door.devices.devices()

    with computer(chromium, home) as phone:
        phone.context.add_cookies([{"name": COOKIE, "value": token, "url": plain(shop, name), "sameSite": "Strict"}])
        phone.set_viewport_size(PHONE)
        phone.goto(f"{plain(shop, name)}shop")
        assert not phone.evaluate("window.isSecureContext")
        phone.get_by_role("link", name="Install on this phone").click()
        phone.get_by_role("button", name="Go to the secure page").click()
        looking = Looking(phone, plain(shop, name))
        looking.at("welcome over")
        assert looking.wrong == []

        looking.host = f"{name}:{shop.secure}"
        phone.get_by_role("link", name="Open the secure page").click()
        expect(phone.get_by_label("Name of this device")).to_have_value("Ann's phone")
        phone.get_by_role("button", name="Pair this device").click()
        phone.get_by_role("link", name="Shop", exact=True).click()

        expect(phone.get_by_role("link", name="Ann's phone")).to_be_visible()
        assert urlsplit(phone.url).netloc == f"{name}:{shop.secure}"
        assert phone.evaluate("window.isSecureContext")
        looked_at(phone, f"https://{name}:{shop.secure}/welcome", "secure")
    (after,) = shop.house.door.devices.devices()
    assert (after.id, after.name) == (before.id, before.name)
