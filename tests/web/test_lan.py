"""A shop served to its network: here a network of one machine, under the names and addresses that a test says."""

import asyncio
import gc
import http.client
import socket
import ssl
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from runboard.app import build, served
from runboard.cli import main
from runboard.house import House, Settings
from runboard.lan.addresses import Whereabouts
from runboard.lan.announce import Announced, Announcer
from runboard.lan.authority import AUTHORITY_FILE
from runboard.lan.network import Network, here_only
from runboard.opening import WallClock
from runboard.web.door.serve import listen, serve
from runboard.words.sentences import say
from tests.lan.places import HOME, at
from tests.serving import running
from tests.web.test_welcome import paired_client


class Hush(Announcer):
    """Keeps what it would announce."""

    def __init__(self) -> None:
        super().__init__()
        self.told: list[Announced] = []

    def announce(self, told: Announced) -> bool:
        self.told.append(told)
        return True

    def stop(self) -> None:
        self.told.append(Announced(at()))


@dataclass
class Shop:
    """A served shop, and where it is until a test moves it."""

    folder: Path
    where: Whereabouts = HOME
    announcer: Hush = field(default_factory=Hush)
    has_ended: bool = False

    @contextmanager
    def serving(self) -> Iterator["Shop"]:
        """Both doors open, until the end of the block."""
        clock = WallClock()
        with listen(0) as plain, listen(0) as secure:
            self.plain, self.secure = plain.getsockname()[1], secure.getsockname()[1]
            self.network = Network(
                self.folder / "certificates", clock.now, self.plain, secure, say,
                where=lambda: self.where, announcer=self.announcer,
            )  # fmt: skip
            self.house: House = build(
                Settings(self.folder, clock, hosts=self.network.hosts, ways=self.network, plans=False)
            )
            beside = _Beside(self.network)
            serving = (served(self.house), plain, False, lambda address: "", beside)
            thread = threading.Thread(target=serve, args=serving)
            thread.start()
            assert beside.began.wait(10)
            self.loop, self.server = beside.loop, beside.server
            try:
                yield self
            finally:
                self.server.should_exit = True
                thread.join(timeout=10)
                self.has_ended = not thread.is_alive()
        gc.collect()

    def look(self) -> None:
        """As the server does each minute."""
        asyncio.run_coroutine_threadsafe(self.network.look(), self.loop).result(5)

    def trusting(self) -> ssl.SSLContext:
        """A client that has trusted the shop's certificate, as the welcome page offers it."""
        context = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        assert self.network.trusted
        context.load_verify_locations(cadata=self.network.trusted.der)
        return context

    def ask(self, host: str, path: str = "/welcome", cookie: str = "") -> http.client.HTTPResponse:
        """A plain request by that name."""
        plain = http.client.HTTPConnection("127.0.0.1", self.plain, timeout=5)
        return _asked(plain, f"{host}:{self.plain}", path, cookie)

    def ask_securely(self, host: str, path: str = "/welcome") -> http.client.HTTPResponse:
        """The same over TLS, by a client to whom that name leads here."""
        connection = http.client.HTTPSConnection(host, self.secure, timeout=5, context=self.trusting())
        here = socket.create_connection(("127.0.0.1", self.secure), timeout=5)
        connection.sock = self.trusting().wrap_socket(here, server_hostname=host)
        return _asked(connection, f"{host}:{self.secure}", path)


def _asked(connection: http.client.HTTPConnection, host: str, path: str, cookie: str = "") -> http.client.HTTPResponse:
    connection.request(
        "GET", path, headers={"Host": host, "Connection": "close"} | ({"Cookie": cookie} if cookie else {})
    )
    answer = connection.getresponse()
    answer.read()
    connection.close()
    return answer


class _Beside:
    """The network, and the moment at which it has begun."""

    def __init__(self, network: Network) -> None:
        self.network = network
        self.began = threading.Event()

    async def begin(self, server: object) -> None:
        self.server, self.loop = server, asyncio.get_running_loop()  # type: ignore[assignment]
        await self.network.begin(server)  # type: ignore[arg-type]
        self.began.set()

    async def end(self) -> None:
        await self.network.end()


@pytest.fixture
def shop(tmp_path: Path) -> Iterator[Shop]:
    with Shop(tmp_path).serving() as found:
        yield found


@pytest.fixture(scope="module")
def one_shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Shop]:
    """A shop that is only asked, and never moved."""
    with Shop(tmp_path_factory.mktemp("shop")).serving() as found:
        yield found


@pytest.mark.parametrize("host", ["127.0.0.1", "localhost", "192.168.1.20", "shop-pc.local", "runboard-shop-pc.local"])
def test_both_doors_answer_by_every_name_of_the_shop(one_shop: Shop, host: str) -> None:
    assert one_shop.ask(host).status == 200
    assert one_shop.ask_securely(host).status == 200
    assert (one_shop.ask(host, "/state").status, one_shop.ask_securely(host, "/state").status) == (401, 401)


@pytest.mark.parametrize("host", ["example.com", "192.168.1.21", "shop-pc.local.example.com", "8.8.8.8", "local", ""])
def test_another_name_that_leads_here_is_refused(one_shop: Shop, host: str) -> None:
    assert one_shop.ask(host).status == 400
    assert one_shop.ask(host, "/stream").status == 400


def test_a_name_is_refused_by_the_secure_door_too(one_shop: Shop) -> None:
    connection = http.client.HTTPSConnection("127.0.0.1", one_shop.secure, timeout=5, context=one_shop.trusting())

    assert _asked(connection, f"example.com:{one_shop.secure}", "/welcome").status == 400


def test_no_answer_forbids_plain_http_from_now_on(one_shop: Shop) -> None:
    for answer in (
        one_shop.ask("127.0.0.1"),
        one_shop.ask_securely("127.0.0.1"),
        one_shop.ask_securely("localhost", "/plan"),
    ):
        assert answer.getheader("Strict-Transport-Security") is None


def test_a_new_address_is_answered_to_vouched_for_and_announced(shop: Shop) -> None:
    assert shop.ask("10.0.0.5").status == 400
    shop.where = at("10.0.0.5")

    shop.look()

    assert shop.ask("10.0.0.5").status == 200
    assert shop.ask_securely("10.0.0.5").status == 200
    assert shop.ask("192.168.1.20").status == 400
    assert shop.network.pages("https")[0] == f"https://10.0.0.5:{shop.secure}/"
    assert shop.announcer.told[-1] == Announced(at("10.0.0.5"), shop.plain, shop.secure)


def test_it_is_announced_until_it_ends_and_it_ends(tmp_path: Path) -> None:
    with Shop(tmp_path).serving() as shop:
        assert shop.announcer.told == [Announced(HOME, shop.plain, shop.secure)]

    assert shop.announcer.told[-1] == Announced(at())
    assert shop.has_ended
    with pytest.raises(OSError):
        socket.create_connection(("127.0.0.1", shop.secure), timeout=1)


def test_a_lost_authority_leaves_the_plain_door_and_says_so(tmp_path: Path) -> None:
    with Shop(tmp_path).serving() as shop:
        pass
    (tmp_path / "certificates" / AUTHORITY_FILE).write_text("ruined")

    with Shop(tmp_path).serving() as shop:
        assert shop.ask("192.168.1.20").status == 200
        assert shop.network.https_port == 0 and shop.network.pages("https") == ()
        (sentence,) = shop.network.troubles
        assert "There is no https page." in sentence and "start runboard again" in sentence
        assert sentence in shop.network.told()
        lead = paired_client(shop.house)
        assert "There is no https page." in lead.get("/shop").text
        assert "There is no https page." in lead.get("/welcome").text
        assert lead.get("/welcome/runboard.cer").status_code == 404
        shop.where = at("10.0.0.5")
        shop.look()
        assert shop.ask("10.0.0.5").status == 200


def test_what_goes_wrong_later_is_logged_once(shop: Shop, caplog: pytest.LogCaptureFixture) -> None:
    (shop.folder / "certificates" / AUTHORITY_FILE).unlink()

    shop.look()
    shop.look()

    assert len([one for one in caplog.records if "cannot be used" in one.getMessage()]) == 1
    assert "cannot be used" in paired_client(shop.house).get("/shop").text


def test_a_system_that_tells_no_addresses_leaves_this_computer(tmp_path: Path) -> None:
    def untold() -> Whereabouts:
        raise OSError(5, "no such thing")

    network = Network(tmp_path / "certificates", WallClock().now, 8210, None, say, where=untold)

    assert {"localhost", "127.0.0.1"} <= network.hosts
    assert network.pages("http") == ()


# The command


def said_at_start(server: object) -> str:
    time.sleep(0.2)
    return "".join(server.said)  # type: ignore[attr-defined]


def test_a_shop_that_is_served_to_this_computer_alone_still_has_its_secure_page(tmp_path: Path) -> None:
    with running("serve", "--data", str(tmp_path / "shop")) as server:
        said = said_at_start(server)
        port = int(said.split("https://localhost:")[1].split("/")[0])
        blind = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        blind.check_hostname, blind.verify_mode = False, ssl.CERT_NONE
        connection = http.client.HTTPSConnection("127.0.0.1", port, timeout=5, context=blind)

        assert _asked(connection, f"localhost:{port}", "/welcome").status == 200
        assert "On the shop's network" not in said
        silent = [socket.create_connection(("127.0.0.1", port)) for _ in range(5)]
        server.interrupt()
        for one in silent:
            one.close()

    assert server.process.returncode == 0


def test_the_port_after_is_for_https_and_where_it_is_taken_plain_http_goes_on(tmp_path: Path) -> None:
    port = _two_free_ports()
    serve_it = ("serve", "--data", str(tmp_path / "shop"))
    with running(*serve_it, port=str(port), https_port="") as server:
        assert f"https://localhost:{port + 1}/" in said_at_start(server)
        server.interrupt()

    with socket.create_server(("127.0.0.1", port + 1)), running(*serve_it, port=str(port), https_port="") as server:
        assert f"There is no https page: port {port + 1} cannot be used" in said_at_start(server)


def test_an_https_port_that_was_named_and_is_taken_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    data = tmp_path / "shop"
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = str(other.getsockname()[1])
        code = main(["serve", "--data", str(data), "--port", "0", "--https-port", port, "--local", "--no-open"])

    assert code == 2
    assert f"port {port} cannot be used" in capsys.readouterr().err
    assert not data.exists()


def test_a_demo_has_one_plain_page_for_this_computer(tmp_path: Path) -> None:
    with running("demo") as server:
        assert "https" not in said_at_start(server)


def test_on_no_network_it_is_still_known_by_its_names() -> None:
    assert here_only().addresses == ()


def _two_free_ports() -> int:
    """The first of two that follow each other."""
    for _ in range(50):
        with socket.create_server(("127.0.0.1", 0)) as first, suppress(OSError):
            port = int(first.getsockname()[1])
            socket.create_server(("127.0.0.1", port + 1)).close()
            return port
    raise AssertionError("no two free ports follow each other")
