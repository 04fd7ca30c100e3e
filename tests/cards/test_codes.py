"""Every code of 60 printed cards, read by libraries that did not draw them, at a label printer's 203 dpi."""

from dataclasses import replace

import cv2
import numpy as np
import pytest
from PIL import Image

from runboard.cards import qr
from runboard.cards.model import CardOrder
from tests.cards.making import link, order, rails_book, run_of
from tests.cards.printing import code_pictures, codes, pictures, printed, smudged

CARDS = 60
WANTED = sorted(link("r7", str(tray)).address for tray in range(1, CARDS + 1))


@pytest.fixture(scope="module")
def asked() -> CardOrder:
    book = rails_book()
    run = run_of(book.products[0], trays=CARDS)
    late = {
        key: replace(tray, at={"hooks": 5}) for key, tray in run.trays.items()
    }  # so that one card holds what is left
    return order(book, replace(run, trays=late), "a4")


@pytest.fixture(scope="module")
def pages(asked: CardOrder, tmp_path_factory: pytest.TempPathFactory) -> list[Image.Image]:
    return list(pictures(printed(asked, tmp_path_factory.mktemp("cards"))))


def test_every_code_of_sixty_cards_opens_its_tray(pages: list[Image.Image]) -> None:
    found = sorted(text for page in pages for text in codes(page))

    assert found == WANTED


def test_a_second_library_reads_the_same(pages: list[Image.Image]) -> None:
    reader = cv2.QRCodeDetector()

    found = sorted(reader.detectAndDecode(np.asarray(code))[0] for page in pages for code in code_pictures(page))

    assert found == WANTED


def test_dusty_greasy_and_stained_they_read_all_the_same(pages: list[Image.Image]) -> None:
    pictures = [code for page in pages for code in code_pictures(page)]

    found = sorted(text for seed, code in enumerate(pictures) for text in codes(smudged(code, seed)))

    assert found == WANTED


@pytest.mark.parametrize(("length", "side"), [(42, 28.15), (46, 30.65), (58, 30.65), (80, 28.52)])
def test_a_module_is_four_dots_of_a_label_printer_at_least(length: int, side: float) -> None:
    assert f'width="{side:.2f}' in qr.svg(("http://192.168.178.120:8210/t/" + "x4" * 50)[:length])


def test_a_code_that_would_be_too_fine_is_refused() -> None:
    with pytest.raises(ValueError, match="141 characters"):
        qr.svg("x" * 141)
