"""The rows of a station's sheet: what holds for all that is done there, then each operation whole."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Any

from runboard.cards.heading import title_head
from runboard.cards.measure import beginning, lines, width
from runboard.cards.model import Shown, StationSheet, StationWork
from runboard.cards.row import MOST_LINES, SMALL, STEP, TEXT, Group, Row, Type, row, text_rows
from runboard.cards.rows_of_work import care_rows, check_rows

_NAME = Type(12, 5.4)
_NUMBER = 5.5
_PARTS = 12.0  # mm of '2/3' beside the name
_POINT = 6.0  # mm of a square and the white after it
_MOST_HALF = 3  # lines of a point that has another beside it
_PICTURE = 31.0  # mm of a picture beside its line, with the white before it
_PICTURE_HIGH = 23
_LABEL = 27.0  # mm of the setup sheet's labels


def station_head(card: StationSheet, room: float) -> tuple[dict[str, Any], int]:
    """The station, what this is, and of which run."""
    return title_head(card.station, card.about, room)


def station_again(card: StationSheet, room: float) -> tuple[dict[str, Any], int]:
    """The station alone, small, on a further side."""
    name = beginning(card.station, room - _PARTS, _NAME.points, bold=True)
    return {"name": (name,), "less": True, "where": (), "spill": []}, 7


def station_groups(card: StationSheet, room: float, words: Mapping[str, str]) -> list[Group]:
    """Cautions and start list of the station, then its operations in their order."""
    first = list(care_rows(card.care, room))
    if card.start:
        first += [*_title(words["before-starting"], room), *_points(card.start, room)]
    groups = [Group(words["at-this-station"], tuple(first))] if first else []
    return [*groups, *(Group(work.name, _work_rows(work, room, words)) for work in card.works)]


def _work_rows(work: StationWork, room: float, words: Mapping[str, str]) -> tuple[Row, ...]:
    """Of an operation with nothing of its own the name, which may end a side then."""
    *rows, last = _work(work, room, words)
    return (*rows, replace(last, keep=False))


def station_note(card: StationSheet, room: float) -> Group:
    """Where the same is found on a phone: said where there is room left."""
    return Group(card.station, tuple(text_rows(((card.on_a_phone, False),), room, SMALL, gap=1.5)))


def _work(work: StationWork, room: float, words: Mapping[str, str]) -> Iterator[Row]:
    yield from _heading(work, room)
    yield from care_rows(work.care, room)
    if work.start:
        yield from _title(words["before-starting"], room)
        yield from _points(work.start, room)
    if work.setup:
        yield from _title(words["setting-up"], room)
        yield from _setup(work.setup, room)
    for number, shown in enumerate(work.how, 1):
        yield from _how(number, shown, room)
    yield from check_rows(work.checks, room, words)
    for text in (work.supplies, *work.wait):
        if text:
            yield from text_rows(((text, False),), room, TEXT, "how", gap=1)


def _heading(work: StationWork, room: float) -> Iterator[Row]:
    """Its name with the steps that it is; a long name in lines of its own."""
    at = lines(work.at, room * 0.42, SMALL.points)
    name = lines(work.name, room * 0.58 - 2, _NAME.points, bold=True)
    if len(name) > 2 or len(at) > 1:
        yield from text_rows(((work.name, True),), room, STEP, "step", core=True, gap=2, keep=True)
        yield from text_rows(((work.at, False),), room, SMALL, core=True, keep=True)
        return
    yield row("done_here", _NAME.height(len(name)) + 1.6, core=True, keep=True, lines=name, at=at)


def _title(text: str, room: float) -> list[Row]:
    return text_rows(((text, True),), room, TEXT, "how", gap=1, keep=True)


def _points(points: Sequence[str], room: float) -> Iterator[Row]:
    """Lines of a start list, each with its square; two in a row where that is lower."""
    at = 0
    while at < len(points):
        halves = [lines(point, room / 2 - _POINT - 1, TEXT.points) for point in points[at : at + 2]]
        alone = sum(len(lines(point, room - _POINT, TEXT.points)) for point in points[at : at + 2])
        most = max(len(half) for half in halves)
        if len(halves) == 2 and most <= _MOST_HALF and most < alone:
            yield row("points", TEXT.height(most) + 1, halves=halves)
            at += 2
            continue
        yield from _point(points[at], room)
        at += 1


def _point(point: str, room: float) -> Iterator[Row]:
    found = lines(point, room - _POINT, TEXT.points)
    for at in range(0, len(found), MOST_LINES):
        part = found[at : at + MOST_LINES]
        yield row("point", TEXT.height(len(part)) + 1, lines=part, first=at == 0)


def _setup(setup: Sequence[tuple[str, str]], room: float) -> Iterator[Row]:
    """The setup sheet: its label beside it, or before it where the label is long."""
    for label, text in setup:
        if width(label, TEXT.points, bold=True) > _LABEL - 1:
            yield from text_rows(((label, True), (text, False)), room, TEXT, "how", gap=1)
            continue
        found = lines(text, room - _LABEL, STEP.points) or ("",)
        for at in range(0, len(found), MOST_LINES):
            part = found[at : at + MOST_LINES]
            yield row("setting", STEP.height(len(part)) + 1, label=label if at == 0 else "", lines=part)


def _how(number: int, shown: Shown, room: float) -> Iterator[Row]:
    """What to do, for somebody who never saw it; its picture beside it."""
    found = lines(shown.text, room - _NUMBER - (_PICTURE if shown.picture else 0), STEP.points)
    for at in range(0, len(found), MOST_LINES):
        part = found[at : at + MOST_LINES]
        picture = shown.picture if at == 0 else None
        high = max(STEP.height(len(part)) + 1, _PICTURE_HIGH if picture else 0)
        yield row("told", high, number=str(number) if at == 0 else "", lines=part, picture=picture)
