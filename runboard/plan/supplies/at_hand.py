"""What is there of each supply: counted when, bought since, used since, so there should be so much."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import datetime

from runboard.plan.supplies.learned import Known, LearnedUse, learned_from, since, steps_of
from runboard.run.fold.state import ShopState
from runboard.run.supplies.said import NO_PIECES, Pieces, SupplySaid, UseKey, word_of
from runboard.run.supplies.spent import spent_by
from runboard.shop.book import Book
from runboard.shop.product import Product
from runboard.shop.stocked import Supply

NOTHING_LEARNED: Mapping[UseKey, LearnedUse] = {}


@dataclass(frozen=True)
class AtHand:
    """One supply. ``there`` is how much there should be, None where nobody counted it or nobody can say; ``is_over`` where more
    was used than there was: it is to be counted. ``is_out`` where it ran out and nothing came since. ``times`` counts what was
    said of it, by which a page that is outdated is known."""

    word: str
    name: str
    unit: str = ""
    pack: float | None = None
    price: float | None = None
    low: float | None = None
    counted_at: datetime | None = None
    counted: float = 0.0
    bought: float = 0.0
    used: float = 0.0
    there: float | None = None
    is_over: bool = False
    is_out: bool = False
    times: int = 0
    learned: Mapping[UseKey, LearnedUse] = field(default_factory=lambda: NOTHING_LEARNED)

    def each(self, key: UseKey) -> float:
        """How much a piece uses: as it was learned, once that is measured well enough; else as its route writes it."""
        learned = self.learned.get(key)
        return learned.each if learned is not None and learned.is_enough else key[2]


def all_at_hand(book: Book, state: ShopState) -> list[AtHand]:
    """Every supply that the book has, that a step uses, or that somebody counted: the book's first, in its order."""
    spent = spent_by(state.runs.values()).uses
    found = []
    for word, supply in _known(book, state).items():
        found.append(_at_hand(word, supply, state.supplies.get(word, ()), spent.get(word, NO_PIECES)))
    return found


def _known(book: Book, state: ShopState) -> dict[str, Supply]:
    known = {word_of(supply.name): supply for supply in book.supplies}
    for word, supply in _used(book, state):
        known.setdefault(word, supply)
    for word, said in state.supplies.items():
        if word and said:
            known.setdefault(word, Supply("", said[-1].name))
    return known


def _used(book: Book, state: ShopState) -> Iterator[tuple[str, Supply]]:
    """What the steps of products and open runs use; under its own name where the book has no such supply."""
    products: list[Product] = [*book.products, *(run.route.product for run in state.open_runs())]
    for product in products:
        for operation in product.operations:
            for use in operation.uses:
                yield word_of(use.supply), Supply("", use.supply, use.unit)


def _at_hand(word: str, supply: Supply, said: tuple[SupplySaid, ...], spent: Pieces) -> AtHand:
    learned = learned_from(said)
    *_, known = (Known(None, 0.0), *steps_of(said))
    here = AtHand(
        word, supply.name, supply.unit, supply.pack, supply.price, supply.low, bought=known.bought, times=len(said),
        learned=learned,
    )  # fmt: skip
    base = known.base
    if base is None:
        return here
    pieces = since(spent, base.spent)
    used = sum(count * here.each(key) for key, count in pieces.items())
    there = round(base.amount + known.bought - used, 6)
    return AtHand(
        word, supply.name, supply.unit, supply.pack, supply.price, supply.low, base.at, base.amount, known.bought,
        round(used, 6), max(0.0, there), there < 0, base.what == "out" and not known.bought, len(said), learned,
    )  # fmt: skip
