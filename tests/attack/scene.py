"""What an attack has at hand: a real server on loopback, addresses to come from, sessions, and what it notes.

Attackers come from addresses of 127.0.0.0/8 other than the victim's, as devices on a network do.
"""

import http.client
import json
import socket
import threading
import time
import uuid
from collections import Counter
from collections.abc import Callable, Mapping
from contextlib import ExitStack
from dataclasses import dataclass, field
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from runboard.floor.letting_in.devices import make_code
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.opening import open_door
from runboard.store.open import open_store
from runboard.web.door.sessions import COOKIE
from tests.attack.victim import Victim
from tests.pairing import paired
from tests.serving import Running

PATIENCE, LITTLE_PATIENCE = 60.0, 6.0
_MOST_UNANSWERED = 4
_LEAST_SENTENCE = 20


class NobodyAnswers(Exception):
    """The server answers the attacker no more, request after request."""


@dataclass(frozen=True)
class Reply:
    """What came: status 0 where nothing did."""

    status: int
    body: bytes
    seconds: float
    cookie: str = ""

    def json(self) -> Any:
        return json.loads(self.body)


@dataclass
class Scene:
    """``whole`` says whether the attack is meant in full. ``remarks`` stand in the table; ``wrong`` is what must not be."""

    server: Running
    data: Path
    victim: Victim
    whole: bool = True
    answers: Counter[int] = field(default_factory=Counter)
    remarks: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    kept: ExitStack = field(default_factory=ExitStack)
    unanswered: int = 0

    @property
    def at(self) -> tuple[str, int]:
        where = urlsplit(self.server.address)
        return where.hostname or "", where.port or 0

    def size(self, whole: int, reduced: int) -> int:
        return whole if self.whole else reduced

    def must(self, holds: bool, sentence: str) -> None:
        if not holds:
            self.wrong.append(sentence)

    def in_time(self, holds: bool, sentence: str) -> None:
        """A goal in seconds: for the table, never for a test."""
        self.must(holds or not self.whole, sentence)

    def remark(self, text: str) -> None:
        self.remarks.append(text)

    def suffer(self, does: Callable[["Scene"], None]) -> None:
        """Let an attack happen; one that cannot be made to its end is said."""
        try:
            does(self)
        except Exception as error:  # noqa: BLE001 - the others are made all the same
            self.wrong.append(f"the attack ended with {type(error).__name__}: {error}")

    # Who asks

    def session(self, access: str) -> str:
        """The secret of a device that is paired now."""
        return paired(self.data, access)

    def code(self, access: str) -> str:
        """A pairing code, as the lead's console shows one."""
        store, door = open_door(self.data)
        try:
            return make_code(door, access)[0]
        finally:
            store.close()

    def card(self, tray: str = "1", run: str = "r1") -> str:
        """The path that a tray's card opens."""
        store = open_store(self.data)
        try:
            return traveller_link(read_keys(store.settings), run, tray).path
        finally:
            store.close()

    # What is asked

    def ask(
        self,
        method: str,
        path: str,
        body: bytes | None = None,
        *,
        token: str = "",
        headers: Mapping[str, str] | None = None,
        source: str = "127.0.0.66",
    ) -> Reply:
        """One request on a connection of its own, from an address of the attacker's."""
        seconds = PATIENCE if self.whole else LITTLE_PATIENCE
        wire = http.client.HTTPConnection(*self.at, timeout=seconds, source_address=(source, 0))
        sent = {"Cookie": f"{COOKIE}={token}"} if token else {}
        began = time.monotonic()
        try:
            wire.request(method, path, body, {**sent, **(headers or {})})
            answer = wire.getresponse()
            said = answer.read()
            return self._noted(path, Reply(answer.status, said, time.monotonic() - began, _cookie(answer)))
        except (OSError, http.client.HTTPException):
            return self._noted(path, Reply(0, b"", time.monotonic() - began))
        finally:
            wire.close()

    def form(self, path: str, fields: str, **more: Any) -> Reply:
        typed = {"Content-Type": "application/x-www-form-urlencoded"}
        return self.ask("POST", path, fields.encode(), headers=typed, **more)

    def send(self, token: str, *taps: Any, sent_at: str = "", **more: Any) -> Reply:
        """A batch of presses."""
        batch = {"device": "x", "sent_at": sent_at or datetime.now(UTC).isoformat(), "taps": list(taps)}
        return self.ask(
            "POST",
            "/taps",
            json.dumps(batch).encode(),
            token=token,
            headers={"Content-Type": "application/json"},
            **more,
        )

    def upload(self, raw: bytes, token: str) -> Reply:
        """A file, as the import page sends it."""
        head = b'--x\r\nContent-Disposition: form-data; name="file"; filename="a.json"\r\n\r\n'
        typed = {"Content-Type": "multipart/form-data; boundary=x"}
        return self.ask("POST", "/shop/import", head + raw + b"\r\n--x--\r\n", token=token, headers=typed)

    def wire(self, source: str = "127.0.0.66") -> socket.socket:
        """A connection that is held until the server was stopped."""
        found = self.kept.enter_context(socket.socket())
        found.settimeout(10)
        found.bind((source, 0))
        found.connect(self.at)
        return found

    def at_once(self, some: int, does: Callable[[int], None]) -> None:
        """Do something so many times beside each other, and wait until all is done."""
        threads = [threading.Thread(target=does, args=(number,), daemon=True) for number in range(some)]
        for one in threads:
            one.start()
        for one in threads:
            one.join(3 * PATIENCE)

    def _noted(self, path: str, reply: Reply) -> Reply:
        self.answers[reply.status] += 1
        self.unanswered = 0 if reply.status else self.unanswered + 1
        if self.unanswered > _MOST_UNANSWERED:
            raise NobodyAnswers(path[:60])
        fine = reply.status in (503, 507) and len(reply.body) >= _LEAST_SENTENCE
        self.must(reply.status < 500 or fine, f"{path[:60]} answered {reply.status}")
        return reply


def event(kind: str, body: Mapping[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
    """A press of now."""
    common = {"id": uuid.uuid4().hex, "v": 1, "kind": kind, "at": datetime.now(UTC).isoformat(), "seen": 2**50}
    return {**common, "person": "ben", "basis": "tapped", "body": dict(body or {}), **fields}


def _cookie(answer: http.client.HTTPResponse) -> str:
    given = answer.headers.get("Set-Cookie", "")
    return given.split(";")[0].partition("=")[2] if given.startswith(f"{COOKIE}=") else ""
