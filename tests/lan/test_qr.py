"""The codes as a phone reads them: drawn as a terminal and a browser draw them, decoded by another library."""

import re
from xml.etree import ElementTree

import pytest
import zxingcpp
from PIL import Image, ImageDraw

from runboard.lan import qr

PAIR = "https://192.168.178.120:8443/pair#K7QM-2XTD-9FWA-6HNP"
TEXTS = [PAIR, "http://10.0.0.5:8210/", "https://runboard-shop-pc.local:8443/pair?code=" + "aB3" * 30]
_HALVES = {" ": (0, 0), "▀": (1, 0), "▄": (0, 1), "█": (1, 1)}
_ANSI = re.compile("\x1b\\[[0-9;]*m")


def terminal_image(text: str, ink: int, paper: int) -> Image.Image:
    """A terminal of cells of 8 × 16 pixels: what a cell's character leaves free is paper."""
    lines = _ANSI.sub("", text).splitlines()
    image = Image.new("L", (max(map(len, lines)) * 8 + 80, len(lines) * 16 + 80), paper)
    draw = ImageDraw.Draw(image)
    for row, line in enumerate(lines):
        for column, character in enumerate(line):
            for half, inked in enumerate(_HALVES[character]):
                left, top = 40 + column * 8, 40 + row * 16 + half * 8
                draw.rectangle((left, top, left + 7, top + 7), ink if inked else paper)
    return image


def svg_image(text: str, width: int) -> Image.Image:
    """The two paths of the SVG, drawn on a dark page: a filled square of paper, and lines one module thick."""
    root = ElementTree.fromstring(text)
    size = int(root.attrib["viewBox"].split()[2])
    paper, lines = [one.attrib for one in root if one.tag.endswith("path")]
    assert (paper["fill"], lines["stroke"]) == ("#fff", "#000")
    image = Image.new("L", (size + 4, size + 4), 20)
    draw = ImageDraw.Draw(image)
    draw.rectangle((2, 2, size + 1, size + 1), 255)
    x = y = 0.0
    for step, numbers in re.findall(r"([Mmh])([-\d. ]+)", lines["d"]):
        moved = [float(one) for one in numbers.split()]
        if step == "h":
            draw.line((x + 2, y + 1.5, x + 1 + moved[0], y + 1.5), 0)
            x += moved[0]
        else:
            x, y = (moved[0], moved[1]) if step == "M" else (x + moved[0], y + moved[1])
    return image.resize((width, width), Image.Resampling.NEAREST)


def read(image: Image.Image) -> list[str]:
    return [one.text for one in zxingcpp.read_barcodes(image, formats=zxingcpp.BarcodeFormat.QRCode)]


def read_upright(image: Image.Image) -> list[str]:
    """As a reader that knows nothing of codes in light on dark."""
    found = zxingcpp.read_barcodes(image, formats=zxingcpp.BarcodeFormat.QRCode, try_invert=False)
    return [one.text for one in found]


@pytest.mark.parametrize("text", TEXTS)
def test_a_phone_reads_it_from_a_dark_terminal(text: str) -> None:
    assert read_upright(terminal_image(qr.terminal(text, colours=False), ink=230, paper=20)) == [text]


@pytest.mark.parametrize("text", TEXTS)
def test_with_colours_a_phone_reads_it_from_any_terminal(text: str) -> None:
    drawn = qr.terminal(text, colours=True)

    # The colours are set for each line: white ink on black, whatever the terminal's own are.
    assert all(line.startswith("\x1b[0;97;40m") and line.endswith("\x1b[0m") for line in drawn.splitlines())
    assert read_upright(terminal_image(drawn, ink=255, paper=0)) == [text]


def test_without_colours_a_light_terminal_shows_it_inverted() -> None:
    assert read(terminal_image(qr.terminal(PAIR, colours=False), ink=20, paper=230)) == [PAIR]


@pytest.mark.parametrize("text", TEXTS)
def test_a_phone_reads_it_from_a_dark_page(text: str) -> None:
    assert read_upright(svg_image(qr.svg(text, "pair"), 360)) == [text]


def test_it_is_read_at_an_angle_and_blurred_by_a_shaking_hand() -> None:
    image = svg_image(qr.svg(PAIR, "pair"), 240).rotate(
        17, expand=True, resample=Image.Resampling.BILINEAR, fillcolor=20
    )

    assert read(image.resize((180, 180), Image.Resampling.BILINEAR)) == [PAIR]


def test_the_longest_fits_a_terminal_of_80_columns_and_one_more_is_refused() -> None:
    longest = "http://" + "aB" * ((qr.LONGEST - 7) // 2) + "x"
    lines = qr.terminal(longest, colours=False).splitlines()

    assert len(longest) == qr.LONGEST
    assert max(map(len, lines)) <= 80
    with pytest.raises(ValueError, match="301 characters"):
        qr.terminal(longest + "x", colours=False)


def test_a_pairing_code_fits_a_terminal_of_24_lines() -> None:
    assert len(qr.terminal(PAIR, colours=False).splitlines()) <= 23


def test_the_page_gets_no_style_and_no_script() -> None:
    drawn = qr.svg(PAIR, 'pair <this> & "that"')

    assert "style" not in drawn
    assert "<?xml" not in drawn
    assert ElementTree.fromstring(drawn)[0].text == 'pair <this> & "that"'
