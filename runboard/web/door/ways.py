"""The ways in from the shop's network: at which addresses a phone finds the server, plain and with the certificate."""

from urllib.parse import urlsplit

from flask import request
from markupsafe import Markup

from runboard.floor.letting_in.devices import HTTP
from runboard.floor.pressing.access import LEAD
from runboard.lan import qr
from runboard.lan.addresses import HOSTS
from runboard.lan.network import Network
from runboard.web.door.sessions import access, asked_by
from runboard.web.fittings import fittings


def ways() -> Network | None:
    """The ways in; None where there is no network to speak of: a demo, a test."""
    return fittings().ways


def first_page() -> str:
    """Where another device finds the shop by plain http, which asks it to trust nothing yet: under the name that this
    one asked by, unless that is this computer's own; else under the surest address."""
    found = ways()
    if found is None:
        return request.host_url
    if host_asked_by() not in HOSTS:
        return f"http://{host_asked_by()}:{found.http_port}/"
    return next(iter(found.pages("http")), f"http://{host_asked_by()}:{found.http_port}/")


def only_here() -> bool:
    """Whether no other device can open what ``first_page`` says, as in a demo: it is this computer's own address."""
    return (urlsplit(first_page()).hostname or "") in HOSTS


def secure_page() -> str:
    """Where the device that asks finds the shop with the certificate; '' where there is no such page."""
    found = ways()
    if found is None or not found.https_port:
        return ""
    if host_asked_by() in found.vouched:
        return f"https://{host_asked_by()}:{found.https_port}/"
    return next(iter(found.pages("https")), "")


def drawn(address: str, about: str) -> Markup:
    """An address as a QR code, an SVG element; ``about`` says what it is to whoever does not see it."""
    return Markup(qr.svg(address, about))  # noqa: S704 - it is an element, made here


def could_be_secure() -> bool:
    """Whether a lead asks by plain http, and there is a secure page to go over to."""
    return access() == LEAD and asked_by() == HTTP and bool(secure_page())


def host_asked_by() -> str:
    """The name or address that the device asked by, without its port."""
    host = urlsplit(request.host_url).hostname or ""
    return f"[{host}]" if ":" in host else host
