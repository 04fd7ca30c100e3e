"""Alerts to phones that are locked: each once it is due and once more when it grows louder, until somebody answers."""

import logging
import queue
import threading
from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any, Protocol

from runboard.alerts.outside import Results
from runboard.floor.keeping.push import Subscriptions
from runboard.floor.workshop import Clock
from runboard.run.calls.climb import Steps
from runboard.run.calls.dues import Due
from runboard.run.calls.push import Subscription, pushings
from runboard.run.log.event import write_moment
from runboard.run.refusal import NotStored

RESULTS_KEY = "push sent"
MOST_WAITING = 400
# So many alerts may be on their way to one phone. A service that hangs holds as many threads, and no more.
MOST_AT_ONCE = 12
_LAST_SECONDS = 2.0

_log = logging.getLogger("runboard")


class PushDues(Protocol):
    """The due moments as the store keeps them."""

    def pushed(self, now: datetime) -> list[tuple[Due, int]]: ...
    def claim_pushing(self, due_id: str, pushed: int, wanted: int) -> bool: ...


@dataclass(frozen=True)
class PushMessage:
    """What is sent: ``id`` of the alert, what it ``says``, ``at`` when it fell due. It goes to ``device`` alone where one
    is named, and only if it is still ``wanted`` when its turn comes."""

    id: str
    says: str
    at: str
    device: str = ""
    wanted: Callable[[], bool] = lambda: True


@dataclass(frozen=True)
class Sending:
    """How one sending to one device went."""

    subscription: Subscription
    code: str
    why: str = ""


# Gives (code, why) of one message to one service, as ``push_service.post`` does.
Post = Callable[[Subscription, Mapping[str, str]], tuple[str, str]]


class Pusher:
    """Sees which alerts want to be sent by now. ``steps`` are asked at each turn: they may be set anew."""

    def __init__(self, dues: PushDues, clock: Clock, steps: Callable[[], Steps], send: Callable[[Due], None]) -> None:
        self._dues = dues
        self._clock = clock
        self._steps = steps
        self._send = send
        self._unstored: dict[tuple[str, datetime], int] = {}

    def turn(self) -> int:
        """Send what is wanted by now; answers how many alerts that were."""
        now, steps = self._clock.now(), self._steps()
        return sum(self._one(due, before, pushings(due, steps, now)) for due, before in self._dues.pushed(now))

    def _one(self, due: Due, before: int, wanted: int) -> bool:
        key = (due.id, due.due_at)
        if wanted <= max(before, self._unstored.get(key, 0)):
            return False
        try:
            mine = self._dues.claim_pushing(due.id, before, wanted)
        except NotStored:
            # A disk that takes nothing is no reason to be silent; that it was sent is then only known here.
            self._unstored[key] = wanted
            mine = True
        if mine:
            self._send(due)
        return mine


@dataclass
class Push:
    """The worker. One thread reads and notes; each sending has a thread of its own, so a silent service delays nobody."""

    held: Subscriptions
    results: Results
    clock: Clock
    post: Post
    _waiting: "queue.Queue[PushMessage | Sending | None]" = field(default_factory=queue.Queue)
    _flying: Counter[str] = field(default_factory=Counter)
    _thread: threading.Thread | None = None

    def send(self, message: PushMessage) -> None:
        """Send soon. It never waits."""
        if self._waiting.qsize() >= MOST_WAITING:
            _log.error("too many alerts wait to be sent to phones, so one was dropped")
            return
        self._waiting.put(message)

    def welcome(self, device: str, says: str) -> None:
        """Send this device a first message, by which a person sees that it works."""
        self.send(PushMessage("push welcome", says, write_moment(self.clock.now()), device))

    def last_results(self) -> Mapping[str, Mapping[str, Any]]:
        """How the last sending to each device went, by its id: ``code`` sent, ended, silent, failed with ``why``; when."""
        return self.results.get(RESULTS_KEY)

    def start(self) -> None:
        """Begin to send."""
        self._thread = threading.Thread(target=self._run, name="push", daemon=True)
        self._thread.start()

    def stop(self) -> None:
        """End the worker; what is being noted has a moment left."""
        thread, self._thread = self._thread, None
        if thread is not None:
            self._waiting.put(None)
            thread.join(_LAST_SECONDS)

    def _run(self) -> None:
        while (next_ := self._waiting.get()) is not None:
            try:
                if isinstance(next_, Sending):
                    self._flying[next_.subscription.device] -= 1
                    self._note(next_)
                else:
                    self._begin(next_)
            except Exception:  # noqa: BLE001 - whatever it is, the next one is sent
                _log.exception("what was sent to phones could not be noted")

    def _begin(self, message: PushMessage) -> None:
        if not message.wanted():
            return
        for phone in self.held.subscriptions():
            if message.device not in ("", phone.device):
                continue
            if self._flying[phone.device] >= MOST_AT_ONCE:
                self._note(Sending(phone, "silent"))
                continue
            self._flying[phone.device] += 1
            threading.Thread(target=self._try, args=(phone, message), name=f"push {phone.device}", daemon=True).start()

    def _try(self, phone: Subscription, message: PushMessage) -> None:
        try:
            code, why = self.post(phone, {"id": message.id, "says": message.says, "at": message.at})
        except Exception as error:  # noqa: BLE001 - keys that are none, a library's own fault; what it is is shown
            code, why = "failed", type(error).__name__
        self._waiting.put(Sending(phone, code, why))

    def _note(self, sent: Sending) -> None:
        subscription = sent.subscription
        if sent.code != "sent":
            _log.warning("no alert was sent to device %s: %s", subscription.device, sent.why or sent.code)
        if sent.code == "ended" and not self.held.remove(subscription.device, subscription.endpoint):
            return  # it has another by now, or wants none
        found = {
            "code": sent.code,
            "at": write_moment(self.clock.now()),
            **({"why": sent.why} if sent.why else {}),
        }
        self.results.put(RESULTS_KEY, {**self.results.get(RESULTS_KEY), subscription.device: found})
