"""What the pages have at hand: one object, which ``app.py`` puts together and every page reads."""

from collections.abc import Collection
from dataclasses import dataclass

from flask import Flask, current_app

from runboard.alerts.leaving import Leaving
from runboard.floor.changing.pictures import Shelf
from runboard.floor.keeping.backup import Copies
from runboard.floor.keeping.push import Subscriptions
from runboard.floor.letting_in.devices import Door
from runboard.floor.looking.answers import Answers
from runboard.floor.planning.planner import Planner
from runboard.floor.planning.try_change import Trials
from runboard.floor.workshop import KeptSettings, Workshop
from runboard.lan.addresses import HOSTS
from runboard.lan.network import Network
from runboard.store.closed import OpenFolder
from runboard.store.incoming import Incoming
from runboard.web.trays.card_desk import CardDesk


@dataclass(frozen=True)
class Fittings:
    """``door`` is None where nobody has to pair (``helpers_door`` is there all the same, for who comes by a tray's card), ``planner`` where nobody plans, and ``ways`` where there is no network to
    speak of: a demo, a test. ``found`` says who could read the data folder, where a person should know; ``push_near`` lets a
    push service be on this computer. ``hosts`` are the names and addresses that the server answers to, in small letters;
    they may change while it runs."""

    workshop: Workshop
    settings: KeptSettings
    leaving: Leaving
    subscriptions: Subscriptions
    push_near: bool
    copies: Copies
    incoming: Incoming
    pictures: Shelf
    cards: CardDesk
    trials: Trials
    answers: Answers
    planner: Planner | None = None
    door: Door | None = None
    helpers_door: Door | None = None
    found: OpenFolder | None = None
    hosts: Collection[str] = HOSTS
    ways: Network | None = None


def fit_out(app: Flask, with_these: Fittings) -> None:
    """Let the app's pages have them."""
    app.extensions["fittings"] = with_these


def fitted(app: Flask) -> Fittings:
    """Those of an app."""
    found: Fittings = app.extensions["fittings"]
    return found


def fittings() -> Fittings:
    """Those of the app that answers."""
    return fitted(current_app)
