"""Whatever page of the demo is opened: no date is written as programs write them, numbers agree, and no line ends within a span."""

import re
from collections import Counter
from collections.abc import Iterator
from datetime import UTC, datetime
from html import unescape
from urllib.parse import urljoin, urlsplit

import pytest
from flask.testing import FlaskClient
from werkzeug.exceptions import HTTPException

from runboard.app import build
from runboard.demo.make import make_demo
from runboard.house import Settings

# Where a visit begins; what links lead to is visited too.
BEGIN = (
    "/trays",
    "/plan",
    "/review",
    "/review/days",
    "/review/over-runs",
    "/shop",
    "/shop/about",
    "/care",
    "/wall",
    "/t",
)
OF_A_KIND = 2  # pages of one sort, such as the review of a run
_NO_TEXT = re.compile(r"<(script|style|template|textarea)\b.*?</\1>", re.DOTALL)
# The last of them is a card's, which breaks its lines itself.
_SET_ITSELF = ("/cards/",)
_ENDS_IN_S = {
    "is",
    "was",
    "has",
    "as",
    "this",
    "its",
    "less",
    "across",
    "pass",
    "glass",
    "plus",
    "minus",
    "always",
    "s",
}


def shown(page: str) -> str:
    """What a page shows; a bar where one element ends and another begins."""
    return unescape(re.sub(r"<[^>]+>", "|", _NO_TEXT.sub("|", page)))


def faults(text: str) -> Iterator[str]:
    """What is written as nobody says it, each with what stands around."""
    for found in re.finditer(r"\d{4}-\d\d-\d\d", text):
        yield _around(text, found)
    for found in re.finditer(r"(?<![\d.,/–:-])\b1 ([a-z]+s)\b", text):
        if found[1] not in _ENDS_IN_S:
            yield _around(text, found)


def breaks(text: str) -> Iterator[str]:
    """Spans in which a line may end."""
    for found in re.finditer(r"\d[ \n](?:h|min)\b|\d.h[ \n]\d\d\b", text):
        yield _around(text, found)


def _around(text: str, found: re.Match[str]) -> str:
    return " ".join(text[max(0, found.start() - 40) : found.end() + 20].split())


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, str]]:
    """The pages of the demo by address: some of each sort that a link leads to."""
    folder = tmp_path_factory.mktemp("demo") / "shop"
    make_demo(folder, datetime.now(UTC))
    house = build(Settings(folder, demo=True, open_to_all=True, plans=False))
    yield dict(visited(house.app.test_client()))
    house.close()


def visited(client: FlaskClient) -> Iterator[tuple[str, str]]:
    wished, known = list(BEGIN), set(BEGIN)
    sorts: Counter[str] = Counter()
    for address in wished:
        sort = _sort(client, address)
        sorts[sort] += 1
        if not sort or sorts[sort] > OF_A_KIND:
            continue
        answer = client.get(address)
        if answer.mimetype != "text/html" or answer.status_code != 200:
            continue
        yield address, answer.text
        links = [
            urljoin(address, unescape(link)).partition("#")[0] for link in re.findall(r'href="([^"#:]+)', answer.text)
        ]
        fresh = [link for link in dict.fromkeys(links) if link not in known]
        known.update(fresh)
        wished += fresh


def _sort(client: FlaskClient, address: str) -> str:
    """What answers at an address; '' where nothing does, or a file."""
    try:
        return str(client.application.url_map.bind("").match(urlsplit(address).path, method="GET")[0]).replace(
            "static", ""
        )
    except HTTPException:
        return ""


def test_enough_of_the_demo_is_looked_at(demo: dict[str, str]) -> None:
    assert len(demo) > 50
    assert any("/cards" in address for address in demo)


def test_no_page_writes_a_date_or_a_number_as_nobody_says_it(demo: dict[str, str]) -> None:
    found = {address: [*faults(shown(page))] for address, page in demo.items()}

    assert {address: said for address, said in found.items() if said} == {}


def test_no_line_of_a_page_ends_within_a_span(demo: dict[str, str]) -> None:
    inside = re.compile(r"<(svg|option|pre)\b.*?</\1>", re.DOTALL)  # which have no lines, or are a browser's own
    set_here = {address: page for address, page in demo.items() if not any(part in address for part in _SET_ITSELF)}
    found = {address: [*breaks(shown(inside.sub("|", page)))] for address, page in set_here.items()}

    assert {address: said for address, said in found.items() if said} == {}


@pytest.mark.parametrize("said", ["label of 2026-03-14", "1 cartons"])
def test_what_nobody_says_is_found(said: str) -> None:
    assert [*faults(f"It has {said} in it, 2 cartons, 1 pass.")]


@pytest.mark.parametrize("said", ["5 h 04", "12 min", "5\u00a0h 04"])
def test_a_span_that_breaks_is_found(said: str) -> None:
    assert [*breaks(said)]
    assert not [*breaks(said.replace(" ", "\u00a0"))]
