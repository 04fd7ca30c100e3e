"""Where machines speak and buttons press: POST /signals/<station> and /buttons/<station>, each with a token of its own; on the
Shop page a station's tokens and limits, and the MQTT broker. Nothing is ever sent back to a machine but an answer: nothing
here switches anything."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Response, abort, jsonify, make_response, request

from runboard.floor.keeping.broker import Broker, read_broker, set_broker, with_kept_password
from runboard.floor.keeping.buttons import make_button, press_button
from runboard.floor.keeping.signals import (
    limits_of,
    make_sensor,
    revoke_sensor,
    set_limits,
    take_signal,
    who_speaks,
)
from runboard.floor.looking.at_hand import book_now
from runboard.run.calls.signals import PRESSES, SIGNALS, read_payload, read_signal
from runboard.run.refusal import Refused
from runboard.shop.book import Station
from runboard.shop.numbers import any_number, whole_number
from runboard.web.door.pages import page, refusal, see_other, workshop
from runboard.web.door.ways import first_page
from runboard.web.fittings import fittings
from runboard.words.button import button_words

_STATUS = {"signal token": 401, "signal too often": 429, "signal form": 422, "station unknown": 404}
_HERE = "/shop/signals"

part = Blueprint("signals", __name__)


@part.post("/signals/<station>")
def receive(station: str) -> Response:
    """Take a reading: a number of watts, 'on' or 'off', or JSON that holds ``watts`` or ``on``.

    Answers ``{"station", "runs"}``; ``runs`` is null while it is not settled whether low power will last.
    """
    try:
        sensor = who_speaks(fittings().leaving.ears, _token(), station, request.remote_addr or "")
        runs = take_signal(fittings().leaving.ears, station, read_signal(read_payload(request.get_data())), sensor.name)
    except Refused as refused:
        return _refuse(refused)
    return jsonify(station=station, runs=runs)


@part.post("/buttons/<station>")
def press(station: str) -> Response:
    """A button at a station is pressed; what comes with it is not read.

    Answers ``{"station", "did", "person", "code", "sentence"}``; ``did`` is done, started, taken back, or nothing with the
    ``code`` of why. That is 200 too: a button that takes an error for a lost message would press once more.
    """
    try:
        who_speaks(fittings().leaving.ears, _token(), station, request.remote_addr or "", PRESSES)
        pressed = press_button(fittings().leaving.ears, station)
    except Refused as refused:
        return _refuse(refused)
    book = book_now(workshop())
    return jsonify(
        station=station,
        did=pressed.did,
        person=getattr(book.person(pressed.person), "name", pressed.person),
        code=pressed.code,
        sentence=button_words(book, pressed),
    )


def _token() -> str:
    scheme, _, token = request.headers.get("Authorization", "").partition(" ")
    return token.strip() if scheme.lower() == "bearer" else ""


def _refuse(refused: Refused) -> Response:
    sentence = refusal(refused)
    response = make_response(jsonify(sentence=sentence), _STATUS[refused.code])
    if refused.code == "signal token":
        response.headers["WWW-Authenticate"] = "Bearer"
    if refused.code == "signal too often":
        response.headers["Retry-After"] = str(60 * refused.facts["minutes"])
    return response


# the pages


@part.get(_HERE)
def stations() -> Response:
    """Every station with what was heard of it last, and the broker."""
    return _page(read_broker(fittings().leaving.ears))


@part.post(f"{_HERE}/mqtt")
def save_broker() -> Response:
    """Set the broker, and listen to it from now on."""
    typed = _posted()
    try:
        broker = with_kept_password(typed, read_broker(fittings().leaving.ears))
        set_broker(fittings().leaving.ears, broker)
    except Refused as refused:
        return _page(typed, 422, refusal(refused))
    fittings().leaving.mqtt.listen(broker)
    return see_other(f"{_HERE}#mqtt")


@part.get(f"{_HERE}/<station>")
def one(station: str) -> Response:
    """One station: its sensors, and when it looks ended."""
    return _station_page(station)


@part.post(f"{_HERE}/<station>")
def save_limits(station: str) -> Response:
    """Set below which power, and for how long, it looks ended."""
    texts = {name: request.form.get(name, "").strip() for name in ("watts", "seconds")}
    try:
        set_limits(fittings().leaving.ears, station, _number(texts["watts"]), _number(texts["seconds"]))
    except Refused as refused:
        return _station_page(station, 422, problem=refusal(refused), texts=texts)
    return see_other(f"{_HERE}/{station}")


@part.post(f"{_HERE}/<station>/tokens")
def make(station: str) -> Response:
    """Make a token, and show it: the answer is the page itself and no redirect, since it is kept nowhere."""
    token, sensor = make_sensor(fittings().leaving.ears, station, request.form.get("name", ""))
    address = f"{first_page()}signals/{station}"
    return _station_page(station, cached=False, token=token, sensor=sensor.name, address=address)


@part.post(f"{_HERE}/<station>/buttons")
def make_press(station: str) -> Response:
    """Make the token of a button, and show it: the answer is the page itself and no redirect, since it is kept nowhere."""
    token, button = make_button(fittings().leaving.ears, station, request.form.get("name", ""))
    address = f"{first_page()}buttons/{station}"
    return _station_page(station, cached=False, press=token, button=button.name, address=address)


@part.post(f"{_HERE}/<station>/tokens/<sensor_id>/revoke")
def revoke(station: str, sensor_id: str) -> Response:
    """Hear it no more."""
    revoke_sensor(fittings().leaving.ears, sensor_id)
    return see_other(f"{_HERE}/{station}")


def _page(broker: Broker, status: int = 200, problem: str = "") -> Response:
    return page(
        "shop/stations.html",
        status=status,
        problem=problem,
        stations=[(here, fittings().leaving.ears.heard.get(here.key)) for here in book_now(workshop()).stations],
        broker=broker,
        is_kept=bool(read_broker(fittings().leaving.ears).password),
        mqtt=fittings().leaving.mqtt.said(),
    )


def _station_page(key: str, status: int = 200, *, cached: bool = True, **more: Any) -> Response:
    station = _known(key)
    limits = limits_of(fittings().leaving.ears, key)
    texts = {"watts": f"{limits.watts:g}", "seconds": f"{limits.for_.total_seconds():g}"}
    here = [sensor for sensor in fittings().leaving.ears.sensors.sensors() if sensor.station == key]
    filled = {
        "texts": texts,
        "sensors": [sensor for sensor in here if sensor.does == SIGNALS],
        "buttons": [sensor for sensor in here if sensor.does == PRESSES],
        "heard": fittings().leaving.ears.heard.get(key),
        **more,
    }
    return page("shop/station.html", status=status, cached=cached, station=station, **filled)


def _known(key: str) -> Station:
    return book_now(workshop()).station(key) or abort(404)


def _posted() -> Broker:
    form = request.form
    return Broker(
        on=form.get("on") == "yes",
        host=form.get("host", "").strip(),
        port=whole_number(form.get("port", ""), 65_535) or 0,
        tls=form.get("tls") == "yes",
        user=form.get("user", "").strip(),
        password=form.get("password", ""),
        topics=_by_station(form, "topic."),
        presses=_by_station(form, "press."),
        places=_by_station(form, "place."),
    )


def _by_station(form: Mapping[str, str], prefix: str) -> dict[str, str]:
    known = [station.key for station in book_now(workshop()).stations]
    found = {key: form.get(f"{prefix}{key}", "").strip() for key in known}
    return {key: text for key, text in found.items() if text}


def _number(text: str) -> float:
    number = any_number(text)
    return -1.0 if number is None else number  # refused as a number out of bounds, with the same sentence
