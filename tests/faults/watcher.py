"""One open page that only listens through a storm: what the stream told it and when, and when each alarm rang on it."""

import json
import threading
import time
from dataclasses import dataclass, field
from multiprocessing.synchronize import Event
from pathlib import Path
from typing import Any

from runboard.run.log.event import parse_moment
from tests.faults.outbox import FAILED, Wire

POLL_SECONDS = 1.0
TICK_SECONDS = 1.0
SILENT_SECONDS = 15.0


@dataclass
class Watcher:
    """``told`` is (id, due_at, when) and ``rang`` (id, due_at, since, until), in seconds; ``listened`` when the stream was
    open. Like the page it rings by its own clock for what it ``held`` when it was last answered."""

    wire: Wire
    person: str
    over: Event
    told: list[tuple[str, str, float]] = field(default_factory=list)
    rang: list[list[Any]] = field(default_factory=list)
    listened: list[list[float]] = field(default_factory=list)
    hint: threading.Event = field(default_factory=threading.Event)
    held: dict[tuple[str, str], float] = field(default_factory=dict)
    ringing: dict[tuple[str, str], list[Any]] = field(default_factory=dict)
    lock: threading.Lock = field(default_factory=threading.Lock)

    def watch(self) -> None:
        """Poll each second and at each hint, until it is over."""
        for also in (self._listen, self._tick):
            threading.Thread(target=also, daemon=True).start()
        tag = ""
        while not self.over.is_set():
            self.hint.wait(POLL_SECONDS)
            self.hint.clear()
            try:
                status, said, fresh = self.wire.ask(f"/state?person={self.person}", tag=tag)
            except FAILED:
                time.sleep(0.1)
                continue
            if status == 200:
                tag = fresh
                self.shown(said, time.time())

    def shown(self, said: dict[str, Any], at: float) -> None:
        """An answer came: what it holds rings from now on as its moments pass."""
        with self.lock:
            self.held = {(due["id"], due["due_at"]): parse_moment(due["due_at"]).timestamp() for due in said["dues"]}
        self.second(at)

    def second(self, at: float) -> None:
        """What the page does each second, answered or not: ring for every moment it holds that has passed."""
        with self.lock:
            passed = {key for key, due_at in self.held.items() if due_at <= at}
            for key in self.ringing.keys() - passed:
                self.ringing.pop(key)[3] = at
            for key in passed - self.ringing.keys():
                self.ringing[key] = [*key, at, float("inf")]
                self.rang.append(self.ringing[key])

    def _tick(self) -> None:
        while not self.over.is_set():
            time.sleep(TICK_SECONDS)
            self.second(time.time())

    def _listen(self) -> None:
        while not self.over.is_set():
            try:
                self._read_once()
            except FAILED:
                pass
            time.sleep(0.1)

    def _read_once(self) -> None:
        connection = self.wire.send("/stream", seconds=SILENT_SECONDS)
        stretch: list[float] = []
        try:
            answer = connection.getresponse()
            event = ""
            while line := answer.readline():
                if not stretch:
                    stretch += [time.time(), float("inf")]
                    self.listened.append(stretch)
                text = line.decode().strip()
                if text.startswith("event:"):
                    event = text.removeprefix("event:").strip()
                elif text.startswith("data:"):
                    self._heard(event, json.loads(text.removeprefix("data:")))
        finally:
            connection.close()
            if stretch:
                stretch[1] = time.time()

    def _heard(self, event: str, said: dict[str, Any]) -> None:
        if event == "due":
            self.told.append((said["id"], said["due_at"], time.time()))
        self.hint.set()


def watch(address: str, token: str, person: str, over: Event, place: Path) -> None:
    """The watcher's process."""
    watcher = Watcher(Wire(address, token), person, over)
    watcher.watch()
    said = {"told": watcher.told, "rang": watcher.rang, "listened": watcher.listened, "until": time.time()}
    (place / "watcher.json").write_text(json.dumps(said), "utf-8")
