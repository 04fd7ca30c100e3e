"""What to buy, in words: the same for the page, the run sheet and paper."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from runboard.plan.before.finding import Finding
from runboard.plan.supplies.at_hand import AtHand
from runboard.plan.supplies.boards import BoardsNeeded
from runboard.plan.supplies.learned import ENOUGH_PAIRS, ENOUGH_PIECES, LearnedUse
from runboard.plan.supplies.shopping import Row, Share, Shopping
from runboard.plan.supplies.wear import ChangeAhead, Wear
from runboard.shop.book import Book
from runboard.words.facts import dated, money_in_words, number_in_words, zone_of
from runboard.words.sentences import say, trays_in_words


def amount_in_words(amount: float, unit: str = "") -> str:
    """'120', '4.5 ml', '1250 ml': as fine as somebody can see."""
    places = 0 if abs(amount) >= 100 else 1 if abs(amount) >= 10 else 2
    number = number_in_words(round(amount, places)) if abs(amount) < 100_000 else f"{amount:.0f}"
    return f"{number}\u00a0{unit}" if unit else number


def price_in_words(book: Book, price: float) -> str:
    """A price in the shop's money, as its place writes it."""
    return money_in_words(price, book.money)


@dataclass(frozen=True)
class Line:
    """One thing on the list: what it is called, what to do, and what there is to know of it; ``known`` is how it is known what is
    there, ``link`` where it is changed."""

    name: str
    head: str
    more: tuple[str, ...] = ()
    link: str = ""
    known: str = ""


def row_in_words(book: Book, row: Row) -> Line:
    """One supply of the list."""
    return Line(row.here.name, _head(book, row), tuple(_more(row)), known=there_in_words(book, row.here))


def _head(book: Book, row: Row) -> str:
    unit = row.here.unit
    facts = {
        "needed": amount_in_words(row.needed, unit),
        "there": amount_in_words(row.here.there or 0.0, unit),
        "buy": amount_in_words(row.buy or 0.0, unit),
        "packets": row.packets or 0,
        "cost": price_in_words(book, row.cost) if row.cost is not None else "none",
    }
    return say("supplies", f"row {row.how}", facts)


def _more(row: Row) -> Iterator[str]:
    unit = row.here.unit
    if row.how == "short":
        facts = {"needed": row.needed, "there": row.here.there or 0.0, "missing": row.missing or 0.0}
        yield say("supplies", "missing", {name: amount_in_words(fact, unit) for name, fact in facts.items()})
    if row.how == "low":
        left = (row.here.there or 0.0) - row.needed
        facts = {"left": left, "low": row.here.low or 0.0}
        yield say("supplies", "low", {name: amount_in_words(fact, unit) for name, fact in facts.items()})
    for share in row.shares:
        if share.short_at:
            yield share_in_words(share)
    if row.for_cutters:
        yield say("supplies", "for cutters", {"count": row.for_cutters})


def share_in_words(share: Share) -> str:
    """Until which tray it lasts for a run."""
    return say("supplies", "lasts", {"run": share.name, **_lasting(share)})


def _lasting(share: Share) -> dict[str, str]:
    covered = trays_in_words(share.covered) if share.covered else "none"
    return {"covered": covered, "tray": share.short_at, "step": share.step}


def _reckoned(here: AtHand, share: Share) -> dict[str, Any]:
    """What a run needs, what is there, whose that is, and what is missing."""
    amounts = {"needed": share.needed, "there": here.there or 0.0, "taken": share.taken, "missing": share.missing}
    return {name: amount_in_words(amount, here.unit) for name, amount in amounts.items()} | {
        "before": list(share.before) or "none"
    }


def there_in_words(book: Book, here: AtHand) -> str:
    """How it is known what is there."""
    if here.is_out:
        return say("supplies", "out")
    if here.counted_at is None:
        return say("supplies", "uncounted")
    facts = {
        "counted": amount_in_words(here.counted, here.unit),
        "at": dated(here.counted_at, zone_of(book.time_zone)),
        "bought": amount_in_words(here.bought, here.unit) if here.bought else "none",
        "used": amount_in_words(here.used, here.unit) if here.used else "none",
        "over": "yes" if here.is_over else "no",
    }
    return say("supplies", "there", facts)


def step_names(book: Book) -> Mapping[tuple[str, str], tuple[str, str]]:
    """(product's name, step's name) by their keys."""
    return {
        (product.key, operation.key): (product.name, operation.name)
        for product in book.products
        for operation in product.operations
    }


def learned_in_words(book: Book, here: AtHand, learned: LearnedUse) -> str:
    """'You write 4 ml, it is 5.1 ml a piece, over 3 counts.'"""
    product, step = step_names(book).get((learned.product, learned.operation), (learned.product, learned.operation))
    facts = {
        "supply": here.name,
        "product": product,
        "step": step,
        "written": amount_in_words(learned.written, here.unit),
        "each": amount_in_words(learned.each, here.unit),
        "pairs": learned.pairs,
        "pieces": round(learned.pieces),
        "enough": "yes" if learned.is_enough else "no",
        "pairs_enough": ENOUGH_PAIRS,
        "pieces_enough": round(ENOUGH_PIECES),
    }
    return say("supplies", "learned", facts)


def wear_in_words(book: Book, wear: Wear) -> Line:
    """A cutter: how far it is worn, before which tray it is changed, what it lasted."""
    life = wear.cutter.life
    unit = wear.cutter.life_in
    facts: dict[str, Any] = {
        "used": amount_in_words(wear.used),
        "life": amount_in_words(life) if life is not None else "none",
        "left": amount_in_words(wear.left or 0.0),
        "in": unit,
        "worn": "unknown" if wear.is_unknown else "yes" if wear.is_worn else "no",
        "at": _since(book, wear.changed_at),
    }
    return Line(wear.cutter.name, say("supplies", "wear", facts), tuple(_more_of(book, wear)))


def _since(book: Book, moment: datetime | None) -> str:
    return dated(moment, zone_of(book.time_zone)) if moment is not None else "none"


def _more_of(book: Book, wear: Wear) -> Iterator[str]:
    for ahead in wear.ahead:
        yield change_in_words(ahead)
    if wear.lasted:
        mean = sum(wear.lasted) / len(wear.lasted)
        life = wear.cutter.life
        written = amount_in_words(life) if life is not None else "none"
        facts = {"mean": amount_in_words(mean), "count": len(wear.lasted), "written": written}
        yield say("supplies", "lasted", {**facts, "in": wear.cutter.life_in})


def change_in_words(ahead: ChangeAhead) -> str:
    """Before which trays of a run it is changed."""
    return say("supplies", "change before", {"run": ahead.name, "trays": trays_in_words(ahead.trays)})


def cutters_to_buy_in_words(book: Book, list_: Shopping) -> list[Line]:
    """New cutters that come out of no supply."""
    lines = []
    for wear in list_.cutters_to_buy:
        price = wear.cutter.price
        cost = price_in_words(book, price * wear.changes) if price is not None else "none"
        lines.append(Line(wear.cutter.name, say("supplies", "new cutters", {"count": wear.changes, "cost": cost})))
    return lines


def boards_in_words(book: Book, list_: Shopping) -> list[Line]:
    """The boards that are to be bought, and those that nobody can reckon."""
    short = [_board(book, board) for board in list_.boards if board.buy]
    none = [Line(one.product, say("supplies", f"boards {one.why}", {"short": one.short})) for one in list_.no_boards]
    return short + none


def boards_there_in_words(book: Book, list_: Shopping) -> list[Line]:
    """The boards of which there are enough."""
    return [_board(book, board) for board in list_.boards if not board.buy]


def _board(book: Book, board: BoardsNeeded) -> Line:
    cost = price_in_words(book, board.buy * board.price) if board.buy and board.price is not None else "none"
    facts = {"buy": board.buy, "use": board.use, "have": board.have, "cost": cost, "product": board.product}
    return Line(board.name, say("supplies", "boards", facts), link=f"/shop/stocks/{board.stock}")


def top_in_words(list_: Shopping, run: str | None = None) -> list[str]:
    """What runs out, of one run or of all that are open, for the top of a page; empty where everything suffices. On a run's own
    page its name is not said again."""
    found = []
    for row in list_.rows:
        for share in row.shares:
            if share.short_at and run in (None, share.run):
                named = {"supply": row.here.name, "run": "none" if run else share.name}
                facts = {**named, **_lasting(share), **_reckoned(row.here, share)}
                found.append(say("supplies", "top short", facts))
    for wear in list_.wear:
        for ahead in wear.to_mind(run):
            named = {"cutter": wear.cutter.name, "run": "none" if run else ahead.name}
            found.append(say("supplies", "top worn", {**named, "trays": trays_in_words(ahead.trays)}))
    return found


def to_buy_in_words(book: Book, list_: Shopping, run: str) -> list[str]:
    """What is to be bought before this run suffices, a line each: 'Hooks: Buy 2 packets (100), 19.80 EUR'. What other runs alone
    want is none of it."""
    mine = list_.only(run)
    lines = [row_in_words(book, row) for row in mine.to_buy]
    lines += cutters_to_buy_in_words(book, mine) + boards_in_words(book, mine)
    return [say("supplies", "line", {"name": line.name, "head": line.head}) for line in lines]


def found_facts(finding: Finding) -> dict[str, Any]:
    """The facts of a finding as its sentence takes them."""
    facts = dict(finding.facts)
    unit = facts.pop("unit", "")
    for name in ("there", "needed", "all", "taken", "missing"):
        if isinstance(facts.get(name), int | float):
            facts[name] = amount_in_words(facts[name], unit)
    if "covered" in facts:
        facts["covered"] = trays_in_words(facts["covered"]) if facts["covered"] else "none"
    if "trays" in facts:
        facts["trays"] = trays_in_words(facts["trays"])
    for name in {"left", "used", "life"} & facts.keys():
        facts[name] = amount_in_words(facts[name] or 0.0)
    return facts


def shopping_record(list_: Shopping) -> dict[str, Any]:
    """The list as JSON: what is needed, there, missing and to be bought, and what is worn."""
    return {
        "rows": [_row_record(row) for row in list_.rows if row.how != "idle"],
        "boards": [
            {"stock": board.stock, "name": board.name, "product": board.product, "use": board.use, "have": board.have,
             "buy": board.buy, "price": board.price}
            for board in list_.boards
        ],
        "cutters": [_wear_record(wear) for wear in list_.wear],
        "cost": list_.cost,
    }  # fmt: skip


def _row_record(row: Row) -> dict[str, Any]:
    return {
        "supply": row.here.name,
        "unit": row.here.unit,
        "how": row.how,
        "needed": row.needed,
        "there": row.here.there,
        "missing": row.missing,
        "packets": row.packets,
        "buy": row.buy,
        "cost": row.cost,
        "runs": [
            {"run": share.run, "needed": share.needed, "covered": list(share.covered), "short_at": share.short_at}
            for share in row.shares
        ],
    }


def _wear_record(wear: Wear) -> dict[str, Any]:
    return {
        "cutter": wear.cutter.name,
        "in": wear.cutter.life_in,
        "used": wear.used,
        "life": wear.cutter.life,
        "left": wear.left,
        "needed": wear.needed,
        "buy": wear.changes,
        "change_before": [{"run": ahead.run, "trays": list(ahead.trays)} for ahead in wear.ahead],
        "lasted": list(wear.lasted),
    }
