"""A phone's outbox without a page: presses wait until they are answered, through a network that fails in every way.

What the page does in ``static/door/outbox.js`` and ``clock.js``: batches, backoff, the clock by the shortest round trip.
Only the waits are shorter, so that a storm of minutes has as many tries as an evening.
"""

import http.client
import json
import time
from collections import Counter, defaultdict, deque
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any
from urllib.parse import urlsplit

from runboard.run.log.event import parse_moment, write_moment
from runboard.web.door.sessions import COOKIE

BATCH = 100
PATIENCE = 3.0
BACKOFF, LONGEST_BACKOFF = 0.1, 2.0
FAILED = (OSError, http.client.HTTPException)


@dataclass
class Wire:
    """Requests of one device to the server, each on a connection of its own."""

    address: str
    token: str

    def ask(self, path: str, batch: Any = None, tag: str = "", seconds: float = PATIENCE) -> tuple[int, Any, str]:
        """(status, JSON or None, tag). Raises one of ``FAILED`` where nobody answers in time."""
        connection = self.send(path, batch, tag, seconds)
        try:
            return self.read(connection)
        finally:
            connection.close()

    def send(
        self, path: str, batch: Any = None, tag: str = "", seconds: float = PATIENCE
    ) -> http.client.HTTPConnection:
        """Send a request; the answer is still to be read."""
        connection = http.client.HTTPConnection(urlsplit(self.address).netloc, timeout=seconds)
        headers = {"Cookie": f"{COOKIE}={self.token}"} | ({"If-None-Match": tag} if tag else {})
        try:
            if batch is None:
                connection.request("GET", path, headers=headers)
            else:
                connection.request("POST", path, json.dumps(batch), headers | {"Content-Type": "application/json"})
        except BaseException:
            connection.close()
            raise
        return connection

    @staticmethod
    def read(connection: http.client.HTTPConnection) -> tuple[int, Any, str]:
        answer = connection.getresponse()
        body = answer.read()
        is_json = (answer.headers.get("Content-Type") or "").startswith("application/json")
        return answer.status, json.loads(body) if body and is_json else None, answer.headers.get("ETag") or ""


@dataclass
class PhoneClock:
    """A clock that is ``off``, and what it has learned of the server's from the exchange with the shortest round trip."""

    off: timedelta
    offset_ms: int = 0
    shortest: float = float("inf")

    def now(self) -> datetime:
        return datetime.now(UTC) + self.off

    def learn(self, sent: datetime, server: str) -> None:
        """Take an exchange that was sent at that moment and has just been answered."""
        trip = (self.now() - sent) / timedelta(milliseconds=1)
        if 0 <= trip <= self.shortest:
            self.shortest = trip
            self.offset_ms = round((parse_moment(server) - sent) / timedelta(milliseconds=1) - trip / 2)


@dataclass
class Outbox:
    """The presses of one phone. ``answers`` keeps every answer to every id; ``tally`` what the network did."""

    wire: Wire
    device: str
    clock: PhoneClock
    random: Random
    waiting: list[dict[str, Any]] = field(default_factory=list)
    answers: dict[str, Counter[str]] = field(default_factory=lambda: defaultdict(Counter))
    tally: Counter[str] = field(default_factory=Counter)
    again_at: float = 0.0
    _wait: float = BACKOFF
    _sent: deque[list[dict[str, Any]]] = field(default_factory=lambda: deque(maxlen=30))

    def drain(self, faults: bool = True) -> None:
        """Send what waits, unless the last failure is too fresh; whatever fails, the presses stay."""
        if time.monotonic() < self.again_at:
            return
        try:
            while self.waiting:
                self._send_next(faults)
            self._wait = BACKOFF
        except FAILED as failed:
            self.tally["timed out" if isinstance(failed, TimeoutError) else "nobody answered"] += 1
            self.again_at = time.monotonic() + self._wait * self.random.uniform(0.8, 1.2)
            self._wait = min(2 * self._wait, LONGEST_BACKOFF)

    def _send_next(self, faults: bool) -> None:
        batch = self.waiting[:BATCH]
        match self.random.choices(("", "cut", "half", "at once", "reordered", "old"), (80, 4, 2, 5, 6, 5))[0] * faults:
            case "cut":
                # The phone leaves the Wi-Fi after the request: it may be stored, and nobody hears the answer.
                self.wire.send("/taps", self._batch(batch)).close()
                self.tally["cut off"] += 1
                raise ConnectionAbortedError
            case "half":
                self._send_half(batch)
                raise ConnectionAbortedError
            case "at once":
                self._send_at_once(batch)
            case "reordered":
                self.random.shuffle(batch)
                for part in (batch[len(batch) // 2 :], batch[: len(batch) // 2]):
                    self._post(part)
                self.tally["reordered"] += 1
            case "old" if self._sent:
                self._post(self.random.choice(self._sent))
                self.tally["sent again"] += 1
            case _:
                self._post(batch)

    def _batch(self, taps: list[dict[str, Any]]) -> dict[str, Any]:
        return {"device": self.device, "sent_at": write_moment(self.clock.now()), "taps": taps}

    def _post(self, taps: list[dict[str, Any]]) -> None:
        if taps:
            sent = self.clock.now()
            self._settle(taps, sent, self.wire.ask("/taps", self._batch(taps)))

    def _send_at_once(self, taps: list[dict[str, Any]]) -> None:
        """Two tabs, or a retry that overtakes: the same batch twice at the same moment."""
        sent = self.clock.now()
        open_now = []
        try:
            for _ in range(2):
                open_now.append(self.wire.send("/taps", self._batch(taps)))
            for one in open_now:
                self._settle(taps, sent, self.wire.read(one))
        finally:
            for one in open_now:
                one.close()
        self.tally["twice at once"] += 1

    def _send_half(self, taps: list[dict[str, Any]]) -> None:
        body = json.dumps(self._batch(taps)).encode()
        connection = http.client.HTTPConnection(urlsplit(self.wire.address).netloc, timeout=PATIENCE)
        try:
            connection.putrequest("POST", "/taps")
            for name, value in (("Content-Type", "application/json"), ("Content-Length", str(len(body)))):
                connection.putheader(name, value)
            connection.putheader("Cookie", f"{COOKIE}={self.wire.token}")
            connection.endheaders(body[: len(body) // 2])
        finally:
            connection.close()
        self.tally["half sent"] += 1

    def _settle(self, taps: list[dict[str, Any]], sent: datetime, answer: tuple[int, Any, str]) -> None:
        status, said, _ = answer
        self.tally[f"status {status}"] += 1
        if status != 200:
            raise ConnectionError(f"taps answered {status}")
        self.clock.learn(sent, said["now"])
        known = {one["id"]: one for one in said["taps"]}
        for tap in taps:
            one = known[tap["id"]]
            self.answers[tap["id"]][one["answer"]] += 1
            self.tally["to settle"] += "to_settle" in one
            if one["answer"] == "refused":
                self.tally[f"refused: {one['code']}"] += self.answers[tap["id"]]["refused"] == 1
        self.waiting = [one for one in self.waiting if one["id"] not in known]
        self._sent.append(taps)
