"""What a plan offers a person: its first thing for them and why, and what each alternative would cost the finish.

What could be done now, and its words, come from the greedy rule (``next_move``); the plan says which of it comes first.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any

from runboard.plan.move import Move
from runboard.plan.prices import WORK, Price, Question, block_of, prices_of
from runboard.plan.schedule.problem.nouns import Block, Placed, Plan, Problem
from runboard.plan.taking_over import CODE, SOON, Taking, due, takings, with_moments
from runboard.plan.why import says_more, why

# The next things of a plan are remembered: they keep their order for as long as no newer plan is there.
REMEMBERED = 3
# What the greedy rule puts first for care's sake stays there, whatever it costs.
STAYS_FIRST = ("stop", "watch", "settle")


@dataclass(frozen=True)
class Thing:
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
    move that begins it. ``first`` is the move that is shown first. ``free`` says that it costs more to do anything now than
    to wait. ``takes`` are the machines that they take over watching, and when."""

    person: str
    things: tuple[Thing, ...] = ()
    because: Mapping[str, Any] = field(default_factory=dict)
    own: str = ""
    first: str = ""
    prices: Mapping[str, Price] = field(default_factory=dict)
    free: Move | None = None
    takes: tuple[Taking, ...] = ()


def offer_for(question: Question, person: str, found: Sequence[Move], shown: str = "", *, busy: bool = False) -> Offer:
    """What the plan offers ``person``, who could do what is ``found``. ``shown`` is the move shown first so far: it stays
    while they are ``busy`` with something, and where it costs little."""
    at = next((at for at, one in enumerate(question.problem.people) if one.key == person), None)
    if at is None or not found:
        return Offer(person)
    mine = things_of(question.problem, question.plan, at)
    offer = Offer(
        person,
        tuple(_thing(question.problem, one) for one in mine[:REMEMBERED]),
        why(question, mine[0].block) if mine else {},
        takes=takings(question.problem, question.plan, at),
    )
    own = _move_of(question, found, mine[0]) if mine else None
    prices = prices_of(question, found, own, shown, mine[0].block if mine else None)
    offer = replace(offer, prices=prices, own=own.id if own is not None else "")
    kept = next((one for one in found if one.id == shown), None)
    if _stays_first(found[0]):
        return replace(offer, first=found[0].id)
    if kept is not None and busy:
        return replace(offer, first=kept.id)
    if kept is not None and kept.id in prices and prices[kept.id].is_small:
        return replace(offer, first=(_first_alike(question, found, kept, at) or kept).id)
    if own is not None and mine[0].start <= _soonest(question.problem, at):
        return replace(offer, first=own.id)
    return _meanwhile(question.problem, offer, found, mine)


def offered(found: Sequence[Move], offer: Offer | None, now: datetime) -> list[Move]:
    """The moves of the greedy rule with their prices, the plan's own first and with its reason. What stays first for care's
    sake has no other reason beside it. Whoever is to take over a watch by now does so before anything else."""
    if offer is None or not found:
        return list(found)
    priced = with_moments([_with_price(move, offer.prices.get(move.id)) for move in found], offer.takes, now)
    taking = due(priced, offer.takes, now)
    if taking is not None and (found[0].code == "watch" or not _stays_first(found[0])):
        return [taking, *(move for move in priced if move is not taking)]
    if _stays_first(found[0]):
        return priced
    if offer.free is not None and offer.free.facts["at"] > now and _is_all_known(found, offer):
        return [offer.free, *(move for move in priced if move.code != "free")]
    first = next((move for move in priced if move.id == offer.first), None) or _by_thing(priced, offer.things)
    return priced if first is None else [_with_why(first, offer), *(move for move in priced if move is not first)]


def things_of(problem: Problem, plan: Plan, person: int) -> list[Placed]:
    """What the plan gives a person's hands that is not begun, in order."""
    mine = [one for one in plan.placed if one.hands == person and not problem.blocks[one.block].begun]
    return sorted(mine, key=lambda one: (one.start, one.block))


def _stays_first(move: Move) -> bool:
    return move.code in STAYS_FIRST or move.because.get("code") == "latest"


def _meanwhile(problem: Problem, offer: Offer, found: Sequence[Move], mine: Sequence[Placed]) -> Offer:
    """The plan has nothing for them yet: what costs nothing, a small job that fits, or nothing at all."""
    costless = next((one for one in found if one.id in offer.prices and offer.prices[one.id].is_small), None)
    if costless is not None:
        return replace(offer, first=costless.id)
    until = problem.moment(mine[0].start) if mine else None
    taking = _taken_next(problem, offer, found, until)
    before = until if taking is None else taking.at
    fits = (one for one in found if one.code == "job" and (before is None or one.minutes <= _minutes(problem, before)))
    job = next(fits, None)
    if job is not None:
        return replace(offer, first=job.id)
    if taking is not None:
        return replace(offer, first=_id_of(taking, found))
    if until is None or not offer.prices:
        return replace(offer, first=found[0].id)
    facts = {"at": until, "why": "", "what": ""}
    return replace(offer, free=Move("free", "free", {"code": "free until", "facts": facts}, facts=facts))


def _taken_next(problem: Problem, offer: Offer, found: Sequence[Move], until: datetime | None) -> Taking | None:
    """The watch that they take over soon, before the plan has anything else for their hands."""
    one = next((one for one in offer.takes if _id_of(one, found)), None)
    if one is None or one.at - problem.start > SOON or (until is not None and until <= one.at):
        return None
    return one


def _id_of(taking: Taking, found: Sequence[Move]) -> str:
    return next((one.id for one in found if one.code == CODE and (one.run, one.load) == (taking.run, taking.load)), "")


def _minutes(problem: Problem, until: datetime) -> float:
    return (until - problem.start).total_seconds() / 60


def _is_all_known(found: Sequence[Move], offer: Offer) -> bool:
    """Whether everything that could be done now was there when the plan said that nothing should be."""
    return all(move.id in offer.prices or move.code not in WORK for move in found)


def _move_of(question: Question, found: Sequence[Move], placed: Placed) -> Move | None:
    """The move that begins a block. Trays of the same step are alike: the first of them comes first, but for those that
    the plan gives to somebody else who is here."""
    problem, block = question.problem, question.problem.blocks[placed.block]
    exact = next((one for one in found if block_of(problem, one) == block.index), None)
    if block.unloads is not None:
        return exact
    alike = (one for one in found if (one.code, one.run, one.step) == ("start", block.run, block.step))
    same = exact or next(alike, None)
    return None if same is None else _first_alike(question, found, same, placed.hands) or exact


def _first_alike(question: Question, found: Sequence[Move], move: Move, person: int | None) -> Move | None:
    if move.code != "start":
        return move
    alike = (one for one in found if (one.code, one.run, one.step) == (move.code, move.run, move.step))
    free = (one for one in alike if not _is_for_another(question, block_of(question.problem, one), person))
    return next(free, None)


def _is_for_another(question: Question, block: int | None, person: int | None) -> bool:
    hands = None if block is None else question.plan.placed[block].hands
    if hands is None or hands == person:
        return False
    seen = question.state.people.get(question.problem.people[hands].key)
    return seen is not None and seen.came_at is not None and not seen.away


def _by_thing(found: Sequence[Move], things: Sequence[Thing]) -> Move | None:
    """The move that goes on with an older plan; of alike trays the first, as with a new one."""
    for thing in things:
        for move in found:
            if move.run == thing.run and _is_same(move, thing):
                return move
    return None


def _is_same(move: Move, thing: Thing) -> bool:
    if move.code == "start":
        return thing.is_fresh and move.step == thing.step
    # What was to be begun may have been, and put aside: its unloading comes later in the plan.
    goes_on = ("go on",) if thing.is_fresh else ("go on", "unload", "settle")
    return move.code in goes_on and move.load == thing.load


def _thing(problem: Problem, placed: Placed) -> Thing:
    block = problem.blocks[placed.block]
    return Thing(block.run, block.load, block.step, block.trays, problem.moment(placed.start), block.unloads is None)


def _with_price(move: Move, price: Price | None) -> Move:
    if price is None:
        return move
    return replace(move, price={"minutes": round(price.minutes, 1), "windows": price.windows})


def _with_why(move: Move, offer: Offer) -> Move:
    """An older plan's reason stays with its own move, whatever else came first since."""
    if move.id != offer.own or not says_more(offer.because, move.because):
        return move
    return replace(move, why=offer.because)


def _soonest(problem: Problem, person: int) -> int:
    """The last tick at which a beginning still counts as at once: hands free, in their hours, the longest walk done."""
    mine = (block for block in problem.blocks if block.begun and block.by == person)
    free = max((one.offset + one.length for block in mine for one in _hands(block)), default=0)
    opens = min((opens for opens, _ in problem.people[person].windows), default=0)
    return max(free, opens) + max((max(row) for row in problem.walks), default=0) + 1


def _hands(block: Block) -> Iterator[Any]:
    return (one for one in block.stretches if one.attendance == "hands-on")
