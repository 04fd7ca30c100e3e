"""How alerts climb and where they go outside, on the Shop page: steps, channels with a test each, the computer's sound."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, Response, request

from runboard.floor.keeping.outside import Channel, add_channel, channels, find_channel, remove_channel, set_steps
from runboard.floor.looking.at_hand import book_now
from runboard.run.refusal import Refused
from runboard.shop.numbers import any_number
from runboard.web.door.pages import page, refusal, said, see_other, workshop
from runboard.web.fittings import fittings
from runboard.words.alert import words_of_a_test

# A test is answered by its result where that comes soon; else the page says so when it is loaded again.
TEST_SECONDS = 8.0
STEPS = ("louder", "outside", "computer")
_HERE = "/shop/alarms"

part = Blueprint("outside", __name__)


@part.get(_HERE)
def alarms() -> Response:
    """How alerts climb, and where they go."""
    return _page()


@part.post(f"{_HERE}/steps")
def save_steps() -> Response:
    """Set after how long each stage begins; nothing written means never."""
    texts = {name: request.form.get(name, "").strip() for name in STEPS}
    try:
        set_steps(workshop(), fittings().settings, {name: _minutes(text) for name, text in texts.items()})
    except Refused as refused:
        return _page(422, refusal(refused), texts)
    return see_other(_HERE)


@part.post(f"{_HERE}/channels")
def add() -> Response:
    """Add a way out of the building."""
    name, url = request.form.get("name", ""), request.form.get("url", "")
    try:
        add_channel(fittings().settings, name, url, fittings().leaving.outside.is_readable)
    except Refused as refused:
        return _page(422, refusal(refused), added={"name": name, "url": url})
    return see_other(f"{_HERE}#channels")


@part.post(f"{_HERE}/channels/<channel_id>/test")
def test(channel_id: str) -> Response:
    """Send something there now."""
    channel = find_channel(fittings().settings, channel_id)
    fittings().leaving.outside.send([channel], *words_of_a_test(book_now(workshop()).name)).wait(TEST_SECONDS)
    return see_other(f"{_HERE}#channels")


@part.post(f"{_HERE}/channels/<channel_id>/remove")
def remove(channel_id: str) -> Response:
    """Send nothing there any more."""
    remove_channel(fittings().settings, channel_id)
    return see_other(f"{_HERE}#channels")


@part.post(f"{_HERE}/sound")
def sound() -> Response:
    """Let the shop's computer sound now."""
    playing = fittings().leaving.speaker.play()
    if playing is not None:
        playing.join(TEST_SECONDS)
    return see_other(f"{_HERE}#sound")


def channels_shown() -> list[dict[str, Any]]:
    """Each channel with how the last sending went: a ``sentence``, and whether it ``failed``."""
    results = fittings().leaving.outside.last_results()
    return [_shown(channel, results.get(channel.id)) for channel in channels(fittings().settings)]


def _shown(channel: Channel, result: Mapping[str, Any] | None) -> dict[str, Any]:
    found: dict[str, Any] = {"id": channel.id, "name": channel.name}
    if result is None:
        return {**found, "failed": False, "sentence": said("channel", "never")}
    if result["code"] == "sent":
        return {**found, "failed": False, "sentence": said("channel", "sent", {"at": result["at"]})}
    silent = result["code"] == "silent"
    why = said("channel", "silent", {"seconds": result["seconds"]}) if silent else result.get("why", "")
    facts = {"at": result["at"], "why": why or said("channel", "unsaid")}
    return {**found, "failed": True, "sentence": said("channel", "failed", facts)}


def _with_addresses(shown: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The same with how and where each sends; what is secret in an address never leaves the server."""
    hidden = {channel.id: fittings().leaving.outside.hidden(channel.url) for channel in channels(fittings().settings)}
    return [{**way, "url": hidden.get(way["id"], "")} for way in shown]


def _page(
    status: int = 200, problem: str = "", texts: Mapping[str, str] | None = None, added: Mapping[str, str] | None = None
) -> Response:
    steps = workshop().steps
    known = {name: _text(getattr(steps, name)) for name in STEPS}
    code, facts = fittings().leaving.speaker.said()
    return page(
        "shop/alarms.html",
        status=status,
        cached=False,  # an address that was refused comes back as it was typed
        problem=problem,
        steps=texts or known,
        channels=_with_addresses(channels_shown()),
        added=added or {},
        sound=said("sound", code, facts),
        can_sound=code != "none",
    )


def _minutes(text: str) -> float | None:
    if not text:
        return None
    number = any_number(text)
    return -1.0 if number is None else number  # refused as a number out of bounds, with the same sentence


def _text(span: Any) -> str:
    return "" if span is None else f"{span.total_seconds() / 60:g}"
