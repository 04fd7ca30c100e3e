"""An order as a PDF, made by WeasyPrint.

Cards are laid out a few at a time, so that progress can be told, and written in parts, so that memory does not grow with
the order; parts are joined by pypdf.
"""

import gc
import io
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any, cast

from runboard.cards.layout import Sheet, sheets
from runboard.cards.model import CardOrder
from runboard.cards.page import render, style
from runboard.places import folder
from runboard.words.sentences import say

PACKAGES = "libpango-1.0-0 libpangoft2-1.0-0 fontconfig fonts-dejavu-core"
_AT_ONCE = 32  # faces laid out before progress is told
_A_PART = 120  # faces written at once
_ADDRESS = "card:///"

Told = Callable[[int, int], None]


class NoPango(Exception):
    """WeasyPrint finds no Pango on this computer. ``packages`` are Debian's that bring it."""

    code = "no pango"

    def __init__(self) -> None:
        super().__init__(say("cards", "no pango", {"packages": PACKAGES}))
        self.packages = PACKAGES


def write_pdf(order: CardOrder, out: Path, told: Told) -> int:
    """Write an order's cards to ``out`` as a PDF; ``told(done, total)`` counts printed cards. Answers how many there are.

    Raises ``NoPango`` where WeasyPrint cannot work, and ``ValueError`` for an order without a card.
    """
    weasyprint = weasyprint_here()
    these = sheets(order)
    if not these:
        raise ValueError("no cards")
    total = sum(len(sheet.faces) for sheet in these)
    told(0, total)
    printer = _Printer(weasyprint, order, told, total)
    with _collecting_between_parts():
        parts = [printer.part(part) for part in _split(these, _A_PART)]
    out.write_bytes(parts[0] if len(parts) == 1 else _joined(parts, order.title))
    return total


def weasyprint_here() -> Any:
    """WeasyPrint. Raises ``NoPango`` where it cannot work on this computer."""
    try:
        import weasyprint
    except OSError as missing:
        raise NoPango from missing
    return weasyprint


def _split(these: Sequence[Sheet], faces: int) -> list[list[Sheet]]:
    """Sheets in parts of about so many faces."""
    found: list[list[Sheet]] = [[]]
    held = 0
    for sheet in these:
        if held >= faces:
            found.append([])
            held = 0
        found[-1].append(sheet)
        held += len(sheet.faces)
    return found


class _Printer:
    """Prints sheets with one set of fonts, styles and pictures."""

    def __init__(self, weasyprint: Any, order: CardOrder, told: Told, total: int) -> None:
        from weasyprint.text.fonts import FontConfiguration

        self._weasyprint, self._order, self._told, self._total = weasyprint, order, told, total
        self._fonts = FontConfiguration()
        self._styles = [weasyprint.CSS(string=style(order.paper), font_config=self._fonts)]
        self._fetcher = _fetcher(order)
        self._done = 0

    def part(self, these: Sequence[Sheet]) -> bytes:
        """Some sheets as a PDF of their own."""
        cache: dict[str, Any] = {}
        documents = [self._lay_out(some, cache) for some in _split(these, _AT_ONCE)]
        pages = [page for document in documents for page in document.pages]
        written = cast(bytes, documents[0].copy(pages).write_pdf())
        if self._done < self._total:
            del documents, pages, cache
            gc.collect()
        return written

    def _lay_out(self, these: Sequence[Sheet], cache: dict[str, Any]) -> Any:
        text = render(self._order, these, _ADDRESS, f"{_ADDRESS}picture/")
        page = self._weasyprint.HTML(string=text, url_fetcher=self._fetcher)
        document = page.render(stylesheets=self._styles, font_config=self._fonts, cache=cache, dpi=300)
        self._done += sum(len(sheet.faces) for sheet in these)
        self._told(self._done, self._total)
        return document


@contextmanager
def _collecting_between_parts() -> Iterator[None]:
    """Pages and their boxes know each other, and nearly all that is made lives until its part is written: looking for
    what is no longer used costs a tenth of the time and finds nothing before that."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


def _fetcher(order: CardOrder) -> Any:
    """What a page may fetch: the shop's signs and the order's pictures, and nothing else."""
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    signs = folder("static") / "signs"

    class OnlyOurs(URLFetcher):  # type: ignore[misc]  # WeasyPrint ships no types
        def fetch(self, url: str, headers: Any = None) -> Any:
            kind, _, name = url.removeprefix(_ADDRESS).partition("/")
            file = signs / Path(name).name if kind == "signs" else Path(order.pictures[name])
            return URLFetcherResponse(url, file.read_bytes())

    return OnlyOurs()


def _joined(parts: Sequence[bytes], title: str) -> bytes:
    from pypdf import PdfWriter

    whole = PdfWriter()
    for part in parts:
        whole.append(io.BytesIO(part), import_outline=False)
    whole.add_metadata({"/Title": title})
    written = io.BytesIO()
    whole.write(written)
    return written.getvalue()
