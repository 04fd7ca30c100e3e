"""What the plan's picture leaves open, folds away and explains: ends that a sitting cuts, services, the key."""

import re
from datetime import timedelta

import pytest

from runboard.charts.svg import Box, Drawing
from runboard.plan.schedule.told.figures import Bar, ChartRow, ChartSitting, bands
from runboard.web.plan.chart import Sitting, chart_of
from runboard.web.plan.drawing import Way
from tests.core.test_plan_chart import BOTH, CUT, OIL, SAND, SHOP, SITTINGS, a_sitting, drawn, overlap, room

# what goes on


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
@pytest.mark.parametrize("kind", ["wait", "held", "work"])
def test_what_goes_on_beyond_its_sitting_has_its_end_open(way: Way, kind: str) -> None:
    ends, goes_on = Bar(0, 240, kind, OIL, "hand"), Bar(0, 240, kind, OIL, "hand", until=900)

    def arrows(bar: Bar) -> int:
        lines = drawn(a_sitting(ChartRow("station", 0, (bar,))), way).lines
        return sum(line.kind == "goes-on" for line in lines)

    assert (arrows(ends), arrows(goes_on)) == (0, 2)


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_the_arrow_of_what_came_from_before_lies_on_no_name(way: Way) -> None:
    drawing = drawn(a_sitting(ChartRow("station", 0, (Bar(0, 100, "held", CUT, since=-90),))), way)

    arrows = [line for line in drawing.lines if line.kind == "goes-on"]
    (name,) = (room(word) for word in drawing.words if word.kind == "station")
    assert len(arrows) == 2
    for line in arrows:
        low, left = min(line.y1, line.y2), min(line.x1, line.x2)
        assert not overlap(name, Box(left, low, abs(line.x1 - line.x2), abs(line.y1 - line.y2), ""))


def test_a_long_sitting_is_cut_into_bands_in_which_all_of_it_goes_on() -> None:
    row = ChartRow("station", 0, (Bar(0, 700, "work", CUT, "machine", until=800),))

    first, second = bands(ChartSitting((0, 700), (row,)), 480)

    assert (first.span, second.span) == ((0, 350), (350, 700))
    assert [(bar.since, bar.until) for part in (first, second) for bar in part.rows[0].bars] == [
        (None, 800),
        (0, 800),
    ]


def only(*rows: ChartRow, until: int = 240) -> Sitting:
    (sitting,) = chart_of([a_sitting(*rows, until=until)], 0, SHOP).sittings
    return sitting


def test_an_end_that_the_sitting_cut_is_never_said_as_an_end() -> None:
    night = 240 + 2 * 60 * 14
    rests = Bar(100, 240, "wait", OIL, until=night)
    held = Bar(60, 240, "held", CUT, until=night)

    lines = only(ChartRow("station", 0, (rests, held))).said

    moment = SHOP.problem.moment(night) + timedelta(seconds=30)
    assert len(lines) == 2
    assert not any(f"–{SHOP.clock(240)}" in line or f"until {SHOP.clock(240)}" in line for line in lines)
    assert all(re.search(rf"^\d\d:\d\d–\w+ {moment:%H:%M} .* until \w+ {moment:%H:%M}", line) for line in lines)


def test_what_came_from_before_is_said_with_the_day_on_which_it_began() -> None:
    sitting = chart_of(
        [ChartSitting((3000, 3200), (ChartRow("station", 0, (Bar(3000, 3100, "wait", OIL, since=40),)),))], 0, SHOP
    )

    (line,) = sitting.sittings[0].said

    assert line.startswith(f"{SHOP.short(40)}–{SHOP.clock(3100)} ")


# what is folded away, and the key


def service(*, holds: bool) -> ChartRow:
    return ChartRow("service", 0, (Bar(0, 60, "drawn"),), holds)


def test_services_fold_away_unless_they_hold_something_up() -> None:
    person = ChartRow("person", 0, (Bar(0, 60, "work", CUT, "hand"),))

    away, held_up = only(person, service(holds=False)), only(person, service(holds=True))

    def shown(drawings: tuple[Drawing, ...]) -> list[bool]:
        return [any(box.kind == "drawn" for box in drawing.boxes) for drawing in drawings]

    assert (shown(away.drawings), shown(away.services)) == ([False, False], [True, True])
    assert (shown(held_up.drawings), held_up.services) == ([True, True], ())


def test_a_station_without_work_has_no_row_and_a_person_has_one() -> None:
    sitting = only(
        ChartRow("person", 0), ChartRow("station", 0), ChartRow("station", 1, (Bar(0, 60, "work", CUT, "machine"),))
    )

    names = [word.text for word in sitting.drawings[0].words if word.kind in ("person", "station")]
    assert names == [SHOP.problem.people[0].name, SHOP.problem.stations[1].name]


def test_the_key_names_each_short_form_once_and_what_there_is_to_see() -> None:
    key = chart_of(list(SITTINGS), 0, SHOP).key

    forms = [form for _, form, _ in key.shorts]
    assert len(set(forms)) == len(forms) > 3
    assert [step for _, _, step in key.shorts] == [step.name for step in SHOP.runs["r1"].route.steps]
    assert [kind for kind, _ in key.bars[:3]] == ["work", "watch", "idle"]
    assert {"setup", "walk", "wait"} <= {kind for kind, said in key.bars if said}
    assert [kind for kind, _ in chart_of([a_sitting(ChartRow("person", 0))], 0, SHOP).key.bars] == [
        "work",
        "watch",
        "idle",
    ]


def test_a_letter_that_stands_alone_is_explained() -> None:
    short = ChartRow(
        "person",
        0,
        tuple(Bar(60 * at, 60 * at + 10, "work", block, "hand") for at, block in enumerate((CUT, SAND, OIL))),
    )

    found = chart_of([a_sitting(short, until=1400)], 0, SHOP)

    alone = {word.text for drawing in found.sittings[0].drawings for word in drawing.words if "letter" in word.kind}
    assert alone
    assert alone == {letter for letter, _, _ in found.key.shorts if letter}


def test_all_of_the_first_day_is_open_and_the_other_days_are_a_press_away() -> None:
    day = 2 * 60 * 24
    row = ChartRow("person", 0, (Bar(0, 60, "work", CUT, "hand"),))

    found = chart_of([ChartSitting((start, start + 60), (row,)) for start in (0, 600, day, 2 * day)], 0, SHOP)

    assert [sitting.is_open for sitting in found.sittings] == [True, True, False, False]


def test_a_letter_of_another_day_is_explained_where_that_day_is_unfolded() -> None:
    day = 2 * 60 * 24
    long = ChartRow("person", 0, (Bar(0, 700, "work", CUT, "hand"),))
    short = tuple(
        Bar(day + 60 * at, day + 60 * at + 10, "work", block, "hand") for at, block in enumerate((CUT, SAND, OIL))
    )

    found = chart_of(
        [ChartSitting((0, 1400), (long,)), ChartSitting((day, day + 1400), (ChartRow("person", 0, short),))], 0, SHOP
    )

    here, later = found.sittings
    alone = {word.text for drawing in later.drawings for word in drawing.words if "letter" in word.kind}
    assert alone
    assert (here.letters, {letter for letter, _, _ in later.letters}) == ((), alone)
    assert [letter for letter, _, _ in found.key.shorts if letter] == []


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_what_stands_on_hatching_has_a_plain_ground(way: Way) -> None:
    drawing = drawn(a_sitting(ChartRow("person", 0, (Bar(0, 200, "watch", CUT, "machine"),))), way)

    words = [word for word in drawing.words if word.kind.startswith("on-watch")]
    grounds = [box for box in drawing.boxes if box.kind == "ground"]
    assert words
    assert len(grounds) == len(words)
    for word, ground in zip(words, grounds, strict=True):
        middle = (word.x, word.y - 4.5) if not word.turned else (word.x - 4.5, word.y)
        assert abs(ground.x + ground.width / 2 - middle[0]) < 1
        assert abs(ground.y + ground.height / 2 - middle[1]) < 1


def test_the_sitting_in_which_all_is_done_marks_when() -> None:
    row = ChartRow("person", 0, (Bar(0, 200, "work", CUT, "hand"),))

    found = chart_of([a_sitting(row), ChartSitting((2880, 3120), (row,))], 0, SHOP, finish=3100)

    def marks(sitting: Sitting) -> list[tuple[int, int]]:
        return [
            (sum(line.kind == "finish" for line in one.lines), sum(word.text == "done" for word in one.words))
            for one in sitting.drawings
        ]

    assert [marks(sitting) for sitting in found.sittings] == [[(0, 0)] * 2, [(1, 2)] * 2]
