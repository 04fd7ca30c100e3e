"""The speed and size of Now on a real server on loopback, side by side with an empty page of the same server.

Samples are interleaved on kept connections, so that both sides meet the same weather; the middle one of each is told.
"""

import os
import platform
import tempfile
import time
from collections.abc import Iterator
from contextlib import ExitStack
from dataclasses import dataclass
from pathlib import Path
from statistics import median, quantiles
from typing import Any

from runboard.demo.book import LEAD
from runboard.demo.make import make_demo
from runboard.floor.warm import catch_up
from runboard.opening import open_workshop
from runboard.run.fold.fold import apply, fold
from runboard.run.fold.state import ShopState
from tests.bench.asking import Asking
from tests.bench.big_run import A_TRAY, BOARD, CUT, EVENTS, FINISHED_RUNS, PIECES, SANDED, TRAYS, make_big_run
from tests.bench.first_load import first_load
from tests.bench.server import running_on
from tests.serving import Running

FIRST_LOAD_KB = 60
REWOUND = 500


@dataclass(frozen=True)
class Row:
    """One line of the table. ``ours`` and ``against`` are in milliseconds, or say themselves what they are."""

    what: str
    ours: float
    against: float | None = None
    goal: float | None = None
    unit: str = "ms"

    @property
    def ratio(self) -> float | None:
        return self.ours / self.against if self.against else None

    @property
    def met(self) -> bool | None:
        measured = self.ratio if self.against else self.ours
        return None if self.goal is None or measured is None else measured <= self.goal

    def __str__(self) -> str:
        against = f"{self.against:8.2f}" if self.against else " " * 8
        ratio = f"{self.ratio:6.2f}×" if self.ratio else " " * 7
        goal = "" if self.goal is None else f"≤ {self.goal:g}" + ("×" if self.against else f" {self.unit}")
        met = {True: "met", False: "NOT MET", None: ""}[self.met]
        return f"{self.what:<58}{self.ours:9.2f} {self.unit:<3}{against}{ratio}  {goal:<11}{met}"


def main(quick: bool = False) -> int:
    """Measure everything and print it; 1 where a goal is not met."""
    times, taps = (60, 600) if quick else (300, 1000)
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}")
    print(f"A run of {PIECES} pieces, {TRAYS} trays, {EVENTS} events; the middle of {times} samples")
    print(f"{'':<58}{'ours':>9}    {'against':>8}{'ratio':>7}  goal")
    rows = []
    for row in measure(times, taps):
        print(row, flush=True)
        rows.append(row)
    return int(any(row.met is False for row in rows))


def measure(times: int, taps: int) -> Iterator[Row]:
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place, ExitStack() as open_servers:
        folder = Path(place)
        run = make_big_run(folder / "one")
        short_run = make_big_run(folder / "short")
        long_run = make_big_run(folder / "long", FINISHED_RUNS)
        yield from in_process(folder / "one")
        with running_on(folder / "one") as server:
            ours = Asking(server, run)
            yield from unchanged(ours, times)
            yield from after_taps(ours, taps)
            yield from late_taps(ours, min(taps, 40))
        # What the log's length costs is measured on two servers at once, so without planners; and both are there before
        # either is asked, since a connection on which nothing is asked for some seconds is closed.
        two = [open_servers.enter_context(running_on(folder / one, planner=False)) for one in ("short", "long")]
        short, long = Asking(two[0], short_run), Asking(two[1], long_run)
        yield from with_finished_runs(short, long, times)
        make_demo(folder / "demo")
        demo = open_servers.enter_context(running_on(folder / "demo"))
        yield from sizes(demo)


def sizes(demo: Running) -> Iterator[Row]:
    """What a phone fetches of the demo that has never been there."""
    at_once, later = first_load(demo, LEAD)
    largest = sorted(at_once.items(), key=lambda one: -one[1])[:6]
    yield Row(
        f"first load of Now, {len(at_once)} files, gzipped", sum(at_once.values()) / 1000, None, FIRST_LOAD_KB, "KB"
    )
    print("    the largest: " + ", ".join(f"{part.split('/')[-1] or '/'} {size / 1000:.1f}" for part, size in largest))
    yield Row(
        f"and with every sheet opened, {len(later)} files more",
        sum((*at_once.values(), *later.values())) / 1000,
        unit="KB",
    )


def unchanged(ours: Asking, times: int) -> Iterator[Row]:
    """The state that has not changed, whole and as 304."""
    ours.wait_for_a_plan()
    plain, packed, nothing_new, empty = [], [], [], []
    for _ in range(times):
        empty.append(ours.get("/empty"))
        plain.append(ours.get(ours.state))
        packed.append(ours.get(ours.state, {"Accept-Encoding": "gzip"}))
        tag = ours.state_tag()
        nothing_new.append(ours.get(ours.state, {"If-None-Match": tag}, wanted=304))
    yield Row(
        f"state unchanged, {ours.bytes // 1000} KB of JSON, against an empty page", median(plain), median(empty), 2
    )
    yield Row("the same, gzipped as a browser asks", median(packed), median(empty), 2)
    yield Row("poll that finds nothing new (304)", median(nothing_new), median(empty), 1.5)


def after_taps(ours: Asking, taps: int) -> Iterator[Row]:
    """The first answer after each of many taps, and the taps themselves."""
    tapped, first, packed, empty = [], [], [], []
    for number, tap in enumerate(ordinary_taps(ours, taps)):
        tapped.append(ours.post([tap]))
        headers = {"Accept-Encoding": "gzip"} if number % 2 else {}
        (packed if number % 2 else first).append(ours.get(ours.state, headers))
        empty.append(ours.get("/empty"))
    yield Row(f"state, first answer after each of {len(tapped)} taps", median(first), median(empty), 5)
    yield Row("the same, gzipped as a browser asks", median(packed), median(empty), 5)
    yield Row("tap → committed, folded, answered: p50", median(tapped))
    yield Row("tap → committed, folded, answered: p95", quantiles(tapped, n=20)[18])


def ordinary_taps(ours: Asking, taps: int) -> Iterator[dict[str, Any]]:
    """Hand work beside the running CNC: begun, put aside and taken up again, the CNC looked at, done, a count put right."""
    cnc = f"cut/{CUT * A_TRAY // BOARD + 1}"
    again = ("load put aside", "load started", "watch checked", "load put aside", "load started")
    trays = range(SANDED + 1, CUT + 1)
    spread = max(1, taps // (len(trays) * 3 * len(again)))
    for step in ("clean", "sand:120", "sand:180"):
        for tray in trays:
            load = f"{step}/{tray}"
            for kind in ("load started", *again * spread, "load done"):
                yield ours.tap(kind, load=cnc if kind == "watch checked" else load)
            yield ours.tap("pieces counted", {"good": A_TRAY}, tray=str(tray), load=load, operation=step)


def late_taps(ours: Asking, times: int) -> Iterator[Row]:
    """The wood of a tray, entered late: it goes in front of the last 500 presses."""
    at = ours.pressed_at[-REWOUND]
    rewinding = []
    for _ in range(times):
        rewinding.append(ours.post([ours.tap("wood noted", {"wood": "ash"}, tray="1", at=at)]))
        ours.get(ours.state)
    yield Row(f"a late tap that rewinds {REWOUND} events", median(rewinding))


def with_finished_runs(short: Asking, long: Asking, times: int) -> Iterator[Row]:
    """The same requests with 200 finished runs in the log, against none."""
    sides: dict[str, tuple[list[float], list[float]]] = {
        "unchanged": ([], []),
        "after a tap": ([], []),
        "tap": ([], []),
    }
    for number in range(times):
        for side, asking in enumerate((long, short)):
            kind = "load started" if number % 2 else "load put aside"
            tap = asking.tap(kind if number else "load started", load=f"clean/{SANDED + 1}")
            sides["tap"][side].append(asking.post([tap]))
            sides["after a tap"][side].append(asking.get(asking.state))
            sides["unchanged"][side].append(asking.get(asking.state))
    for what, (many, none) in sides.items():
        name = "tap answered" if what == "tap" else f"state {what}"
        yield Row(f"{name}, with {FINISHED_RUNS} finished runs, against none", median(many), median(none), 1.2)


def in_process(folder: Path) -> Iterator[Row]:
    """The fold without a server."""
    store, workshop = open_workshop(folder)
    catch_up(workshop)
    events = workshop.ledger.held
    whole = []
    for _ in range(3):
        began = time.perf_counter()
        fold(workshop.book, events)
        whole.append(1e6 * (time.perf_counter() - began) / len(events))
    state, each = ShopState(), []
    for event in events:
        began = time.perf_counter()
        state = apply(state, event, workshop.book)
        each.append(1e6 * (time.perf_counter() - began))
    store.close()
    yield Row("the fold, an event, over all", min(whole), unit="µs")
    yield Row("one event more, p95", quantiles(each, n=20)[18], unit="µs")
