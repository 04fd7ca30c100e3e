"""The rows of one operation on a traveller."""

from collections.abc import Iterator, Mapping, Sequence

from runboard.cards.boxes import boxes_of, room_beside
from runboard.cards.measure import lines, width
from runboard.cards.model import CardWait, Care, Cell, FirstPiece, StepLine, Work
from runboard.cards.row import MOST_LINES, SMALL, STEP, STRIP, TEXT, TINY, Group, Row, row, text_rows

SIGN = 8.0
_DONE = 8
_STEP = 8  # a pencil needs 8 mm
_LEAST = 9  # a row with boxes: a pencil needs 8 mm
_CELL = 9
_MOST_HALF = 3  # lines of a caution that has another beside it
_MOST_NAME = 3  # lines of a name beside its boxes
_NUMBER = 5.5
_CHECK_BOX = 24.0
_LABEL = SMALL.points  # of the label in a cell


def group_of(work: Work, room: float, words: Mapping[str, str]) -> Group:
    """The rows of an operation in ``room`` mm of width. One that is done is told in a row a step."""
    rows = [part for step in work.steps for part in step_rows(step, room, words)]
    if not work.done:
        inner = room - STRIP
        rows += care_rows(work.care, inner)
        rows += how_rows(work.how, inner)
        rows += setup_rows(work.setup, inner)
        rows += check_rows(work.checks, inner, words)
        rows += place_rows(work.places, inner)
    if work.wait:
        rows += wait_rows(work.wait, room)
    return Group(work.steps[0].name, tuple(rows))


def step_rows(step: StepLine, room: float, words: Mapping[str, str]) -> list[Row]:
    """A step with its boxes. A name that would need a tall row stands above it, over the whole width."""
    inner, boxes = room_beside(room, words), boxes_of(step, words)
    if step.done and width(step.name, STEP.points, bold=True) <= inner:
        return [row("step", _DONE, core=True, step=step, boxes=boxes, name=(step.name,), where=())]
    name = lines(step.name, inner, STEP.points, bold=True)
    where = lines(step.where, inner, SMALL.points)
    beside = ""
    if name and len(where) == 1 and width(name[-1], STEP.points, True) + 2 + width(where[0], SMALL.points) <= inner:
        beside, where = where[0], ()
    above: list[Row] = []
    if len(name) > _MOST_NAME:
        above += text_rows(((step.name, True),), room - STRIP, STEP, "how", core=True)
        name, beside, where = (), "", where or ((beside,) if beside else ())
    if len(where) > _MOST_NAME:
        above += text_rows(((step.where, False),), room - STRIP, SMALL, core=True)
        where = ()
    height = max(_STEP, STEP.height(len(name)) + SMALL.height(len(where)) + 1.2)
    return [*above, row("step", height, core=True, step=step, boxes=boxes, name=name, beside=beside, where=where)]


def care_rows(care: Sequence[Care], room: float) -> list[Row]:
    """Cautions in the step's own type and in their order; two in a row where that is lower than one after the other."""
    found: list[Row] = []
    at = 0
    while at < len(care):
        alone = list(_wide(care[at], room))
        pair = care[at : at + 2]
        halves = [lines(care.text, room / 2 - SIGN * _signs(care) - 1.5, STEP.points) for care in pair]
        if len(pair) == 2 and max(len(half) for half in halves) <= _MOST_HALF:
            both = _pair(pair, halves)
            if both.height < sum(row.height for row in (*alone, *_wide(pair[1], room))):
                found.append(both)
                at += 2
                continue
        found += alone
        at += 1
    return found


def _pair(pair: Sequence[Care], halves: Sequence[tuple[str, ...]]) -> Row:
    cautions = [
        {"signs": care.signs, "lines": half, "pad": _signs(care)} for care, half in zip(pair, halves, strict=True)
    ]
    return row("care", _care_height(max(len(half) for half in halves), True), core=True, cautions=cautions)


def _signs(care: Care) -> int:
    """Places for signs before a caution: one at least, so that all texts begin alike."""
    return max(1, len(care.signs))


def _care_height(text: int, sign: bool) -> float:
    return max(STEP.height(text) + 0.6, SIGN if sign else 0)


def _wide(care: Care, room: float) -> Iterator[Row]:
    """A caution over the whole width; a very long one goes on in further rows."""
    text = lines(care.text, room - SIGN * _signs(care) - 1, STEP.points)
    for at in range(0, len(text), MOST_LINES):
        part = text[at : at + MOST_LINES]
        signs = care.signs if at == 0 else ()
        cautions = [{"signs": signs, "lines": part, "pad": _signs(care)}]
        yield row("care", _care_height(len(part), bool(signs)), core=True, cautions=cautions, wide=True)


def how_rows(how: Sequence[str], room: float) -> Iterator[Row]:
    """What to do, step by step, for somebody who never saw it."""
    for number, text in enumerate(how, 1):
        found = lines(text, room - _NUMBER, TEXT.points)
        for at in range(0, len(found), MOST_LINES):
            part = found[at : at + MOST_LINES]
            yield row("how", TEXT.height(len(part)) + 1, number=str(number) if at == 0 else "", lines=part)


def setup_rows(setup: Sequence[tuple[str, str]], room: float) -> list[Row]:
    """The setup sheet in one run of small text."""
    runs = [
        part
        for label, text in setup
        for part in ((label, True), (f"{text} ·" if (label, text) != setup[-1] else text, False))
    ]
    return text_rows(runs, room, SMALL, "small") if runs else []


def check_rows(checks: Sequence[FirstPiece], room: float, words: Mapping[str, str]) -> Iterator[Row]:
    """First-piece checks under the word for when they are due."""
    when = ""
    for check in checks:
        if check.when != when:
            when = check.when
            yield from text_rows(((when, True),), room, keep=True)
        yield from _check(check, room, words)


def _check(check: FirstPiece, room: float, words: Mapping[str, str]) -> Iterator[Row]:
    """A square to tick, and a box for what was measured with what it must lie between."""
    fits = width(check.limits, TINY.points) <= _CHECK_BOX - 2
    label = (check.limits if fits else "") or words["measured"]
    measure = check.measure if fits else f"{check.measure} ({check.limits})"
    inner = room - 7 - (_CHECK_BOX + 1 if measure else 0)
    text = [(line, False) for line in lines(check.text, inner, TEXT.points)]
    text += [(line, True) for line in lines(measure, inner, TEXT.points, bold=True)]
    for at in range(0, len(text), MOST_LINES):
        part = text[at : at + MOST_LINES]
        box = label if measure and at == 0 else ""
        yield row("check", max(_LEAST, TEXT.height(len(part)) + 1), lines=part, box=box, first=at == 0)


def place_rows(places: Sequence[Cell], room: float) -> Iterator[Row]:
    """The text of each position: five to one in a row, as long as the longest asks."""
    longest = max((max(width(cell.text, STEP.points, True), width(cell.label, _LABEL)) for cell in places), default=0)
    across = next((count for count in (5, 4, 3, 2) if longest <= room / count - 3), 1)
    for at in range(0, len(places), across):
        cells = [(cell.label, lines(cell.text, room - 9, STEP.points, True)) for cell in places[at : at + across]]
        if across > 1:
            yield row("places", _CELL, cells=cells, across=across)
            continue
        label, text = cells[0]
        for start in range(0, max(1, len(text)), MOST_LINES - 1):  # the label takes a line
            part = text[start : start + MOST_LINES - 1]
            height = max(_LEAST, STEP.height(len(part)) + 4)
            yield row("places", height, cells=[(label if start == 0 else "", part)], across=1)


def cell_rows(cells: Sequence[Cell], room: float) -> Iterator[Row]:
    """Moments in labelled cells, two or three in a row; one where a label is long."""
    longest = max((max(width(cell.label, _LABEL), width(cell.text, STEP.points, True)) for cell in cells), default=0)
    most = 3 if len(cells) in (3, 5) else 2
    across = next((count for count in range(most, 1, -1) if longest <= room / count - 3), 1)
    for at in range(0, len(cells), across):
        part = [
            (cell.label, lines(cell.text, room / across - 3, STEP.points, True)) for cell in cells[at : at + across]
        ]
        yield row("cells", _CELL, keep=at + across < len(cells), cells=part, across=across)


def wait_rows(wait: CardWait, room: float) -> Iterator[Row]:
    """What it is with where its times come from, then the moments; long texts in rows of their own."""
    inner = room - STRIP
    title = lines(wait.title, inner, STEP.points, bold=True)
    notes = [line for note in wait.notes for line in lines(note, inner, SMALL.points)]
    beside = notes if len(title) + len(notes) <= MOST_LINES else []
    if len(title) > MOST_LINES:
        yield from text_rows(((wait.title, True),), inner, STEP, "step", core=True)
        title = ()
    height = max(8, STEP.height(len(title)) + SMALL.height(len(beside)) + 1)
    if wait.title:
        yield row("wait", height, core=True, keep=bool(wait.cells), lines=title, notes=beside)
    yield from cell_rows(wait.cells, inner)
    if notes and not beside:
        for note in wait.notes:
            yield from text_rows(((note, False),), inner)
