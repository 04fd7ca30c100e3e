"""QR codes as ISO/IEC 18004 sizes them, and read back by zxing's own reader.

A symbol of version v has 17 + 4v modules a side, and four of white around it (from memory); the version that a text needs at
a level is what segno makes of it, calculated beside the product.
"""

import re

import numpy as np
import pytest
import zxingcpp
from PIL import Image

from runboard.cards import qr as on_cards
from runboard.lan import qr as on_screens
from tests.outside.said import calculated

TRAY, ADDRESS = "RUN-2026-0042/TRAY-07", "https://10.0.0.2:8443/r/42?t=7"


def with_quiet_zone(version: int) -> str:
    side = 17 + 4 * version + 2 * 4
    return f"0 0 {side} {side}"


def view_box(svg: str) -> str:
    return re.findall(r'viewBox="([^"]+)"', svg)[0]


@calculated("segno: version 3 and 4 at level H", {TRAY: with_quiet_zone(3), ADDRESS: with_quiet_zone(4)})
def test_a_card_has_the_level_that_stands_most_dirt(text: str) -> str:
    return view_box(on_cards.svg(text))


# 203 dots an inch: six dots a module in 37, five in 41, so that the code stays within 30.8 mm.
@calculated(
    "whole dots of a printer of 203 dpi", {TRAY: 37 * 6 * 25.4 / 203, ADDRESS: 41 * 6 * 25.4 / 203}, within=6e-4
)
def test_a_module_on_a_card_is_whole_dots(text: str) -> float:
    (side,) = set(re.findall(r'(?:width|height)="([\d.]+)mm"', on_cards.svg(text)))
    return float(side)


@calculated("segno: version 1 and 2 at level L", {TRAY: with_quiet_zone(1), ADDRESS: with_quiet_zone(2)})
def test_a_screen_has_the_fewest_modules(text: str) -> str:
    return view_box(on_screens.svg(text, "Pair"))


@pytest.mark.parametrize("text", [TRAY, ADDRESS])
@pytest.mark.parametrize("make", [on_cards.svg, lambda text: on_screens.svg(text, "Pair")], ids=["card", "screen"])
def test_another_reader_reads_what_was_written(text: str, make) -> None:
    (found,) = zxingcpp.read_barcodes(picture(make(text)))

    assert found.text == text


def picture(svg: str, scale: int = 8) -> Image.Image:
    """The drawing as pixels: strokes of one module in rows, as ``M x y h n m dx dy …``."""
    side = int(view_box(svg).split()[2])
    modules = np.full((side, side), 255, dtype=np.uint8)
    (path,) = re.findall(r'<path[^>]* d="(M[^"]*m[^"]*)"', svg)
    x = y = 0.0
    for command, numbers in re.findall(r"([Mmh])([^Mmh]*)", path):
        values = [float(one) for one in re.findall(r"-?[\d.]+", numbers)]
        if command == "h":
            modules[int(y), int(x) : int(x + values[0])] = 0
            x += values[0]
        else:
            x, y = (values[0], values[1]) if command == "M" else (x + values[0], y + values[1])
    return Image.fromarray(np.kron(modules, np.ones((scale, scale), dtype=np.uint8)))
