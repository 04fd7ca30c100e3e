"""How a kept jig is put back, on its page."""

from dataclasses import dataclass

from markupsafe import Markup

from runboard.plan.jig.question import corner_of, plate_of
from runboard.shop.book import Book
from runboard.shop.machines import Jig
from runboard.web.forms.jig_drawn import jig_drawn
from runboard.words.before.jig import put_back, put_back_head


@dataclass(frozen=True)
class PutBack:
    """Its heading, a sentence a step, the jig on its bed."""

    head: str
    steps: tuple[str, ...]
    drawing: Markup


def jigs_on(book: Book, station: str) -> list[Jig]:
    """The jigs that are kept with a station."""
    return [jig for jig in book.jigs if jig.station == station]


def put_back_of(book: Book, key: str) -> PutBack | None:
    """None where no such jig is kept."""
    jig = next((one for one in book.jigs if one.key == key), None)
    if jig is None:
        return None
    motion = station.motion if (station := book.station(jig.station)) else None
    x, y = (motion.travel_x, motion.travel_y) if motion else (None, None)
    bed = None if x is None or y is None else (x, y)
    return PutBack(put_back_head(), put_back(book, jig), jig_drawn(book, jig.name, plate_of(jig), bed, corner_of(jig)))
