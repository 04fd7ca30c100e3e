"""Every page of a shop with a run of 500 and of 2,000 pieces, beside an empty page, and presses beside twelve reloads.

The pages come from the URL map. Each is asked for right after another plan is there, and again; the longest and the middle
are told. A page that is being worked out is asked for again until it is whole: how long that took stands beside it.
"""

import os
import platform
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from statistics import median, quantiles

from runboard.app import build
from runboard.house import Settings
from tests.bench.asking import Asking
from tests.bench.long_run import drying, in_hand, make_long_run, on_machine
from tests.bench.server import running_on
from tests.serving import Running

GOALS = {500: 200, 2000: 500}
PRESS_GOAL, READERS, PRESSES = 50, 12, 60
# What a rule of the URL map asks for; one that is not here needs something that this shop has not got.
ASKED: dict[str, tuple[str, ...]] = {
    "plan_try.look": ("", "?run=r1&what=times&operation=sand&kind=&per_cent=80"),
    "plan_opening.new_run": ("?product=rails", "?copy=r1"),
    "state.shop_state": ("?person=robin",),
}
LEFT_OUT = (
    "static_files.",
    "pictures.",
    "push.",
    "welcome.",
    "guests.",
    "pairing.",
    "helper.card",
    "offline.",
    "helper.",
    "calendar.put_in",
)
NOT_YET = "Working it out"


@dataclass(frozen=True)
class Timed:
    """One page: its milliseconds, every time that it was asked for, and the seconds until it was whole."""

    path: str
    took: tuple[float, ...]
    kilobytes: float
    whole_after: float


def main(quick: bool = False) -> int:
    """Measure and print; 1 where a goal is not met."""
    load = f"load {os.getloadavg()[0]:.1f} before" if hasattr(os, "getloadavg") else ""
    print(f"{platform.machine()}, {os.cpu_count()} cores, {load}, Python {platform.python_version()}")
    return max([_of_size(pieces, 2 if quick else 4) for pieces in ((500,) if quick else GOALS)])


def _of_size(pieces: int, rounds: int) -> int:
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place:
        run = make_long_run(Path(place), pieces)
        paths = list(_paths(Path(place), pieces, run))
        with running_on(Path(place)) as server:
            print(f"\nA run of {pieces} pieces: {len(paths)} pages, ms; {rounds} times, each right after another plan")
            slow = _pages(Asking(server, run), paths, pieces, rounds)
            return int(slow + _presses(server, run, pieces) > 0)


def _paths(data: Path, pieces: int, run: str) -> Iterator[str]:
    """Each page of the app by GET, with what this shop has got for its arguments."""
    house = build(Settings(data, plans=False))
    known = {
        "run": run, "key": run, "tray": str(in_hand(pieces)), "step": "oil", "load": on_machine(pieces),
        "operation": "sand", "where": "runs", "thing": "stations", "station": "cnc",
    }  # fmt: skip
    other = {
        "plan.product": {"key": "rails"},
        "shop.one": {"key": "cnc"},
        "calendar.of_wait": {"tray": str(drying(pieces))},
    }
    for rule in sorted(house.app.url_map.iter_rules(), key=str):
        if "GET" in (rule.methods or ()) and not rule.endpoint.startswith(LEFT_OUT):
            facts = known | other.get(rule.endpoint, {})
            if rule.arguments <= facts.keys():
                adapter = house.app.url_map.bind("127.0.0.1")
                path = adapter.build(rule.endpoint, {name: facts[name] for name in rule.arguments})
                yield from (path + more for more in ASKED.get(rule.endpoint, ("",)))
    house.close()


def _pages(ours: Asking, paths: list[str], pieces: int, rounds: int) -> int:
    """How many are slower than the goal, the empty page's own time told beside them."""
    found: dict[str, list[Timed]] = {path: [] for path in paths}
    empty: list[float] = []
    for number in range(rounds):
        _press(ours, pieces, number)
        ours.wait_for_a_plan(quiet=1)
        for path in paths:
            empty.append(ours.get("/empty"))
            found[path].append(_whole(ours, path))
    goal, base = GOALS[pieces], median(empty)
    worst = {path: max(took for one in some for took in one.took) for path, some in found.items()}
    for path, some in sorted(found.items(), key=lambda one: -worst[one[0]]):
        middle = median(one.took[-1] for one in some)
        whole = max(one.whole_after for one in some)
        waited = f", whole after {whole:.1f} s" if whole else ""
        met = "met" if worst[path] <= goal else "NOT MET"
        print(
            f"  {path:<62.62}{middle:8.1f}{worst[path]:8.1f}{base:6.1f}{some[0].kilobytes:8.0f} KB  ≤ {goal} {met}{waited}"
        )
    return sum(one > goal for one in worst.values())


def _whole(ours: Asking, path: str) -> Timed:
    """A page until it says nothing any more of being worked out."""
    began, took = time.monotonic(), []
    while True:
        took.append(ours.get(path))
        if NOT_YET not in ours.text or time.monotonic() - began > 60:
            break
        time.sleep(0.25)
    took.append(ours.get(path))
    waited = time.monotonic() - began if len(took) > 2 else 0.0
    return Timed(path, tuple(took), len(ours.text) / 1000, waited)


def _press(ours: Asking, pieces: int, number: int) -> float:
    """Hands go to a tray, or are taken off: what is left to plan is another each time."""
    return ours.post([ours.tap("load put aside" if number % 2 else "load started", load=f"clean/{in_hand(pieces)}")])


def _presses(server: Running, run: str, pieces: int) -> int:
    """Presses by themselves, beside twelve people who reload the Plan page once a second, and beside twelve who reload it
    as fast as it comes."""
    missed = 0
    for what, readers, pause, goal in (
        ("nobody else", 0, 0.0, PRESS_GOAL), ("twelve reloads a second", READERS, 1.0, PRESS_GOAL),
        ("twelve reloads over and over", READERS, 0.0, None),
    ):  # fmt: skip
        took, reloads = _pressed_beside(server, run, pieces, readers, pause)
        p95 = quantiles(took, n=20)[18]
        met = "" if goal is None else f"  ≤ {goal} {'met' if p95 <= goal else 'NOT MET'}"
        print(
            f"  presses beside {what:<47}{median(took):8.1f}{p95:8.1f}{max(took):8.1f} p50, p95, max{met}; {reloads} reloads"
        )
        missed += int(goal is not None and p95 > goal)
    return missed


def _pressed_beside(server: Running, run: str, pieces: int, readers: int, pause: float) -> tuple[list[float], int]:
    is_over, counted = threading.Event(), [0] * readers
    threads = [
        threading.Thread(target=_reload, args=(server, run, pause, is_over, counted, at)) for at in range(readers)
    ]
    for thread in threads:
        thread.start()
    ours, took = Asking(server, run), list[float]()
    until = time.monotonic() + 90
    try:
        while len(took) < PRESSES and (len(took) % 2 or time.monotonic() < until):
            took.append(_press(ours, pieces, len(took)))
            time.sleep(0.2)
    finally:
        is_over.set()
        for thread in threads:
            thread.join()
    return took, sum(counted)


def _reload(server: Running, run: str, pause: float, is_over: threading.Event, counted: list[int], at: int) -> None:
    with suppress(OSError):  # a reload that is given up at the end
        reader = Asking(server, run)
        while not is_over.is_set():
            reader.get("/plan")
            counted[at] += 1
            is_over.wait(pause)
