"""A real server process on a free port; its output is shown if it never comes up."""

import re
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from runboard.floor.pressing.access import LEAD
from tests.pairing import paired

ROOT = Path(__file__).parents[1]
_ADDRESS = re.compile(r"http://127\.0\.0\.1:\d+/")

# The servers that this process started, by address: a phone pairs itself with the one that it is made for.
_SERVED: dict[str, "Running"] = {}


@dataclass
class Running:
    """A server that listens. ``address`` ends in a slash; ``said`` are the lines that it printed; ``data`` is the folder
    that it serves to paired devices, None where it asks nobody to pair."""

    process: "subprocess.Popen[str]"
    address: str
    said: list[str] = field(default_factory=list)
    data: Path | None = None

    def pair(self, access: str = LEAD) -> str:
        """The secret of a new device's session; '' where nobody has to pair."""
        return paired(self.data, access) if self.data else ""

    def interrupt(self) -> float:
        """Press Ctrl-C; answers how many seconds it took to end."""
        began = time.monotonic()
        self.process.send_signal(signal.SIGINT)
        self.process.wait(timeout=10)
        return time.monotonic() - began

    def kill(self) -> None:
        """As a power cut does."""
        self.process.kill()
        self.process.wait(timeout=10)


@contextmanager
def running(
    *command: str,
    python: Sequence[str] = (sys.executable, "-m", "runboard.cli"),
    port: str = "0",
    https_port: str = "0",
    planner: bool = False,
) -> Iterator[Running]:
    """``runboard COMMAND`` on a free port or the one that is given, until the end of the block. A shop is served to this
    computer alone: no test listens to the network, or announces anything there. Where a test is not about plans, none are
    made: what comes first is then the greedy rule's, at once, and two cores are enough."""
    https = ["--https-port", https_port] if https_port else []
    here = ["--local", *https] if command[0] == "serve" else []
    quiet = () if planner else ("--no-planner",)
    process = subprocess.Popen(
        [*python, *command, "--port", port, *here, "--no-open", *quiet],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    said: list[str] = []
    found = threading.Event()
    reader = threading.Thread(target=_read, args=(process, said, found), daemon=True)
    reader.start()
    try:
        found.wait(timeout=60)
        address = next((match[0] for line in said if (match := _ADDRESS.search(line))), "")
        assert address, "the server never came up:\n" + "".join(said)
        served = Running(process, address, said, _data(command))
        _SERVED[address] = served
        yield served
    finally:
        if process.poll() is None:
            process.terminate()
            try:
                process.wait(timeout=5)
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()
        reader.join(timeout=5)
        if process.stdout:
            process.stdout.close()


def served_at(address: str) -> Running | None:
    """The server that was started here last under that address."""
    return _SERVED.get(address)


def _data(command: Sequence[str]) -> Path | None:
    return Path(command[command.index("--data") + 1]) if command[0] == "serve" else None


def _read(process: "subprocess.Popen[str]", said: list[str], found: threading.Event) -> None:
    """Keep reading, so that the pipe never fills; the address, or the end, lets the test go on."""
    for line in process.stdout or ():
        said.append(line)
        if _ADDRESS.search(line):
            found.set()
    found.set()
