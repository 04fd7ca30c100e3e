"""Make a data folder with the demo in it."""

from datetime import UTC, datetime
from pathlib import Path
from random import Random

from runboard.demo.book import demo_book
from runboard.demo.drawing import add_pictures
from runboard.demo.here import zone_here
from runboard.demo.phone import HandClock, Shopfloor
from runboard.demo.story import DAY, tell
from runboard.floor.warm import catch_up
from runboard.opening import open_workshop

SEED = 5


def make_demo(folder: Path, now: datetime | None = None, seed: int = SEED, zone: str | None = None) -> None:
    """Fill ``folder`` with a shop, two products, two finished runs and one in full swing at ``now``.

    ``now`` is this moment, ``zone`` this computer's time zone, unless they are given. The same seed, moment and zone
    make the same shop. A folder that holds a shop already is left as it is.
    """
    moment = (now or datetime.now(UTC)).astimezone(UTC).replace(microsecond=0)
    clock = HandClock(moment - 30 * DAY)
    store, workshop = open_workshop(folder, clock)
    try:
        if store.books.revision() or store.log.last_seq():
            return
        book = add_pictures(demo_book(moment, zone or zone_here()), store.pictures)
        workshop.books.save(book, clock.now())
        catch_up(workshop)
        tell(Shopfloor(workshop, clock, Random(seed)), moment)
    finally:
        store.close()
