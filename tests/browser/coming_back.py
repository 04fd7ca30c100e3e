"""Servers that go away and come back under their old address."""

import signal
from contextlib import ExitStack
from pathlib import Path
from types import TracebackType
from typing import Self

from tests.serving import Running, Served, free_port, running, serving


class SamePort:
    """The shop in a data folder, served on a thread: ``now`` is the server. ``goes`` ends it, and whoever asks is refused
    until it ``starts`` again, as after a kill. At the end of the block it is gone for good."""

    now: Served

    def __init__(self, data: Path) -> None:
        self.data = data
        self.port = free_port()
        self._stack = ExitStack()
        self.starts()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._stack.close()

    def starts(self) -> None:
        self.now = self._stack.enter_context(serving(self.data, self.port))

    def goes(self) -> None:
        self._stack.close()


class Mortal(SamePort):
    """The same as a process, which dies as by a power cut and can be frozen: it takes what is sent, and answers nothing."""

    now: Running

    def starts(self) -> None:
        self.now = self._stack.enter_context(running("serve", "--data", str(self.data), port=str(self.port)))

    def goes(self) -> None:
        self.now.kill()

    def freezes(self) -> None:
        self.now.process.send_signal(signal.SIGSTOP)

    def thaws(self) -> None:
        self.now.process.send_signal(signal.SIGCONT)
