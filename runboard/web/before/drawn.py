"""Which module draws the answers of a kind: ``of_<kind>.py``, loaded when somebody asks; none where it draws nothing."""

from importlib import import_module
from importlib.util import find_spec
from typing import Any

from markupsafe import Markup

from runboard.plan.before.kind import Kind
from runboard.shop.book import Book


def drawn(kind: Kind, book: Book, question: Any, answer: Any) -> tuple[Markup, ...]:
    """The drawings of an answer, in their order."""
    word = kind.name.replace("-", "_")
    module = f"runboard.web.before.of_{word}"
    if find_spec(module) is None:
        return ()
    found: tuple[Markup, ...] = getattr(import_module(module), f"draw_{word}")(book, question, answer)
    return found
