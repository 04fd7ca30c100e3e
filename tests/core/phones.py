"""A phone as the tests hold it, and what became of its presses."""

from collections import Counter
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Any

from runboard.run.fold.state import ShopState


@dataclass
class Phone:
    """A device with its person, a clock that is off, what it last saw, and what it holds back while it is offline."""

    device: str
    person: str
    off: timedelta
    seen: int = 0
    view: ShopState = field(default_factory=ShopState)
    held: list[dict[str, Any]] = field(default_factory=list)
    offline: bool = False
    sent: list[dict[str, Any]] = field(default_factory=list)


@dataclass
class Tally:
    """What happened over all the runs of the machine."""

    answers: Counter[str] = field(default_factory=Counter)
    kinds: Counter[str] = field(default_factory=Counter)
    reached: Counter[str] = field(default_factory=Counter)
    reworked: set[tuple[str, str]] = field(default_factory=set)

    def note_reached(self, before: ShopState, record: dict[str, Any]) -> None:
        """Count where a press that was taken led: moves by their why, rework that joins again, partial loads."""
        kind, body = record["kind"], record["body"]
        if kind == "pieces moved":
            self.reached[body["why"]] += 1
            if body["why"] == "rework":
                self.reworked.add((record["run"], body["to"]))
            elif (record["run"], record["tray"]) in self.reworked:
                self.reached["rework joins again"] += 1
        if kind == "load started" and record["run"] in before.runs:
            trays = before.runs[record["run"]].trays
            pieces = {tray: count for tray, count in body.get("pieces", {}).items() if tray in trays}
            step = record.get("operation", "")
            self.reached["partial load"] += any(0 < pieces[tray] < trays[tray].free(step) for tray in pieces)


def three_phones() -> list[Phone]:
    """Two of Ann's and one of Ben's; two of their clocks are off."""
    return [
        Phone("phone-a", "ann", timedelta(0)),
        Phone("phone-b", "ben", timedelta(minutes=7)),
        Phone("phone-c", "ann", timedelta(seconds=-40)),
    ]
