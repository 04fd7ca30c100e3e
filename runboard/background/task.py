"""What is known of one piece of long work: its state, how far it is, and what came of it."""

from dataclasses import dataclass
from typing import Any, Literal

State = Literal["waiting", "running", "done", "failed", "ended"]


@dataclass(frozen=True)
class Failure:
    """Why work failed. ``kind`` is the name of what it raised, ``died`` where its process went without a word, and
    ``not started`` where there was none; ``says`` is for the log, and for a person where nothing better is known."""

    kind: str
    says: str = ""


@dataclass(frozen=True)
class Task:
    """One piece of work as it stands. ``what`` names the sort of work and ``subject`` what it is about: a run.

    ``done`` of ``total`` is how far it is, ``latest`` the best it has told of so far, ``result`` what it answered. One
    that was ended by request keeps both.
    """

    id: str
    what: str
    subject: str = ""
    state: State = "waiting"
    done: int = 0
    total: int = 0
    latest: Any = None
    result: Any = None
    failure: Failure | None = None

    @property
    def is_over(self) -> bool:
        return self.state in ("done", "failed", "ended")
