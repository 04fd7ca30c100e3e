"""The shopping list: what remains of all open runs, and of one to be opened, against what is there."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from runboard.plan.opening import Tally
from runboard.plan.supplies.ahead import RunAhead, ahead_of, ahead_of_opening
from runboard.plan.supplies.at_hand import AtHand, all_at_hand
from runboard.plan.supplies.boards import BoardsNeeded, NoBoards, boards_needed, in_order, uncut
from runboard.plan.supplies.wear import Wear, wears
from runboard.run.fold.state import ShopState
from runboard.run.supplies.said import word_of
from runboard.run.supplies.spent import spent_by
from runboard.shop.book import Book
from runboard.shop.product import Product

_A_HAIR = 1e-6
How = Literal["short", "low", "unknown", "enough", "idle"]


@dataclass(frozen=True)
class Share:
    """What one run needs of a supply. ``covered`` are the trays that what is there lasts for, ``short_at`` the first that it does
    not, '' where it suffices, and ``step`` what is done there; ``missing`` is how much it is short of. Of what is there, ``taken``
    is what the runs ``before`` it, by their names, still use. None of it is said where nobody counted."""

    run: str
    name: str
    needed: float
    covered: tuple[str, ...] = ()
    short_at: str = ""
    step: str = ""
    missing: float = 0.0
    taken: float = 0.0
    before: tuple[str, ...] = ()


@dataclass(frozen=True)
class Row:
    """One supply on the list. ``how``: it runs out (short); it suffices and goes below what is kept (low); nobody counted it
    (unknown); it suffices; nothing needs it (idle). ``buy`` is for what is missing and for what is always kept, in full
    ``packets`` where the size of one is known."""

    here: AtHand
    how: How
    needed: float
    shares: tuple[Share, ...]
    missing: float | None = None
    packets: int | None = None
    buy: float | None = None
    cost: float | None = None
    for_cutters: int = 0

    def share(self, run: str) -> Share | None:
        """What a run needs of it."""
        return next((share for share in self.shares if share.run == run), None)


@dataclass(frozen=True)
class Shopping:
    """Rows in the book's order. ``wear`` are the cutters; those that a run wears out and that are no supply are bought by
    themselves. ``cost`` is of all that is to be bought and has a price, None where nothing has."""

    rows: tuple[Row, ...]
    wear: tuple[Wear, ...]
    runs: tuple[RunAhead, ...]
    boards: tuple[BoardsNeeded, ...] = ()
    no_boards: tuple[NoBoards, ...] = ()

    @property
    def to_buy(self) -> tuple[Row, ...]:
        return tuple(row for row in self.rows if row.how in ("short", "low"))

    @property
    def to_count(self) -> tuple[Row, ...]:
        return tuple(row for row in self.rows if row.how == "unknown")

    @property
    def cutters_to_buy(self) -> tuple[Wear, ...]:
        return tuple(wear for wear in self.wear if wear.changes and wear.cutter.supply is None)

    def cut_by(self, run: str) -> set[str]:
        """The cutters that a run still cuts with."""
        return {cutter for one in self.runs if one.run == run for tray in one.trays for cutter in tray.cuts}

    def only(self, run: str) -> "Shopping":
        """The list without what other runs alone want."""
        cut = self.cut_by(run)
        return replace(
            self,
            rows=tuple(row for row in self.rows if row.share(run) is not None),
            wear=tuple(wear for wear in self.wear if wear.cutter.key in cut),
            boards=tuple(board for board in self.boards if run in board.runs),
            no_boards=tuple(one for one in self.no_boards if one.run == run),
        )

    @property
    def cost(self) -> float | None:
        prices = [row.cost for row in self.to_buy if row.cost is not None]
        prices += [wear.changes * wear.cutter.price for wear in self.cutters_to_buy if wear.cutter.price is not None]
        prices += [board.buy * board.price for board in self.boards if board.buy and board.price is not None]
        return round(sum(prices), 2) if prices else None


@dataclass(frozen=True)
class ToOpen:
    """A run that somebody is about to open."""

    product: Product
    name: str
    trays: tuple[Tally, ...]
    boards: Mapping[str, Mapping[str, int]]
    wood: str = ""


def shopping(book: Book, state: ShopState, to_open: ToOpen | None = None) -> Shopping:
    """What is needed, there, missing and to be bought. What is there goes to the runs in the order in which they were opened, to
    their trays by number; the run to be opened has what they leave."""
    here = {one.word: one for one in all_at_hand(book, state)}
    if to_open is not None:
        here |= _also(to_open.product, here)
    open_runs = in_order(state)
    runs = [ahead_of(run, here) for run in open_runs]
    if to_open is not None:
        runs.append(ahead_of_opening(to_open.product, to_open.name, to_open.trays, here, to_open.boards))
    worn = wears(book, state, spent_by(state.runs.values()), runs)
    new = _new_cutters(book, state, worn)
    rows = tuple(_row(one, runs, new.get(one.word, 0)) for one in here.values())
    opened = (to_open.product, to_open.trays, to_open.wood) if to_open is not None else (None, (), "")
    return Shopping(rows, tuple(worn), tuple(runs), *boards_needed(book, uncut(book, open_runs, *opened)))


def _also(product: Product, here: Mapping[str, AtHand]) -> dict[str, AtHand]:
    """What a product uses that is in no book any more."""
    uses = (use for operation in product.operations for use in operation.uses)
    return {
        word_of(use.supply): AtHand(word_of(use.supply), use.supply, use.unit)
        for use in uses
        if word_of(use.supply) not in here
    }


def _new_cutters(book: Book, state: ShopState, worn: Iterable[Wear]) -> dict[str, int]:
    """How many new cutters come out of each supply. A step that says itself how much of it a piece uses has counted them."""
    names = {supply.key: word_of(supply.name) for supply in book.supplies}
    products = [*book.products, *(run.route.product for run in state.open_runs())]
    said = {
        (operation.cutter, word_of(use.supply))
        for product in products
        for operation in product.operations
        for use in operation.uses
    }
    found: dict[str, int] = {}
    for wear in worn:
        word = names.get(wear.cutter.supply or "")
        if word and wear.changes and (wear.cutter.key, word) not in said:
            found[word] = found.get(word, 0) + wear.changes
    return found


def _row(here: AtHand, runs: Sequence[RunAhead], new: int) -> Row:
    shares = tuple(_shares(here, runs))
    needed = round(sum(share.needed for share in shares) + new, 6)
    how = _how(here, needed)
    if how not in ("short", "low") or here.there is None:
        return Row(here, how, needed, shares, for_cutters=new)
    least = needed + (here.low or 0.0) - here.there
    packets = math.ceil(least / here.pack - _A_HAIR) if here.pack else None
    buy = round(packets * here.pack if packets and here.pack else least, 6)
    cost = round(packets * here.price, 2) if packets and here.price is not None else None
    return Row(here, how, needed, shares, round(max(0.0, needed - here.there), 6), packets, buy, cost, new)


def _how(here: AtHand, needed: float) -> How:
    if here.there is None:
        return "unknown" if needed else "idle"
    left = here.there - needed
    if left < -_A_HAIR:
        return "short"
    if here.low is not None and left + _A_HAIR < here.low:
        return "low"
    return "enough" if needed else "idle"


def _shares(here: AtHand, runs: Sequence[RunAhead]) -> Iterable[Share]:
    left, before = here.there, list[str]()
    for run in runs:
        needed = round(run.needs(here.word), 6)
        if not needed:
            continue
        if left is None or here.there is None:
            yield Share(run.run, run.name, needed)
            continue
        covered, short_at = _covered(run, here.word, left)
        step = next((tray.steps.get(here.word, "") for tray in run.trays if tray.tray == short_at), "")
        missing, taken = round(max(0.0, needed - left), 6), round(here.there - left, 6)
        yield Share(run.run, run.name, needed, covered, short_at, step, missing, taken, tuple(before))
        before.append(run.name)
        left = max(0.0, left - needed)


def _covered(run: RunAhead, word: str, left: float) -> tuple[tuple[str, ...], str]:
    """The trays that so much lasts for, and the first that it does not."""
    covered: list[str] = []
    for tray in run.trays:
        need = tray.needs.get(word, 0.0)
        if need > left + _A_HAIR:
            return tuple(covered), tray.tray
        if need:
            covered.append(tray.tray)
        left -= need
    return tuple(covered), ""
