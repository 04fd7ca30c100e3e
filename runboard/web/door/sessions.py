"""Which device asks: its session cookie, read at each request, and begun anew now and then."""

from ipaddress import ip_address
from typing import cast
from urllib.parse import urlsplit

from flask import Flask, Response, abort, g, request

from runboard.floor.letting_in.devices import HERE, HTTP, HTTPS, SESSION_LASTS, Door, note_seen, who
from runboard.floor.letting_in.guests import Browser
from runboard.floor.pressing.access import LEAD
from runboard.run.calls.device import Session
from runboard.web.fittings import fittings

# A browser gives a cookie to every port of a host, and keeps http from touching what https set: so each has its own.
# With the prefix, it takes the cookie from https only, for this host only.
COOKIE, COOKIE_BY_HTTPS = "runboard", "__Host-runboard"
# The id of the device that a browser is at https. It opens nothing; by it a card's plain address knows who was shut out.
DEVICE_COOKIE = "runboard-device"


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.after_request(renew)
    app.context_processor(lambda: {"access": access()})


def door() -> Door | None:
    """The door of this app; None where nobody has to pair, but for the helper's pages: a card opens them everywhere."""
    shut = fittings().door
    return fittings().helpers_door if shut is None and _asks_a_helpers_page() else shut


def _asks_a_helpers_page() -> bool:
    """Whether a helper's page asks, or is asked for. Only there may a browser be a guest where it is a lead's elsewhere."""
    sent_from = urlsplit(request.referrer or "").path
    return request.blueprint == "helper" or (request.endpoint == "taps.taps" and sent_from == "/helper")


def door_here() -> Door:
    """The door; 404 where nobody has to pair, so that there are no devices."""
    return door() or abort(404)


def cookie_name(by_https: bool) -> str:
    """The name of the session's cookie."""
    return COOKIE_BY_HTTPS if by_https else COOKIE


def asking_session() -> Session | None:
    """The session of the device that asks; None for an unknown one, and where nobody has to pair."""
    if "session" not in g:
        shut, token = door(), asking_token()
        g.session = who(shut, token, asked_by()) if shut and token else None
    return cast(Session | None, g.session)


def asked_by() -> str:
    """By which way the device asks: by https, from this computer itself, or by plain http from the network."""
    if request.is_secure:
        return HTTPS
    try:
        address = ip_address(request.remote_addr or "")
    except ValueError:
        return HTTP
    return HERE if (getattr(address, "ipv4_mapped", None) or address).is_loopback else HTTP


def asking_token() -> str:
    """The secret that the asking device has, of whatever session; '' where it has none."""
    return request.cookies.get(cookie_name(request.is_secure), "")


def asking_browser() -> Browser:
    """Whatever the asking browser has of sessions and devices, by http and https."""
    asking = (request.cookies.get(name, "") for name in (cookie_name(request.is_secure), COOKIE, COOKIE_BY_HTTPS))
    return Browser(tuple(dict.fromkeys(token for token in asking if token)), request.cookies.get(DEVICE_COOKIE, ""))


def access() -> str:
    """What the asking device may do: lead, crew, guest, nothing ('') for an unknown one; where nobody has to pair, all."""
    if door() is None:
        return LEAD
    session = asking_session()
    return session.device.access if session else ""


def asking_device() -> str:
    """The id of the asking device; '' where nobody has to pair, or for an unknown one."""
    session = asking_session()
    return session.device.id if session else ""


def begin(response: Response, token: str, session: Session) -> None:
    """The device that asks has this session from now on."""
    g.session = session
    _give(response, token)


def _give(response: Response, token: str) -> None:
    """Let the device have its secret: no script can read it, no other site's page can make it be sent.

    The device keeps it for longer than it opens anything (a lead's by plain http): by it the same device is known when it
    pairs again. How long a secret is good for is for the server to say; who read it along asks no cookie's age.
    """
    response.set_cookie(
        cookie_name(request.is_secure),
        token,
        max_age=SESSION_LASTS,
        path="/",
        secure=request.is_secure,
        httponly=True,
        samesite="Strict",
    )
    if request.is_secure and (session := asking_session()):
        response.set_cookie(
            DEVICE_COOKIE, session.device.id, max_age=SESSION_LASTS, path="/", httponly=True, samesite="Strict"
        )


def renew(response: Response) -> Response:
    """Note that the device was here, and now and then let it keep its cookie for longer."""
    shut, session = door(), g.get("session")
    if shut and session and note_seen(shut, session, asked_by()) and asking_token():
        _give(response, asking_token())
    return response
