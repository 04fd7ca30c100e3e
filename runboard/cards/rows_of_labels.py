"""The rows of a jig label, of a shelf label, of a packing slip, and of a run's summary."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from runboard.cards.heading import title_head
from runboard.cards.measure import Run, lines, width
from runboard.cards.model import JigLabel, PackingSlip, RunSheet, ShelfLabel, StepLine, TrayLine
from runboard.cards.row import MOST_LINES, SMALL, STEP, TEXT, Group, Row, Type, row, text_rows, title_row
from runboard.cards.rows_of_work import care_rows, cell_rows, check_rows, place_rows

_LOUD, _MOST_LOUD = Type(16, 7), 2
_UNTIL = (40, 30, 22, 14)
_LABEL = 34.0  # mm of a setup sheet's label column
_NUMBER = 22.0
_MARK = 6.0
_CODE = 27.0


def jig_head(card: JigLabel, room: float) -> tuple[dict[str, Any], int]:
    """Operation, station and product."""
    return title_head(card.operation, f"{card.station} · {card.product}", room)


def jig_groups(card: JigLabel, room: float, words: Mapping[str, str]) -> list[Group]:
    """Places of the jig, cautions, setup sheet, start list, first-piece checks."""
    groups = []
    if card.places:
        groups.append(Group(words["places"], tuple(place_rows(card.places, room))))
    if card.care:
        groups.append(Group(card.operation, tuple(care_rows(card.care, room))))
    if card.setup:
        groups.append(Group(card.operation, tuple(part for line in card.setup for part in _setup(line, room))))
    if card.start:
        points = [part for point in card.start for part in _points(point, room)]
        groups.append(Group(words["start-list"], (title_row(words["start-list"]), *points)))
    if card.checks:
        groups.append(Group(card.operation, tuple(check_rows(card.checks, room, words))))
    return groups


def _setup(line: tuple[str, str], room: float) -> list[Row]:
    """One line of the setup sheet: its label beside it, or above it where the label is long."""
    label, text = line
    if width(label, TEXT.points, bold=True) > _LABEL - 1:
        return [*text_rows(((label, True),), room, TEXT, "how"), *text_rows(((text, False),), room, STEP, "step")]
    found = lines(text, room - _LABEL, STEP.points)
    parts = [found[at : at + 6] for at in range(0, len(found), 6)] or [()]
    return [
        row("pair", max(8, STEP.height(len(part)) + 2), label=label if at == 0 else "", lines=part)
        for at, part in enumerate(parts)
    ]


def _points(point: str, room: float) -> list[Row]:
    found = lines(point, room - 6, TEXT.points)
    return [
        row("point", TEXT.height(len(part)) + 1, lines=part, first=at == 0)
        for at, part in ((at, found[at : at + 6]) for at in range(0, len(found), 6))
    ]


def shelf_groups(card: ShelfLabel, room: float, words: Mapping[str, str]) -> list[Group]:
    """Until when the tray stays where it is, what else the label says, and the cautions."""
    points = next((size for size in _UNTIL if width(card.until, size, bold=True) <= room), _UNTIL[-1])
    until = lines(card.until, room, points, bold=True)
    first: list[Row] = text_rows(((words["do-not-move"], True),), room, _LOUD, "loud", core=True)
    high = points * 0.42 * len(until) + 2 if until else 20
    first.append(row("until", high, core=True, lines=until, points=points))
    title = text_rows(((card.title, True),), room, STEP, "step", core=True, gap=2)
    cells = list(cell_rows(card.cells, room))
    notes = [part for note in card.notes for part in text_rows(((note, False),), room, SMALL)]
    return [
        Group(words["do-not-move"], (*first, *title, *cells, *notes)),
        Group(card.title, tuple(care_rows(card.care, room))),
    ]


# a packing slip


def slip_head(card: PackingSlip, room: float) -> tuple[dict[str, Any], int]:
    """For whom, and from which shop."""
    return title_head(card.whom, f"{card.title} · {card.shop}", room)


def slip_groups(card: PackingSlip, room: float, words: Mapping[str, str]) -> list[Group]:
    """How many of what, the text on it, the date and who packed it."""
    text = (title_row(words["slip-text"]), *_large(card.text, room)) if card.text else ()
    cells = tuple(cell_rows(card.cells, room))
    return [Group(card.title, (*_large(card.what, room), *text)), Group(card.title, cells)]


def _large(text: str, room: float) -> list[Row]:
    """A text as large as a loud line, unless it is long."""
    is_short = len(lines(text, room, _LOUD.points, bold=True)) <= _MOST_LOUD
    type_, style = (_LOUD, "loud") if is_short else (STEP, "step")
    return text_rows(((text, True),), room, type_, style, gap=2)


# a run's summary


def run_head(card: RunSheet, room: float) -> tuple[dict[str, Any], int]:
    """The run's name, product and figures."""
    said = [card.product, *card.about] if card.product != card.run else list(card.about)
    return title_head(card.run, " · ".join(said), room)


def run_groups(card: RunSheet, room: float, words: Mapping[str, str]) -> list[Group]:
    """What the numbers of the steps mean, the trays, then orders and supplies."""
    steps = [part for step in card.steps for part in _numbered(step)]
    trays = [part for tray in card.trays for part in _tray(tray, room)]
    groups = [Group(words["steps"], tuple(text_rows(steps, room, gap=2))), Group(words["trays"], tuple(trays))]
    orders = [part for order in card.orders for part in _three(order, room)]
    supplies = [part for name, amount in card.supplies for part in _three((amount, name, ""), room)]
    for title, rows in (("orders", orders), ("supplies", supplies)):
        if rows:
            groups.append(Group(words[title], (title_row(words[title]), *rows)))
    return groups


def _numbered(step: StepLine) -> tuple[Run, Run]:
    """A step's number and its symbols, which no line's end parts, then what it is and where."""
    mark, _, name = step.name.partition(" ")
    return (f"{step.number}\u00a0{mark}", True), (f"{name}, {step.where}", False)


def _tray(tray: TrayLine, room: float) -> Iterator[Row]:
    """A tray: its number, a mark for each step to tick, what comes next, its code; what is long in rows of its own."""
    inner = room - _NUMBER
    number = lines(tray.tray, _NUMBER - 2, STEP.points, bold=True)
    size = 22 if width(tray.tray, 22, bold=True) <= _NUMBER - 2 else 10
    a_line = max(1, int(inner / _MARK))
    marks = [
        [(at + start + 1, mark) for at, mark in enumerate(tray.marks[start : start + a_line])]
        for start in range(0, len(tray.marks), a_line)
    ]
    code = lines(tray.code, _CODE, TEXT.points, bold=True)
    said = f"{tray.next} · {tray.about}"
    text, below = lines(said, inner - _CODE - 2, SMALL.points), list[Row]()
    if len(text) > MOST_LINES:
        text, below = (), text_rows(((said, False),), room)
    if size == 10 and len(number) > 2:
        yield from text_rows(((tray.tray, True),), room, STEP, "step", gap=1, keep=True)
        number = ()
    tall = 7.0 * len(marks) + max(SMALL.height(len(text)), TEXT.height(len(code))) + 1
    yield row(
        "tray",
        max(tall, STEP.height(len(number)) + 1, 11),
        keep=bool(below),
        number=number,
        size=size,
        marks=marks,
        text=text,
        code=code,
    )
    yield from below


def _three(parts: Sequence[str], room: float) -> Iterator[Row]:
    """Three columns of text; long ones go on in further rows."""
    columns = (room * 0.2, room * 0.5, room * 0.3)
    texts = [
        lines(part, wide - 2, TEXT.points, bold=at == 0)
        for at, (part, wide) in enumerate(zip(parts, columns, strict=True))
    ]
    for at in range(0, max(1, *(len(text) for text in texts)), MOST_LINES):
        part = [text[at : at + MOST_LINES] for text in texts]
        yield row("three", max(8 if at == 0 else 0, TEXT.height(max(len(text) for text in part)) + 2), columns=part)
