"""Work for a child to do: plain functions, as a child imports them."""

import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

Told = Callable[..., None]


def add_up(numbers: list[int], told: Told) -> int:
    """Tells of each number."""
    total = 0
    for at, number in enumerate(numbers, 1):
        total += number
        told(at, len(numbers), total)
    return total


def sleep_long(mark: Path, told: Told) -> None:
    """Says by a file that it has begun, with its process id, and sleeps."""
    told(0, 60, "asleep")
    write(mark, str(os.getpid()))
    time.sleep(60)


def sleep_deaf(mark: Path, told: Told) -> None:
    """The same, and does not hear that it is to end."""
    signal.signal(signal.SIGTERM, signal.SIG_IGN)
    sleep_long(mark, told)


def start_another(mark: Path, told: Told) -> None:
    """Starts a process of its own, says which, and waits for it."""
    other = subprocess.Popen([sys.executable, "-c", "import time; time.sleep(60)"])
    write(mark, str(other.pid))
    other.wait()


def write_then_wait(mark: Path, until: Path, told: Told) -> str:
    """Says that it has begun, and is done once the other file is there."""
    write(mark, str(os.getpid()))
    while not until.exists():
        time.sleep(0.01)
    return mark.name


def fall(told: Told) -> None:
    raise ValueError("there is a knot in it")


def die(told: Told) -> None:
    os.kill(os.getpid(), signal.SIGKILL)


def answer_badly(told: Told) -> Any:
    """What cannot be sent."""
    return lambda: None


def chatter(told: Told) -> str:
    for at in range(20_000):
        told(at, 20_000)
    return "said"


def give_in(mark: Path, told: Told) -> None:
    """Answers with what it has when it is told to end."""

    def heard(_signal: int, _frame: object) -> None:
        raise InterruptedError

    signal.signal(signal.SIGTERM, heard)
    write(mark, str(os.getpid()))
    try:
        time.sleep(60)
    except InterruptedError:
        told(1, 2, "half a plan")


def say_big(told: Told) -> int:
    """More than a pipe holds."""
    told(1, 1, "x" * 1_000_000)
    return 1


def write(mark: Path, text: str) -> None:
    """Whole, for whoever waits for it."""
    beside = mark.with_suffix(".part")
    beside.write_text(text)
    beside.rename(mark)


def take_memory(told: Told) -> int:
    """Takes more and more, as plain text would."""
    held = [bytearray(1 << 20)]
    while True:
        held.append(bytearray(64 << 20))
        told(len(held), 0)


# For a child that is kept.


def come_up() -> int:
    """Answers which process it is."""
    return os.getpid()


def fall_at_once() -> None:
    raise ImportError("there is no saw")


def at(what: str, mark: Path | None, told: Told, stopped: Callable[[], bool]) -> Any:
    """One job of those below: a kept child has one function for all."""
    return _KEPT[what](mark, told, stopped)


def _told_thrice(mark: Path | None, told: Told, stopped: Callable[[], bool]) -> str:
    for number in range(1, 4):
        told(number, 3, number)
    return "all"


def _until_stopped(mark: Path | None, told: Told, stopped: Callable[[], bool]) -> str:
    """Says which process it is, tells of half, and goes on until it is to stop."""
    told(1, 2, "half")
    if mark is not None:
        write(mark, str(os.getpid()))
    while not stopped():
        time.sleep(0.005)
    return "stopped"


def _asked(mark: Path | None, told: Told, stopped: Any) -> str:
    """Waits for what cannot look itself whether it is to stop."""
    asked = threading.Event()
    with stopped.calls(asked.set):
        told(1, 2, "half")
        asked.wait()
    return "stopped"


def _deaf(mark: Path | None, told: Told, stopped: Callable[[], bool]) -> None:
    signal.signal(signal.SIGTERM, signal.SIG_IGN)
    told(1, 2, "half")
    if mark is not None:
        write(mark, str(os.getpid()))
    time.sleep(60)


def _which(mark: Path | None, told: Told, stopped: Callable[[], bool]) -> int:
    return os.getpid()


_KEPT: dict[str, Callable[..., Any]] = {
    "tell": _told_thrice,
    "go on": _until_stopped,
    "asked": _asked,
    "deaf": _deaf,
    "which": _which,
    "fall": lambda mark, told, stopped: fall(told),
    "die": lambda mark, told, stopped: die(told),
    "eat": lambda mark, told, stopped: take_memory(told),
    "answer badly": lambda mark, told, stopped: answer_badly(told),
}
