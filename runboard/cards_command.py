"""The command that prints a run's cards into a PDF."""

import argparse
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TextIO

from runboard.mistaken import Mistaken
from runboard.store.connect import FILE_NAME
from runboard.web.trays.card_orders import KINDS, LANGUAGES, PAPERS


def add_cards(commands: "argparse._SubParsersAction[argparse.ArgumentParser]", port: int) -> None:
    """Add it to the commands. ``port`` is the one that ``serve`` usually takes."""
    cards = commands.add_parser("cards", help="print the cards of a run's trays into a PDF")
    cards.add_argument(
        "run", nargs="?", default="", metavar="RUN", help="the run's key; may be left out where one run is open"
    )
    cards.add_argument("--data", type=Path, required=True, metavar="DIR")
    cards.add_argument("--out", type=Path, required=True, metavar="FILE.pdf")
    cards.add_argument("--trays", default="", metavar="LIST", help="like 1,2,5-8; default every tray that holds pieces")
    cards.add_argument("--kinds", type=_kinds, default=("travellers",), metavar="LIST", help=", ".join(KINDS))
    cards.add_argument("--paper", choices=tuple(PAPERS), default="a6")
    cards.add_argument("--language", choices=tuple(LANGUAGES), default="en")
    cards.add_argument(
        "--address",
        default="",
        metavar="URL",
        help=f"where phones find the server, for the codes; default this computer on port {port}",
    )
    cards.set_defaults(do=lambda asked: _print(asked, port))


def _kinds(text: str) -> tuple[str, ...]:
    named = [one.strip() for one in text.split(",") if one.strip()]
    unknown = [one for one in named if one not in KINDS]
    if unknown or not named:
        raise argparse.ArgumentTypeError(f"{text!r} names no kinds of card: {', '.join(KINDS)}")
    return tuple(kind for kind in KINDS if kind in named)


def _print(asked: argparse.Namespace, port: int) -> None:
    # Imported here: the other commands need no cards, and answer at once.
    from runboard.printing import Asked, CannotPrint, checked_address, print_cards, served_address

    if not (asked.data / FILE_NAME).is_file():
        raise Mistaken(f"there is no shop in {asked.data}.")
    try:
        address = checked_address(asked.address) if asked.address else served_address(port)
        wanted = Asked(asked.data, asked.out, address, asked.run, asked.trays, asked.kinds, asked.paper, asked.language)
        with_progress, clear = progress(sys.stderr)
        try:
            count = print_cards(wanted, with_progress)
        finally:
            clear()
    except CannotPrint as why:
        raise Mistaken(str(why)) from why
    sys.stdout.write(f"{asked.out}: {count} card{'' if count == 1 else 's'}. Their codes lead to {address}\n")


def progress(where: TextIO) -> tuple[Callable[[int, int], None], Callable[[], None]]:
    """(told, clear): a line that is written anew as work goes on, and taken away; nothing where nobody watches."""
    if not where.isatty():
        return lambda done, total: None, lambda: None

    def told(done: int, total: int) -> None:
        where.write(f"\r{done} of {total} cards")
        where.flush()

    def clear() -> None:
        where.write("\r\x1b[K")
        where.flush()

    return told, clear
