"""A way to write a run down in a test: presses one after another on a ledger, as an up-to-date phone makes them."""

from datetime import UTC, datetime, timedelta
from typing import Any

from runboard.run.fold.decide import decide
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import Event
from runboard.run.log.form import check_form
from runboard.shop.book_json import book_from_json
from tests.scenario import key_rails, shop

START = datetime(2026, 6, 1, 16, 0, tzinfo=UTC)


class Floor:
    """A ledger with a clock: ``press`` decides and keeps, ``late`` presses at an earlier moment."""

    def __init__(self, record: dict[str, Any] | None = None) -> None:
        self.book = book_from_json(record or shop())
        self.ledger = Ledger(self.book)
        self.now = START
        self.number = 0

    @property
    def state(self) -> ShopState:
        return self.ledger.state

    @property
    def run(self) -> RunState:
        return self.state.runs["r1"]

    def wait(self, minutes: float) -> None:
        self.now += timedelta(minutes=minutes)

    def event(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> Event:
        self.number += 1
        record = {
            "id": f"event-{self.number:05d}",
            "kind": kind,
            "at": self.now.isoformat(),
            "person": "ann",
            "device": "phone",
            "offset_ms": 0,
            "seen": self.ledger.last_seq,
            "body": body or {},
            **fields,
        }
        return check_form(record)

    def press(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> Event:
        """An up-to-date press; Refused where the shop says no."""
        event = self.event(kind, body, **fields)
        self.ledger.keep(decide(self.ledger, event), self.ledger.last_seq + 1)
        self.now += timedelta(seconds=1)
        return event

    def late(self, minutes: float, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> Event:
        """A press whose moment lies so many minutes back."""
        at = (self.now - timedelta(minutes=minutes)).isoformat()
        return self.press(kind, body, at=at, **fields)

    def blind(self, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> Event:
        """A press from another phone that had seen nothing."""
        return self.press(kind, body, **{"device": "other phone", "seen": 0, **fields})

    def open_run(self, trays: int = 3, pieces: int = 5, run: str = "r1", **body: Any) -> None:
        """A run of key rails: trays of five, boards of three trays."""
        keys = [str(number) for number in range(1, trays + 1)]
        boards = {f"cut/{at // 3 + 1}": dict.fromkeys(keys[at : at + 3], pieces) for at in range(0, trays, 3)}
        wanted = {
            "name": "Key rails",
            "product": key_rails(),
            "orders": [{"line": "1", "pieces": 8, "text": "12"}, {"line": "2", "pieces": 4, "text": "7"}],
            "trays": [{"tray": key, "pieces": pieces} for key in keys],
            "boards": boards,
            "wood": "ash",
            **body,
        }
        self.press("run opened", wanted, run=run)


def conserved(run: RunState) -> bool:
    """Whether started = in process + scrap + good, over the run and for each tray."""
    for tray in run.trays.values():
        assert min([tray.good, *tray.at.values(), *tray.busy.values()], default=0) >= 0, tray
        assert all(tray.busy[step] + tray.held(step) <= tray.at.get(step, 0) for step in tray.busy), tray
        assert tray.started + tray.came == tray.in_process + tray.scrapped + tray.good + tray.gone, tray
    trays = run.trays.values()
    started = sum(tray.started for tray in trays)
    return started == sum(tray.in_process + tray.scrapped + tray.good for tray in trays)
