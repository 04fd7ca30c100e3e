"""What the pages have at hand: one object, which ``app.py`` puts together and every page reads."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, Protocol

from flask import Flask, current_app

from runboard.floor.changing.pictures import Shelf
from runboard.floor.keeping.backup import Copies
from runboard.floor.keeping.broker import Broker
from runboard.floor.keeping.outside import Channel
from runboard.floor.keeping.push import Subscriptions
from runboard.floor.keeping.signals import Ears
from runboard.floor.letting_in.devices import Door
from runboard.floor.planning.planner import Planner
from runboard.floor.planning.try_change import Trials
from runboard.floor.workshop import Settings, Workshop
from runboard.lan.addresses import HOSTS
from runboard.lan.trust import Trusted
from runboard.store.closed import Found
from runboard.store.incoming import Incoming
from runboard.web.trays.card_desk import CardDesk


class MqttEar(Protocol):
    """What listens to the broker."""

    def said(self) -> str: ...
    def listen(self, broker: Broker) -> None: ...


class Waits(Protocol):
    def wait(self, timeout: float | None = None) -> bool: ...


class Outside(Protocol):
    """What sends outside."""

    def send(self, channels: Sequence[Channel], title: str, body: str) -> Waits: ...
    def last_results(self) -> Mapping[str, Mapping[str, Any]]: ...
    def is_readable(self, url: str) -> bool: ...
    def hidden(self, url: str) -> str: ...


class Speaker(Protocol):
    """What sounds on the shop's computer."""

    def said(self) -> tuple[str, dict[str, str]]: ...
    def play(self) -> Any: ...


class Push(Protocol):
    """What sends to phones that are locked."""

    def welcome(self, device: str, says: str) -> None: ...
    def last_results(self) -> Mapping[str, Mapping[str, Any]]: ...


class PushKey(Protocol):
    def public(self) -> str: ...


class Leaving(Protocol):
    """How machines are heard, and how an alert leaves the pages."""

    @property
    def ears(self) -> Ears: ...
    @property
    def mqtt(self) -> MqttEar: ...
    @property
    def outside(self) -> Outside: ...
    @property
    def speaker(self) -> Speaker: ...
    @property
    def push(self) -> Push: ...
    @property
    def push_key(self) -> PushKey: ...


class Ways(Protocol):
    """The shop's network. A port is 0 where there is none, ``troubles`` are sentences for a person, ``pages`` the addresses
    for a phone, the surest first, and ``vouched`` the hosts that the certificate is good for."""

    @property
    def http_port(self) -> int: ...
    @property
    def https_port(self) -> int: ...
    @property
    def troubles(self) -> tuple[str, ...]: ...
    @property
    def vouched(self) -> Collection[str]: ...
    @property
    def trusted(self) -> Trusted | None: ...
    def pages(self, scheme: str) -> tuple[str, ...]: ...


@dataclass(frozen=True)
class Fittings:
    """``door`` is None where nobody has to pair, ``planner`` where nobody plans, and ``ways`` where there is no network to
    speak of: a demo, a test. ``found`` says who could read the data folder, where a person should know; ``push_near``
    lets a push service be on this computer. ``hosts`` are the names and addresses that
    the server answers to, in small letters; they may change while it runs."""

    workshop: Workshop
    settings: Settings
    leaving: Leaving
    subscriptions: Subscriptions
    push_near: bool
    copies: Copies
    incoming: Incoming
    pictures: Shelf
    cards: CardDesk
    trials: Trials
    planner: Planner | None = None
    door: Door | None = None
    found: Found | None = None
    hosts: Collection[str] = HOSTS
    ways: Ways | None = None


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
