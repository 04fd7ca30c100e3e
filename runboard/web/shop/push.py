"""'Send alerts to this phone when it is locked', on the Shop page: the key, the phone's subscription, and its end."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Flask, Response, abort, jsonify, make_response

from runboard.floor.keeping.push import subscribe, subscription_of, unsubscribe
from runboard.floor.letting_in.devices import Door
from runboard.run.refusal import Refused
from runboard.web.door.errors import answer
from runboard.web.door.json_body import read_json
from runboard.web.door.pages import said
from runboard.web.door.sessions import asking_device, door
from runboard.web.fittings import fittings

part = Blueprint("push", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)
    app.jinja_env.globals.update(push_device=push_device, push_troubles=push_troubles)


@part.get("/push/key")
def key() -> Response:
    """``{"key", "endpoint"}``: the shop's public key, and where this device is sent to ('' for nowhere)."""
    _door()
    found = subscription_of(fittings().subscriptions, asking_device())
    response = make_response(
        jsonify(key=fittings().leaving.push_key.public(), endpoint=found.endpoint if found else "")
    )
    response.headers["Cache-Control"] = "no-store"
    return response


@part.post("/push/subscription")
def subscription() -> Response:
    """Send alerts to this device from now on; a first message goes out at once."""
    shut, record = _door(), read_json()
    try:
        subscribe(fittings().subscriptions, shut.clock, asking_device(), record, fittings().push_near)
    except Refused as refused:
        return answer(said("refused", refused.code, refused.facts), 422)
    fittings().leaving.push.welcome(asking_device(), said("push", "welcome"))
    return make_response(jsonify(sentence=said("push", "on")), 201)


@part.delete("/push/subscription")
def end() -> Response:
    """Send this device nothing any more."""
    _door()
    unsubscribe(fittings().subscriptions, asking_device())
    return jsonify(sentence=said("push", "off"))


def push_device() -> str:
    """The id of the device that asks, which can be sent alerts; '' where none can."""
    return asking_device()


def push_troubles() -> list[str]:
    """A sentence for each device to which the last alert was not sent."""
    shut = door()
    if shut is None:
        return []
    results = fittings().leaving.push.last_results()
    held = {one.device for one in fittings().subscriptions.subscriptions()}
    paired = [one for one in shut.devices.devices() if one.revoked_at is None and one.id in results]
    return [_sentence(one.name, results[one.id]) for one in paired if _is_trouble(results[one.id], one.id in held)]


def _is_trouble(result: Mapping[str, Any], is_held: bool) -> bool:
    code = str(result["code"])
    return code != "sent" and is_held != (code == "ended")


def _sentence(name: str, result: Mapping[str, Any]) -> str:
    why = result.get("why", "")
    return said("push", result["code"], {"device": name, "at": result["at"], **({"why": why} if why else {})})


def _door() -> Door:
    """The door; 404 where nobody has to pair: there is no device to send to."""
    return door() or abort(404)
