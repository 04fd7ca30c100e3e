"""The event stream: a hint to poll, that never holds anything up."""

import asyncio
import threading
from pathlib import Path
from typing import Any

import httpx
import pytest

from runboard.web.door import stream
from runboard.web.door.stream import Streams, serve_stream
from tests.pairing import cookies
from tests.serving import running
from tests.web.serving_here import until


class Page:
    """An open page at the other end of a stream, without a network."""

    def __init__(self) -> None:
        self.got: list[bytes] = []
        self.status = 0
        self.ended = False
        self.gone = asyncio.Event()
        self.heard = asyncio.Condition()

    async def receive(self) -> dict[str, Any]:
        await self.gone.wait()
        return {"type": "http.disconnect"}

    async def send(self, message: dict[str, Any]) -> None:
        async with self.heard:
            if message["type"] == "http.response.start":
                self.status = message["status"]
            else:
                self.got.append(message["body"])
                self.ended = not message.get("more_body", False)
            self.heard.notify_all()

    async def until(self, messages: int) -> None:
        async with self.heard:
            await asyncio.wait_for(self.heard.wait_for(lambda: len(self.got) >= messages), 5)


async def opened(streams: Streams, device: str = "") -> tuple[Page, "asyncio.Task[None]"]:
    page = Page()
    task = asyncio.create_task(serve_stream(streams, page.receive, page.send, device))
    await page.until(1)
    return page, task


def test_every_open_page_is_told_from_any_thread() -> None:
    async def scene() -> list[bytes]:
        streams = Streams()
        pages = [await opened(streams) for _ in range(2)]

        threading.Thread(target=lambda: streams.changed(12)).start()
        await asyncio.gather(*(page.until(2) for page, _ in pages))

        streams.end()
        await asyncio.gather(*(task for _, task in pages))
        return [page.got[1] for page, _ in pages]

    assert asyncio.run(scene()) == [b'event: changed\ndata: {"seq":12}\n\n'] * 2


def test_what_fell_due_is_told_with_its_words() -> None:
    async def scene() -> bytes:
        streams = Streams()
        page, task = await opened(streams)
        streams.due({"id": "end", "kind": "machine end"})
        await page.until(2)
        streams.end()
        await task
        return page.got[1]

    assert asyncio.run(scene()) == b'event: due\ndata: {"id":"end","kind":"machine end"}\n\n'


def test_silence_is_broken_by_a_heartbeat(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(stream, "HEARTBEAT_SECONDS", 0.01)

    async def scene() -> list[bytes]:
        streams = Streams()
        page, task = await opened(streams)
        await page.until(3)
        streams.end()
        await task
        return page.got[1:3]

    assert asyncio.run(scene()) == [b": here\n\n"] * 2


def test_a_page_that_goes_away_is_forgotten() -> None:
    async def scene() -> bool:
        streams = Streams()
        page, task = await opened(streams)
        page.gone.set()
        await asyncio.wait_for(task, 5)
        streams.changed(1)
        return len(page.got) == 2 and page.ended  # the hello and the end, and nothing after

    assert asyncio.run(scene())


def test_a_page_that_reads_too_slowly_loses_the_oldest_hints_only() -> None:
    async def scene() -> list[bytes]:
        listener = Streams().open()
        assert listener is not None
        for number in range(100):
            listener.offer(b"%d" % number)
        return [listener.queue.get_nowait() for _ in range(listener.queue.qsize())]

    kept = asyncio.run(scene())

    assert kept[-1] == b"99"
    assert len(kept) < 100


def test_of_one_devices_pages_the_oldest_goes_and_the_other_devices_stay() -> None:
    async def scene() -> tuple[bool, list[bool], bool]:
        streams = Streams()
        other, _ = await opened(streams, "other")
        first, going = await opened(streams, "greedy")
        later = [(await opened(streams, "greedy"))[0] for _ in range(stream.MOST_A_DEVICE)]
        await asyncio.wait_for(going, 5)
        ended = (first.ended, [page.ended for page in later], other.ended)
        streams.end()
        return ended

    assert asyncio.run(scene()) == (True, [False] * stream.MOST_A_DEVICE, False)


def test_after_the_end_nobody_is_let_in() -> None:
    async def scene() -> int:
        streams = Streams()
        streams.end()
        page = Page()
        await serve_stream(streams, page.receive, page.send)
        return page.status

    assert asyncio.run(scene()) == 503


def test_ctrl_c_ends_the_server_soon_though_pages_are_open(tmp_path: Path) -> None:
    with (
        running("serve", "--data", str(tmp_path)) as server,
        httpx.Client(base_url=server.address, cookies=cookies(server.pair())) as client,
        client.stream("GET", "/stream") as answer,
    ):
        chunks = answer.iter_text()
        first = next(chunks)

        took = server.interrupt()

        assert first.startswith("retry:")
        assert answer.headers["content-type"].startswith("text/event-stream")
        assert "".join(chunks) == ""
        assert server.process.returncode == 0
        assert took < 5
        assert until(lambda: len(server.said) >= 6)  # what reads them may be behind
        assert len(server.said) == 6  # the addresses, how a phone pairs and trusts, and nothing else


def test_the_stream_is_closed_to_another_host(tmp_path: Path) -> None:
    with running("serve", "--data", str(tmp_path)) as server:
        answer = httpx.get(f"{server.address}stream", headers={"Host": "shop.example"})

    assert answer.status_code == 400
