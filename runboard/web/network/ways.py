"""The ways in from the shop's network: at which addresses a phone finds the server, plain and with the certificate."""

from urllib.parse import urlsplit

from flask import request

from runboard.lan.addresses import HOSTS
from runboard.lan.network import Network
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
