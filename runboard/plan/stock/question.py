"""Pieces from boards: the question, and what answers it."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Annotated, Literal

from runboard.plan.before.kind import File
from runboard.plan.outlines.unclear import Unclear
from runboard.plan.stock.choose import Aim
from runboard.plan.stock.need import StockNeed
from runboard.plan.stock.suit import Unsuited
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.record import Length, Of
from runboard.shop.stocked import Grain, Piece, Stock

MOST_PIECES = 20_000
OWN = "own"  # the key of a board whose size was typed in


@dataclass(frozen=True)
class StockQuestion:
    """So many pieces of one size, out of the shop's boards or out of one size that is typed in (``own_…``). A piece's size is
    that of a drawing's box where there is one, else as typed, else the product's. Lengths in mm."""

    pieces: Annotated[int, Of("How many to start.", least=1, most=MOST_PIECES)] = 1
    product: Annotated[str | None, Of("What is made.", refers="product")] = None
    length: Annotated[Length | None, Of("Along the grain.", least=1)] = None
    width: Annotated[Length | None, Of(least=1)] = None
    thickness: Annotated[Length | None, Of(least=0.1)] = None
    gap: Annotated[Length, Of("What the cutter takes between two pieces.")] = 0.0
    margin: Annotated[Length, Of("What stays free at the edge of the board.")] = 0.0
    tabs: Annotated[Length, Of("What each piece needs around it for tabs.")] = 0.0
    grain: Grain = "length"
    wood: Annotated[str, Of("None: whatever wood a board is of.", most=200)] = ""
    stocks: Annotated[tuple[str, ...], Of("None: all that suit.", refers="stock")] = ()
    own_length: Annotated[Length | None, Of("A size that is in no list.", least=1)] = None
    own_width: Annotated[Length | None, Of(least=1)] = None
    own_thickness: Annotated[Length | None, Of(least=0.1)] = None
    own_grain: Grain = "length"
    aim: Aim = "at hand"
    thorough: Annotated[bool, Of("Look longer for one piece more on a board.")] = False


Proof = Literal["bound", "search", ""]


@dataclass(frozen=True)
class Place:
    """Where a piece lies on its board: its corner, its size along and across the board, in mm. ``turned`` is across."""

    x: float
    y: float
    length: float
    width: float
    turned: bool


@dataclass(frozen=True)
class Board:
    """One kind of board and its layout. ``use`` of it are used, none where another was chosen. No layout has more than
    ``bound`` pieces; ``proof`` says what shows that this one has the most: the bound alone, a search, or nothing yet."""

    stock: Stock
    use: int
    buy: int
    places: tuple[Place, ...]
    bound: int
    proof: Proof

    @property
    def each(self) -> int:
        return len(self.places)

    @property
    def yield_share(self) -> float:
        """The pieces' area of a whole board's."""
        area = sum(place.length * place.width for place in self.places)
        return area / (self.stock.length * self.stock.width)


@dataclass(frozen=True)
class StockAnswer:
    """``boards`` are all that suit, used ones first; ``fill`` is how much of its box a drawing's outline fills, None where no
    line of it is closed; ``has_thickness`` is False where nobody said the piece's; ``by_price`` whether money was counted."""

    piece: Piece
    pieces: int
    need: StockNeed
    boards: tuple[Board, ...]
    unsuited: tuple[Unsuited, ...]
    aim: Aim
    by_price: bool
    has_thickness: bool
    fill: float | None = None
    unclear: tuple[Unclear, ...] = ()

    @property
    def used(self) -> tuple[Board, ...]:
        return tuple(board for board in self.boards if board.use)


def begin(book: Book, keys: Mapping[str, str]) -> StockQuestion:
    """A question about a product (``keys['product']``) and so many pieces of it (``keys['pieces']``), as the book has it."""
    product = book.product(keys.get("product", ""))
    pieces = int(keys["pieces"]) if keys.get("pieces", "").isdecimal() else 1
    question = StockQuestion(pieces=min(max(1, pieces), MOST_PIECES))
    if product is None:
        return question
    question = replace(question, product=product.key, wood=product.wood)
    return question if product.piece is None else with_piece(question, product.piece)


def with_piece(question: StockQuestion, piece: Piece) -> StockQuestion:
    """The question with all that a product says of its piece."""
    return replace(
        question, length=piece.length, width=piece.width, thickness=piece.thickness, gap=piece.gap, margin=piece.margin,
        tabs=piece.tabs, grain=piece.grain, stocks=question.stocks or piece.stocks,
    )  # fmt: skip


@dataclass(frozen=True)
class Asked:
    """The piece that is asked about, its thickness 0 where nobody says it; of a drawing, how much of its box the outline fills
    and what in it is not followed."""

    piece: Piece
    fill: float | None = None
    unclear: tuple[Unclear, ...] = ()


def piece_of(book: Book, question: StockQuestion, file: File | None) -> Asked:
    """What is asked about. Refused 'stock no piece' where nobody says one, 'stock empty drawing', and as a drawing's reader does."""
    drawn = Asked(_NO_PIECE)
    if file is not None:
        drawn = _drawn(file)
        question = replace(question, length=drawn.piece.length, width=drawn.piece.width)
    elif question.length is None and question.width is None:
        product = book.product(question.product or "")
        if product is not None and product.piece is not None:
            question = with_piece(question, product.piece)
    if question.length is None or question.width is None:
        raise Refused("stock no piece")
    piece = Piece(
        question.length, question.width, question.thickness or 0.0, question.gap, question.margin, question.tabs,
        question.grain, question.stocks,
    )  # fmt: skip
    return replace(drawn, piece=piece)


_NO_PIECE = Piece(0, 0, 0)


def _drawn(file: File) -> Asked:
    """A piece as large as a drawing's box."""
    from runboard.plan.outlines.box import box_of, read_drawing

    shapes = read_drawing(file.name, file.content)
    box = box_of(shapes)
    if box is None or box.length < 1 or box.width < 1:
        raise Refused("stock empty drawing", name=file.name)
    return Asked(Piece(round(box.length, 3), round(box.width, 3), 0), box.fill, tuple(shapes.unclear))
