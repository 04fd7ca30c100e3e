"""Everything that one server holds, and how it is served: opened with the server, put down with it."""

import logging
from collections.abc import Collection
from dataclasses import dataclass, field
from pathlib import Path
from typing import Protocol

from flask import Flask

from runboard.alerts.clock import AlertClock
from runboard.alerts.leaving import Leaving
from runboard.background import pauses
from runboard.background.children import Children
from runboard.background.kept_child import KeptChild
from runboard.background.turns import Turns
from runboard.floor.letting_in.devices import Door
from runboard.floor.pressing.restart import come_back
from runboard.floor.workshop import Clock, Workshop
from runboard.lan.addresses import HOSTS
from runboard.lan.network import Network
from runboard.opening import WallClock
from runboard.run.refusal import NotStored, Refused
from runboard.store.open import Store
from runboard.web.door.stream import Streams
from runboard.web.trays.card_desk import CardDesk
from runboard.words.sentences import catalogue

_log = logging.getLogger("runboard")


@dataclass(frozen=True)
class Settings:
    """``data`` is the shop's data folder. A test gives a clock of its own. ``was_served`` is false for a demo just made,
    whose work nobody has left. ``open_to_all`` asks nobody to pair: only where nobody but this computer can ask.
    ``hosts`` are the names and addresses that the server answers to, in small letters; they may change while it runs.
    ``ways`` are the ways in from the shop's network, where it is served to one. ``push_near`` lets a test's push service be
    on this computer. ``plans`` says whether a planner works beside the server."""

    data: Path
    clock: Clock = field(default_factory=WallClock)
    demo: bool = False
    was_served: bool = True
    open_to_all: bool = False
    hosts: Collection[str] = HOSTS
    ways: Network | None = None
    push_near: bool = False
    plans: bool = True


class Runs(Protocol):
    """What has threads of its own while the server runs."""

    def start(self) -> None: ...
    def stop(self) -> None: ...


@dataclass(frozen=True)
class House:
    """Put together by ``app.build``; nothing runs before ``open``."""

    app: Flask
    settings: Settings
    store: Store
    workshop: Workshop
    door: Door
    streams: Streams
    alerts: AlertClock
    leaving: Leaving
    nightly: Turns
    children: Children
    seeker: KeptChild
    cards: CardDesk
    planning: Turns | None = None

    def open(self) -> None:
        """Come back to the shop as it was left, and start the clocks."""
        catalogue("en")  # read once, before somebody waits for a sentence
        pauses.keep_short()
        try:
            come_back(self.workshop, self.settings.was_served)
        except NotStored as failed:  # a full disk: what is stored can be looked at, and phones keep their presses
            _log.error("the disk takes nothing (%s), so nobody is asked what was running", failed.why)
        except Refused as refused:  # a shop that cannot be asked is served all the same
            _log.error("nobody is asked what was running: %s %s", refused.code, refused.facts)
        for part in self._running():
            part.start()

    def close(self, all_answered: bool = True) -> None:
        """Put everything down. While some request is still being answered the database stays open under it: what is not
        stored by the end of the process is not stored at all."""
        for part in reversed(self._running()):
            part.stop()
        self.seeker.close()
        self.children.close()
        self.cards.close()
        if all_answered:
            self.store.close()
        pauses.as_usual()

    def _running(self) -> list[Runs]:
        return [self.alerts, self.leaving, *([self.planning] if self.planning else []), self.nightly]
