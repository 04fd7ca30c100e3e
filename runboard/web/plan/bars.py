"""The bars of one row of the chart: what is done at once in lanes beside each other, what goes on beyond the sitting with its end
open, and on every bar what is done in it.

Where bars of one step lie one after the other and none has room for its trays, they are one bar for all of them.
"""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from runboard.charts.labels import LINE, Label, ground, is_told, lanes, on_bar, wide
from runboard.charts.svg import Box, Drawing, Stroke, Word
from runboard.plan.schedule.told.figures import Bar, ChartRow
from runboard.words.plan import Names
from runboard.words.sentences import tray_numbers
from runboard.words.short_forms import Short

# Hands lie before watching, and what waits to be unloaded behind both.
_ORDER = {"work": 0, "watch": 1, "held": 2}
_WORDS = {"work": "on-work", "watch": "on-watch", "held": "on-held"}
RESTS = 5.0  # kept free across for the line of what dries or rests
# Less than this is no distance; what is no farther from its like is told by what stands on that.
TOUCHING, NEAR = 0.6, 8.0

# From where to where.
Along = tuple[float, float]


@dataclass(frozen=True)
class _Piece:
    """One bar as it lies: from where to where along, where across and how wide."""

    start: float
    end: float
    across: float
    size: float
    bar: Bar
    step: str
    trays: tuple[str, ...]
    short: Short

    @cached_property
    def label(self) -> Label:
        return Label(self.short.form, tray_numbers(self.trays), self.short.letter)

    @property
    def lane(self) -> Along:
        return self.across, self.size

    def touches(self, after: "_Piece") -> bool:
        return self.lane == after.lane and self.step == after.step and after.start - self.end < TOUCHING

    def is_told_by(self, other: "_Piece") -> bool:
        """Whether what stands on the other, which is itself or lies close to it, is said of both."""
        apart = max(self.start, other.start) - min(self.end, other.end)
        return self.step == other.step and self.is_beside(other) and apart < NEAR

    def goes_on_in(self, after: "_Piece") -> bool:
        """Whether both are the same kind of bar, which touch."""
        kinds = [(piece.bar.kind, piece.bar.part == "setup") for piece in (self, after)]
        return kinds[0] == kinds[1] and self.touches(after)

    def is_beside(self, other: "_Piece") -> bool:
        return _meet((self.across, self.across + self.size), (other.across, other.across + other.size))


class RowBars:
    """A row's bars, laid out and drawn; it lies from where to where along, and across with its width. ``letters`` are those that
    stand alone on a bar."""

    def __init__(
        self,
        row: ChartRow,
        names: Names,
        shorts: dict[str, Short],
        lies: tuple[Along, Along],
        along: Callable[[float], float],
        *,
        down: bool,
    ) -> None:
        self.row, self.names, self.shorts, self.down, self._along = row, names, shorts, down, along
        self.length, (self.across, self.whole) = lies
        self.size = self.whole - RESTS if any(bar.kind == "wait" for bar in row.bars) else self.whole
        self.letters = set[str]()

    def draw(self, drawing: Drawing) -> None:
        """Put them on the drawing."""
        pieces = self._joined(self._pieces())
        walks = [(self._along(bar.start), self._along(bar.end)) for bar in self.row.bars if bar.kind == "walk"]
        for piece in pieces:
            kind = "setup" if piece.bar.part == "setup" else piece.bar.kind
            drawing.boxes.append(self._box(piece.start, piece.end, piece.across, piece.size, kind))
            drawing.lines += self._open_ends(piece.bar, piece.across + piece.size / 2)
        for start, end in walks:
            drawing.marks.append(self._triangle(start, end))
        words = self._words(pieces, walks)
        drawing.boxes += [ground(word) for word in words if word.kind.startswith("on-watch")]
        drawing.words += words
        for bar in (bar for bar in self.row.bars if bar.kind == "drawn"):
            size = self.whole * bar.share
            drawing.boxes.append(self._box(self._along(bar.start), self._along(bar.end), self.across, size, "drawn"))
            drawing.lines += self._open_ends(bar, self.across + size / 2)
        for bar in _one_after_the_other(bar for bar in self.row.bars if bar.kind == "wait"):
            at = self.across + self.whole - 2
            drawing.lines.append(self._stroke(self._along(bar.start), at, self._along(bar.end), at, "wait"))
            drawing.lines += self._open_ends(bar, at - 1)

    # where they lie

    def _pieces(self) -> Iterator[_Piece]:
        bars = sorted(
            (bar for bar in self.row.bars if bar.kind in _ORDER), key=lambda bar: (_ORDER[bar.kind], bar.start)
        )
        for bar, (lane, many) in zip(bars, lanes([(bar.start, bar.end) for bar in bars]), strict=True):
            size = self.size / many
            across = round(self.across + lane * size, 2)
            trays = self.names.problem.blocks[bar.block].trays
            start, step = self._along(bar.start), self.names.block_step(bar.block)
            end = max(start + 1, self._along(bar.end))
            yield _Piece(start, end, across, round(size, 2), bar, step, trays, self.shorts[step])

    def _joined(self, pieces: Iterable[_Piece]) -> list[_Piece]:
        """The parts of one load as one, then those that are too small for their trays as one with such as they touch."""
        ordered = sorted(pieces, key=lambda piece: (*piece.lane, piece.start))
        loads = _joined(ordered, lambda one, after: one.bar.block == after.bar.block)
        small = {piece.bar for piece in loads if not self._is_told(piece)}
        return _joined(loads, lambda one, after: one.bar in small and after.bar in small)

    # what stands on them

    def _words(self, pieces: list[_Piece], walks: list[Along]) -> list[Word]:
        """Those on the bars; where bars of one step that touch have none at all, what is done stands beside them."""
        told = [on_bar(self._inside(piece), piece.label, _WORDS[piece.bar.kind]) for piece in pieces]
        found = [word for words in told for word in words]
        said = [piece for piece, words in zip(pieces, told, strict=True) if words]
        for group in _groups(pieces):
            if not any(piece.is_told_by(other) for piece in group for other in said):
                found += self._beside(group, pieces, walks)
        self.letters |= {word.text for word in found if "letter" in word.kind}
        return found

    def _beside(self, group: Sequence[_Piece], pieces: Sequence[_Piece], walks: list[Along]) -> list[Word]:
        """Behind bars that are too small, or before them, where nothing else lies; that place is taken from then on."""
        first, last = group[0], group[-1]
        taken = [*walks, *((piece.start, piece.end) for piece in pieces if piece.is_beside(first))]
        short = first.short
        for text in (short.form, short.letter):
            long = LINE if self.down else wide(text) + 4
            for start in (last.end, first.start - long):
                place = (start, start + long)
                if self._is_free(place, taken):
                    box = self._box(*place, first.across, first.size, "")
                    if words := on_bar(box, Label(text, "", short.letter), "beside"):
                        walks.append(place)
                        return words
        return []

    def _is_free(self, place: Along, taken: Iterable[Along]) -> bool:
        is_within = self.length[0] <= place[0] + TOUCHING and place[1] <= self.length[1] + TOUCHING
        return is_within and not any(_meet(place, other) for other in taken)

    def _is_told(self, piece: _Piece) -> bool:
        return is_told(self._inside(piece), piece.label)

    # as they lie on the page

    def _inside(self, piece: _Piece) -> Box:
        return self._box(piece.start, piece.end, *piece.lane, "")

    def _box(self, start: float, end: float, across: float, size: float, kind: str) -> Box:
        x, y = self._turned(start, across)
        width, height = self._turned(max(1.0, end - start), size)
        return Box(x, y, width, height, kind)

    def _turned(self, along: float, across: float) -> tuple[float, float]:
        x, y = (across, along) if self.down else (along, across)
        return round(x, 1), round(y, 1)

    def _stroke(self, start: float, across: float, end: float, across2: float, kind: str) -> Stroke:
        return Stroke(*self._turned(start, across), *self._turned(end, across2), kind)

    def _open_ends(self, bar: Bar, across: float) -> Iterator[Stroke]:
        """An arrow where it goes on beyond the sitting, and one where it comes from before."""
        tips = [self.length[1] + 9] if bar.until is not None else []
        tips += [self.length[0] - 2] if bar.since is not None else []
        for tip in tips:
            for side in (-5, 5):
                yield self._stroke(tip - 6, across + side, tip, across, "goes-on")

    def _triangle(self, start: float, end: float) -> str:
        tip = max(end, start + 5)
        points = ((tip - 5, self.across), (tip - 5, self.across + self.whole), (tip, self.across + self.whole / 2))
        return " ".join("{:g},{:g}".format(*self._turned(*one)) for one in points)


def _joined(pieces: Sequence[_Piece], are_one: Callable[[_Piece, _Piece], bool]) -> list[_Piece]:
    found = list[_Piece]()
    for piece in pieces:
        last = found[-1] if found else None
        if last is not None and last.goes_on_in(piece) and are_one(last, piece):
            trays = tuple(dict.fromkeys((*last.trays, *piece.trays)))
            found[-1] = replace(last, end=piece.end, trays=trays, bar=replace(piece.bar, since=last.bar.since))
        else:
            found.append(piece)
    return found


def _meet(one: Along, other: Along) -> bool:
    return one[0] < other[1] - TOUCHING and other[0] < one[1] - TOUCHING


def _groups(pieces: Sequence[_Piece]) -> Iterator[Sequence[_Piece]]:
    """Pieces of one step that touch."""
    first = 0
    for at in range(1, len(pieces) + 1):
        if at == len(pieces) or not pieces[at - 1].touches(pieces[at]):
            yield pieces[first:at]
            first = at


def _one_after_the_other(bars: Iterable[Bar]) -> Iterator[Bar]:
    """What dries or rests at once as one."""
    last: Bar | None = None
    for bar in sorted(bars, key=lambda bar: bar.start):
        if last is not None and bar.start <= last.end:
            until = max((at for at in (last.until, bar.until) if at is not None), default=None)
            last = replace(last, end=max(last.end, bar.end), until=until, since=last.since or bar.since)
            continue
        if last is not None:
            yield last
        last = bar
    if last is not None:
        yield last
