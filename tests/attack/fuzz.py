"""A fuzzer with a seed: requests, presses and files that nobody means, against a whole server in this process.

It goes by chapters. Each begins on a copy of the same shop, throws its inputs at it as every role, and ends with the
pages that must answer still, before and after a restart. A chapter depends on the seed and its number alone, so what
fails is run again by naming both.
"""

import itertools
import time
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random
from typing import Any

from flask.testing import FlaskClient

from runboard.run.log.event import write_moment
from tests.attack import nasty
from tests.attack.at_home import staying_at_home
from tests.attack.fuzz_events import Events
from tests.attack.fuzz_files import Files, send_file
from tests.attack.fuzz_http import Requests
from tests.attack.ground import Ground, Heard, cause, clients_of, copied, ground, reopened, silent_pages
from tests.attack.promises import CREW, GUEST, LEAD, NOBODY, SENSOR
from tests.conftest import START, HandClock

A_CHAPTER = 1_500
SLOW = 2.0
# A batch's presses are an input each.
_SHARES = (("events", 0.35), ("requests", 0.63), ("files", 0.02))
_LEFT_BY_HELD = (503, 507)


@dataclass(frozen=True)
class Trouble:
    """What must not be: which input, what came of it, from where."""

    chapter: int
    number: int
    what: str
    came: str

    def line(self, seed: int) -> str:
        return f"{self.came} | {self.what} | python -m tests.attack fuzz --seed {seed} --chapter {self.chapter} (input {self.number})"


@dataclass
class Found:
    """What a chapter, or many, came to. ``answers`` are by kind of input and status."""

    inputs: int = 0
    restarts: int = 0
    answers: Counter[tuple[str, str]] = field(default_factory=Counter)
    troubles: dict[str, Trouble] = field(default_factory=dict)
    times: Counter[str] = field(default_factory=Counter)
    checks: float = 0.0
    slowest: list[tuple[float, str, int]] = field(default_factory=list)
    seconds: float = 0.0

    def add(self, other: "Found") -> None:
        """Put another's beside these; of troubles of one kind the first stays."""
        self.inputs += other.inputs
        self.restarts += other.restarts
        self.answers += other.answers
        self.times += other.times
        self.seconds += other.seconds
        for kind, trouble in other.troubles.items():
            self.troubles.setdefault(kind, trouble)
        self.slowest = sorted([*self.slowest, *other.slowest], reverse=True)[:5]


class Chapter:
    """One chapter: so many inputs, the pages, and the restart."""

    def __init__(self, place: Ground, seed: int, number: int, inputs: int = A_CHAPTER) -> None:
        self._place, self._number, self._wanted = place, number, inputs
        self._random = Random(f"{seed}/{number}")
        self._clock = HandClock(START)
        self._clock.forward(hours=3)
        self._heard = Heard()
        self.found = Found()

    def run(self) -> Found:
        began = time.process_time()
        with staying_at_home(), self._heard, copied(self._place) as folder:
            with reopened(folder, self._clock) as house:
                self._live(clients_of(house, self._place.keys), list(house.app.url_map.iter_rules()))
                self._look(silent_pages(house), "after its inputs")
            self._clock.forward(minutes=1)
            try:
                with reopened(folder, self._clock) as house:
                    house.open()
                    self._look(silent_pages(house), "after a restart")
                    self.found.restarts += 1
            except Exception as error:  # noqa: BLE001 - whatever keeps a server from starting is what is looked for
                self._note("the restart", f"does not start: {cause(error)}", "")
        self.found.seconds = time.process_time() - began
        return self.found

    def _live(self, clients: dict[str, FlaskClient], rules: list[Any]) -> None:
        random = self._random
        devices = {role: Events(random, f"fuzz-{role[:4].strip()}".replace("'", "")) for role in (GUEST, CREW, LEAD)}
        requests, files = Requests(random, rules, self._place.forms), Files(random, self._place.run, self._place.book)
        kinds, weights = zip(*_SHARES, strict=True)
        while self.found.inputs < self._wanted:
            self._clock.forward(seconds=random.choice((0, 0.2, 1, 30)))
            kind = random.choices(kinds, weights)[0]
            if kind == "events":
                role = random.choices((GUEST, CREW, LEAD), (1, 3, 3))[0]
                self._send_events(clients[role], devices[role], role)
            elif kind == "files":
                raw, take = files.wrong(), random.random() < 0.3
                self._ask(
                    "file",
                    f"POST /shop/import {raw[:200]!r} …{len(raw)}",
                    lambda raw=raw, take=take: send_file(clients[LEAD], raw, take),
                )
            else:
                role = random.choices((NOBODY, SENSOR, GUEST, CREW, LEAD), (1, 1, 2, 3, 9))[0]
                wrong = requests.wrong()
                self._ask("request", f"{wrong} by {role}", lambda role=role, wrong=wrong: wrong.send(clients[role]))

    def _send_events(self, client: FlaskClient, events: Events, role: str) -> None:
        random, now = self._random, self._clock.now()
        some = events.batch(now)
        batch: Any = {"device": "x", "sent_at": write_moment(now), "taps": some}
        if random.random() < 0.03:
            batch = nasty.mutated(random, batch)
        text = nasty.written(batch)
        answer = self._ask(
            "batch",
            f"POST /taps by {role} {text[:1500]}",
            lambda: client.post("/taps", data=text.encode(), content_type="application/json"),
        )
        told = answer.get_json(silent=True) if answer is not None and answer.status_code == 200 else None
        for one in told["taps"] if isinstance(told, dict) else ():
            self.found.answers[("press", one["answer"])] += 1
        self.found.inputs += len(some) - 1

    def _ask(self, kind: str, what: str, send: Any) -> Any:
        self.found.inputs += 1
        began, before = time.perf_counter(), len(self._heard.causes)
        try:
            answer = send()
        except Exception as error:  # noqa: BLE001 - what escapes the app is a failure like every other
            self._note(what, f"escaped: {cause(error)}", "")
            return None
        took = time.perf_counter() - began
        self.found.answers[(kind, str(answer.status_code))] += 1
        self.found.times[kind] += took  # type: ignore[assignment]
        if took > SLOW:
            self.found.slowest = sorted(
                [*self.found.slowest, (round(took, 1), what[:300], self._number)], reverse=True
            )[:5]
        self._judge(what, answer, self._heard.causes[before:])
        return answer

    def _judge(self, what: str, answer: Any, causes: list[str]) -> None:
        status = answer.status_code
        if status >= 500 and (status not in _LEFT_BY_HELD or len(answer.data) < 20):
            self._note(what, str(status), causes[-1] if causes else "nothing was logged")
        elif status >= 400 and answer.request.method != "HEAD" and len(answer.data) < 20:
            self._note(what, f"{status} without a sentence", "")
        elif b"Traceback (most recent" in answer.data:
            self._note(what, f"{status} shows the program's inside", "")

    def _look(self, silent: Iterator[str], when: str) -> None:
        before = len(self._heard.causes)
        try:
            for line in silent:
                causes = self._heard.causes[before:]
                self._note(f"the shop {when}", line, causes[-1] if causes else "")
        except Exception as error:  # noqa: BLE001 - a shop that pairs nobody any more is a failure too
            self._note(f"the shop {when}", cause(error), "")

    def _note(self, what: str, came: str, why: str) -> None:
        trouble = Trouble(self._number, self.found.inputs, what, f"{came} {why}".strip())
        self.found.troubles.setdefault(why or came, trouble)


def chapters(seed: int, numbers: Iterator[int] | range, inputs: int = A_CHAPTER) -> Iterator[Found]:
    """The findings of these chapters, one by one, on one ground."""
    with staying_at_home(), ground() as place:
        for number in numbers:
            yield Chapter(place, seed, number, inputs).run()


def together(found: Iterator[Found]) -> Found:
    """All findings as one."""
    whole = Found()
    for one in found:
        whole.add(one)
    return whole


def lines(found: Found, seed: int, wall: float) -> Iterator[str]:
    """What to print."""
    yield f"seed {seed}: {found.inputs:,} inputs in {wall:.0f} s ({found.inputs / max(wall, 1e-9):,.0f}/s), {found.restarts:,} restarts"
    for kind, some in itertools.groupby(sorted(found.answers.items()), key=lambda one: one[0][0]):
        yield f"  {kind:<8} " + ", ".join(f"{status} {count:,}" for (_, status), count in some)
    yield "  seconds  " + ", ".join(f"{kind} {seconds:.0f}" for kind, seconds in found.times.items())
    for took, what, chapter in found.slowest:
        yield f"  slow: {took} s, chapter {chapter}: {what}"
    yield f"failures, each kind once: {len(found.troubles)}   goal 0"
    yield from (f"  {one.line(seed)}" for one in found.troubles.values())
