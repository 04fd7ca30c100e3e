"""Which module words the answers of a kind: the one of its name, loaded when somebody asks, since some need much."""

from collections.abc import Callable
from importlib import import_module
from typing import Any

from runboard.plan.before.kind import Kind
from runboard.shop.book import Book
from runboard.words.before.said import Said


def said_of(kind: Kind, book: Book, question: Any, answer: Any) -> Said:
    """The answer in words."""
    module = import_module(f"runboard.words.before.{kind.name.replace('-', '_')}")
    said: Callable[[Book, Any, Any], Said] = module.said
    return said(book, question, answer)
