"""The first screen of a review: five lines, one picture, and where the evidence is."""

from dataclasses import replace
from datetime import timedelta

import pytest
from flask.testing import FlaskClient

from runboard.floor.looking import review as looking
from runboard.floor.workshop import Workshop
from runboard.review.essentials import Essentials
from runboard.run.refusal import Refused
from runboard.words.facts import unbroken as unbroken_on_a_page
from tests.web import reviewed
from tests.web.reviewed import Seen
from tests.web.test_shop_pages import words

RUN = "/review/runs/r1"


def unbroken(text: str) -> str:
    return text.replace("\u00a0", " ")


def test_a_review_says_it_in_five_lines(client: FlaskClient, seen: Seen) -> None:
    said = unbroken(words(client.get(RUN)))

    for line in (
        "58 of 60 good. 9 h 10 hands-on, 9½ min per piece.",
        "Furthest from the guess: Fit hooks took 2 h 50, guess 1 h 40.",
        "Lost: 2, chipped at Clean up, both from board 3.",
        "Bottleneck: the drying rack places, all nine in use on Sunday and Monday evening. That cost a day (24 h).",
        "Try first: three more drying rack places. Finishes a day sooner.",
    ):
        assert line in said


@pytest.mark.parametrize(
    "span", ["1 h 08", "9½ min", "17 days 11 h", "1 day 2 h", "45 s", "1 min 36 s", "5 to 9", "20 h to 22 h"]
)
def test_no_line_ends_within_a_span_of_time(span: str) -> None:
    assert unbroken_on_a_page(f"took {span}.") == f"took {span.replace(' ', chr(0xA0))}."


def test_when_it_was_done_against_its_promise_stands_under_its_name(client: FlaskClient, seen: Seen) -> None:
    said = unbroken(words(client.get(RUN)))

    assert said.index("Key rails, run 7") < said.index("a day later than first planned.") < said.index("58 of 60 good")


def test_the_picture_tells_hands_from_machines(client: FlaskClient, seen: Seen) -> None:
    page = client.get(RUN)

    assert "hands-on machines guess" in words(page)
    assert "url(#watch-operations)" in page.text


def test_each_line_leads_to_its_evidence(client: FlaskClient, seen: Seen) -> None:
    page = client.get(RUN).text

    for where in ("happened#hands", "times#hooks", "happened#lost", "held", "changes"):
        assert f'<a href="{RUN}/{where}">' in page


def test_what_is_worked_out_still_says_so_and_asks_again_for_its_part_alone(client: FlaskClient, seen: Seen) -> None:
    seen(lambda found: replace(found, held=None, tried=None, together=None, is_weighed=False))

    page = client.get(RUN)
    part = client.get(RUN, headers={"HX-Request": "true"})

    assert "Bottleneck: working it out…" in words(page)
    assert f'hx-get="{RUN}" hx-trigger="every 1s"' in page.text
    assert part.text.strip().startswith('<ul class="five" id="lines"')
    assert "<svg" not in part.text


def test_what_is_there_asks_no_more(client: FlaskClient, seen: Seen) -> None:
    assert "hx-get" not in client.get(RUN).text


def test_an_operation_that_was_not_measured_has_no_bar_of_nought(client: FlaskClient, seen: Seen) -> None:
    page = client.get(RUN).text

    assert 'class="unknown"' in page
    assert "not measured</text>" in page
    assert 'width="0"' not in page


def test_where_little_was_measured_that_comes_first_with_the_presses_that_tell_most(
    client: FlaskClient, seen: Seen
) -> None:
    seen(lambda found: replace(found, study=replace(found.study, share=0.413)))

    said = words(client.get(RUN))

    assert said.index("Only 41 % of the time was measured") < said.index("58 of 60 good")
    assert (
        "Next time, these three presses would help most: Start at Inspect and pack, Done at Sand 120 and Start at Oil."
        in said
    )


def test_an_open_run_says_so_far(client: FlaskClient, seen: Seen) -> None:
    def going_on(found: Essentials) -> Essentials:
        run = replace(found.past.run, state="open", closed_at=None)
        return replace(
            found, past=replace(found.past, run=run), happened=replace(found.happened, good=20, lost=(), scrap=0)
        )

    seen(going_on)
    said = unbroken(words(client.get(RUN)))

    assert "So far 20 of 60 good. 9 h 10 hands-on." in said
    assert "Lost so far: none." in said


def test_a_run_of_which_nothing_was_pressed_teaches(client: FlaskClient, seen: Seen) -> None:
    seen(
        lambda found: replace(
            found, happened=replace(found.happened, good=0, scrap=0, hands=timedelta(0), lost=(), bars=())
        )
    )

    assert "Nothing has been entered for this run yet" in words(client.get(RUN))


def test_a_run_that_nobody_knows_is_not_found(client: FlaskClient, seen: Seen) -> None:
    assert client.get("/review/runs/r9").status_code == 404


def test_where_the_replay_failed_the_rest_is_said_all_the_same(
    client: FlaskClient, seen: Seen, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(workshop: Workshop, run: str) -> Essentials:
        raise Refused("review failed")

    made_up = reviewed.essentials_at
    monkeypatch.setattr(looking, "essentials_at", fails)
    monkeypatch.setattr(looking, "past_of", lambda workshop, run: made_up(workshop, run).past)

    answer = client.get(f"{RUN}/held")

    assert answer.status_code == 200
    assert "Bottleneck: unknown." in words(answer)
    assert "hx-get" not in answer.text


def test_while_other_long_work_goes_on_a_review_is_asked_for_again(
    client: FlaskClient, seen: Seen, monkeypatch: pytest.MonkeyPatch
) -> None:
    def is_busy(workshop: Workshop, run: str) -> Essentials:
        raise Refused("try busy")

    made_up = reviewed.essentials_at
    monkeypatch.setattr(looking, "essentials_at", is_busy)
    monkeypatch.setattr(looking, "past_of", lambda workshop, run: made_up(workshop, run).past)

    answer = client.get(f"{RUN}/held")

    assert "Bottleneck: working it out…" in words(answer)
    assert "hx-get" in answer.text
