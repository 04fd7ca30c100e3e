"""The plan's picture is read without its list: every bar says what is done in it, and nothing lies on anything else."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some

from runboard.charts.labels import LETTER_HIGH, LINE, Label, lanes, on_bar, wide, wrapped
from runboard.charts.svg import Box, Drawing, Word
from runboard.plan.schedule.problem.from_state import problem_for
from runboard.plan.schedule.told.figures import Bar, ChartRow, ChartSitting, chart, parts
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
