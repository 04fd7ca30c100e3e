"""A program's path drawn, and the way between its places as it is and as it could be."""

from collections.abc import Sequence
from math import ceil, floor
from typing import Any

from markupsafe import Markup

from runboard.charts.path import Path, Point, every_number, marks, path
from runboard.charts.svg import captioned
from runboard.plan.program.places import Visit
from runboard.plan.program.sketch import Sketch
from runboard.plan.program.visits import VisitOrder
from runboard.shop.book import Book
from runboard.shop.units import MM_A_INCH, Unit
from runboard.words.facts import length_in_words
from runboard.words.sentences import sentence

# An axis has so many lengths at most.
_MOST_MARKS = 6
# Another order is drawn where it saves so many seconds a load, and so much of the travel.
_WORTH_SECONDS, _WORTH_SHARE = 1.0, 0.02


def draw_program(book: Book, question: Any, answer: Any) -> tuple[Markup, ...]:
    """The path, with its places as the program comes to them; and the better order, where one would save something."""
    report, units = answer.report, book.units
    if not report.sketch.box:
        return ()
    first = _path(report.sketch, report.visits, _stock(question, report), units)
    return (first, _order(report.sketch, report.visits, units)) if is_worth_drawing(report.visits) else (first,)


def is_worth_drawing(visits: VisitOrder) -> bool:
    """Whether the other order saves enough to look at."""
    return visits.saving >= max(_WORTH_SECONDS, _WORTH_SHARE * visits.now)


def _path(
    shown: Sketch, visits: VisitOrder, frames: Sequence[tuple[float, float, float, float]], units: Unit
) -> Markup:
    box = _around(shown, frames)
    drawn = Path(box, shown.cuts, shown.travel, _numbered(visits.before), frames, *_marks(box, units))
    about = [sentence("program-drawing-lines")]
    if drawn.places:
        about.append(sentence("program-drawing-places", {"count": visits.places}))
    about += _numbers(drawn)
    if frames:
        about.append(sentence("program-drawing-stock"))
    if not shown.is_whole:
        about.append(sentence("program-drawing-not-whole"))
    return _figure("program-path", sentence("program-drawing-path"), drawn, " ".join(about))


def _order(shown: Sketch, visits: VisitOrder, units: Unit) -> Markup:
    box = _around(shown, ())
    drawn = Path(box, shown.cuts, visits.way_after, _numbered(visits.after), (), *_marks(box, units))
    about = " ".join([sentence("program-drawing-order"), *_numbers(drawn)])
    return _figure("program-after", sentence("program-drawing-after"), drawn, about)


def _numbers(drawn: Path) -> list[str]:
    """That not every place has its number, where it is so."""
    every = every_number(drawn)
    return [sentence("program-drawing-every", {"every": every})] if drawn.places and every > 1 else []


def _figure(key: str, label: str, drawn: Path, about: str) -> Markup:
    return captioned(path(key, label, drawn, about), label, about)


def _numbered(order: Sequence[Visit]) -> list[Point]:
    """Where each place is come to first; of one place alone none, since there is nothing to tell apart."""
    found: dict[int, Point] = {}
    for visit in order:
        found.setdefault(visit.place, visit.entry)
    return [*found.values()] if len(found) > 1 else []


def _stock(question: Any, report: Any) -> list[tuple[float, float, float, float]]:
    """The stock, where its zero can only be at its corner or in its middle."""
    length, width = question.stock_length, question.stock_width
    if not length or not width or not report.cut_extent:
        return []
    (x_low, x_high), (y_low, y_high) = report.cut_extent[:2]
    for box in ((0.0, 0.0, length, width), (-length / 2, -width / 2, length / 2, width / 2)):
        if box[0] <= x_low and box[1] <= y_low and x_high <= box[2] and y_high <= box[3]:
            return [box]
    return []


def _around(shown: Sketch, frames: Sequence[tuple[float, float, float, float]]) -> tuple[float, float, float, float]:
    (x_low, x_high), (y_low, y_high) = shown.box
    boxes = [(x_low, y_low, x_high, y_high), *frames]
    low, high = [*zip(*boxes, strict=True)][:2], [*zip(*boxes, strict=True)][2:]
    return min(low[0]), min(low[1]), max(high[0]), max(high[1])


def _marks(
    box: tuple[float, float, float, float], units: Unit
) -> tuple[list[tuple[float, str]], list[tuple[float, str]]]:
    """What is said along x and y, as far apart on both."""
    unit = float(MM_A_INCH) if units == "in" else 1.0
    x_low, y_low, x_high, y_high = box
    side = max(x_high - x_low, y_high - y_low)
    apart = marks(side, unit, _MOST_MARKS)

    def said(low: float, high: float) -> list[tuple[float, str]]:
        found = [apart * number for number in range(ceil(low / apart - 1e-9), floor(high / apart + 1e-9) + 1)]
        return [(mm, length_in_words(round(mm, 6), units).replace("-", "−")) for mm in found]

    return said(x_low, x_high), said(y_low, y_high)
