"""A phone without a screen: it makes presses, sends them to a server, and reads the state."""

import json
import time
import urllib.error
import urllib.request
import uuid
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

from runboard.web.door.sessions import COOKIE
from tests.serving import served_at


@dataclass
class Phone:
    """One device with one person's name on it. ``at`` is the server's address, with its slash.

    ``token`` is the secret of its session. Without one it pairs itself, with a server that ``tests.serving`` started.
    """

    at: str
    person: str = "ann"
    device: str = field(default_factory=lambda: uuid.uuid4().hex[:12])
    seen: int = 0
    token: str = ""

    def __post_init__(self) -> None:
        server = served_at(self.at)
        if server and not self.token:
            self.token = server.pair()

    def event(self, kind: str, body: Mapping[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
        """An event as the page makes it."""
        return {
            "id": uuid.uuid4().hex,
            "v": 1,
            "kind": kind,
            "at": datetime.now(UTC).isoformat(),
            "person": self.person,
            "device": self.device,
            "seen": self.seen,
            "basis": "tapped",
            "body": dict(body or {}),
            **fields,
        }

    def send(self, *events: dict[str, Any]) -> list[dict[str, Any]]:
        """Send a batch; answers what each was answered."""
        batch = {"device": self.device, "sent_at": datetime.now(UTC).isoformat(), "taps": list(events)}
        with self._ask("taps", json.dumps(batch).encode()) as answer:
            said = json.load(answer)
        self.seen = said["seq"]
        return list(said["taps"])

    def press(self, kind: str, body: Mapping[str, Any] | None = None, **fields: Any) -> dict[str, Any]:
        """One press, which must be accepted."""
        (answer,) = self.send(self.event(kind, body, **fields))
        assert answer["answer"] == "accepted", answer
        return answer

    def state(self) -> dict[str, Any]:
        """The state as this person's page gets it."""
        with self._ask(f"state?person={self.person}") as answer:
            found: dict[str, Any] = json.load(answer)
        self.seen = found["seq"]
        return found

    @contextmanager
    def listening(self) -> Iterator["Stream"]:
        """Listen to the stream until the end of the block."""
        with self._ask("stream", seconds=20) as answer:
            yield Stream(answer)

    def _ask(self, path: str, body: bytes | None = None, seconds: float = 10) -> Any:
        headers = {"Cookie": f"{COOKIE}={self.token}"} | ({} if body is None else {"Content-Type": "application/json"})
        return urllib.request.urlopen(urllib.request.Request(f"{self.at}{path}", body, headers), timeout=seconds)


@dataclass
class Stream:
    """The server's event stream."""

    answer: Any

    def next(self, name: str, seconds: float = 10) -> dict[str, Any]:
        """The data of the next event of that name."""
        until = time.monotonic() + seconds
        event = ""
        while time.monotonic() < until:
            line = self.answer.readline().decode().strip()
            if line.startswith("event:"):
                event = line.removeprefix("event:").strip()
            if line.startswith("data:") and event == name:
                return dict(json.loads(line.removeprefix("data:")))
        raise AssertionError(f"no {name} came within {seconds} s")


def is_up(address: str) -> bool:
    """Whether a server answers there."""
    try:
        with urllib.request.urlopen(f"{address}state", timeout=5):
            return True
    except urllib.error.HTTPError:
        return True  # it answers, if only that it does not know who asks
    except (OSError, urllib.error.URLError):
        return False
