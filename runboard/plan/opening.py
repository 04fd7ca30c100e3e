"""Before a run: how many pieces to start, on which boards and trays, and what the run will ask of hands and machines."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import timedelta

from runboard.plan.extras import Start, pieces_to_start
from runboard.plan.good_rate import GoodRate, route_good_rate
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import ShopState
from runboard.run.log.size import check_route, check_size
from runboard.run.refusal import Refused
from runboard.run.rules.loads import shared_out
from runboard.shop.limits import MOST_TRAYS_AT_FIRST
from runboard.shop.product import ZERO, Product


@dataclass(frozen=True)
class Tally:
    """One tray of a run to be: its number, pieces, and the step at which it begins where that is not the first."""

    tray: str
    pieces: int
    at: str = ""


@dataclass(frozen=True)
class Opening:
    """What opening a run would make: trays and boards, the pieces to start with their certainty, and the work in it.

    ``work`` has hands-on and machine time for each step, ``uses`` what is used up.
    """

    start: Start
    good_rate: GoodRate
    trays: tuple[Tally, ...]
    boards: Mapping[str, Mapping[str, int]]
    work: Mapping[str, tuple[timedelta, timedelta]] = field(default_factory=dict)
    uses: Mapping[str, tuple[float, str]] = field(default_factory=dict)

    @property
    def hands(self) -> timedelta:
        return sum((hands for hands, _ in self.work.values()), ZERO)


def counted_before(state: ShopState, product: str) -> dict[str, tuple[int, int]]:
    """(good, bad) counted so far for each operation of a product, over all its runs."""
    found: dict[str, tuple[int, int]] = {}
    for run in state.runs.values():
        if run.product != product:
            continue
        for tray in run.trays.values():
            for step, counts in tray.counts.items():
                good = sum(count[0] for count in counts.values())
                bad = sum(count[1] for count in counts.values())
                before = found.get(step.split(":")[0], (0, 0))
                found[step.split(":")[0]] = (before[0] + good, before[1] + bad)
    return found


def plan_opening(
    product: Product,
    wanted: int,
    certainty: float = 0.9,
    pieces_a_tray: int | None = None,
    counted: Mapping[str, tuple[int, int]] | None = None,
    begun: Mapping[str, str] | None = None,
    start: int | None = None,
) -> Opening:
    """How a run of ``wanted`` good pieces would begin.

    Extras come on top for ``certainty`` and round up to whole boards where the first operation cuts boards.
    ``begun`` puts trays half-way (tray → step); ``start`` overrules how many pieces. Refuses what is out of range.
    """
    if wanted < 1:
        raise Refused("nothing wanted")
    route = Route(product)
    rate = route_good_rate(product.operations, counted)
    board = board_pieces(route)
    chosen = pieces_to_start(wanted, rate.rate, certainty, board or 1)
    count = start or chosen.start
    a_tray = pieces_a_tray or product.pieces_a_tray
    if a_tray < 1 or count / a_tray > MOST_TRAYS_AT_FIRST:
        raise Refused("too many trays", trays=math.ceil(count / max(1, a_tray)), most=MOST_TRAYS_AT_FIRST)
    check_route(product)
    check_size(route, [], max(count, wanted))
    trays, boards = lay_out(route, count, a_tray, board)
    check_size(route, [pieces for _, pieces in trays], wanted, len(boards))
    placed = tuple(Tally(key, pieces, (begun or {}).get(key, "")) for key, pieces in trays)
    boards = {key: fed for key, fed in boards.items() if not any((begun or {}).get(tray) for tray in fed)}
    work = work_in(route, [pieces for _, pieces in trays])
    return Opening(chosen, rate, placed, boards, work, uses_of(route, count))


def board_pieces(route: Route) -> int | None:
    """How many pieces a board gives, where the first operation cuts boards."""
    first = route.steps[0].pass_
    return first.pieces if first.size == "board" else None


def lay_out(
    route: Route, count: int, a_tray: int, board: int | None
) -> tuple[list[tuple[str, int]], dict[str, dict[str, int]]]:
    """Trays with their pieces, numbered from 1, and the boards that feed them. No tray lies over two boards."""
    trays: list[tuple[str, int]] = []
    boards: dict[str, dict[str, int]] = {}
    left = count
    while left > 0:
        on_board = min(left, board or left)
        left -= on_board
        fed: dict[str, int] = {}
        while on_board > 0:
            pieces = min(on_board, a_tray)
            fed[str(len(trays) + 1)] = pieces
            trays.append((str(len(trays) + 1), pieces))
            on_board -= pieces
        if board:
            boards[f"{route.steps[0].key}/{len(boards) + 1}"] = fed
    return trays, boards


def work_in(route: Route, trays: Sequence[int]) -> dict[str, tuple[timedelta, timedelta]]:
    """(hands-on, machine) time of each step over these trays, with one setup."""
    return {step.key: _work(step, trays) for step in route.steps}


def _work(step: Step, trays: Sequence[int]) -> tuple[timedelta, timedelta]:
    pass_, pieces = step.pass_, sum(trays)
    loads = loads_in(step, trays)
    hands = pass_.setup + loads * (pass_.loading + pass_.unloading) + pieces * pass_.hand
    return hands, loads * pass_.machine


def loads_in(step: Step, trays: Sequence[int]) -> int:
    """How many loads these trays make at a step."""
    if step.pass_.size == "board" and step.most_a_load:
        return step.loads_of(sum(trays))
    return len(list(shared_out(step, {str(at): pieces for at, pieces in enumerate(trays)})))


def uses_of(route: Route, pieces: int) -> dict[str, tuple[float, str]]:
    """What so many pieces use up."""
    found: dict[str, tuple[float, str]] = {}
    for operation in route.product.operations:
        for use in operation.uses:
            before = found.get(use.supply, (0.0, use.unit))
            found[use.supply] = (round(before[0] + use.each * pieces, 6), use.unit)
    return found
