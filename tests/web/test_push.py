"""Alerts to locked phones: asked on the phone, encrypted for it alone, sent until somebody answers, delayed by nobody."""

import base64
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from py_vapid import Vapid02

from runboard.alerts.push import RESULTS_KEY, Pusher
from runboard.alerts.push_service import FILE_NAME
from runboard.app import build
from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.letting_in.devices import revoke_device
from runboard.floor.pressing.taps import record_events
from runboard.house import House, Settings
from runboard.run.calls.climb import Steps
from runboard.run.calls.dues import Due
from runboard.run.refusal import NotStored
from tests.attack.cast import device_with
from tests.conftest import START, HandClock
from tests.push_service import PushService
from tests.scenario import shop_without_looks
from tests.web.test_outside import answer

ENDED = "CNC should be finished. Go and check"
WELCOME = "Alerts from the shop reach this phone."


@pytest.fixture
def service() -> Iterator[PushService]:
    found = PushService()
    yield found
    found.close()


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    """Devices have to pair, push services may be on this computer, and the CNC runs for ten minutes more."""
    built = build(Settings(tmp_path, clock, push_near=True))
    workshop = built.workshop
    workshop.books.save(shop_without_looks(), clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    begun = new_event(workshop, "machine started", {"minutes": 10}, run="r1", load="cut/1", person="ann")
    record_events(workshop, [begun])
    built.leaving.push.start()
    yield built
    built.leaving.push.stop()
    built.close()


@pytest.fixture
def phone(house: House, service: PushService) -> FlaskClient:
    """A helper's phone that is sent alerts."""
    client, _ = device_with(house, "crew")
    assert client.post("/push/subscription", json=service.record()).status_code == 201
    assert service.until(1) == [WELCOME]
    return client


def result(house: House, code: str) -> dict[str, Any]:
    """How the last sending went, once it went so."""
    until = time.monotonic() + 10
    while time.monotonic() < until:
        found = list(house.store.settings.get(RESULTS_KEY).values())
        if [one["code"] for one in found] == [code]:
            return dict(found[0])
        time.sleep(0.02)
    raise AssertionError(house.store.settings.get(RESULTS_KEY))


def test_an_alert_reaches_the_phone_as_the_sentence_and_nothing_more(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock
) -> None:
    clock.forward(minutes=10, seconds=1)

    assert house.leaving.pusher.turn() == 1

    assert service.until(2) == [WELCOME, ENDED]
    got = service.got[1]
    assert got.record == {
        "id": "machine end|r1|cut/1|1", "says": ENDED, "at": "2026-03-07T09:10:00.001Z"
    }  # fmt: skip
    assert b"CNC" not in got.body and not [value for value in got.headers.values() if "cut" in value or "CNC" in value]


def test_it_is_sent_as_the_rfcs_want_it(house: House, phone: FlaskClient, service: PushService) -> None:
    headers, claims = service.got[0].headers, service.got[0].claims()

    assert (headers["content-encoding"], headers["urgency"]) == ("aes128gcm", "high")
    assert 0 < int(headers["ttl"]) <= 3600
    assert claims["aud"] == service.address
    assert 0 < claims["exp"] - time.time() <= 24 * 3600
    assert claims["sub"].startswith("mailto:")
    assert Vapid02.verify(headers["authorization"])
    key = phone.get("/push/key").get_json()["key"]
    assert headers["authorization"].endswith(f"k={key}")
    assert (len(raw := base64.urlsafe_b64decode(key + "=")), raw[0]) == (65, 4)


def test_it_is_sent_once_when_due_and_once_when_it_grows_louder(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock
) -> None:
    clock.forward(minutes=10, seconds=1)
    pusher = house.leaving.pusher
    turns = [pusher.turn(), pusher.turn()]
    after_a_restart = Pusher(house.store.dues, clock, Steps, lambda due: None)

    assert (turns, after_a_restart.turn()) == ([1, 0], 0)
    clock.forward(minutes=1)
    assert [pusher.turn(), pusher.turn()] == [1, 0]
    clock.forward(hours=5)
    assert pusher.turn() == 0
    service.until(3)
    first, second = service.got[1:]
    assert first.headers["topic"] == second.headers["topic"] != service.got[0].headers["topic"]


def test_an_answered_alert_is_not_sent(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock
) -> None:
    clock.forward(minutes=10, seconds=1)
    house.leaving.pusher.turn()
    service.until(2)

    answer(house, clock, "ended")

    clock.forward(minutes=2)
    assert house.leaving.pusher.turn() == 0


def test_one_that_is_answered_while_it_waits_to_be_sent_is_not_sent(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock
) -> None:
    house.leaving.push.stop()
    clock.forward(minutes=10, seconds=1)
    assert house.leaving.pusher.turn() == 1
    answer(house, clock, "ended")

    house.leaving.push.start()
    house.leaving.push.welcome(device_of(house), "And this")

    assert service.until(2) == [WELCOME, "And this"]


def device_of(house: House) -> str:
    (one,) = house.store.push.subscriptions()
    return one.device


@pytest.mark.parametrize("status", [404, 410])
def test_a_phone_that_its_service_knows_no_more_is_dropped_and_that_is_said(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock, status: int
) -> None:
    service.status = status
    clock.forward(minutes=10, seconds=1)

    house.leaving.pusher.turn()

    result(house, "ended")
    assert house.store.push.subscriptions() == []
    assert phone.get("/push/key").get_json()["endpoint"] == ""
    assert "turned alerts off" in phone.get("/shop").text
    service.status = 201
    phone.post("/push/subscription", json=service.record())
    result(house, "sent")
    assert "ended the sending" not in phone.get("/shop").text


def test_a_service_that_refuses_is_said_on_the_shop_page_and_kept(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock
) -> None:
    service.status = 403
    clock.forward(minutes=10, seconds=1)

    house.leaving.pusher.turn()

    assert result(house, "failed")["why"] == "the service answered 403"
    assert "A crew&#39;s phone: an alert was not sent" in phone.get("/shop").text
    assert len(house.store.push.subscriptions()) == 1


def test_a_redirect_is_not_followed(house: House, phone: FlaskClient, service: PushService, clock: HandClock) -> None:
    service.status, service.headers = 307, {"Location": f"{service.address}/elsewhere"}
    clock.forward(minutes=10, seconds=1)

    house.leaving.pusher.turn()

    assert result(house, "failed")["why"] == "the service answered 307"
    assert [one.path for one in service.got] == ["/phone", "/phone"]


def test_a_name_that_leads_into_the_house_is_sent_nothing(
    house: House, service: PushService, monkeypatch: pytest.MonkeyPatch
) -> None:
    import socket

    def leads_home(host: str, port: int, *given: Any) -> list[Any]:
        return [(socket.AF_INET, socket.SOCK_STREAM, 6, "", ("127.0.0.1", service.server.server_port))]

    client, _ = device_with(house, "crew")
    monkeypatch.setattr("runboard.alerts.push_service.is_outside", lambda address: address != "127.0.0.1")
    monkeypatch.setattr("urllib3.util.connection.socket.getaddrinfo", leads_home)
    house.leaving.push.post = lambda one, what: post_far(house, one, what)

    client.post("/push/subscription", json={**service.record(), "endpoint": "https://push.example.net/x"})

    assert result(house, "failed")["why"] == "its address is inside the shop's own network"
    assert service.got == []


def post_far(house: House, one: Any, what: Any) -> tuple[str, str]:
    from runboard.alerts.push_service import post

    return post(house.leaving.push_key, one, what)


def test_a_service_that_hangs_delays_nobody(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("runboard.alerts.push_service.ANSWER_SECONDS", 2.0)
    hanging = PushService()
    hanging.silent.set()
    other, _ = device_with(house, "lead")
    other.post("/push/subscription", json=hanging.record())
    clock.forward(minutes=10, seconds=1)

    house.leaving.pusher.turn()
    phone.get("/shop")
    for number in range(5):
        house.leaving.push.welcome("", f"Message {number}")
    said = service.until(7)

    assert "did not answer" not in other.get("/shop").text
    assert set(said) == {WELCOME, ENDED, *(f"Message {number}" for number in range(5))}
    until = time.monotonic() + 10
    while "did not answer" not in other.get("/shop").text:
        assert time.monotonic() < until
        time.sleep(0.05)
    hanging.close()


def test_a_disk_that_takes_nothing_does_not_silence_it(clock: HandClock) -> None:
    class Full:
        def pushed(self, now: Any) -> list[tuple[Due, int]]:
            return [(Due("machine end|r1|cut/1|1", "machine end", START), 0)]

        def claim_pushing(self, due_id: str, pushed: int, wanted: int) -> bool:
            raise NotStored("full")

    told: list[Due] = []
    pusher = Pusher(Full(), clock, Steps, told.append)

    assert [pusher.turn(), pusher.turn()] == [1, 0]
    assert len(told) == 1


# The phone's own part


def test_ending_it_ends_it(house: House, phone: FlaskClient, service: PushService, clock: HandClock) -> None:
    assert phone.get("/push/key").get_json()["endpoint"] == service.record()["endpoint"]

    assert phone.delete("/push/subscription").status_code == 200
    assert phone.delete("/push/subscription").status_code == 200

    assert house.store.push.subscriptions() == []
    assert phone.get("/push/key").get_json()["endpoint"] == ""


def test_a_revoked_phone_is_sent_nothing(
    house: House, phone: FlaskClient, service: PushService, clock: HandClock
) -> None:
    revoke_device(house.door, device_of(house))

    assert house.store.push.subscriptions() == []
    assert phone.post("/push/subscription", json=service.record()).status_code == 401


@pytest.mark.parametrize("endpoint", ["https://192.168.1.20/x", "https://localhost/x", "http://push.example.net/x"])
def test_an_address_in_the_house_is_refused_with_a_sentence(house: House, service: PushService, endpoint: str) -> None:
    client, _ = device_with(house, "lead")

    refused = client.post("/push/subscription", json={**service.record(), "endpoint": endpoint})

    assert refused.status_code == 422
    assert "not the address of a push service" in refused.get_json()["sentence"]
    assert house.store.push.subscriptions() == []


def test_another_sites_page_and_an_unknown_device_set_nothing(house: House, service: PushService) -> None:
    client, _ = device_with(house, "lead")
    elsewhere = {"Origin": "https://shop.example"}

    for method in ("POST", "DELETE"):
        asked = {"method": method, "json": service.record()}
        assert client.open("/push/subscription", headers=elsewhere, **asked).status_code == 403
        assert house.app.test_client().open("/push/subscription", **asked).status_code == 401
    assert client.post("/push/subscription", data="{}").status_code == 415
    assert client.post("/push/subscription", json={"x": "y" * 9000}).status_code == 413
    assert house.store.push.subscriptions() == []


def test_where_nobody_has_to_pair_there_is_no_device_to_send_to(tmp_path: Path, clock: HandClock) -> None:
    house = build(Settings(tmp_path / "open", clock, open_to_all=True))
    client = house.app.test_client()

    assert client.get("/push/key").status_code == 404
    assert 'id="push"' not in client.get("/shop").text
    house.close()


# The key


def test_the_key_is_made_once_and_is_nobody_elses_to_read(house: House, phone: FlaskClient, tmp_path: Path) -> None:
    path = tmp_path / FILE_NAME
    first = phone.get("/push/key").get_json()["key"]

    again = build(Settings(tmp_path, house.settings.clock))

    assert path.stat().st_mode & 0o777 == 0o600
    assert again.leaving.push_key.public() == first
    again.close()


def test_a_shop_that_never_sends_has_no_key(tmp_path: Path, clock: HandClock) -> None:
    house = build(Settings(tmp_path, clock))
    device_with(house, "lead")[0].get("/shop")

    assert not (tmp_path / FILE_NAME).exists()
    house.close()
