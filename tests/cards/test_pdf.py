"""The PDF: its text read back, its sheets, progress, and what happens without Pango."""

import builtins
import re
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from PIL import Image
from pypdf import PdfReader

from runboard.cards import pdf
from runboard.cards.papers import PAPERS
from runboard.cards.pdf import PACKAGES, NoPango, write_pdf
from tests.cards.making import LANGUAGES, order, rails_book, run_of
from tests.cards.making import PAPERS as KEYS
from tests.cards.printing import nobody, printed, text_of


def test_the_text_of_a_full_traveller_can_be_read_back(tmp_path: Path) -> None:
    check = {"key": "width", "text": "Width of the rail", "per": "setup", "nominal": 60, "plus": 0.3, "minus": 0.2}
    book = rails_book(cut={"checks": [check], "setup_sheet": [["Cutter", "6 mm upcut"]]})

    whole = " ".join(text_of(printed(order(book, run_of(book.products[0], trays=1), kinds="full"), tmp_path)))

    for said in (
        "Key rails, run 7",
        "5 pieces",
        "the only tray",
        "run due Thu 17:00",
        "Width of the rail",
        "60 mm +0.3 −0.2",
        "59.8 to 60.3",
        "Stay and watch. Never leave it running.",
        "6 mm upcut",
        "Let dry: at least 12 h",
        "carry on from",
        "1 · 2/",
        "route revision 1 · print 1",
        "Call 112.",
        "K7QM-2XTD",
        "notes",
    ):
        assert said in whole, said


@pytest.mark.parametrize("language", LANGUAGES)
def test_it_speaks_the_cards_language(language: str, tmp_path: Path) -> None:
    book = rails_book()
    words = {"en": "scrap", "de": "Aussch.", "es": "defect.", "fr": "rebut"}

    whole = " ".join(text_of(printed(order(book, run_of(book.products[0], trays=1), language=language), tmp_path)))

    assert words[language] in whole
    assert "card-" not in whole
    assert "care-" not in whole


@pytest.mark.parametrize("paper", KEYS)
def test_sheets_have_their_papers_size(paper: str, tmp_path: Path) -> None:
    book = rails_book()
    pages = PdfReader(printed(order(book, run_of(book.products[0]), paper, kinds="everything"), tmp_path)).pages

    sizes = {
        (round(float(one.mediabox.width) / 72 * 25.4), round(float(one.mediabox.height) / 72 * 25.4)) for one in pages
    }

    assert sizes == {(round(PAPERS[paper].width), round(PAPERS[paper].height))}


def test_four_cards_share_a_sheet_of_a4(tmp_path: Path) -> None:
    book = rails_book()
    asked = order(book, run_of(book.products[0], trays=4))

    singles = len(PdfReader(printed(asked, tmp_path)).pages)
    shared = len(PdfReader(printed(replace(asked, paper="a4"), tmp_path)).pages)

    assert shared == -(-singles // 4)


def test_progress_is_told_up_to_the_last_card(tmp_path: Path) -> None:
    book = rails_book()
    told: list[tuple[int, int]] = []

    total = write_pdf(
        order(book, run_of(book.products[0], trays=12), kinds="full"),
        tmp_path / "a.pdf",
        lambda *said: told.append(said),
    )

    assert told[0] == (0, total)
    assert told[-1] == (total, total)
    assert len(told) > 2
    assert told == sorted(told)


def test_a_long_order_is_written_in_parts_and_is_one_document(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    book = rails_book()
    asked = order(book, run_of(book.products[0], trays=6))
    at_once = text_of(printed(asked, tmp_path))

    monkeypatch.setattr(pdf, "_A_PART", 5)
    in_parts = printed(asked, tmp_path)

    assert text_of(in_parts) == at_once
    metadata = PdfReader(in_parts).metadata
    assert metadata is not None
    assert metadata.title == "Key rails, run 7"


def test_the_products_picture_is_embedded_once_and_stands_on_each_full_first_card(tmp_path: Path) -> None:
    book = rails_book()
    product = replace(book.products[0], picture="rail.jpg")
    picture = tmp_path / "somewhere.jpg"
    Image.effect_noise((400, 300), 60).save(picture)
    asked = replace(order(book, run_of(product, trays=2), kinds="full"), pictures={"rail.jpg": str(picture)})

    pages = PdfReader(printed(asked, tmp_path)).pages

    assert len({image.name for page in pages for image in page.images}) == 1
    assert sum(b" Do" in page.get_contents().get_data() for page in pages) == 2


def test_a_page_fetches_nothing_but_signs_and_pictures() -> None:
    fetcher = pdf._fetcher(order(rails_book(), run_of(rails_book().products[0])))

    assert fetcher.fetch("card:///signs/M004.svg").read().startswith(b"<svg")
    for address in ("file:///etc/passwd", "http://example.org/x", "card:///signs/../../pyproject.toml"):
        with pytest.raises((KeyError, FileNotFoundError)):
            fetcher.fetch(address)


def test_without_pango_the_packages_are_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    usual = builtins.__import__

    def missing(name: str, *rest: Any) -> Any:
        if name.startswith("weasyprint"):
            raise OSError("cannot load library 'libpango-1.0-0'")
        return usual(name, *rest)

    monkeypatch.delitem(sys.modules, "weasyprint", raising=False)
    monkeypatch.setattr(builtins, "__import__", missing)

    with pytest.raises(NoPango, match=re.escape(PACKAGES)):
        write_pdf(order(rails_book(), run_of(rails_book().products[0])), tmp_path / "a.pdf", nobody)
