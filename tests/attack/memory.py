"""How much memory a server and its children take, by /proc, in MB."""

import threading
from pathlib import Path
from types import TracebackType

_MB = 1024


class Memory:
    """Looks at a process for as long as the block lasts."""

    def __init__(self, pid: int) -> None:
        self._pid, self._over = pid, threading.Event()
        self._idle = self._peak = self._children = 0.0
        self._thread = threading.Thread(target=self._live, daemon=True)

    def __enter__(self) -> "Memory":
        self._thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._over.set()
        self._thread.join(5)

    def call_idle(self) -> None:
        """What it takes now is what it takes at rest."""
        try:
            Path(f"/proc/{self._pid}/clear_refs").write_text("5")  # the peak is counted anew
        except OSError:
            pass  # then the highest of what is looked up is the peak
        self._idle = self._peak = _field(self._pid, "VmRSS")
        self._children = 0.0

    @property
    def over_idle(self) -> float:
        """The most that the server itself took beyond that."""
        return max(self._peak, _field(self._pid, "VmHWM")) - self._idle

    @property
    def children(self) -> float:
        """The most that its children took together."""
        return self._children

    def _live(self) -> None:
        while not self._over.wait(0.1):
            self._peak = max(self._peak, _field(self._pid, "VmRSS"), _field(self._pid, "VmHWM"))
            self._children = max(self._children, sum(_field(one, "VmRSS") for one in _descendants(self._pid)))


def _field(pid: int, name: str) -> float:
    try:
        lines = Path(f"/proc/{pid}/status").read_text().splitlines()
    except OSError:
        return 0.0
    return next((float(line.split()[1]) / _MB for line in lines if line.startswith(f"{name}:")), 0.0)


def _descendants(pid: int) -> list[int]:
    found, waiting = [], [pid]
    while waiting:
        one = waiting.pop()
        try:
            children = [
                int(text) for path in Path(f"/proc/{one}/task").glob("*/children") for text in path.read_text().split()
            ]
        except OSError:
            continue
        found += children
        waiting += children
    return found
