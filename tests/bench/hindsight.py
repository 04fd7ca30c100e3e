"""What could have become of a made-up shop: plans that know how long everything takes, but not what will happen.

One is made at the beginning and after each thing that nobody planned, always of what is left by then, searched for some
seconds, and worked to the tick. It is no bound, but a plan that people could have kept.
"""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.carrying_over import as_it_stands, same_order
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.problem.nouns import TICK, Block, Placed, Plan, Problem, Stretch, Worker
from runboard.plan.schedule.problem.people import walks_of
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import by_start, greedy_plan
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule
from runboard.plan.schedule.search.cold import cold
from runboard.plan.schedule.search.solving import Stop
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import write_moment
from runboard.run.log.form import check_form
from tests.bench.obeying import COLD, Course, Times, found_in
from tests.bench.shops import BROKEN, Happening, Shop, sessions

GOES = 400
# (when, what kind, body, fields) of an event to be.
ToCome = tuple[datetime, str, Mapping[str, Any], Mapping[str, str]]


def known_afterwards(shop: Shop, seconds: float) -> Course:
    """The course of plans that knew every length, each searched for so many seconds."""
    house = _House(shop)
    for happening in (*shop.happenings, None):
        if house.last is None or house.last.word != "back":  # a machine comes back when it was said to: nothing new
            house.plan(seconds)
        house.work(happening.at if happening is not None else None)
        house.take(happening)
    return house.course


class _House:
    def __init__(self, shop: Shop) -> None:
        self.shop, self.book, self.times = shop, shop.book, Times(shop.seed)
        self.ledger, self.now, self.number = Ledger(self.book), shop.start, 0
        self.course = Course()
        self.planned: tuple[Problem, Plan] | None = None
        self.last: Happening | None = None
        self.away: list[tuple[str, datetime, datetime]] = []
        self.coming: list[ToCome] = []
        self.comings = sorted(self._comings(), key=lambda one: one[0])
        for opening in shop.openings:
            self.press(shop.start, "run opened", opening.body, {"run": opening.run})

    @property
    def state(self) -> ShopState:
        return self.ledger.state

    def press(self, at: datetime, kind: str, body: Mapping[str, Any], fields: Mapping[str, str]) -> None:
        """What a plan says was done, was done: no rule is asked."""
        self.number += 1
        record = {"id": f"event-{self.number:06d}", "kind": kind, "at": at.isoformat(), "body": dict(body)}
        event = check_form({"device": "plan", "offset_ms": 0, "seen": 0, **record, **fields})
        self.ledger.keep(self.ledger.try_event(event), self.ledger.last_seq + 1)
        self.course.note(self.state, at)
        assert not self.state.unsettled, (self.shop.seed, at, kind, fields, dict(self.state.unsettled))

    def _comings(self) -> Iterator[ToCome]:
        for at, person in enumerate(self.book.people):
            for opens, closes in sessions(self.book, self.shop.start, at):
                room = {"room": self.book.rooms[0].key}
                yield opens, "person came", {"until": closes.isoformat(), **room}, {"person": person.key}
                yield closes, "person went", {"ticked": []}, {"person": person.key}

    def plan(self, seconds: float) -> None:
        """The best plan of what is left; where there is none, what was planned before is done all the same."""
        problem = self._with_real(problem_for(self.state, self.book, self.now))
        found = _best(problem, seconds, self.planned)
        if found is not None:
            self.coming = list(self._events(problem, found))
            self.planned = problem, found

    def work(self, until: datetime | None) -> None:
        """Do what the plan says, up to a moment or to its end."""
        assert self.planned is not None, f"shop {self.shop.seed}: no plan at its beginning"
        problem, plan = self.planned
        end = problem.moment(plan.finish(problem))
        stop = end if until is None else until
        # What ends at a moment has ended before anything begins.
        events = sorted([*self.comings, *self.coming], key=lambda one: (one[0], one[1] != "load done"))
        for at, kind, body, fields in events:
            if at <= stop and (kind not in ("person came", "person went") or at < stop):
                self.press(at, kind, body, fields)
        self.comings = [one for one in self.comings if one[0] >= stop]
        self.coming = [one for one in self.coming if one[0] > stop]
        self.course.walks += self._walks(problem, plan, stop)
        self.now = stop

    def _walks(self, problem: Problem, plan: Plan, stop: datetime) -> int:
        every = (walk for at in range(len(problem.people)) for walk in walks_of(problem, plan, at))
        return sum(self.now < problem.moment(one.end) <= stop for one in every)

    def take(self, happening: Happening | None) -> None:
        self.last = happening
        if happening is None:
            return
        if happening.word == "leaves":
            at = next(at for at, one in enumerate(self.book.people) if one.key == happening.fields["person"])
            here = [one for one in sessions(self.book, self.shop.start, at) if one[0] <= happening.at < one[1]]
            if not here:
                return
            self.away.append((happening.fields["person"], happening.at + timedelta(minutes=15), here[0][1]))
        # Who knows all lengths knows too for how long a machine is out of use.
        until = {"until": write_moment(happening.at + BROKEN)} if happening.word == "breaks" else {}
        self.press(happening.at, happening.kind, {**happening.body, **until}, happening.fields)

    # lengths as they are

    def _with_real(self, problem: Problem) -> Problem:
        blocks = tuple(self._really(problem, block) for block in problem.blocks)
        return replace(problem, blocks=blocks, people=tuple(self._there(problem, one) for one in problem.people))

    def _there(self, problem: Problem, one: Worker) -> Worker:
        """Their hours without those in which they said they would be away."""
        windows = list(one.windows)
        for person, from_, to in self.away:
            if person == one.key:
                gone, back = problem.tick(from_) - self._tidy_up(person), problem.tick(to)
                windows = [
                    part
                    for opens, closes in windows
                    for part in ((opens, min(closes, gone)), (max(opens, back), closes))
                ]
        return replace(one, windows=tuple((opens, closes) for opens, closes in windows if opens < closes))

    def _tidy_up(self, person: str) -> int:
        known = self.book.person(person)
        return 0 if known is None else known.tidy_up // TICK

    def _really(self, problem: Problem, block: Block) -> Block:
        run = self.state.runs[block.run]
        step = run.route.step(block.step)
        if step is None or not block.stretches:
            return block
        pieces = self._pieces(run, block)
        stretches: list[Stretch] = []
        gone = self._gone(run, block)
        for one in block.stretches:
            is_running = block.begun and one.kind == "machine" and not stretches
            length = one.length if is_running else self._ticks(run, step, one.kind, pieces) or 1
            if one.kind in ("loading", "hand") and gone is not None and not stretches and gone[1]:
                length += self._ticks(run, step, "setup", pieces)
            if gone is not None and not is_running and not stretches:
                length = max(1, length - gone[0])
            offset = stretches[-1].offset + stretches[-1].length if stretches else 0
            stretches.append(replace(one, offset=offset, length=length))
        setup = self._ticks(run, step, "setup", pieces) if block.setup else 0
        return replace(block, stretches=tuple(stretches), setup=setup)

    def _gone(self, run: RunState, block: Block) -> tuple[int, bool] | None:
        """For how long hands have been at a begun block, and whether it was set up first."""
        load = run.loads.get(block.load)
        if not block.begun or load is None or load.phase_at is None:
            return None
        return (self.now - load.phase_at) // TICK, load.fresh and load.state in ("loading", "working")

    def _pieces(self, run: RunState, block: Block) -> Mapping[str, int]:
        """The pieces of each tray of a load, as many as it has."""
        load = run.loads.get(block.load)
        if load is not None:
            return load.pieces
        if len(block.trays) == 1:
            return {block.trays[0]: block.pieces}
        return run.boards.get(block.load) or {tray: run.trays[tray].started for tray in block.trays}

    def _ticks(self, run: RunState, step: Step, kind: str, pieces: Mapping[str, int]) -> int:
        return self.times.length(run.id, step, kind, pieces) // TICK

    # a plan as events

    def _events(self, problem: Problem, plan: Plan) -> Iterator[ToCome]:
        for placed in plan.placed:
            block = problem.blocks[placed.block]
            if block.stretches:
                yield from self._of_block(problem, plan, block, placed)

    def _of_block(self, problem: Problem, plan: Plan, block: Block, placed: Placed) -> Iterator[ToCome]:
        run = self.state.runs[block.run]
        about = {"run": block.run, "load": block.load}
        hands = {"person": problem.people[placed.hands].key} if placed.hands is not None else {}
        watcher = {"person": problem.people[placed.watchers[0][0]].key} if placed.watchers else hands
        start, end = problem.moment(placed.start), problem.moment(plan.end(problem, block.index))
        machine = next((one for one in block.stretches if one.kind == "machine"), None)
        unloading = any(one.kind == "unloading" for one in block.stretches)
        if not block.begun:
            kind = "unloading started" if unloading else "load started"
            body = {} if unloading or block.load in run.loads else {"pieces": dict(self._pieces(run, block))}
            yield start, kind, body, {**about, **hands}
        if machine is not None and (machine.offset or not block.begun):
            begins = problem.moment(placed.begins() + machine.offset)
            yield (
                begins,
                "machine started",
                {"minutes": machine.length * TICK.total_seconds() / 60},
                {**about, **watcher},
            )
        if machine is not None:
            for who, tick in placed.watchers[1:]:
                yield problem.moment(tick), "watch taken", {}, {**about, "person": problem.people[who].key}
        if machine is None or block.index not in problem.unloaded_by:
            yield end, "load done", {}, {**about, **hands}


def _best(problem: Problem, seconds: float, before: tuple[Problem, Plan] | None) -> Plan | None:
    """The best of the last plan carried over, the rules' and what a search makes of it."""
    found = []
    if before is not None:
        found += _carried_over(problem, *before)
    try:
        found.append(greedy_plan(problem, GOES))
    except NoPlace:
        pass
    found = [one for one in found if not broken(problem, one)]
    if not found:
        found = _solved(problem)
    if not found:
        return None
    best = min(found, key=lambda one: worth(problem, one))
    if seconds > 0 and problem.blocks:
        best = min(best, found_in(problem, best, seconds), key=lambda one: worth(problem, one))
    return best


def _solved(problem: Problem) -> list[Plan]:
    """A plan from nothing, where there is one."""
    plan = cold(problem, COLD, Stop()).plan
    return [plan] if plan is not None else []


def _carried_over(problem: Problem, old: Problem, plan: Plan) -> Iterator[Plan]:
    """The last plan on what is left: as it stands, and by its order."""
    stands, rule = as_it_stands(problem, old, plan), Rule(problem)
    if stands is not None:
        yield stands
    priority = same_order(problem, old, by_start([one.start for one in plan.placed]))
    for knobs in (Knobs(), Knobs(10**7), Knobs(others_watch=True), Knobs(10**7, others_watch=True)):
        if rule.finish(priority, knobs) >= 0:
            yield rule.plan()
