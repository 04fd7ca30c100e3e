"""Real handshakes with a real uvicorn: trusted by who trusts the authority, and a renewed leaf without a restart."""

import asyncio
import http.client
import socket
import ssl
from concurrent.futures import ThreadPoolExecutor
from contextlib import ExitStack
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from cryptography import x509

from runboard.lan import trust
from runboard.lan.addresses import Whereabouts
from runboard.lan.authority import Certificates
from runboard.lan.serving import MOST_HANDSHAKES, SecureDoor, context_for, show
from tests.conftest import HandClock
from tests.lan.doors import LIVED, Place, Server, serving
from tests.lan.places import at, said


@pytest.fixture
def place() -> Place:
    return Place()


@pytest.fixture
def door(tmp_path: Path, clock: HandClock, place: Place) -> SecureDoor:
    # The handshakes below are checked by the real time, so the shop's clock starts there too.
    clock.moment = datetime.now(UTC)
    return SecureDoor(Certificates(tmp_path / "certificates"), clock.now, place.now)


def trusting(authority: x509.Certificate) -> ssl.SSLContext:
    """A client that trusts this authority and nothing else in the world."""
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
    context.load_verify_locations(cadata=trust.der(authority))
    return context


def shown(port: int, context: ssl.SSLContext, name: str = "127.0.0.1") -> x509.Certificate:
    """The certificate that the server shows in a new handshake."""
    with (
        socket.create_connection(("127.0.0.1", port), timeout=5) as raw,
        context.wrap_socket(raw, server_hostname=name) as secured,
    ):
        told = secured.getpeercert(binary_form=True)
    assert told
    return x509.load_der_x509_certificate(told)


def on_the_loop(server: Server, door: SecureDoor) -> bool:
    async def look() -> bool:
        return door.look()

    assert server.loop
    return asyncio.run_coroutine_threadsafe(look(), server.loop).result(5)


@pytest.mark.parametrize("name", ["127.0.0.1", "localhost", "192.168.1.20", "fd00::20", "shop-pc.local"])
def test_who_trusts_the_authority_alone_is_let_in_by_every_name(door: SecureDoor, name: str) -> None:
    with serving(door) as (_, _, port):
        assert shown(port, trusting(door.kept.authority), name) == door.kept.leaf


def test_a_name_that_is_not_the_shops_is_refused(door: SecureDoor) -> None:
    with serving(door) as (_, _, port), pytest.raises(ssl.SSLCertVerificationError):
        shown(port, trusting(door.kept.authority), "example.com")


def test_who_trusts_only_the_world_is_not_let_in(door: SecureDoor) -> None:
    with serving(door) as (_, _, port), pytest.raises(ssl.SSLCertVerificationError):
        shown(port, ssl.create_default_context())


def test_one_app_answers_plain_and_secure_and_lives_once(door: SecureDoor) -> None:
    LIVED.clear()

    with serving(door) as (_, plain_port, secure_port):
        plain = http.client.HTTPConnection("127.0.0.1", plain_port, timeout=5)
        secure = http.client.HTTPSConnection("127.0.0.1", secure_port, timeout=5, context=trusting(door.kept.authority))
        answers = []
        for one in (plain, secure):
            one.request("GET", "/")
            answers.append(one.getresponse().read())
            one.close()

    assert answers == [b"http ", b"https"]
    assert LIVED == ["lifespan.startup", "lifespan.shutdown"]


def test_a_new_address_is_shown_without_a_restart(door: SecureDoor, place: Place) -> None:
    with serving(door) as (server, _, port):
        client = trusting(door.kept.authority)
        with pytest.raises(ssl.SSLCertVerificationError):
            shown(port, client, "10.0.0.5")
        place.where = at("10.0.0.5")

        assert on_the_loop(server, door)

        assert shown(port, client, "10.0.0.5") == door.kept.leaf
        assert not on_the_loop(server, door)


def test_a_leaf_near_its_end_is_replaced_and_open_connections_go_on(door: SecureDoor, clock: HandClock) -> None:
    with serving(door) as (server, _, port):
        client = trusting(door.kept.authority)
        before = shown(port, client)
        kept_open = http.client.HTTPSConnection("127.0.0.1", port, timeout=5, context=client)
        kept_open.request("GET", "/")
        kept_open.getresponse().read()
        # Renewed by a clock so far ahead, the leaf would not be valid yet for this client: look at its number instead.
        clock.moment = before.not_valid_after_utc - timedelta(days=29)

        assert on_the_loop(server, door)

        blind = ssl.SSLContext(ssl.PROTOCOL_TLS_CLIENT)
        blind.check_hostname, blind.verify_mode = False, ssl.CERT_NONE
        after = shown(port, blind)
        kept_open.request("GET", "/")
        assert kept_open.getresponse().read() == b"https"
        kept_open.close()

    assert after.serial_number == door.kept.leaf.serial_number != before.serial_number


def test_the_folder_lost_while_serving_is_told_and_the_old_leaf_goes_on(door: SecureDoor) -> None:
    with serving(door) as (server, _, port):
        (door.kept.file.parent / "authority.pem").unlink()

        assert not on_the_loop(server, door)

        assert "cannot be used" in said(door.troubles[0])
        assert shown(port, trusting(door.kept.authority)) == door.kept.leaf


def test_a_disk_that_takes_nothing_is_told_and_the_old_leaf_goes_on(
    door: SecureDoor, place: Place, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    place.where = at("10.0.0.5")
    monkeypatch.setattr("os.fsync", full)

    assert not door.look()
    assert [said(trouble) for trouble in door.troubles] == [
        "The server's certificate could not be checked or renewed (No space left on device). The one in use goes on."
    ]

    monkeypatch.undo()
    assert door.look()
    assert door.troubles == ()


def test_a_damaged_file_leaves_the_context_as_it_was(door: SecureDoor, tmp_path: Path) -> None:
    damaged = tmp_path / "damaged.pem"
    damaged.write_bytes(door.kept.file.read_bytes().split(b"-----BEGIN CERT")[0])

    with serving(door) as (_, _, port):
        with pytest.raises(ssl.SSLError):
            show(door.context, damaged)

        assert shown(port, trusting(door.kept.authority)) == door.kept.leaf


def test_old_protocols_are_refused(door: SecureDoor) -> None:
    assert context_for(door.kept.file).minimum_version == ssl.TLSVersion.TLSv1_2


def test_peers_that_say_nothing_hold_up_nobody(door: SecureDoor) -> None:
    with serving(door) as (_, _, port):
        silent = [socket.create_connection(("127.0.0.1", port), timeout=5) for _ in range(60)]
        client = trusting(door.kept.authority)

        for _ in range(5):
            shown(port, client)  # or it gives up after five seconds

        for one in silent:
            one.close()


def test_of_more_peers_that_say_nothing_than_there_may_be_the_oldest_goes(door: SecureDoor) -> None:
    with serving(door) as (_, _, port), ExitStack() as open_:
        silent = [
            open_.enter_context(socket.create_connection(("127.0.0.1", port), timeout=5))
            for _ in range(MOST_HANDSHAKES + 5)
        ]

        assert [one.recv(1) for one in silent[:5]] == [b""] * 5
        assert shown(port, trusting(door.kept.authority)) == door.kept.leaf


def test_the_watch_looks_and_tells(door: SecureDoor, place: Place) -> None:
    seen: list[Whereabouts] = []

    async def watch() -> None:
        watching = asyncio.create_task(door.watch(lambda: seen.append(door.whereabouts), every=0.01))
        place.where = at("10.0.0.5")
        while not seen:
            await asyncio.sleep(0.005)
        watching.cancel()

    # In a thread of its own: a browser test before this one leaves an event loop going in ours.
    with ThreadPoolExecutor(1) as beside:
        beside.submit(asyncio.run, asyncio.wait_for(watch(), 5)).result()

    assert seen[0] == at("10.0.0.5")
    assert door.kept.made
