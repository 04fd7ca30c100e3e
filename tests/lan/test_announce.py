"""Announced on the loopback network of the test machine, heard by a second mDNS of its own."""

import gc
import socket
import threading
import time

import pytest
from zeroconf import IPVersion, ServiceInfo, Zeroconf

from runboard.lan.announce import Announced, Announcer
from tests.lan.places import at, said

LOOPBACK = ("127.0.0.1",)
HERE = Announced(at("192.168.1.20"), 8210, 8443)


def heard(kind: str, name: str, within: float = 5) -> ServiceInfo | None:
    # With a thread of its own: a browser test before this one leaves an event loop going in ours.
    listener = Zeroconf(interfaces=list(LOOPBACK), use_asyncio=False)
    try:
        return listener.get_service_info(kind, f"{name}.{kind}", timeout=int(within * 1000))
    finally:
        listener.close()


def test_a_phone_hears_both_pages_and_where_they_are() -> None:
    announcer = Announcer(LOOPBACK)
    assert announcer.announce(HERE)
    try:
        plain = heard("_http._tcp.local.", "runboard on shop-pc")
        secure = heard("_https._tcp.local.", "runboard on shop-pc")
    finally:
        announcer.stop()

    assert announcer.trouble is None
    assert plain and secure
    assert (plain.port, secure.port) == (8210, 8443)
    assert plain.server == "runboard-shop-pc.local."
    assert plain.parsed_addresses(IPVersion.All) == ["192.168.1.20"]


def test_the_same_again_is_no_change_and_another_address_is() -> None:
    announcer = Announcer(LOOPBACK)
    announcer.announce(HERE)
    try:
        assert not announcer.announce(HERE)
        assert announcer.announce(Announced(at("10.0.0.5"), 8210))
        told = heard("_http._tcp.local.", "runboard on shop-pc")
    finally:
        announcer.stop()

    assert told and told.parsed_addresses() == ["10.0.0.5"]


def test_it_starts_at_once_and_stops_soon_even_while_it_begins() -> None:
    began = time.monotonic()

    announcer = Announcer(LOOPBACK)
    announcer.announce(HERE)
    started = time.monotonic() - began
    announcer.stop()
    announcer.stop()

    assert started < 0.6, "asking whether the name is free takes longer"
    assert time.monotonic() - began < 5


def test_goodbye_is_said() -> None:
    announcer = Announcer(LOOPBACK)
    announcer.announce(HERE)
    assert heard("_http._tcp.local.", "runboard on shop-pc")

    announcer.stop()

    assert heard("_http._tcp.local.", "runboard on shop-pc", within=0.5) is None


def test_a_computer_without_a_network_says_so() -> None:
    announcer = Announcer(LOOPBACK)

    announcer.announce(Announced(at("fd00::20"), 8210))

    assert said(announcer.trouble) == "This computer is on no network now, so phones cannot find it by name."
    announcer.announce(Announced(at("10.0.0.5"), 8210))
    assert announcer.trouble is None
    announcer.stop()


def test_a_failure_is_a_sentence() -> None:
    # An address of documentation (RFC 5737) that this machine does not have: nothing can be sent from it.
    announcer = Announcer(("203.0.113.77",))

    announcer.announce(HERE)
    _wait_for(announcer)

    assert said(announcer.trouble).startswith("This computer could not announce its name on the network (")
    assert said(announcer.trouble).endswith("Its address works as before.")
    announcer.stop()
    assert announcer.trouble is None


@pytest.mark.parametrize("moment", [0, 0.0005, 0.001, 0.002, 0.005, 0.02, 0.1])
def test_stopping_at_any_moment_of_its_beginning_leaves_nothing_open(moment: float) -> None:
    announcer = Announcer(LOOPBACK)
    announcer.announce(HERE)
    time.sleep(moment)

    announcer.stop()
    gc.collect()  # what is left open would be a warning, and so a failure

    assert "announce" not in [thread.name for thread in threading.enumerate()]


def test_a_system_that_does_not_share_the_port_is_told() -> None:
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as holder:
        try:
            holder.bind(("0.0.0.0", 5353))
        except OSError:
            return  # this machine has an mDNS of its own, which shares the port
        announcer = Announcer(LOOPBACK)
        announcer.announce(HERE)
        _wait_for(announcer)

    assert said(announcer.trouble).startswith("This computer could not announce its name on the network (")
    announcer.stop()
    gc.collect()


def _wait_for(announcer: Announcer) -> None:
    until = time.monotonic() + 5
    while not announcer.trouble and time.monotonic() < until:
        time.sleep(0.02)
