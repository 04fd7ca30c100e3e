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
from runboard.floor.workshop import Workshop
from runboard.store.open import open_store
from runboard.store.pictures import PictureFolder

SEED = 5


class Nobody:
    """Nobody listens while the past is made."""

    def changed(self, seq: int) -> None:
        pass


def make_demo(folder: Path, now: datetime | None = None, seed: int = SEED, zone: str | None = None) -> None:
    """Fill ``folder`` with a shop, two products, two finished runs and one in full swing at ``now``.

    ``now`` is this moment, ``zone`` this computer's time zone, unless they are given. The same seed, moment and zone
    make the same shop. A folder that holds a shop already is left as it is.
    """
    moment = (now or datetime.now(UTC)).astimezone(UTC).replace(microsecond=0)
    store = open_store(folder)
    try:
        if store.books.revision() or store.log.last_seq():
            return
        clock = HandClock(moment - 30 * DAY)
        workshop = Workshop(store.log, store.books, clock, Nobody())
        book = add_pictures(demo_book(moment, zone or zone_here()), PictureFolder(folder))
        workshop.books.save(book, clock.now())
        catch_up(workshop)
        tell(Shopfloor(workshop, clock, Random(seed)), moment)
    finally:
        store.close()
