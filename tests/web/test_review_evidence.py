"""The pages one press down from a review: times, what happened, what held it, changes to try."""

import re
from dataclasses import replace
from datetime import date, time, timedelta

import pytest
from flask.testing import FlaskClient

from runboard.floor.changing.kept_changes import keep_change, kept_changes
from runboard.floor.changing.runs import Wish, close_run, open_run
from runboard.floor.looking.at_hand import first_person
from runboard.house import House
from runboard.plan.change import Helper, HoursAdded, Times
from runboard.review.changes.nouns import Idea
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import DayPart, Waiting
from runboard.review.happened.why import WHY_WAITING
from runboard.review.measured.study import ElementStudy
from runboard.web.review import times_said
from runboard.words.sentences import message_name, sentence
from tests.web.reviewed import Seen, span3, tried
from tests.web.test_shop_pages import inputs, words

RUN = "/review/runs/r1"
PAGES = ("times", "happened", "held", "changes")


@pytest.mark.parametrize("page", PAGES)
def test_each_page_leads_back_and_to_the_others(client: FlaskClient, seen: Seen, page: str) -> None:
    text = client.get(f"{RUN}/{page}").text

    assert f'<a href="{RUN}">‹ Key rails, run 7</a>' in text
    assert all(f'href="{RUN}/{other}"' in text for other in PAGES if other != page)


@pytest.mark.parametrize("page", PAGES)
def test_nothing_is_styled_in_a_page_and_no_hatching_has_the_name_of_another(
    client: FlaskClient, seen: Seen, page: str
) -> None:
    text = client.get(f"{RUN}/{page}").text

    hatched = re.findall(r'pattern id="([^"]+)"', text)
    assert "style=" not in text
    assert len(set(hatched)) == len(hatched)


@pytest.mark.parametrize("page", PAGES)
def test_every_chart_has_a_name_and_the_same_as_a_table_or_list(client: FlaskClient, seen: Seen, page: str) -> None:
    text = client.get(f"{RUN}/{page}").text

    assert text.count('<svg class="chart') == len(re.findall(r'<svg class="chart [^>]*aria-label="[^"]+"', text))
    assert '<svg class="chart' not in text or "Show as a" in text


@pytest.mark.parametrize("page", PAGES)
def test_a_run_that_nobody_knows_has_no_such_page(client: FlaskClient, seen: Seen, page: str) -> None:
    assert client.get(f"/review/runs/r9/{page}").status_code == 404


def test_a_time_says_how_often_it_was_measured_what_was_left_out_and_what_is_believed_now(
    client: FlaskClient, seen: Seen
) -> None:
    said = words(client.get(f"{RUN}/times"))

    assert "Measured 5 times, give or take 24 s." in said
    assert "Not counted The work was interrupted." in said
    assert "Measure 7 more to be sure within 10 %." in said
    assert "each time the count doubles, one takes 86 % as long (unit-cost learning curve)" in said
    assert "A plan made today uses 2 min 40 s" in said


def test_a_time_that_nobody_measured_is_said_to_be_so_and_not_drawn(client: FlaskClient, seen: Seen) -> None:
    text = client.get(f"{RUN}/times").text.replace("\u00a0", " ")
    packing = text.split("<b>Inspect and pack</b>")[1].split("</form>")[0]

    assert "not measured, guess 2 min" in packing
    assert "<svg" not in packing


def test_everybodys_day_is_drawn_beside_the_planned_one_and_said_as_a_list(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/happened")

    assert 'class="planned-work"' in page.text
    assert re.search(r"\d\d:\d\d–\d\d:\d\d Robin watches: Cut", words(page))
    assert re.search(r"\d\d:\d\d–\d\d:\d\d Kim waits 25 min: no drying rack places free", words(page))


def test_what_was_lost_came_good_and_was_late_stands_there(client: FlaskClient, seen: Seen) -> None:
    said = words(client.get(f"{RUN}/happened"))

    assert "chipped at Clean up ash 3 2" in said
    assert "56 of 60 passed every step first time." in said
    assert (
        "Step by step, the first-time shares multiply to 91 %. They are shares of what reached each step, not" in said
    )
    assert "1 of 2 order lines on time, 1 late." in said
    assert "▲ 8 h late" in said
    assert "6.3 good pieces per hands-on hour." in said
    assert "Not measured, so not in the chart: Inspect and pack." in said


SECTIONS = {
    "hands": "Fit hooks took the most: 2 h 50 of 9 h 10.",
    "days": "2 stretches of work, as they were and as planned.",
    "lost": "2 of 60 started, chipped at Clean up.",
    "waiting": "Trays waited 2 days 21 h (all added up). Most of it: drying, 2 days.",
    "process": "Trays waited longest before Fit hooks: 9 h on average.",
    "orders": "1 of 2 order lines on time, 1 late.",
}


def test_each_section_is_folded_but_the_first_and_says_what_it_shows(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/happened").text.replace("\u00a0", " ")

    found = re.findall(
        r'<details class="section"( open)?><summary><h2>[^<]+</h2><span class="soft">([^<]+)</span></summary>\n<div id="(\w+)">',
        page,
    )
    assert [is_open for is_open, _, _ in found] == [" open", "", "", "", "", ""]
    assert {section: said for _, said, section in found} == SECTIONS


def test_what_took_no_time_to_speak_of_has_no_line(client: FlaskClient, seen: Seen) -> None:
    said = words(client.get(f"{RUN}/happened"))

    assert "No reason given" not in said
    assert "2 walks" not in said
    assert "9 walks" in said


def test_the_list_of_a_day_is_folded_by_who_and_a_day_has_no_row_without_work(client: FlaskClient, seen: Seen) -> None:
    def planned_for_one_more(found: Essentials) -> Essentials:
        begins = found.happened.day[0].began_at
        idle = DayPart("station", "sander", begins, begins + timedelta(hours=1), "work", "hand")
        return replace(found, happened=replace(found.happened, planned=(*found.happened.planned, idle)))

    seen(planned_for_one_more)
    page = client.get(f"{RUN}/happened").text

    assert page.count("<summary>Robin</summary>") == 2
    assert ">Sander</text>" not in page


def test_what_an_open_run_lost_is_of_what_came_to_a_step_whatever_board_it_was_of(
    client: FlaskClient, seen: Seen
) -> None:
    def goes_on(found: Essentials) -> Essentials:
        lost = found.happened.lost[0]
        run = replace(found.past.run, state="open", closed_at=None)
        three = (replace(lost, pieces=1), replace(lost, pieces=1, board="4"), replace(lost, reason="burnt", pieces=1))
        yields = tuple(replace(each, into=45) for each in found.happened.yields)
        happened = replace(found.happened, started=60, scrap=3, lost=three, yields=yields)
        return replace(found, past=replace(found.past, run=run), happened=happened)

    seen(goes_on)

    assert "3 of 45 started, 2 of them chipped at Clean up." in words(client.get(f"{RUN}/happened"))


def test_an_order_line_that_is_not_due_yet_is_not_marked_as_late(client: FlaskClient, seen: Seen) -> None:
    def both_open(found: Essentials) -> Essentials:
        first = replace(found.happened.order_lines[0], done=None, late=None)
        lines = (first, replace(first, due=found.past.until + timedelta(days=2)))
        return replace(found, happened=replace(found.happened, order_lines=lines))

    seen(both_open)
    said = words(client.get(f"{RUN}/happened"))

    assert (said.count("▲ not done"), said.count("not done")) == (1, 3)


def test_a_small_job_of_the_shop_has_its_name_in_the_day(client: FlaskClient, seen: Seen) -> None:
    def with_a_job(found: Essentials) -> Essentials:
        job = found.past.book.jobs[0]
        part = replace(found.happened.day[1], doing="work", kind="job", step=job.key, load="")
        return replace(found, happened=replace(found.happened, day=(part, *found.happened.day)))

    seen(with_a_job)

    assert "Robin: Empty the dust bin" in words(client.get(f"{RUN}/happened"))


def test_a_wait_that_goes_on_beyond_its_sitting_is_said_to_its_own_end(client: FlaskClient, seen: Seen) -> None:
    def overnight(found: Essentials) -> Essentials:
        setup = found.happened.day[0]
        began = setup.began_at + timedelta(minutes=2)
        short = replace(setup, key="kim", ended_at=began)
        night = replace(short, doing="waiting", kind="", began_at=began, ended_at=began + timedelta(hours=16))
        return replace(found, happened=replace(found.happened, day=(setup, short, night), planned=()))

    seen(overnight)
    page = client.get(f"{RUN}/happened")

    waits = re.findall(r"\d\d:\d\d–(\w+) \d\d:\d\d Kim waits 16 h", words(page))
    assert len(waits) == 1
    assert waits[0] in ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
    assert page.text.count('class="goes-on"') == 4, "an arrow of two strokes, down and across"


def test_a_break_between_two_sittings_is_not_drawn(client: FlaskClient, seen: Seen) -> None:
    def with_a_late_hour(found: Essentials) -> Essentials:
        first = found.happened.day[0]
        late = replace(
            first, began_at=first.began_at + timedelta(hours=6), ended_at=first.ended_at + timedelta(hours=6)
        )
        return replace(found, happened=replace(found.happened, day=(*found.happened.day, late)))

    seen(with_a_late_hour)

    assert "3 stretches of work" in words(client.get(f"{RUN}/happened"))


def test_what_was_lost_stands_by_the_age_of_the_cutter(client: FlaskClient, seen: Seen) -> None:
    assert "CNC: new cutter 1 15 0 2 15 2" in words(client.get(f"{RUN}/happened"))


def test_the_process_chart_has_its_signs_and_says_what_the_five_mean(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/happened").text

    table, key = page.split('<table class="figures process">')[1].split("</table>", 1)
    signs = re.findall(r'<svg class="symbol"[^>]*aria-label="(\w+) \(', table)
    assert set(signs) == {"operation", "transport", "delay", "inspection"}
    assert re.findall(r"</svg>\s*([^<]+)</li>", key.split("</ul>")[0]) == [
        "operation (work)",
        "transport (moving)",
        "inspection (checking)",
        "delay (waiting)",
        "storage (put away)",
    ]


@pytest.mark.parametrize("why", WHY_WAITING)
def test_every_reason_to_wait_can_be_said(why: str) -> None:
    assert sentence(message_name("review-waits", why))


def test_saving_off_the_constraint_shows_as_nothing(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/held")

    assert page.text.count(">nothing</text>") == 2  # on the chart
    assert "Drying rack places, 1 h more 1 h 14" in words(page)
    assert "Kim’s time, all 40 min 6 min" in words(page)
    assert "Laser nothing" in words(page)  # in the table


def test_what_held_it_is_asked_for_until_it_is_there(client: FlaskClient, seen: Seen) -> None:
    seen(lambda found: replace(found, held=None, tried=None, is_weighed=False))

    page = client.get(f"{RUN}/held").text
    part = client.get(f"{RUN}/held", headers={"HX-Request": "true"}).text

    assert f'hx-get="{RUN}/held" hx-trigger="every 1s"' in page
    assert part.strip().startswith('<div id="held"')


def test_while_it_is_worked_out_the_page_says_how_long_that_takes_and_what_is_known(
    client: FlaskClient, seen: Seen
) -> None:
    waiting = (
        Waiting("tray", "", "drying", timedelta(hours=9)),
        Waiting("station", "cnc", "no load", timedelta(hours=2)),
    )
    seen(
        lambda found: replace(
            found, held=None, tried=None, is_weighed=False, happened=replace(found.happened, waiting=waiting)
        )
    )

    said = words(client.get(f"{RUN}/held"))

    assert said.count("That takes about 5 seconds") == 1
    assert "Drying 9 h" in said


def test_the_end_of_the_replay_is_called_its_own(client: FlaskClient, seen: Seen) -> None:
    assert "The replay ends 12 min earlier than the run did" in words(client.get(f"{RUN}/held"))


def test_seconds_between_the_ends_of_replay_and_run_are_none(client: FlaskClient, seen: Seen) -> None:
    def alike(found: Essentials) -> Essentials:
        assert found.held is not None and found.held.finished is not None
        return replace(found, held=replace(found.held, replayed=found.held.finished + timedelta(seconds=37)))

    seen(alike)

    assert "The replay ends when the run did." in words(client.get(f"{RUN}/held"))


def test_when_it_held_is_told_of_the_hours_with_somebody_in_the_shop(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/held")

    assert page.text.count('class="watch"') == 3 * 2  # in each row
    assert ">Drying rack places</text>" in page.text and ">3 h 30</text>" in page.text
    assert ">Nobody there" not in page.text.split("<details>")[0]


def test_what_held_it_most_comes_first_on_its_chart(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/held").text

    assert re.findall(r'class="name"[^>]*>([^<]+)<', page)[0] == "Drying rack places"


def test_what_somebody_is_about_to_adopt_stays_while_ideas_are_tried_again(client: FlaskClient, seen: Seen) -> None:
    seen(lambda found: replace(found, is_weighed=False))

    assert f'hx-get="{RUN}/changes?ask=a1"' in client.get(f"{RUN}/changes?ask=a1").text


def test_what_held_it_is_one_story_of_what_it_cost(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/held")
    said = words(page)

    assert "That cost a day (24 h)." in said
    assert "that pushed Oil of tray 6 from" in said and "so the run ended 24 h later by the clock." in said
    assert "the 24 h that it cost are by the clock, nights included." in said
    assert "What the run waited for, hour by hour" in said
    assert "The longest wait is not what cost most" in said
    assert page.text.count('class="work"') == 2 + 1, "the drying rack's stretches, and its bar of an hour's worth"


def test_a_change_says_what_it_would_have_saved_as_a_range_and_when_it_is_paid_back(
    client: FlaskClient, seen: Seen
) -> None:
    said = words(client.get(f"{RUN}/changes"))

    assert "Furthest over its guess: Fit hooks, hand time 2 h 50, guess 1 h 40. A jig may save a fifth." in said
    assert "51 min (42 min to 1 h)" in said
    assert "Paid back after 1.2 runs, about 2 months" in said
    assert said.index("Three more drying rack places") < said.index("Oil before Engrave")


def test_a_change_that_cannot_be_tried_says_why(client: FlaskClient, seen: Seen) -> None:
    assert "These two cannot swap" in words(client.get(f"{RUN}/changes"))


def test_another_idea_is_kept_for_the_run(client: FlaskClient, house: House, seen: Seen) -> None:
    form = {"what": "times", "operation": "hooks", "kind": "hand", "per_cent": "80"}

    answer = client.post(f"{RUN}/changes", data=form)

    assert (answer.status_code, answer.location) == (303, f"{RUN}/changes")
    kept = kept_changes(house.app.extensions["fittings"].settings, "r1")
    assert [change.again for change in kept] == [Times("r1", "hooks", "hand", 80)]
    assert "Fit hooks: hand work takes" in words(client.get(f"{RUN}/changes"))


def test_an_idea_that_says_nothing_gets_a_sentence(client: FlaskClient, seen: Seen) -> None:
    answer = client.post(f"{RUN}/changes", data={"what": "times", "per_cent": "many"})

    assert answer.status_code == 409
    assert "Enter a whole number, such as 5." in words(answer)


def test_a_time_is_overruled_with_a_reason_and_its_history_says_so(
    client: FlaskClient, house: House, seen: Seen
) -> None:
    form = {"step": "hooks", "kind": "hand", "length": "2 min 30 s", "why": "the new jig"}

    answer = client.post(f"{RUN}/times", data=form)

    said = house.workshop.ledger.state.overruled["rails", "hooks", "hand"][-1]
    assert (answer.status_code, answer.location) == (303, f"{RUN}/times?step=hooks&saved={said.event}#saved")
    assert (said.length, said.why) == (timedelta(minutes=2.5), "the new jig")


def test_once_saved_the_page_says_so_and_the_reason_stands_beside_the_time(client: FlaskClient, seen: Seen) -> None:
    form = {"step": "hooks", "kind": "hand", "length": "2:45", "why": "the new jig"}

    page = client.get(client.post(f"{RUN}/times", data=form).location.partition("#")[0])

    said = words(page)
    assert "Fit hooks, hand time. Saved: 2 min 45 s from now on. You said: “the new jig” Take it back" in said
    beside = page.text.split('id="hooks"')[1].split("<details")[0].replace("\u00a0", " ")
    assert re.search(r"Robin set it to 2 min 45 s on .+: “the new jig”", beside)


def test_a_word_is_taken_back_once(client: FlaskClient, house: House, seen: Seen) -> None:
    client.post(f"{RUN}/times", data={"step": "hooks", "kind": "hand", "length": "2:45", "why": "the new jig"})
    event = house.workshop.ledger.state.overruled["rails", "hooks", "hand"][-1].event

    answer = client.post(f"{RUN}/times/back", data={"event": event})
    again = client.post(f"{RUN}/times/back", data={"event": event})

    assert not any(house.workshop.ledger.state.overruled.values())
    assert "Taken back: as it was before." in words(client.get(answer.location.partition("#")[0]))
    assert (again.status_code, "That was already taken back" in words(again)) == (409, True)


def test_no_browser_covers_the_button_with_a_word_of_its_own(client: FlaskClient, seen: Seen) -> None:
    forms = re.findall(r'<form method="post" action="/review/runs/r1/times"[^>]*>', client.get(f"{RUN}/times").text)

    assert forms and all(" novalidate" in form for form in forms)


def test_a_length_is_read_as_a_stopwatch_shows_it(client: FlaskClient, house: House, seen: Seen) -> None:
    client.post(f"{RUN}/times", data={"step": "hooks", "kind": "hand", "length": "2:45", "why": "the new jig"})

    assert house.workshop.ledger.state.overruled["rails", "hooks", "hand"][-1].length == timedelta(
        minutes=2, seconds=45
    )


def test_a_length_like_nothing_that_is_known_is_asked_about_first(
    client: FlaskClient, house: House, seen: Seen
) -> None:
    form = {"step": "hooks", "kind": "hand", "length": "2 h 45", "why": "the new jig"}

    asked = client.post(f"{RUN}/times", data=form)
    kept = {**house.workshop.ledger.state.overruled}
    sure = inputs(asked)
    taken = client.post(f"{RUN}/times", data={**form, "sure": sure["sure"]})

    assert (asked.status_code, kept) == (409, {})
    assert "2 h 45 per piece? It was 2 min 40 s." in words(asked)
    assert 'name="length" class="short" value="2 h 45"' in asked.text
    assert 'name="why" value="the new jig"' in asked.text
    assert taken.status_code == 303


def test_being_sure_of_one_length_says_nothing_of_another(client: FlaskClient, house: House, seen: Seen) -> None:
    form = {"step": "hooks", "kind": "hand", "length": "3 h", "why": "the new jig", "sure": "2:45:00"}

    assert client.post(f"{RUN}/times", data=form).status_code == 409
    assert not house.workshop.ledger.state.overruled


def test_who_pressed_it_is_who_said_it(client: FlaskClient, house: House, seen: Seen) -> None:
    client.post(f"{RUN}/times", data={"step": "hooks", "kind": "hand", "length": "3 min", "why": "the new jig"})

    said = house.workshop.ledger.state.overruled["rails", "hooks", "hand"][-1]
    assert said.person == first_person(house.workshop, "") != ""


@pytest.mark.parametrize("form", [{"length": "soon", "why": "so"}, {"length": "2 min", "why": " "}])
def test_a_time_is_overruled_neither_without_a_length_nor_without_a_reason(
    client: FlaskClient, house: House, seen: Seen, form: dict[str, str]
) -> None:
    answer = client.post(f"{RUN}/times", data={"step": "hooks", "kind": "hand", **form})

    assert answer.status_code == 409
    assert f'name="length" class="short" value="{form["length"]}"' in answer.text
    assert not house.workshop.ledger.state.overruled


def test_the_times_that_matter_come_first_and_the_others_fold_into_a_line_each(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/times")
    first, others = page.text.split('class="chart-key"')[0], words(page).split("The others")[1]

    assert re.findall(r"<h2>([^<]+)</h2>", first) == ["Fit hooks, hand time"]
    assert "2 min 40 s per piece Changed the run by 1 h. Typical of 5 measured times: 33 % more" in words(page)
    assert "Sand 120 : 1 min 35 s, guess 1 min 30 s, 6 % more" in others
    assert page.text.count("<details open") + page.text.count('class="others" open') == 0


def test_the_times_of_the_operation_that_was_asked_for_are_open(client: FlaskClient, seen: Seen) -> None:
    page = client.get(f"{RUN}/times?step=sand:120").text

    opened = page.split('<details class="others" open>')
    assert len(opened) == 2
    assert "<b>Sand 120</b>" in opened[1].split("</summary>")[0]


@pytest.mark.parametrize(
    ("guess", "taken", "said"),
    [
        (65, 56, "14 % less"),
        (100, 138, "40 % more"),
        (100, 120, "20 % more"),
        (60, 61, "as guessed"),
        (175, 190, "9 % more"),
    ],
)
def test_a_percentage_is_that_of_the_two_figures_beside_it(guess: float, taken: float, said: str) -> None:
    at, median = timedelta(seconds=guess), timedelta(seconds=taken)
    study = ElementStudy("cut", "Cut", "cut", "loading", at, at, at, "guess", (median,), median, median, None)

    assert said in times_said.in_a_line(study, "").replace("\u00a0", " ")


def test_where_the_middle_lies_below_the_guess_and_all_of_it_above_both_are_said() -> None:
    guess, typical = timedelta(seconds=125), timedelta(seconds=120)
    study = ElementStudy(
        "pack", "Pack", "pack", "hand", guess, guess, guess, "guess", (typical,) * 3, typical, typical, None,
        taken_total=26 * timedelta(seconds=130), guessed_of_taken=26 * guess,
    )  # fmt: skip

    line, verdict = (
        said.replace("\u00a0", " ") for said in (times_said.in_a_line(study, ""), times_said.verdict(study, None))
    )

    assert line == "changed the run by 2 min; typically 2 min, average 2 min 10 s, guess 2 min 5 s"
    assert "Typical of 3 measured times: 2 min, average 2 min 10 s; the guess was 2 min 5 s." in verdict


def over_and_asked(client: FlaskClient, house: House, idea: str = "a1") -> tuple[str, dict[str, str]]:
    """The changes of the run once it is over, where somebody pressed that idea: what it says, and what Yes sends."""
    close_run(house.workshop, "r1", "run finished")
    answer = client.get(f"{RUN}/changes?ask={idea}")
    revision = re.search(r'name="seen" value="(\d+)"', answer.text)
    assert revision is not None
    return words(answer), {"idea": idea, "seen": revision[1]}


def test_a_press_first_shows_from_what_to_what_and_from_when_on(client: FlaskClient, house: House, seen: Seen) -> None:
    said, _ = over_and_asked(client, house)

    assert "Drying rack places: from 9 to 12 From the next run on. Yes, do it No" in said
    assert rack(house) == 9


def test_what_a_run_that_is_open_has_of_it_is_said(client: FlaskClient, house: House, seen: Seen) -> None:
    open_run(house.workshop, Wish("rails", [{"line": "1", "pieces": 5}], name="Another"))

    said, _ = over_and_asked(client, house)

    assert "From now on. Another is open and gets it at once." in said


def rack(house: House) -> int:
    return next(service.capacity for service in house.workshop.book.services if service.key == "rack")


def test_a_change_is_adopted_by_yes_and_stands_in_the_ledger(client: FlaskClient, house: House, seen: Seen) -> None:
    _, form = over_and_asked(client, house)

    answer = client.post(f"{RUN}/changes/adopt", data=form)

    assert answer.status_code == 303
    assert answer.location.startswith("/review/changes?made=")
    assert rack(house) == 12
    said = words(client.get(answer.location))
    assert "Drying rack places: from 9 to 12 Done. Set in the shop’s settings." in said
    assert "Promised: done sooner by a day (20 h to 25 h), no hands-on time saved." in said
    assert "Once the first run opened after it is finished, it says whether it worked." in said


def test_what_the_shop_has_already_has_no_button_and_is_not_adopted(
    client: FlaskClient, house: House, seen: Seen
) -> None:
    _, form = over_and_asked(client, house)
    client.post(f"{RUN}/changes/adopt", data=form)

    page = client.get(f"{RUN}/changes")
    again = client.post(f"{RUN}/changes/adopt", data=form)

    assert "Already done: Drying rack places, 12 since" in words(page)
    assert "ask=a1" not in page.text
    assert again.status_code == 409
    assert rack(house) == 12


def test_what_was_adopted_is_taken_back_before_anybody_judged_it(client: FlaskClient, house: House, seen: Seen) -> None:
    _, form = over_and_asked(client, house)
    client.post(f"{RUN}/changes/adopt", data=form)
    (line,) = house.workshop.ledger.state.changes
    assert "Take it back" in words(client.get("/review/changes"))

    answer = client.post("/review/changes", data={"adopted": line, "verdict": "back"})

    assert rack(house) == 9
    assert "Taken back: what it changed is as it was before." in words(client.get(answer.location))


def test_what_no_book_can_say_is_noted_for_the_next_run(client: FlaskClient, house: House, seen: Seen) -> None:
    helper = replace(tried()[0], idea=Idea("a4", Helper("r1", "hooks", "robin", 45)))
    seen(lambda found: replace(found, tried=(helper,), together=None))

    said, form = over_and_asked(client, house, "a4")

    assert "A helper at Fit hooks for 45 min" in said
    assert "No setting can say that, so nothing is changed" in said
    client.post(f"{RUN}/changes/adopt", data=form)
    assert "Done already A helper at Fit hooks for 45 min Noted on" in words(client.get(f"{RUN}/changes"))


def test_an_idea_of_a_friend_says_whose_it_was_and_how_it_was_said(
    client: FlaskClient, house: House, seen: Seen
) -> None:
    own = replace(tried()[1], idea=Idea("x", Times("r1", "hooks", "hand", 72)))
    settings = house.app.extensions["fittings"].settings
    heard = {"change": "Fit hooks: 72 %", "answer": "Ana’s idea: 1 min less per piece."}
    kept = keep_change(house.workshop, settings, "r1", heard, "robin", own.idea.change)
    seen(lambda found: replace(found, tried=(replace(own, idea=replace(own.idea, id=kept.id)),), together=None))

    said = words(client.get(f"{RUN}/changes"))

    assert "Fit hooks 28 % quicker Ana’s idea: 1 min less per piece." in said
    assert "Kept to try" not in said


def test_hours_that_a_run_never_had_ask_for_a_day_of_it(client: FlaskClient, seen: Seen) -> None:
    hours = replace(tried()[0], idea=Idea("h", HoursAdded("robin", date(2026, 1, 1), time(18), time(20))))
    seen(lambda found: replace(found, tried=(replace(hours, refused=("try hours", {})),), together=None))

    assert "Choose a day of the run." in words(client.get(f"{RUN}/changes"))


def test_what_not_all_goes_have_says_in_how_many(client: FlaskClient, seen: Seen) -> None:
    some = replace(tried()[0], earlier=span3(0, 1290, 1312), sooner=0.82)
    seen(lambda found: replace(found, tried=(some,), together=None))

    assert "a day (nothing to 22 h, in 8 tries of 10)" in words(client.get(f"{RUN}/changes"))


def test_a_change_of_a_run_that_goes_on_is_not_adopted_yet(client: FlaskClient, house: House, seen: Seen) -> None:
    answer = client.post(f"{RUN}/changes/adopt", data={"idea": "a1", "seen": "1"})

    assert answer.status_code == 409
    assert not house.workshop.ledger.state.changes


def test_what_an_idea_costs_is_kept_with_it(client: FlaskClient, house: House, seen: Seen) -> None:
    answer = client.post(f"{RUN}/changes/cost", data={"idea": "a2", "cost": "12,50"})

    assert answer.status_code == 303
    kept = kept_changes(house.app.extensions["fittings"].settings, "r1")
    assert [(change.again, change.cost) for change in kept] == [(Times("r1", "hooks", "hand", 70), 12.5)]


@pytest.mark.parametrize("cost", ["much", "-1", "1e12"])
def test_a_cost_that_is_none_gets_a_sentence(client: FlaskClient, house: House, seen: Seen, cost: str) -> None:
    answer = client.post(f"{RUN}/changes/cost", data={"idea": "a2", "cost": cost})

    assert answer.status_code == 409
    assert "Write the cost as a number" in words(answer)
    assert kept_changes(house.app.extensions["fittings"].settings, "r1") == []


def test_an_idea_that_the_review_does_not_have_is_not_adopted(client: FlaskClient, seen: Seen) -> None:
    assert client.post(f"{RUN}/changes/adopt", data={"idea": "a9", "seen": "1"}).status_code == 409


def test_a_change_that_made_it_worse_says_more_and_later(client: FlaskClient, seen: Seen) -> None:
    worse = replace(tried()[1], earlier=span3(-50, -20, 10), hands=span3(-12, -8, -4))
    seen(lambda found: replace(found, tried=(worse,), together=None))

    said = words(client.get(f"{RUN}/changes"))

    assert "Done later by 20 min (−10 min to 50 min)" in said
    assert "More hands-on time 8 min (4 min to 12 min)" in said


def test_an_empty_ledger_teaches(client: FlaskClient, seen: Seen) -> None:
    assert "Every change made after a review shows here" in words(client.get("/review/changes"))


def test_what_no_run_can_judge_is_not_judged(client: FlaskClient, seen: Seen) -> None:
    assert client.post("/review/changes", data={"adopted": "x", "verdict": "kept"}).status_code == 409


@pytest.mark.parametrize("page", ["", "/held", "/changes"])
def test_a_part_that_is_asked_for_again_is_the_same_as_on_the_page(client: FlaskClient, seen: Seen, page: str) -> None:
    whole = client.get(f"{RUN}{page}").text
    part = client.get(f"{RUN}{page}", headers={"HX-Request": "true"})

    assert part.status_code == 200
    assert part.text.strip() in whole


def test_a_helper_who_saves_nothing_is_left_out_unless_somebody_keeps_the_idea(client: FlaskClient, seen: Seen) -> None:
    idle = replace(tried()[1], earlier=span3(0, 0, 0), hands=span3(0, 0, 0))
    helper = replace(
        idle, idea=replace(idle.idea, id="a9", change=Helper("r1", "hooks", "robin", 60), because="hands hold")
    )
    seen(lambda found: replace(found, tried=(tried()[0], helper), together=None))

    said = words(client.get(f"{RUN}/changes"))

    assert "hree more drying rack places" in said
    assert "would have saved nothing" not in said


def test_a_wish_stands_below_what_the_run_speaks_for(client: FlaskClient, seen: Seen) -> None:
    wish = replace(tried()[1], idea=replace(tried()[1].idea, id="a8", because=""), earlier=span3(5000, 5000, 5000))
    seen(lambda found: replace(found, tried=(wish, tried()[0]), together=None))

    said = words(client.get(f"{RUN}/changes"))

    assert said.index("hree more drying rack places") < said.index("Your ideas, if they work out")
    assert said.index("Your ideas, if they work out") < said.index("Fit hooks 30 % quicker Done", 200)
