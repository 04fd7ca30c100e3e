"""Charts: what is not measured is never drawn as nought, and each says in words what it is."""

import re
from itertools import pairwise

from markupsafe import Markup

from runboard.charts.activity import Row, Stretch, activity, hours_of
from runboard.charts.bars import (
    WIDTH,
    Bar,
    Beside,
    Held,
    Limits,
    Strip,
    bars,
    bars_beside,
    control,
    over_time,
    pareto,
    strip,
)
from runboard.charts.svg import LETTER


def boxes(chart: Markup, kind: str) -> list[dict[str, float]]:
    """The boxes of one kind."""
    found = re.findall(rf'<rect class="{kind}" x="([-\d.]+)" y="([-\d.]+)" width="([\d.]+)" height="([\d.]+)"', chart)
    return [dict(zip(("x", "y", "width", "height"), map(float, box), strict=True)) for box in found]


def test_bars_are_as_long_as_what_they_show() -> None:
    chart = bars_beside(
        "k", "Times", [Beside("Cut", 50, 100, "1 h 40"), Beside("Sand", 25, 50, "50 min")], "not measured"
    )

    taken, guessed = boxes(chart, "work"), boxes(chart, "guess")
    assert taken[0]["width"] == 2 * taken[1]["width"] == 2 * guessed[0]["width"]


def test_the_machines_part_of_a_bar_is_hatched_behind_that_of_hands() -> None:
    chart = bars_beside("k", "Times", [Beside("Engrave", 90, 108, "1 h 48", machine=81)], "not measured")

    (hands,), (machine,) = boxes(chart, "work"), boxes(chart, "watch")
    assert machine["x"] == hands["x"] + hands["width"]
    assert round(machine["width"] / hands["width"]) == 3


def test_what_is_not_measured_is_dotted_and_said_and_no_bar() -> None:
    chart = bars_beside("k", "Times", [Beside("Cut", 50, None, "")], "not measured")

    assert boxes(chart, "work") == []
    assert boxes(chart, "unknown")[0]["width"] > 10
    assert 'fill="url(#unknown-k)"' in chart
    assert ">not measured</text>" in chart


def test_nought_that_is_known_has_no_bar_and_its_figure() -> None:
    chart = bars("k", "Worth", [Bar("Robin", 48, "48 min"), Bar("CNC", 0, "nothing")])

    assert len(boxes(chart, "work")) == 1
    assert ">nothing</text>" in chart


def test_a_bar_too_short_to_see_is_seen() -> None:
    chart = bars("k", "Worth", [Bar("Robin", 10_000, "a week"), Bar("CNC", 0.1, "6 s")])

    assert min(box["width"] for box in boxes(chart, "work")) == 1.0


def test_a_pareto_marks_what_together_makes_four_fifths() -> None:
    found = pareto([("a", 10, ""), ("b", 50, ""), ("c", 35, ""), ("d", 5, "")])

    assert [(bar.name, bar.is_marked) for bar in found] == [("b", True), ("c", True), ("a", False), ("d", False)]


def test_few_times_are_dots_without_a_box() -> None:
    few = strip("k", "Times", Strip([1, 2, 3, 4], 2), 5)
    many = strip("k", "Times", Strip([1, 2, 3, 4, 5], 2), 5)

    assert (len(boxes(few, "dot")), boxes(few, "middle")) == (4, [])
    assert (len(boxes(many, "dot")), len(boxes(many, "middle"))) == (5, 1)


def test_what_was_left_out_is_crossed_and_no_dot() -> None:
    chart = strip("k", "Times", Strip([1, 2], 2, out=[4]), 5)

    assert len(boxes(chart, "dot")) == 2
    assert chart.count('class="out"') == 2


def test_a_point_outside_its_limits_has_another_shape() -> None:
    chart = control("k", "Cut", [10, 11, 30, 10], Limits(12, 5, 20), ("5", "12", "20"), out=[2])

    assert (len(boxes(chart, "dot")), len(boxes(chart, "outside"))) == (3, 1)
    assert chart.count('class="limit"') == 2


def test_no_line_of_a_control_chart_runs_through_what_is_said_of_it() -> None:
    chart = control("k", "Cut", [10, 10.2, 30], Limits(12, 11.5, 12.4), ("3 min 30 s", "3 min 35 s", "5 min 15 s"))

    ends = [float(x) for x in re.findall(r'class="(?:limit|centre)"[^>]*x2="([\d.]+)"', chart)]
    says = [float(y) for y in re.findall(r'<text class="figure over" x="[\d.]+" y="([\d.]+)"', chart)]
    assert max(ends) < WIDTH - len("3 min 30 s") * LETTER
    assert all(below - above >= 15 for below, above in pairwise(says))


def test_points_without_limits_are_still_shown() -> None:
    chart = control("k", "Cut", [10], Limits(10), ("", "10", ""))

    assert len(boxes(chart, "dot")) == 1
    assert 'class="limit"' not in chart


def test_rows_over_time_lie_where_they_held() -> None:
    chart = over_time("k", "Held", [Held("Rack", "1 h", [(0, 30), (90, 120)])], 120, [(0, ["Mon"]), (60, ["Tue"])])

    first, second = boxes(chart, "work")
    assert (first["x"], round(second["x"] / first["width"])) == (0, 3)


def test_all_days_over_time_have_their_words_in_the_longest_form_that_fits() -> None:
    days = [(at * 23.5, (f"Mon {at + 1} March", f"M{at + 1}")) for at in range(6)]

    chart = over_time("k", "Held", [Held("Rack", "1 h", [(0, 30)])], 120, days)

    assert re.findall(r'class="clock"[^>]*>([^<]+)<', chart) == ["M1", "M2", "M3", "M4", "M5", "M6"]


def test_the_last_days_word_ends_at_the_edge_however_wide_its_letters_are() -> None:
    chart = over_time(
        "k", "Held", [Held("Rack", "1 h", [(0, 30)])], 120, [(0, ["Mon 2 March"]), (110, ["Mon 23 March"])]
    )

    assert re.findall(r'<text[^>]*class="clock"[^>]*text-anchor="end"[^>]*>([^<]+)<', chart) == ["Mon 23 March"]


def test_when_nobody_is_there_is_hatched_and_no_line_over_time_crosses_a_word() -> None:
    chart = over_time("k", "Held", [Held("Rack", "1 h", [(0, 30)])], 120, [(0, ["Mon"]), (60, ["Tue"])], [(55, 60)])

    (away,) = boxes(chart, "watch")
    lines = [tuple(map(float, ends)) for ends in re.findall(r'y1="([\d.]+)"[^>]* y2="([\d.]+)"', chart)]
    words = [float(y) for y in re.findall(r'<text[^>]* y="([\d.]+)"', chart)]
    assert round(away["width"]) == round(5 / 120 * 326)
    assert not [(top, y) for top, end in lines for y in words if top < y <= end]


def test_a_day_is_drawn_down_for_a_phone_and_across_for_a_tablet() -> None:
    row = Row("Robin", [Stretch(0, 60, "work", "Cut"), Stretch(60, 90, "watch")], [Stretch(0, 50, "work")])

    chart = activity("k", "Monday", [row], 90, [(0, "08:00"), (60, "09:00")])

    down, across = boxes(chart, "work")
    assert down["height"] == 2 * boxes(chart, "watch")[0]["height"]
    assert round(across["width"]) == round(2 * boxes(chart, "watch")[1]["width"])
    assert all(box["width"] < down["width"] for box in boxes(chart, "planned-work")[:1])
    assert set(re.findall(r'pattern id="([^"]+)"', chart)) == {"watch-ka", "watch-kb"}


def test_hours_stand_as_far_apart_as_their_words_need() -> None:
    assert list(hours_of(0, 300, 40)) == [0, 60, 120, 180, 240, 300]
    assert list(hours_of(30, 600, 100)) == [120, 240, 360, 480, 600]
    assert list(hours_of(10, 50, 5)) == [15, 30, 45]


def test_a_day_has_room_for_the_longest_name_of_its_rows() -> None:
    rows = [Row("Finishing bench", [Stretch(0, 60, "work")]), Row("Packing table", [Stretch(0, 60, "work")])]

    chart = activity("k", "Monday", rows, 60, [])

    assert chart.count(">Finishing bench</text>") == chart.count(">Packing table</text>") == 2


def test_the_longest_name_of_the_bars_is_whole() -> None:
    assert ">Inspect and pack</text>" in bars_beside("k", "Times", [Beside("Inspect and pack", 1, 1, "1 min")], "")


def test_what_is_written_on_a_chart_is_text_and_never_markup() -> None:
    chart = bars("k", '"a" & b', [Bar("<b>Cut</b>", 1, "<i>")])

    assert "<b>" not in chart
    assert "&lt;b&gt;" in chart
    assert 'aria-label="&#34;a&#34; &amp; b"' in chart


def test_a_bar_of_a_day_says_its_step_or_its_short_form_or_its_letter() -> None:
    long, middle, short = (
        Stretch(at, at + length, "work", "Sand 120", ("S120", "S")) for at, length in ((0, 90), (90, 25), (120, 12))
    )

    chart = activity("k", "Monday", [Row("Robin", [long, middle, short])], 300, [])

    across = chart.split("<svg")[2]
    assert re.findall(r'<text class="on-work[^>]*>([^<]+)<', across) == ["Sand 120", "S120", "S"]


def test_a_long_name_of_a_day_is_in_lines_and_whole() -> None:
    name = "The old bench with the wooden vice behind the window"

    chart = activity("k", "Monday", [Row(name, [Stretch(0, 60, "work")])], 60, [])

    lines = re.findall(r'<text class="name"[^>]*>([^<]+)<', chart.split("<svg")[2])
    assert len(lines) > 1
    assert " ".join(lines) == name
