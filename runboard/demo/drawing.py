"""The demo's own pictures: a key rail, one that lies in its jig, and a serving board, drawn so that nothing has to be shipped."""

import io
from typing import TYPE_CHECKING, Any

from runboard.floor.changing.pictures import Shelf

if TYPE_CHECKING:
    from PIL.ImageDraw import ImageDraw

Record = dict[str, Any]

_PAPER, _INK = "#f6f3ec", "#2b2620"
_ASH, _GRAIN, _BRASS, _BURNT, _JIG = "#d9b98a", "#c9a574", "#b3852f", "#5a3a1c", "#9aa3a8"
_WIDE, _HIGH = 1200, 500
_RAIL = (100, 170, 1100, 330)


def add_pictures(record: Record, shelf: Shelf) -> Record:
    """The demo's book with pictures: of the key rail, and of the rail in its jig at the step that lays it there."""
    rails = next(product for product in record["products"] if product["key"] == "rails")
    rails["picture"] = shelf.keep(_drawn(in_jig=False), "png")
    hooks = next(operation for operation in rails["operations"] if operation["key"] == "hooks")
    hooks["instructions"][0]["picture"] = shelf.keep(_drawn(in_jig=True), "png")
    boards = next(product for product in record["products"] if product["key"] == "boards")
    boards["picture"] = shelf.keep(_board_drawn(with_hole=True), "png")
    for operation in boards["operations"]:
        if operation.get("instructions"):
            operation["instructions"][0]["picture"] = shelf.keep(_board_drawn(with_hole=False), "png")
    return record


def _board_drawn(*, with_hole: bool) -> bytes:
    """A serving board with its handle; ``with_hole`` as it leaves the CNC."""
    from PIL import Image, ImageDraw

    image = Image.new("RGB", (_WIDE, _HIGH), _PAPER)
    pen = ImageDraw.Draw(image)
    pen.rounded_rectangle((240, 90, 1110, 410), 46, fill=_ASH, outline=_INK, width=4)
    pen.rounded_rectangle((80, 200, 280, 300), 44, fill=_ASH, outline=_INK, width=4)
    pen.rectangle((246, 205, 284, 295), fill=_ASH)
    for line in range(112, 396, 17):
        left = 110 if 206 < line < 294 else 262
        pen.line((left, line, 1088, line + 3), fill=_GRAIN, width=3)
    if with_hole:
        pen.ellipse((122, 228, 166, 272), fill=_PAPER, outline=_INK, width=4)
    kept = io.BytesIO()
    image.quantize(64).save(kept, "PNG", optimize=True)
    return kept.getvalue()


def _drawn(*, in_jig: bool) -> bytes:
    from PIL import Image, ImageDraw

    image = Image.new("RGB", (_WIDE, _HIGH), _PAPER)
    pen = ImageDraw.Draw(image)
    if in_jig:
        _jig(pen)
    _rail(pen)
    for place in range(4):
        put = _bore if in_jig else _hook
        put(pen, 230 + place * 246)
    kept = io.BytesIO()
    image.quantize(64).save(kept, "PNG", optimize=True)
    return kept.getvalue()


def _rail(pen: "ImageDraw") -> None:
    left, top, right, bottom = _RAIL
    pen.rounded_rectangle(_RAIL, 14, fill=_ASH, outline=_INK, width=4)
    for line in range(top + 18, bottom - 8, 17):
        pen.line((left + 8, line, right - 8, line + 3), fill=_GRAIN, width=3)
    pen.text(((left + right) / 2, top + 46), "12", fill=_BURNT, font=_letters(72), anchor="mm")


def _letters(size: int) -> Any:
    from PIL import ImageFont

    return ImageFont.load_default(size)


def _hook(pen: "ImageDraw", x: int) -> None:
    for colour, width in ((_INK, 22), (_BRASS, 14)):
        pen.line((x, 270, x, 352), fill=colour, width=width)
        out = width / 2
        pen.arc((x - 60 - out, 322 - out, x + out, 382 + out), 0, 180, fill=colour, width=width)
    pen.ellipse((x - 22, 248, x + 22, 292), fill=_BRASS, outline=_INK, width=4)


def _bore(pen: "ImageDraw", x: int) -> None:
    pen.ellipse((x - 9, 261, x + 9, 279), fill=_INK)


def _jig(pen: "ImageDraw") -> None:
    """A tray with a stop at the left and at the back, into which the rail is pushed."""
    pen.rectangle((60, 120, 1140, 380), fill=_JIG, outline=_INK, width=4)
    pen.rectangle((60, 120, 100, 380), fill=_INK)
    pen.rectangle((60, 120, 1140, 168), fill=_INK)
