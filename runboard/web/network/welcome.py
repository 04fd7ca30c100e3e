"""The way up: how a device comes to trust the shop's certificate, what that is good for, and how it goes over to https."""

from datetime import datetime
from urllib.parse import urlencode

from flask import Blueprint, Response, abort, make_response, render_template, request

from runboard.floor.letting_in.devices import make_code
from runboard.lan.addresses import HOSTS
from runboard.lan.trust import DER_TYPE, PROFILE_TYPE, Trusted
from runboard.web.door.pages import page, unkept
from runboard.web.door.sessions import asking_session, door
from runboard.web.door.ways import drawn, first_page, host_asked_by, secure_page, ways
from runboard.words.sentences import sentence

# Whose steps stand open, told by what browsers say of themselves; first come, first served.
_KINDS = (("iPhone", "iphone"), ("iPad", "iphone"), ("Android", "android"))

part = Blueprint("welcome", __name__)


@part.get("/welcome")
def steps() -> Response:
    """The steps, for whoever asks: a device need not be paired to trust the certificate. It runs no script."""
    found = ways() or abort(404)
    is_here = host_asked_by() in HOSTS and not request.is_secure
    text = render_template(
        "network/way_up.html",
        trusted=found.trusted,
        troubles=found.troubles,
        secure=secure_page(),
        kind=_kind_of_device(),
        is_secure=request.is_secure,
        is_paired=asking_session() is not None,
        picture=drawn(f"{first_page()}welcome", sentence("pairing-qr-page")) if is_here else "",
        is_here=is_here,
        http_port=found.http_port,
    )
    return unkept(make_response(text))


@part.get("/welcome/runboard.cer")
def certificate() -> Response:
    """The shop's certificate for Android and computers. As a download: Android takes it from there in its settings."""
    return _file(_trusted().der, DER_TYPE, "attachment; filename=runboard.cer")


@part.get("/welcome/runboard.mobileconfig")
def profile() -> Response:
    """The same for an iPhone, which asks at once what to do with it."""
    return _file(_trusted().profile, PROFILE_TYPE, "inline; filename=runboard.mobileconfig")


@part.post("/welcome/over")
def go_over() -> Response:
    """An address that takes this device to the secure page, paired as it is, under its id.

    The answer is the page itself and no redirect: the code is kept nowhere, and a form may not lead to another port.
    """
    session, shut, secure = asking_session(), door(), secure_page()
    if session is None or shut is None or not secure:
        abort(404)
    code, ends_at = make_code(shut, session.device.access, session.device.id)
    return _over(secure, code, ends_at, session.device.name)


def _over(secure: str, code: str, ends_at: datetime, name: str) -> Response:
    address = f"{secure}pair?{urlencode({'code': code, 'name': name})}"
    response = page("network/over.html", cached=False, address=address, secure=secure, code=code, ends_at=ends_at)
    # The address holds a code, which is nobody else's to know.
    response.headers["Referrer-Policy"] = "no-referrer"
    return response


def _file(content: bytes, kind: str, disposition: str) -> Response:
    response = make_response(content)
    response.headers.update({"Content-Type": kind, "Content-Disposition": disposition})
    return unkept(response)


def _trusted() -> Trusted:
    """What there is to trust; 404 where there is nothing."""
    found = ways()
    return (found and found.trusted) or abort(404)


def _kind_of_device() -> str:
    agent = request.headers.get("User-Agent", "")
    return next((kind for sign, kind in _KINDS if sign in agent), "computer")
