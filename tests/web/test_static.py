"""Scripts, styles and words: small on their way, and not sent again while they are the same."""

import gzip
import zlib

import pytest
from flask.testing import FlaskClient

from runboard.web.door.packing import packed_behind
from tests.serving import ROOT


def test_a_style_is_sent_once(client: FlaskClient) -> None:
    first = client.get("/static/base.css")
    again = client.get("/static/base.css", headers={"If-None-Match": first.headers["ETag"]})

    assert (first.status_code, first.content_type) == (200, "text/css; charset=utf-8")
    assert (again.status_code, again.data) == (304, b"")


def test_a_vendored_file_carries_its_version_and_is_kept_for_good(client: FlaskClient) -> None:
    name = next(path.name for path in (ROOT / "static" / "vendor").glob("*.js"))

    assert "immutable" in client.get(f"/static/vendor/{name}").headers["Cache-Control"]


def test_text_is_small_on_its_way_where_the_browser_takes_it(client: FlaskClient) -> None:
    plain = client.get("/static/base.css")
    packed = client.get("/static/base.css", headers={"Accept-Encoding": "gzip, br"})

    assert "Content-Encoding" not in plain.headers
    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(packed.data) == plain.data
    assert "Accept-Encoding" in plain.headers["Vary"] and "Accept-Encoding" in packed.headers["Vary"]


@pytest.mark.parametrize("text", ["", "a", "so many words, " * 5000, "½ Löcher"])
def test_what_is_gzipped_behind_a_few_bytes_is_read_as_one(text: str) -> None:
    packed = packed_behind('{"now":"10:15 – ½",', text)

    assert gzip.decompress(packed).decode() == '{"now":"10:15 – ½",' + text
    assert zlib.decompressobj(zlib.MAX_WBITS | 16).decompress(packed) == gzip.decompress(packed)


def test_a_small_answer_is_left_alone(client: FlaskClient) -> None:
    answer = client.get("/static/icon.svg", headers={"Accept-Encoding": "gzip"})

    assert len(answer.data) < 1024
    assert "Content-Encoding" not in answer.headers


def test_the_catalogue_is_text(client: FlaskClient) -> None:
    answer = client.get("/static/words/en.ftl")

    assert answer.content_type == "text/plain; charset=utf-8"
    assert answer.data == (ROOT / "static" / "words" / "en.ftl").read_bytes()


@pytest.mark.parametrize(
    "name",
    [
        "nothing.css",
        "../pyproject.toml",
        "..%2fpyproject.toml",
        "%2e%2e/pyproject.toml",
        "vendor",
        "a%00b",
        "/etc/passwd",
    ],
)
def test_nothing_else_is_served(client: FlaskClient, name: str) -> None:
    assert client.get(f"/static/{name}").status_code in (404, 308)


def test_nothing_there_is_a_page_that_says_so(client: FlaskClient) -> None:
    answer = client.get("/nowhere")

    assert answer.status_code == 404
    assert "Page not found. Go to Now." in answer.text
