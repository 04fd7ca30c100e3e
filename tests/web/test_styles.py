"""The styles: sizes follow the size of text that somebody set in the browser. Only lines are in pixels; paper has its own units,
and so has what is written into a drawing."""

import re
from pathlib import Path

import pytest

from tests.serving import ROOT

PAPER = {"4x6.css", "a4.css", "a6.css", "card.css", "drawing.css", "letter.css"}
STYLES = sorted(path for path in (ROOT / "static").rglob("*.css") if path.name not in PAPER)
A_LINE = 6  # px
PIXELS = re.compile(r"(?<![\w#.-])(\d*\.?\d+)px")
IN_A_DRAWING = re.compile(r"^[^{]*(?:\.chart\b|\btext\b)[^{]*\{[^}]*\}", re.MULTILINE)
SIZE_OF_TEXT = re.compile(r"\bfont(?:-size)?:[^;}]*?\d(?:px|pt)\b|\bline-height:[^;}]*?\d(?:px|rem|em|pt)\b")


def said(path: Path) -> str:
    """A style as it counts on a screen."""
    text = re.sub(r"/\*.*?\*/", "", path.read_text("utf-8"), flags=re.DOTALL)
    return re.split(r"^@page|^@media print", text, maxsplit=1, flags=re.MULTILINE)[0]


@pytest.mark.parametrize("path", STYLES, ids=lambda path: path.stem)
def test_nothing_but_a_line_is_in_pixels(path: Path) -> None:
    text = IN_A_DRAWING.sub("", said(path)) if path.name in ("charts.css", "welcome.css") else said(path)

    assert [found for found in PIXELS.findall(text) if float(found) > A_LINE] == []


@pytest.mark.parametrize("path", STYLES, ids=lambda path: path.stem)
def test_text_has_no_size_of_its_own_and_a_line_is_as_high_as_its_text_asks(path: Path) -> None:
    text = IN_A_DRAWING.sub("", said(path)) if path.name in ("charts.css", "welcome.css") else said(path)

    assert SIZE_OF_TEXT.findall(text) == []
