"""How many places a jig has, and whether they fit on the bed."""

import math
from collections.abc import Sequence

from runboard.plan.before.kind import File
from runboard.plan.jig.question import CLEARANCE, MOST_PLACES, JigAnswer, Layout, Plate
from runboard.plan.outlines.unclear import Unclear
from runboard.run.refusal import Refused
from runboard.shop.book import Book

_NEAR = 1e-9
_FINE = 0.002  # mm: a piece must go into its place


def laid_out(book: Book, question: Layout, file: File | None) -> JigAnswer:
    """The jig. Refused where nobody says how large a piece is, where places would overlap, or where not one fits."""
    piece, unclear = _piece(book, question, file)
    clearance = CLEARANCE[question.fit] if question.clearance is None else question.clearance
    length, width = piece[0] + clearance, piece[1] + clearance
    pitch_x = length + question.gap if question.pitch_x is None else question.pitch_x
    pitch_y = width + question.gap if question.pitch_y is None else question.pitch_y
    if question.kerf >= min(length, width):
        raise Refused("jig-kerf-too-wide", kerf=question.kerf)
    corner = None if question.corner_x is None or question.corner_y is None else (question.corner_x, question.corner_y)
    one = Plate(1, 1, length, width, pitch_x, pitch_y, question.margin, question.kerf)
    bed = _bed(book, question.station)
    room = None if bed is None else (bed[0] - (corner or (0, 0))[0], bed[1] - (corner or (0, 0))[1])
    fitting = None if room is None else (_count(room[0], one.wide, pitch_x), _count(room[1], one.high, pitch_y))
    columns, rows = _grid(question, fitting)
    if (columns > 1 and pitch_x <= length) or (rows > 1 and pitch_y <= width):
        raise Refused("jig-places-overlap", length=length, width=width)
    plate = Plate(columns, rows, length, width, pitch_x, pitch_y, question.margin, question.kerf)
    fits = room is None or (plate.wide <= room[0] + _NEAR and plate.high <= room[1] + _NEAR)
    return JigAnswer(
        plate, piece, clearance, bed, room, fits, fitting, question.pieces, corner, question.numbers, file is not None, unclear
    )  # fmt: skip


def _piece(book: Book, question: Layout, file: File | None) -> tuple[tuple[float, float], Sequence[Unclear]]:
    """Length and width of a piece: of the outline in the file, as typed, or as the product says."""
    if file is not None:
        return _outline(file)
    product = book.product(question.product or "")
    own = product.piece if product else None
    length = question.piece_length or (own.length if own else None)
    width = question.piece_width or (own.width if own else None)
    if length is None or width is None:
        raise Refused("jig-no-piece")
    return (length, width), ()


def _outline(file: File) -> tuple[tuple[float, float], Sequence[Unclear]]:
    from runboard.plan.outlines.box import box_of
    from runboard.plan.outlines.svg import read_svg

    shapes = read_svg(file.content, _FINE)
    box = box_of(shapes)
    if box is None:
        raise Refused("jig-nothing-drawn")
    if not 1 <= min(box.length, box.width) <= max(box.length, box.width) <= 10_000:
        raise Refused("jig-outline-size")
    return (box.length, box.width), shapes.unclear


def _bed(book: Book, station: str | None) -> tuple[float, float] | None:
    found = book.station(station or "")
    if found is None or found.motion.travel_x is None or found.motion.travel_y is None:
        return None
    return found.motion.travel_x, found.motion.travel_y


def _count(room: float, first: float, pitch: float) -> int:
    """How many fit one behind the other."""
    return 0 if first > room + _NEAR else 1 + math.floor((room - first) / pitch + _NEAR)


def _grid(question: Layout, fitting: tuple[int, int] | None) -> tuple[int, int]:
    """Columns and rows: as asked; else as few as take a tray, side by side as far as the bed goes; else as many as fit. Where
    nobody knows the bed, a tray lies one below the other."""
    columns, rows = question.columns, question.rows
    if fitting is not None and not columns * rows and 0 in fitting:
        raise Refused("jig-does-not-fit")
    most = fitting or (1, MOST_PLACES)
    if not columns and not rows:
        if question.pieces is None:
            return _asked(fitting)
        rows = min(most[1], math.ceil(question.pieces / most[0]))
        columns = min(most[0], math.ceil(question.pieces / rows))
    elif not rows:
        rows = most[1] if question.pieces is None else min(most[1], math.ceil(question.pieces / columns))
    elif not columns:
        columns = most[0] if question.pieces is None else min(most[0], math.ceil(question.pieces / rows))
    if columns * rows > MOST_PLACES:
        raise Refused("jig-too-many-places", places=columns * rows, most=MOST_PLACES)
    return columns, rows


def _asked(fitting: tuple[int, int] | None) -> tuple[int, int]:
    if fitting is None:
        raise Refused("jig-no-bed")
    if fitting[0] * fitting[1] > MOST_PLACES:
        raise Refused("jig-too-many-places", places=fitting[0] * fitting[1], most=MOST_PLACES)
    return fitting
