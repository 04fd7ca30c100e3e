"""A PDF as a printer and a reader see it: pictures of its pages, the text on them, the codes in them."""

import subprocess
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import zxingcpp
from PIL import Image, ImageFilter
from pypdf import PdfReader

from runboard.cards.model import CardOrder
from runboard.cards.pdf import write_pdf

LABEL_PRINTER = 203


def nobody(done: int, total: int) -> None:
    pass


def printed(order: CardOrder, folder: Path) -> Path:
    """The order's PDF."""
    out = folder / "cards.pdf"
    write_pdf(order, out, nobody)
    return out


def text_of(pdf: Path) -> list[str]:
    """The text of each page, its white space made one."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(pdf).pages]


def pictures(pdf: Path, dpi: int = LABEL_PRINTER) -> Iterator[Image.Image]:
    """The pages in grey, as a printer without colour makes them."""
    subprocess.run(["pdftoppm", "-gray", "-r", str(dpi), str(pdf), str(pdf.with_suffix(""))], check=True)
    for page in sorted(pdf.parent.glob(f"{pdf.stem}-*.pgm")):
        with Image.open(page) as image:
            yield image.copy()
        page.unlink()


def codes(image: Image.Image) -> list[str]:
    """The texts of the codes on a page."""
    return sorted(one.text for one in _found(image))


def code_pictures(image: Image.Image) -> list[Image.Image]:
    """Each code of a page, cut out with its white border."""
    corners = [(one.position.top_left, one.position.bottom_right) for one in _found(image)]
    return [image.crop((a.x - 20, a.y - 20, b.x + 20, b.y + 20)) for a, b in corners]


def _found(image: Image.Image) -> list[zxingcpp.Barcode]:
    return list(zxingcpp.read_barcodes(image, formats=zxingcpp.BarcodeFormat.QRCode))


def smudged(image: Image.Image, seed: int) -> Image.Image:
    """A code after a day in the shop: blurred, greyed by dust, and with a thumb's grease and six stains of a millimetre
    across its middle. The three corners by which a reader finds a code at all are only dusty."""
    chance = np.random.default_rng(seed)
    grey = np.asarray(image.filter(ImageFilter.GaussianBlur(0.7)), dtype=np.float32)
    side = grey.shape[0]
    rows, columns = np.mgrid[0:side, 0 : grey.shape[1]]
    thumb = ((rows - side * 0.6) / (side * 0.25)) ** 2 + ((columns - side * 0.55) / (side * 0.15)) ** 2 < 1
    grey = np.where(thumb, grey * 0.5 + 70, grey * 0.75 + 30)
    for _ in range(6):
        row, column = chance.uniform(0.35, 0.75, 2) * side
        grey[(rows - row) ** 2 + (columns - column) ** 2 < 4.0**2] = chance.choice([20, 235])
    return Image.fromarray(np.clip(grey + chance.normal(0, 25, grey.shape), 0, 255).astype(np.uint8))
