"""The parent's side of a child that is kept: it has loaded what its work needs, waits without using the processor, and goes
over to what it is given at once.

One thread begins it, tells it and hears it. Nothing large is sent to a child that works: it is asked to stop first, and
killed where it does not within the grace.
"""

import logging
import pickle
import threading
import time
import uuid
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, replace
from multiprocessing import Pipe
from multiprocessing.connection import Connection, wait
from multiprocessing.context import SpawnProcess
from typing import Any

from runboard.background import child
from runboard.background.task import Failure, Task

GRACE = 5.0  # seconds between being asked to stop and being killed: a new one costs more than waiting beside other work
LONGEST = 90.0  # seconds for one job: one that forgets the time is ended
PAUSE, LONGEST_PAUSE = 1.0, 60.0  # seconds between a death and the next birth: longer each time, until a job is done

_log = logging.getLogger("runboard")


@dataclass
class _Life:
    """A child with our end of its line: what it works at ('' for nothing, None while it is coming up), and when its time is
    up. One that ``is_going`` takes nothing more."""

    process: SpawnProcess
    line: Connection
    at: str | None = None
    is_asked: bool = False
    is_going: bool = False
    deadline: float | None = None


class KeptChild:
    """Runs ``work(*job, told, stopped)`` on the newest job in a child that ran ``prepare()`` as it came up; both are
    functions of a module. ``heard`` is called on a thread of the child's whenever there is news: it must not wait."""

    def __init__(
        self,
        what: str,
        prepare: Callable[[], Any],
        work: Callable[..., Any],
        *,
        grace: float = GRACE,
        longest: float = LONGEST,
        pause: float = PAUSE,
        memory: int = child.MOST_MEMORY,
    ) -> None:
        self.what = what
        self.heard: Callable[[], object] = lambda: None
        self._prepare, self._work, self._memory = prepare, work, memory
        self._grace, self._longest, self._pause, self._rests = grace, longest, pause, pause
        self._lock = threading.Lock()
        self._task: Task | None = None
        self._job: tuple[Any, ...] | None = None  # until the child has it
        self._life: _Life | None = None
        self._thread: threading.Thread | None = None
        self._closed = threading.Event()
        self._woken, self._wake = Pipe(duplex=False)
        self._is_called = False
        self._prepared: Any = None

    @property
    def prepared(self) -> Any:
        """What ``prepare()`` answered; None while no child has come up, False where the first could not."""
        return self._prepared

    def begin(self) -> None:
        """Have the child come up, if it is not there: nobody waits for it."""
        with self._lock:
            self._begin()

    def give(self, *job: Any) -> Task | None:
        """Let the child go over to this; answers at once. None once closed."""
        with self._lock:
            if self._closed.is_set():
                return None
            self._task, self._job = Task(uuid.uuid4().hex, self.what), job
            self._begin()
            self._call()
            return self._task

    def look(self, task_id: str) -> Task | None:
        """The job as it stands; None for any but the newest."""
        with self._lock:
            return self._task if self._task is not None and self._task.id == task_id else None

    def end(self, task_id: str) -> None:
        """Let the child stop; what it told of so far stays."""
        with self._lock:
            if self._task is None or self._task.id != task_id or self._task.is_over:
                return
            self._task, self._job = replace(self._task, state="ended"), None
            self._call()

    def close(self) -> None:
        """End the child, whatever it is at, and wait until it is gone."""
        with self._lock:
            self._closed.set()
            self._job = None
            if self._task is not None and not self._task.is_over:
                self._task = replace(self._task, state="ended")
            if self._life is not None:
                child.end(self._life.process, hard=True)  # the thread may be held up by a child that does not read
            thread = self._thread
            self._call()
        if thread is not None:
            thread.join()
        self._wake.close()
        self._woken.close()

    def _begin(self) -> None:
        if self._thread is None and not self._closed.is_set():
            self._thread = threading.Thread(target=self._run, name=f"runboard {self.what}", daemon=True)
            self._thread.start()

    def _call(self) -> None:
        if not self._is_called:
            self._is_called = True
            self._wake.send_bytes(b"")

    # on a thread of its own

    def _run(self) -> None:
        while not self._closed.is_set():
            life = self._born()
            if life is not None:
                with suppress(EOFError, OSError):  # it has closed its line: it is gone, or goes
                    while self._turn(life):
                        pass
                self._bury(life)
            if self._closed.wait(self._rests):
                return
            self._rests = min(LONGEST_PAUSE, 2 * self._rests)

    def _born(self) -> _Life | None:
        try:
            life = _Life(*child.begin(child.live_on, self._prepare, self._work, self._memory, duplex=True))
        except Exception as why:  # noqa: BLE001 - a computer that is full: it is tried again
            self._prepared = self._prepared or False
            self._fail(Failure("not started", str(why)))
            return None
        with self._lock:
            if self._closed.is_set():
                child.end(life.process, hard=True)
            self._life = life
        return life

    def _turn(self, life: _Life) -> bool:
        """Hear what is said, and tell what is to be told; False once the child is gone or has to go."""
        left = None if life.deadline is None else max(0.0, life.deadline - time.monotonic())
        ready = wait([life.process.sentinel, life.line, self._woken], left)
        if self._closed.is_set() or (life.deadline is not None and time.monotonic() > life.deadline):
            return False
        if self._woken in ready:
            with self._lock:
                self._woken.recv_bytes()
                self._is_called = False
        if life.line in ready:
            self._hear(life, *life.line.recv())
        elif life.process.sentinel in ready:
            return False
        if not life.is_going:
            self._tell(life)
        return not life.is_going

    def _hear(self, life: _Life, kind: str, said: Any) -> None:
        with self._lock:
            if kind == "ready":
                self._prepared, life.at = said, ""
            else:
                self._take(life, kind, said)
        self._say()

    def _take(self, life: _Life, kind: str, said: Any) -> None:
        task = self._task if self._task is not None and self._task.id == life.at else None
        if kind == "told":
            if task is not None:
                done, total, latest = said
                known = {} if latest is None else {"latest": latest}
                self._task = replace(task, done=done, total=total, **known)
            return
        life.at, life.is_asked, life.deadline = "", False, None
        life.is_going = kind == "failure" and said.kind == "MemoryError"
        if kind == "result":
            self._rests = self._pause
            if task is not None:
                self._task = replace(task, result=said, state="ended" if task.is_over else "done")
        elif task is not None and not task.is_over:
            _log.warning("%s: %s: %s", self.what, said.kind, said.says)
            self._task = replace(task, state="failed", failure=said)

    def _tell(self, life: _Life) -> None:
        """Give the newest job to a child that is free; ask one that works at another to stop."""
        with self._lock:
            task, job = self._task, self._job
            if life.at is None or task is None:
                return
            if life.at:
                if (life.at != task.id or task.is_over) and not life.is_asked:
                    life.is_asked, life.deadline = True, time.monotonic() + self._grace
                    life.line.send(None)
                return
            if job is None:
                return
            self._job, self._task = None, replace(task, state="running")
            life.at, life.deadline = task.id, time.monotonic() + self._longest
        try:
            life.line.send(job)
        except (AttributeError, TypeError, ValueError, pickle.PicklingError) as why:
            life.at, life.deadline = "", None
            self._fail(Failure("not started", str(why)))
        except OSError:  # it has died meanwhile: the next one does it
            life.at, life.is_going = "", True
            with self._lock:
                if self._task is not None and self._task.id == task.id and not self._task.is_over:
                    self._task, self._job = replace(self._task, state="waiting"), job

    def _bury(self, life: _Life) -> None:
        with self._lock:
            self._life = None
        code = child.bury(life.process)
        life.line.close()
        if self._closed.is_set() or life.is_going:
            return
        _log.warning("%s: its process died (%s)", self.what, code)
        task = self._task
        if life.at is None:
            self._prepared = self._prepared or False
            self._fail(Failure("not started", str(code)))
        elif task is not None and task.id == life.at:
            self._fail(Failure("died", str(code)))

    def _fail(self, failure: Failure) -> None:
        with self._lock:
            if self._task is not None and not self._task.is_over:
                self._task, self._job = replace(self._task, state="failed", failure=failure), None
        self._say()

    def _say(self) -> None:
        try:
            self.heard()
        except Exception:  # noqa: BLE001 - the child is looked after all the same
            _log.exception("%s: who listens to it failed", self.what)
