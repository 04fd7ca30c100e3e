"""Signals from machines on the Shop page: a station's tokens and limits, and the MQTT broker."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Flask, Response, abort, request

from runboard.floor.keeping.broker import Broker, read_broker, set_broker, with_kept_password
from runboard.floor.keeping.signals import limits_of, make_sensor, revoke_sensor, set_limits
from runboard.run.refusal import Refused
from runboard.shop.book import Station
from runboard.shop.numbers import any_number, whole_number
from runboard.web.door.pages import page, said, see_other, workshop
from runboard.web.fittings import fittings
from runboard.web.network.ways import first_page
from runboard.web.shop.signals import ears

_HERE = "/shop/signals"

part = Blueprint("signals_pages", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


@part.get(_HERE)
def stations() -> Response:
    """Every station with what was heard of it last, and the broker."""
    return _page(read_broker(ears()))


@part.post(f"{_HERE}/mqtt")
def save_broker() -> Response:
    """Set the broker, and listen to it from now on."""
    typed = _posted()
    try:
        broker = with_kept_password(typed, read_broker(ears()))
        set_broker(ears(), broker)
    except Refused as refused:
        return _page(typed, 422, said("refused", refused.code, refused.facts))
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
        set_limits(ears(), station, _number(texts["watts"]), _number(texts["seconds"]))
    except Refused as refused:
        return _station_page(station, 422, problem=said("refused", refused.code, refused.facts), texts=texts)
    return see_other(f"{_HERE}/{station}")


@part.post(f"{_HERE}/<station>/tokens")
def make(station: str) -> Response:
    """Make a token, and show it: the answer is the page itself and no redirect, since it is kept nowhere."""
    token, sensor = make_sensor(ears(), station, request.form.get("name", ""))
    address = first_page()
    response = _station_page(station, token=token, sensor=sensor.name, address=f"{address}signals/{station}")
    response.headers["Cache-Control"] = "no-store"
    return response


@part.post(f"{_HERE}/<station>/tokens/<sensor_id>/revoke")
def revoke(station: str, sensor_id: str) -> Response:
    """Hear it no more."""
    revoke_sensor(ears(), sensor_id)
    return see_other(f"{_HERE}/{station}")


def _page(broker: Broker, status: int = 200, problem: str = "") -> Response:
    book = workshop().books.latest()
    return page(
        "shop/stations.html",
        status=status,
        problem=problem,
        stations=[(one, ears().heard.get(one.key)) for one in book.stations],
        broker=broker,
        is_kept=bool(read_broker(ears()).password),
        mqtt=fittings().leaving.mqtt.said(),
    )


def _station_page(key: str, status: int = 200, **more: Any) -> Response:
    station = _known(key)
    limits = limits_of(ears(), key)
    texts = {"watts": f"{limits.watts:g}", "seconds": f"{limits.for_.total_seconds():g}"}
    sensors = [one for one in ears().sensors.sensors() if one.station == key]
    filled = {"texts": texts, "sensors": sensors, "heard": ears().heard.get(key), **more}
    return page("shop/station.html", status=status, station=station, **filled)


def _known(key: str) -> Station:
    return workshop().books.latest().station(key) or abort(404)


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
        places=_by_station(form, "place."),
    )


def _by_station(form: Mapping[str, str], prefix: str) -> dict[str, str]:
    known = [one.key for one in workshop().books.latest().stations]
    found = {key: form.get(f"{prefix}{key}", "").strip() for key in known}
    return {key: text for key, text in found.items() if text}


def _number(text: str) -> float:
    number = any_number(text)
    return -1.0 if number is None else number  # refused as a number out of bounds, with the same sentence
