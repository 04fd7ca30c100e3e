"""The rows of a run's summary."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from runboard.cards.heading import title_head
from runboard.cards.measure import lines, width
from runboard.cards.model import RunSheet, TrayLine
from runboard.cards.row import MOST_LINES, SMALL, STEP, TEXT, Group, Row, row, text_rows, title_row

_NUMBER = 22.0
_MARK = 6.0
_CODE = 27.0


def run_head(card: RunSheet, room: float) -> tuple[dict[str, Any], int]:
    """The run's name, product and figures."""
    said = [card.product, *card.about] if card.product != card.run else list(card.about)
    return title_head(card.run, " · ".join(said), room)


def run_groups(card: RunSheet, room: float, words: Mapping[str, str]) -> list[Group]:
    """What the numbers of the steps mean, the trays, then orders and supplies."""
    steps = [part for one in card.steps for part in ((str(one.number), True), (f"{one.name}, {one.where}", False))]
    trays = [part for one in card.trays for part in _tray(one, room)]
    groups = [Group(words["steps"], tuple(text_rows(steps, room, gap=2))), Group(words["trays"], tuple(trays))]
    orders = [part for one in card.orders for part in _three(one, room)]
    supplies = [part for name, amount in card.supplies for part in _three((amount, name, ""), room)]
    for title, rows in (("orders", orders), ("supplies", supplies)):
        if rows:
            groups.append(Group(words[title], (title_row(words[title]), *rows)))
    return groups


def _tray(one: TrayLine, room: float) -> Iterator[Row]:
    """A tray: its number, a mark for each step to tick, what comes next, its code; what is long in rows of its own."""
    inner = room - _NUMBER
    number = lines(one.tray, _NUMBER - 2, STEP.points, bold=True)
    size = 22 if width(one.tray, 22, bold=True) <= _NUMBER - 2 else 10
    a_line = max(1, int(inner / _MARK))
    marks = [
        [(at + start + 1, mark) for at, mark in enumerate(one.marks[start : start + a_line])]
        for start in range(0, len(one.marks), a_line)
    ]
    code = lines(one.code, _CODE, TEXT.points, bold=True)
    said = f"{one.next} · {one.about}"
    text, below = lines(said, inner - _CODE - 2, SMALL.points), list[Row]()
    if len(text) > MOST_LINES:
        text, below = (), text_rows(((said, False),), room)
    if size == 10 and len(number) > 2:
        yield from text_rows(((one.tray, True),), room, STEP, "step", gap=1, keep=True)
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
