"""Each kind of question on its page: as its form begins it is answered or refused in a sentence, and never fails."""

import time
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.demo.book import demo_book
from runboard.demo.files import PROGRAM, rail_board_program
from runboard.house import House
from runboard.plan.before.kinds import KINDS
from runboard.web.fittings import fitted
from tests.conftest import START
from tests.web.at_once_here import Here
from tests.web.test_shop_pages import as_a_browser_posts

SAMPLES = {".ngc": rail_board_program().encode(), ".svg": b'<svg xmlns="http://www.w3.org/2000/svg"/>'}
BAD = {
    "empty drawing": b"<svg/>",
    "outside": b'<!DOCTYPE svg [<!ENTITY e SYSTEM "file:///etc/passwd">]><svg xmlns="http://www.w3.org/2000/svg"><text>&e;</text></svg>',
    "endless": b"<!DOCTYPE svg ["
    + b"".join(b'<!ENTITY e%d "%s">' % (at + 1, b"&e%d;" % at * 10) for at in range(9))
    + b']><svg xmlns="http://www.w3.org/2000/svg"><text>&e9;</text></svg>',
    "broken": b"<svg xmlns='http://www.w3.org/2000/svg'><path d='M0 0 L",
    "binary": b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR",
    "words": "Zwölf Haken, bitte.\n".encode("latin-1"),
}
READING = [kind.name for kind in KINDS.values() if kind.endings]


@pytest.fixture(autouse=True)
def demo(house: House) -> None:
    fitted(house.app).answers.work = Here()
    house.workshop.books.save(demo_book(START, "Europe/Berlin"), START)


def answered(client: FlaskClient, posted: Any) -> Any:
    page = posted if posted.status_code != 303 else client.get(posted.location)
    for _ in range(300):
        if "Working it out" not in page.text:
            return page
        time.sleep(0.1)
        page = client.get(posted.location)
    raise AssertionError("no answer came")


def asked(client: FlaskClient, name: str, content: bytes | None = None, called: str = "") -> Any:
    form = client.get(f"/before/{name}?product=rails")
    fields: dict[str, Any] = dict(as_a_browser_posts(form.text[form.text.index('<form class="question"') :]))
    if content is not None:
        sent = client.post("/before/file", data={"product": "rails", "file": (_file(content), called)})
        digest = sent.location.partition("file.digest=")[2][:64]
        fields |= {"file.digest": [digest], "file.name": [called]}
    return answered(client, client.post(f"/before/{name}", data=fields))


def _file(content: bytes) -> Any:
    import io

    return io.BytesIO(content)


@pytest.mark.parametrize("name", KINDS)
def test_a_question_is_answered_as_its_form_begins_or_refused_in_a_sentence(client: FlaskClient, name: str) -> None:
    ending = next((ending for ending in KINDS[name].endings if ending in SAMPLES), "")
    page = asked(client, name, SAMPLES.get(ending), f"a{ending}")

    assert page.status_code in (200, 422)
    assert ('id="answered"' in page.text) or 'class="problems"' in page.text or 'class="error"' in page.text
    assert "{ $" not in page.text and "before-" not in page.text.partition("<main")[2].partition("<form")[0].replace(
        "/before-", ""
    )


@pytest.mark.parametrize("bad", BAD)
@pytest.mark.parametrize("name", READING)
def test_a_bad_file_gets_one_sentence_and_tells_nothing_of_the_computer(
    client: FlaskClient, name: str, bad: str
) -> None:
    ending = KINDS[name].endings[0]

    page = asked(client, name, BAD[bad], f"bad{ending}")

    assert page.status_code in (200, 422)
    assert "root:" not in page.text
    if page.status_code == 422:
        assert page.text.count('<p class="error"') + page.text.count('class="problems"') >= 1


def test_the_demo_s_program_is_one_that_is_read(client: FlaskClient) -> None:
    page = asked(client, "program", rail_board_program().encode(), PROGRAM)

    assert page.status_code == 200
    assert "per load, " in page.text
