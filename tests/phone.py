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


@dataclass
class Phone:
    """One device with one person's name on it. ``at`` is the server's address, with its slash."""

    at: str
    person: str = "ann"
    device: str = field(default_factory=lambda: uuid.uuid4().hex[:12])
    seen: int = 0

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
        request = urllib.request.Request(
            f"{self.at}taps", json.dumps(batch).encode(), {"Content-Type": "application/json"}
        )
        with urllib.request.urlopen(request, timeout=10) as answer:
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
        with urllib.request.urlopen(f"{self.at}state?person={self.person}", timeout=10) as answer:
            found: dict[str, Any] = json.load(answer)
        self.seen = found["seq"]
        return found

    @contextmanager
    def listening(self) -> Iterator["Stream"]:
        """Listen to the stream until the end of the block."""
        with urllib.request.urlopen(f"{self.at}stream", timeout=20) as answer:
            yield Stream(answer)


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
    except (OSError, urllib.error.URLError):
        return False
