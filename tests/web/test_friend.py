"""A review is sent to a friend as a file, shown by a code that opens nothing else, and the answers come back to their operation."""

import io
import json
import re
from collections.abc import Iterator
from dataclasses import replace
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from runboard.app import build
from runboard.cards.friends_file import FriendsFile
from runboard.floor.changing.answers import kept_answers, opened_in_file
from runboard.floor.changing.kept_changes import kept_changes
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.letting_in.friend_codes import MOST_SHEETS
from runboard.floor.letting_in.tries import MOST_FROM_ONE
from runboard.floor.looking import review as looking
from runboard.house import House, Settings
from runboard.plan.change import Change, OneVisit, Swapped, Times
from runboard.web.fittings import fitted
from runboard.web.review.friend_code import KEPT_SECONDS
from runboard.web.trays import card_desk
from tests.attack.cast import device_with
from tests.attack.matrix import routes
from tests.attack.promises import who_may
from tests.attack.sentences import sentence_in
from tests.cards.friends import NAMES, ORDERS, essentials_of, named_record
from tests.conftest import HandClock
from tests.web.at_once import AtOnce

PAGE = "/review/runs/r1/answers"
HOOKS = {"operation": "hooks", "do": "simplify", "why": "A stop on the jig.", "saves_minutes": 0.5}


@pytest.fixture(autouse=True)
def _essentials(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(looking, "essentials_at", essentials_of, raising=False)


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    """A shop in which devices have to pair."""
    built = build(Settings(tmp_path, clock, plans=False))
    built.workshop.books.save(named_record(), clock.now())
    open_run(built.workshop, Wish("rail", ORDERS, name="Rails for Tessa Quill"), "ann")
    open_run(built.workshop, Wish("rail", [{"line": "1", "pieces": 5}], name="Run 8"), "ann")
    fitted(built.app).cards.work = AtOnce()
    yield built
    built.close()


@pytest.fixture
def lead(house: House) -> FlaskClient:
    return device_with(house, "lead")[0]


@pytest.fixture
def friend(house: House) -> FlaskClient:
    """A phone that nobody paired."""
    return house.app.test_client()


def a_file(house: House, *answers: Any, run: str = "r1", **more: Any) -> bytes:
    opened = opened_in_file(house.workshop.ledger.state.runs[run])
    record = {"runboard_answers": 1, "run": run, "opened": opened, "from": "Sam", "answers": list(answers or (HOOKS,))}
    return json.dumps({**record, **more}).encode()


def sent(client: FlaskClient, raw: bytes, page: str = PAGE) -> TestResponse:
    return client.post(page, data={"file": (io.BytesIO(raw), "answers.json")})


def words(answer: TestResponse) -> str:
    return re.sub(r"\s+", " ", unescape(re.sub(r"<[^>]+>", " ", answer.text)))


def code(lead: FlaskClient, **form: str) -> str:
    """The path of a code's link, as the page shows it once."""
    answer = lead.post("/review/runs/r1/codes", data={"days": "7", **form})
    assert answer.status_code == 200 and answer.headers["Cache-Control"] == "no-store"
    return re.findall(r"/friend/[\w-]+", answer.text)[0]


# the file


def test_the_file_is_saved_without_names_and_with_them_where_they_are_wanted(lead: FlaskClient) -> None:
    plain, named = (lead.get(f"/review/runs/r1/friend.html{query}") for query in ("", "?names=1"))

    assert (
        plain.headers["Content-Disposition"]
        == "attachment; filename=review-entry-key-rails-started-sat-7-mar-2026.html"
    )
    assert [name for name in NAMES if name in plain.text] == []
    assert "Clean up as the helper likes it" in plain.text and "Clean up as Bendix likes it" in named.text


def test_the_pdf_is_made_beside_the_server(lead: FlaskClient, monkeypatch: pytest.MonkeyPatch) -> None:
    """By ``write_friends_pdf``, which ``tests/cards`` looks at."""

    def write(file: FriendsFile, out: Path, told: object) -> int:
        out.write_text(file.title + file.operations[1].name)
        return 7

    monkeypatch.setattr(card_desk, "write_friends_pdf", write)
    asked = lead.post("/review/runs/r1/friend")

    assert "Ready: 7 pages" in lead.get(asked.location).text
    pdf = lead.get(f"{asked.location}.pdf")
    assert (pdf.content_type, pdf.text) == (
        "application/pdf",
        "Entry key rails, started Sat 7 Mar 2026Clean up as the helper likes it",
    )
    assert pdf.headers["Content-Disposition"] == 'inline; filename="review-entry-key-rails-started-sat-7-mar-2026.pdf"'
    assert lead.get(asked.location.replace("r1", "r2")).status_code == 303


@pytest.mark.parametrize("method", ["get", "post"])
def test_no_file_is_made_before_what_takes_long_is_there(
    lead: FlaskClient, method: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(looking, "essentials_at", lambda *of: replace(essentials_of(*of), is_weighed=False))

    answer = lead.get("/review/runs/r1/friend.html") if method == "get" else lead.post("/review/runs/r1/friend")

    assert answer.status_code == 409 and "still being worked out" in words(answer)


# answers that come back


def test_answers_of_a_file_stand_at_their_operation(house: House, lead: FlaskClient) -> None:
    answer = lead.get(sent(lead, a_file(house)).location)

    assert "One answer taken in." in words(answer)
    at_hooks = answer.text.split('id="hooks"')[1]
    assert all(
        said in at_hooks for said in ("Simplify", "saves about 0.5\u00a0min per piece", "A stop on the jig.", "Sam")
    )


def test_new_answers_are_said_on_the_first_page_until_something_becomes_of_them(
    house: House, lead: FlaskClient
) -> None:
    sent(lead, a_file(house))
    assert "A second pair of eyes 1 new answer" in words(lead.get("/review/runs/r1"))

    lead.post(f"{PAGE}/{kept_answers(house.store.settings, 'r1')[0].id}", data={"becomes": "aside"})

    assert "new answer" not in words(lead.get("/review/runs/r1"))


def test_text_from_a_message_is_taken_as_well(house: House, lead: FlaskClient) -> None:
    opened = opened_in_file(house.workshop.ledger.state.runs["r1"])
    text = f"runboard answers 1\nrun: r1 {opened}\nfrom: Sam\n[hooks] Hooks\ndo: combine\nwhy:\nsaves:\n"

    assert lead.post(PAGE, data={"text": text}).location.endswith("new=1&known=0")


def test_the_same_file_twice_says_that_it_is_known(house: House, lead: FlaskClient) -> None:
    for _ in range(2):
        answer = sent(lead, a_file(house))

    assert "Nothing new: the answer was already here." in words(lead.get(answer.location))
    assert len(kept_answers(house.store.settings, "r1")) == 1


def test_what_cannot_be_taken_is_said_and_what_was_put_in_stands_there_still(house: House, lead: FlaskClient) -> None:
    other = sent(lead, a_file(house, run="r2"))
    text = lead.post(PAGE, data={"text": "Dear Ann, no time. <b>"})
    too_long = sent(lead, b"{" + b" " * 500_000)
    nothing = lead.post(PAGE)

    assert [one.status_code for one in (other, text, too_long, nothing)] == [422] * 4
    assert "These are answers to the review of Run 8." in words(other)
    assert "These are not answers to a review" in words(text) and "Dear Ann, no time. &lt;b&gt;" in text.text
    assert "400 kB at most" in words(too_long)
    assert "Choose the file your friend sent" in words(nothing)
    assert kept_answers(house.store.settings, "r1") == []


def test_an_answer_is_set_aside_and_brought_back(house: House, lead: FlaskClient) -> None:
    sent(lead, a_file(house))
    address = f"{PAGE}/{kept_answers(house.store.settings, 'r1')[0].id}"

    aside = lead.post(address, data={"becomes": "aside"})
    assert "· set aside" in words(lead.get(aside.location))
    lead.post(address, data={"becomes": "back"})

    assert kept_answers(house.store.settings, "r1")[0].state == "new"
    assert lead.post(address, data={"becomes": "gone"}).status_code == 400
    assert lead.post(f"{PAGE}/nobody", data={"becomes": "aside"}).status_code == 404


@pytest.mark.parametrize(
    ("answer", "change"),
    [
        # 102 minutes of hands for 58 good pieces: 1.76 a piece.
        ({"do": "simplify", "saves_minutes": 0.5}, Times("r1", "hooks", "hand", 72)),
        ({"do": "combine", "saves_minutes": 0.5}, Times("r1", "hooks", "hand", 72)),
        ({"do": "simplify", "saves_minutes": 99}, Times("r1", "hooks", "hand", 10)),
        ({"do": "eliminate", "saves_minutes": None}, Times("r1", "hooks", "hand", 10)),
        # No work by hand, 150 minutes in all.
        ({"do": "simplify", "saves_minutes": 0.5, "operation": "cut"}, Times("r1", "cut", "", 81)),
        ({"do": "rearrange", "saves_minutes": None, "operation": "cut"}, Swapped("r1", "cut")),
        ({"do": "rearrange", "saves_minutes": None}, Swapped("r1", "oil")),
        ({"do": "combine", "saves_minutes": None, "operation": "clean"}, OneVisit("r1", "clean")),
    ],
)
def test_one_press_makes_of_an_answer_a_change_to_try(
    house: House, lead: FlaskClient, answer: dict[str, Any], change: Change
) -> None:
    sent(lead, a_file(house, {**HOOKS, **answer}))

    tried = lead.post(f"{PAGE}/{kept_answers(house.store.settings, 'r1')[0].id}", data={"becomes": "try"})

    assert tried.location == "/review/runs/r1/changes"
    kept = kept_changes(house.store.settings, "r1")
    assert [one.again for one in kept] == [change]
    assert kept[0].answer.startswith("Sam’s idea: ")
    assert kept[0].answer.endswith(". A stop on the jig.")
    assert kept_answers(house.store.settings, "r1")[0].state == "tried"


@pytest.mark.parametrize("answer", [{"saves_minutes": None}, {"operation": "sand"}])
def test_an_answer_that_does_not_say_enough_opens_its_form(
    house: House, lead: FlaskClient, answer: dict[str, Any]
) -> None:
    """How much is saved, or what it took, is not known."""
    sent(lead, a_file(house, {**HOOKS, **answer}))

    tried = lead.post(f"{PAGE}/{kept_answers(house.store.settings, 'r1')[0].id}", data={"becomes": "try"})

    operation = answer.get("operation", "hooks")
    assert tried.location == f"/review/runs/r1/changes?what=times&operation={operation}&kind=hand#own"
    assert kept_changes(house.store.settings, "r1") == []


def test_what_a_friend_wrote_is_text(house: House, lead: FlaskClient) -> None:
    sent(lead, a_file(house, {**HOOKS, "why": "<script>alert(1)</script>"}, **{"from": "<b>Sam"}))

    page = lead.get(PAGE).text
    assert "&lt;script&gt;alert(1)" in page and "&lt;b&gt;Sam" in page and "<script>alert" not in page


def test_a_helpers_phone_looks_and_changes_nothing(house: House) -> None:
    crew, _ = device_with(house, "crew")

    assert crew.get(PAGE).status_code == 200 and "Take answers in" not in crew.get(PAGE).text
    assert sent(crew, a_file(house)).status_code == 403


# by a code


def test_a_code_opens_the_review_without_names_and_its_form_sends_answers(
    house: House, lead: FlaskClient, friend: FlaskClient
) -> None:
    path = code(lead)
    page = friend.get(path)
    assert page.status_code == 200 and page.headers["Cache-Control"] == "no-store"
    assert [name for name in NAMES if name in page.text] == []

    hidden = dict(re.findall(r'type="hidden" name="(\w+)" value="([^"]*)"', page.text))
    form = {
        **hidden,
        "do-hooks": "simplify",
        "why-hooks": "A stop.",
        "saves-hooks": "0,5",
        "why-cut": "",
        "from": "Sam",
    }
    answer = friend.post(path, data=form)

    assert "Thank you!" in friend.get(answer.location).text
    kept = kept_answers(house.store.settings, "r1")
    assert [(one.friend, one.operation, one.do, one.saves_minutes) for one in kept] == [
        ("Sam", "hooks", "simplify", 0.5)
    ]
    assert "answered once" in words(lead.get(PAGE))


def test_a_code_shows_names_where_the_lead_ticked_them(lead: FlaskClient, friend: FlaskClient) -> None:
    assert "Clean up as Bendix likes it" in friend.get(code(lead, names="1")).text


def test_who_loads_it_again_and_again_has_it_made_once_in_a_while(
    lead: FlaskClient, friend: FlaskClient, clock: HandClock, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, made = code(lead), []
    monkeypatch.setattr(looking, "essentials_at", lambda *of: made.append(of) or essentials_of(*of))

    for _ in range(5):
        friend.get(path)
    assert len(made) == 1
    clock.forward(seconds=KEPT_SECONDS)
    friend.get(path)

    assert len(made) == 2


def test_what_the_form_cannot_take_stands_there_again(lead: FlaskClient, friend: FlaskClient) -> None:
    path = code(lead)
    hidden = dict(re.findall(r'type="hidden" name="(\w+)" value="([^"]*)"', friend.get(path).text))

    answer = friend.post(path, data={**hidden, "why-hooks": "A stop <here>.", "saves-hooks": "much"})

    assert answer.status_code == 422
    assert "saves no number of minutes" in answer.text and "A stop &lt;here&gt;." in answer.text


def test_a_code_opens_nothing_else(house: House, lead: FlaskClient, friend: FlaskClient) -> None:
    friend.get(code(lead))

    for method, address, endpoint in routes(house):
        promised = who_may(endpoint)
        if promised is not None and "nobody" not in promised and not address.startswith("/static/"):
            assert friend.open(address, method=method).status_code == 401, (method, address)
    assert friend.get("/review/runs/r1").status_code == 401
    assert not friend.get_cookie("runboard")


def test_a_code_that_was_taken_back_or_is_over_says_so_and_shows_nothing(
    lead: FlaskClient, friend: FlaskClient, clock: HandClock
) -> None:
    revoked, over = code(lead), code(lead, days="1")
    address = re.findall(r'action="(/review/runs/r1/codes/\w+/revoke)"', lead.get(PAGE).text)[1]

    lead.post(address)
    clock.forward(days=1)

    for path, why in ((revoked, "was taken back"), (over, "This code ended"), ("/friend/nothing", "opens no review")):
        for answer in (friend.get(path), friend.post(path, data={"do-hooks": "leave"})):
            assert answer.status_code == (404 if path == "/friend/nothing" else 410)
            assert why in sentence_in(answer) and "Hooks" not in answer.text


def test_who_guesses_codes_has_to_wait_and_nobody_else(lead: FlaskClient, friend: FlaskClient) -> None:
    path = code(lead)
    for _ in range(MOST_FROM_ONE):
        friend.get("/friend/guess", environ_base={"REMOTE_ADDR": "10.0.0.9"})

    there = friend.get(path, environ_base={"REMOTE_ADDR": "10.0.0.9"})
    here = friend.get(path, environ_base={"REMOTE_ADDR": "10.0.0.8"})

    assert (there.status_code, here.status_code) == (429, 200)


def test_one_code_takes_so_many_sheets_of_bounded_size(house: House, lead: FlaskClient, friend: FlaskClient) -> None:
    path = code(lead)
    hidden = dict(re.findall(r'type="hidden" name="(\w+)" value="([^"]*)"', friend.get(path).text))
    for number in range(MOST_SHEETS):
        assert friend.post(path, data={**hidden, "why-cut": str(number)}).status_code == 303

    assert "Enough answers came" in friend.post(path, data={**hidden, "why-cut": "more"}).text
    assert friend.post(path, data={**hidden, "why-cut": "x" * 30_000}).status_code == 413
    assert len(kept_answers(house.store.settings, "r1")) == MOST_SHEETS


@pytest.mark.parametrize("days", ["0", "31", "a week", ""])
def test_a_code_for_no_number_of_days_is_not_made(lead: FlaskClient, days: str) -> None:
    answer = lead.post("/review/runs/r1/codes", data={"days": days})

    assert answer.status_code == 422 and "Choose from 1 to 30 days." in words(answer)


def test_a_page_of_another_site_sends_nothing_by_a_code(lead: FlaskClient, friend: FlaskClient) -> None:
    answer = friend.post(code(lead), data={"do-cut": "leave"}, headers={"Origin": "https://elsewhere.example"})

    assert answer.status_code == 403
