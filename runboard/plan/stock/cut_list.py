"""A cut list: so many of each length, out of boards that are as wide and thick as the pieces; the question and its answer."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated

from runboard.plan.before.kind import File, Kind, Told
from runboard.plan.stock.choose import Aim
from runboard.plan.stock.few_ways import in_few_ways
from runboard.plan.stock.lengths import Cuts, Cutting, Source, cut_to_length, used_of
from runboard.plan.stock.nest import A_MM, whole
from runboard.plan.stock.question import OWN
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.record import Length, Of
from runboard.shop.stocked import Stock

MOST_LENGTHS, MOST_OF_ONE = 30, 1000
# Money, or length where prices are not known, weighs so many times what is weighed after it.
_FIRST = 1000


@dataclass(frozen=True)
class CutLength:
    """So many pieces of one length."""

    length: Annotated[Length, Of(least=1)]
    pieces: Annotated[int, Of(least=1, most=MOST_OF_ONE)] = 1


@dataclass(frozen=True)
class LengthsQuestion:
    """Lengths out of the shop's boards, or out of one length that is typed in (``own_length``). ``trim`` comes off each end of a board,
    ``gap`` is what the blade takes at each cut. Lengths in mm."""

    lengths: Annotated[tuple[CutLength, ...], Of("What is to be cut.", least=1)]
    gap: Annotated[Length, Of("What the blade takes at a cut.")] = 0.0
    trim: Annotated[Length, Of("What comes off each end of a board.")] = 0.0
    width: Annotated[Length | None, Of("Boards are at least so wide.", least=1)] = None
    thickness: Annotated[Length | None, Of("And so thick.", least=0.1)] = None
    stocks: Annotated[tuple[str, ...], Of("None: all that are wide and thick enough.", refers="stock")] = ()
    own_length: Annotated[Length | None, Of("A board that is in no list.", least=1)] = None
    aim: Aim = "at hand"


@dataclass(frozen=True)
class Bar:
    """``count`` boards that are cut alike: the lengths in their order, and what is left, in mm."""

    stock: Stock
    count: int
    cuts: tuple[tuple[float, int], ...]
    rest: float


@dataclass(frozen=True)
class LengthsAnswer:
    """``counts`` has the boards of each kind: (how many are used, how many of them bought). ``missing`` are the pieces of a length
    that no board is there for. ``is_best`` is whether these boards cannot be cut in fewer ways or with a longer offcut (``few_ways``). ``above_bound`` is the share by which other boards could cost less at most, 0 where these are proved to be the best."""

    bars: tuple[Bar, ...]
    counts: tuple[tuple[Stock, int, int], ...]
    missing: tuple[tuple[float, int], ...]
    is_proved: bool
    is_best: bool
    above_bound: float
    used_length: float
    pieces_length: float

    @property
    def yield_share(self) -> float:
        return self.pieces_length / self.used_length if self.used_length else 0.0


def begin_lengths(book: Book, keys: Mapping[str, str]) -> LengthsQuestion:
    """One length, that of the product's piece where there is one."""
    product = book.product(keys.get("product", ""))
    if product is None or product.piece is None:
        return LengthsQuestion(())
    piece = product.piece
    return LengthsQuestion((CutLength(piece.length),), piece.gap, 0.0, piece.width, piece.thickness, piece.stocks)


def answer_lengths(book: Book, question: LengthsQuestion, file: File | None, told: Told) -> LengthsAnswer:
    """What to cut from which board. Refuses a list without lengths or with too many, a shop without boards where no length is typed in, and boards
    none of which suits."""
    wanted = _together(question)
    stocks = _boards(book, question, max(wanted))
    sizes = [whole(length + question.gap) for length in wanted]
    found = cut_to_length(sizes, [*wanted.values()], _sources(stocks, question))
    return _answer(found, [*wanted], sizes, {stock.key: stock for stock in stocks}, question)


def _together(question: LengthsQuestion) -> dict[float, int]:
    """How many of each length, the longest first."""
    found: dict[float, int] = {}
    for row in sorted(question.lengths, key=lambda row: -row.length):
        found[row.length] = found.get(row.length, 0) + row.pieces
    if not found:
        raise Refused("lengths none")
    if len(found) > MOST_LENGTHS:
        raise Refused("lengths too many", most=MOST_LENGTHS)
    return found


def _boards(book: Book, question: LengthsQuestion, longest: float) -> list[Stock]:
    if question.own_length is not None:
        found = [Stock(OWN, "", question.own_length, question.width or 1, question.thickness or 1)]
    elif not book.stocks:
        raise Refused("stock no boards")
    else:
        named = [stock for stock in book.stocks if stock.key in question.stocks]
        found = [
            stock
            for stock in named or book.stocks
            if stock.width >= (question.width or 0) and stock.thickness >= (question.thickness or 0)
        ]
    found = [replace(stock, have=min(stock.have, MOST_LENGTHS * MOST_OF_ONE)) for stock in found]
    if not any(stock.length - 2 * question.trim >= longest for stock in found):
        raise Refused("lengths too long", length=longest)
    return found


def _sources(stocks: list[Stock], question: LengthsQuestion) -> list[Source]:
    priced = all(stock.price is not None for stock in stocks if stock.for_sale or question.aim == "cost")
    found = []
    for stock in stocks:
        room = max(0, whole(stock.length - 2 * question.trim + question.gap))
        if stock.have:
            found.append(Source(stock.key, room, _cost(stock, question.aim, priced, bought=False), stock.have, False))
        if stock.for_sale:
            found.append(Source(stock.key, room, _cost(stock, question.aim, priced, bought=True), None, True))
    return found


def _cost(stock: Stock, aim: Aim, priced: bool, bought: bool) -> int:
    length = max(1, round(stock.length))
    money = round((stock.price or 0) * 100) if priced else length
    if aim == "waste":
        return length * _FIRST + (money if bought else 0)
    return (money if bought or aim == "cost" else 0) * _FIRST + length


def _answer(
    found: Cutting, lengths: list[float], sizes: list[int], stocks: Mapping[str, Stock], question: LengthsQuestion
) -> LengthsAnswer:
    ways = in_few_ways(sizes, found.boards)
    bars = tuple(
        Bar(stocks[key], times, _listed(lengths, cuts), _rest(stocks[key], lengths, cuts, question))
        for key, cuts, times in ways.boards
    )
    bought = {key: bought for key, (_, bought) in used_of(found.boards).items()}
    used = {key: sum(bar.count for bar in bars if bar.stock.key == key) for key in bought}
    return LengthsAnswer(
        bars,
        tuple((stocks[key], used[key], min(used[key], bought[key])) for key in bought if used[key]),
        _listed(lengths, found.missing),
        found.is_proved,
        ways.is_best,
        0.0 if found.is_proved or found.cost <= 0 else max(0.0, 1 - found.bound / found.cost),
        sum(bar.stock.length * bar.count for bar in bars),
        sum(length * count * bar.count for bar in bars for length, count in bar.cuts),
    )


def _rest(stock: Stock, lengths: list[float], cuts: Cuts, question: LengthsQuestion) -> float:
    """What is left of a board, in mm: n pieces that are sawn off take n cuts, one fewer only where the last just fits."""
    pieces = sum(length * count for length, count in zip(lengths, cuts, strict=True))
    rest = stock.length - 2 * question.trim - pieces - sum(cuts) * question.gap
    return max(0.0, whole(rest) / A_MM)


def _listed(lengths: list[float], counts: Cuts) -> tuple[tuple[float, int], ...]:
    return tuple((length, count) for length, count in zip(lengths, counts, strict=True) if count)


LENGTHS = Kind("lengths", LengthsQuestion, answer_lengths, begin_lengths, is_long=True)
