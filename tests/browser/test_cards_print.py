"""The same cards from a browser's print: under the server's own policy, sheet for sheet, and with nothing cut off."""

import io
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, Route
from pypdf import PdfReader

from runboard.cards.layout import sheets
from runboard.cards.model import CardOrder
from runboard.cards.page import page_html
from runboard.cards.papers import PAPERS
from runboard.web.door.guard import _HEADERS
from tests.browser.conftest import STATIC
from tests.cards.making import order, rails_book, run_of

ADDRESS = "http://shop.test/"
TYPES = {".css": "text/css", ".svg": "image/svg+xml"}
# What is drawn outside its row, its card's white margin apart; a code's white border may lie on the margin.
OUTSIDE = """() => [...document.querySelectorAll('.row, header, footer, .notes')].flatMap(row => {
  const frame = row.getBoundingClientRect(), card = row.closest('.card').getBoundingClientRect()
  const found = []
  for (const one of row.querySelectorAll('p, b, span, small, i, img')) {
    const area = document.createRange(); area.selectNodeContents(one)
    for (const box of [one.getBoundingClientRect(), ...area.getClientRects()]) {
      if (!box.width || !box.height) continue
      if (box.bottom > frame.bottom + 2 || box.right > card.right - 9 || box.left < card.left + 9)
        found.push(`${row.className}: ${one.textContent.slice(0, 40)} ${box.right - card.right} ${box.bottom - frame.bottom}`)
    }
  }
  return found
})"""


def served(browser: Browser, text: str) -> Page:
    """The page as the server gives it, with its styles and signs, and nothing from elsewhere."""
    page = browser.new_page()

    def answer(route: Route) -> None:
        path = urlsplit(route.request.url).path
        if path == "/":
            route.fulfill(body=text, content_type="text/html; charset=utf-8", headers=_HEADERS)
        else:
            file = STATIC / path.removeprefix("/static/")
            route.fulfill(path=file, content_type=TYPES[Path(path).suffix])

    page.route("**/*", answer)
    page.emulate_media(media="print")
    page.goto(ADDRESS)
    return page


def asked(paper: str, **changes: Any) -> CardOrder:
    book = rails_book(**changes)
    return order(book, run_of(book.products[0]), paper, kinds="everything")


@pytest.mark.parametrize("paper", list(PAPERS))
def test_a_browser_prints_the_same_sheets(paper: str, chromium: Browser) -> None:
    made = asked(paper)

    page = served(chromium, page_html(made, "/static/"))
    pages = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True))).pages

    assert len(pages) == len(sheets(made))
    width, height = float(pages[0].mediabox.width) / 72 * 25.4, float(pages[0].mediabox.height) / 72 * 25.4
    assert (width, height) == pytest.approx((PAPERS[paper].width, PAPERS[paper].height), abs=0.5)
    page.close()


@pytest.mark.parametrize("paper", list(PAPERS))
def test_nothing_is_cut_off_in_a_browser(paper: str, chromium: Browser) -> None:
    made = asked(paper, clean={"name": "Щит для ключей из ясеня " * 8, "cautions": ["Κλειδοθήκη εισόδου " * 30]})

    page = served(chromium, page_html(replace(made, title="x"), "/static/"))

    assert page.evaluate(OUTSIDE) == []
    assert page.evaluate("getComputedStyle(document.querySelector('.number')).fontWeight") == "700"
    assert page.evaluate("[...document.images].every(one => one.naturalWidth > 0)")
    page.close()


def test_a_page_on_its_own_carries_its_styles_and_signs(chromium: Browser) -> None:
    page = chromium.new_page()
    page.set_content(page_html(asked("a6")))

    assert page.evaluate(OUTSIDE) == []
    assert page.evaluate("document.images.length > 10 && [...document.images].every(one => one.naturalWidth > 0)")
    page.close()
