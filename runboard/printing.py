"""Cards of one data folder, printed into a file: by a command, whether the shop is served or not."""

import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import urlsplit

from runboard.app import Settings, open_workshop
from runboard.cards.pdf import NoPango, write_pdf
from runboard.floor.letting_in.print_cards import named_trays, next_prints, note_prints
from runboard.floor.letting_in.travellers import read_keys
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.lan.addresses import Whereabouts, urls, whereabouts
from runboard.network import here_only
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.store.holding import hold
from runboard.store.pictures import PictureFolder
from runboard.web.trays.card_orders import Sources, Wanted, card_order

Told = Callable[[int, int], None]


class CannotPrint(Exception):
    """The cards cannot be made; the text says why, and what to do."""


@dataclass(frozen=True)
class Asked:
    """What is to be printed: of which run ('' for the one that is open), which trays (``1,2,5-8``, '' for all), into
    which file, and the plain address of the server that the codes lead to."""

    data: Path
    out: Path
    address: str
    run: str = ""
    trays: str = ""
    kinds: tuple[str, ...] = ("travellers",)
    paper: str = "a6"
    language: str = "en"


def print_cards(asked: Asked, told: Told) -> int:
    """Write the PDF, whole or not at all, and note the prints; answers how many cards there are.

    Raises ``CannotPrint``, and Refused for a run, tray or card that there is not.
    """
    _check_out(asked.out)
    with hold(asked.data):
        store, workshop = open_workshop(Settings(asked.data))
        try:
            run = _run(workshop, asked.run)
            wanted = Wanted(named_trays(run, asked.trays), asked.kinds, asked.paper, asked.language)
            prints = next_prints(run, wanted.trays) if "travellers" in wanted.kinds else {}
            if prints and run.state != "open":
                raise Refused("run closed", run=run.name, state=run.state)
            sources = Sources(asked.address, read_keys(store.settings), PictureFolder(asked.data).file)
            order = card_order(workshop, run, wanted, prints, sources)
            with _whole(asked.out) as part:
                count = write_pdf(order, part, told)
                note_prints(workshop, run.id, prints)
            return count
        except NoPango as missing:
            raise CannotPrint(str(missing)) from missing
        finally:
            store.close()


def served_address(port: int, where: Callable[[], Whereabouts] = whereabouts) -> str:
    """Where a phone finds this computer when it serves on that port: the surest address, else the name it announces."""
    try:
        found = where()
    except OSError:  # the system does not tell its addresses
        found = here_only()
    return urls(found, "http", port)[0]


def checked_address(text: str) -> str:
    """An address as it can stand in a code. Raises ``CannotPrint`` for what is none."""
    try:
        parts = urlsplit(text if "://" in text else f"http://{text}")
        fits = parts.scheme in ("http", "https") and parts.hostname and parts.port != 0
    except ValueError:
        fits = False
    if not fits or parts.path.strip("/") or parts.query or parts.fragment or parts.username:
        raise CannotPrint(f"{text!r} is no address of a server. Write it like http://192.168.1.5:8210.")
    return f"{parts.scheme}://{parts.netloc}"


def _run(workshop: Workshop, named: str) -> RunState:
    """The run named, else the one that is open."""
    if named:
        return find_run(workshop, named)
    catch_up(workshop)
    found = list(workshop.ledger.state.open_runs())
    if not found:
        raise CannotPrint("no run is open. Open one on the Plan page, or name a run.")
    if len(found) > 1:
        listed = ", ".join(f"{run.id} ({run.name})" for run in found)
        raise CannotPrint(f"several runs are open: {listed}. Say which one.")
    return found[0]


def _check_out(out: Path) -> None:
    """Before anything is made."""
    if out.is_dir():
        raise CannotPrint(f"{out} is a folder. Name a file.")
    if not out.parent.is_dir():
        raise CannotPrint(f"there is no folder {out.parent}.")


@contextmanager
def _whole(out: Path) -> Iterator[Path]:
    """A file beside ``out`` that takes its place at the end of the block, and is gone where the block fails."""
    part = out.with_name(f".{out.name}.{os.getpid()}.part")
    try:
        part.touch(exist_ok=False)
        yield part
        part.replace(out)
    except OSError as problem:
        raise CannotPrint(f"{out} cannot be written: {problem.strerror or problem}.") from problem
    finally:
        part.unlink(missing_ok=True)
