"""'Send alerts to this phone when it is locked', on the Shop page: the key, the phone's subscription, and its end."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Response, jsonify, make_response

from runboard.floor.keeping.push import subscribe, subscription_of, unsubscribe
from runboard.run.refusal import Refused
from runboard.web.door.errors import answer, read_json
from runboard.web.door.pages import refusal, said, unkept
from runboard.web.door.sessions import asking_device, door, door_here
from runboard.web.fittings import fittings

part = Blueprint("push", __name__)


@part.get("/push/key")
def key() -> Response:
    """``{"key", "endpoint"}``: the shop's public key, and where this device is sent to ('' for nowhere)."""
    door_here()
    found = subscription_of(fittings().subscriptions, asking_device())
    return unkept(jsonify(key=fittings().leaving.push_key.public(), endpoint=found.endpoint if found else ""))


@part.post("/push/subscription")
def subscription() -> Response:
    """Send alerts to this device from now on; a first message goes out at once."""
    shut, record = door_here(), read_json()
    try:
        subscribe(fittings().subscriptions, shut.clock, asking_device(), record, fittings().push_near)
    except Refused as refused:
        return answer(refusal(refused), 422)
    fittings().leaving.push.welcome(asking_device(), said("push", "welcome"))
    return make_response(jsonify(sentence=said("push", "on")), 201)


@part.delete("/push/subscription")
def end() -> Response:
    """Send this device nothing any more."""
    door_here()
    unsubscribe(fittings().subscriptions, asking_device())
    return jsonify(sentence=said("push", "off"))


def push_troubles() -> list[str]:
    """A sentence for each device to which the last alert was not sent."""
    shut = door()
    if shut is None:
        return []
    results = fittings().leaving.push.last_results()
    held = {subscription.device for subscription in fittings().subscriptions.subscriptions()}
    paired = [device for device in shut.devices.devices() if device.revoked_at is None and device.id in results]
    return [
        _sentence(device.name, results[device.id])
        for device in paired
        if _is_trouble(results[device.id], device.id in held)
    ]


def _is_trouble(result: Mapping[str, Any], is_held: bool) -> bool:
    code = str(result["code"])
    return code != "sent" and is_held != (code == "ended")


def _sentence(name: str, result: Mapping[str, Any]) -> str:
    why = result.get("why", "")
    return said("push", result["code"], {"device": name, "at": result["at"], **({"why": why} if why else {})})
