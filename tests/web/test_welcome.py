"""The welcome page: how a device trusts the shop's certificate, and how it goes over to https as the device it is."""

import plistlib
import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path

import pytest
from cryptography import x509
from flask.testing import FlaskClient

from runboard.app import build
from runboard.floor.letting_in.devices import make_code, pair
from runboard.house import House, Settings
from runboard.lan import trust
from runboard.lan.network import Network
from runboard.opening import WallClock
from runboard.web.door.serve import listen
from runboard.web.door.sessions import COOKIE
from runboard.web.network.welcome import DER_TYPE, PROFILE_TYPE
from runboard.words.sentences import say
from tests.lan.places import HOME

PHONE = {"Host": "192.168.1.20:8210"}
IPHONE = {"User-Agent": "Mozilla/5.0 (iPhone; CPU iPhone OS 18_0 like Mac OS X)"}
ANDROID = {"User-Agent": "Mozilla/5.0 (Linux; Android 15; Pixel)"}


@pytest.fixture
def house(tmp_path: Path) -> Iterator[House]:
    clock = WallClock()
    with listen(0) as secure:
        network = Network(tmp_path / "certificates", clock.now, 8210, secure, say, where=lambda: HOME)
        built = build(Settings(tmp_path, clock, hosts=network.hosts, ways=network))
        yield built
        built.close()


@pytest.fixture
def stranger(house: House) -> FlaskClient:
    return house.app.test_client()


def paired_client(house: House, access: str = "lead", name: str = "Ann's phone") -> FlaskClient:
    """A device that was just paired on plain http."""
    code, _ = make_code(house.door, access)
    token, _ = pair(house.door, code, name, "10.0.0.2")
    client = house.app.test_client()
    for domain in ("localhost", "192.168.1.20"):
        client.set_cookie(COOKIE, token, domain=domain)
    return client


def secure_at(house: House, host: str = "192.168.1.20") -> str:
    assert house.settings.ways
    return f"https://{host}:{house.settings.ways.https_port}/"


def root(house: House) -> x509.Certificate:
    assert house.settings.ways and house.settings.ways.trusted
    return x509.load_der_x509_certificate(house.settings.ways.trusted.der)


def test_it_is_shown_to_a_device_that_is_not_paired_with_its_style_and_no_script(stranger: FlaskClient) -> None:
    page = stranger.get("/welcome", headers=PHONE)

    assert page.status_code == 200
    assert "<script" not in page.text and "style=" not in page.text
    assert "Certificate Trust Settings" in page.text and "Install anyway" in page.text
    for style in re.findall(r'href="(/static/[^"]+\.css)"', page.text):
        assert stranger.get(style, headers=PHONE).status_code == 200
    assert stranger.get("/static/welcome/../now/now.js", headers=PHONE).status_code == 401


@pytest.mark.parametrize(
    ("agent", "open_one"), [(IPHONE, "An iPhone"), (ANDROID, "An Android"), ({"User-Agent": "X11"}, "A computer")]
)
def test_the_steps_of_the_device_that_asks_stand_open(
    stranger: FlaskClient, agent: dict[str, str], open_one: str
) -> None:
    page = stranger.get("/welcome", headers=PHONE | agent).text

    assert re.findall(r"<details open><summary>(An? \w+)", page) == [open_one]


def test_the_certificate_comes_as_each_device_takes_it(house: House, stranger: FlaskClient) -> None:
    file = stranger.get("/welcome/runboard.cer", headers=PHONE)
    profile = stranger.get("/welcome/runboard.mobileconfig", headers=PHONE)

    assert file.content_type == DER_TYPE == trust.DER_TYPE
    assert "runboard.cer" in file.headers["Content-Disposition"]
    assert x509.load_der_x509_certificate(file.data) == root(house)
    assert profile.content_type == PROFILE_TYPE == trust.PROFILE_TYPE
    assert plistlib.loads(profile.data)["PayloadDisplayName"] == "Runboard of shop-pc"


def test_the_fingerprint_is_shown_and_where_to_compare_it(house: House, stranger: FlaskClient) -> None:
    page = stranger.get("/welcome", headers=PHONE).text

    assert "\n".join(trust.fingerprint_lines(root(house))) in page
    assert "http://localhost:8210/welcome" in page


def test_the_shops_own_computer_shows_the_way_to_phones(stranger: FlaskClient) -> None:
    page = stranger.get("/welcome", headers={"Host": "localhost:8210"}).text

    assert "<svg" in page and "The address of this page, for a phone" in page
    assert "Go to the secure page" not in page


def test_the_shop_page_offers_it(house: House, stranger: FlaskClient) -> None:
    shop = paired_client(house).get("/shop", headers=PHONE).text

    assert 'href="/welcome">Install on this phone' in shop
    assert "http://192.168.1.20:8210/" in shop
    assert "/welcome" not in paired_client(house).get("/", headers=PHONE).text


def test_another_phones_code_leads_to_plain_http_whatever_the_lead_is_at(house: House) -> None:
    lead = paired_client(house)

    page = lead.post("/devices/code", data={"access": "crew"}, headers={"Host": "localhost:8211"}).text

    assert "http://192.168.1.20:8210/" in page


@pytest.mark.parametrize("page", ["/", "/shop"])
def test_a_lead_on_plain_http_is_asked_to_go_over_once_the_certificate_is_trusted(house: House, page: str) -> None:
    def shown(access: str, address: str, base: str = "http://192.168.1.20:8210") -> str:
        client = paired_client(house, access)
        if base.startswith("https"):
            code, _ = make_code(house.door, access)
            client.post("/pair", data={"code": code}, base_url=base)
        client.environ_base["REMOTE_ADDR"] = address
        answer = client.get(page, base_url=base)
        assert answer.status_code == 200
        return " ".join(answer.text.split())

    asks = "This page uses plain http"

    assert asks in shown("lead", "192.168.1.7")
    assert asks not in shown("crew", "192.168.1.7")
    assert asks not in shown("lead", "127.0.0.1")
    assert asks not in shown("lead", "192.168.1.7", secure_at(house).rstrip("/"))


def test_the_steps_say_what_plain_http_gives_away(stranger: FlaskClient) -> None:
    page = " ".join(stranger.get("/welcome", headers=PHONE).text.split())

    assert "Anyone on the network can read along and take over" in page


# Going over


def address_in(page: str) -> str:
    found = re.search(r'class="go button" href="([^"]+)"', page)
    assert found, page
    return unescape(found[1])


@pytest.mark.parametrize("access", ["lead", "crew"])
def test_a_device_goes_over_to_https_as_the_one_it_is(house: House, access: str) -> None:
    phone = paired_client(house, access)
    (before,) = house.door.devices.devices()

    address = address_in(phone.post("/welcome/over", headers=PHONE).text)

    assert address.startswith(f"{secure_at(house)}pair?code=")
    welcome = phone.get(address)
    assert 'value="Ann&#39;s phone"' in welcome.text
    code = re.search(r'name="code" value="([^"]+)"', welcome.text)
    assert code
    answer = phone.post(f"{secure_at(house)}pair", data={"code": code[1], "name": "Ann's phone"})
    assert answer.status_code == 303
    assert "Secure" in answer.headers["Set-Cookie"] and answer.headers["Set-Cookie"].startswith("__Host-")
    (after,) = house.door.devices.devices()
    assert (after.id, after.name, after.access) == (before.id, before.name, access)
    assert phone.get(f"{secure_at(house)}plan").status_code == 200


def test_the_code_of_going_over_works_once(house: House, stranger: FlaskClient) -> None:
    code = address_in(paired_client(house).post("/welcome/over", headers=PHONE).text).split("code=")[1].split("&")[0]
    paired_client(house).post(f"{secure_at(house)}pair", data={"code": code})

    assert stranger.post("/pair", data={"code": code}, headers=PHONE).status_code == 422


def test_who_is_not_paired_or_on_another_sites_page_goes_nowhere(house: House, stranger: FlaskClient) -> None:
    lead = paired_client(house)

    assert stranger.post("/welcome/over", headers=PHONE).status_code == 401
    assert lead.post("/welcome/over", headers=PHONE | {"Origin": "https://shop.example"}).status_code == 403


def test_the_secure_page_says_how_to_install_and_asks_nobody_to_trust_again(house: House) -> None:
    page = house.app.test_client().get(f"{secure_at(house)}welcome").text

    assert "Add to Home Screen" in page and "Take the profile" not in page


def test_a_name_that_the_certificate_is_not_good_for_is_not_led_to(house: House) -> None:
    page = house.app.test_client().get("/welcome", headers={"Host": "shop-pc.local:8210"}).text

    assert f"https://shop-pc.local:{secure_at(house).split(':')[2]}" in page


def test_where_there_is_no_network_there_is_no_welcome(tmp_path: Path) -> None:
    built = build(Settings(tmp_path / "other", open_to_all=True))
    client = built.app.test_client()

    for address in ("/welcome", "/welcome/runboard.cer", "/welcome/runboard.mobileconfig"):
        assert client.get(address).status_code == 404
    assert client.post("/welcome/over").status_code == 404
    assert "Install on this phone" not in client.get("/shop").text
    built.close()
