"""The last plan on what is left now: its order, and its own times and people where they still keep every rule; and where
something is not as it was."""

from collections.abc import Iterator, Sequence

from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.nouns import TICK, Block, Placed, Plan, Problem

# Of more blocks than this only the order is carried over: to see whether the plan can stand takes too long.
MOST_CHECKED = 500


def same_order(problem: Problem, before: Problem, priority: Sequence[int]) -> list[int]:
    """The priorities of what is left now by those of the problem before; what is new comes where its step did, or last."""
    known = {name: priority[block.index] for name, block in _named(before)}
    steps: dict[tuple[str, str], int] = {}
    for block in before.blocks:
        step, rank = (block.run, block.step), priority[block.index]
        steps[step] = min(steps.get(step, rank), rank)
    last = max(known.values(), default=0) + 1
    found = [0] * len(problem.blocks)
    for name, block in _named(problem):
        found[block.index] = known.get(name, steps.get((block.run, block.step), last))
    return found


def as_it_stands(problem: Problem, before: Problem, plan: Plan) -> Plan | None:
    """The last plan's own times and people. Where the next thing should have begun already, all of this sitting is put off
    by as much. None where that breaks a rule, where something is new, and of too many blocks to see in time."""
    known = {name: (block, plan.placed[block.index]) for name, block in _named(before)}
    left = list(_named(problem))
    if len(problem.blocks) > MOST_CHECKED or any(name not in known for name, _ in left):
        return None
    keys = {person.key: at for at, person in enumerate(problem.people)}
    who = [keys.get(person.key) for person in before.people]
    passed = (problem.start - before.start) // TICK  # down: what began with the hours begins no sooner than they do
    overdue = max((passed - known[name][1].start for name, block in left if not block.begun), default=0)
    closes = _sitting_closes(problem) if overdue > 0 else 0
    found = []
    for name, block in left:
        was, placed = known[name]
        start = placed.start - passed
        if block.begun:
            found.append(_begun(block, placed, passed, who))
        else:
            found.append(_moved(block, was, placed, start + overdue if start < closes else start, who))
    made = Plan(tuple(found), plan.source)
    return None if broken(problem, made) else made


def changed(problem: Problem, before: Problem) -> tuple[int, ...]:
    """The blocks at which something has happened: new ones, those begun since, and what is left of the trays of those that
    are gone. How long others are thought to take is no change."""
    was = dict(_named(before))
    left = list(_named(problem))
    gone = was.keys() - {name for name, _ in left}
    trays = {(was[name].run, tray) for name in gone for tray in was[name].trays}
    return tuple(
        block.index
        for name, block in left
        if name not in was or block.begun > was[name].begun or any((block.run, tray) in trays for tray in block.trays)
    )


def _moved(block: Block, was: Block, placed: Placed, start: int, who: Sequence[int | None]) -> Placed:
    """A block as it was placed but for its start; whoever watched its machine comes as much later."""
    hands = None if placed.hands is None else who[placed.hands]
    if block.watched is None or was.watched is None:
        return Placed(block.index, start, placed.setup, hands)
    later = start - placed.start + block.watched.offset - was.watched.offset
    return Placed(block.index, start, placed.setup, hands, _eyes(placed, later, who))


def _begun(block: Block, placed: Placed, passed: int, who: Sequence[int | None]) -> Placed:
    """What is begun is where it is, with whoever is at it; a watch that was to be taken over still is."""
    by = block.by if block.by is not None or placed.hands is None else who[placed.hands]
    hands = by if block.hands else None
    watched = block.watched
    if watched is None:
        return Placed(block.index, 0, 0, hands)
    wanted = _eyes(placed, -passed, who)
    gone = [person for person, tick in wanted if tick <= watched.offset]
    # Before the machine runs nobody watches yet; then it is whoever is known to.
    first = block.by if block.by is not None and (watched.offset == 0 or not gone) else next(reversed(gone), None)
    ends = watched.offset + watched.length
    later = tuple((person, tick) for person, tick in wanted if watched.offset < tick < ends)
    return Placed(block.index, 0, 0, hands, () if first is None else ((first, watched.offset), *later))


def _eyes(placed: Placed, later: int, who: Sequence[int | None]) -> tuple[tuple[int, int], ...]:
    seen = ((who[person], tick + later) for person, tick in placed.watchers)
    return tuple((person, tick) for person, tick in seen if person is not None)


def _sitting_closes(problem: Problem) -> int:
    """The tick at which the last of those who are there now goes; 0 with nobody there."""
    return max(
        (closes for person in problem.people for opens, closes in person.windows if opens <= 0 < closes), default=0
    )


def _named(problem: Problem) -> Iterator[tuple[tuple[str, str, int], Block]]:
    """Blocks by names that outlive a problem: run, load, and how many of the load's blocks come after it."""
    blocks = list(problem.blocks)
    behind: dict[tuple[str, str], int] = {}
    named = []
    for block in reversed(blocks):
        count = behind[block.run, block.load] = behind.get((block.run, block.load), -1) + 1
        named.append(((block.run, block.load, count), block))
    return reversed(named)
