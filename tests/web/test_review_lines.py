"""The five lines of a review in every case that a run may be: none, one, several, nothing known, still worked out."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

import pytest

from runboard.demo.book import demo_book
from runboard.house import House
from runboard.plan.change import Capacity, Change, HoursAdded, Times, TraySize
from runboard.review.changes.nouns import Tried
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Happened, Lost
from runboard.review.held.nouns import Because, HeldStretch, What
from runboard.words.review import five_lines, little_measured
from runboard.words.review_done import done_in_words
from runboard.words.review_held import because_in_words, pushed_in_words
from runboard.words.review_things import about, piece_time, what_in_words, within
from tests.conftest import START
from tests.web import reviewed
from tests.web.reviewed import minutes, span3

EVENING = START + timedelta(hours=9)  # at 19:00 in Berlin


@pytest.fixture
def found(house: House) -> Essentials:
    house.workshop.books.save(demo_book(START, "Europe/Berlin"), START)
    reviewed.open_a_run(house.workshop)
    return reviewed.essentials_at(house.workshop, "r1")


def line(found: Essentials, code: str) -> str:
    return next(line.sentence for line in five_lines(found) if line.code == code)


def with_happened(found: Essentials, **fields: object) -> Essentials:
    happened: Happened = replace(found.happened, **fields)  # type: ignore[arg-type]
    return replace(found, happened=happened)


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"good": 62}, "62 good, 60 wanted. 9 h 10 hands-on, 9 min per piece."),
        ({"good": 8, "wanted": 6, "started": 8}, "8 good, 6 wanted. 9 h 10 hands-on, 1 h 09 per piece."),
        ({"good": 0}, "0 of 60 good. 9 h 10 hands-on."),
        ({"hands": timedelta(0)}, "58 of 60 good. No hands-on time was entered."),
        (
            {"good": 1, "wanted": 1, "started": 1, "hands": minutes(70)},
            "1 of 1 good. 1 h 10 hands-on, 1 h 10 per piece.",
        ),
    ],
)
def test_the_first_line_says_pieces_and_hands(found: Essentials, fields: dict[str, object], said: str) -> None:
    assert line(with_happened(found, **fields), "pieces") == said


def test_more_than_was_wanted_to_begin_with_is_said_of_what_was_begun(found: Essentials) -> None:
    said = line(with_happened(found, good=22, wanted=24, started=30), "pieces")

    assert said == "22 good of 30 started, 24 wanted. 9 h 10 hands-on, 25 min per piece."


def test_an_open_run_has_no_time_of_a_piece(found: Essentials) -> None:
    run = replace(found.past.run, state="open", closed_at=None)
    open_ = replace(found, past=replace(found.past, run=run))

    assert line(with_happened(open_, good=8, wanted=44, started=60), "pieces") == (
        "So far 8 of 44 good. 9 h 10 hands-on."
    )


PROMISED = datetime(2026, 10, 31, 1, 30, tzinfo=UTC)


@pytest.mark.parametrize(
    ("promised", "after", "said"),
    [
        (
            PROMISED,
            timedelta(days=1, minutes=8),
            "Done Sun 1 Nov, 02:38, a day later than first planned. Not all order lines on time.",
        ),
        (PROMISED, timedelta(minutes=10), "Done Sat 31 Oct, 02:40, as first planned. Not all order lines on time."),
        (
            PROMISED,
            timedelta(hours=-2),
            "Done Sat 31 Oct, 00:30, 2 h earlier than first planned. Not all order lines on time.",
        ),
        (None, timedelta(0), "Done Sat 31 Oct, 02:30. Not all order lines on time."),
        (PROMISED, None, "Promised for Sat 31 Oct, 02:30."),
        (None, None, ""),
    ],
)
def test_a_run_says_when_it_was_done_against_its_promise(
    found: Essentials, promised: datetime | None, after: timedelta | None, said: str
) -> None:
    finished = None if after is None else PROMISED + after

    assert done_in_words(with_happened(found, promised=promised, finished=finished)) == said


def test_beside_when_it_was_done_stands_whether_all_order_lines_were_in_time(found: Essentials) -> None:
    lines = found.happened.order_lines
    in_time = with_happened(found, order_lines=tuple(line for line in lines if not line.late))
    without_days = with_happened(found, order_lines=tuple(replace(line, due=None, late=None) for line in lines))

    assert done_in_words(in_time).endswith(". All order lines on time.")
    assert "order lines" not in done_in_words(without_days)


def test_operations_that_came_near_their_guess_are_said_to(found: Essentials) -> None:
    near = [replace(bar, taken=bar.guess * 1.05) for bar in found.happened.bars]

    all_known = with_happened(found, bars=tuple(near))
    some_known = with_happened(found, bars=(*near, replace(near[0], taken=None)))

    assert line(all_known, "furthest") == "Every operation came within 10\u00a0% of its guess."
    assert line(some_known, "furthest") == "Everything measured came within 10\u00a0% of its guess."


def test_where_no_time_is_known_nothing_is_set_against_the_guess(found: Essentials) -> None:
    unknown = tuple(replace(bar, taken=None) for bar in found.happened.bars)

    assert line(with_happened(found, bars=unknown), "furthest") == (
        "No time was measured, so there is nothing to compare with the guess."
    )


def lost(reason: str, pieces: int, board: str = "", step: str = "Clean up") -> Lost:
    return Lost(step.lower(), step, reason, "ash", board, pieces)


@pytest.mark.parametrize(
    ("some", "said"),
    [
        ([], "Lost: none."),
        ([lost("chipped", 1, "3")], "Lost: 1, chipped at Clean up, from board 3."),
        ([lost("chipped", 3, "3")], "Lost: 3, chipped at Clean up, all from board 3."),
        ([lost("chipped", 1, "3"), lost("chipped", 1, "4")], "Lost: 2, chipped at Clean up."),
        ([lost("Burnt", 2, step="Engrave"), lost("chipped", 1, "3")], "Lost: 3, 2 of them burnt at Engrave."),
        (
            [lost("chipped", 3, "2"), lost("burnt", 1, step="Engrave")],
            "Lost: 4, 3 of them chipped at Clean up (all three from board 2).",
        ),
        ([lost("burnt", 1, step="Engrave"), lost("chipped", 1)], "Lost: 2, each for a different reason."),
        ([lost("", 2)], "Lost: 2, at Clean up (no reason noted)."),
    ],
)
def test_what_was_lost_is_said_by_the_reason_that_cost_the_most(found: Essentials, some: list[Lost], said: str) -> None:
    scrap = sum(one.pieces for one in some)

    assert line(with_happened(found, lost=tuple(some), scrap=scrap), "lost") == said


def test_pieces_lost_of_which_nothing_is_known_are_counted(found: Essentials) -> None:
    assert line(with_happened(found, lost=(), scrap=2), "lost") == "Lost: 2, no place or reason noted."


@pytest.mark.parametrize(
    ("what", "said"),
    [
        (("hands", "robin"), "Bottleneck: Robin’s time, on Saturday and Sunday evening."),
        (("station", "laser"), "Bottleneck: the Laser, on Saturday and Sunday evening."),
        (("wait", "oil"), "Bottleneck: drying after Oil, on Saturday and Sunday evening. It cost a day (24 h)."),
        (("walking", ""), "Bottleneck: walking between rooms, on Saturday and Sunday evening."),
        (
            ("room", "shop"),
            "Bottleneck: the air in the shop, on Saturday and Sunday evening. Waiting for it cost a day (24 h).",
        ),
        (("hours", ""), "Bottleneck: the hours. The next step waited for someone on Saturday and Sunday evening."),
        (
            ("service", "extraction"),
            "Bottleneck: the dust extraction, CNC or router table, in use on Saturday and Sunday evening. Having only one cost a day (24 h).",
        ),
    ],
)
def test_what_held_the_run_is_said_of_each_kind(found: Essentials, what: What, said: str) -> None:
    assert line(held_on(found, what, 0, 1), "held") == said


@pytest.mark.parametrize(
    ("days", "said"),
    [
        ((0,), "on Saturday evening"),
        ((0, 0.5), "on Saturday and Sunday"),
        ((0, 1, 2, 3), "on four evenings"),
        ((0, 8), "on Sat 7 Mar and Sun 15 Mar"),
    ],
)
def test_the_days_on_which_it_held_are_named_as_long_as_they_are_few(
    found: Essentials, days: tuple[float, ...], said: str
) -> None:
    assert line(held_on(found, ("hands", "robin"), *days), "held") == f"Bottleneck: Robin’s time, {said}."


MIDNIGHT = START + timedelta(hours=14)  # at 00:00 in Berlin


def past_midnight(found: Essentials) -> Essentials:
    """Robin held it from Saturday at 22:00 until Sunday at 02:00, each hour by itself."""
    assert found.held is not None
    starts = [MIDNIGHT + timedelta(hours=hour) for hour in (-2, -1, 0, 1)]
    spans = [(start, start + timedelta(hours=1)) for start in starts]
    stretches = tuple(HeldStretch(("hands", "robin"), *span, timedelta(hours=1), (span,)) for span in spans)
    because = Because("oil", ("6",), MIDNIGHT + minutes(70), MIDNIGHT + minutes(100), "hooks", ("1",))
    return replace(
        found, held=replace(found.held, most=("hands", "robin"), stretches=stretches, because=because, cost=minutes(30))
    )


def test_what_is_past_midnight_is_of_the_evening_that_began_before(found: Essentials) -> None:
    late = past_midnight(found)
    assert late.held is not None and late.held.most is not None and late.held.because is not None

    named = what_in_words(late.past, late.held.most)
    because = because_in_words(late.past, late.held.most, named, late.held.because, late.held.sessions)

    assert line(late, "held") == "Bottleneck: Robin’s time, on Saturday evening."
    assert because.startswith("On Sat 7 Mar, 01:10 that night, Robin’s time went to Fit hooks of tray 1 until 01:40")


def test_what_little_of_the_shops_hours_became_on_the_clock_is_told(found: Essentials) -> None:
    assert found.held is not None
    rack = found.held
    hands = replace(rack, most=("hands", "robin"))

    assert pushed_in_words(found.past, rack, "24 h") == (
        "It held up the run for only 3 h 30 with someone in the shop. But that pushed Oil of tray 6 from Sun 8 Mar to Mon 9 Mar,"
        " so the run ended 24 h later by the clock."
    )
    assert pushed_in_words(found.past, replace(rack, because=None), "24 h").endswith(
        "someone in the shop. With the hours nobody was there, that became 24 h by the clock."
    )
    assert pushed_in_words(found.past, replace(rack, cost=minutes(300)), "5 h") == "", "both are about the same"
    assert pushed_in_words(found.past, hands, "24 h") == "", "its cost is not said"
    short = tuple(replace(each, open=minutes(5)) for each in rack.stretches)
    in_an_evening = replace(rack, stretches=short, cost=minutes(44))
    assert pushed_in_words(found.past, in_an_evening, "44 min") == "", "no night came between"


def test_while_it_is_worked_out_again_the_old_answer_stands(found: Essentials) -> None:
    again, first = replace(found, is_weighed=False), replace(found, held=None, tried=None, is_weighed=False)

    assert line(again, "held") == line(found, "held") + " Updating…"
    assert line(again, "try") == line(found, "try") + " Updating…"
    assert line(first, "held") == (
        "Bottleneck: working it out… That takes about 5 seconds, longer on a small or busy computer."
    )


def held_on(found: Essentials, what: What, *days: float) -> Essentials:
    """Held so many days after the run was opened, for an hour each."""
    assert found.held is not None
    spans = [(EVENING + timedelta(days=day), EVENING + timedelta(days=day, hours=1)) for day in days]
    stretches = tuple(HeldStretch(what, *span, timedelta(hours=1), (span,)) for span in spans)
    return replace(found, held=replace(found.held, most=what, stretches=stretches))


@pytest.mark.parametrize(
    ("what", "said"),
    [
        (
            ("service", "rack"),
            "Tray 6 was ready for Oil on Sat 7 Mar, 19:00, but all the drying rack places were in use. It started at 19:40.",
        ),
        (
            ("hands", "robin"),
            "On Sat 7 Mar, 19:00, Robin’s time went to Fit hooks of trays 1 and 2 until 19:40, while tray 6 waited for Oil.",
        ),
        (
            ("station", "laser"),
            "On Sat 7 Mar, 19:00, the Laser was busy with trays 1 and 2 until 19:40, while tray 6 waited for it.",
        ),
        (("wait", "oil"), "Tray 6 finished Oil on Sat 7 Mar, 19:00 and could carry on at 19:40 at the earliest."),
        (("hours", ""), ""),
    ],
)
def test_a_load_that_was_kept_back_is_told(found: Essentials, what: What, said: str) -> None:
    by = ("hooks", ("1", "2")) if what[0] in ("hands", "station") else ("", ())
    because = Because("oil", ("6",), EVENING, EVENING + timedelta(minutes=40), *by)

    assert because_in_words(found.past, what, what_in_words(found.past, what), because) == said


def test_where_no_one_thing_held_the_run_that_is_said(found: Essentials) -> None:
    assert found.held is not None

    said = line(replace(found, held=replace(found.held, most=None, cost=None)), "held")

    assert said == "Bottleneck: none stands out. No single addition would have ended it sooner."


@pytest.mark.parametrize(
    ("some", "said"),
    [
        ((), "Try first: nothing found. Do you have an idea?"),
        ((0, 0, Capacity("rack", 12)), "Try first: nothing tried would have helped."),
        ((9, 4, Capacity("rack", 12)), "Try first: nothing tried helps enough to mention."),
        ((-90, -10, Capacity("rack", 12)), "Try first: nothing tried would have helped."),
        (
            (0, 51, Times("r1", "hooks", "hand", 70)),
            "Try first: Fit hooks 30 % quicker. Saves 51 min hands-on.",
        ),
        ((95, 0, TraySize("r1", 10)), "Try first: 10 pieces per tray. Finishes 1 h 35 sooner."),
        (
            (121, 0, HoursAdded("robin", date(2026, 3, 9), time(18), time(20))),
            "Try first: Robin there 2 h longer when the run waits for someone, as on Mon 9 Mar. Finishes 2 h sooner.",
        ),
        ((90, 0, Capacity("rack", 10)), "Try first: drying rack places: one more (10). Finishes 1 h 30 sooner."),
    ],
)
def test_what_to_try_first_says_what_it_would_have_saved(
    found: Essentials, some: tuple[()] | tuple[float, float, Change], said: str
) -> None:
    tried: tuple[Tried, ...] = ()
    if some:
        earlier, hands, change = some
        idea = replace(reviewed.tried()[0].idea, change=change)
        tried = (Tried(idea, span3(earlier, earlier, earlier), span3(hands, hands, hands)),)

    assert line(replace(found, tried=tried), "try") == said


def test_what_may_as_well_make_it_worse_is_not_named_to_try_first(found: Essentials) -> None:
    idea = reviewed.tried()[0].idea
    unsure = Tried(idea, span3(-30, 40, 90), span3(0, 0, 0))
    costs_a_day = Tried(idea, span3(-1500, -1440, -1400), span3(20, 30, 40))
    sure = Tried(idea, span3(0, 12, 20), span3(-1, 0, 1))

    assert replace(found, tried=(unsure, costs_a_day)).first_to_try is None
    assert replace(found, tried=(unsure, sure)).first_to_try == sure


def test_a_wish_of_somebody_is_not_tried_before_what_the_run_speaks_for(found: Essentials) -> None:
    offered = reviewed.tried()[1]
    wish = Tried(
        replace(offered.idea, because="", change=Times("r1", "hooks", "hand", 50)),
        span3(90, 99, 120),
        span3(60, 60, 60),
    )
    places = Tried(replace(offered.idea, because="", change=Capacity("rack", 10)), span3(30, 60, 90), span3(0, 0, 0))

    assert replace(found, tried=(wish, offered)).first_to_try == offered
    assert replace(found, tried=(wish, offered, places)).first_to_try == places
    assert replace(found, tried=(wish,)).first_to_try == wish


def test_with_enough_measured_nothing_is_said_of_it(found: Essentials) -> None:
    assert little_measured(found) == []


def test_a_run_without_a_time_says_that_all_stands_on_guesses(found: Essentials) -> None:
    bare = replace(found, study=replace(found.study, share=0.0, presses=found.study.presses[:1]))

    assert little_measured(bare) == [
        "No time of this run was measured. What follows is based on guesses.",
        "Next time, this press would help most: Start at Inspect and pack.",
    ]


@pytest.mark.parametrize(
    ("span", "said"), [(45 / 60, "45 s"), (9.4, "9½ min"), (9.2, "9 min"), (24.4, "24 min"), (70, "1 h 10")]
)
def test_the_time_of_a_piece_is_said_in_halves_while_it_is_short(span: float, said: str) -> None:
    assert piece_time(minutes(span)) == said


@pytest.mark.parametrize(
    ("hours", "said"), [(0.5, "30 min"), (1.5, "1 h 30"), (7.2, "7 h"), (20, "a day"), (50, "two days")]
)
def test_a_span_is_said_as_one_does(hours: float, said: str) -> None:
    assert about(timedelta(hours=hours)) == said


@pytest.mark.parametrize(
    ("name", "said"), [("Fit hooks", "fit hooks"), ("CNC", "CNC"), ("A4 labels", "A4 labels"), ("", "")]
)
def test_a_name_within_a_sentence_keeps_its_own_capitals(name: str, said: str) -> None:
    assert within(name) == said


def test_what_a_phone_offers_as_a_reason_is_said_as_one_says_it(found: Essentials) -> None:
    said = with_happened(found, lost=(lost("surface", 1, step="Sand 180"),), scrap=1)

    assert line(said, "lost") == "Lost: 1, surface spoilt at Sand 180."


def test_where_the_run_could_not_be_replayed_nobody_can_say_what_held_it(found: Essentials) -> None:
    assert line(replace(found, held=None), "held").startswith("Bottleneck: unknown.")


def test_what_the_shop_has_done_since_is_not_to_be_tried_first(found: Essentials) -> None:
    first = found.first_to_try
    assert first is not None and found.tried

    one_done = replace(found, tried=tuple(replace(one, is_done=one is first) for one in found.tried))
    all_done = replace(found, tried=tuple(replace(one, is_done=True) for one in found.tried))

    assert one_done.first_to_try not in (None, first)
    assert line(all_done, "try") == "Try first: nothing more. What would have helped is already done."
