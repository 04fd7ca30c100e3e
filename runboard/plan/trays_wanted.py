"""Which trays of hand work over several a plan wants on the next load.

Without a plan Now offers all that are ready as one load. A plan takes them one at a time, so that the first goes on, or begins
to dry, while the others are worked on: those that it has somebody do in one go are one load where that costs nothing.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from runboard.plan.begun_now import soonest
from runboard.plan.candidates import Wanted
from runboard.plan.prices import Price, Question
from runboard.plan.schedule.problem.nouns import Block, Placed
from runboard.run.fold.names import step_of, trays_of
from runboard.run.fold.route import Step
from runboard.run.rules.loads import is_by_tray


def trays_wanted(question: Question, person: int, mine: Sequence[Placed], shown: str = "") -> Wanted:
    """By (run, step) the trays of the next load of ``person``, whom the plan gives what is ``mine``, in order: of what it
    begins now as many as it has them do one right after the other, and cost nothing as one load; of the rest the first. The
    trays of the move that is ``shown`` stay."""
    found: dict[tuple[str, str], Sequence[str]] = {}
    for at, placed in enumerate(mine):
        block = question.problem.blocks[placed.block]
        step = _step(question, block)
        if step is None or not is_by_tray(step) or (block.run, block.step) in found:
            continue
        some = [placed.block]
        if at == 0 and placed.start <= soonest(question.problem, person):
            some = list(_one_after_another(question, mine, step))
        some = _as_named(question, some, placed)
        found[block.run, block.step] = [
            question.problem.blocks[wanted].trays[0] for wanted in _costless(question, some, person)
        ]
    return {**found, **_shown(question, shown)}


def _step(question: Question, block: Block) -> Step | None:
    """The step that a block is of, by the route of its first tray."""
    run = question.state.runs[block.run]
    return run.route_of(run.trays[block.trays[0]]).step(block.step) if block.trays else None


def _shown(question: Question, shown: str) -> Wanted:
    code, _, rest = shown.partition("|")
    run, _, load = rest.partition("|")
    if code != "start" or run not in question.state.runs:
        return {}
    return {(run, step_of(load)): trays_of(load)}


def _one_after_another(question: Question, mine: Sequence[Placed], step: Step) -> Iterator[int]:
    """The blocks of a step that come first, as many as are ready when the first begins and go on one load, with nothing
    between them."""
    problem, plan, first = question.problem, question.plan, mine[0]
    like, pieces = problem.blocks[first.block], 0
    trays = set[str]()
    for before, placed in pairwise([first, *mine]):
        block = problem.blocks[placed.block]
        pieces += block.pieces
        is_next = placed is first or placed.start <= plan.end(problem, before.block)
        fits = step.is_one_load(pieces) and trays.isdisjoint(block.trays)
        is_alike = (block.run, block.step) == (like.run, like.step) and _is_ready(question, block, first.start)
        if not (is_next and is_alike and fits):
            return
        trays.update(block.trays)
        yield placed.block


def _is_ready(question: Question, block: Block, tick: int) -> bool:
    ends = (question.plan.end(question.problem, lag.before) + lag.least for lag in block.lags)
    return max([block.release, *ends]) <= tick


def is_for_another(question: Question, block: int | None, person: int | None) -> bool:
    """Whether the plan gives a block to somebody else who is here."""
    hands = None if block is None else question.plan.placed[block].hands
    if hands is None or hands == person:
        return False
    seen = question.state.people.get(question.problem.people[hands].key)
    return seen is not None and seen.came_at is not None and not seen.away


def _as_named(question: Question, some: Sequence[int], placed: Placed) -> list[int]:
    """The same number of blocks, for each the first that is alike and nobody else's: names are taken in order."""
    problem = question.problem
    like = problem.blocks[placed.block]
    same = [block for block in problem.blocks if (block.run, block.step) == (like.run, like.step) and not block.begun]
    theirs = (block for block in same if not is_for_another(question, block.index, placed.hands))
    left = [block.index for block in theirs if _is_ready(question, block, placed.start)]
    found: list[int] = []
    for block in some:
        alike = (other for other in left if question.left[other] == question.left[block] and other not in found)
        found.append(next(alike, block))
    return sorted(set(found))


def _costless(question: Question, some: Sequence[int], person: int) -> Sequence[int]:
    """As many of the first of some blocks as cost nothing as one load: one at least."""
    least, most = 1, len(some)
    while least < most:
        many = (least + most + 1) // 2
        if question.together(some[:many], person) == Price():
            least = many
        else:
            most = many - 1
    return some[:least]
