"""The phones of a storm, each a process of its own: a person who looks, presses and waits, whatever the network does."""

import json
import time
import uuid
from collections import Counter
from dataclasses import dataclass, field
from datetime import timedelta
from multiprocessing.sharedctypes import Synchronized
from multiprocessing.synchronize import Barrier, Event
from pathlib import Path
from random import Random
from typing import Any

from runboard.run.calls.dues import dues
from runboard.run.fold.fold import apply
from runboard.run.fold.names import trays_of
from runboard.run.fold.state import ShopState
from runboard.run.log.event import write_moment
from runboard.run.log.form import check_form
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from tests.faults.outbox import FAILED, Outbox, PhoneClock, Wire
from tests.faults.seen import read_state
from tests.vectors.beginnings import new_load
from tests.vectors.chooser import Chooser, Press
from tests.vectors.presses import choose

PEOPLE = ("ann", "ben", "cleo", "dee", "eli", "fay", "gil")
# What takes people four minutes takes a storm a second.
HASTE = 240
# The more there is to settle, the more is settled; at so much it is all that people do.
MANY_UNSETTLED = 60
# So many waiting presses are seen at the foot of the page, and a person waits too.
MANY_WAITING = 60
# So seldom somebody meddles: with a machine that runs, a wait before its time, or what is somebody else's.
MEDDLES = 0.1
UNASKED = ("wait ended", "pieces released", "supply in", "entry settled")
# How a press that did not fit is settled: as the shop says, more often than as the press said.
KEPT = ("shop", "shop", "press")
# The server's own events, and the end of a run, after which there would be nothing to press.
NOT_PRESSED = ("server restarted", "signal received", "run finished", "run abandoned", "card printed")


@dataclass(frozen=True)
class Part:
    """What one phone is told before the storm. ``pause`` is how long it rests between presses, in seconds."""

    number: int
    address: str
    token: str
    person: str
    off_seconds: float
    presses: int
    pause: float
    seed: int
    book: dict[str, Any]
    place: Path


@dataclass
class Shared:
    """What the storm and its phones tell each other: how many presses there were, when all are drained, and that
    time is up."""

    pressed: "Synchronized[int]"
    drained: Barrier
    over: Event


class Hasty(Chooser):
    """Somebody whose 'in ten minutes' are ten seconds."""

    def in_minutes(self, minutes: float) -> str:
        return super().in_minutes(minutes / HASTE)


@dataclass
class StormPhone:
    """One phone. ``view`` is the state that it last saw with its own presses laid over it."""

    part: Part
    shared: Shared
    book: Book
    random: Random
    outbox: Outbox
    view: ShopState = field(default_factory=ShopState)
    seen: int = 0
    tag: str = ""
    offline_until: float = 0.0
    made: list[str] = field(default_factory=list)
    counted: list[dict[str, Any]] = field(default_factory=list)
    looks: Counter[str] = field(default_factory=Counter)

    def live(self) -> None:
        """Press until its share is done, then send what waits, then look once more when everybody has sent."""
        while len(self.made) < self.part.presses and not self.shared.over.is_set():
            self._mind_the_network()
            if self._is_online():
                self._look()
            # Once it has seen the shop.
            if self.view.runs and (len(self.outbox.waiting) < MANY_WAITING or not self._is_online()):
                self._press()
            if self._is_online():
                self.outbox.drain()
            time.sleep(self.random.uniform(0.2, 1.8) * self.part.pause)
        while self.outbox.waiting and not self.shared.over.is_set():
            self.outbox.drain(faults=False)
            time.sleep(0.05)

    def last_look(self) -> dict[str, Any]:
        """What the server says at the end; {} if it says nothing."""
        for _ in range(20):
            try:
                status, said, _ = self.outbox.wire.ask(f"/state?person={self.part.person}", seconds=10)
            except FAILED:
                time.sleep(0.25)
                continue
            if status == 200:
                return dict(said)
        return {}

    # the network

    def _is_online(self) -> bool:
        return time.monotonic() >= self.offline_until

    def _mind_the_network(self) -> None:
        if self._is_online() and self.random.random() < 0.03:
            self.offline_until = time.monotonic() + self.random.uniform(2, 12) * self.part.pause
            self.outbox.tally["went offline"] += 1

    def _look(self) -> None:
        sent = self.outbox.clock.now()
        try:
            status, said, tag = self.outbox.wire.ask(f"/state?person={self.part.person}", tag=self.tag)
        except FAILED:
            self.looks["no answer"] += 1
            return
        self.looks[f"status {status}"] += 1
        if status == 200:
            self.outbox.clock.learn(sent, said["now"])
            self.tag, self.seen = tag, said["seq"]
            self.view = read_state(said, self.book)
            for record in self.outbox.waiting:
                self._lay_over(record)

    def _lay_over(self, record: dict[str, Any]) -> None:
        if record["kind"] not in ("event undone", "event amended"):
            self.view = apply(self.view, check_form(record), self.book)

    # the person

    def _press(self) -> None:
        presses, ago = self._wish()
        press = uuid.UUID(int=self.random.getrandbits(128)).hex
        at = self.outbox.clock.now() - timedelta(seconds=ago)
        for part, (kind, fields, body) in enumerate(presses, 1):
            record = {
                "id": press if part == 1 else f"{press}.{part}",
                "v": 1,
                "kind": kind,
                "at": write_moment(at),
                "offset_ms": self.outbox.clock.offset_ms,
                "person": self.part.person,
                "device": self.outbox.device,
                "seen": self.seen,
                "basis": "tapped",
                "body": body,
                **fields,
            }
            self.made.append(record["id"])
            self.outbox.waiting.append(record)
            self._lay_over(record)
            if kind == "pieces counted":
                self.counted.append(record)
        with self.shared.pressed.get_lock():
            self.shared.pressed.value += len(presses)

    def _wish(self) -> tuple[list[Press], float]:
        """The events of the next press, and how many seconds ago it was."""
        dice = self.random.random()
        ago = self.random.uniform(0.5, 20) if self.random.random() < 0.08 else 0.0
        now = self.outbox.clock.now() + timedelta(milliseconds=self.outbox.clock.offset_ms)
        it = Hasty(self.view, self.book, self.random, now - timedelta(seconds=ago), wild=0.02)
        me = self.view.people.get(self.part.person)
        if dice < len(self.view.unsettled) / MANY_UNSETTLED and (settled := self._settle()):
            return [settled], 0
        if me is not None and me.last and dice > 0.97:
            return [("event undone", {}, {"event": me.last})], 0
        if self.counted and dice > 0.955:
            wrong = self.random.choice(self.counted[-4:])
            good = max(0, wrong["body"]["good"] - self.random.choice((0, 1)))
            return [("event amended", {}, {"event": wrong["id"], "body": {"good": good}})], 0
        if 0.8 < dice < 0.9:
            return [self._start_a_machine(it) or self._wait_for_a_supply(it)], 0
        presses = [self._sensible(it)]
        if dice > 0.9:
            presses.append(self._sensible(it))
        return presses, ago

    def _settle(self) -> Press | None:
        """One press settles an entry of its own person's, on the person's first phone: two who settle the same make
        another."""
        mine = [one for one in self.view.unsettled.values() if one.person == self.part.person]
        if not mine or self.part.number >= len(PEOPLE):
            return None
        return "entry settled", {}, {"event": self.random.choice(mine).event, "keep": self.random.choice(KEPT)}

    def _start_a_machine(self, it: Chooser) -> Press | None:
        """A machine is loaded and runs, for a few seconds: its end is an alarm."""
        for _ in range(10):
            found = new_load(it)
            if found and found[2].has_machine and not self._meddles(it, "machine started", found[0], {}):
                return "machine started", found[0], {"minutes": self.random.uniform(0.01, 0.15)}
        return None

    def _wait_for_a_supply(self, it: Chooser) -> Press:
        """Something is out, and will be there in a moment: that is an alarm too."""
        until = write_moment(it.now + timedelta(seconds=self.random.uniform(0.3, 8)))
        supply = f"discs {self.part.number}.{len(self.made)}"
        return "supply out", {"run": self.random.choice(list(self.view.runs))}, {"supply": supply, "until": until}

    def _sensible(self, it: Chooser) -> Press:
        while True:
            kind, fields, body = choose(it)
            if kind == "machine started" and "minutes" in body:
                body = {**body, "minutes": body["minutes"] / HASTE}
            if kind not in NOT_PRESSED and (
                not self._meddles(it, kind, fields, body) or self.random.random() < MEDDLES
            ):
                return kind, fields, body

    def _meddles(self, it: Chooser, kind: str, fields: dict[str, Any], body: dict[str, Any]) -> bool:
        if "alert" in body:  # nobody answers what has not rung yet
            due = dues(self.view, self.book).get(body["alert"])
            return due is None or due.due_at > it.now - timedelta(seconds=2)
        run = self.view.runs.get(fields.get("run", ""))
        if run is None:
            return kind in UNASKED
        load = run.loads.get(fields.get("load", ""))
        if load is not None and load.state == "running" and load.end_at is not None and load.end_at > it.now:
            return kind not in ("watch checked", "watch taken")
        if load is not None and load.people:
            return self.part.person not in load.people
        trays = {fields["tray"]} if "tray" in fields else set(trays_of(fields["load"])) if "load" in fields else set()
        found = [run.trays[tray] for tray in trays & run.trays.keys()]
        waits = any(rest.ended_at is None for tray in found for rest in tray.rests.values())
        if kind in ("wait ended", "pieces released", "supply in", "entry settled") or (
            kind == "load started" and waits
        ):
            return True
        return load is None and any(self._is_elses(tray.id) for tray in found)

    def _is_elses(self, tray: str) -> bool:
        """People share the trays out by their numbers; what was split off stays with its tray."""
        number = int("".join(sign for sign in tray if sign.isdecimal()) or 0)
        return number % len(PEOPLE) != self.part.number % len(PEOPLE)


def live(part: Part, shared: Shared) -> None:
    """The phone's process: what became of it is written into the storm's folder."""
    random = Random(part.seed)
    clock = PhoneClock(timedelta(seconds=part.off_seconds))
    outbox = Outbox(Wire(part.address, part.token), f"phone-{part.number}", clock, random)
    phone = StormPhone(part, shared, book_from_json(part.book), random, outbox)
    try:
        phone.live()
        shared.drained.wait()
    finally:
        said = {
            "person": part.person,
            "made": phone.made,
            "left": [one["id"] for one in outbox.waiting],
            "answers": outbox.answers,
            "network": outbox.tally,
            "looks": phone.looks,
            "offset_error_ms": clock.offset_ms + 1000 * part.off_seconds,
            "view": phone.last_look(),
        }
        (part.place / f"phone-{part.number}.json").write_text(json.dumps(said), "utf-8")
