"""Bytes that are no request, sent to a real server on loopback; between them it must answer a phone as ever."""

import socket
import tempfile
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from random import Random
from urllib.parse import urlsplit

from tests.attack.cast import shut_house
from tests.attack.fuzz import Found, Trouble
from tests.conftest import HandClock
from tests.phone import Phone
from tests.serving import running

LOOK_EVERY = 200
_WAIT = 5.0
_HEAD = b"POST /taps HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
_LINES = (b"GET / HTTP/1.1", b"GET /stream HTTP/1.1", b"GET  / HTTP/1.1", b"GET / HTTP/9.9", b"GET /%00%ff\xff HTTP/1.1", b"\x16\x03\x01\x02\x00\x01", b"PRI * HTTP/2.0",
          b"GET http://elsewhere/ HTTP/1.1", b"CONNECT a:1 HTTP/1.1", b"OPTIONS * HTTP/1.1", b"G" * 70_000, b"GET /" + b"a" * 70_000 + b" HTTP/1.1", b"", b"\0" * 40)  # fmt: skip
_FIELDS = (b"Host: localhost", b"Host: a\0b", b"Host: localhost\r\nHost: elsewhere", b"Content-Length: 5", b"Content-Length: -1", b"Content-Length: 5\r\nContent-Length: 6",
           b"Content-Length: 99999999999999999999", b"Transfer-Encoding: chunked", b"Transfer-Encoding: chunked\r\nContent-Length: 3", b"Transfer-Encoding: x, chunked",
           b"Cookie: " + b"a=b;" * 3000, b"Cookie: runboard=\xff", b"X: " + b"y" * 40_000, b": x", b"a b: c", b" folded: x", b"X: a\rb", b"Expect: 100-continue",
           b"Upgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Key: x\r\nSec-WebSocket-Version: 13", b"Connection: close", b"Upgrade: h2c\r\nConnection: Upgrade")  # fmt: skip
_BODIES = (b"", b"{}", b"hello", b"5\r\nhello\r\n0\r\n\r\n", b"ffffffffffffffff\r\nx", b"-1\r\n", b"zz\r\n", b"1;" + b"e" * 9000 + b"\r\nx\r\n0\r\n\r\n", b"GET / HTTP/1.1\r\n\r\n" * 30)  # fmt: skip


def some_bytes(random: Random) -> bytes:
    """What is written on one connection."""
    chance = random.random()
    if chance < 0.15:
        return random.randbytes(random.choice((1, 10, 500, 70_000)))
    fields = b"\r\n".join(random.choice(_FIELDS) for _ in range(random.choice((0, 1, 2, 3, 6))))
    whole = random.choice(_LINES) + b"\r\n" + fields + b"\r\n\r\n" + random.choice(_BODIES)
    if chance < 0.3:
        whole = _HEAD + fields + b"\r\n\r\n" + random.choice(_BODIES)
    if chance < 0.5 and whole:
        whole = whole[: random.randrange(len(whole))]
    return whole


def on_the_wire(seed: int, inputs: int) -> Found:
    """Write so many times, and look in between whether a phone is answered. Each connection ends before the next begins."""
    random, found = Random(f"{seed}/wire"), Found()
    with tempfile.TemporaryDirectory(prefix="runboard-wire-") as made:
        data = Path(made) / "shop"
        data.mkdir()
        with shut_house(data, HandClock()):
            pass
        with running("serve", "--data", str(data)) as server:
            phone, at = (
                Phone(server.address),
                (urlsplit(server.address).hostname or "", urlsplit(server.address).port or 0),
            )
            for number in range(inputs):
                wrote = some_bytes(random)
                came = _answer(at, wrote)
                found.inputs += 1
                found.answers[("wire", came)] += 1
                if came.startswith("5") and came != "503":
                    found.troubles.setdefault(f"wire {came}", Trouble(-1, number, f"{wrote[:200]!r}", came))
                if number % LOOK_EVERY == LOOK_EVERY - 1:
                    _look(phone, found, number)
            found.troubles |= {line: Trouble(-1, inputs, "bytes", line) for line in _failures(server.said)}
    return found


def _answer(at: tuple[str, int], wrote: bytes) -> str:
    """The status of the first answer; 'closed' or 'silent' where none came."""
    with closing(socket.create_connection(at, timeout=_WAIT)) as wire:
        try:
            wire.sendall(wrote)
            wire.shutdown(socket.SHUT_WR)
            first = wire.recv(64)
        except TimeoutError:
            return "silent"
        except OSError:
            return "closed"
    return (
        first[9:12].decode("ascii", "replace") if first.startswith(b"HTTP/1.") else "closed" if not first else "no http"
    )


def _look(phone: Phone, found: Found, number: int) -> None:
    try:
        phone.state()
    except OSError as error:
        found.troubles.setdefault("the phone", Trouble(-1, number, "bytes", f"a phone is not answered: {error}"))


def _failures(said: list[str]) -> Iterator[str]:
    """What the server printed of itself that nobody should see."""
    yield from (line.strip() for line in said if line.startswith(("Traceback", "Exception", "RuntimeError")))
