"""Make a data folder with the demo in it."""

import os
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from runboard.demo.book import SMALL_RACK, demo_book
from runboard.demo.drawing import add_pictures
from runboard.demo.files import DRAWING, PROGRAM, number_jig_drawing, rail_board_program
from runboard.demo.finished import BEGINS
from runboard.demo.phone import HandClock, Shopfloor
from runboard.demo.story import tell
from runboard.floor.warm import catch_up
from runboard.opening import open_workshop

SEED = 19
TO_TRY = "to-try"
# Hooks take so many times what the route guesses: nearly three and a half minutes a rail.
LONGER = {"hooks": 1.7}
LINK = Path("/etc/localtime")


def make_demo(folder: Path, now: datetime | None = None, seed: int = SEED, zone: str | None = None) -> None:
    """Fill ``folder`` with a shop, two products, finished runs of both and one in full swing at ``now``.

    ``now`` is this moment, ``zone`` this computer's time zone, unless they are given. The same seed, moment and zone
    make the same shop. A folder that holds a shop already is left as it is.
    """
    moment = (now or datetime.now(UTC)).astimezone(UTC).replace(microsecond=0)
    clock = HandClock(moment - BEGINS)
    store, workshop = open_workshop(folder, clock)
    try:
        if store.books.revision() or store.log.last_seq():
            return
        book = add_pictures(demo_book(moment, zone or zone_here(), SMALL_RACK), store.pictures)
        workshop.books.save(book, clock.now())
        catch_up(workshop)
        with store.connections.not_waiting_for_the_disk():
            tell(Shopfloor(workshop, clock, Random(seed), longer=LONGER), moment)
        _lay_out_files(folder / TO_TRY)
    finally:
        store.close()


def _lay_out_files(folder: Path) -> None:
    """The program and the drawing that the product's page can be tried with."""
    folder.mkdir(mode=0o700, exist_ok=True)
    for name, text in ((PROGRAM, rail_board_program()), (DRAWING, number_jig_drawing())):
        (folder / name).write_text(text, encoding="utf-8")
        (folder / name).chmod(0o600)


def zone_here(link: Path = LINK) -> str:
    """This computer's time zone, so that the demo's times of day are those on its reader's wall: from TZ or from where the
    system's own link points; UTC where neither says."""
    for name in (os.environ.get("TZ", "").lstrip(":"), _linked(link)):
        if name and _is_zone(name):
            return name
    return "UTC"


def _linked(link: Path) -> str:
    """``Europe/Berlin`` from a link to /usr/share/zoneinfo/Europe/Berlin."""
    try:
        return str(link.resolve(strict=True)).partition("zoneinfo/")[2]
    except OSError:
        return ""


def _is_zone(name: str) -> bool:
    try:
        ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return False
    return True
