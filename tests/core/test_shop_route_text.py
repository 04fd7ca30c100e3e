"""A route from a few words is usable at once: stations, minutes, passes and waits, each marked as a guess."""

from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.shop.book import Book, Station
from runboard.shop.book_json import product_from_json, product_to_json
from runboard.shop.problem import Unreadable
from runboard.shop.product import Operation, Product
from runboard.shop.route_text import route_from_text, route_to_text

SHOP = (
    Station("cnc", "The CNC", "cnc", "shop"),
    Station("table", "Router table", "hand cutter", "shop"),
    Station("sander", "Sander", "sander", "shop"),
    Station("laser", "Laser", "laser", "house"),
    Station("corner", "Finishing corner", "finishing", "shop"),
    Station("glue-up", "Clamping table", "clamping", "shop"),
    Station("bench", "The bench", "bench", "shop"),
)
KEY_RAILS = "cut 40, clean up 5, sand 25, engrave 20, oil, overnight, hooks 10"


def minutes(count: float) -> timedelta:
    return timedelta(minutes=count)


def only(text: str, stations: tuple[Station, ...] = SHOP) -> Operation:
    (operation,) = route_from_text(text, stations)
    return operation


def test_the_key_rails_become_a_route_at_once() -> None:
    route = route_from_text(KEY_RAILS, SHOP)

    assert [(step.key, step.name, step.station) for step in route] == [
        ("cut", "Cut", "cnc"),
        ("clean-up", "Clean up", "bench"),
        ("sand", "Sand", "sander"),
        ("engrave", "Engrave", "laser"),
        ("oil", "Oil", "corner"),
        ("hooks", "Hooks", "bench"),
    ]
    assert route[4].wait is not None
    assert (route[4].wait.why, route[4].wait.least) == ("dry", minutes(720))
    assert all(step.guess for step in route)


def test_minutes_are_machine_time_a_load_at_a_machine_and_hands_a_tray_elsewhere() -> None:
    cut, _, sand, *_ = route_from_text(KEY_RAILS, SHOP, pieces_a_tray=5)

    assert (cut.passes[0].machine, cut.passes[0].hand) == (minutes(40), minutes(0))
    assert cut.passes[0].loading > minutes(0)
    assert (sand.passes[0].machine, sand.passes[0].hand) == (minutes(0), minutes(5))


def test_whatever_runs_by_itself_is_watched_and_hands_are_hands_on() -> None:
    route = route_from_text(KEY_RAILS, SHOP)

    assert [step.attendance for step in route] == ["watched", "hands-on", "hands-on", "watched", "hands-on", "hands-on"]


@pytest.mark.parametrize(
    ("text", "station"),
    [
        ("mill pockets 10", "cnc"),
        ("Engraving 10", "laser"),
        ("round over 5", "table"),
        ("rout edges 5", "table"),
        ("varnish 5", "corner"),
        ("waxing 5", "corner"),
        ("finish sanding 5", "sander"),
        ("glue up 10", "glue-up"),
        ("dry fit 5", "bench"),
        ("polish by hand 5", "bench"),
        ("drill at the router table 5", "table"),
        ("sand at bench 5", "bench"),
    ],
)
def test_words_find_their_station(text: str, station: str) -> None:
    assert only(text).station == station


@pytest.mark.parametrize(
    ("kinds", "station"),
    [(("bench", "hand cutter"), "hand cutter"), (("laser", "bench"), "bench"), (("sander",), "sander")],
)
def test_a_shop_without_the_station_uses_the_next_best_a_bench_or_its_first(
    kinds: tuple[str, ...], station: str
) -> None:
    stations = tuple(Station(kind.replace(" ", "-"), kind, kind, "shop") for kind in kinds)

    found = only("cut 10", stations)

    assert found.station == station.replace(" ", "-")


@pytest.mark.parametrize(
    ("text", "why", "least"),
    [
        ("glue 10, clamp 2 h", "clamp", 120),
        ("glue 10, overnight", "clamp", 720),
        ("glue 10, in clamps for 45", "clamp", 45),
        ("oil, dry 12 h", "dry", 720),
        ("oil overnight", "dry", 720),
        ("varnish, cure 1 d", "cure", 1440),
        ("varnish, let it dry", "dry", 720),
        ("varnish, dry 2 h, cure 1 h", "dry", 180),
        ("hooks, rest 1:30", "settle", 90),
    ],
)
def test_a_wait_belongs_to_the_step_before(text: str, why: str, least: float) -> None:
    wait = only(text).wait

    assert wait is not None
    assert (wait.why, wait.least) == (why, minutes(least))


def test_grits_are_passes_that_share_the_minutes() -> None:
    sand = only("sand 120/180 25")

    assert [(one.key, one.name, one.hand) for one in sand.passes] == [
        ("120", "120", minutes(2.5)),
        ("180", "180", minutes(2.5)),
    ]
    assert sand.name == "Sand"


def test_sides_are_passes() -> None:
    rout = only("rout sides A/B 20")

    assert [(one.key, one.name) for one in rout.passes] == [("a", "side A"), ("b", "side B")]


def test_a_fraction_is_no_pass() -> None:
    drill = only("drill 1/2 in holes 10")

    assert (drill.name, len(drill.passes)) == ("Drill 1/2 in holes", 1)


def test_a_board_says_how_many_pieces_it_takes() -> None:
    cut = only("cut 1h30 board of 15")

    assert (cut.passes[0].size, cut.passes[0].pieces, cut.passes[0].machine) == ("board", 15, minutes(90))


def test_minutes_may_be_told_for_each_piece() -> None:
    assert only("hooks 2 each").passes[0].hand == minutes(2)


def test_a_decimal_comma_parts_no_steps() -> None:
    assert only("cut 2,5").passes[0].machine == minutes(2.5)


def test_steps_of_the_same_name_have_keys_of_their_own() -> None:
    keys = [step.key for step in route_from_text("sand 10, oil, sand 5; oil then sand 2", SHOP)]

    assert keys == ["sand", "oil", "sand-2", "oil-2", "sand-3"]


@pytest.mark.parametrize(
    ("text", "code", "said"),
    [
        (" , ;", "route empty", "Write the steps with a comma between them"),
        ("overnight, cut 40", "route wait first", "Step 1, 'overnight', is a wait"),
        ("cut 40, 25", "route step without word", "Step 2, '25', says no work"),
        ("cut 40, sand -5", "route time unreadable", "Step 2, 'sand -5': the time cannot be read"),
        ("cut 99999999", "time too long", "'99999999' is too long"),
        ("x" * 200, "route step too long", "Step 1 is too long"),
        (", ".join(["cut"] * 101), "route too long", "at most 100 steps, not 101"),
    ],
)
def test_what_is_no_route_is_refused_with_its_place(text: str, code: str, said: str) -> None:
    with pytest.raises(Unreadable) as refused:
        route_from_text(text, SHOP)

    assert refused.value.code == code
    assert said in str(refused.value)


def test_a_shop_without_a_station_is_told_to_add_one() -> None:
    with pytest.raises(Unreadable) as refused:
        route_from_text("cut 40", ())

    assert refused.value.code == "route without stations"


def test_a_route_is_written_as_one_would_say_it() -> None:
    route = route_from_text(KEY_RAILS, SHOP)

    assert route_to_text(route, SHOP) == "cut 40, clean up 5, sand 25, engrave 20, oil 10, overnight, hooks 10"


WORDS = (
    "cut",
    "sand",
    "Oil",
    "MDF",
    "glue up",
    "hooks",
    "sand 120/180",
    "rout sides A/B",
    "drill at router table",
    "wipe off",
)
TIMES = ("", " 5", " 1h30", " 90 s", " 7 each", " 20 board of 15", " overnight")
WAITS = ("overnight", "dry 2 h", "cure", "clamp 90")


@settings(max_examples=100)
@given(
    st.lists(
        st.tuples(st.sampled_from(WORDS), st.sampled_from(TIMES), st.sampled_from(("", *WAITS))), min_size=1, max_size=5
    )
)
def test_a_route_written_in_words_reads_back_the_same(steps: list[tuple[str, str, str]]) -> None:
    route = route_from_text(", ".join(f"{words}{time}, {wait}" for words, time, wait in steps), SHOP)

    assert route_from_text(route_to_text(route, SHOP), SHOP) == route


@settings(max_examples=200)
@given(
    st.text(max_size=60)
    | st.lists(
        st.sampled_from(["cut,sand", "1/2", "120/180", "side", "A", "overnight", "-5", "each;", "at", "bench"]),
        max_size=9,
    ).map(" ".join)
)
def test_any_text_becomes_a_route_that_the_book_accepts_or_is_refused(text: str) -> None:
    shop = Book(stations=SHOP)
    try:
        route = route_from_text(text, SHOP)
    except Unreadable as refused:
        assert str(refused)
    else:
        product = Product("rail", "Rail", route)
        assert product_from_json(product_to_json(product), shop) == product
