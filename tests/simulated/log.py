"""The event log of a made-up shop, as its phones would write it."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from runboard.run.log.event import Event, write_moment
from runboard.run.log.form import check_form
from tests.simulated.world import World, moment, product_of


@dataclass
class Log:
    """Presses in the order in which they were made. ``extras`` are how many presses more hand work has,
    ``look_every`` is after how many minutes somebody who watches says so: both only make a log longer."""

    run: str = "r1"
    name: str = "Key rails"
    extras: int = 0
    look_every: float | None = None
    records: list[dict[str, Any]] = field(default_factory=list)

    def press(self, at: float, kind: str, body: Mapping[str, Any], **fields: str) -> None:
        of_run = {} if kind.startswith("person ") else {"run": self.run}
        record = {"id": f"{self.run}-{len(self.records):06d}", "kind": kind, "at": write_moment(moment(at))}
        device = fields.get("person") or "server"
        self.records.append(
            {**record, **of_run, "device": f"{device}'s", "offset_ms": 0, "seen": 0, "body": dict(body), **fields}
        )

    def came(self, at: float, person: str, until: float, room: str) -> None:
        self.press(at, "person came", {"until": write_moment(moment(until)), "room": room}, person=person)

    def opened(self, at: float, world: World, boards: Mapping[str, Sequence[Any]]) -> None:
        body = {
            "name": self.name,
            "product": product_of(world),
            "orders": [{"line": "1", "pieces": max(1, world.pieces - world.trays), "text": "12"}],
            "trays": [{"tray": str(at + 1), "pieces": world.a_tray} for at in range(world.trays)],
            "boards": {key: {tray.id: tray.pieces for tray in trays} for key, trays in boards.items()},
            "wood": "ash",
        }
        self.press(at, "run opened", body, person=world.people[0].key)

    @property
    def events(self) -> list[Event]:
        return [check_form(dict(record)) for record in self.records]
