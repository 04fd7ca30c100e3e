"""Presses made from the schema of their kind, as each role would send them, and the same with something wrong in them."""

from collections.abc import Mapping
from datetime import datetime, timedelta
from random import Random
from typing import Any

from runboard.run.log.event import write_moment
from runboard.run.log.form import body_schema, needed
from runboard.run.log.kinds import KINDS
from runboard.run.log.shapes import MOMENT
from tests.attack import nasty
from tests.scenario import key_rails

KEYS: Mapping[str, tuple[str, ...]] = {
    "run": ("r1", "r1", "r1", "r2"),
    "tray": ("1", "2", "3", "4", "5", "6"),
    "to": ("1", "2", "3", "ann", "ben", "7"),
    "load": ("cut/1", "cut/2", "clean/1", "clean/2", "sand:120/1", "sand:180/1", "engrave/1", "oil", "oil/1", "hooks/1", "cut/1.2"),
    "operation": ("cut", "clean", "sand:120", "sand:180", "engrave", "oil", "hooks"),
    "to_operation": ("cut", "clean", "sand:120", "engrave"),
    "station": ("cnc", "bench", "sander", "finishing", "laser"),
    "person": ("ann", "ben", "ann", "nobody"),
    "room": ("shop", "house"),
    "job": ("bins",),
    "board": ("cut/1", "cut/2", "cut/3"),
    "supply": ("hooks",),
    "from_tray": ("1", "2", "3"),
}  # fmt: skip
WORDS = ("", "ash", "a knot", "one two three", "12")
# More often than the others: what makes the shop go on, so that the rest meets a shop at work.
WORK = ("person came", "load started", "machine started", "load done", "pieces counted", "unloading started")
MOST_IN_A_BATCH = 20
LEAST_OFTEN = ("run finished", "run abandoned")


class Events:
    """Makes presses. What was sent is remembered, so that corrections name something."""

    def __init__(self, random: Random, device: str) -> None:
        self._random, self._device = random, device
        self._count = 0
        self.sent: list[str] = ["nothing"]
        self.alerts: list[str] = ["watch|r1|cut/1|1"]

    def press(self, now: datetime) -> dict[str, Any]:
        """A press of a form that may well be taken."""
        random = self._random
        kind = random.choice(WORK) if random.random() < 0.4 else random.choice(list(KINDS))
        if kind in LEAST_OFTEN and random.random() < 0.9:
            kind = "note written"
        self._count += 1
        id_ = f"{self._device}-{self._count:06d}"
        # Long ago is seldom: each such press folds the log anew.
        at = now - timedelta(seconds=random.choices((0, 5, 600, 90_000), (90, 7, 2, 1))[0])
        event = {
            "id": id_,
            "kind": kind,
            "at": write_moment(at),
            "person": random.choice(KEYS["person"]),
            "seen": 2**50,
        }
        names = {name: self._key(name) for name in needed(kind)}
        if random.random() < 0.3:
            names |= {"run": "r1", "load": self._key("load"), "operation": self._key("operation")}
        self.sent = [*self.sent[-40:], id_]
        return {**event, **names, "body": self._made(body_schema(kind), "body", now), **self._oddly(now)}

    def batch(self, now: datetime) -> list[Any]:
        """Some presses, about every other with something wrong in it. What is no plain JSON, for which a batch is not even
        looked at, is seldom."""
        random = self._random
        odd = random.random() < 0.05
        some = [self.press(now) for _ in range(random.randint(1, MOST_IN_A_BATCH))]
        return [
            nasty.mutated(random, one, random.choice((1, 1, 2, 4)), odd) if random.random() < 0.4 else one
            for one in some
        ]

    def _oddly(self, now: datetime) -> dict[str, Any]:
        """What a phone far off says of its time."""
        random = self._random
        if random.random() < 0.97:
            return {}
        far = timedelta(days=random.choice((-365, -1, 1, 30, 366, 60_000)))
        return random.choice(
            (
                {"at": write_moment(now + far)},
                {"offset_ms": random.choice((10**11, -(10**11), 10**9))},
                {"seen": 0},
                {"seen": None},
            )
        )

    def _made(self, schema: Mapping[str, Any], name: str, now: datetime) -> Any:
        random = self._random
        if schema is MOMENT or schema.get("format") == "date-time":
            return write_moment(now + timedelta(minutes=random.choice((-600, -5, 0, 30, 600, 10**6, 9 * 10**7))))
        if "enum" in schema:
            return random.choice(schema["enum"])
        if "anyOf" in schema:
            return self._made(random.choice(schema["anyOf"]), name, now)
        match schema.get("type"):
            case "string":
                return self._text(name)
            case "integer" | "number":
                return random.choice((0, 1, 1, 2, 3, 5, 15, schema.get("minimum", 0), schema.get("maximum", 9)))
            case "boolean":
                return random.random() < 0.5
            case "array":
                return [
                    self._made(schema.get("items", {"type": "string"}), name, now)
                    for _ in range(random.choice((0, 1, 1, 2, 4)))
                ]
            case "object":
                return self._object(schema, name, now)
        return None

    def _object(self, schema: Mapping[str, Any], name: str, now: datetime) -> Any:
        if name == "product":
            return key_rails()
        required, properties = schema.get("required", ()), schema.get("properties", {})
        found = {
            one: self._made(shape, one, now)
            for one, shape in properties.items()
            if one in required or self._random.random() < 0.4
        }
        more = schema.get("additionalProperties")
        if isinstance(more, Mapping):
            found |= {self._key("tray"): self._made(more, name, now) for _ in range(self._random.choice((0, 1, 2)))}
        return found

    def _text(self, name: str) -> str:
        random = self._random
        if name in ("event", "restart"):
            return random.choice(self.sent)
        if name in ("alert", "reminder"):
            return random.choice(self.alerts)
        if name in KEYS:
            return self._key(name)
        return nasty.text(random, odd=False)[:2000] if random.random() < 0.2 else random.choice(WORDS)

    def _key(self, name: str) -> str:
        return self._random.choice(KEYS.get(name, ("x",)))
