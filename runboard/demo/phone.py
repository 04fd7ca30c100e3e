"""The phones of the demo's people: every press goes through ``floor``, made up to date, and none may be refused."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from random import Random
from typing import Any

from runboard.floor.pressing.taps import take_taps
from runboard.floor.workshop import Workshop
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.run.calls.dues import Due, dues
from runboard.run.fold.state import ShopState
from runboard.shop.book import Book

Draft = dict[str, Any]


class StoryBroken(Exception):
    """A press of the simulated people was refused: the story does not keep the rules."""


class HandClock:
    """A clock that the story sets."""

    def __init__(self, moment: datetime) -> None:
        self.moment = moment

    def now(self) -> datetime:
        return self.moment


@dataclass
class Shopfloor:
    """What the simulated people share: the workshop, its clock, chance, and what is so whatever anybody guesses: how many
    times ``longer`` the hand work of a step takes, and how many pieces of a tray come out of a step in ``chips``."""

    workshop: Workshop
    clock: HandClock
    chance: Random
    longer: Mapping[str, float] = field(default_factory=dict)
    chips: Mapping[tuple[str, str], int] = field(default_factory=dict)
    # What was asked of the state as it is, and of this moment: people look again and again before anything has changed.
    _dues: tuple[ShopState, list[Due]] | None = None
    _moves: tuple[ShopState, datetime, dict[str, list[Move]]] | None = None

    @property
    def now(self) -> datetime:
        return self.clock.moment

    @property
    def state(self) -> ShopState:
        return self.workshop.ledger.state

    @property
    def book(self) -> Book:
        return self.workshop.book

    def around(self, span: timedelta, spread: float = 0.12) -> timedelta:
        """A span as it really comes out: about as long as thought, never less than a quarter of it."""
        seconds = span.total_seconds() * max(0.25, self.chance.gauss(1.0, spread))
        return timedelta(seconds=round(seconds))

    def press(self, person: str, *drafts: Draft) -> str:
        """One press of a person on their phone, of one or several events; answers its id."""
        # Two presses never share a moment: the fold would read them in the order of their ids.
        self.clock.moment += timedelta(seconds=1)
        key = f"{self.chance.getrandbits(96):024x}"
        common = {"at": self.now.isoformat(), "person": person, "seen": self.workshop.ledger.last_seq}
        taps = [
            {"id": key if number == 1 else f"{key}.{number}", **common, **draft}
            for number, draft in enumerate(drafts, 1)
        ]
        batch = {"device": f"phone-{person}", "sent_at": self.now.isoformat(), "taps": taps}
        for answer, draft in zip(take_taps(self.workshop, batch)["taps"], drafts, strict=True):
            if answer["answer"] != "accepted" or answer.get("to_settle"):
                raise StoryBroken(f"{draft}: {answer}")
        return key

    def moves(self, person: str) -> list[Move]:
        """What the shop offers a person now."""
        if self._moves is None or self._moves[0] is not self.state or self._moves[1] != self.now:
            self._moves = (self.state, self.now, {})
        asked = self._moves[2]
        if person not in asked:
            asked[person] = moves(self.state, self.book, person, self.now)
        return asked[person]

    def ringing(self, kind: str, load: str = "") -> list[Due]:
        """Alerts of a kind that are past and not answered."""
        if self._dues is None or self._dues[0] is not self.state:
            self._dues = (self.state, list(dues(self.state, self.book).values()))
        return [due for due in self._dues[1] if due.kind == kind and due.due_at <= self.now and load in ("", due.load)]


def draft(
    kind: str, body: Mapping[str, Any] | None = None, about: Mapping[str, str] | None = None, **envelope: str
) -> Draft:
    """An event without what the phone fills in: what is said, and what it is about."""
    return {"kind": kind, "body": dict(body or {}), **(about or {}), **envelope}
