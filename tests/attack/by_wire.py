"""Attacks by connections: half of what was begun, nothing at all, answers that nobody reads, streams that one holds."""

import socket
import time
from itertools import cycle

from runboard.web.door.sessions import COOKIE
from tests.attack.scene import Scene

_HALF_BODY = (
    b'POST /taps HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 5000\r\n\r\n{"taps":'
)
_HALF_HEAD = b"POST /taps HTTP/1.1\r\nHost: localhost\r\nX: "
HELD = 15.0


def _half_bodies(scene: Scene) -> list[bytes]:
    """A stranger's code that never comes to its end, and a paired phone's batch."""
    head = "POST {} HTTP/1.1\r\nHost: localhost\r\nContent-Type: {}\r\nCookie: {}={}\r\nContent-Length: 3000\r\n\r\n{}"
    token = scene.session("crew")
    return [
        head.format("/pair", "application/x-www-form-urlencoded", COOKIE, "x", "code=").encode(),
        head.format("/taps", "application/json", COOKIE, token, '{"taps":').encode(),
    ]


def half_sent_bodies(scene: Scene) -> None:
    """Unfinished POSTs, of strangers and of a phone that is paired."""
    _hold(scene, scene.size(20, 14), *_half_bodies(scene))


def half_sent_heads(scene: Scene) -> None:
    """Requests whose head never ends."""
    _hold(scene, scene.size(200, 30), _HALF_HEAD)


def silent(scene: Scene) -> None:
    """Connections on which nothing is said, a hundred from each address."""
    _hold(scene, scene.size(1100, 120), a_source=100)


def drips(scene: Scene) -> None:
    """Bodies that come a byte a second, so that no silence is ever long."""
    wires = [scene.wire() for _ in range(scene.size(20, 14))]
    for one, begun in zip(wires, cycle(_half_bodies(scene)), strict=False):
        one.sendall(begun)
    until = time.monotonic() + _held(scene)
    while time.monotonic() < until:
        for one in wires:
            try:
                one.sendall(b" ")
            except OSError:
                continue  # it was closed, as it should be
        time.sleep(1)
    _tell_how_many_are_open(scene, wires)


def unread_answers(scene: Scene) -> None:
    """Big answers asked for again and again, and never read."""
    token = scene.session("crew")
    asked = f"GET /static/now/now.js HTTP/1.1\r\nHost: localhost\r\nCookie: {COOKIE}={token}\r\n\r\n".encode()
    wires = [scene.wire() for _ in range(scene.size(30, 14))]
    for one in wires:
        one.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 2048)
        try:
            one.sendall(asked * 100)
        except OSError:
            continue
    time.sleep(_held(scene))
    _tell_how_many_are_open(scene, wires)


def all_streams(scene: Scene) -> None:
    """One phone that holds every stream; another wants one."""
    token = scene.session("crew")
    asked = f"GET /stream HTTP/1.1\r\nHost: localhost\r\nCookie: {COOKIE}={token}\r\n\r\n".encode()
    wires = []
    for number in range(505):
        try:
            wires.append(scene.wire(f"127.0.1.{1 + number // 100}"))
            wires[-1].sendall(asked)
        except OSError:
            break  # no more are let in
    time.sleep(1)
    other = scene.session("crew")
    mine = scene.wire("127.0.0.67")
    mine.sendall(asked.replace(token.encode(), other.encode()))
    first = _first(mine)
    scene.remark(f"another phone's stream: {first or 'nothing'}")
    scene.must(first == "200", f"another phone's stream answered {first or 'nothing'}")


def _held(scene: Scene) -> float:
    return HELD if scene.whole else 1.5


def _hold(scene: Scene, many: int, *begun: bytes, a_source: int = 10**6) -> None:
    wires: list[socket.socket] = []
    for number in range(many):
        try:
            wires.append(scene.wire(f"127.0.2.{1 + number // a_source}"))
            if begun:
                wires[-1].sendall(begun[number % len(begun)])
        except OSError:
            break  # no more are let in
    scene.remark(f"{len(wires)} of {many} let in")
    time.sleep(_held(scene))
    _tell_how_many_are_open(scene, wires)


def _tell_how_many_are_open(scene: Scene, wires: list[socket.socket]) -> None:
    still = sum(_is_open(one) for one in wires)
    scene.remark(f"{still} open after {_held(scene):.0f} s")


def _is_open(wire: socket.socket) -> bool:
    wire.setblocking(False)
    try:
        return all(wire.recv(1 << 16) != b"" for _ in range(200))
    except BlockingIOError:
        return True
    except OSError:
        return False
    finally:
        wire.setblocking(True)


def _first(wire: socket.socket) -> str:
    """The status of the first answer."""
    try:
        return wire.recv(64)[9:12].decode()
    except OSError:
        return ""
