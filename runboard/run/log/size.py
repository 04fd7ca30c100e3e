"""How large a run may be, judged before anything is reckoned with it: pieces, trays, boards, loads, steps."""

from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Any

from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.limits import MOST_BOARDS, MOST_LINKS, MOST_LOADS, MOST_PIECES, MOST_TRAYS, product_excess
from runboard.shop.product import Product


def check_route(product: Product) -> None:
    """Refused 'run too large' where a run's route has too many steps or letters."""
    excess = product_excess(product)
    if excess is not None:
        _refuse(*excess)


def check_size(route: Route, trays: Iterable[int], wanted: int = 0, boards: int = 0) -> None:
    """Refused 'run too large' with ``what`` ('pieces', 'trays', 'boards', 'loads'), ``found`` and ``most``. ``trays`` are
    the pieces of each."""
    pieces = list(trays)
    for what, found, most in (
        ("pieces", max(sum(pieces), wanted), MOST_PIECES),
        ("trays", len(pieces), MOST_TRAYS),
        ("boards", boards, MOST_BOARDS),
    ):
        if found > most:
            _refuse(what, found, most)
    by_step = [_loads(step, pieces) for step in route.steps]
    links = sum(before * after for here, there in pairwise(by_step) for before, after in zip(here, there, strict=True))
    loads = max(sum(map(sum, by_step)), links * MOST_LOADS // MOST_LINKS)
    if loads > MOST_LOADS:
        _refuse("loads", loads, MOST_LOADS)


def check_run(run: RunState, before: RunState | None = None) -> None:
    """The same of a run as it stands. One that was too large ``before`` there was a limit goes on as it is."""
    try:
        _check(run)
    except Refused:
        if before is None or not _is_too_large(before):
            raise


def _check(run: RunState) -> None:
    wanted = sum(order.pieces for order in run.orders)
    trays = [max(tray.started, tray.in_process) for tray in run.trays.values()]
    check_size(run.route, trays, wanted, len(run.boards))


def _is_too_large(run: RunState) -> bool:
    try:
        _check(run)
    except Refused:
        return True
    return False


def check_body(body: Mapping[str, Any], product: Product | None) -> None:
    """The same of what an event says: a run that is opened, a route, order lines."""
    if product is not None:
        check_route(product)
    wanted = sum(order["pieces"] for order in body.get("orders", ()))
    if wanted > MOST_PIECES:
        _refuse("pieces", wanted, MOST_PIECES)
    trays = body.get("trays")
    if product is not None and trays is not None:
        check_size(Route(product), [tray["pieces"] for tray in trays], wanted, len(body.get("boards") or ()))


def _loads(step: Step, trays: list[int]) -> list[int]:
    """How many loads a step makes of each tray, at most: trays that go together are counted apart, a board in each."""
    is_board = step.pass_.size == "board"
    return [1 if is_board else max(1, step.loads_of(pieces)) for pieces in trays]


def _refuse(what: str, found: int, most: int) -> None:
    raise Refused("run too large", what=what, found=found, most=most)
