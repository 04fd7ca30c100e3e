"""A run as it would be with a change of its trays, loads, times or operations, as far as nothing of that is begun."""

from collections.abc import Collection
from dataclasses import replace
from datetime import timedelta
from itertools import count, pairwise

from runboard.plan.change import LoadSize, Rested
from runboard.plan.changed_route import (
    can_be_one_visit,
    check_pieces,
    is_bound,
    load_factor,
    merged,
    pair_at,
    rested,
    turned,
    with_load,
)
from runboard.plan.schedule.problem.from_book import Estimate
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import RunState, Tray
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.parts import Part
from runboard.shop.product import Operation, Product

# other trays


def with_trays(run: RunState, a_tray: int) -> RunState:
    """The run with so many pieces a tray. Refused 'try pieces', 'try trays begun', 'try the same'."""
    check_pieces(a_tray)
    fresh = {key: tray for key, tray in run.trays.items() if _is_untouched(run, tray)}
    boards = {key: fed for key, fed in run.boards.items()
              if fed and set(fed) <= set(fresh) and key not in {**run.loads, **run.past}}  # fmt: skip
    # Trays that no board feeds go together by where their pieces are and by their wood.
    loose: dict[tuple[object, ...], dict[str, int]] = {}
    fed_by_any = {key for fed in run.boards.values() for key in fed}
    for key, tray in ((key, tray) for key, tray in fresh.items() if key not in fed_by_any):
        loose.setdefault((*tray.at, tray.revision, tray.wood, tray.board), {})[key] = tray.started
    groups = [*boards.values(), *loose.values()]
    if not groups:
        raise Refused("try trays begun")
    trays = {key: tray for key, tray in run.trays.items() if not any(key in group for group in groups)}
    names = (str(number) for number in count(1) if str(number) not in trays)
    made = [{next(names): pieces for pieces in _split(sum(group.values()), a_tray)} for group in groups]
    if [list(trays_made.values()) for trays_made in made] == [list(group.values()) for group in groups]:
        raise Refused("try the same")
    for group, parts in zip(groups, made, strict=True):
        model = fresh[next(iter(group))]
        for key, pieces in parts.items():
            trays[key] = replace(model, id=key, started=pieces, at=dict.fromkeys(model.at, pieces))
    return replace(run, trays=trays, boards={**run.boards, **dict(zip(boards, made, strict=False))})


def _is_untouched(run: RunState, tray: Tray) -> bool:
    """Whether nothing was begun, counted, held, moved, given or marked on a tray: all its pieces are where they began."""
    marks = (tray.busy, tray.counts, tray.scrap, tray.holds, tray.rests, tray.places, tray.gone, tray.came, tray.good)
    given = any(key.rsplit("|", 1)[-1] == tray.id for key in run.given)
    return len(tray.at) == 1 and tray.in_process == tray.started and not any(marks) and not given


def _split(pieces: int, a_tray: int) -> list[int]:
    return [min(a_tray, pieces - at) for at in range(0, pieces, a_tray)]


# another order


def swappable(run: RunState) -> list[tuple[Operation, Operation]]:
    """The neighbouring operations that may change places: neither begun, no wait after either, no texts that begin there,
    no finish, no boards to cut."""
    if len(run.revisions) != 1:
        return []
    return [pair for pair in pairwise(run.route.product.operations) if not is_bound(pair) and not _is_begun(run, pair)]


def _is_begun(run: RunState, pair: tuple[Operation, Operation]) -> bool:
    steps = {step.key: step.index for step in run.route.steps if step.operation in pair}
    first = min(steps.values())
    if any(load.step in steps for load in (*run.loads.values(), *run.past.values())):
        return True
    for tray in run.trays.values():
        further = any((step := run.route.step(key)) is None or step.index > first for key in tray.at)
        if tray.good or further or any(tray.held(key) or tray.counts.get(key) for key in steps):
            return True
    return False


def with_order(run: RunState, first: str) -> RunState:
    """The run with operation ``first`` and the next in each other's place. Refused 'try order'."""
    pair = next((pair for pair in swappable(run) if pair[0].key == first), None)
    if pair is None:
        raise Refused("try order")
    route = Route(turned(run.route.product, first))
    # Pieces are nowhere in the pair but before its first operation: that is the other one now.
    begins = {one.key: next(step.key for step in route.steps if step.operation.key == one.key) for one in pair}
    begun, begin = (begins[one.key] for one in pair)
    trays = {
        key: replace(tray, at={begin if step == begun else step: left for step, left in tray.at.items()})
        for key, tray in run.trays.items()
    }
    return replace(run, trays=trays, revisions=(replace(run.revisions[0], route=route),))


# two operations in one visit


def visitable(run: RunState, book: Book) -> list[tuple[Operation, Operation]]:
    """The neighbouring operations of which the second's hand work can be done right after the first: neither begun."""
    if len(run.revisions) != 1:
        return []
    pairs = pairwise(run.route.product.operations)
    return [pair for pair in pairs if can_be_one_visit(book, *pair) and not _is_begun(run, pair)]


def with_one_visit(run: RunState, book: Book, first: str) -> RunState:
    """The run with the hand work of the operation after ``first`` right after it. Refused 'try visit'."""
    if all(pair[0].key != first for pair in visitable(run, book)):
        raise Refused("try visit")
    return _with_product(run, merged(run.route.product, book, first))


def _with_product(run: RunState, product: Product) -> RunState:
    return replace(run, revisions=(*run.revisions[:-1], replace(run.revisions[-1], route=Route(product))))


def as_before(estimate: Estimate, run: RunState, first: str) -> Estimate:
    """What was known of two operations, for the one that they are in one visit: as long by hand as both were."""
    operations = pair_at(run.route.product, first) or ()
    pair = [next(step for step in reversed(run.route.steps) if step.operation is one) for one in operations]

    def known(asked: RunState, step: Step, part: Part) -> timedelta:
        if asked.id != run.id or step.key != pair[0].key:
            return estimate(asked, step, part)
        if part.kind != "hand":
            return estimate(run, pair[0], part)
        pieces = part.length / step.pass_.hand
        hands = [(one, replace(part, length=one.pass_.hand * pieces)) for one in pair if one.pass_.hand]
        return sum((estimate(run, one, own) for one, own in hands), timedelta())

    return known


# another wait, other loads and times


def with_wait(run: RunState, book: Book, change: Rested) -> RunState:
    """The run with another wait after an operation. Refused as by ``rested``."""
    return _with_product(run, rested(run.route.product, book, change))


def with_loads(run: RunState, change: LoadSize) -> tuple[RunState, float]:
    """The run with at most so many pieces on a load of a step, and how many times as many that is."""
    step = run.route.step(change.step)
    if step is None or len(run.revisions) != 1:
        raise Refused("try load size")
    a_tray = max((tray.started for tray in run.trays.values()), default=run.route.product.pieces_a_tray)
    changed = _with_product(run, with_load(run.route.product, change, a_tray))
    return changed, load_factor(step, change, a_tray) if change.grows else 1.0


def with_machine(estimate: Estimate, change: LoadSize, factor: float) -> Estimate:
    """The estimate with a machine time of a step ``factor`` times as long."""

    def changed(asked: RunState, step: Step, part: Part) -> timedelta:
        length = estimate(asked, step, part)
        concerned = asked.id == change.run and step.key == change.step and part.kind == "machine"
        return length * factor if concerned else length

    return changed


def with_times(estimate: Estimate, run: str, operation: str, kinds: Collection[str], per_cent: int) -> Estimate:
    """The estimate with some times of an operation of a run that take ``per_cent`` of it."""

    def changed(asked: RunState, step: Step, part: Part) -> timedelta:
        length = estimate(asked, step, part)
        concerned = asked.id == run and operation in (step.operation.key, step.key) and part.kind in kinds
        return length * per_cent / 100 if concerned else length

    return changed
