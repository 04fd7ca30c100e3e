"""A child process: its birth, its life, in which it runs one plain function and tells how far it is, and its end together
with all that it started."""

import logging
import multiprocessing
import os
import signal
import threading
import time
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from multiprocessing.connection import Connection
from multiprocessing.context import SpawnProcess
from typing import Any

from runboard.background.task import Failure

TELL_EVERY = 0.1  # seconds between two plain tellings: a page does not read faster
LOOK_EVERY, CALL_EVERY = 0.01, 0.05
# Bytes of its own that a child may take, and that a search over 72 trays has a quarter of: one that would eat the memory
# of the server's computer ends instead.
MOST_MEMORY = 1_536 << 20
_KINDER = 5  # the page of a phone is answered first

_SPAWN = multiprocessing.get_context("spawn")  # a forked child of a server with threads may never come up
_births = threading.Lock()  # over what may reap: multiprocessing does whenever it starts another

_log = logging.getLogger("runboard")


def begin(life: Callable[..., None], *arguments: Any, duplex: bool = False) -> tuple[SpawnProcess, Connection]:
    """A child that lives ``life(line, *arguments)``, and our end of its line: to hear it, and where ``duplex`` to tell it
    too. Raises what stands in the way: arguments that cannot be pickled, a computer that is full."""
    ours, theirs = _SPAWN.Pipe(duplex)
    made = _SPAWN.Process(target=life, args=(theirs, *arguments), daemon=True)
    try:
        with _births:
            made.start()
    except BaseException:
        ours.close()
        raise
    finally:
        theirs.close()
    return made, ours


def bury(process: SpawnProcess) -> int | None:
    """Kill what is left of a child and its group; answers the code it ended with. Only whoever began it may."""
    with _births:
        end(process, hard=True)
        process.join()
        code = process.exitcode
        process.close()
        return code


def end(process: SpawnProcess, *, hard: bool = False) -> None:
    """Tell a child that is not reaped yet, and its group, to end; ``hard``: kill them. One that is gone is left alone."""
    if hasattr(os, "killpg") and process.pid:
        try:
            os.killpg(process.pid, signal.SIGKILL if hard else signal.SIGTERM)
        except ProcessLookupError:  # it has no group of its own yet
            pass
        except PermissionError:  # some systems say so of a group of which only the dead are left
            return
    if process.is_alive():
        process.kill() if hard else process.terminate()


# in the child


def live(line: Connection, work: Callable[..., Any], arguments: tuple[Any, ...], memory: int = MOST_MEMORY) -> None:
    """The child's whole life: ``work(*arguments, told)`` within so many bytes, and its result or failure on the ``line``."""
    _stand_alone()
    _keep_within(memory)
    try:
        answer: tuple[str, Any] = ("result", work(*arguments, teller(line)))
        line.send(answer)
    except Exception as why:  # noqa: BLE001 - whatever it is, the parent says it
        _say_why(line, why)
    finally:
        line.close()


def live_on(line: Connection, prepare: Callable[[], Any], work: Callable[..., Any], memory: int = MOST_MEMORY) -> None:
    """The life of a child that is kept: ``prepare()`` once, and then ``work(*job, told, stopped)`` on each job that comes
    over the ``line``, until it closes. What comes while it works is a wish that it stop; one that comes too late is passed
    over. After a job that wanted too much memory it goes, since what that left behind may be as much again."""
    _stand_alone()
    _keep_within(memory)
    line.send(("ready", prepare()))
    while True:
        try:
            job = line.recv()
        except EOFError:
            return
        if job is not None and not _done(line, work, job):
            return
        del job  # it is large, and the next may be long in coming


def _done(line: Connection, work: Callable[..., Any], job: tuple[Any, ...]) -> bool:
    """Work on a job and say what came of it; False where it wanted too much memory."""
    try:
        line.send(("result", work(*job, teller(line), Stopped(line))))
    except MemoryError as why:
        _send_failure(line, Failure("MemoryError", str(why)))
        return False
    except Exception as why:  # noqa: BLE001 - whatever it is, the parent says it
        _say_why(line, why)
    return True


class Stopped:
    """Whether the work is to stop, asked as often as one likes: the line is looked at every hundredth of a second."""

    def __init__(self, line: Connection) -> None:
        self._line, self._is_so, self._looked = line, False, 0.0

    def __call__(self) -> bool:
        now = time.monotonic()
        if not self._is_so and now - self._looked >= LOOK_EVERY:
            self._looked, self._is_so = now, self._line.poll()
        return self._is_so

    @contextmanager
    def calls(self, ask: Callable[[], object]) -> Iterator[None]:
        """Meanwhile ``ask`` is called once it is: for work that cannot look itself while others work for it."""
        over = threading.Event()

        def look() -> None:
            while not over.wait(CALL_EVERY):
                if self():
                    ask()
                    return

        thread = threading.Thread(target=look, daemon=True)
        thread.start()
        try:
            yield
        finally:
            over.set()
            thread.join()


def teller(line: Connection) -> Callable[..., None]:
    """The ``told(done, total, latest=None)`` that work is given. A ``latest`` always goes through; plain progress at
    most every tenth of a second."""
    last = 0.0

    def told(done: int, total: int, latest: Any = None) -> None:
        nonlocal last
        now = time.monotonic()
        if latest is not None or done >= total or now - last >= TELL_EVERY:
            last = now
            line.send(("told", (done, total, latest)))

    return told


def _say_why(line: Connection, why: Exception) -> None:
    _log.debug("%s", traceback.format_exc())
    _send_failure(line, Failure(type(why).__name__, str(why) or traceback.format_exc(limit=-1)))


def _send_failure(line: Connection, failure: Failure) -> None:
    try:
        line.send(("failure", failure))
    except OSError:  # nobody listens any more
        pass


def _stand_alone() -> None:
    """In a process group of its own, so that Ctrl-C in the server's terminal is the server's alone and a child is ended
    with all that it started; and gone when the server is, however that went."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    signal.signal(signal.SIGTERM, signal.SIG_DFL)
    if hasattr(os, "setpgid"):
        os.setpgid(0, 0)
        os.nice(_KINDER)
    threading.Thread(target=_go_with_the_parent, daemon=True).start()


def _keep_within(memory: int) -> None:
    """More is refused by the system: work then raises ``MemoryError``, or dies of it. Nothing where there are no limits."""
    try:
        import resource
    except ImportError:  # Windows
        return
    with suppress(ValueError, OSError):
        resource.setrlimit(resource.RLIMIT_DATA, (memory, resource.getrlimit(resource.RLIMIT_DATA)[1]))


def _go_with_the_parent() -> None:
    parent = multiprocessing.parent_process()
    if parent is not None:
        parent.join()
        if hasattr(os, "killpg"):
            os.killpg(0, signal.SIGKILL)
        os._exit(1)
