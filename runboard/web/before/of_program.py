"""A program's path drawn, and the way between its places as it is and as it could be."""

from collections.abc import Sequence
from math import ceil, floor
from typing import Any

from markupsafe import Markup

from runboard.charts.path import Path, Point, marks, path
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
    """The path; and before and after, where another order of visits would save something."""
    report, units = answer.report, book.units
    if not report.sketch.box:
        return ()
    frames = _stock(question, report)
    first = _path(report.sketch, report.visits, frames, units)
    if not is_worth_drawing(report.visits):
        return (first,)
    way = (_order(report.sketch, report.visits, is_after, units) for is_after in (False, True))
    return (first, *way)


def is_worth_drawing(visits: VisitOrder) -> bool:
    """Whether the other order saves enough to look at."""
    return visits.saving >= max(_WORTH_SECONDS, _WORTH_SHARE * visits.now)


def _path(
    shown: Sketch, visits: VisitOrder, frames: Sequence[tuple[float, float, float, float]], units: Unit
) -> Markup:
    about = [sentence("program-drawing-lines")]
    if visits.places > 1:
        about.append(sentence("program-drawing-places", {"count": visits.places}))
    if frames:
        about.append(sentence("program-drawing-stock"))
    if not shown.is_whole:
        about.append(sentence("program-drawing-not-whole"))
    box = _around(shown, frames)
    drawn = Path(box, shown.cuts, shown.travel, _numbered(visits.before), frames, *_marks(box, units))
    return _figure("program-path", sentence("program-drawing-path"), drawn, " ".join(about))


def _order(shown: Sketch, visits: VisitOrder, is_after: bool, units: Unit) -> Markup:
    which = "after" if is_after else "before"
    order = visits.after if is_after else visits.before
    box = _around(shown, ())
    drawn = Path(
        box, shown.cuts, visits.way_after if is_after else visits.way_before, _numbered(order), (), *_marks(box, units)
    )
    label = sentence(f"program-drawing-{which}")
    return _figure(f"program-{which}", label, drawn, sentence("program-drawing-order"))


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
