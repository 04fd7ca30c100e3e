"""The storm: a real server that is frozen, killed and started again while phones press. Loopback only, bounded in time.

Only processes that were started here are stopped or ended.
"""

import os
import signal
import subprocess
import time
from contextlib import ExitStack, suppress
from dataclasses import dataclass, field
from multiprocessing import get_context
from multiprocessing.process import BaseProcess
from pathlib import Path
from random import Random
from threading import BrokenBarrierError
from typing import Any
from urllib.parse import urlsplit

from runboard.floor.changing.runs import Wish, close_run, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.run.log.event import write_moment
from runboard.run.refusal import Refused
from tests.faults import phones, watcher
from tests.faults.phones import HASTE, PEOPLE, Part, Shared
from tests.scenario import ALL_WEEK
from tests.serving import Running, running
from tests.vectors.scenes import rails, shelves, the_shop

FURTHEST_OFF = 600
A_ROUND = 5000  # presses: so long do two runs last
A_PRESS, A_KILL = 0.03, 4.0
# When nobody presses any more, what was left running ends, and what dries is dry.
REST = 10


@dataclass(frozen=True)
class Wanted:
    """How bad a storm. ``limit`` bounds the pressing, in seconds."""

    presses: int = 5000
    kills: int = 50
    phones: int = 8
    seed: int = 1
    limit: float = 1500

    @property
    def pause(self) -> float:
        """Between two presses of a phone, so that the server is up for a while between two kills."""
        return self.phones * max(A_PRESS, A_KILL * self.kills / self.presses)


@dataclass
class Happened:
    """What the storm did. ``ups`` are the stretches in which the server answered, ``frozen`` those in which it was
    stopped, in seconds of the wall clock."""

    wanted: Wanted
    place: Path
    pressed: int = 0
    kills: int = 0
    seconds: float = 0
    ups: list[tuple[float, float]] = field(default_factory=list)
    frozen: list[tuple[float, float]] = field(default_factory=list)
    exits: list[int | None] = field(default_factory=list)
    said: list[str] = field(default_factory=list)

    @property
    def data(self) -> Path:
        return self.place / "shop"


LEAST_WATCH = 0.5  # minutes: the book takes no shorter interval


def quick_shop() -> dict[str, Any]:
    """The small shop with people for every phone, in which what takes minutes takes seconds."""
    record = the_shop()
    hours = [{"days": ALL_WEEK, "from": "00:00", "to": "24:00"}]
    record["people"] = [
        {"key": key, "name": key.capitalize(), "access": "lead" if key == "ann" else "crew", "hours": hours}
        for key in PEOPLE
    ]
    record["products"] = [rails(), shelves()]
    for station in record["stations"]:
        if "watch_every_minutes" in station:
            station["watch_every_minutes"] = max(LEAST_WATCH, station["watch_every_minutes"] / HASTE)
    for product in record["products"]:
        for operation in product["operations"]:
            for one in (*operation["passes"], operation.get("wait") or {}):
                one.update({name: one[name] / HASTE for name in one if name.endswith("_minutes") and one[name]})
    return record


def storm(wanted: Wanted, place: Path) -> Happened:
    """Go through a storm in a folder; what the phones made of it lies there afterwards."""
    happened = Happened(wanted, place)
    _open_shop(happened)
    context = get_context("forkserver")
    context.set_forkserver_preload(["tests.faults.phones", "tests.faults.watcher"])
    shared = Shared(context.Value("i", 0), context.Barrier(wanted.phones + 1), context.Event())
    quiet = context.Event()
    started: list[BaseProcess] = []
    began = time.monotonic()
    with ExitStack() as first:
        server = _Server(happened, Random(wanted.seed), first)
        tokens = [server.running.pair() for _ in range(wanted.phones + 1)]
        for number, token in enumerate(tokens[1:]):
            part = _part(wanted, number, server.running.address, token, place)
            started.append(context.Process(target=phones.live, args=(part, shared)))
        watching = (server.running.address, tokens[0], PEOPLE[0], quiet, place)
        started.append(context.Process(target=watcher.watch, args=watching))
        try:
            for process in started:
                process.start()
            server.blow(shared, began + wanted.limit, started)
            _wait_until_drained(shared)
            happened.seconds = time.monotonic() - began
            time.sleep(REST)
            quiet.set()
            for process in started:
                process.join(timeout=60)
        finally:
            happened.pressed = shared.pressed.value
            happened.exits = [process.exitcode for process in started]
            for process in started:
                if process.is_alive():
                    process.kill()
                    process.join(timeout=10)
            server.end()
    return happened


def _open_shop(happened: Happened) -> None:
    store, workshop = open_workshop(happened.data)
    workshop.books.save(quick_shop(), workshop.clock.now())
    _open_runs(workshop, happened.wanted)
    came = {"until": write_moment(workshop.clock.now().replace(year=workshop.clock.now().year + 1, day=1))}
    record_events(workshop, [new_event(workshop, "person came", came, person=person) for person in PEOPLE])
    store.close()


def _open_runs(workshop: Workshop, wanted: Wanted) -> None:
    pieces = max(30, min(wanted.presses, A_ROUND) // 15)
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": pieces, "text": "12"}], pieces_a_tray=5), PEOPLE[0])
    open_run(workshop, Wish("shelf", [{"line": "1", "pieces": max(4, pieces // 8)}]), PEOPLE[0])


def _next_runs(happened: Happened) -> None:
    """A round is over: what may be finished is, and the next runs begin, beside the server that goes on."""
    store, workshop = open_workshop(happened.data)
    try:
        catch_up(workshop)
        for run in list(workshop.ledger.state.open_runs()):
            with suppress(Refused):  # something of it still runs, or is in hands
                close_run(workshop, run.id, "run finished", PEOPLE[0])
        _open_runs(workshop, happened.wanted)
    finally:
        store.close()


def _part(wanted: Wanted, number: int, address: str, token: str, place: Path) -> Part:
    share = wanted.presses // wanted.phones + (number < wanted.presses % wanted.phones)
    seed = wanted.seed * 1000 + number
    # The first is right, the next two are as far off as any, the others somewhere between.
    off = (0.0, FURTHEST_OFF, -FURTHEST_OFF)[number] if number < 3 else Random(seed).uniform(-1, 1) * FURTHEST_OFF
    person = PEOPLE[number % len(PEOPLE)]
    return Part(number, address, token, person, off, share, wanted.pause, seed, quick_shop(), place)


def _wait_until_drained(shared: Shared) -> None:
    """The faults are over; all that the phones hold is sent, within two minutes."""
    try:
        shared.drained.wait(timeout=120)
    except BrokenBarrierError:
        pass  # the report says who did not come to its end
    finally:
        shared.over.set()


class _Server:
    """The server of the storm, on one port and one folder from its first start to its last."""

    def __init__(self, happened: Happened, random: Random, stack: ExitStack) -> None:
        self._happened = happened
        self._random = random
        self._stack = stack
        self._port = "0"
        self._since = 0.0
        self._start()

    def _start(self) -> None:
        self._own = self._stack.enter_context(ExitStack())
        data = str(self._happened.data)
        self.running: Running = self._own.enter_context(running("serve", "--data", data, port=self._port))
        self._port = str(urlsplit(self.running.address).port)
        self._since = time.time()

    def blow(self, shared: Shared, until: float, others: list[BaseProcess]) -> None:
        """Kill and freeze at moments that chance chooses, until everything is pressed, time is up, or one has died."""
        wanted = self._happened.wanted
        gap = wanted.presses / (wanted.kills + 1)
        rounds = list(range(A_ROUND, wanted.presses, A_ROUND))
        kill_at = [gap * (number + self._random.uniform(-0.4, 0.4)) for number in range(1, wanted.kills + 1)]
        while shared.pressed.value < wanted.presses and time.monotonic() < until:
            if any(one.exitcode for one in others):
                shared.drained.abort()
                return
            if rounds and shared.pressed.value >= rounds[0]:
                rounds.pop(0)
                _next_runs(self._happened)
            if kill_at and shared.pressed.value >= kill_at[0]:
                kill_at.pop(0)
                self._kill()
            elif self._random.random() < 0.006:
                self._freeze(self._random.choice((0.3, 0.8, 2, 4)))
            time.sleep(0.05)
        if time.monotonic() < until:  # else it is judged by what was reached
            for _ in kill_at:
                self._kill()

    def _kill(self) -> None:
        self.running.kill()
        self._down()
        self._happened.kills += 1
        time.sleep(self._random.choice((0, 0, 0.2, 1)))
        self._start()

    def _freeze(self, seconds: float) -> None:
        began = time.time()
        os.kill(self.running.process.pid, signal.SIGSTOP)
        try:
            time.sleep(seconds)
        finally:
            os.kill(self.running.process.pid, signal.SIGCONT)
        self._happened.frozen.append((began, time.time()))

    def _down(self) -> None:
        self._happened.ups.append((self._since, time.time()))
        self._happened.said += self.running.said
        self._own.close()

    def end(self) -> None:
        """End it, as Ctrl-C does."""
        if self.running.process.poll() is None:
            try:
                self.running.interrupt()
            except subprocess.TimeoutExpired:
                self._happened.said.append("it did not end within ten seconds\n")
        self._down()
