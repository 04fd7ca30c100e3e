"""The ways in from the shop's network: at which addresses a phone finds the server, plain and with the certificate."""

from collections.abc import Collection
from dataclasses import dataclass
from typing import Protocol, cast
from urllib.parse import urlsplit

from flask import current_app, request

# This computer's own names, which lead to it from nowhere else.
HOSTS = frozenset({"localhost", "127.0.0.1", "[::1]"})


@dataclass(frozen=True)
class Trusted:
    """What a device is given to trust: the shop's certificate, by the name under which a device lists it, as a file for
    Android and computers, as a profile for iPhones, and in lines that two people compare."""

    name: str
    der: bytes
    profile: bytes
    fingerprint: tuple[str, ...]


class Ways(Protocol):
    """What the pages ask of the network. A port is 0 where there is none, ``troubles`` are sentences for a person,
    ``pages`` the addresses for a phone, the surest first, and ``vouched`` the hosts that the certificate is good for."""

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


def ways() -> Ways | None:
    """The ways in; None where there is no network to speak of: a demo, a test."""
    return cast(Ways | None, current_app.extensions["ways"])


def first_page() -> str:
    """Where another device finds the shop by plain http, which asks it to trust nothing yet: under the name that this
    one asked by, unless that is this computer's own; else under the surest address."""
    found = ways()
    if found is None:
        return request.host_url
    if host_asked_by() not in HOSTS:
        return f"http://{host_asked_by()}:{found.http_port}/"
    return next(iter(found.pages("http")), f"http://{host_asked_by()}:{found.http_port}/")


def secure_page() -> str:
    """Where the device that asks finds the shop with the certificate; '' where there is no such page."""
    found = ways()
    if found is None or not found.https_port:
        return ""
    if host_asked_by() in found.vouched:
        return f"https://{host_asked_by()}:{found.https_port}/"
    return next(iter(found.pages("https")), "")


def host_asked_by() -> str:
    """The name or address that the device asked by, without its port."""
    host = urlsplit(request.host_url).hostname or ""
    return f"[{host}]" if ":" in host else host
