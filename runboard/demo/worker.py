"""Somebody who works in the demo shop as people do: takes what the shop offers first, does it, and says so.

Each method that takes time is a generator of spans: how long until this person does the next thing. ``story.play``
lets several of them work side by side.
"""

from collections.abc import Generator
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from runboard.demo.acts import Spans
from runboard.demo.checking import (
    answers_at_lock_up,
    answers_to_checks,
    answers_to_reminders,
    list_for,
    spoiled,
    wants_full_list,
)
from runboard.demo.incidents import Enough, Incident
from runboard.demo.offers import WORTH_WAITING, draft_of, first_offer, is_time_to_go, worth_waiting
from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.demo.watching import Watched, about, load_at
from runboard.plan.move import Move
from runboard.run.fold.fold import apply
from runboard.run.fold.route import Step
from runboard.run.fold.state import Load, ShopState
from runboard.run.log.event import Event, write_moment
from runboard.shop.book import Person
from runboard.shop.product import ZERO

# Work whose end may begin the next: the same press does both.
Turn = Generator[timedelta, None, Move | None]

WORTH_LEAVING = timedelta(minutes=5)
LOCK_UP = ["rags", "power", "chargers", "bins", "smoulder", "first job"]


@dataclass
class DemoWorker:
    """One person. ``incidents`` wait for their moment; ``trouble`` names a step whose machine stops early, once;
    ``called`` is how likely somebody calls during a piece of hand work, ``slips`` how likely a press is a mistake."""

    floor: Shopfloor
    key: str
    incidents: list[Incident] = field(default_factory=list)
    trouble: str = ""
    called: float = 0.0
    slips: float = 0.0
    enough: Enough = lambda state: False
    machine: Watched | None = None
    left: dict[tuple[str, str], timedelta] = field(default_factory=dict)

    @property
    def known(self) -> Person:
        person = self.floor.book.person(self.key)
        assert person is not None  # noqa: S101 - the demo's own book has its people
        return person

    def press(self, *drafts: Draft) -> str:
        return self.floor.press(self.key, *drafts)

    # a session

    def session(self, until: datetime, enough: Enough = lambda state: False) -> Spans:
        """Come, work on what the shop offers until it is enough or time to stop, go through the closing checklist, go."""
        yield from self.arrive(until)
        yield from self.work(enough)
        yield from self.go_home()

    def arrive(self, until: datetime) -> Spans:
        """Say how long there is, and get ready."""
        self.press(draft("person came", {"until": write_moment(until), "room": "shop"}))
        yield self.floor.around(self.known.start_up)

    def go_home(self) -> Spans:
        """Tidy up and tick the list of the evening."""
        yield self.floor.around(self.known.tidy_up / 2)
        self.press(*answers_at_lock_up(self.floor), draft("person went", {"ticked": LOCK_UP}))

    def work(self, enough: Enough = lambda state: False) -> Spans:
        """One thing after the other, the shop's first offer each time."""
        self.enough = enough
        begun: Move | None = None
        while True:
            self._meet_incidents()
            self._answer_reminders()
            if begun is None:
                if self._is_called():
                    begun = yield from self._attend()
                    continue
                if self.machine is None and enough(self.floor.state):
                    return
                begun = yield from self._take_first()
                if begun is None and self.machine is None and is_time_to_go(self.floor, self.key):
                    return
            else:
                begun = yield from self._do(begun)

    def _meet_incidents(self) -> None:
        for incident in list(self.incidents):
            if incident.when(self.floor.state):
                self.incidents.remove(incident)
                self.press(*incident.drafts(self.floor.state))

    def _answer_reminders(self) -> None:
        for reminder in answers_to_reminders(self.floor):
            self.press(reminder)

    def _take_first(self) -> Turn:
        """Walk to the first offer and begin it, or wait for what is coming."""
        move = self._offer()
        if move is None:
            yield from self._wait()
            return None
        room = self.floor.state.people[self.key].room
        if move.room and move.room != room:
            yield self.floor.around(self.floor.book.walk(room, move.room))
            if move.id not in [move.id for move in self.floor.moves(self.key)]:
                return None
        pressed = self.press(draft_of(move))
        if self.floor.chance.random() < self.slips:
            yield timedelta(seconds=25)
            self.press(draft("event undone", {"event": pressed}))
            return None
        return move

    def _wait(self) -> Spans:
        """Wait for what is coming; at a machine, while it is looked at and nobody else presses anything."""
        if self.machine is None:
            yield self._until_called(worth_waiting(self.floor, self.key))
            return
        until, ledger = self.floor.now + WORTH_WAITING, self.floor.workshop.ledger
        while self.floor.now < until and not self._is_called():
            span, seen = self._until_called(until - self.floor.now), ledger.last_seq
            yield span
            if ledger.last_seq != seen:
                return

    def _offer(self) -> Move | None:
        return first_offer(self.floor, self.key)

    # one thing

    def _do(self, move: Move) -> Turn:
        """What was begun; answers the move that its end began, if any."""
        if move.code == "job":
            return (yield from self._do_job(move))
        load, step = load_at(self.floor, move.run, move.load)
        if load.state == "loading":
            yield from self._load_machine(load, step)
            return None
        if load.state == "unloading":
            return (yield from self._unload(load, step))
        return (yield from self._by_hand(load, step))

    def _do_job(self, move: Move) -> Turn:
        if (yield from self._spend(self.floor.around(timedelta(minutes=move.minutes)))):
            return (yield from self._attend())
        self.press(draft("job done", {"job": move.id.split("|")[1]}))
        return None

    def _load_machine(self, load: Load, step: Step) -> Spans:
        setup = step.pass_.setup if load.fresh else ZERO
        yield self.floor.around(setup + step.pass_.loading)
        yield from self._run(load, step, step.pass_.machine)

    def _run(self, load: Load, step: Step, length: timedelta) -> Spans:
        """The start list where it is wanted, and the machine runs."""
        drafts = []
        items = list_for(self.floor, step)
        if items:
            full = wants_full_list(self.floor, load, self.key)
            yield self.floor.around(timedelta(minutes=1)) if full else timedelta(seconds=5)
            body = {"list": "full", "items": items} if full else {"list": "short"}
            drafts.append(draft("checklist ticked", body, run=load.run, load=load.id, station=load.station))
        minutes = round(length.total_seconds() / 60, 1)
        self.press(*drafts, draft("machine started", {"minutes": minutes}, about(load)))
        self.machine = Watched(self.floor, load.run, load.id, self.floor.now + self.floor.around(length, 0.03))
        if self.trouble == step.key:
            self.trouble, self.machine.stops_at = "", self.floor.now + length / 3

    def _by_hand(self, load: Load, step: Step) -> Turn:
        key = (load.run, load.id)
        hand = step.pass_.hand * self.floor.longer.get(step.key, 1.0)
        usual = (step.pass_.setup if load.fresh else ZERO) + hand * sum(load.pieces.values())
        length = self.left.pop(key, None) or self.floor.around(usual)
        if self.machine is None and self.floor.chance.random() < self.called:
            yield from self._spend(length / 2)
            length /= 2
            yield from self._called_away(load)
            if self.floor.state.people[self.key].hands != key:
                return None
        rest = yield from self._spend(length)
        if rest:
            self.left[key] = rest
            return (yield from self._attend())
        load, step = load_at(self.floor, *key)
        return self._finish(load, step)

    def _called_away(self, load: Load) -> Spans:
        self.press(draft("person called away"))
        yield self.floor.around(timedelta(minutes=7), 0.4)
        here = self.floor.state.runs[load.run].loads.get(load.id)
        again = [draft("load started", about=about(load))] if here is not None and not here.people else []
        self.press(draft("person came back"), *again)

    def _finish(self, load: Load, step: Step) -> Move | None:
        """Count; all good begins the next offer with the same press."""
        for check in answers_to_checks(self.floor, load, step):
            self.press(check)
        done = draft("load done", about=about(load))
        counts, rework = spoiled(self.floor, load, step)
        if rework is not None:
            self.press(rework)
        if counts:
            self.press({**done, "body": {"counts": counts}})
        if counts or rework or self._is_over_after(load):
            if not counts:
                self.press(done)
            return None
        following = self._offer() if not self._is_called() else None
        if following is None:
            self.press(done)
            return None
        self.press(done, draft_of(following))
        return following

    def _is_over_after(self, load: Load) -> bool:
        """Whether it is enough once this load is done, or something comes in between then."""
        ahead = self._after(load)
        return self.enough(ahead) or any(incident.when(ahead) for incident in self.incidents)

    def _after(self, load: Load) -> ShopState:
        event = Event("zzzzzz", "load done", self.floor.now, run=load.run, load=load.id, person=self.key, body={})
        return apply(self.floor.state, event, self.floor.book)

    # a machine that runs meanwhile

    def _attend(self) -> Turn:
        """Go to the machine that ended or stopped, and say 'at it'."""
        if self.machine is None:
            return None
        load, step = self.machine.now
        if self.machine.stops_at is not None:
            yield from self._settle_stop(load, step)
            return None
        answers = [
            draft("alert answered", {"alert": due.id, "answer": "ended"}, run=load.run, load=load.id)
            for due in self.floor.ringing("machine end", load.id)
        ]
        self.press(draft("unloading started", about=about(load)), *answers)
        self.machine = None
        return (yield from self._unload(load, step))

    def _unload(self, load: Load, step: Step) -> Turn:
        yield self.floor.around(step.pass_.unloading)
        load, step = load_at(self.floor, load.run, load.id)
        return self._finish(load, step)

    def _settle_stop(self, load: Load, step: Step) -> Spans:
        """Stopped and made safe, put right, and on from where it stopped: a worn cutter, or work that slipped."""
        station = self.floor.book.station(load.station)
        why = "cutter" if station is not None and station.cuts else "slip"
        every = list(range(1, sum(load.pieces.values()) + 1))
        self.press(draft("load stopped", {"why": why, "half": every[:1], "untouched": every[1:]}, about(load)))
        yield self.floor.around(timedelta(minutes=6))
        self.press(draft("stop settled", {"how": "resume"}, about(load)))
        self.machine = None
        yield self.floor.around(timedelta(minutes=2))
        load, step = load_at(self.floor, load.run, load.id)
        yield from self._run(load, step, step.pass_.machine * 2 / 3)

    def _spend(self, length: timedelta) -> Generator[timedelta, None, timedelta]:
        """Time at something while the machine is kept in sight; answers what is left where the machine called."""
        end = self.floor.now + length
        while self.floor.now < end:
            yield self._until_called(end - self.floor.now)
            self._look()
            rest = end - self.floor.now
            if self._is_called() and rest > WORTH_LEAVING:
                return rest
        return ZERO

    def _until_called(self, most: timedelta) -> timedelta:
        """The shorter of a span and the time to the machine's next call."""
        self._look()
        end = self.floor.now + max(most, timedelta(seconds=20))
        return min([end, *(self.machine.next_call() if self.machine else [])]) - self.floor.now

    def _is_called(self) -> bool:
        return self.machine is not None and self.machine.calls

    def _look(self) -> None:
        for press in self.machine.look() if self.machine else []:
            self.press(press)
