"""One kind of question about a run before it starts: what it asks, what answers it, and what of an answer may be kept.

A question is a dataclass whose fields are declared as the book's are (``shop/record``): the page's form, the reader of a JSON
file (``runboard check``) and the writer all follow from it. An answer is frozen data that can be pickled, since what takes long
is answered in a child process. ``words/before`` says it, ``web/before`` draws it.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.run.fold.state import ShopState
from runboard.shop.book import Book

Record = dict[str, Any]
Told = Callable[[int, int], None]  # (done, total) of work that takes long


@dataclass(frozen=True)
class File:
    """A file as it came: its name, for people and its ending, and what is in it."""

    name: str
    content: bytes = field(repr=False)


@dataclass(frozen=True)
class Keep:
    """Something of an answer that may be kept in the book with one press. ``key`` tells it from the others of its answer;
    ``code`` names the sentence on its button (``before-keep-<code>``), ``facts`` fill it. ``put`` writes it into the book's
    record, which is then read and saved as ever; it refuses what is not there any more. A span among the facts is said as one; a
    ``link`` is where the part stands then. What the book ``is_so`` about already has no button, but what was kept is said by it."""

    key: str
    code: str
    put: Callable[[Record], None] = field(repr=False, compare=False)
    facts: Mapping[str, Any] = field(default_factory=dict)
    is_so: bool = False


def _nothing(book: Book, question: Any, answer: Any) -> Sequence[Keep]:
    return ()


def _as_asked(book: Book, state: ShopState, question: Any) -> Any:
    return question


def _never(book: Book, question: Any) -> bool:
    return False


@dataclass(frozen=True)
class Kind:
    """``name`` is its word in addresses and in JSON ('stock'). ``answer(book, question, file, told)`` is pure, and refuses
    (``Refused``) what cannot be answered, with what to change. ``endings`` are those of files that it reads, none where it
    reads no file; ``needs_file`` where nothing can be said without one; ``is_long`` where it is answered in a child, but for questions
    without a file that ``is_quick(book, question)`` says are answered at once.
    ``begin(book, keys)`` is the question that a form begins with: ``keys`` may name a product, a step, a station, a run or a jig.
    ``learned(book, state, question)`` fills in what the log taught and no form asks (hide such a field in ``web/forms/asked.py``); it
    is called before each answer where there is a shop, and not where a command has none."""

    name: str
    question: type
    answer: Callable[[Book, Any, File | None, Told], Any]
    begin: Callable[[Book, Mapping[str, str]], Any]
    keeps: Callable[[Book, Any, Any], Sequence[Keep]] = _nothing
    endings: tuple[str, ...] = ()
    needs_file: bool = False
    is_long: bool = False
    is_quick: Callable[[Book, Any], bool] = _never
    learned: Callable[[Book, ShopState, Any], Any] = _as_asked
