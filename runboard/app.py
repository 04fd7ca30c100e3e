"""The composition root, and the table of contents: what the server is made of, and in which order it is put together."""

import time
from functools import partial
from typing import Any

from runboard.alerts.clock import AlertClock
from runboard.alerts.leaving import prepare_leaving
from runboard.background import pauses
from runboard.background.children import Children
from runboard.background.kept_child import KeptChild
from runboard.background.turns import Turns
from runboard.floor.keeping.backup import make_nightly_copy
from runboard.floor.letting_in.devices import Door
from runboard.floor.letting_in.travellers import read_keys
from runboard.floor.looking.answers import Answers
from runboard.floor.looking.reviews import Reviews
from runboard.floor.planning.planning import Planning
from runboard.floor.planning.try_change import Trials
from runboard.floor.workshop import Telling, Workshop
from runboard.house import House, Settings
from runboard.opening import open_shop
from runboard.plan.search import come_up, compare, search
from runboard.review.weighing import weigh
from runboard.web.door.asgi import Served
from runboard.web.door.bounds import Bounds
from runboard.web.door.stream import Streams
from runboard.web.fittings import Fittings
from runboard.web.parts import make_app
from runboard.web.trays.card_desk import CardDesk


def build(settings: Settings) -> House:
    """Open the data folder and put the server together; nothing runs yet."""
    store, streams, told, clock = open_shop(settings.data), Streams(), Telling(), settings.clock
    workshop = Workshop(store.log, store.books, clock, told)
    door = Door(store.devices, clock, streams.shut_out)
    alerts = AlertClock(store.dues, clock, streams.due, streams.look)
    leaving = prepare_leaving(store, workshop, settings.data, is_demo=settings.demo, push_near=settings.push_near)
    # Looked for each minute, so that a night slept through is made up for; the first seconds belong to who opens a page.
    nightly = Turns("the nightly copy", lambda: make_nightly_copy(workshop, store.copies), every=60, rest=0, first=15)
    children = Children()
    seeker = KeptChild("search", come_up, partial(search, clock=time.monotonic))
    planning = Planning(workshop, seeker, children, streams.changed, loaded=pauses.leave_be)
    turns = Turns("planner", planning.turn) if settings.plans else None
    told.listeners += [streams.changed, lambda _: alerts.wake()]
    if turns is not None:
        told.listeners.append(lambda _: turns.wake())
        seeker.heard = turns.wake
    workshop.reviews = Reviews(workshop, children, store.settings, weigh)
    cards = CardDesk(children, lambda: read_keys(store.settings), store.pictures.file)
    app = make_app(
        Fittings(
            workshop=workshop,
            settings=store.settings,
            leaving=leaving,
            subscriptions=store.push,
            push_near=settings.push_near,
            copies=store.copies,
            incoming=store.incoming,
            pictures=store.pictures,
            cards=cards,
            trials=Trials(workshop, children, compare),
            answers=Answers(workshop, children, store.looked_at),
            planner=planning.planner if settings.plans else None,
            door=None if settings.open_to_all else door,
            helpers_door=door,
            found=store.found,
            hosts=settings.hosts,
            ways=settings.ways,
        )
    )
    app.teardown_request(lambda _: _tell(alerts))
    return House(
        app, settings, store, workshop, door, streams, alerts, leaving, nightly, children, seeker, cards, turns
    )


def _tell(alerts: AlertClock) -> None:
    """What fell due while a request was answered is told by whoever answered it."""
    alerts.passed()


def served(house: House, bounds: Bounds | None = None) -> Any:
    """The house as an ASGI app, which starts the clock with the server and puts everything down with it."""
    return Served(house.app, house.streams, house.open, house.close, house.settings.data, bounds)
