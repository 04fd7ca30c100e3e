"""What the commands are given: a person at a terminal, and runs in a data folder."""

import io
from pathlib import Path
from typing import Any

from runboard.floor.changing.runs import Wish, open_run
from runboard.opening import open_workshop
from tests import scenario


class Terminal(io.StringIO):
    """A person at a terminal who types that."""

    def isatty(self) -> bool:
        return True


def with_a_run(folder: Path, name: str, record: dict[str, Any] | None = None) -> None:
    """One more run of three trays; a shop that is not there yet is made, of the record."""
    store, workshop = open_workshop(folder)
    if not workshop.books.latest().stations:
        workshop.books.save(record or scenario.shop(), workshop.clock.now())
    due = "2099-01-01T10:00:00+00:00"
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 15, "due": due}], name=name, start=15), "ann")
    store.close()
