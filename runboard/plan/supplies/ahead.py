"""What is still needed for what remains of a run, tray by tray in their order: supplies, and what its cutters will do."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from runboard.plan.opening import Tally
from runboard.plan.supplies.at_hand import AtHand
from runboard.run.fold.route import Route
from runboard.run.fold.state import RunState
from runboard.run.supplies.said import word_of
from runboard.run.supplies.spent import minutes_each
from runboard.shop.product import Product


@dataclass(frozen=True)
class TrayAhead:
    """One tray. ``needs`` is how much of each supply (``word_of``) its pieces still use, ``steps`` at which step they first do;
    ``cuts`` is (pieces, minutes) by cutter. ``board`` is the one that it lies on, on which the cutters in ``on_board`` cut it
    together with others."""

    tray: str
    needs: Mapping[str, float]
    steps: Mapping[str, str]
    cuts: Mapping[str, tuple[float, float]]
    board: str = ""
    on_board: frozenset[str] = frozenset()


@dataclass(frozen=True)
class RunAhead:
    """A run that is open, or one to be opened, whose ``run`` is empty."""

    run: str
    name: str
    trays: tuple[TrayAhead, ...]

    def needs(self, word: str) -> float:
        """How much of a supply all of its trays still use."""
        return sum(tray.needs.get(word, 0.0) for tray in self.trays)


def ahead_of(run: RunState, here: Mapping[str, AtHand]) -> RunAhead:
    """What remains of an open run: every piece that is on its way goes through every step that is still before it."""
    in_process = sum(tray.in_process for tray in run.trays.values())
    boards = {tray: board for board, fed in run.boards.items() for tray in fed}
    trays = (
        _tray(tray.id, run.route_of(tray), run.product, tray.at, in_process, here, boards.get(tray.id, ""))
        for tray in run.trays.values()
    )
    return RunAhead(run.id, run.name, tuple(tray for tray in trays if tray.needs or tray.cuts))


def ahead_of_opening(
    product: Product,
    name: str,
    trays: Iterable[Tally],
    here: Mapping[str, AtHand],
    boards: Mapping[str, Mapping[str, int]],
) -> RunAhead:
    """What a run that is to be opened would use. ``boards`` have the trays that each feeds."""
    route, tallies = Route(product), [*trays]
    if not route.steps:
        return RunAhead("", name, ())
    pieces = sum(tally.pieces for tally in tallies)
    on = {tray: board for board, fed in boards.items() for tray in fed}
    first = route.steps[0].key
    found = (
        _tray(tally.tray, route, product.key, {tally.at or first: tally.pieces}, pieces, here, on.get(tally.tray, ""))
        for tally in tallies
    )
    return RunAhead("", name, tuple(tray for tray in found if tray.needs or tray.cuts))


def _tray(
    tray: str,
    route: Route,
    product: str,
    at: Mapping[str, int],
    in_run: int,
    here: Mapping[str, AtHand],
    board: str,
) -> TrayAhead:
    needs: dict[str, float] = {}
    on_board: set[str] = set()
    steps: dict[str, str] = {}
    cuts: dict[str, tuple[float, float]] = {}
    for step in route.steps:
        pieces = sum(count for key, count in at.items() if (there := route.step(key)) and there.index <= step.index)
        if not pieces:
            continue
        operation, share = step.operation, pieces / len(step.operation.passes)
        for use in operation.uses:
            word = word_of(use.supply)
            known = here.get(word)
            each = known.each((product, operation.key, use.each)) if known else use.each
            needs[word] = round(needs.get(word, 0.0) + share * each, 6)
            steps.setdefault(word, operation.name)
        if operation.cutter:
            before = cuts.get(operation.cutter, (0.0, 0.0))
            minutes = pieces * minutes_each(step, in_run if step.pass_.size == "run" else pieces)
            cuts[operation.cutter] = before[0] + share, before[1] + minutes
            if board and step.pass_.size == "board":
                on_board.add(operation.cutter)
    some = {word: amount for word, amount in needs.items() if amount}
    return TrayAhead(tray, some, steps, cuts, board, frozenset(on_board))
