"""Messages that leave the building, through Apprise: from a thread of its own, so that no page waits for them."""

import logging
import queue
import re
import threading
import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Protocol, cast
from urllib.parse import parse_qsl, unquote, urlsplit

from runboard.floor.keeping.outside import Channel
from runboard.floor.workshop import Clock
from runboard.run.log.event import write_moment
from runboard.words.sentences import say

PATIENCE_SECONDS = 20.0
MOST_WAITING = 200
# The server does not wait longer than this for a silent channel when it ends.
_LAST_SECONDS = 2.0
_LONGEST_WHY = 200
_SHORTEST = 3  # a shorter piece stands in any sentence by chance

_log = logging.getLogger("runboard")


@dataclass(frozen=True)
class Message:
    """What goes to these channels. ``sent`` is set once each took it or failed."""

    channels: Sequence[Channel]
    title: str
    body: str
    sent: threading.Event = field(default_factory=threading.Event)


class Results(Protocol):
    """Where it is kept how the last sending to each channel went."""

    def get(self, key: str) -> dict[str, Any]: ...
    def put(self, key: str, record: Mapping[str, Any]) -> None: ...


# Gives why a channel did not take a message; '' where it did.
Send = Callable[[str, str, str], str]
RESULTS_KEY = "outside sent"


class Outside:
    """The worker. All channels of a message are tried at the same time; a silent one keeps nobody else waiting long."""

    def __init__(self, results: Results, clock: Clock, send: Send | None = None, patience: float = PATIENCE_SECONDS):
        self._results = results
        self._clock = clock
        self._one = send or send_by_apprise
        self._patience = patience
        self._waiting: queue.Queue[Message | None] = queue.Queue(MOST_WAITING)
        self._thread: threading.Thread | None = None

    def send(self, channels: Sequence[Channel], title: str, body: str) -> threading.Event:
        """Send soon; the event is set once it is known how that went. It never waits."""
        message = Message(channels, title, body)
        try:
            self._waiting.put_nowait(message)
        except queue.Full:
            _log.error("too many messages wait to be sent outside, so one was dropped")
            message.sent.set()
        return message.sent

    def last_results(self) -> Mapping[str, Mapping[str, Any]]:
        """How the last sending to each channel went: ``code`` sent, failed with ``why``, or silent; and when."""
        return self._results.get(RESULTS_KEY)

    def is_readable(self, url: str) -> bool:
        """Whether it is known how to send to this address."""
        import apprise

        return bool(apprise.Apprise(asset=_asset(apprise)).add(url))

    def hidden(self, url: str) -> str:
        """The address without what is secret in it: how, and to which server."""
        return _hidden(url)

    def start(self) -> None:
        """Begin to send."""
        self._thread = threading.Thread(target=self._run, name="outside", daemon=True)
        self._thread.start()

    def stop(self) -> None:
        """End the worker; what is being sent has a moment left."""
        thread, self._thread = self._thread, None
        if thread is not None:
            self._waiting.put(None)
            thread.join(_LAST_SECONDS)

    def _run(self) -> None:
        while (message := self._waiting.get()) is not None:
            try:
                self._deliver(message)
            except Exception:  # noqa: BLE001 - whatever it is, the next message is sent
                _log.exception("what was sent outside could not be noted")
            message.sent.set()

    def _deliver(self, message: Message) -> None:
        tries = [Try(channel, message, self._one) for channel in message.channels]
        until = time.monotonic() + self._patience
        for going in tries:
            going.join(max(0.0, until - time.monotonic()))
        found = {going.channel.id: self._result(going) for going in tries}
        for key, result in found.items():
            if result["code"] != "sent":
                _log.warning("nothing was sent to channel %s: %s", key, result.get("why") or result["code"])
        self._results.put(RESULTS_KEY, {**self._results.get(RESULTS_KEY), **found})

    def _result(self, going: "Try") -> dict[str, Any]:
        at = write_moment(self._clock.now())
        if going.is_alive():
            return {"code": "silent", "at": at, "seconds": round(self._patience)}
        if going.why is None or going.why:
            return {"code": "failed", "at": at, "why": going.why or ""}
        return {"code": "sent", "at": at}


class Try(threading.Thread):
    """One message to one channel. ``why`` it was not taken; '' where it was, None where that is not known."""

    def __init__(self, channel: Channel, message: Message, send: Send) -> None:
        super().__init__(name=f"outside {channel.id}", daemon=True)
        self.channel = channel
        self.why: str | None = None
        self._message = message
        self._send = send
        self.start()

    def run(self) -> None:
        url = self.channel.url
        try:
            why = self._send(url, self._message.title, self._message.body)
        except Exception as error:  # noqa: BLE001 - a channel's own code; what it says is shown
            why = f"{type(error).__name__}: {error}"
        self.why = without_secrets(why, url, _hidden(url))[:_LONGEST_WHY] if why else why


def send_by_apprise(url: str, title: str, body: str) -> str:
    """Why the channel did not take it, in Apprise's own words; '' where it did."""
    import apprise  # imported late: it is large, and most shops send nothing outside

    sender = apprise.Apprise(asset=_asset(apprise))
    if not sender.add(url):
        return say("channel", "unreadable")
    result: Any = sender.notify(body=body, title=title, notify_type="warning")
    if result:
        return ""
    warnings = [entry.message for entry in result.logs() if entry.level in ("WARNING", "ERROR")]
    return str(warnings[-1]) if warnings else say("channel", "unsaid")


def _hidden(url: str) -> str:
    import apprise

    found = apprise.Apprise.instantiate(url, asset=_asset(apprise), suppress_exceptions=True)
    return how_and_where(str(cast(Any, found).url(privacy=True)) if found else url.split(":")[0])


def _asset(apprise: Any) -> Any:
    """Who sends. Without pictures: they would point at somebody else's server."""
    return apprise.AppriseAsset(
        app_id="runboard", app_desc="runboard", app_url="", image_url_mask="", image_url_logo="", image_path_mask=""
    )


# What is secret in a channel's address, and a text without it


def how_and_where(shown: str) -> str:
    """Of an address whose passwords are hidden already only how and to which server: a user's name, a topic or the path of
    a webhook may be all that somebody needs to send there, or to read along."""
    scheme, found, rest = shown.split("?")[0].partition("://")
    if not found:
        return scheme
    place, _, path = rest.partition("/")
    _, user, server = place.rpartition("@")
    return f"{scheme}://{'…@' if user else ''}{server}{'/…' if path.strip('/') else ''}"


def without_secrets(text: str, url: str, shown: str) -> str:
    """A text, such as why nothing could be sent, without any piece of the address that is not shown."""
    secret = _pieces(url) - _pieces(shown)
    for piece in sorted(secret, key=len, reverse=True):
        text = text.replace(piece, "…")
    return text


def _pieces(url: str) -> set[str]:
    try:
        asked = urlsplit(url)
        values = [value for _, value in parse_qsl(asked.query)]
    except ValueError:
        asked, values = urlsplit(""), [url]
    written = [*re.split(r"[:/@]", f"{asked.scheme}://{asked.netloc}{asked.path}"), *values]
    every = [part for text in written for part in (text, unquote(text), *re.split(r"[\s/:@+&=]", unquote(text)))]
    return {part for part in every if len(part) >= _SHORTEST}
