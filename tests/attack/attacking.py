"""``python -m tests.attack [NAME …]``: each attack on a server of its own, with a phone beside it, and a table.

For each: how long the phone's presses took and how many were refused; the most memory over idle; how long the server took
to stop under it and to start again; what else must not be.
"""

import argparse
import contextlib
import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from tests.attack.attacks import ATTACKS, Attack
from tests.attack.memory import Memory
from tests.attack.scene import Scene
from tests.attack.victim import Victim
from tests.phone import Phone
from tests.serving import Running, running

IDLE, AFTERWARDS = 3.0, 2.0
P95_MS, MEMORY_MB, STOP_S, RESTART_S = 250, 150, 3.0, 3.0
_MOST_STOP = 30.0


@dataclass(frozen=True)
class Outcome:
    """What an attack came to. A server that did not start again took infinitely long."""

    name: str
    scene: Scene
    over_idle: float
    children: float
    stopped: float
    started: float

    @property
    def refused(self) -> list[str]:
        busy = ATTACKS[self.name].may_be_busy
        return [why for why in self.scene.victim.refused if not (busy and why.startswith("503"))]

    def failings(self) -> Iterator[str]:
        """What is beyond the goals, as sentences."""
        victim = self.scene.victim
        if victim.share(0.95) > P95_MS and not ATTACKS[self.name].may_be_busy:
            yield f"the phone's p95 {victim.share(0.95):.0f} ms"
        if self.refused:
            yield f"{len(self.refused)} presses refused ({self.refused[0]})"
        if self.over_idle > MEMORY_MB:
            yield f"{self.over_idle:.0f} MB over idle"
        if self.stopped > STOP_S:
            yield f"stops in {self.stopped:.1f} s"
        if self.started > RESTART_S:
            yield f"starts in {self.started:.1f} s"
        yield from dict.fromkeys(self.scene.wrong)


def attack(name: str, whole: bool = True) -> Outcome:
    """Make one attack, in a folder of its own."""
    one = ATTACKS[name]
    with tempfile.TemporaryDirectory(prefix="runboard-attack-") as made:
        data = Path(made) / "shop"
        data.mkdir()
        one.shop(data)
        with _server(data, one) as server, Memory(server.process.pid) as memory:
            scene = _scene(server, data, one, memory, whole)
            over_idle, children, stopped = memory.over_idle, memory.children, _stop(server)
            scene.kept.close()
        return Outcome(name, scene, over_idle, children, stopped, _start_again(data, one))


def _scene(server: Running, data: Path, one: Attack, memory: Memory, whole: bool) -> Scene:
    with Victim(server.address, server.pair("crew")) as victim:
        scene = Scene(server, data, victim, whole)
        time.sleep(IDLE)
        memory.call_idle()
        victim.begin_anew()
        scene.suffer(one.does)
        time.sleep(AFTERWARDS)
    return scene


@contextlib.contextmanager
def _server(data: Path, one: Attack) -> Iterator[Running]:
    with running("serve", "--data", str(data), planner=one.planner) as server:
        server.data = data
        yield server


def _stop(server: Running) -> float:
    """Seconds from SIGTERM to its end; it is killed where it does not come to one."""
    began = time.monotonic()
    server.process.terminate()
    try:
        server.process.wait(_MOST_STOP)
    except subprocess.TimeoutExpired:
        server.kill()
    return time.monotonic() - began


def _start_again(data: Path, one: Attack) -> float:
    """Seconds until the state is answered on the same folder."""
    began = time.monotonic()
    try:
        with _server(data, one) as server:
            Phone(server.address).state()
            return time.monotonic() - began
    except (AssertionError, OSError):
        return float("inf")


def table(outcomes: Sequence[Outcome]) -> Iterator[str]:
    """The lines to print."""
    yield "attack        presses    p50    p95     max  refused  MB over idle (children)   stop  start   5xx"
    for one in outcomes:
        victim, wrong = one.scene.victim, sum(count for status, count in one.scene.answers.items() if status >= 500)
        yield (
            f"{one.name:<13} {len(victim.times):>7} {victim.share(0.5):>6.0f} {victim.share(0.95):>6.0f} {victim.share(1):>7.0f} {len(one.refused):>8}"
            f" {one.over_idle:>13.0f} {f'({one.children:.0f})':>10} {one.stopped:>6.1f} {one.started:>6.1f} {wrong:>5}"
        )
        yield f"              {'; '.join([ATTACKS[one.name].about, *one.scene.remarks])}"
        yield from (f"  NOT HELD    {line[:200]}" for line in one.failings())
    yield (
        f"goals: p95 {P95_MS} ms, refused 0, memory {MEMORY_MB} MB over idle, stop {STOP_S:.0f} s, start {RESTART_S:.0f} s, "
        f"5xx none but 503 and 507 with a sentence"
    )


def main(arguments: Sequence[str]) -> int:
    """Print the table; 1 if a goal is not held."""
    parser = argparse.ArgumentParser(prog="python -m tests.attack", description=__doc__)
    parser.add_argument("names", nargs="*", metavar="NAME", help=", ".join(ATTACKS))
    parser.add_argument("--quick", action="store_true", help="as small as in the test run")
    asked = parser.parse_args(arguments)
    unknown = [name for name in asked.names if name not in ATTACKS]
    if unknown:
        parser.error(f"no attack is called {', '.join(unknown)}")
    resource.setrlimit(resource.RLIMIT_NOFILE, (4096, resource.getrlimit(resource.RLIMIT_NOFILE)[1]))
    outcomes = []
    for name in asked.names or ATTACKS:
        outcomes.append(attack(name, whole=not asked.quick))
        print("\n".join(list(table(outcomes[-1:]))[1:-1]), file=sys.stderr, flush=True)
    print("\n".join(table(outcomes)))
    return int(any(list(one.failings()) for one in outcomes))
