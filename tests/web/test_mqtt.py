"""Machines are heard by MQTT: with a real broker on the loopback, which each test starts and ends itself."""

import shutil
import socket
import subprocess
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from flask.testing import FlaskClient
from paho.mqtt.client import Client, MQTTMessage
from paho.mqtt.enums import CallbackAPIVersion

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.keeping.broker import Broker, read_broker, set_broker
from runboard.floor.keeping.buttons import make_button
from runboard.floor.pressing.taps import record_events
from runboard.house import House
from runboard.run.refusal import Refused
from tests.conftest import HandClock
from tests.scenario import shop

TOPIC = "shop/cnc/power"


def wait_for(what: Callable[[], bool], seconds: float = 10) -> None:
    """Wait until something holds."""
    until = time.monotonic() + seconds
    while not what():
        assert time.monotonic() < until, "it did not come"
        time.sleep(0.02)


def free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


class Mosquitto:
    """The broker, with one user who has a password."""

    def __init__(self, folder: Path) -> None:
        place = shutil.which("mosquitto", path="/usr/sbin:/usr/bin:/usr/local/sbin:/usr/local/bin:/opt/homebrew/sbin")
        assert place, "the broker is missing: apt-get install mosquitto"
        self.command = [place, "-c", str(folder / "broker.conf")]
        self.port = free_port()
        passwords = folder / "passwords"
        passwords.write_text("")
        passwords.chmod(0o600)
        tool = Path(place).with_name("mosquitto_passwd")
        tool = tool if tool.exists() else Path(shutil.which("mosquitto_passwd") or "mosquitto_passwd")
        subprocess.run([str(tool), "-b", str(passwords), "shop", "hush"], check=True, capture_output=True)
        # It is started by root in a container, and would then become another user, who may not read the folder.
        (folder / "broker.conf").write_text(
            f"listener {self.port} 127.0.0.1\nallow_anonymous false\npassword_file {passwords}\nuser root\n"
        )
        self.process: subprocess.Popen[bytes] | None = None

    def start(self) -> None:
        self.process = subprocess.Popen(self.command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        wait_for(self._listens)

    def _listens(self) -> bool:
        with socket.socket() as probe:
            return probe.connect_ex(("127.0.0.1", self.port)) == 0

    def stop(self) -> None:
        if self.process is not None:
            self.process.terminate()
            self.process.wait(timeout=10)
            self.process = None


@pytest.fixture
def mosquitto(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Mosquitto]:
    found = Mosquitto(tmp_path_factory.mktemp("broker"))
    found.start()
    yield found
    found.stop()


class Plug:
    """A smart plug at the broker, which also hears whatever anybody says there."""

    def __init__(self, broker: Mosquitto) -> None:
        self.heard: list[tuple[str, bytes]] = []
        self._here = threading.Event()
        self._client = Client(CallbackAPIVersion.VERSION2)
        self._client.username_pw_set("shop", "hush")
        self._client.on_message = self._note
        self._client.on_subscribe = lambda *_: self._here.set()
        self._client.connect("127.0.0.1", broker.port)
        self._client.loop_start()
        self._client.subscribe("#")
        assert self._here.wait(5)

    def _note(self, client: Client, userdata: object, message: MQTTMessage) -> None:
        self.heard.append((message.topic, bytes(message.payload)))

    def says(self, payload: str, topic: str = TOPIC) -> None:
        self._client.publish(topic, payload, qos=1).wait_for_publish(5)

    def leave(self) -> None:
        self._client.disconnect()
        self._client.loop_stop()


@pytest.fixture
def plug(mosquitto: Mosquitto) -> Iterator[Plug]:
    found = Plug(mosquitto)
    yield found
    found.leave()


@pytest.fixture
def listening(house: House, mosquitto: Mosquitto) -> Iterator[House]:
    """The CNC runs, and the shop listens."""
    workshop = house.workshop
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 30}], start=30), "ann")
    record_events(workshop, [new_event(workshop, "machine started", {}, run="r1", load="cut/1", person="ann")])
    listen(house, mosquitto)
    yield house
    house.leaving.mqtt.stop()


def listen(house: House, mosquitto: Mosquitto, password: str = "hush", **more: object) -> None:
    broker = Broker(True, "127.0.0.1", mosquitto.port, False, "shop", password, {"cnc": TOPIC}, **more)  # type: ignore[arg-type]
    set_broker(house.leaving.ears, broker)
    house.leaving.mqtt.listen(read_broker(house.leaving.ears))
    wait_for(lambda: house.leaving.mqtt.said() not in ("off", "connecting"))


def signals(house: House) -> list[bool]:
    return [event.get("on") for event in house.store.log.events() if event.kind == "signal received"]


def asked(client: FlaskClient) -> list[str]:
    state = client.get("/state?person=ann").json
    assert state is not None
    return [one["station"] for one in state["dues"] if one["kind"] == "looks ended"]


def test_a_plug_at_the_broker_makes_the_shop_ask_and_nothing_is_said_back(
    client: FlaskClient, listening: House, clock: HandClock, plug: Plug
) -> None:
    plug.says("140")
    wait_for(lambda: signals(listening) == [True])
    plug.says("2.5")
    wait_for(lambda: listening.leaving.ears.heard["cnc"].watts == 2.5)
    assert asked(client) == []

    clock.forward(seconds=31)
    listening.leaving.beat.turn()

    assert asked(client) == ["cnc"]
    assert listening.workshop.ledger.state.runs["r1"].loads["cut/1"].state == "running"
    assert plug.heard == [(TOPIC, b"140"), (TOPIC, b"2.5")]


def test_watts_are_found_inside_a_json_message(listening: House, mosquitto: Mosquitto, plug: Plug) -> None:
    listen(listening, mosquitto, places={"cnc": "meter.power"})

    plug.says('{"meter": {"power": 88, "volts": 230}}')

    wait_for(lambda: signals(listening) == [True])
    assert listening.leaving.ears.heard["cnc"].watts == 88


def test_what_is_no_reading_and_what_stands_elsewhere_is_passed_over(listening: House, plug: Plug) -> None:
    plug.says("warm")
    plug.says("off", "shop/laser/power")
    plug.says("\ud7ff" * 3000)
    plug.says("on")

    wait_for(lambda: signals(listening) == [True])


def test_a_button_at_the_broker_presses_with_its_token_alone(
    listening: House, mosquitto: Mosquitto, plug: Plug, clock: HandClock
) -> None:
    workshop = listening.workshop
    token = make_button(listening.leaving.ears, "cnc", "Foot switch")[0]
    listen(listening, mosquitto, presses={"cnc": "shop/cnc/button"})
    record_events(workshop, [new_event(workshop, "unloading started", {}, run="r1", load="cut/1", person="ann")])

    plug.says("pressed", "shop/cnc/button")
    plug.says('{"token": "wrong"}', "shop/cnc/button")
    plug.says("140")
    wait_for(lambda: bool(signals(listening)))
    assert workshop.ledger.state.runs["r1"].loads["cut/1"].state == "unloading"

    plug.says(f'{{"token": "{token}"}}', "shop/cnc/button")
    wait_for(lambda: "cut/1" in workshop.ledger.state.runs["r1"].past)

    clock.forward(seconds=2)
    plug.says(token, "shop/cnc/button")
    wait_for(lambda: "cut/1" in workshop.ledger.state.runs["r1"].loads)
    assert all(topic in (TOPIC, "shop/cnc/button") for topic, _ in plug.heard), "something was said back"


def test_a_broker_that_comes_back_is_heard_again(listening: House, mosquitto: Mosquitto) -> None:
    mosquitto.stop()
    wait_for(lambda: listening.leaving.mqtt.said() == "lost")

    mosquitto.start()
    wait_for(lambda: listening.leaving.mqtt.said() == "connected")
    plug = Plug(mosquitto)
    wait_for(lambda: bool(plug.says("on") or signals(listening)))
    plug.leave()


def test_a_wrong_password_is_said(listening: House, mosquitto: Mosquitto) -> None:
    listen(listening, mosquitto, password="loud")

    assert listening.leaving.mqtt.said() == "refused"


def test_the_broker_is_set_on_the_shop_page_and_off_before_that(
    client: FlaskClient, house: House, mosquitto: Mosquitto
) -> None:
    house.workshop.books.save(shop(), house.settings.clock.now())
    assert not read_broker(house.leaving.ears).on
    form = {
        "on": "yes", "host": "127.0.0.1", "port": str(mosquitto.port), "user": "shop", "password": "hush",
        "topic.cnc": TOPIC,
    }  # fmt: skip

    assert client.post("/shop/signals/mqtt", data=form).status_code == 303
    wait_for(lambda: house.leaving.mqtt.said() == "connected")
    page = client.get("/shop/signals").text
    assert "Connected." in page and TOPIC in page and "hush" not in page

    client.post("/shop/signals/mqtt", data={**form, "password": ""})
    assert read_broker(house.leaving.ears).password == "hush"
    client.post("/shop/signals/mqtt", data={"host": "127.0.0.1", "port": "1883"})
    assert house.leaving.mqtt.said() == "off"
    assert read_broker(house.leaving.ears).password == ""


@pytest.mark.parametrize(
    "other",
    [{"host": "evil.local"}, {"port": "1884"}, {"user": "ann"}, {"tls": ""}],
    ids=["host", "port", "user", "tls"],
)
def test_a_password_that_is_kept_goes_to_no_other_broker(
    client: FlaskClient, house: House, other: dict[str, str]
) -> None:
    house.workshop.books.save(shop(), house.settings.clock.now())
    kept = {"host": "broker.local", "port": "8883", "tls": "yes", "user": "shop"}
    client.post("/shop/signals/mqtt", data={**kept, "password": "hush"})

    answer = client.post("/shop/signals/mqtt", data={**kept, **other, "password": ""})

    assert answer.status_code == 422
    assert "Type its password again" in answer.text and "hush" not in answer.text
    assert read_broker(house.leaving.ears) == Broker(
        host="broker.local", port=8883, tls=True, user="shop", password="hush"
    )
    assert client.post("/shop/signals/mqtt", data={**kept, **other, "password": "loud"}).status_code == 303
    assert read_broker(house.leaving.ears).password == "loud"


def test_a_password_that_was_refused_with_the_rest_is_not_said_to_be_kept(client: FlaskClient, house: House) -> None:
    house.workshop.books.save(shop(), house.settings.clock.now())

    answer = client.post("/shop/signals/mqtt", data={"host": "b", "port": "0", "user": "shop", "password": "hush"})

    assert answer.status_code == 422
    assert "One is saved" not in answer.text


@pytest.mark.parametrize(
    ("wrong", "code"),
    [
        ({"host": ""}, "broker host"),
        ({"host": "mqtt://broker"}, "broker host"),
        ({"host": "broker", "port": 0}, "broker port"),
        ({"host": "broker", "topics": {"cnc": "shop/#"}}, "broker topic"),
    ],
)
def test_a_broker_that_cannot_be_is_refused(house: House, wrong: dict[str, object], code: str) -> None:
    with pytest.raises(Refused, match=code):
        set_broker(house.leaving.ears, Broker(on=True, **wrong))  # type: ignore[arg-type]
