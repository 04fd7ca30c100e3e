"""The boxes of a page as WeasyPrint lays them out, to see whether anything leaves its row or its card."""

from collections.abc import Iterator
from typing import Any

import weasyprint

from runboard.cards.model import CardOrder
from runboard.cards.page import page_html

MM = 96 / 25.4
_TOUCHES = 0.35 * MM  # a hairline


def laid_out(order: CardOrder) -> Any:
    """The document of an order's page, as a browser would be given it."""
    return weasyprint.HTML(string=page_html(order)).render()


def overflows(document: Any) -> list[str]:
    """What lies outside its row, head, foot or card."""
    return [said for page in document.pages for said in _within(page._page_box)]


def _within(page: Any) -> Iterator[str]:
    for box in _inside(page):
        name = _kind(box)
        if name in ("card", "row", "header", "footer", "notes"):
            yield from _outside(box, name)


def _outside(frame: Any, name: str) -> Iterator[str]:
    side = 5 * MM if name == "header" else _TOUCHES  # a code's white border may lie on the card's margin
    for box in _inside(frame):
        text = getattr(box, "text", None)
        if not text or not text.strip():
            continue
        right, bottom = box.position_x + box.width, box.position_y + box.height
        if right > frame.border_box_x() + frame.border_width() + side or box.position_x < frame.border_box_x() - side:
            yield f"{name}: {text!r} is {(right - frame.border_box_x() - frame.border_width()) / MM:.1f} mm too wide"
        if (
            bottom > frame.border_box_y() + frame.border_height() + _TOUCHES
            or box.position_y < frame.border_box_y() - side
        ):
            yield f"{name}: {text!r} is {(bottom - frame.border_box_y() - frame.border_height()) / MM:.1f} mm too low"


def _inside(box: Any) -> Iterator[Any]:
    """Every box in a box, those that stand where they are put too."""
    for child in getattr(box, "children", ()):
        real = getattr(child, "_box", child)
        yield real
        yield from _inside(real)


def _kind(box: Any) -> str:
    element = getattr(box, "element", None)
    if element is None or not getattr(box, "children", ()):
        return ""
    classes = (element.get("class") or "").split()
    if element.tag in ("header", "footer"):
        return str(element.tag)
    return next((one for one in ("card", "row", "notes") if one in classes), "")
