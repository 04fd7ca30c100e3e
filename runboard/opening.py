"""A data folder, opened: the store in it, and the workshop or the door over it where nobody is served."""

import logging
from datetime import UTC, datetime
from pathlib import Path

from runboard.floor.letting_in.devices import Door
from runboard.floor.workshop import Clock, Telling, Workshop
from runboard.store.open import Store, open_store
from runboard.words.sentences import say

_log = logging.getLogger("runboard")


class WallClock:
    """The time of day, aware UTC, in whole milliseconds as the log keeps them."""

    def now(self) -> datetime:
        now = datetime.now(UTC)
        return now.replace(microsecond=now.microsecond // 1000 * 1000)


def open_shop(data: Path) -> Store:
    """The store, with a word on the console where others could read it."""
    store = open_store(data)
    if store.found:
        _log.warning("%s", say("folder", store.found.code, store.found.facts))
    return store


def open_workshop(data: Path, clock: Clock | None = None) -> tuple[Store, Workshop]:
    """The store and the workshop of a data folder; nobody is told of what is done there."""
    store = open_shop(data)
    return store, Workshop(store.log, store.books, clock or WallClock(), Telling())


def open_door(data: Path) -> tuple[Store, Door]:
    """The store and the door of a data folder."""
    store = open_shop(data)
    return store, Door(store.devices, WallClock())
