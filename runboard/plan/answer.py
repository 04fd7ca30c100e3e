"""The planner's answer to a state, at once: a plan of all that is left, and what it offers each person.

The plan is the last one carried over, as it stands or by its order, or the best that the priority rules find where that is
better. A better one that a search finds later takes its place by ``with_plan``. Beside it goes, for each person, what
it is too late to load: machines that take longer than they have left today.
"""

from collections.abc import Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from runboard.plan.begun_now import STAY, BegunNow
from runboard.plan.candidates import WhoAsks, candidates, time_left
from runboard.plan.carrying_over import as_it_stands, same_order
from runboard.plan.next_move import after_hands, moves, station_at
from runboard.plan.offers import Offer, offer_for, offered, wanted_of
from runboard.plan.prices import SMALL, Asked, Price, Question, windows_by
from runboard.plan.schedule.problem.from_book import Estimate, as_written
from runboard.plan.schedule.problem.from_state import nothing_of, problem_for
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import worth
from runboard.plan.schedule.rule.greedy import by_start, greedy
from runboard.plan.schedule.rule.rule import Knobs, NoPlace, Rule
from runboard.plan.taking_over import CODE
from runboard.run.fold.state import EMPTY, PersonState, ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book

# Goes of the priority rules where a last plan is at hand: each of them once or so.
GOES_AGAIN = 24
# Five minutes in ticks.
_SMALL_TICKS = SMALL * 2
# With more time left than this nobody thinks of going home yet.
NEAR_THE_END = timedelta(hours=1)


@dataclass(frozen=True)
class ShownFirst:
    """The move that comes first for somebody, what their hands were at meanwhile, and how things stood: the orders, the
    people, the machines."""

    move: str
    hands: tuple[str, str] | None
    standing: Hashable = None


@dataclass(frozen=True)
class TooLate:
    """A machine with work for it, which takes so many ``minutes`` of hands and eyes; work is stopped ``at``."""

    station: str
    run: str
    step: str
    minutes: float
    at: datetime


@dataclass(frozen=True)
class Answer:
    """A plan of the problem that ``state`` is at ``now``, and by which priorities the rule makes it, or one like it.
    ``plan`` is None where nothing can be planned, and where more is open than is planned at once (``is_too_much``).
    ``unsure`` is what the rule thinks dear, or knows no price of; ``searched`` are the prices that a search has found."""

    state: ShopState
    book: Book
    now: datetime
    problem: Problem
    plan: Plan | None = None
    priority: Sequence[int] = ()
    knobs: Knobs = field(default_factory=Knobs)
    offers: Mapping[str, Offer] = field(default_factory=dict)
    late: Mapping[str, Sequence[TooLate]] = field(default_factory=dict)
    shown: Mapping[str, ShownFirst] = field(default_factory=dict)
    is_too_much: bool = False
    searched: Mapping[Asked, Price] = field(default_factory=dict)
    unsure: Sequence[Asked] = ()

    @property
    def finish(self) -> int:
        """The tick at which the plan is through: 0 without one."""
        return self.plan.finish(self.problem) if self.plan is not None else 0


def answer(
    state: ShopState, book: Book, now: datetime, estimate: Estimate = as_written, before: Answer | None = None
) -> Answer:
    """The answer at once. ``before`` is the last one: its plan is carried over, and what it showed first stays where that
    costs little."""
    try:
        problem = problem_for(state, book, now, estimate)
    except Refused:
        return Answer(state, book, now, nothing_of(state, book, now), is_too_much=True)
    empty = Answer(state, book, now, problem, late=_late(state, book, now), shown=before.shown if before else {})
    if not problem.blocks:
        return replace(empty, plan=Plan(()))
    rule = Rule(problem)
    found = [
        answer for answer in (*_carried_over(rule, before, empty), _by_rules(rule, before, empty)) if answer is not None
    ]
    if not found:
        return empty
    return _offering(min(found, key=lambda answer: worth(problem, answer.plan or Plan(()))), rule)


def with_plan(before: Answer, plan: Plan, searched: Mapping[Asked, Price] = EMPTY) -> Answer:
    """The same answer with a better plan, and what was ``searched`` of the prices beside it."""
    rule = Rule(before.problem)
    priority = by_start([placed.start for placed in plan.placed])
    knobs = _best_knobs(rule, priority, before.knobs)
    return _offering(replace(before, plan=plan, priority=priority, knobs=knobs, searched=searched), rule)


def with_prices(before: Answer, searched: Mapping[Asked, Price]) -> Answer:
    """The same answer with what a search found that moves cost."""
    return _offering(replace(before, searched={**before.searched, **searched}), Rule(before.problem))


def too_late(state: ShopState, book: Book, person: str, now: datetime) -> list[TooLate]:
    """What it is too late to load for somebody who has said how long they have: one for each machine."""
    asks = WhoAsks(after_hands(state, book, person, now), book, person, now, station_at(state, person))
    left = time_left(asks)
    if not timedelta(0) < left <= NEAR_THE_END:
        return []
    found: dict[str, TooLate] = {}
    for candidate in sorted(candidates(asks), key=lambda candidate: candidate.length):
        if candidate.step.has_machine and candidate.station.key not in found:
            minutes = round(candidate.length.total_seconds() / 60, 1)
            found[candidate.station.key] = TooLate(
                candidate.station.key, candidate.run.id, candidate.step.key, minutes, now + left
            )
    return [late for late in found.values() if timedelta(minutes=late.minutes) > left]


def is_worth_telling(problem: Problem, plan: Plan, before: Plan, *, is_last: bool = False) -> bool:
    """Whether a plan is so much better that it is worth changing what people are offered: less late, a window won, or five
    minutes of people's time and walks; as the last word of a search all that is better and done no later."""
    new, old = worth(problem, plan), worth(problem, before)
    if new[0] != old[0] or new >= old:
        return new < old
    finish, was = plan.finish(problem), before.finish(problem)
    won = windows_by(problem, was) - windows_by(problem, finish)
    return won > 0 or (won == 0 and old[1] - new[1] >= _SMALL_TICKS) or (is_last and finish <= was)


def _offering(answer: Answer, rule: Rule) -> Answer:
    if answer.plan is None:
        return answer
    begun, unsure = BegunNow(rule, answer.plan, answer.priority, answer.knobs), set[Asked]()

    def price(block: int, person: int) -> Price | None:
        if (block, person) in answer.searched:
            return answer.searched[block, person]
        found = begun.price(block, person)
        if found is None or not found.is_small:
            unsure.add((block, person))
        return found

    question = Question(answer.state, answer.problem, answer.plan, price, begun.together)
    offers, shown, standing = {}, {}, standing_of(answer.state)
    for person in answer.problem.people:
        hands, before = _hands(answer.state.people.get(person.key)), answer.shown.get(person.key)
        busy = hands is not None and before is not None and before.hands == hands
        kept = before.move if before is not None and (busy or before.standing == standing) else ""
        wanted = wanted_of(question, person.key, kept, busy=busy)
        found = moves(answer.state, answer.book, person.key, answer.now, wanted=wanted)
        offer = replace(offer_for(question, person.key, found, kept, busy=busy), wanted=wanted)
        offers[person.key] = offer
        # Taking over a watch passes; what else was shown first stays.
        first = next((move for move in offered(found, offer, answer.now) if move.code != CODE), None)
        shown[person.key] = ShownFirst(first.id if first else "", hands, standing)
    return replace(answer, offers=offers, shown=shown, unsure=tuple(sorted(unsure)))


def standing_of(state: ShopState) -> Hashable:
    """What is given up at once where it changes: what was ordered and until when, by which routes, who is here and for how
    long, which stations are out of use."""
    runs = tuple((run.id, run.orders, len(run.revisions)) for run in state.open_runs())
    people = tuple((person.key, person.came_at, person.away, person.until) for person in state.people.values())
    return runs, people, frozenset(station.key for station in state.stations.values() if station.out is not None)


def _hands(seen: PersonState | None) -> tuple[str, str] | None:
    return seen.hands if seen is not None else None


def _late(state: ShopState, book: Book, now: datetime) -> dict[str, Sequence[TooLate]]:
    people = (person.key for person in book.people if not person.removed and person.key in state.people)
    return {key: late for key in people if (late := too_late(state, book, key, now))}


def _best_knobs(rule: Rule, priority: Sequence[int], before: Knobs) -> Knobs:
    """With which of some knobs these priorities are through first."""
    finishes = [(rule.finish(priority, knobs), knobs) for knobs in (before, Knobs(STAY), Knobs())]
    return min((finish for finish in finishes if finish[0] >= 0), key=lambda made: made[0], default=(0, before))[1]


def _by_rules(rule: Rule, before: Answer | None, empty: Answer) -> Answer | None:
    """What the priority rules make; None where some block finds no place by any of them, which proves nothing."""
    try:
        made = greedy(rule.problem, GOES_AGAIN if before is not None and rule.is_compiled else None, rule)
    except NoPlace:
        return None
    return replace(empty, plan=made.plan, priority=made.priority, knobs=made.knobs)


def _carried_over(rule: Rule, before: Answer | None, empty: Answer) -> Iterator[Answer]:
    """The last plan on what is left now: as it stands, and by its order."""
    if before is None or before.plan is None:
        return
    knobs = before.knobs
    stands = as_it_stands(rule.problem, before.problem, before.plan)
    if stands is not None:
        priority = by_start([placed.start for placed in stands.placed])
        yield replace(empty, plan=stands, priority=priority, knobs=_best_knobs(rule, priority, knobs))
    priority = same_order(rule.problem, before.problem, before.priority)
    for tried in dict.fromkeys((knobs, Knobs(STAY), Knobs())):
        if rule.finish(priority, tried) >= 0:
            yield replace(empty, plan=rule.plan(before.plan.source), priority=priority, knobs=tried)
            return
