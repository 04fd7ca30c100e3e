"""What the commands share: the data folder that is asked about, the run that is meant, and how one asks and says."""

from argparse import ArgumentParser
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from textwrap import wrap
from typing import Any, TextIO

from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.run.fold.state import RunState
from runboard.store.closed import make_folder
from runboard.store.connect import FILE_NAME
from runboard.store.holding import hold
from runboard.store.open import Store
from runboard.words.sentences import say

PORT = 8210  # where a shop is served, and where the codes of its cards lead, unless somebody says otherwise
_LONGEST = 120


class Mistaken(Exception):
    """What was asked for cannot be done; ``code`` names the sentence that says why and what to do, ``facts`` fill it."""

    def __init__(self, code: str, **facts: Any) -> None:
        super().__init__(code)
        self.code, self.facts = code, facts


def add_folder(command: ArgumentParser, *, is_made: bool = False) -> None:
    """Ask for the data folder, and say where it is made if it is not there."""
    says = say("option", "folder") if is_made else None
    command.add_argument("--data", type=Path, required=True, metavar="DIR", help=says)


def add_run(command: ArgumentParser) -> None:
    """Ask for a run that may be left out."""
    command.add_argument("run", nargs="?", default="", metavar="RUN", help=say("option", "run"))


def make_data_folder(data: Path) -> None:
    """Make it, if it is not there."""
    try:
        make_folder(data)
    except OSError as problem:
        raise Mistaken("no place for data", folder=data, why=problem.strerror) from problem


def check_folder(data: Path) -> None:
    """It is to be there."""
    if not data.is_dir():
        raise Mistaken("no data folder", folder=data)


def check_shop(data: Path) -> None:
    """A shop is to be in it."""
    if not (data / FILE_NAME).is_file():
        raise Mistaken("no shop", folder=data)


@contextmanager
def opened(data: Path) -> Iterator[tuple[Store, Workshop]]:
    """The store and the workshop over a data folder, without a server: nobody is listening."""
    make_data_folder(data)
    with hold(data):
        store, workshop = open_workshop(data)
        try:
            yield store, workshop
        finally:
            store.close()


def run_meant(workshop: Workshop, named: str) -> RunState:
    """The run named, else the one that is open."""
    if named:
        return find_run(workshop, named)
    catch_up(workshop)
    runs = list(workshop.ledger.state.open_runs())
    if not runs:
        raise Mistaken("no run open")
    if len(runs) > 1:
        raise Mistaken("several runs open", runs=", ".join(f"{run.id} ({run.name})" for run in runs))
    return runs[0]


def rewritten_line(where: TextIO) -> tuple[Callable[[str], None], Callable[[], None]]:
    """(told, clear): a line that is written anew as work goes on, and taken away; nothing where nobody watches."""
    if not where.isatty():
        return lambda line: None, lambda: None

    def told(line: str) -> None:
        where.write(f"\r{line}")
        where.flush()

    def clear() -> None:
        where.write("\r\x1b[K")
        where.flush()

    return told, clear


def events_in_words(count: int) -> str:
    """'1 event', '1,204 events'."""
    return say("told", "events", {"events": count})


def is_agreed(question: str) -> bool:
    """Whether a person at the terminal says yes; anything else is no. Raises ``Mistaken`` where they end it instead."""
    try:
        return input(f"{question} [y/N] ").strip().lower() in ("y", "yes")
    except (EOFError, KeyboardInterrupt) as why:
        print()
        raise Mistaken("given up") from why


def tidy(name: str) -> str:
    """A name out of a copy, as a part of a line that does nothing to a terminal."""
    shown = "".join(sign if sign.isprintable() else " " for sign in name[:_LONGEST])
    return shown.encode("utf-8", "backslashreplace").decode().strip()


def broken(line: str, wide: int) -> list[str]:
    """The line in parts that a terminal so ``wide`` shows without breaking a word; whole where it fits, or 0 is asked."""
    if not wide or len(line) <= wide:
        return [line]
    return wrap(line, wide, subsequent_indent="  " if line.startswith("- ") else "")
