"""The shop that is attacked, and everybody who asks it: a client for each role."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from flask.testing import FlaskClient

from runboard.app import build
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.keeping.signals import make_sensor
from runboard.floor.letting_in.devices import make_code, pair, revoke_device
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.house import House, Settings
from runboard.run.calls.device import Device
from runboard.web.door.sessions import COOKIE
from tests.attack.promises import CREW, GUEST, LEAD, NOBODY, REVOKED, SENSOR
from tests.conftest import HandClock
from tests.scenario import shop

RUN, TRAY, STATION = "r1", "1", "cnc"


@dataclass(frozen=True)
class Cast:
    """``clients`` are by role; ``keys`` the secrets of their sessions, where they have one."""

    house: House
    clients: dict[str, FlaskClient]
    keys: dict[str, str]
    card: str


@contextmanager
def shut_house(folder: Path, clock: HandClock) -> Iterator[House]:
    """A shop with a run, in which devices have to pair."""
    built = build(Settings(folder, clock, plans=False))
    built.workshop.books.save(shop(), clock.now())
    open_run(built.workshop, Wish("rail", [{"line": "1", "pieces": 24}]), "ann")
    try:
        yield built
    finally:
        built.close()


def device_with(house: House, access: str) -> tuple[FlaskClient, Device]:
    """The client of a device that was just paired."""
    code, _ = make_code(house.door, access)
    token, session = pair(house.door, code, f"A {access}'s phone", "10.0.0.2")
    client = house.app.test_client()
    client.set_cookie(COOKIE, token)
    return client, session.device


def token_of(client: FlaskClient) -> str:
    """The secret of the session that a client has."""
    cookie = client.get_cookie(COOKIE)
    assert cookie is not None
    return cookie.value


def cast(house: House) -> Cast:
    """Everybody, come in by the way that is theirs."""
    clients = {NOBODY: house.app.test_client(), SENSOR: house.app.test_client(), GUEST: house.app.test_client()}
    clients[LEAD], _ = device_with(house, "lead")
    clients[CREW], _ = device_with(house, "crew")
    clients[REVOKED], lost = device_with(house, "lead")
    revoke_device(house.door, lost.id)
    token, _ = make_sensor(house.leaving.ears, STATION, "Plug")
    clients[SENSOR].environ_base["HTTP_AUTHORIZATION"] = f"Bearer {token}"
    card = traveller_link(read_keys(house.store.settings), RUN, TRAY).path
    came = clients[GUEST].post(card, data={"name": "Mia"})
    assert came.headers.get("Location") == "/helper", came.text
    keys = {role: token_of(client) for role, client in clients.items() if role not in (NOBODY, SENSOR)}
    return Cast(house, clients, keys | {SENSOR: token}, card)
