"""Everybody's and every machine's day is tiled exactly, whatever was pressed."""

from collections import defaultdict
from collections.abc import Iterator
from datetime import datetime, timedelta
from functools import cache
from itertools import pairwise
from random import Random

import pytest

from runboard.review.happened.happened import happened
from runboard.review.happened.nouns import DayPart, Happened
from runboard.review.happened.tiles import Marked, Spans, Sums, tiled
from runboard.review.happened.why import WHY_WAITING
from runboard.review.past import Past
from runboard.run.refusal import Refused
from runboard.shop.hours import local_day
from tests.core.pasts import past_of
from tests.core.pressing import START, Floor
from tests.vectors.chooser import Chooser
from tests.vectors.presses import choose, choose_rare
from tests.vectors.scenes import opened, rails, shelves, the_shop

NOUGHT = timedelta(0)
# The plan of then is another test's.
NO_PLAN = ((), None)
DOING = {"work", "watching", "walking", "waiting", "away"}


@cache
def pressed(seed: int) -> Past:
    """Three people press by chance in a shop of two runs, over some days; every third time the run is given up in the end."""
    random = Random(seed)
    floor = Floor({**the_shop(), "products": [rails(), shelves()]})
    floor.press("run opened", opened(rails(), 4, 5, 2), run="r1")
    for number in range(150):
        if number == 20:
            floor.press("run opened", opened(shelves(), 2, 2, None), run="r2")
        floor.wait(random.choice((0.2, 1, 4, 15, 40)) if random.random() < 0.97 else 900)
        chooser = Chooser(floor.state, floor.book, random, floor.now, wild=0.02)
        kind, fields, body = (choose_rare if random.random() < 0.2 else choose)(chooser)
        make = floor.blind if random.random() < 0.1 else floor.press
        try:
            make(kind, body, **{"person": random.choice(("ann", "ben", "cleo")), **fields})
        except Refused:
            continue
    if seed % 3 == 0 and floor.run.state == "open":
        floor.press("run abandoned", run="r1", v=1)
    return past_of(floor)


@cache
def told(seed: int) -> Happened:
    return happened(pressed(seed), NO_PLAN)


SEEDS = pytest.mark.parametrize("seed", range(12))


def rows(day: tuple[DayPart, ...]) -> dict[tuple[str, str], list[DayPart]]:
    found = defaultdict(list)
    for part in day:
        found[part.row, part.key].append(part)
    return found


@SEEDS
def test_no_two_parts_of_a_day_overlap_and_none_is_empty(seed: int) -> None:
    for parts in rows(told(seed).day).values():
        assert all(part.length > NOUGHT for part in parts)
        assert all(one.ended_at <= other.began_at for one, other in pairwise(parts))


@SEEDS
def test_a_day_has_gaps_only_between_sessions_and_between_days(seed: int) -> None:
    past, zone = pressed(seed), pressed(seed).book.time_zone
    for (row, key), parts in rows(told(seed).day).items():
        for one, other in pairwise(parts):
            if one.ended_at != other.began_at and row == "station":
                assert local_day(one.began_at, zone) != local_day(other.began_at, zone)
            elif one.ended_at != other.began_at:  # gone, or no sign for hours and none that day
                went = [event.moment for event in past.events if (event.kind, event.person) == ("person went", key)]
                overnight = local_day(one.ended_at, zone) != local_day(other.began_at, zone)
                assert overnight or any(one.ended_at <= at <= other.began_at for at in went)


@SEEDS
def test_the_parts_of_a_day_add_up_to_the_whole(seed: int) -> None:
    for parts in rows(told(seed).day).values():
        breaks = sum((other.began_at - one.ended_at for one, other in pairwise(parts)), NOUGHT)
        whole = parts[-1].ended_at - parts[0].began_at
        assert sum((part.length for part in parts), breaks) == whole


@SEEDS
def test_all_hands_of_a_run_stand_in_somebodys_day(seed: int) -> None:
    past = pressed(seed)
    for load in (*past.run.past.values(), *past.run.loads.values()):
        for span in load.spans:
            if span.kind != "machine" and span.person:
                day = rows(told(seed).day)["person", span.person]
                ended = span.ended_at or past.now
                inside = [part for part in day if part.began_at < ended and part.ended_at > span.began_at]
                assert all(part.doing == "work" for part in inside)
                assert sum((part.length for part in inside), NOUGHT) >= ended - span.began_at


@SEEDS
def test_who_waits_has_a_reason_of_the_list_and_nothing_else_has(seed: int) -> None:
    for part in told(seed).day:
        assert part.doing in DOING
        assert (part.why in WHY_WAITING) if part.doing == "waiting" else part.why == ""
    assert {one.why for one in told(seed).waiting} <= set(WHY_WAITING)


@SEEDS
def test_waiting_is_the_sum_of_what_waited_in_the_runs_time(seed: int) -> None:
    past, found = pressed(seed), told(seed)
    machines = {part.key for part in found.day if (part.row, part.kind) == ("station", "machine")}
    for row in ("person", "station"):
        waited = (
            min(part.ended_at, past.until) - max(part.began_at, past.run.opened_at)
            for part in found.day
            if (part.row, part.doing) == (row, "waiting") and (row == "person" or part.key in machines)
        )
        whole = sum((length for length in waited if length > NOUGHT), NOUGHT)
        assert sum((one.length for one in found.waiting if one.row == row), NOUGHT) == whole


@SEEDS
def test_the_same_log_tells_the_same(seed: int) -> None:
    pressed.cache_clear()

    assert happened(pressed(seed), NO_PLAN) == told(seed)


def test_what_is_made_up_has_something_of_everything() -> None:
    """Else the tests above would hold of nothing."""
    day = [part for seed in range(12) for part in told(seed).day]

    assert {part.doing for part in day} == DOING
    assert {part.row for part in day} == {"person", "station"}
    assert {part.run for part in day} >= {"", "r2"}
    assert len({part.why for part in day}) > 8


# the tiles themselves


def minute(number: float) -> datetime:
    return START + timedelta(minutes=number)


def some_tiles(random: Random, number: int) -> Iterator[tuple[datetime, datetime, int]]:
    for at in range(number):
        began = random.randint(0, 90)
        yield minute(began), minute(began + random.randint(0, 30)), at


@pytest.mark.parametrize("seed", range(60))
def test_at_each_moment_the_first_layer_wins_and_of_it_what_began_last(seed: int) -> None:
    random = Random(seed)
    layers = [list(some_tiles(random, random.randint(0, 6))) for _ in range(3)]

    found = tiled(minute(10), minute(100), layers, -1)

    assert [one[1] for one in found[:-1]] == [one[0] for one in found[1:]]
    assert (found[0][0], found[-1][1]) == (minute(10), minute(100))
    for at in range(10, 100):
        here = next((some for layer in layers if (some := [one for one in layer if one[0] <= minute(at) < one[1]])), [])
        shown = next(what for began, ended, what in found if began <= minute(at) < ended)
        last = max((began for began, _, _ in here), default=None)
        assert shown in [what for began, _, what in here if began == last] if here else shown == -1


@pytest.mark.parametrize("seed", range(20))
def test_spans_are_found_again_by_where_they_lie(seed: int) -> None:
    random = Random(seed)
    tiles = list(some_tiles(random, 8))
    began = random.randint(0, 60)
    ended = began + random.randint(1, 30)
    spans, marked = Spans((one[0], one[1]) for one in tiles), Marked(tiles)

    near = spans.between(minute(began), minute(ended))
    touching = {one for one in tiles if one[0] < minute(ended) and one[1] > minute(began) and one[0] < one[1]}

    assert {one for one in marked.between(minute(began), minute(ended)) if one[0] < one[1]} == touching
    for at in range(began, ended):
        assert any(one[0] <= minute(at) < one[1] for one in near) == any(
            one[0] <= minute(at) < one[1] for one in touching
        )


@pytest.mark.parametrize("seed", range(20))
def test_sums_of_a_stretch_are_those_of_its_tiles(seed: int) -> None:
    random = Random(seed)
    tiles = tiled(minute(0), minute(120), [list(some_tiles(random, 6))], -1)
    began = random.randint(0, 100)
    ended = began + random.randint(0, 20)

    found = Sums(tiles).between(minute(began), minute(ended))

    assert sum(found.values(), NOUGHT) == timedelta(minutes=ended - began)
    for what, length in found.items():
        cut = (min(one[1], minute(ended)) - max(one[0], minute(began)) for one in tiles if one[2] == what)
        assert length == sum((one for one in cut if one > NOUGHT), NOUGHT)
