"""The multiple-activity chart, sitting by sitting: drawn, and the same as a list.

Work is filled, watching hatched, idle empty; an ended load that waits is an open box, a walk a triangle, a wait a thin line. Services
are folded away, but for those that hold something up.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from string import ascii_lowercase

from runboard.charts.svg import Drawing
from runboard.plan.schedule.problem.nouns import Span
from runboard.plan.schedule.told.figures import Bar, ChartRow, ChartSitting, Figures, bands
from runboard.web.plan.drawing import PHONE, TABLET, Drawn, row_name
from runboard.words.facts import span_in_words
from runboard.words.plan import Names, span_of
from runboard.words.sentences import trays_in_words
from runboard.words.short_forms import Short, short_forms

MOST_BARS = 400  # on one page: what comes after is a press away
MOST_ACROSS = 4 * 60 * 2  # so long is one band across a tablet: four hours
# What bars are: what is in a key only where it is on the chart, beside what always is.
_ALWAYS, _SOMETIMES = ("work", "watch", "idle"), ("setup", "held", "walk", "wait", "goes-on")

# Which rows of a sitting are drawn.
Rows = Callable[[Sequence[ChartRow]], list[ChartRow]]


@dataclass(frozen=True)
class Sitting:
    """One stretch of work: drawn down, then across in as many bands as it needs, and as a list. ``after`` says what is left out
    before it; ``services`` are drawn one press away. ``is_open`` where it is of the first day; ``letters`` are those that stand alone
    in another, as in the key."""

    title: str
    drawings: tuple[Drawing, ...]
    said: tuple[str, ...]
    after: str = ""
    services: tuple[Drawing, ...] = ()
    is_open: bool = False
    letters: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True)
class Key:
    """What the chart's bars are, each with what is said of it, and each short form on them: (its letter where that stands alone
    in a sitting that is open, form, step)."""

    bars: tuple[tuple[str, str], ...] = ()
    shorts: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True)
class Chart:
    """As many sittings as a page has room for, and the key to them."""

    sittings: tuple[Sitting, ...] = ()
    key: Key = Key()


def chart(found: Figures, first: int, names: Names) -> Chart:
    """The chart of a plan from its sitting ``first`` on, as many as a page has room for: one at least."""
    parts, bars = list[ChartSitting](), 0
    for at in range(first, len(found.charts)):
        part = found.part(at)
        bars += part.bars
        if parts and bars > MOST_BARS:
            break
        parts.append(part)
    return chart_of(parts, first, names, found.whole.finish or None) if parts else Chart()


def chart_of(parts: Sequence[ChartSitting], first: int, names: Names, finish: int | None = None) -> Chart:
    """These sittings, of which the first is number ``first``, and the key to them. At ``finish`` all is done."""
    drawn = _Sittings(parts, first, names, short_forms(_steps(names)), finish)
    return Chart(tuple(drawn.sittings()), Key(tuple(drawn.key()), tuple(drawn.shorts())))


def _steps(names: Names) -> Iterator[str]:
    """Every step of the runs that are planned, in the order of their routes."""
    blocks = names.problem.blocks
    for run in dict.fromkeys(block.run for block in blocks):
        yield from (step.name for step in names.runs[run].route.steps) if run in names.runs else ()
    yield from (names.block_step(block.index) for block in blocks)


class _Sittings:
    """The sittings of one page, with what their key has to say."""

    def __init__(
        self,
        parts: Sequence[ChartSitting],
        first: int,
        names: Names,
        shorts: dict[str, Short],
        finish: int | None,
    ) -> None:
        self._parts, self._first, self._names, self._shorts = parts, first, names, shorts
        self._finish = finish
        self._letters = set[str]()

    def sittings(self) -> Iterator[Sitting]:
        """One after the other."""
        names, day = self._names, self._names.day(self._parts[0].span[0])
        for at, part in enumerate(self._parts, self._first):
            is_open = names.day(part.span[0]) == day
            drawings, letters = self._drawn(part, _shown, f"{at}", "chart-label")
            services = self._drawn(part, _folded, f"{at}s", "chart-services-label")[0] if _folded(part.rows) else ()
            if is_open:
                self._letters |= letters
            yield Sitting(
                _title(names, part.span),
                drawings,
                tuple(_said(part, names)),
                _break(part, names),
                services,
                is_open,
                () if is_open else tuple(self._told(letters)),
            )

    def _told(self, letters: set[str]) -> Iterator[tuple[str, str, str]]:
        """The letters of another day that the key at the top does not have."""
        for name, short in self._shorts.items():
            if short.letter in letters - self._letters:
                yield short.letter, short.form, name

    def _drawn(self, part: ChartSitting, rows: Rows, key: str, label: str) -> tuple[tuple[Drawing, ...], set[str]]:
        """Down for a phone, and across in bands for a tablet; and the letters that stand alone on them."""
        found, letters = [], set[str]()
        across = bands(part, MOST_ACROSS) if part.span[1] - part.span[0] > MOST_ACROSS else (part,)
        for at, (way, band) in enumerate([(PHONE, part), *((TABLET, band) for band in across)]):
            said = self._names.say(label, **_when(self._names, band.span))
            one = Drawn(
                rows(band.rows),
                band.span,
                self._names,
                self._shorts,
                (way, f"{key}{ascii_lowercase[at]}", said),
                self._finish,
            )
            letters |= one.letters
            found.append(one.drawing)
        return tuple(found), letters

    def _bars(self) -> Iterator[Bar]:
        return (bar for part in self._parts for row in part.rows for bar in row.bars)

    def key(self) -> Iterator[tuple[str, str]]:
        """What is on the chart."""
        found = {"setup" if bar.part == "setup" else bar.kind for bar in self._bars()}
        if any(bar.since is not None or bar.until is not None for bar in self._bars()):
            found.add("goes-on")
        for kind in (*_ALWAYS, *(kind for kind in _SOMETIMES if kind in found)):
            yield kind, self._names.say(f"chart-key-{kind}")

    def shorts(self) -> Iterator[tuple[str, str, str]]:
        """The steps that are on the chart, in the order of their route."""
        here = {self._names.block_step(bar.block) for bar in self._bars() if bar.block >= 0}
        for name, short in self._shorts.items():
            if name in here:
                yield short.letter if short.letter in self._letters else "", short.form, name


def _shown(rows: Sequence[ChartRow]) -> list[ChartRow]:
    """People, whoever has work or not, the stations that have any, and what holds something up."""
    return [row for row in rows if row.kind == "person" or (row.bars and (row.kind == "station" or row.holds))]


def _folded(rows: Sequence[ChartRow]) -> list[ChartRow]:
    return [row for row in rows if row.kind == "service" and not row.holds and row.bars]


def opens_on(found: Figures, at: int, names: Names) -> str:
    """The day of a sitting."""
    return names.day(found.part(at).span[0])


def _title(names: Names, span: Span) -> str:
    said = names.say("sitting", **_when(names, span))
    return said[:1].upper() + said[1:]


def _when(names: Names, span: Span) -> dict[str, str]:
    return {"day": names.day(span[0]), "from": names.clock(span[0]), "to": names.clock(span[1])}


# the same as a list


def _said(part: ChartSitting, names: Names) -> Iterator[str]:
    """Who does what, one after the other, each from its own beginning to its own end."""
    lines = [
        (bar.start, bar.end, since, until, text)
        for row in part.rows
        for bar in row.bars
        if (text := _line_said(row, bar, names))
        for since, until in [_real(bar)]
    ]
    for _, _, since, until, text in sorted(lines):
        yield f"{_clock(names, since, part.span)}–{_clock(names, until, part.span)} {text}"


def _real(bar: Bar) -> Span:
    """From when to when it really goes, wherever its sitting cuts it."""
    return bar.start if bar.since is None else bar.since, bar.end if bar.until is None else bar.until


def _clock(names: Names, tick: int, span: Span) -> str:
    """With its day where that is another than the sitting's."""
    is_near = span[0] <= tick <= span[1] or names.day(tick) == names.day(span[0])
    return names.clock(tick) if is_near else names.short(tick)


def _line_said(row: ChartRow, bar: Bar, names: Names) -> str:
    facts = {}
    if bar.block >= 0:
        trays = trays_in_words(names.problem.blocks[bar.block].trays)
        facts = {"step": names.block_step(bar.block), "trays": trays}
    if row.kind == "person":
        who = row_name(names, row)
        if bar.kind == "walk":
            return names.say("does-walk", who=who, room=names.room(bar.room))
        return names.say(f"does-{bar.part}", who=who, **facts)
    if row.kind != "station":
        return ""
    if bar.kind == "work" and bar.part == "machine" and names.problem.blocks[bar.block].watched is None:
        return names.say("does-runs", station=row_name(names, row), **facts)
    if bar.kind in ("wait", "held"):
        return names.say(f"does-{bar.kind}", until=names.tick(_real(bar)[1]), **facts)
    return ""


def _break(part: ChartSitting, names: Names) -> str:
    """What is left out between two stretches of work; '' before the first."""
    if part.gap is None:
        return ""
    trays = dict.fromkeys(tray for block in part.waiting for tray in names.problem.blocks[block].trays)
    said, span = trays_in_words(trays), span_in_words(span_of(part.gap[1] - part.gap[0]))
    return names.say("break", span=span, count=len(trays), trays=said)
