"""A phone on a kept connection, with a stopwatch."""

import http.client
import json
import socket
import time
from collections.abc import Mapping
from datetime import UTC, datetime
from typing import Any
from urllib.parse import urlsplit
from uuid import uuid4

from runboard.demo.book import LEAD
from runboard.web.door.sessions import COOKIE
from tests.serving import Running

_KEPT = ("Connection", "keep-alive")


class Asking:
    """Asks one server for the state, and taps; each answers its milliseconds."""

    def __init__(self, server: Running, run: str) -> None:
        self._cookie = {"Cookie": f"{COOKIE}={server.pair()}"}
        self._connection = http.client.HTTPConnection(urlsplit(server.address).netloc, timeout=30)
        self._connection.connect()
        self._connection.sock.setsockopt(socket.IPPROTO_TCP, socket.TCP_NODELAY, 1)
        self.run = run
        self.state = f"/state?person={LEAD}"
        self.bytes = 0
        self.seq = 0
        self.pressed_at: list[str] = []
        self._number, self._stem = 0, f"bench-{uuid4().hex[:6]}"
        self.get(self.state)
        self.bytes = len(self._body)
        self._read_seq()

    def get(self, path: str, headers: Mapping[str, str] | None = None, wanted: int = 200) -> float:
        began = time.perf_counter()
        self._connection.request("GET", path, headers=self._cookie | dict(headers or {}))
        answer = self._connection.getresponse()
        self._body = answer.read()
        took = 1000 * (time.perf_counter() - began)
        self._headers = answer.headers
        assert answer.status == wanted, (path, answer.status, self._body[:300])
        return took

    @property
    def text(self) -> str:
        """What was answered last."""
        return self._body.decode("utf-8", "replace")

    def post(self, taps: list[dict[str, Any]]) -> float:
        """Send taps, all of which must be taken."""
        body = json.dumps({"device": "phone-1", "sent_at": datetime.now(UTC).isoformat(), "taps": taps})
        headers = self._cookie | {"Content-Type": "application/json"}
        began = time.perf_counter()
        self._connection.request("POST", "/taps", body, headers)
        answer = self._connection.getresponse()
        said = json.loads(answer.read())
        took = 1000 * (time.perf_counter() - began)
        assert answer.status == 200, said
        assert all(one["answer"] == "accepted" and not one.get("to_settle") for one in said["taps"]), said
        self.seq = said["seq"]
        self.pressed_at += [tap["at"] for tap in taps]
        return took

    def tap(self, kind: str, body: Mapping[str, Any] | None = None, **fields: str) -> dict[str, Any]:
        """A press of now, made up to date."""
        self._number += 1
        envelope = {"id": f"{self._stem}-{self._number:06d}", "kind": kind, "at": datetime.now(UTC).isoformat()}
        common = {"run": self.run, "person": LEAD, "seen": self.seq, "body": dict(body or {})}
        return {**envelope, **common, **fields}

    def state_tag(self) -> str:
        self.get(self.state)
        return str(self._headers["ETag"])

    def wait_for_a_plan(self, seconds: float = 90, quiet: float = 3) -> None:
        """Until the planner has a plan of the log as it is, and nothing came after it for a while."""
        until, last, since = time.monotonic() + seconds, "", time.monotonic()
        while time.monotonic() < until:
            tag = self.state_tag()
            state = json.loads(self._body)
            if tag != last or state.get("plan", {}).get("seq") != state["seq"]:
                last, since = tag, time.monotonic()
            elif time.monotonic() - since > quiet:
                return
            time.sleep(0.1)

    def _read_seq(self) -> None:
        self.seq = int(json.loads(self._body)["seq"])
