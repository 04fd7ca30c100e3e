"""One open page that only listens through a storm: what the stream told it and when, and when each alarm rang on it."""

import json
import threading
import time
from dataclasses import dataclass, field
from multiprocessing.synchronize import Event
from pathlib import Path
from typing import Any

from runboard.run.event import parse_moment
from tests.faults.outbox import FAILED, Wire

POLL_SECONDS = 1.0
SILENT_SECONDS = 15.0


@dataclass
class Watcher:
    """``told`` and ``rang`` are (id, due_at, when) with moments in seconds; ``listened`` when the stream was open."""

    wire: Wire
    person: str
    over: Event
    told: list[tuple[str, str, float]] = field(default_factory=list)
    rang: list[tuple[str, str, float]] = field(default_factory=list)
    listened: list[list[float]] = field(default_factory=list)
    hint: threading.Event = field(default_factory=threading.Event)

    def watch(self) -> None:
        """Poll each second and at each hint, until it is over."""
        listening = threading.Thread(target=self._listen, daemon=True)
        listening.start()
        tag, ringing = "", set[tuple[str, str]]()
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
                ringing = self._note(said, ringing)

    def _note(self, said: dict[str, Any], before: set[tuple[str, str]]) -> set[tuple[str, str]]:
        at, now = time.time(), parse_moment(said["now"])
        ringing = {(due["id"], due["due_at"]) for due in said["dues"] if parse_moment(due["due_at"]) <= now}
        self.rang += [(*one, at) for one in ringing - before]
        return ringing

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
