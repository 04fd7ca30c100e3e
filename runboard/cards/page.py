"""The page of an order: one HTML page for the PDF and for a browser's print alike."""

import base64
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from jinja2 import Environment, FileSystemLoader
from markupsafe import Markup

from runboard.cards.layout import Sheet, sheets
from runboard.cards.model import CardOrder
from runboard.places import folder
from runboard.words.sentences import lang_of


@dataclass(frozen=True)
class More:
    """Cards that are on no paper of this page: what is said of them on the screen, and the address of the next."""

    words: str
    address: str


def page_html(order: CardOrder, static: str = "", more: More | None = None) -> str:
    """The whole page. ``static`` is the address of the static files (``/static/``), whose styles and signs the page then
    links to; without it the page carries everything in itself, but for pictures, which ``order.pictures`` says where to
    find. ``more`` leads to the rest of the cards, on the screen alone."""
    return render(order, sheets(order), static, more=more)


def render(
    order: CardOrder, these: Sequence[Sheet], static: str = "", pictures: str = "", more: More | None = None
) -> str:
    """As ``page_html``, of some of an order's sheets. With ``pictures``, under which address they are found by name, the
    page brings no styles."""
    names = ("cards/card.css", f"cards/{order.paper}.css")
    page = environment().get_template("cards/page.html")
    return page.render(
        order=order,
        paper=f"paper-{order.paper}",
        sheets=these,
        words=order.words,
        links=[static + name for name in names] if static and not pictures else [],
        styles=[] if static else [style(order.paper)],
        place=PageFiles(order, static, pictures),
        more=more,
    )


def style(paper: str) -> str:
    """The styles of a paper, in one text."""
    return "".join((folder("static") / "cards" / name).read_text("utf-8") for name in ("card.css", f"{paper}.css"))


@dataclass(frozen=True)
class PageFiles:
    """Where a page finds its signs and pictures."""

    order: CardOrder
    static: str
    pictures: str = ""

    def sign(self, number: str) -> str:
        """The address of a sign by its registered number."""
        return f"{self.static}signs/{number}.svg" if self.static else _inline_sign(number)

    def picture(self, name: str) -> str:
        """The address of a picture."""
        return f"{self.pictures}{name}" if self.pictures else self.order.pictures[name]


@cache
def _inline_sign(number: str) -> str:
    drawn = (folder("static") / "signs" / f"{number}.svg").read_bytes()
    return f"data:image/svg+xml;base64,{base64.b64encode(drawn).decode()}"


@cache
def environment() -> Environment:
    """Where templates of what is printed are found."""
    loader = FileSystemLoader(folder("templates"))
    made = Environment(
        loader=loader, autoescape=True, trim_blocks=True, lstrip_blocks=True, keep_trailing_newline=False
    )
    made.filters["lang"] = in_its_language
    return made


def in_its_language(lines: Sequence[str]) -> Markup:
    """The attribute of an element whose text is in another language than its card; nothing where it is not."""
    lang = lang_of(lines[0]) if lines else ""
    return Markup(' lang="{}"').format(lang) if lang else Markup("")
