"""What a good piece costs and should sell for, in words: every line of the arithmetic, the formulas, what may be otherwise."""

from collections.abc import Iterator, Mapping
from decimal import ROUND_CEILING, Decimal
from typing import Any

from runboard.plan.extras import chance_of_enough
from runboard.plan.money.cents import RATE, rounded
from runboard.plan.money.costs import CostLine, Costs
from runboard.plan.money.price import AtPrice, Paid, Priced, Quote
from runboard.plan.money.question import Price
from runboard.shop.book import Book
from runboard.shop.money import Money
from runboard.words.before.said import Said, Table
from runboard.words.facts import money_in_words, quantity_in_words
from runboard.words.sentences import say


def said(book: Book, question: Price, answer: Priced) -> Said:
    """The answer in words."""
    money = book.money
    return Said(
        head=_head(answer, money),
        lines=tuple(_lines(answer, money)),
        doubts=tuple(_doubts(answer, money)),
        tables=tuple(_tables(answer, money)),
        record=_record(answer, money),
    )


def cost_bars(book: Book, answer: Priced) -> list[tuple[str, float, str]]:
    """(kind of cost, its amount of a good piece, the amount in words), the largest first."""
    found: dict[str, Decimal] = {}
    for line in answer.costs.lines:
        found[line.of] = found.get(line.of, Decimal(0)) + line.each
    largest = sorted(found.items(), key=lambda one: -one[1])
    return [(_word("kind", of=of), float(each), money_in_words(each, book.money)) for of, each in largest if each]


def found_facts(book: Book, facts: Mapping[str, Any]) -> dict[str, Any]:
    """The facts of what is found of a run's money, as its sentence takes them: amounts as the shop writes them."""
    return {name: money_in_words(fact, book.money) if isinstance(fact, float) else fact for name, fact in facts.items()}


def _word(code: str, /, **facts: Any) -> str:
    return say("before-price", code, facts)


def _percent(share: float | Decimal, money: Money) -> str:
    return _word("percent", number=quantity_in_words(round(Decimal(str(share)) * 100, 1), money))


def _head(answer: Priced, money: Money) -> str:
    facts = {
        "cost": money_in_words(answer.costs.a_piece, money),
        "share": _percent(answer.asked.margin or 0, money),
        "of": answer.asked.margin_of,
    }
    if answer.meant is None:
        return _word("head without price", **facts)
    return _word("head", **facts, price=money_in_words(answer.meant.price, money))


def _lines(answer: Priced, money: Money) -> Iterator[str]:
    asked, costs = answer.asked, answer.costs
    yield _started(asked, costs, money)
    for name in ("margin", "markup"):
        if answer.at(name) is None:
            yield _word("no price", name=name)
    today = answer.at("today")
    if today is not None:
        yield _today(today, money)
    if answer.paid is not None:
        yield _paid(answer.paid, money, costs)
    loads = costs.loads
    if loads is not None and (loads.last or loads.boards not in (0, loads.loads)):
        boards = 0 if loads.boards == loads.loads else loads.boards
        yield _word("loads", **{**vars(loads), "boards": boards}, started=costs.started)


def _started(asked: Price, costs: Costs, money: Money) -> str:
    """How many are started, how surely they suffice, and that what comes good beyond them earns nothing here."""
    rate, average = costs.good_rate.rate, round(costs.started * costs.good_rate.rate)
    sure = "always" if rate >= 1 else "said" if asked.start else "asked"
    certainty = chance_of_enough(costs.started, costs.pieces, rate) if asked.start else asked.certainty
    counted: int | str = 0 if costs.good_rate.source == "guess" else costs.good_rate.pieces
    return _word(
        "started",
        pieces=costs.pieces,
        started=costs.started,
        sure=sure,
        certainty=_percent(certainty, money),
        rate=_percent(rate, money),
        counted="said" if asked.good_rate is not None else counted,
        average=average,
        spare=max(0, (costs.started if rate >= 1 else average) - costs.pieces),
    )


def _formula(name: str, at: AtPrice, answer: Priced, money: Money) -> str:
    """The price with the figures that make it."""
    asked, cost = answer.asked, answer.costs.a_piece
    return _word(
        name,
        share=_percent(asked.margin or 0, money),
        cost=money_in_words(cost, money),
        fee=money_in_words(asked.fee_each or 0, money),
        fees=_percent(asked.fee_share or 0, money),
        price=money_in_words(at.price, money),
    )


def _today(at: AtPrice, money: Money) -> str:
    facts = {
        "price": money_in_words(at.price, money),
        "fees": money_in_words(at.fees, money),
        "stays": money_in_words(abs(at.stays), money),
        "share": _percent(at.of_price, money),
        "hour": money_in_words(at.an_hour, money) if at.an_hour is not None else "none",
    }
    return _word("below cost" if at.stays < 0 else "today", **facts)


def _paid(paid: Paid, money: Money, costs: Costs) -> str:
    each = money_in_words(_few(paid.a_started), money, exact=True) if paid.saves else money_in_words(paid.each, money)
    facts = {"cost": money_in_words(paid.cost, money), "each": each, "by": "saves" if paid.saves else "stays"}
    if paid.pieces is None:
        return _word("never paid", **facts)
    return _word(
        "paid",
        **facts,
        pieces=quantity_in_words(paid.pieces.to_integral_value(ROUND_CEILING), money),
        exactly=quantity_in_words(rounded(paid.pieces, 1), money),
        runs=quantity_in_words(rounded(paid.runs or Decimal(0), 1), money),
        size=costs.pieces,
        started=costs.started,
        months="none" if paid.months is None else quantity_in_words(rounded(paid.months, 1), money),
    )


def _few(number: Decimal) -> Decimal:
    """To four decimals, or to four figures where it is less: as fine as a rate is shown."""
    return rounded(number, max(RATE, RATE - 1 - number.adjusted()))


def _doubts(answer: Priced, money: Money) -> Iterator[str]:
    costs = answer.costs
    if not money.currency:
        yield _word("no currency")
    if costs.no_hour_rate:
        yield _word("no hour rate")
    if costs.no_material:
        yield _word("no material", why=costs.no_material.replace(" ", "-"))
    for code, names in (
        ("unpriced", costs.unpriced),
        ("no rate", costs.no_rate),
        ("other units", costs.other_units),
    ):
        if names:
            yield _word(code, names=names)
    if any(line.known in ("guess", "partly") for line in costs.lines):
        yield _word("guessed")
    if costs.is_board_shared:
        yield _word("board shared")
    if answer.asked.product and costs.started > costs.pieces:
        yield _word("all to the end")
    if any(line.code == "watched" for line in costs.lines):
        yield _word("watched", share=_percent(answer.asked.watched, money))


# tables


def _tables(answer: Priced, money: Money) -> Iterator[Table]:
    """The quote first, as it is what one came for; what it is made of opens by its title."""
    yield _quotes(answer, money)
    yield _prices(answer, money)
    yield _costs(answer.costs, money)
    yield _by_count(answer, money)
    made = [at for at in answer.prices if at.name in ("margin", "markup")]
    if made:
        rows = tuple((_formula(at.name, at, answer, money),) for at in made)
        yield Table(_word("formulas"), _heads("formula"), rows, folded=True)


def _heads(*codes: str) -> tuple[str, ...]:
    return tuple(say("before-price-column", code) for code in codes)


def _costs(costs: Costs, money: Money) -> Table:
    rows = [
        (_called(line), _reckoned(line, money), money_in_words(line.amount, money), money_in_words(line.each, money))
        for line in costs.lines
    ]
    total = (_word("total"), "", money_in_words(costs.total, money), money_in_words(costs.a_piece, money))
    return Table(
        _word("costs"), _heads("what", "quantity", "run", "each"), (*rows, total), frozenset({1, 2, 3}), folded=True
    )


def _called(line: CostLine) -> str:
    """'Cut, hands, measured 3 times'"""
    known = "" if line.known in ("", "guess") else _word("known", known=line.known, times=line.times)
    return _word("line", code=line.code, name=line.name) + known


def _reckoned(line: CostLine, money: Money) -> str:
    """'0.267 h × €35.00'"""
    number = quantity_in_words(line.quantity, money)
    quantity = _word("quantity", number=number, unit=line.unit, word=_unit(line.unit))
    return _word("reckoned", quantity=quantity, rate=money_in_words(line.rate, money, exact=True))


def _unit(unit: str) -> str:
    """The units that have a word of their own; a supply's is as the shop wrote it."""
    return unit if unit in ("pieces", "boards", "worn", "run") else "own"


def _prices(answer: Priced, money: Money) -> Table:
    rows = [
        (
            _price_of(at, answer, money),
            money_in_words(at.price, money),
            money_in_words(at.fees, money),
            money_in_words(at.stays, money),
            _percent(at.of_price, money),
            "–" if at.an_hour is None else money_in_words(at.an_hour, money),
        )
        for at in answer.prices
    ]
    heads = _heads("price", "one", "fees", "stays", "shares", "hour")
    return Table(_word("prices"), heads, tuple(rows), frozenset(range(1, 6)))


def _price_of(at: AtPrice, answer: Priced, money: Money) -> str:
    return _word("price of", name=at.name, share=_percent(answer.asked.margin or 0, money))


def _quotes(answer: Priced, money: Money) -> Table:
    rows = [
        (
            _good_of(quote, money),
            *("–" if one is None else money_in_words(one, money) for one in (quote.price, quote.whole)),
        )
        for quote in answer.quotes
    ]
    title = _word("quotes", of=answer.asked.margin_of)
    return Table(title, _heads("pieces", "one", "all"), tuple(rows), frozenset(range(3)))


def _by_count(answer: Priced, money: Money) -> Table:
    rows = tuple((_good_of(quote, money), money_in_words(quote.a_piece, money)) for quote in answer.quotes)
    return Table(_word("by count"), _heads("pieces", "each"), rows, frozenset({0, 1}), folded=True)


def _good_of(quote: Quote, money: Money) -> str:
    return _word(
        "good of", pieces=quantity_in_words(quote.pieces, money), started=quantity_in_words(quote.started, money)
    )


# the record


def _record(answer: Priced, money: Money) -> dict[str, Any]:
    costs, paid = answer.costs, answer.paid
    return {
        "kind": "price",
        "currency": money.currency.upper(),
        "pieces": costs.pieces,
        "started": costs.started,
        "good_rate": costs.good_rate.rate,
        "cost": {
            "run": float(costs.total),
            "each": float(costs.a_piece),
            "lines": [_plain(line, "of") | {"what": line.of} for line in costs.lines],
        },
        "prices": [_plain(at) for at in answer.prices],
        "quotes": [_plain(quote) for quote in answer.quotes],
        "break_even": None if paid is None else _plain(paid),
    }


def _plain(thing: Any, *leave_out: str) -> dict[str, Any]:
    return {
        name: float(value) if isinstance(value, Decimal) else value
        for name, value in vars(thing).items()
        if name not in leave_out
    }
