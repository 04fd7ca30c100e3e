"""From the moment when something falls due until it is heard: by 50 streams, and on three open pages.

First the pages' own timers are off, so that only the server's word can ring them; then the server is off, and only
their own timers can. At the end 200 peers open a connection and say nothing, and a page must not feel it.
"""

import os
import platform
import ssl
import tempfile
import time
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from statistics import median, quantiles
from typing import Any
from urllib.parse import urlsplit

from playwright.sync_api import Browser, Page, sync_playwright

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.opening import open_workshop
from runboard.run.log.event import write_moment
from tests.bench.listening import Crowd
from tests.bench.now import Row
from tests.bench.silent import Fresh, saying_nothing
from tests.browser.conftest import FLAGS, PHONE
from tests.pairing import browser_cookie
from tests.phone import Phone
from tests.scenario import shop
from tests.serving import Running, running

STREAMS, PAGES, SILENT = 50, 3, 200
ALARMS, ALONE = 40, 15
GAP, AHEAD = 0.77, 4.0
GOAL_MS, GOAL_ALONE_MS, GOAL_TIMES = 250, 1250, 2
# Writes down when each further alert stands on the page. While ``timersOff``, nothing happens on it by time alone.
PROBE = """
window.shown = [];
window.timersOff = false;
const { setTimeout: once, setInterval: often } = window;
window.setInterval = (does, ms, ...more) => often(() => { if (!window.timersOff) does(...more); }, ms);
window.setTimeout = (does, ms = 0, ...more) => once(() => { if (!window.timersOff || ms < 1000) does(...more); }, ms);
addEventListener("DOMContentLoaded", () => new MutationObserver(() => {
  const count = document.querySelectorAll("[role=alert] > section, section.hold-over").length;
  while (window.shown.length < count) window.shown.push(Date.now());
}).observe(document.body, { childList: true, subtree: true }));
"""


def main(quick: bool = False) -> int:
    """Print the table; 1 if a goal is not met."""
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    print(f"{STREAMS} streams, {PAGES} pages in Chromium, {SILENT} silent peers, all on this computer")
    rows = []
    for row in measure(10 if quick else ALARMS, 5 if quick else ALONE, 50 if quick else 200):
        print(row, flush=True)
        rows.append(row)
    return int(any(row.met is False for row in rows))


def measure(alarms: int, alone: int, times: int) -> Iterator[Row]:
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place, ExitStack() as stack:
        data = Path(place)
        _open_shop(data, alarms + alone)
        server = stack.enter_context(running("serve", "--data", str(data)))
        pages = stack.enter_context(open_pages(server))
        lead = Phone(server.address)
        lead.state()
        with Crowd(server.address, [server.pair() for _ in range(5)], STREAMS) as crowd:
            yield from idle(crowd, lead, times)
            yield from told_by_the_server(crowd, pages, lead, alarms)
        yield from rung_alone(pages, lead, server, alarms, alone)
        again = stack.enter_context(running("serve", "--data", str(data)))
        yield from beside_silent_peers(Fresh(_port(again.address), again.pair()), "http", times)
        secure = _port(next(line for line in again.said if "https://" in line).split()[-1])
        trusts = ssl.create_default_context(cafile=data / "certificates" / "authority.pem")
        yield from beside_silent_peers(Fresh(secure, again.pair(), trusts), "https", times)


def idle(crowd: Crowd, lead: Phone, times: int) -> Iterator[Row]:
    """The baseline: what a poll and a press take with nothing else going on."""
    polls = Fresh(_port(lead.at), lead.token).polls(times)
    yield Row("baseline: a poll that finds nothing new, p50", median(polls))
    yield Row("baseline: the same, p99", percentile(polls, 99))
    heard = []
    for number in range(max(10, times // 4)):
        pressed = time.time()
        before = crowd.counts("changed")
        lead.press("note written", {"text": f"note {number}"}, run="r1")
        crowd.wait_for("changed", before, 1)
        heard += [1000 * (at - pressed) for at in crowd.last("changed")]
    yield Row(f"baseline: press → told to {STREAMS} streams, p99", percentile(heard, 99))


def told_by_the_server(crowd: Crowd, pages: list[Page], lead: Phone, alarms: int) -> Iterator[Row]:
    """Due moments, one after another, with the pages' own timers off."""
    for page in pages:
        page.evaluate("window.timersOff = true")
    due = hold_trays(lead, range(1, alarms + 1))
    _wait_until(pages, due[-1] + 2)
    told = crowd.due()
    late = [
        1000 * (at - moment) for key, moment in zip(sorted(told, key=_number), due, strict=True) for at in told[key]
    ]
    assert len(late) == alarms * STREAMS, f"{len(late)} of {alarms * STREAMS} were told"
    yield Row(f"due → received by {STREAMS} streams, p50", median(late))
    yield Row("the same, p99", percentile(late, 99), None, GOAL_MS)
    shown = lateness(pages, due, 0)
    yield Row(f"due → shown on {PAGES} pages, their own timers off, p50", median(shown))
    yield Row("the same, p99", percentile(shown, 99), None, GOAL_MS)


def rung_alone(pages: list[Page], lead: Phone, server: Running, alarms: int, alone: int) -> Iterator[Row]:
    """The server is gone; what the pages know already rings by their own clocks."""
    for page in pages:
        page.evaluate("window.timersOff = false")
    due = hold_trays(lead, range(alarms + 1, alarms + alone + 1))
    pages[0].wait_for_timeout(1500)
    server.kill()
    _wait_until(pages, due[-1] + 2)
    shown = lateness(pages, due, alarms)
    yield Row(f"server gone: due → shown on {PAGES} pages, p50", median(shown))
    yield Row("the same, p99", percentile(shown, 99), None, GOAL_ALONE_MS)


def beside_silent_peers(fresh: Fresh, what: str, times: int) -> Iterator[Row]:
    """Phones that left the Wi-Fi in the middle of connecting: they open TCP and say nothing."""
    fresh.pages(10)
    before, during = list[float](), list[float]()
    for _ in range(10):  # by turns, so that both sides meet the same weather
        before += fresh.pages(times // 10)
        with saying_nothing(fresh.port, SILENT):
            during += fresh.pages(times // 10)
    yield Row(f"Now and its state by {what}, beside {SILENT} silent peers", median(during), median(before), GOAL_TIMES)
    yield Row("the same, p95", percentile(during, 95), percentile(before, 95), GOAL_TIMES)


@contextmanager
def open_pages(server: Running) -> Iterator[list[Page]]:
    """Three phones with Now open and at rest."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path="/usr/bin/chromium", args=FLAGS)
        pages = [_open_page(browser, server) for _ in range(PAGES)]
        pages[0].wait_for_timeout(3500)
        yield pages
        browser.close()


def _open_page(browser: Browser, server: Running) -> Page:
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True, timezone_id="Europe/Berlin")
    context.add_cookies([browser_cookie(server.pair())])
    context.add_init_script(PROBE)
    page = context.new_page()
    page.goto(server.address)
    page.get_by_role("heading", level=1).first.wait_for()
    return page


def hold_trays(lead: Phone, trays: range) -> list[float]:
    """Hold one tray after another, each until a moment of its own; answers these, in seconds of the wall clock."""
    first = datetime.now(UTC) + timedelta(seconds=AHEAD)
    until = [first + timedelta(seconds=GAP * number) for number in range(len(trays))]
    # Cut to whole milliseconds, as the log keeps them.
    until = [one.replace(microsecond=one.microsecond // 1000 * 1000) for one in until]
    held = [
        lead.event(
            "pieces held", {"why": "crack", "until": write_moment(one)}, run="r1", tray=str(tray), operation="cut"
        )
        for tray, one in zip(trays, until, strict=True)
    ]
    assert all(one["answer"] == "accepted" for one in lead.send(*held))
    return [one.timestamp() for one in until]


def lateness(pages: list[Page], due: list[float], before: int) -> list[float]:
    """How many milliseconds after its moment each alert stood on each page."""
    found = []
    for page in pages:
        shown: list[float] = page.evaluate("window.shown")
        assert len(shown) == before + len(due), f"{len(shown) - before} of {len(due)} alerts were shown"
        found += [at - 1000 * moment for at, moment in zip(shown[before:], due, strict=True)]
    return found


def percentile(some: list[float], wanted: int) -> float:
    """The p-th percentile of many."""
    return quantiles(some, n=100, method="inclusive")[wanted - 1]


def _wait_until(pages: list[Page], moment: float) -> None:
    pages[0].wait_for_timeout(max(0.0, 1000 * (moment - time.time())))


def _port(address: str) -> int:
    return urlsplit(address).port or 0


def _number(key: str) -> int:
    """The tray that an alert's id names: 'hold over|r1|4|cut|…'."""
    return int(key.split("|")[2])


def _open_shop(data: Path, trays: int) -> None:
    store, workshop = open_workshop(data)
    workshop.books.save(shop(), workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": trays}], pieces_a_tray=1, start=trays), "ann")
    came: dict[str, Any] = {"until": write_moment(workshop.clock.now() + timedelta(hours=3))}
    record_events(workshop, [new_event(workshop, "person came", came, person="ann")])
    store.close()
