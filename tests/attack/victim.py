"""A helper's phone that goes on working beside an attack: a press every 0.2 s, each on a connection of its own."""

import http.client
import json
import threading
import time
import uuid
from dataclasses import dataclass, field
from datetime import UTC, datetime
from types import TracebackType
from urllib.parse import urlsplit

from runboard.web.door.sessions import COOKIE

EVERY = 0.2
# A press that nobody answers for so long has been refused, as far as a person can tell.
PATIENCE = 30.0


@dataclass
class Victim:
    """``times`` are the seconds that each press took; ``refused`` says what became of those that were not accepted."""

    address: str
    token: str
    patience: float = PATIENCE
    times: list[float] = field(default_factory=list)
    refused: list[str] = field(default_factory=list)
    pressed: int = 0

    def __post_init__(self) -> None:
        self._over = threading.Event()
        self._thread = threading.Thread(target=self._live, daemon=True)

    def __enter__(self) -> "Victim":
        self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.leave()

    def leave(self) -> None:
        """Press no more; the last press is waited for."""
        self._over.set()
        self._thread.join(self.patience + 5)

    def begin_anew(self) -> None:
        """What was pressed so far, before the attack, is not counted."""
        self.times.clear()
        self.refused.clear()

    def share(self, part: float) -> float:
        """The time in ms that this part of all presses took at most."""
        some = sorted(self.times)
        return 1000 * some[min(len(some) - 1, int(part * len(some)))] if some else float("nan")

    def _live(self) -> None:
        while not self._over.is_set():
            began = time.monotonic()
            why = self._press()
            took = time.monotonic() - began
            self.times.append(took)
            if why:
                self.refused.append(why)
            self._over.wait(max(0.0, EVERY - took))

    def _press(self) -> str:
        """'' where the press was accepted, else what came."""
        self.pressed += 1
        where = urlsplit(self.address)
        wire = http.client.HTTPConnection(where.hostname or "", where.port, timeout=self.patience)
        try:
            wire.request(
                "POST", "/taps", self._batch(), {"Content-Type": "application/json", "Cookie": f"{COOKIE}={self.token}"}
            )
            answer = wire.getresponse()
            said = answer.read()
        except OSError as error:
            return type(error).__name__
        except http.client.HTTPException as error:
            return type(error).__name__
        finally:
            wire.close()
        if answer.status != 200:
            return f"{answer.status} {said[:80]!r}"
        told = json.loads(said)["taps"][0]
        return "" if told["answer"] == "accepted" else f"{told['answer']} {told.get('code')}"

    def _batch(self) -> bytes:
        now = datetime.now(UTC).isoformat()
        kind = {"kind": "room changed", "person": "ben", "body": {"room": ("shop", "house")[self.pressed % 2]}}
        if self.pressed == 1:
            kind = {"kind": "person came", "person": "ben", "body": {"room": "shop"}}
        event = {"id": uuid.uuid4().hex, "v": 1, "at": now, "seen": 2**50, "basis": "tapped", **kind}
        return json.dumps({"device": "x", "sent_at": now, "taps": [event]}).encode()
