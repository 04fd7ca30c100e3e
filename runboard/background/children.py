"""The parent's side: long work started, looked at and ended, a few at once; the rest waits its turn.

Nothing here waits for a child but threads of its own: at most one for each child that runs, and none when none does.
"""

import logging
import threading
import time
import uuid
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, replace
from multiprocessing.connection import Connection, wait
from multiprocessing.context import SpawnProcess
from typing import Any

from runboard.background import child
from runboard.background.task import Failure, Task

MOST = 2  # at once: a shop's computer has few cores, and answers phones meanwhile
MOST_WAITING = 8
KEPT = 20  # that are over
GRACE = 2.0  # seconds between being asked to end and being killed
LOOK_EVERY = 0.2

_log = logging.getLogger("runboard")


@dataclass
class _Ward:
    """A task with what its thread needs; ``asked`` once somebody wants it ended."""

    task: Task
    work: Callable[..., Any]
    arguments: tuple[Any, ...]
    heard: Callable[[Task], None] | None
    asked: bool = False
    deadline: float | None = None


class Children:
    """Child processes for long work. Give ``heard`` to be told of every change, on a thread of the task's: it must not
    wait."""

    def __init__(self, most: int = MOST, grace: float = GRACE, memory: int = child.MOST_MEMORY) -> None:
        self._most = most
        self._memory = memory
        self._grace = grace
        self._lock = threading.Lock()  # over what is known
        self._wards: dict[str, _Ward] = {}
        self._waiting: deque[_Ward] = deque()
        self._threads: set[threading.Thread] = set()
        self._closed = False

    def start(
        self,
        what: str,
        subject: str,
        work: Callable[..., Any],
        *arguments: Any,
        heard: Callable[[Task], None] | None = None,
    ) -> Task | None:
        """Let a child run ``work(*arguments, told)``, a function of a module with arguments that can be pickled; answers
        at once. None where so much is waiting that nothing more is taken, and once closed."""
        ward = _Ward(Task(uuid.uuid4().hex, what, subject), work, arguments, heard)
        with self._lock:
            if self._closed or sum(not ward.asked for ward in self._waiting) >= MOST_WAITING:
                return None
            self._wards[ward.task.id] = ward
            self._waiting.append(ward)
            self._forget()
            if len(self._threads) < self._most:
                thread = threading.Thread(target=self._work_off, name=f"runboard {what}", daemon=True)
                self._threads.add(thread)
                thread.start()
        return ward.task

    def look(self, task_id: str) -> Task | None:
        """The task as it stands; None for one that is not known any more."""
        with self._lock:
            ward = self._wards.get(task_id)
            return ward.task if ward else None

    def newest(self, what: str, subject: str = "") -> Task | None:
        """The task of that sort and subject that was started last."""
        with self._lock:
            found = (ward.task for ward in reversed(self._wards.values()))
            return next((task for task in found if (task.what, task.subject) == (what, subject)), None)

    def end(self, task_id: str) -> None:
        """Ask a task to end: its child is told to, and killed where it does not within the grace."""
        with self._lock:
            ward = self._wards.get(task_id)
            if ward is None or ward.task.is_over:
                return
            self._ask_to_end(ward)
        _tell(ward)

    def close(self) -> None:
        """End everything, and wait until it has."""
        with self._lock:
            self._closed = True
            for ward in self._wards.values():
                if not ward.task.is_over:
                    self._ask_to_end(ward)
            threads = list(self._threads)
        for thread in threads:
            thread.join(self._grace + 2)

    # on a thread of its own

    def _work_off(self) -> None:
        while (ward := self._next()) is not None:
            self._follow(ward)

    def _next(self) -> _Ward | None:
        with self._lock:
            while self._waiting:
                ward = self._waiting.popleft()
                if not ward.asked:
                    ward.task = replace(ward.task, state="running")
                    return ward
            self._threads.discard(threading.current_thread())
            return None

    def _follow(self, ward: _Ward) -> None:
        """Start the child, hear it out, and see it buried."""
        try:
            made, ours = child.begin(child.live, ward.work, ward.arguments, self._memory)
        except Exception as why:  # noqa: BLE001 - arguments that cannot be pickled, or a computer that is full
            self._change(ward, state="failed", failure=Failure("not started", str(why)))
            return
        finally:
            ward.arguments = ()  # the child has them; a task is remembered for long
        _tell(ward)
        with ours:
            while not self._is_gone(ward, made, ours):
                pass
        code = child.bury(made)
        if not ward.task.is_over:
            _log.warning("%s %s: its process died (%s)", ward.task.what, ward.task.subject, code)
            self._change(ward, state="failed", failure=Failure("died", str(code)))

    def _is_gone(self, ward: _Ward, process: SpawnProcess, line: Connection) -> bool:
        """One turn: hear what the child says, or end it. True once it is dead and all it said is heard."""
        ready = wait([process.sentinel, line], LOOK_EVERY)
        if line in ready:
            try:
                self._hear(ward, *line.recv())
            except (EOFError, OSError):  # it has closed the line: it is going, or is made to
                ward.deadline = ward.deadline or time.monotonic() + self._grace
                self._due(ward, process)
                return bool(wait([process.sentinel], LOOK_EVERY))
        elif process.sentinel in ready:
            return True
        self._due(ward, process)
        return False

    def _due(self, ward: _Ward, process: SpawnProcess) -> None:
        """Tell a child that is to end; kill it after its grace."""
        now = time.monotonic()
        if ward.deadline is None and (ward.asked or ward.task.is_over):
            ward.deadline = now + self._grace
            if ward.asked:
                child.end(process)
        elif ward.deadline is not None and now > ward.deadline:
            child.end(process, hard=True)

    def _hear(self, ward: _Ward, kind: str, said: Any) -> None:
        if kind == "told":
            done, total, latest = said
            known = {} if latest is None else {"latest": latest}
            self._change(ward, done=done, total=total, **known)
        elif kind == "result":
            self._change(ward, result=said, **({} if ward.asked else {"state": "done"}))
        elif not ward.asked:
            _log.warning("%s %s: %s: %s", ward.task.what, ward.task.subject, said.kind, said.says)
            self._change(ward, state="failed", failure=said)

    def _change(self, ward: _Ward, **changes: Any) -> None:
        with self._lock:
            ward.task = replace(ward.task, **changes)
        _tell(ward)

    # with the lock held

    @staticmethod
    def _ask_to_end(ward: _Ward) -> None:
        ward.asked = True
        ward.task = replace(ward.task, state="ended")

    def _forget(self) -> None:
        over = [key for key, ward in self._wards.items() if ward.task.is_over]
        for key in over[: max(0, len(over) - KEPT)]:
            del self._wards[key]


def _tell(ward: _Ward) -> None:
    if ward.heard is None:
        return
    try:
        ward.heard(ward.task)
    except Exception:  # noqa: BLE001 - the child is looked after all the same
        _log.exception("%s %s: who listens to it failed", ward.task.what, ward.task.subject)
