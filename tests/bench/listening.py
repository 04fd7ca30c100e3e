"""A crowd of open streams in one thread: what each was told, and when."""

import asyncio
import json
import threading
import time
from collections import defaultdict
from collections.abc import Sequence
from types import TracebackType
from typing import Any
from urllib.parse import urlsplit

from runboard.web.door.sessions import COOKIE


class Crowd:
    """So many stream clients, of these devices in turn, from the start of the block to its end."""

    def __init__(self, address: str, tokens: Sequence[str], many: int) -> None:
        self._netloc, self._tokens, self._many = urlsplit(address).netloc, tokens, many
        self._heard: list[list[tuple[str, dict[str, Any], float]]] = [[] for _ in range(many)]
        self._open = threading.Semaphore(0)
        self._news = threading.Condition()
        self._loop = asyncio.new_event_loop()
        self._thread = threading.Thread(target=self._live, daemon=True)

    def __enter__(self) -> "Crowd":
        self._thread.start()
        for _ in range(self._many):
            assert self._open.acquire(timeout=20), "a stream did not open"
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._loop.call_soon_threadsafe(self._all.cancel)
        self._thread.join(timeout=10)
        self._loop.close()

    def counts(self, event: str) -> list[int]:
        """How many events of that name each client has heard."""
        return [sum(name == event for name, _, _ in heard) for heard in self._heard]

    def wait_for(self, event: str, before: list[int], more: int, seconds: float = 10) -> None:
        """Until each client has heard so many more."""
        with self._news:
            arrived = self._news.wait_for(
                lambda: all(now >= then + more for now, then in zip(self.counts(event), before, strict=True)), seconds
            )
        assert arrived, f"not every stream was told of {event}"

    def last(self, event: str) -> list[float]:
        """When each client heard its last event of that name."""
        return [next(at for name, _, at in reversed(heard) if name == event) for heard in self._heard]

    def due(self) -> dict[str, list[float]]:
        """For each alert when each client heard of it."""
        found: dict[str, list[float]] = defaultdict(list)
        for heard in self._heard:
            for name, said, at in heard:
                if name == "due":
                    found[said["id"]].append(at)
        return found

    def _live(self) -> None:
        asyncio.set_event_loop(self._loop)
        self._all = self._loop.create_task(self._listen_all())
        try:
            self._loop.run_until_complete(self._all)
        except asyncio.CancelledError:
            pass
        self._loop.run_until_complete(self._loop.shutdown_asyncgens())

    async def _listen_all(self) -> None:
        await asyncio.gather(
            *(self._listen(heard, self._tokens[at % len(self._tokens)]) for at, heard in enumerate(self._heard))
        )

    async def _listen(self, heard: list[tuple[str, dict[str, Any], float]], token: str) -> None:
        host, port = self._netloc.split(":")
        reader, writer = await asyncio.open_connection(host, int(port))
        try:
            asked = f"GET /stream HTTP/1.1\r\nHost: {self._netloc}\r\nCookie: {COOKIE}={token}\r\n\r\n"
            writer.write(asked.encode())
            event = ""
            while line := (await reader.readline()).decode().strip("\r\n"):  # the head of the answer
                assert not line.startswith("HTTP") or " 200 " in line, line
            self._open.release()
            while raw := await reader.readline():
                line = raw.decode().strip()
                if line.startswith("event:"):
                    event = line.removeprefix("event:").strip()
                elif line.startswith("data:"):
                    self._note(heard, event, json.loads(line.removeprefix("data:")))
        finally:
            writer.close()

    def _note(self, heard: list[tuple[str, dict[str, Any], float]], event: str, said: dict[str, Any]) -> None:
        heard.append((event, said, time.time()))
        with self._news:
            self._news.notify_all()
