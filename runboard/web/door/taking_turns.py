"""Who has how many workers: one sender has a few at a time, and what more it asks waits until one of them is done."""

import asyncio
from collections.abc import AsyncIterator, Sequence
from contextlib import AsyncExitStack, asynccontextmanager
from typing import Any


class Gone(Exception):
    """The sender has gone before its turn, or the server ends: nothing is to be answered."""


class Waits:
    """The turns of all senders, each known by a key; on one event loop."""

    def __init__(self) -> None:
        self._turns: dict[str, tuple[asyncio.Semaphore, list[int]]] = {}
        self._ended = asyncio.Event()

    @asynccontextmanager
    async def turn(self, keys: Sequence[tuple[str, int]], receive: Any) -> AsyncIterator[None]:
        """One turn of each key, of so many at a time; first come, first served. Raises ``Gone``: so what waits is never
        more than there are connections."""
        async with AsyncExitStack() as taken:
            for key, most in keys:
                await taken.enter_async_context(self._one(key, most, receive))
            yield

    def end(self) -> None:
        """The server ends: nobody waits any more."""
        self._ended.set()

    @asynccontextmanager
    async def _one(self, key: str, most: int, receive: Any) -> AsyncIterator[None]:
        turns, askers = self._turns.setdefault(key, (asyncio.Semaphore(most), []))
        askers.append(1)
        try:
            if turns.locked():
                await self._until_free(turns, receive)
            else:
                await turns.acquire()
            try:
                yield
            finally:
                turns.release()
        finally:
            askers.pop()
            if not askers:
                del self._turns[key]

    async def _until_free(self, turns: asyncio.Semaphore, receive: Any) -> None:
        free = asyncio.ensure_future(turns.acquire())
        ends = [asyncio.ensure_future(_disconnected(receive)), asyncio.ensure_future(self._ended.wait())]
        try:
            await asyncio.wait([free, *ends], return_when=asyncio.FIRST_COMPLETED)
            if any(task.done() for task in ends):
                raise Gone
        except BaseException:
            if free.done():
                turns.release()
            free.cancel()
            raise
        finally:
            for task in ends:
                task.cancel()


async def _disconnected(receive: Any) -> None:
    while (await receive())["type"] != "http.disconnect":
        pass
