"""How many of which board, each with its layout: laid at once, searched where one more may fit, then chosen."""

from collections.abc import Mapping, Sequence

from runboard.plan.before.kind import File, Told
from runboard.plan.stock.bounds import most
from runboard.plan.stock.choose import Chosen, chosen
from runboard.plan.stock.need import offers_of, summed
from runboard.plan.stock.nest import A_MM, Nest, Spot
from runboard.plan.stock.question import OWN, Board, Place, Proof, StockAnswer, StockQuestion, piece_of
from runboard.plan.stock.search import Found, searched
from runboard.plan.stock.suit import Unsuited, laid_at_once, nest_of, sorted_out, why_not
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.stocked import Piece, Stock

# What all searches of an answer may take together, in the solver's deterministic seconds.
_EFFORT, _THOROUGH = 0.8, 30.0


def answer(book: Book, question: StockQuestion, file: File | None, told: Told) -> StockAnswer:
    """The boards for the pieces that are asked about. Refuses a piece without a size, a shop without boards where none is typed
    in, and a drawing that cannot be read."""
    asked = piece_of(book, question, file)
    piece = asked.piece
    stocks, unsuited = _boards_for(book, question, piece)
    nests = {stock.key: nest_of(stock, piece) for stock in stocks}
    found = _layouts(nests, _THOROUGH if question.thorough else _EFFORT, told)
    offers = offers_of(stocks, {key: len(one.spots) for key, one in found.items()})
    picked = chosen(offers, question.pieces, question.aim) if stocks else Chosen((), question.pieces, by_price=False)
    need = summed(stocks, picked, piece, question.pieces)
    takes = {take.offer.key: (take.use, take.buy) for take in picked.takes}
    boards = [
        _board(stock, piece, nests[stock.key], found[stock.key], takes.get(stock.key, (0, 0))) for stock in stocks
    ]
    return StockAnswer(
        piece,
        question.pieces,
        need,
        tuple(sorted(boards, key=lambda board: -board.use * board.each)),
        tuple(unsuited),
        question.aim,
        picked.by_price and bool(picked.takes),
        bool(piece.thickness),
        asked.fill,
        asked.unclear,
    )


def is_quick(book: Book, question: StockQuestion) -> bool:
    """Whether all pieces lie along the grain: then the grid has the most, and nothing is searched."""
    try:
        piece = piece_of(book, question, None).piece
        return not any(nest_of(stock, piece).turned for stock in _boards_for(book, question, piece)[0])
    except Refused:
        return True


def _boards_for(book: Book, question: StockQuestion, piece: Piece) -> tuple[list[Stock], list[Unsuited]]:
    if question.own_length is not None and question.own_width is not None:
        own = Stock(
            OWN, "", question.own_length, question.own_width, question.own_thickness or piece.thickness,
            grain=question.own_grain,
        )  # fmt: skip
        why = why_not(own, piece)
        return ([], [Unsuited(own, why)]) if why else ([own], [])
    if not book.stocks:
        raise Refused("stock no boards")
    return sorted_out(book, piece, question.wood)


def _layouts(nests: Mapping[str, Nest], effort: float, told: Told) -> dict[str, Found]:
    """A layout of each, searched on where the bound leaves room; what one search spares is for the others."""
    quick = {nest: laid_at_once(nest) for nest in nests.values()}
    open_ones = [nest for nest, spots in quick.items() if len(spots) < most(nest)]
    found = {nest: Found(spots, most(nest)) for nest, spots in quick.items()}
    for at, nest in enumerate(open_ones):
        told(at, len(open_ones))
        found[nest] = searched(nest, quick[nest], effort / len(open_ones))
    return {key: found[nest] for key, nest in nests.items()}


def _board(stock: Stock, piece: Piece, nest: Nest, found: Found, take: tuple[int, int]) -> Board:
    proof: Proof = ("search" if found.searched else "bound") if found.is_proved else ""
    return Board(stock, *take, places_of(found.spots, piece), found.bound, proof)


def places_of(spots: Sequence[Spot], piece: Piece) -> tuple[Place, ...]:
    """The pieces on their board in mm, row by row."""
    edge = piece.margin + piece.tabs
    return tuple(
        Place(
            edge + spot.x / A_MM,
            edge + spot.y / A_MM,
            piece.width if spot.turned else piece.length,
            piece.length if spot.turned else piece.width,
            spot.turned,
        )
        for spot in sorted(spots, key=lambda spot: (spot.y, spot.x))
    )
