"""A jig drawn with its measures: for the answer that makes one, and for the page of one that is kept."""

from markupsafe import Markup

from runboard.charts.jig import JigDrawn, JigSaid, jig
from runboard.plan.jig.question import Plate
from runboard.shop.book import Book
from runboard.words.before.jig import bed_called, drawing_about, drawing_label, length, place_size


def jig_drawn(
    book: Book, name: str, plate: Plate, bed: tuple[float, float] | None, corner: tuple[float, float] | None
) -> Markup:
    """The drawing of a plate, on its bed where that is known."""
    places = [(place.x, place.y) for place in plate.places]
    shown = JigDrawn((plate.wide, plate.high), places, (plate.length, plate.width), bed, corner or (0.0, 0.0))
    said = JigSaid(
        length(book, plate.wide),
        length(book, plate.high),
        length(book, plate.pitch_x),
        length(book, plate.pitch_y),
        place_size(book, plate),
        bed_called(book, bed) if bed else "",
    )
    return jig("jig", drawing_label(name), shown, said, drawing_about())
