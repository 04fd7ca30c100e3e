"""An answer in words: the same for the page, the command and paper."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True)
class Table:
    """Rows of texts under their headings; ``numbers`` are the columns that stand to the right. A ``folded`` one opens by its title."""

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    numbers: frozenset[int] = frozenset()
    folded: bool = False


@dataclass(frozen=True)
class Download:
    """A file that an answer offers: its name, its type, its text."""

    name: str
    mimetype: str
    text: str
    label: str


@dataclass(frozen=True)
class Said:
    """``head`` is the answer in one sentence, ``lines`` what else is to be known, ``doubts`` what may be otherwise, each with its
    place (a line's number), ``cautions`` what could hurt somebody or spoil the piece. ``record`` is the answer as JSON."""

    head: str
    lines: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()
    downloads: tuple[Download, ...] = ()
    record: Mapping[str, Any] = field(default_factory=dict)
    changes_time: bool = False  # whether a doubt may change the time that is said
