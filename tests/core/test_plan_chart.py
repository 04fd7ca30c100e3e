"""The plan's picture is read without its list: every bar says what is done in it, and nothing lies on anything else."""

import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, timedelta
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from runboard.charts.labels import LETTER_HIGH, LINE, Label, lanes, on_bar, wide, wrapped
from runboard.charts.svg import Box, Drawing, Word
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.told.figures import Bar, ChartRow, ChartSitting, bands, chart, parts
from runboard.web.plan.chart import Sitting, chart_of
from runboard.web.plan.drawing import PHONE, TABLET, Drawn, Way
from runboard.words.plan import Names
from runboard.words.short_forms import short_forms
from tests.core.by_hand import by_hand
from tests.core.pressing import Floor

BOTH = [PHONE, TABLET]
BARS = ("work", "setup", "watch", "held")


def a_shop(trays: int = 3) -> Names:
    floor = Floor()
    floor.open_run(trays=trays)
    problem = problem_for(floor.state, floor.book, floor.now)
    return Names(problem, floor.state.runs, floor.book, UTC, floor.now)


SHOP = a_shop()
ROUTE = short_forms(step.name for step in SHOP.runs["r1"].route.steps)
SITTINGS = tuple(parts(chart(SHOP.problem, by_hand(SHOP.problem))))
CUT, SAND, ENGRAVE, OIL = (
    next(block.index for block in SHOP.problem.blocks if block.operation == key)
    for key in ("cut", "sand", "engrave", "oil")
)


def drawn(part: ChartSitting, way: Way, names: Names = SHOP) -> Drawing:
    return Drawn(part.rows, part.span, names, ROUTE, (way, "k", "label")).drawing


def a_sitting(*rows: ChartRow, until: int = 240) -> ChartSitting:
    return ChartSitting((0, until), rows)


def room(word: Word) -> Box:
    """What a word takes at most."""
    is_letter = "letter" in word.kind or word.kind in ("clock", "now")
    long, high = (wide(word.text) * 12 / 13, LETTER_HIGH) if is_letter else (wide(word.text), LINE)
    before = {"start": 0.0, "middle": long / 2, "end": long}[word.anchor]
    up = high * 0.8
    if word.turned:
        return Box(word.x - up, word.y - long + before, high, long, word.kind)
    return Box(word.x - before, word.y - up, long, high, word.kind)


def is_in(inner: Box, outer: Box, by: float = 0.6) -> bool:
    return (
        outer.x - by <= inner.x
        and outer.y - by <= inner.y
        and inner.x + inner.width <= outer.x + outer.width + by
        and inner.y + inner.height <= outer.y + outer.height + by
    )


def overlap(one: Box, other: Box, by: float = 0.6) -> bool:
    return not (
        one.x + one.width <= other.x + by
        or other.x + other.width <= one.x + by
        or one.y + one.height <= other.y + by
        or other.y + other.height <= one.y + by
    )


def bars(drawing: Drawing) -> list[Box]:
    return [box for box in drawing.boxes if box.kind in BARS]


def said(drawing: Drawing) -> list[Word]:
    return [word for word in drawing.words if word.kind.split(" ")[0] in ("on-work", "on-watch", "on-held", "beside")]


def untold(drawing: Drawing) -> Iterator[Box]:
    """Bars on which nothing stands, nor on or beside one to which they lie close."""
    words = [room(word) for word in said(drawing)]
    told = [box for box in bars(drawing) if any(overlap(box, word) for word in words)]
    near = [*told, *(word for word in words if word.kind.startswith("beside"))]
    for box in bars(drawing):
        grown = Box(box.x - 8, box.y - 8, box.width + 16, box.height + 16, "")
        if not any(overlap(grown, other) for other in near):
            yield box


# by arithmetic


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_every_bar_says_what_is_done_in_it(way: Way) -> None:
    for part in SITTINGS:
        assert list(untold(drawn(part, way))) == []


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_no_word_lies_on_another_or_leaves_its_bar(way: Way) -> None:
    for part in SITTINGS:
        drawing = drawn(part, way)

        rows = [box for box in drawing.boxes if box.kind.startswith("row")]
        for word in said(drawing):
            here = room(word)
            within = rows if word.kind.startswith("beside") else bars(drawing)
            assert any(is_in(here, box) for box in within), word
            if word.kind.startswith("beside"):
                assert not any(overlap(here, box) for box in bars(drawing)), word
        pairs = combinations(drawing.words, 2)
        assert [(one.text, other.text) for one, other in pairs if overlap(room(one), room(other))] == []


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
@settings(max_examples=25, deadline=None)
@given(
    steps=some.lists(
        some.tuples(some.sampled_from([CUT, SAND, ENGRAVE, OIL]), some.integers(1, 60), some.integers(0, 20)),
        max_size=14,
    )
)
def test_however_short_bars_are_no_word_lies_on_another(way: Way, steps: list[tuple[int, int, int]]) -> None:
    at, row = 0, list[Bar]()
    for block, long, pause in steps:
        row.append(Bar(at, at + long, "work", block, "hand"))
        at += long + pause

    drawing = drawn(a_sitting(ChartRow("person", 0, tuple(row)), until=at + 10), way)

    words = [room(word) for word in said(drawing)]
    assert not any(overlap(one, other) for one, other in combinations(words, 2))
    assert all(sum(overlap(word, box) for box in bars(drawing)) <= 1 for word in words)


def test_a_bar_says_as_much_as_it_has_room_for() -> None:
    label = Label("S120", "7–9", "S")

    def on(width: float, height: float) -> list[str]:
        return [word.text + " turned" * word.turned for word in on_bar(Box(0, 0, width, height, ""), label, "on-work")]

    assert on(100, 16) == ["S120 · 7–9"]
    assert on(50, 32) == ["S120", "7–9"]
    assert on(20, 100) == ["S120 · 7–9 turned"]
    assert on(50, 16) == ["S120"]
    assert on(16, 50) == ["S120 turned"]
    assert on(16, 16) == ["S"]
    assert on(5, 5) == []


def test_what_two_hands_or_eyes_are_at_at_once_is_two_half_lanes() -> None:
    watching, sanding = Bar(0, 80, "watch", CUT, "watching"), Bar(20, 60, "work", SAND, "hand")
    alone = Bar(100, 160, "work", SAND, "hand")

    drawing = drawn(a_sitting(ChartRow("person", 0, (watching, sanding, alone))), TABLET)

    by_kind = {box.kind: box for box in bars(drawing) if box.height < 40}
    assert by_kind["work"].height == by_kind["watch"].height == 20
    assert not overlap(by_kind["work"], by_kind["watch"])
    assert [box.height for box in bars(drawing)].count(40) == 1


def test_lanes_are_as_many_as_things_at_once() -> None:
    assert lanes([(0, 10), (10, 20)]) == [(0, 1), (0, 1)]
    assert lanes([(5, 8), (0, 10)]) == [(0, 2), (1, 2)]
    assert lanes([(0, 10), (2, 4), (3, 12), (20, 30)]) == [(0, 3), (1, 3), (2, 3), (0, 1)]


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_trays_that_have_no_room_of_their_own_are_one_bar_for_all(way: Way) -> None:
    sand = [block.index for block in SHOP.problem.blocks if block.operation == "sand" and block.step.endswith("120")]
    row = ChartRow("person", 0, tuple(Bar(4 * at, 4 * at + 4, "work", block, "hand") for at, block in enumerate(sand)))

    drawing = drawn(replace(a_sitting(row), span=(0, 1200)), way)

    assert len(sand) == 3
    assert len(bars(drawing)) == 1


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_times_stand_on_both_sides(way: Way) -> None:
    drawing = drawn(SITTINGS[0], way)

    times = [word.text for word in drawing.words if word.kind == "clock"]
    assert len(times) >= 4
    assert all(times.count(time) == 2 for time in times)


@pytest.mark.parametrize("way", BOTH, ids=lambda way: way.key)
def test_names_are_whole_however_long(way: Way) -> None:
    name = "The old bench with the wooden vice behind the window"
    problem = replace(SHOP.problem, stations=tuple(replace(one, name=name) for one in SHOP.problem.stations))

    drawing = drawn(SITTINGS[0], way, replace(SHOP, problem=problem))

    read = " ".join(word.text for word in drawing.words if word.kind == "station")
    assert "…" not in read
    assert read.split(" ").count("window") == sum(row.kind == "station" for row in SITTINGS[0].rows)
    named = [room(word) for word in drawing.words if word.kind == "station"]
    assert not any(overlap(one, other, 1.5) for one, other in combinations(named, 2))


def test_a_text_is_wrapped_at_its_spaces_and_never_cut_short() -> None:
    assert wrapped("Finishing bench", 100) == ["Finishing", "bench"]
    assert "".join(wrapped("Abcdefghijklmnop", 40)) == "Abcdefghijklmnop"
    assert all(wide(line) <= 60 for line in wrapped("Finishing bench of the house", 60) if " " in line)


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
    assert forms == ["Cut", "S120", "S180", "Eng", "Oil", "Ins"] or len(set(forms)) == len(forms)
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
