"""A friend's file as one page that needs nothing else: to be saved and sent, shown by a code, or printed.

What the page may do is said in it by the digests of its own style and script: nothing is fetched, nothing is sent but a form
to the shop where it is shown by the shop.
"""

import base64
import hashlib
import logging
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

from runboard.cards.friends_file import FriendsFile
from runboard.cards.page import environment
from runboard.cards.pdf import weasyprint_here
from runboard.places import folder
from runboard.review.answers import sheet_text

_NOTHING: Mapping[str, str] = {}


@dataclass(frozen=True)
class Shown:
    """A page that the shop itself shows, and the policy that its answer is sent with."""

    text: str
    policy: str


def file_html(file: FriendsFile) -> str:
    """The file to save: its form saves what is answered as a file, from a phone without a network too."""
    return _render(file, asks=True, policy=_alone(_digest(_script())), script=_script())


def review_html(file: FriendsFile) -> str:
    """The same without the form, to be kept."""
    return _render(file, asks=False, policy=_alone())


def shown_html(file: FriendsFile, send_to: str, typed: Mapping[str, str] = _NOTHING, problem: str = "") -> Shown:
    """The page as the shop shows it to who has a code: its form sends the answers to ``send_to``. ``typed`` is what was sent
    and could not be taken, ``problem`` why."""
    return Shown(_render(file, asks=True, send_to=send_to, typed=typed, problem=problem), shop_policy())


def said_html(title: str, sentence: str) -> Shown:
    """One sentence, in the same style."""
    text = environment().get_template("cards/friend_said.html").render(title=title, sentence=sentence, style=_style())
    return Shown(text, shop_policy())


def _alone(may_run: str = "'none'") -> str:
    """What a page may do that is opened from anywhere: be seen, and run ``may_run``."""
    return (
        f"default-src 'none'; style-src {_digest(_style())}; script-src {may_run}; img-src data:; "
        "base-uri 'none'; form-action 'none'"
    )


def shop_policy() -> str:
    """What a page with this style, without a script, may do."""
    return (
        f"default-src 'self'; style-src {_digest(_style())}; script-src 'none'; img-src data:; object-src 'none'; "
        "base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
    )


def write_friends_pdf(file: FriendsFile, out: Path, told: Callable[[int, int], None]) -> int:
    """Write the file to ``out`` as a PDF to write on; answers how many pages it has. Raises ``NoPango`` where WeasyPrint
    cannot work."""
    return _write(file, out, told, asks=True)


def write_review_pdf(file: FriendsFile, out: Path, told: Callable[[int, int], None]) -> int:
    """The same without the form, to be kept."""
    return _write(file, out, told, asks=False)


def _write(file: FriendsFile, out: Path, told: Callable[[int, int], None], *, asks: bool) -> int:
    weasyprint = weasyprint_here()
    logging.getLogger("weasyprint").setLevel(logging.ERROR)  # it has a word on every line that is for screens
    told(0, 1)
    page = _render(replace(file, bars=_on_paper(file.bars)), asks)
    document = weasyprint.HTML(string=page, url_fetcher=_nothing_else()).render()
    out.write_bytes(document.write_pdf())
    told(1, 1)
    return len(document.pages)


def _on_paper(drawing: str) -> str:
    head, bracket, rest = drawing.partition(">")
    return f"{head}{bracket}<style>{_style('cards/drawing.css')}</style>{rest}" if rest else ""


def _nothing_else() -> Any:
    """A page brings all that it needs: whatever it would fetch is not there."""
    from weasyprint.urls import URLFetcher

    class Nothing(URLFetcher):  # type: ignore[misc]  # WeasyPrint ships no types
        def fetch(self, url: str, headers: Any = None) -> Any:
            raise ValueError(url)

    return Nothing()


def _render(file: FriendsFile, asks: bool, **more: Any) -> str:
    text = sheet_text(file.run, file.opened, [(one.key, one.name) for one in file.operations])
    usual = {"policy": "", "script": "", "send_to": "", "typed": _NOTHING, "problem": ""}
    facts = {"file": file, "words": file.words, "style": _style(), "text": text, "asks": asks}
    return environment().get_template("cards/friend.html").render(**usual | facts | more)


@cache
def _style(*names: str) -> str:
    static = folder("static")
    return "".join((static / name).read_text("utf-8") for name in names or ("cards/friend.css", "charts.css"))


@cache
def _script() -> str:
    return (folder("templates") / "cards" / "friend.js").read_text("utf-8")


@cache
def _digest(text: str) -> str:
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"
