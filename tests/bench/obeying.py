"""People who always do the first line that Now shows, in a made-up shop where every time comes out otherwise than thought.

The shop is the product's own: presses go through ``decide`` onto a ledger, after each one a plan is made as the server makes
it, and what a person does is what their phone would show first. Walks take time, whoever watches a machine keeps it in sight,
and nobody knows how long anything will take before it has.
"""

from collections import Counter
from collections.abc import Callable, Generator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from math import exp
from random import Random
from typing import Any

from runboard.plan.answer import Answer, answer, is_worth_telling, with_plan
from runboard.plan.candidates import WhoAsks, candidates, time_left
from runboard.plan.estimates import MeasuredRuns, estimates_from
from runboard.plan.move import Move
from runboard.plan.offers import lines
from runboard.plan.schedule.problem.nouns import TICK, Plan, Problem
from runboard.plan.schedule.search.cold import cold
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.search.solving import Stop
from runboard.run.care.care import lock_up_reminders
from runboard.run.care.sight import must_be_watched, watched_by
from runboard.run.fold.decide import decide
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, PersonState, RunState, ShopState
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.run.rules.resting import rests_before
from runboard.shop.product import ZERO
from tests.bench.shops import Shop, sessions

BY_HAND, BY_MACHINE = 0.25, 0.03
# With somebody there a plan is made anew this often, and whoever waits looks up.
AGAIN = timedelta(minutes=1)
LOOK_UP = timedelta(minutes=2)
# Nothing made up takes longer: what is not done by then stands still.
LONGEST = timedelta(days=40)
MOST_EVENTS = 6000
# For how many seconds a plan is looked for from nothing.
COLD = 10.0

# How long until the next thing, and whether anything that happens may come before.
Span = tuple[timedelta, bool]
Spans = Generator[Span, None, None]


@dataclass(frozen=True)
class Times:
    """How long things really take. Each length is drawn by its own name, so that it is the same whoever does it, and when."""

    seed: int

    def length(self, run: str, step: Step, kind: str, pieces: Mapping[str, int]) -> timedelta:
        """A part of a load: setup, loading, machine, unloading, or hand work of these pieces; in whole ticks, rounded up."""
        if kind == "hand":
            known = sum(
                (step.pass_.hand * count * self._factor(run, step, kind, tray) for tray, count in pieces.items()), ZERO
            )
        else:
            known = getattr(step.pass_, kind) * self._factor(run, step, kind, next(iter(pieces)))
        return -(-known // TICK) * TICK

    def _factor(self, run: str, step: Step, kind: str, tray: str) -> float:
        spread = BY_MACHINE if kind == "machine" else BY_HAND
        chance = Random(f"{self.seed}|{run}|{step.key}|{kind}|{tray}")
        return exp(chance.gauss(-spread * spread / 2, spread))


@dataclass
class Course:
    """What became of a shop: when how many pieces were good, what was walked, and what was said on the way."""

    good: list[tuple[datetime, str, int]] = field(default_factory=list)
    walks: int = 0
    finished_at: datetime | None = None
    orders: Mapping[str, Sequence[Any]] = field(default_factory=dict)

    def note(self, state: ShopState, now: datetime) -> None:
        for run in state.open_runs():
            good = sum(tray.good for tray in run.trays.values())
            if good and next((many for _, one, many in reversed(self.good) if one == run.id), 0) != good:
                self.good.append((now, run.id, good))
        self.orders = {run.id: run.orders for run in state.open_runs()}
        if self.finished_at is None and self.good and is_done(state):
            self.finished_at = now
        if self.finished_at is not None and not is_done(state):
            self.finished_at = None

    def there_at(self, run: str, pieces: int) -> datetime | None:
        """When so many pieces of a run were good; None where they never were."""
        return next((at for at, one, many in self.good if one == run and many >= pieces), None)

    def late(self) -> dict[tuple[str, str], timedelta | None]:
        """The order lines that were late, with by how much; None for what was never there."""
        found: dict[tuple[str, str], timedelta | None] = {}
        for run, orders in self.orders.items():
            by_then = 0
            for order in sorted((one for one in orders if one.due is not None), key=lambda one: one.due):
                by_then += order.pieces
                there = self.there_at(run, by_then)
                if there is None or there > order.due:
                    found[run, order.line] = None if there is None else there - order.due
        return found


@dataclass(frozen=True)
class Taken:
    """A line that somebody took: what was planned when it was shown, and once it was pressed."""

    at: datetime
    person: str
    move: Move
    before: Answer
    after: Answer


@dataclass(frozen=True)
class Idle:
    """Somebody had free hands though something could be begun: what Now said first, and what could have been done."""

    at: datetime
    person: str
    minutes: float
    said: str
    ready: str


@dataclass(frozen=True)
class SentHome:
    """Somebody was told to stop, so long before their hours end, and by which plan."""

    at: datetime
    person: str
    line: Move
    until: datetime
    answer: Answer


@dataclass
class Noted:
    """What a bench wants to know afterwards."""

    taken: list[Taken] = field(default_factory=list)
    idle: list[Idle] = field(default_factory=list)
    refused: list[tuple[datetime, str, str, str]] = field(default_factory=list)
    looking: list[datetime] = field(default_factory=list)
    planless: list[tuple[datetime, bool]] = field(default_factory=list)
    published: list[tuple[datetime, Answer]] = field(default_factory=list)
    too_late: list[tuple[datetime, str, str]] = field(default_factory=list)
    sent_home: list[SentHome] = field(default_factory=list)
    answers: int = 0
    lines: Counter[str] = field(default_factory=Counter)


class House:
    """The shop's ledger, its clock, the plan at hand, and what runs."""

    def __init__(self, shop: Shop, search_seconds: float = 0.0) -> None:
        self.shop, self.book = shop, shop.book
        self.ledger = Ledger(self.book)
        self.now = shop.start
        self.times = Times(shop.seed)
        self.search_seconds = search_seconds
        self.course, self.noted = Course(), Noted()
        self.answer: Answer | None = None
        self.ends: dict[tuple[str, str], datetime] = {}
        self.stirred = 0
        self._number, self._planned_at, self._searched = 0, -1, True
        self._kept: MeasuredRuns = {}

    @property
    def state(self) -> ShopState:
        return self.ledger.state

    def press(self, kind: str, body: Mapping[str, Any] | None = None, **fields: str) -> bool:
        """A press of a phone that knows everything; whether the shop took it."""
        self._number += 1
        envelope = {"at": self.now.isoformat(), "device": "phone", "offset_ms": 0, "seen": self.ledger.last_seq}
        event = check_form(
            {"id": f"event-{self._number:06d}", "kind": kind, "body": dict(body or {}), **envelope, **fields}
        )
        try:
            self.ledger.keep(decide(self.ledger, event), self.ledger.last_seq + 1)
        except Refused as refused:
            self.noted.refused.append(
                (self.now, fields.get("person", ""), f"{kind} {fields.get('load', '')}", refused.code)
            )
            return False
        self.course.note(self.state, self.now)
        self.stirred += 1
        return True

    def plan(self) -> Answer:
        """The plan as of now: made anew after each press, and each minute."""
        before = self.answer
        if before is not None and self._planned_at == self.ledger.last_seq and self.now - before.now < AGAIN:
            return before
        estimates = estimates_from(self.state, self.book, self._kept)
        made = answer(self.state, self.book, self.now, estimates, before)
        self._searched = self._planned_at == self.ledger.last_seq
        self._planned_at = self.ledger.last_seq
        self.noted.answers += 1
        self._publish(made)
        return made

    def look_further(self) -> None:
        """What the server's search finds before anything else happens. What it finds is shown from then on."""
        made = self.answer
        if made is None or not made.problem.blocks or self._searched:
            return
        self._searched = True
        if made.plan is None:
            self._look_for_any(made)
        elif self.search_seconds > 0:
            plan = found_in(made.problem, made.plan, self.search_seconds)
            if is_worth_telling(made.problem, plan, made.plan, is_last=True):
                self._show(made, plan)

    def _look_for_any(self, made: Answer) -> None:
        """A plan from nothing, where the answer at once was none: 'looking', or 'no plan', which wants a proof."""
        first = cold(made.problem, COLD, Stop())
        if first.plan is None:
            self.noted.planless.append((self.now, first.is_proved))
        else:
            self.noted.looking.append(self.now)
            self._show(made, first.plan)

    def _show(self, made: Answer, plan: Plan) -> None:
        self._publish(with_plan(made, plan))
        self.stirred += 1

    def _publish(self, made: Answer) -> None:
        self.answer = made
        self.noted.published.append((self.now, made))

    def lines(self, person: str) -> list[Move]:
        """What a phone shows somebody now, best first."""
        made = self.plan()
        return lines(self.state, self.book, person, self.now, made.offers.get(person))


def found_in(problem: Problem, plan: Plan, seconds: float) -> Plan:
    """The best plan that the server's search finds in so many of its own seconds."""
    return improve(problem, plan, seconds, lambda *_: None).plan


@dataclass
class Worker:
    """One person. ``room`` is where they are, whatever the shop was told."""

    house: House
    key: str
    at: int
    room: str = ""
    until: datetime | None = None

    @property
    def seen(self) -> PersonState:
        return self.house.state.people[self.key]

    @property
    def known(self) -> Any:
        return self.house.book.people[self.at]

    def press(self, kind: str, body: Mapping[str, Any] | None = None, **fields: str) -> bool:
        return self.house.press(kind, body, person=self.key, **fields)

    def life(self) -> Spans:
        """Every session of theirs, until all is done."""
        for opens, closes in sessions(self.house.book, self.house.shop.start, self.at):
            while self.house.now < opens:
                yield opens - self.house.now, False
            if closes - self.house.now > self.known.start_up + self.known.tidy_up and not is_done(self.house.state):
                yield from self.session(closes)

    def session(self, until: datetime) -> Spans:
        """Come, do the first line for as long as there is one, and go when it says so."""
        self.room = self.house.book.rooms[0].key
        self.press("person came", {"until": until.isoformat(), "room": self.room})
        yield self.known.start_up, False
        while not is_done(self.house.state):
            line = next(iter(self.house.lines(self.key)), None)
            self.house.noted.lines[line.code if line else "none"] += 1
            if line is not None and line.code == "stop":
                sent = SentHome(self.house.now, self.key, line, self.seen.until or until, self.house.plan())
                self.house.noted.sent_home.append(sent)
                break
            yield from self._do(line)
        yield from self._go_home()

    def _go_home(self) -> Spans:
        yield self.known.tidy_up, False
        for one in lock_up_reminders(self.house.state, self.house.book):
            self.press("reminder answered", {"reminder": one, "done": "in water"})
        for load in watched_by(self.house.state, self.key):  # told to stop while they watch
            yield from self._until_it_ends(load.run, load.id)
        self.press("person went", {"ticked": []})

    def _do(self, line: Move | None) -> Spans:
        deeds: Mapping[str, Callable[[Move], Spans]] = {
            "start": self._begin,
            "go on": self._begin,
            "unload": self._unload,
            "settle": self._settle,
            "job": self._job,
            "take over": self._take_over,
        }
        if line is not None and line.code in deeds:
            yield from deeds[line.code](line)
        else:
            yield from self._wait(line)

    def _wait(self, line: Move | None) -> Spans:
        """Watch, or be free, until the moment that was said, or until something happens."""
        house = self.house
        at = line.facts.get("at") if line is not None and line.code == "free" else None
        most = min(
            [LOOK_UP, *(one - house.now for one in (at, *house.ends.values()) if one is not None and one > house.now)]
        )
        began, ready = house.now, self._ready()
        yield most, True
        spent = (house.now - began).total_seconds() / 60
        if ready and spent and not watched_by(house.state, self.key):
            house.noted.idle.append(Idle(began, self.key, spent, line.code if line else "none", ready))

    def _ready(self) -> str:
        """What the rules would let them begin now, and they have time for; '' where there is nothing."""
        scene = WhoAsks(self.house.state, self.house.book, self.key, self.house.now)
        left = time_left(scene)
        return next((one.load for one in candidates(scene) if one.length <= left), "")

    def _go(self, room: str) -> Spans:
        if room and room != self.room:
            self.house.course.walks += 1
            yield self.house.book.walk(self.room, room), False
            self.room = room

    def _still(self, line: Move) -> bool:
        return line.id in [one.id for one in self.house.lines(self.key)]

    def _reach(self, line: Move) -> Generator[Span, None, Answer | None]:
        """Go where it is done; the plan that it was shown by, where nothing happened on the way."""
        shown, seq = self.house.plan(), self.house.ledger.last_seq
        yield from self._go(line.room)
        return shown if seq == self.house.ledger.last_seq else None

    def _begin(self, line: Move) -> Spans:
        shown = yield from self._reach(line)
        if shown is None and not self._still(line):
            return
        body: dict[str, Any] = {"pieces": dict(line.pieces)} if line.code == "start" else {}
        if line.places:
            body["places"] = {tray: list(placed) for tray, placed in line.places.items()}
        latest = self._latest(line)
        if self.press("load started", body, **about(line)):
            if latest is not None and latest < self.house.now:
                self.house.noted.too_late.append((self.house.now, self.key, line.load))
            self._note_taken(line, shown)
            yield from self._at(line.run, line.load)
        else:
            yield LOOK_UP, True

    def _latest(self, line: Move) -> datetime | None:
        """By when the first of what goes on the load has to, after its wait."""
        run = self.house.state.runs[line.run]
        trays = [run.trays[tray] for tray in line.pieces]
        rests = [rest for tray in trays if (step := run.route_of(tray).step(line.step)) is not None
                 for rest in rests_before(run.route_of(tray), tray, step).values()]  # fmt: skip
        return min((rest.latest_at for rest in rests if rest.latest_at is not None), default=None)

    def _note_taken(self, line: Move, shown: Answer | None) -> None:
        after = self.house.plan()
        if shown is not None:
            self.house.noted.taken.append(Taken(self.house.now, self.key, line, shown, after))

    def _at(self, run: str, load: str) -> Spans:
        """Hands are at a load: work it through, or set it up and let the machine run."""
        house = self.house
        here, step = load_of(house.state, run, load)
        fresh = house.times.length(run, step, "setup", here.pieces) if here.fresh else ZERO
        if here.state == "loading":
            yield fresh + house.times.length(run, step, "loading", here.pieces), False
            self._run(run, load, house.times.length(run, step, "machine", here.pieces))
        elif here.state == "working":
            yield fresh + house.times.length(run, step, "hand", here.pieces), False
            self.press("load done", run=run, load=load)

    def _run(self, run: str, load: str, length: timedelta) -> None:
        here, step = load_of(self.house.state, run, load)
        minutes = step.pass_.machine.total_seconds() / 60
        if self.press("machine started", {"minutes": minutes}, run=run, load=load, station=here.station):
            self.house.ends[run, load] = self.house.now + length

    def _unload(self, line: Move) -> Spans:
        shown = yield from self._reach(line)
        if shown is None and not self._still(line):
            return
        yield from self._until_it_ends(line.run, line.load)
        if not self.press("unloading started", {}, **about(line)):
            yield LOOK_UP, True
            return
        self.house.ends.pop((line.run, line.load), None)
        self._note_taken(line, shown)
        here, step = load_of(self.house.state, line.run, line.load)
        yield self.house.times.length(line.run, step, "unloading", here.pieces), False
        self.press("load done", run=line.run, load=line.load)

    def _until_it_ends(self, run: str, load: str) -> Spans:
        while (end := self.house.ends.get((run, load))) is not None and end > self.house.now:
            yield end - self.house.now, False

    def _settle(self, line: Move) -> Spans:
        yield from self._reach(line)
        if self.press("stop settled", {"how": "resume"}, **about(line)):
            yield from self._at(line.run, line.load)
        else:
            yield LOOK_UP, True

    def _job(self, line: Move) -> Spans:
        yield from self._go(line.room)
        job = line.id.split("|")[1]
        if not self.press("job started", {"job": job}):
            yield LOOK_UP, True
            return
        yield timedelta(minutes=round(line.minutes)), False
        self.press("job done", {"job": job})

    def _take_over(self, line: Move) -> Spans:
        yield from self._reach(line)
        if not self.press("watch taken", {}, **about(line)):
            yield LOOK_UP, True
            return
        yield TICK, True


def about(line: Move) -> dict[str, str]:
    """The envelope's fields of what a line is about."""
    return {"run": line.run, "load": line.load, "operation": line.step, "station": line.station}


def load_of(state: ShopState, run: str, load: str) -> tuple[Load, Step]:
    """A load that is begun, and its step."""
    held: RunState = state.runs[run]
    here = held.loads[load]
    step = held.step_of(here)
    assert step is not None
    return here, step


def is_done(state: ShopState) -> bool:
    """Whether every piece of every run is through."""
    return all(not tray.in_process for run in state.open_runs() for tray in run.trays.values())


@dataclass
class _Turn:
    at: datetime
    spans: Spans
    may_be_stirred: bool = False
    seen: int = 0


def obey(shop: Shop, search_seconds: float = 0.0) -> House:
    """Let everybody work as Now says until all is done, or nothing goes on any more."""
    house = House(shop, search_seconds)
    for opening in shop.openings:
        house.press("run opened", opening.body, run=opening.run, person=house.book.people[0].key)
    turns = [_Turn(shop.start, Worker(house, person.key, at).life()) for at, person in enumerate(house.book.people)]
    happenings = list(shop.happenings)
    house.plan()
    while turns and house.now - shop.start < LONGEST and house.noted.answers < MOST_EVENTS:
        _next(house, turns, happenings)
        if is_done(house.state) and not happenings:
            break
    return house


def _next(house: House, turns: list[_Turn], happenings: list[Any]) -> None:
    """Whatever comes first: something happens, a machine ends, or somebody's time has come."""
    for one in turns:
        if one.may_be_stirred and one.seen != house.stirred:
            one.at, one.may_be_stirred = house.now, False
    turn = min(turns, key=lambda one: one.at)
    ended = min(((at, key) for key, at in house.ends.items() if _is_seen(house, key)), default=None)
    moments = [turn.at, *([ended[0]] if ended else []), *([happenings[0].at] if happenings else [])]
    moment = max(house.now, min(moments))
    if moment > house.now:
        stirred = house.stirred
        house.look_further()
        if stirred != house.stirred:
            return
    house.now = moment
    if happenings and happenings[0].at <= moment:
        _happen(house, happenings.pop(0))
    elif ended and ended[0] <= moment:
        run, load = ended[1]
        house.press("machine ended", run=run, load=load, person=house.state.runs[run].loads[load].watcher)
        house.ends.pop(ended[1])
    else:
        _live(house, turns, turn)
    house.plan()


def _is_seen(house: House, key: tuple[str, str]) -> bool:
    """Whether somebody watches the machine, and so sees its end."""
    run = house.state.runs[key[0]]
    load = run.loads.get(key[1])
    return load is not None and must_be_watched(run, load) and bool(load.watcher)


def _happen(house: House, one: Any) -> None:
    person = house.state.people.get(one.fields.get("person", ""))
    if one.word == "leaves" and (person is None or person.came_at is None):
        return
    house.press(one.kind, one.body, **one.fields)


def _live(house: House, turns: list[_Turn], turn: _Turn) -> None:
    try:
        span, may_be_stirred = next(turn.spans)
    except StopIteration:
        turns.remove(turn)
        return
    turn.at, turn.may_be_stirred, turn.seen = house.now + span, may_be_stirred, house.stirred
