"""Print the cards of a run's trays into a PDF, whether the shop is served or not."""

import sys
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from collections.abc import Callable
from pathlib import Path
from typing import TextIO
from urllib.parse import urlsplit

from runboard.cards.papers import PAPERS
from runboard.cards.pdf import NoPango, write_pdf
from runboard.commands.asking import (
    PORT,
    Mistaken,
    add_folder,
    add_run,
    check_shop,
    opened,
    rewritten_line,
    run_meant,
)
from runboard.commands.whole_file import check_out, whole
from runboard.floor.letting_in.print_cards import named_trays, next_prints, note_prints
from runboard.floor.letting_in.travellers import read_keys
from runboard.lan.addresses import Whereabouts, urls, whereabouts
from runboard.lan.network import here_only
from runboard.run.refusal import Refused
from runboard.web.trays.card_orders import KINDS, USUAL, Sources, Wanted, card_order
from runboard.words.sentences import LANGUAGES, say

Told = Callable[[int, int], None]


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_run(command)
    add_folder(command)
    command.add_argument("--out", type=Path, required=True, metavar="FILE.pdf")
    command.add_argument("--trays", default="", metavar="LIST", help=say("option", "trays"))
    command.add_argument("--kinds", type=_kinds, default=USUAL, metavar="LIST", help=", ".join(KINDS))
    command.add_argument("--full", action="store_true", help=say("option", "full"))
    command.add_argument("--every-slip", action="store_true", help=say("option", "every slip"))
    command.add_argument("--paper", choices=tuple(PAPERS), default="a6")
    command.add_argument("--language", choices=tuple(LANGUAGES), default="en")
    command.add_argument("--address", default="", metavar="URL", help=say("option", "address", {"port": str(PORT)}))


def _kinds(text: str) -> tuple[str, ...]:
    named = [kind.strip() for kind in text.split(",") if kind.strip()]
    unknown = [kind for kind in named if kind not in KINDS]
    if unknown or not named:
        raise ArgumentTypeError(say("mistaken", "no kinds", {"text": repr(text), "kinds": ", ".join(KINDS)}))
    return tuple(kind for kind in KINDS if kind in named)


def do(asked: Namespace) -> None:
    """Print them, and say where their codes lead."""
    check_shop(asked.data)
    address = checked_address(asked.address) if asked.address else served_address(PORT)
    told, clear = progress(sys.stderr)
    try:
        count = print_cards(asked, address, told)
    finally:
        clear()
    print(say("told", "cards", {"file": asked.out, "cards": count, "address": address}))


def progress(where: TextIO) -> tuple[Told, Callable[[], None]]:
    """(told, clear): a line that says how far it is, and is taken away; nothing where nobody watches."""
    write, clear = rewritten_line(where)
    return lambda done, total: write(say("told", "cards done", {"done": str(done), "total": str(total)})), clear


def print_cards(asked: Namespace, address: str, told: Told) -> int:
    """Write the PDF, whole or not at all, and note the prints; answers how many cards there are. ``address`` is the plain
    one of the server that the codes lead to. Refused for a run, tray or card that there is not."""
    check_out(asked.out)
    with opened(asked.data) as (store, workshop):
        run = run_meant(workshop, asked.run)
        wanted = Wanted(
            named_trays(run, asked.trays),
            asked.kinds,
            asked.paper,
            asked.language,
            every=asked.every_slip,
            full=asked.full,
        )
        prints = next_prints(run, wanted.trays) if "travellers" in wanted.kinds else {}
        if prints and run.state != "open":
            raise Refused("run closed", run=run.name, state=run.state)
        sources = Sources(address, read_keys(store.settings), store.pictures.file)
        order = card_order(workshop, run, wanted, prints, sources)
        try:
            with whole(asked.out) as part:
                count = write_pdf(order, part, told)
                note_prints(workshop, run.id, prints)
        except NoPango as missing:
            raise Mistaken("no pango", packages=missing.packages) from missing
        return count


def served_address(port: int, where: Callable[[], Whereabouts] = whereabouts) -> str:
    """Where a phone finds this computer when it serves on that port: the surest address, else the name it announces."""
    try:
        found = where()
    except OSError:  # the system does not tell its addresses
        found = here_only()
    return urls(found, "http", port)[0]


def checked_address(text: str) -> str:
    """An address as it can stand in a code. Raises ``Mistaken`` for what is none."""
    try:
        parts = urlsplit(text if "://" in text else f"http://{text}")
        fits = parts.scheme in ("http", "https") and parts.hostname and parts.port != 0
    except ValueError:
        fits = False
    if not fits or parts.path.strip("/") or parts.query or parts.fragment or parts.username:
        raise Mistaken("no address", text=repr(text))
    return f"{parts.scheme}://{parts.netloc}"
