"""What Now says that a move costs, beside what it costs: both states planned anew and searched, as they are and begun so.

In made-up shops somebody works without a plan, and at some moments the plan at hand is one that a search has made, with
what it says of each move. Then the move is pressed, the walk to it done, and what is left is searched in the same way,
until nothing is lost. Searches are counted by their work, so that the same shops come to the same prices anywhere.
"""

import os
import platform
import sys
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from functools import partial
from random import Random
from typing import Any

from runboard.plan.answer import Answer, answer, is_worth_telling, with_plan, with_prices
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.offers import lines
from runboard.plan.price_search import search_begun, search_prices, search_until
from runboard.plan.prices import SMALL, Later, Price, block_of, windows_by
from runboard.plan.schedule.problem.hours import open_minutes
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.problem.worth import Made, dated, ends_of, lateness_of, worth
from runboard.plan.schedule.rule.greedy import by_start
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.schedule.search.improve import improve
from runboard.plan.search import SECONDS_A_PRICE
from runboard.run.fold.fold import apply
from runboard.run.fold.state import ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.shop.hours import open_windows
from tests.bench.now import Row
from tests.bench.shops import Shop, shop

SHOPS, PRICED, SECONDS = 10, 300, 1.0
MOST_OVERSTATED = 2.0
KINDS = {"start": "load started", "go on": "load started", "unload": "unloading started", "settle": "stop settled"}
MINUTE, AHEAD = timedelta(minutes=1), timedelta(days=8)


@dataclass(frozen=True)
class Audited:
    """A move that had a ``price``, and what was lost in the searched plan with it pressed, ``truth``."""

    shop: int
    at: datetime
    person: str
    move: str
    price: Price
    truth: Price

    @property
    def is_understated(self) -> bool:
        """It was said to change nothing, and more than five minutes, a session or an order line were lost."""
        return is_nothing(self.price) and (bool(self.truth.late) or self.truth.minutes > SMALL)

    @property
    def is_overstated(self) -> bool:
        """An order line, a session or more than five minutes were said to be lost that were not."""
        late = bool(self.price.late) and not self.truth.late
        windows = self.price.windows > self.truth.windows and self.price.minutes > self.truth.minutes + SMALL
        return late or windows or self.price.minutes > self.truth.minutes + SMALL


def is_nothing(price: Price) -> bool:
    """Whether a page says of it that the finish stays as it is, and no order line is late for it."""
    return not price.late and not price.windows and not round(price.minutes)


def main(quick: bool = False, searched: bool = True) -> int:
    """Print each wrong price and the table; 1 where a goal is not met."""
    print(f"{platform.machine()}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}")
    shops, wanted = (3, 30) if quick else (SHOPS, PRICED)
    found: list[Audited] = []
    for one in _on_all_cores(shops, wanted // shops, searched):
        found.append(one)
        if one.is_understated or one.is_overstated:
            word = "UNDER" if one.is_understated else "over"
            print(
                f"{word:<6} shop {one.shop} {one.at:%a %H:%M} {one.person} {one.move}: said {one.price}, was {one.truth}"
            )
            sys.stdout.flush()
    missed = 0
    for row in rows(found):
        print(row)
        missed += row.met is False
    return int(missed > 0)


def _on_all_cores(shops: int, each: int, searched: bool) -> Iterator[Audited]:
    """Shop by shop, as many at a time as there are cores."""
    with ProcessPoolExecutor(initializer=warm) as pool:
        for found in pool.map(partial(_of_shop, each=each, searched=searched), range(shops)):
            yield from found


def _of_shop(number: int, each: int, searched: bool) -> list[Audited]:
    return list(audit(1, each, SECONDS, first=number, searched=searched))


def rows(found: list[Audited]) -> Iterator[Row]:
    """The figures beside their goals."""
    nothing = [one for one in found if is_nothing(one.price)]
    under = [one for one in found if one.is_understated]
    over = [one for one in found if one.is_overstated]
    yield Row(f"prices, of which {len(nothing)} say that nothing changes", len(found), unit="")
    yield Row("said to change nothing, and lost more than 5 min", len(under), None, 0, "")
    yield Row("said to lose what was not lost", 100 * len(over) / max(1, len(found)), None, MOST_OVERSTATED, "%")


def audit(
    shops: int, wanted: int, seconds: float, loads: tuple[int, int] = (20, 70), *, first: int = 0, searched: bool = True
) -> Iterator[Audited]:
    """So many prices in so many shops, each checked by a search of ``seconds``, as ``improve`` counts them."""
    for number in range(first, first + shops):
        made = shop(number, loads)
        left = wanted // shops
        for at_work in moments(made, 1 + left // 4):
            for one in _of_moment(number, at_work, seconds, left, searched):
                left -= 1
                yield one
            if left <= 0:
                break


def _of_moment(number: int, at_work: "AtWork", seconds: float, most: int, searched: bool) -> Iterator[Audited]:
    state, book, now = at_work.state, at_work.book, at_work.now
    first = answer(state, book, now)
    if first.plan is None or not first.problem.blocks:
        return
    at_hand = with_plan(first, improve(first.problem, first.plan, seconds, _quiet).plan)
    assert at_hand.plan is not None
    if searched:
        priced = search_prices(at_hand.problem, at_hand.plan, at_hand.unsure, SECONDS_A_PRICE)
        if is_worth_telling(at_hand.problem, priced.plan, at_hand.plan, is_last=True):
            at_hand = with_plan(at_hand, priced.plan)
        at_hand = with_prices(at_hand, priced.prices)
    for person in at_work.free():
        found = lines(state, book, person, now, at_hand.offers.get(person))
        prices = at_hand.offers[person].prices if person in at_hand.offers else {}
        seen: set[tuple[str, str, str]] = set()
        for move in found:
            sort = (move.code, move.run, move.step)
            price = prices.get(move.id)
            if move.code not in KINDS or price is None or sort in seen or most <= 0:
                continue
            seen.add(sort)
            truth = _truth(at_hand, at_work, person, move, seconds)
            if truth is not None:
                most -= 1
                yield Audited(number, now, person, move.id, price, truth)


def _truth(at_hand: Answer, at_work: "AtWork", person: str, move: Move, seconds: float) -> Price | None:
    """What the better of two searched plans loses where the move was pressed: one begins with what is best at once, one with
    the plan that the price was made of. None where no plan was found."""
    assert at_hand.plan is not None
    pressed, problem, plan = at_work.pressed(person, move), at_hand.problem, at_hand.plan
    found = []
    for before in (_as_priced(at_hand, person, move, seconds), None):
        after = answer(pressed.state, pressed.book, pressed.now, before=before)
        if after.plan is None:
            continue
        later = after.problem

        def loses_nothing(made: Plan, later: Problem = later) -> bool:
            return is_nothing(lost(problem, plan, later, made))

        made = search_until(later, after.plan, loses_nothing, seconds)
        if loses_nothing(made):
            return lost(problem, plan, later, made)
        found.append((worth(later, made), len(found), later, made))
    return lost(problem, plan, *min(found)[2:]) if found else None


def _as_priced(at_hand: Answer, person: str, move: Move, seconds: float) -> Answer | None:
    """The answer with the plan of a search in which the move is begun now."""
    block = block_of(at_hand.problem, move)
    at = next(at for at, one in enumerate(at_hand.problem.people) if one.key == person)
    if block is None or at_hand.plan is None:
        return None
    made = search_begun(at_hand.problem, at_hand.plan, (block, at), seconds)
    if made is None:
        return None
    priority = by_start([one.start for one in made.plan.placed])
    return replace(at_hand, problem=made.problem, plan=made.plan, priority=priority)


def lost(problem: Problem, plan: Plan, later: Problem, after: Plan) -> Price:
    """The price of a plan of the same shop some time later beside one that was at hand."""
    was, there = _there(problem, plan), _there(later, after)
    late = [
        Later(*line, 0, minutes)
        for line, (due, moment) in there.items()
        if line in was and (minutes := (moment - max(due, was[line][1])).total_seconds() / 60) >= 1
    ]
    is_later = lateness_of(later, after) > lateness_of(problem, plan)
    finish, before = problem.tick(later.moment(after.finish(later))), plan.finish(problem)
    return Price(
        tuple(late) if is_later else (),
        open_minutes(problem, before, finish),
        max(0, windows_by(problem, finish) - windows_by(problem, before)),
        max(0, walks_in(later, after) - walks_in(problem, plan)),
    )


Lines = dict[tuple[str, str], tuple[datetime, datetime]]


def _there(problem: Problem, plan: Plan) -> Lines:
    """For each order line the moments at which it is due, and there."""
    ends = ends_of(problem, plan)
    made, finish = Made(problem, ends), max(ends, default=0)
    found: Lines = {}
    for order, due in dated(problem):
        there = made.there(order)
        found[order.run, order.line] = problem.moment(due), problem.moment(finish if there is None else there)
    return found


def _quiet(*_: Any) -> None:
    """Nobody listens."""


@dataclass
class AtWork:
    """People who work without a plan: each takes one of the first moves by chance, and stops when the session ends.
    ``chances`` are the moments before somebody took one of several."""

    book: Book
    state: ShopState
    now: datetime
    chance: Random
    number: int = 0
    until: dict[str, datetime] = field(default_factory=dict)
    chances: list["AtWork"] = field(default_factory=list)

    def press(self, kind: str, body: Any = None, **fields: str) -> None:
        self.number += 1
        event = Event(f"press-{self.number:06d}", kind, self.now, body=body or {}, seq=self.number, **fields)
        self.state = apply(self.state, event, self.book)

    def free(self) -> list[str]:
        """Who is here with free hands."""
        seen = self.state.people.values()
        return [one.key for one in seen if one.came_at is not None and not one.away and one.hands is None]

    def pressed(self, person: str, move: Move) -> "AtWork":
        """What becomes of it where somebody walks there and begins a move."""
        other = AtWork(self.book, self.state, self.now, self.chance, self.number)
        room = self.state.people[person].room
        other.now += self.book.walk(room, move.room) if room and move.room else timedelta(0)
        other.begin(person, move)
        return other

    def begin(self, person: str, move: Move) -> None:
        body: dict[str, Any] = {"pieces": dict(move.pieces)} if move.code == "start" else {}
        if move.code == "settle":
            body = {"how": "resume"}
        about = {"run": move.run, "load": move.load, "operation": move.step, "station": move.station, "person": person}
        self.press(KINDS[move.code], body, **about)

    def minute(self) -> None:
        """What everybody does in the next minute."""
        self.now = max(self.now + MINUTE, self._opens() if not self._is_anybody_here() else self.now)
        for person in self.book.people:
            self._come_and_go(person.key)
        for person in self.book.people:
            if person.key in self.free():
                self._take_one(person.key)
            elif self.until.get(person.key, self.now) <= self.now:
                self._go_on(person.key)

    def _is_anybody_here(self) -> bool:
        return any(one.came_at is not None for one in self.state.people.values())

    def _opens(self) -> datetime:
        """When somebody comes next."""
        rows = (open_windows(one.hours, self.book.time_zone, self.now, self.now + AHEAD) for one in self.book.people)
        return min(row[0][0] for row in rows if row)

    def _come_and_go(self, key: str) -> None:
        seen, person = self.state.people.get(key), self.book.person(key)
        assert person is not None
        if seen is None or seen.came_at is None:
            windows = open_windows(person.hours, self.book.time_zone, self.now, self.now + AHEAD)
            if windows and windows[0][0] <= self.now:
                body = {"until": windows[0][1].isoformat(), "room": self.book.rooms[0].key}
                self.press("person came", body, person=key)
        elif seen.until is not None and seen.until <= self.now and seen.hands is None:
            self.press("person went", {"ticked": []}, person=key)

    def _take_one(self, key: str) -> None:
        found = [one for one in moves(self.state, self.book, key, self.now) if one.code in KINDS][:3]
        if len({one.step for one in found}) > 1:
            self.chances.append(replace(self, chances=[]))
        if found:
            move = self.chance.choice(found)
            self.begin(key, move)
            self.until[key] = self.now + self._length(key)

    def _length(self, key: str) -> timedelta:
        """How long what their hands are at takes."""
        hands = self.state.people[key].hands
        assert hands is not None
        run = self.state.runs[hands[0]]
        load = run.loads[hands[1]]
        step = run.step_of(load)
        assert step is not None
        setup = step.pass_.setup if load.fresh else timedelta(0)
        each = {"loading": setup + step.pass_.loading, "unloading": step.pass_.unloading}
        return each.get(load.state, setup + step.pass_.hand * sum(load.pieces.values()))

    def _go_on(self, key: str) -> None:
        hands = self.state.people[key].hands if key in self.state.people else None
        if hands is None or not hands[0]:
            return
        load = self.state.runs[hands[0]].loads[hands[1]]
        kind = "machine started" if load.state == "loading" else "load done"
        about = {"run": load.run, "load": load.id, "operation": load.step, "station": load.station}
        self.press(kind, person=key, **about)


def moments(made: Shop, count: int) -> Iterator[AtWork]:
    """So many moments of a run at which somebody has free hands, and what the shop is like then."""
    chance = Random(f"prices {made.seed}")
    at_work = AtWork(made.book, ShopState(), made.start, chance)
    for opening in made.openings:
        at_work.press("run opened", opening.body, run=opening.run, person=made.book.people[0].key)
    left = list(made.happenings)
    while any(run.state == "open" for run in at_work.state.runs.values()) and at_work.now < made.start + AHEAD:
        at_work.minute()
        while left and left[0].at <= at_work.now:
            one = left.pop(0)
            at_work.press(one.kind, one.body, **one.fields)
    found = at_work.chances
    yield from sorted(chance.sample(found, min(count, len(found))), key=lambda one: one.now)
