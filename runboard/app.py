"""The composition root, and the table of contents: what the server is made of, and in which order it is put together."""

import logging
import time
from collections.abc import Collection
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from functools import partial
from pathlib import Path
from typing import Any

from flask import Flask

from runboard.alerts.clock import AlertClock
from runboard.alerts.nightly import Nightly
from runboard.background import pauses
from runboard.background.children import Children
from runboard.background.kept_child import KeptChild
from runboard.background.turns import Turns
from runboard.floor.keeping.backup import make_nightly_copy
from runboard.floor.letting_in.devices import Door
from runboard.floor.letting_in.travellers import read_keys
from runboard.floor.planning.figures import Figuring
from runboard.floor.planning.planner import Planner
from runboard.floor.planning.try_change import Trials
from runboard.floor.planning.warming import Warming
from runboard.floor.pressing.restart import come_back
from runboard.floor.workshop import Clock, Workshop
from runboard.lan import qr
from runboard.leaving import Leaving, prepare_leaving
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.search import come_up, compare, make_figures, search
from runboard.run.refusal import NotStored, Refused
from runboard.store.backup import BackupFolder
from runboard.store.incoming import Incoming
from runboard.store.open import Store, open_store
from runboard.store.pictures import PictureFolder
from runboard.web.door import errors, guard, offline, packing, pictures, run_pages, sessions, sizes, static_files
from runboard.web.door import pages as pages_support
from runboard.web.door.asgi import Served
from runboard.web.door.bounds import Bounds
from runboard.web.door.stream import Streams
from runboard.web.helper import guests
from runboard.web.helper import page as helper
from runboard.web.network import pairing, welcome
from runboard.web.network.ways import HOSTS, Ways
from runboard.web.now import calendar, care, state, taps, wall
from runboard.web.now import page as now
from runboard.web.plan import opening as plan_opening
from runboard.web.plan import page as plan
from runboard.web.plan import route as plan_route
from runboard.web.plan import run as plan_run
from runboard.web.plan import schedule as plan_schedule
from runboard.web.plan import trying as plan_try
from runboard.web.review import page as review
from runboard.web.shop import backup, outside, push, signals, signals_pages
from runboard.web.shop import book_file as shop_file
from runboard.web.shop import page as shop
from runboard.web.trays import cards, history, paper
from runboard.web.trays.card_desk import CardDesk
from runboard.words.places import folder
from runboard.words.sentences import catalogue, say

_log = logging.getLogger("runboard")

PARTS = (
    guard,
    sizes,
    sessions,
    packing,
    errors,
    pages_support,
    pairing,
    welcome,
    helper,
    guests,
    static_files,
    taps,
    signals,
    state,
    now,
    wall,
    calendar,
    offline,
    shop,
    shop_file,
    outside,
    push,
    signals_pages,
    backup,
    care,
    run_pages,
    pictures,
    plan,
    plan_route,
    plan_opening,
    plan_run,
    plan_schedule,
    plan_try,
    cards,
    paper,
    review,
    history,
)


class WallClock:
    """The time of day, aware UTC, in whole milliseconds as the log keeps them."""

    def now(self) -> datetime:
        now = datetime.now(UTC)
        return now.replace(microsecond=now.microsecond // 1000 * 1000)


@dataclass(frozen=True)
class Settings:
    """``data`` is the shop's data folder. A test gives a clock of its own. ``was_served`` is false for a demo just made,
    whose work nobody has left. ``open_to_all`` asks nobody to pair: only where nobody but this computer can ask.
    ``hosts`` are the names and addresses that the server answers to, in small letters; they may change while it runs.
    ``ways`` are the ways in from the shop's network, where it is served to one. ``push_near`` lets a test's push service be on
    this computer. ``plans`` says whether a planner works beside the server."""

    data: Path
    clock: Clock = field(default_factory=WallClock)
    demo: bool = False
    was_served: bool = True
    open_to_all: bool = False
    hosts: Collection[str] = HOSTS
    ways: Ways | None = None
    push_near: bool = False
    plans: bool = True


@dataclass
class Telling:
    """Whoever listens to the floor: the open pages, the clock that rings, and the planner."""

    streams: Streams
    alerts: AlertClock
    planning: Turns | None = None

    def changed(self, seq: int) -> None:
        self.streams.changed(seq)
        self.alerts.wake()
        if self.planning is not None:
            self.planning.wake()


class Nobody:
    """Who listens where there is no server."""

    def changed(self, seq: int) -> None:
        pass


def prepare_planner(
    workshop: Workshop, children: Children, seeker: KeptChild, streams: Streams
) -> tuple[Planner, Turns]:
    """The planner, and the thread that it works on; nothing runs yet."""
    planner = Planner(workshop, seeker, streams.changed)
    warming = Warming(seeker, warm)
    figuring = Figuring(workshop, children, make_figures, quiet=timedelta(seconds=1), is_ready=lambda: warming.is_over)

    def turn() -> None:
        catalogue("en")  # read once, before somebody waits for a sentence
        if planner.turn():
            turns.wake()  # there may be more to do, and every second counts
        figuring.turn()
        if warming.turn() and warming.is_over:
            pauses.leave_be()  # the compiled rule is much, and stays

    turns = Turns("planner", turn)
    seeker.heard = turns.wake
    return planner, turns


@dataclass(frozen=True)
class House:
    """Everything that one server holds, put together."""

    app: Flask
    store: Store
    workshop: Workshop
    door: Door
    streams: Streams
    alerts: AlertClock
    nightly: Nightly
    settings: Settings
    leaving: Leaving
    children: Children
    seeker: KeptChild
    cards: CardDesk
    planning: Turns | None = None

    def open(self) -> None:
        """Come back to the shop as it was left, and start the clocks."""
        pauses.keep_short()
        try:
            come_back(self.workshop, self.settings.was_served)
        except NotStored as failed:  # a full disk: what is stored can be looked at, and phones keep their presses
            _log.error("the disk takes nothing (%s), so nobody is asked what was running", failed.why)
        except Refused as refused:  # a shop that cannot be asked is served all the same
            _log.error("nobody is asked what was running: %s %s", refused.code, refused.facts)
        self.alerts.start()
        self.leaving.start()
        self.nightly.start()
        if self.planning is not None:
            self.planning.start()

    def close(self, all_answered: bool = True) -> None:
        """Put everything down. While some request is still being answered the database stays open under it: what is not
        stored by the end of the process is not stored at all."""
        self.nightly.stop()
        if self.planning is not None:
            self.planning.stop()
        self.leaving.stop()
        self.alerts.stop()
        self.seeker.close()
        self.children.close()
        self.cards.close()
        if all_answered:
            self.store.close()
        pauses.as_usual()


def open_workshop(settings: Settings) -> tuple[Store, Workshop]:
    """The store and the workshop of a data folder, for a command that serves nobody."""
    store = _open(settings.data)
    return store, Workshop(store.log, store.books, settings.clock, Nobody())


def open_door(settings: Settings) -> tuple[Store, Door]:
    """The store and the door of a data folder, for a command that serves nobody."""
    store = _open(settings.data)
    return store, Door(store.devices, settings.clock)


def _open(data: Path) -> Store:
    """The store, with a word on the console where others could read it."""
    store = open_store(data)
    if store.found:
        _log.warning("%s", say("folder", store.found.code, store.found.facts))
    return store


def build(settings: Settings) -> House:
    """Open the data folder and put the server together; nothing runs yet."""
    store = _open(settings.data)
    streams = Streams()
    alerts = AlertClock(store.dues, settings.clock, streams.due, streams.look)
    telling = Telling(streams, alerts)
    workshop = Workshop(store.log, store.books, settings.clock, telling)
    door = Door(store.devices, settings.clock, streams.shut_out)
    app = Flask("runboard", static_folder=None, template_folder=str(folder("templates")))
    copies = BackupFolder(settings.data)
    nightly = Nightly(lambda: make_nightly_copy(workshop, copies))
    leaving = prepare_leaving(store, workshop, settings.data, is_demo=settings.demo, push_near=settings.push_near)
    pictures_here, children = PictureFolder(settings.data), Children()
    seeker = KeptChild("search", come_up, partial(search, clock=time.monotonic))
    desk = CardDesk(children, lambda: read_keys(store.settings), pictures_here.file)
    planner, planning = prepare_planner(workshop, children, seeker, streams)
    telling.planning = planning if settings.plans else None
    app.extensions["workshop"] = workshop
    app.extensions["settings"] = store.settings
    app.extensions["ears"] = leaving.ears
    app.extensions["mqtt"] = leaving.mqtt
    app.extensions["outside"] = leaving.outside
    app.extensions["speaker"] = leaving.speaker
    app.extensions["push"] = push.Sending(store.push, leaving.push, leaving.push_key.public, settings.push_near)
    app.extensions["copies"] = copies
    app.extensions["found"] = store.found
    app.extensions["incoming"] = Incoming(settings.data)
    app.extensions["pictures"] = pictures_here
    app.extensions["cards"] = desk
    app.extensions["trials"] = Trials(workshop, children, compare)
    app.extensions["planner"] = planner if settings.plans else None
    app.extensions["door"] = None if settings.open_to_all else door
    app.extensions["qr"] = qr.svg
    app.extensions["hosts"] = settings.hosts
    app.extensions["ways"] = settings.ways
    app.config["DEMO"] = settings.demo
    for part in PARTS:
        part.init_app(app)
    app.teardown_request(lambda _: _tell(alerts))
    return House(
        app,
        store,
        workshop,
        door,
        streams,
        alerts,
        nightly,
        settings,
        leaving,
        children,
        seeker,
        desk,
        telling.planning,
    )


def _tell(alerts: AlertClock) -> None:
    """What fell due while a request was answered is told by whoever answered it."""
    alerts.passed()


def create_app(settings: Settings) -> Flask:
    """The Flask app alone, for tests and for whoever serves it in another way; its house is ``app.extensions``'s."""
    house = build(settings)
    house.app.extensions["house"] = house
    return house.app


def served(house: House, bounds: Bounds | None = None) -> Any:
    """The house as an ASGI app, which starts the clock with the server and puts everything down with it."""
    return Served(house.app, house.streams, house.open, house.close, house.settings.data, bounds)
