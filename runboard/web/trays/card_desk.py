"""Where the server makes cards: each order a piece of long work, and the PDFs that are made, until it is put down."""

import shutil
import tempfile
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any
from uuid import uuid4

from runboard.cards.friends_file import FriendsFile
from runboard.cards.friends_page import write_friends_pdf
from runboard.cards.model import CardOrder
from runboard.cards.pdf import write_pdf
from runboard.floor.letting_in.travellers import Keys
from runboard.floor.long_work import LongWork, TaskSeen

WHAT = "cards"
FRIENDS = "friend"
KEPT = 10  # PDFs; an older one is made again in seconds


@dataclass
class CardDesk:
    """``keys`` reads the travellers' keys, ``picture`` says where a picture's file is. PDFs carry codes that open trays:
    they lie in a folder that nobody else on this computer can read, and go with the server."""

    work: LongWork
    keys: Callable[[], Keys]
    picture: Callable[[str], str | None]
    folder: Path | None = None
    made: dict[str, Path] = field(default_factory=dict)

    def make(self, run: str, order: CardOrder) -> TaskSeen | None:
        """Start to make an order's PDF; None where too much is waiting already."""
        return self._start(WHAT, run, write_pdf, order)

    def make_friends(self, run: str, file: FriendsFile) -> TaskSeen | None:
        """The same for a review that is sent to a friend."""
        return self._start(FRIENDS, run, write_friends_pdf, file)

    def _start(self, what: str, run: str, write: Callable[..., int], *of: Any) -> TaskSeen | None:
        if self.folder is None:
            self.folder = Path(tempfile.mkdtemp(prefix="runboard-cards-"))
        place = self.folder / f"{uuid4().hex}.pdf"
        task = self.work.start(what, run, write, *of, place)
        if task is not None:
            self.made[task.id] = place
            for old in list(self.made)[:-KEPT]:
                self.made.pop(old).unlink(missing_ok=True)
        return task

    def look(self, run: str, task_id: str) -> TaskSeen | None:
        """An order of this run as it stands; None for one that is not known any more."""
        task = self.work.look(task_id) if task_id in self.made else None
        return task if task and task.subject == run else None

    def pdf(self, task: TaskSeen) -> bytes | None:
        """The PDF of an order that is done; None where it is not, or not any more."""
        place = self.made.get(task.id)
        return place.read_bytes() if place and task.state == "done" and place.exists() else None

    def close(self) -> None:
        """Take all PDFs away; only once no work goes on."""
        if self.folder is not None:
            shutil.rmtree(self.folder, ignore_errors=True)
            self.folder = None
