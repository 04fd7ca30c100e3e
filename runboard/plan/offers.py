"""What a plan offers a person: its first thing for them and why, and what it would cost to begin something else now.

What could be done now, and its words, come from the greedy rule (``next_move``); the plan says which of it comes first.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.begun_now import soonest
from runboard.plan.candidates import Wanted
from runboard.plan.move import Move
from runboard.plan.next_move import STOP_WELL, moves
from runboard.plan.prices import WORK, Price, Question, block_of, prices_of
from runboard.plan.schedule.problem.hours import first_from, starts_of
from runboard.plan.schedule.problem.nouns import TICK, Placed, Plan, Problem
from runboard.plan.taking_over import CODE, SOON, Taking, due, takings, with_moments
from runboard.plan.trays_wanted import is_for_another, trays_wanted
from runboard.plan.why import says_more, step_name, why
from runboard.run.fold.state import ShopState
from runboard.shop.book import Book

# The next things of a plan are remembered: they keep their order for as long as no newer plan is there.
REMEMBERED = 3
# By then a plan is made anew, while somebody is here.
AGAIN = timedelta(minutes=2)
# What the greedy rule puts first for care's sake stays there, whatever it costs.
STAYS_FIRST = ("stop", "watch", "settle")


@dataclass(frozen=True)
class ThingToDo:
    """What a plan gives a person to do, by its names, and from when on; ``is_fresh`` where it begins a load, and takes
    none off nor goes on with one."""

    run: str
    load: str
    step: str
    trays: tuple[str, ...]
    at: datetime
    is_fresh: bool


@dataclass(frozen=True)
class Offer:
    """``things`` are the next ones of the plan for ``person``, ``because`` why the first (a code and its facts), ``own`` the
    move that begins it. ``first`` is the move that is shown first. ``free`` says until when, and for what, it is better to
    wait than to begin anything, or to stop. ``takes`` are the machines that they take over watching, and when; ``wanted`` the
    trays of hand work over several that are their next load. ``before_stop`` is the move that must come before they stop:
    its latest end passes before anybody is there again."""

    person: str
    things: tuple[ThingToDo, ...] = ()
    because: Mapping[str, Any] = field(default_factory=dict)
    own: str = ""
    first: str = ""
    prices: Mapping[str, Price | None] = field(default_factory=dict)
    free: Move | None = None
    takes: tuple[Taking, ...] = ()
    wanted: Wanted = field(default_factory=dict)
    before_stop: str = ""


def lines(state: ShopState, book: Book, person: str, now: datetime, offer: Offer | None) -> list[Move]:
    """What Now shows ``person``, best first: what they could do, as the plan at hand has it."""
    return offered(moves(state, book, person, now, wanted=offer.wanted if offer is not None else None), offer, now)


def wanted_of(question: Question, person: str, shown: str = "", *, busy: bool = False) -> Wanted:
    """The trays of hand work over several that the plan wants on the next load of ``person``; those of the move ``shown``
    stay while they are ``busy``."""
    at = _place_of(question.problem, person)
    mine = [] if at is None else things_of(question.problem, question.plan, at)
    return {} if at is None else trays_wanted(question, at, mine, shown if busy else "")


def offer_for(question: Question, person: str, found: Sequence[Move], shown: str = "", *, busy: bool = False) -> Offer:
    """What the plan offers ``person``, who could do what is ``found``. ``shown`` is the move shown first so far: it stays
    while they are ``busy`` with something, and as long as it breaks no promise."""
    at = _place_of(question.problem, person)
    if at is None or not found:
        return Offer(person)
    mine = things_of(question.problem, question.plan, at)
    offer = Offer(
        person,
        tuple(_thing(question.problem, placed) for placed in mine[:REMEMBERED]),
        why(question, mine[0].block) if mine else {},
        takes=takings(question.problem, question.plan, at),
    )
    own = _move_of(question, found, mine[0]) if mine else None
    is_now = own is not None and mine[0].start <= soonest(question.problem, at)
    prices = prices_of(question, at, found, own if is_now else None, shown)
    offer = replace(offer, prices=prices, own=own.id if own is not None else "")
    kept = _kept(found, shown)
    if _is_stop(found[0]) and (last := _last_chance(question, mine, at)) is not None:
        move = _move_of(question, found, last)
        free = None if move is not None else _free(question, last)
        return replace(offer, first=found[0].id, free=free, before_stop=move.id if move is not None else "")
    if _stays_first(found[0]):
        return replace(offer, first=found[0].id, free=_until_next(question, mine, at) if _is_stop(found[0]) else None)
    if kept is not None and busy:
        return replace(offer, first=kept.id)
    if kept is not None and _is_harmless(prices.get(kept.id)):
        return replace(offer, first=(_first_alike(question, found, kept, at) or kept).id)
    if own is not None and is_now:
        return replace(offer, first=own.id)
    return _meanwhile(question, offer, found, mine, at)


def offered(found: Sequence[Move], offer: Offer | None, now: datetime) -> list[Move]:
    """The moves of the greedy rule with their prices, the plan's own first and with its reason. What stays first for care's
    sake has no other reason beside it. Whoever is to take over a watch by now does so before anything else. Nobody is sent
    home whom the plan needs before their session is over."""
    if offer is None or not found:
        return list(found)
    priced = with_moments([_with_price(move, offer.prices.get(move.id)) for move in found], offer.takes, now)
    taking = due(priced, offer.takes, now)
    if taking is not None and (found[0].code == "watch" or not _stays_first(found[0])):
        return [taking, *(move for move in priced if move is not taking)]
    last = next((move for move in priced if move.id == offer.before_stop), None)
    if last is not None and _is_stop(found[0]):
        return [_with_why(last, offer), *(move for move in priced if move is not last)]
    waits = offer.free is not None and offer.free.facts["at"] > now and _is_all_known(found, offer)
    if _stays_first(found[0]) and not (waits and _is_stop(found[0])):
        return priced
    if offer.free is not None and waits:
        return [offer.free, *(move for move in priced if move.code != "free")]
    first = next((move for move in priced if move.id == offer.first), None) or _by_thing(priced, offer.things)
    return priced if first is None else [_with_why(first, offer), *(move for move in priced if move is not first)]


def things_of(problem: Problem, plan: Plan, person: int) -> list[Placed]:
    """What the plan gives a person's hands that is not begun, in order."""
    mine = [placed for placed in plan.placed if placed.hands == person and not problem.blocks[placed.block].begun]
    return sorted(mine, key=lambda placed: (placed.start, placed.block))


def _place_of(problem: Problem, person: str) -> int | None:
    return next((at for at, somebody in enumerate(problem.people) if somebody.key == person), None)


def _kept(found: Sequence[Move], shown: str) -> Move | None:
    """The move that was shown first so far; of a load over several trays what is left of it, or is wanted of it now."""
    exact = next((move for move in found if move.id == shown), None)
    if exact is not None:
        return exact
    alike = (move for move in found if move.code == "start" and shown.startswith(f"start|{move.run}|{move.step}/"))
    return next((move for move in alike if len(move.trays) > 1 or "+" in shown), None)


def _stays_first(move: Move) -> bool:
    return move.code in STAYS_FIRST or move.because.get("code") == "latest"


def _is_harmless(price: Price | None) -> bool:
    return price is not None and price.is_small


def _is_stop(move: Move) -> bool:
    return move.code == "stop"


def _meanwhile(question: Question, offer: Offer, found: Sequence[Move], mine: Sequence[Placed], at: int) -> Offer:
    """The plan has nothing for them yet: what costs nothing, a small job that fits, or nothing at all."""
    problem = question.problem
    costless = next((move for move in found if _is_harmless(offer.prices.get(move.id))), None)
    if costless is not None:
        return replace(offer, first=costless.id)
    until = problem.moment(mine[0].start) if mine else None
    taking = _taken_next(problem, offer, found, until)
    before = until if taking is None else taking.at
    fits = (
        move for move in found if move.code == "job" and (before is None or move.minutes <= _minutes(problem, before))
    )
    job = next(fits, None)
    if job is not None:
        return replace(offer, first=job.id)
    if taking is not None:
        return replace(offer, first=_id_of(taking, found))
    free = _until_next(question, mine, at) or (_free(question, mine[0]) if mine and offer.prices else None)
    if free is not None:
        return replace(offer, free=free)
    stop = next((move for move in found if _is_stop(move)), None)
    return replace(offer, first=stop.id if stop is not None and found[0].code == "free" else found[0].id)


def _last_chance(question: Question, mine: Sequence[Placed], person: int) -> Placed | None:
    """What the plan has for somebody in this session whose latest end, after a wait, passes before anybody is there again."""
    problem, plan = question.problem, question.plan
    opens, closes = min(problem.people[person].windows, default=(0, 0))
    for placed in mine:
        block = problem.blocks[placed.block]
        latest = [plan.placed[lag.before].begins() + lag.latest for lag in block.lags if lag.latest is not None]
        if (
            opens <= 0
            and placed.start < closes
            and latest
            and min(latest) < first_from(starts_of(problem, block), closes)
        ):
            return placed
    return None


def _until_next(question: Question, mine: Sequence[Placed], person: int) -> Move | None:
    """That nothing waits for them until the next that the plan has for them before their session is over; None where it has
    nothing more, or where it is time to stop anyway."""
    opens, closes = min(question.problem.people[person].windows, default=(0, 0))
    if not mine or opens > 0 or mine[0].start >= closes or closes * TICK <= STOP_WELL:
        return None
    return _free(question, mine[0])


def _free(question: Question, following: Placed) -> Move:
    """Nothing until the next of the plan; what should be there already is there when the plan is made anew."""
    problem = question.problem
    at = max(problem.moment(following.start), problem.start + AGAIN)
    facts = {"at": at, "next": step_name(question.state, problem.blocks[following.block])}
    return Move("free", "free", {"code": "then", "facts": facts}, facts=facts)


def _taken_next(problem: Problem, offer: Offer, found: Sequence[Move], until: datetime | None) -> Taking | None:
    """The watch that they take over soon, before the plan has anything else for their hands."""
    taking = next((taking for taking in offer.takes if _id_of(taking, found)), None)
    if taking is None or taking.at - problem.start > SOON or (until is not None and until <= taking.at):
        return None
    return taking


def _id_of(taking: Taking, found: Sequence[Move]) -> str:
    return next(
        (move.id for move in found if move.code == CODE and (move.run, move.load) == (taking.run, taking.load)), ""
    )


def _minutes(problem: Problem, until: datetime) -> float:
    return (until - problem.start).total_seconds() / 60


def _is_all_known(found: Sequence[Move], offer: Offer) -> bool:
    """Whether everything that could be done now was there when the plan said that nothing should be."""
    return all(move.id in offer.prices or move.code not in WORK for move in found)


def _move_of(question: Question, found: Sequence[Move], placed: Placed) -> Move | None:
    """The move that begins a block. Trays of the same step are alike: the first of them comes first, but for those that
    the plan gives to somebody else who is here."""
    problem, block = question.problem, question.problem.blocks[placed.block]
    exact = next((move for move in found if block_of(problem, move) == block.index), None)
    if block.unloads is not None:
        return exact
    alike = (move for move in found if (move.code, move.run, move.step) == ("start", block.run, block.step))
    same = exact or next(alike, None)
    return None if same is None else _first_alike(question, found, same, placed.hands) or exact


def _first_alike(question: Question, found: Sequence[Move], move: Move, person: int | None) -> Move | None:
    if move.code != "start":
        return move
    alike = (other for other in found if question.sort(other) == question.sort(move))
    free = (move for move in alike if not is_for_another(question, block_of(question.problem, move), person))
    return next(free, None)


def _by_thing(found: Sequence[Move], things: Sequence[ThingToDo]) -> Move | None:
    """The move that goes on with an older plan; of alike trays the first, as with a new one."""
    for thing in things:
        for move in found:
            if move.run == thing.run and _is_same(move, thing):
                return move
    return None


def _is_same(move: Move, thing: ThingToDo) -> bool:
    if move.code == "start":
        return thing.is_fresh and move.step == thing.step
    # What was to be begun may have been, and put aside: its unloading comes later in the plan.
    goes_on = ("go on",) if thing.is_fresh else ("go on", "unload", "settle")
    return move.code in goes_on and move.load == thing.load


def _thing(problem: Problem, placed: Placed) -> ThingToDo:
    block = problem.blocks[placed.block]
    return ThingToDo(
        block.run, block.load, block.step, block.trays, problem.moment(placed.start), block.unloads is None
    )


def _with_price(move: Move, price: Price | None) -> Move:
    return move if price is None else replace(move, price=price.record)


def _with_why(move: Move, offer: Offer) -> Move:
    """An older plan's reason stays with its own move, whatever else came first since."""
    if move.id != offer.own or not says_more(offer.because, move.because):
        return move
    return replace(move, why=offer.because)
