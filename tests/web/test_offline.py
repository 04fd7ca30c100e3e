"""What the service worker keeps: all that Now and Trays are drawn with, under a version that follows what it holds."""

import json
import re
import shutil
from collections.abc import Iterator
from pathlib import Path
from posixpath import dirname, join, normpath

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.house import House, Settings
from runboard.web.door import offline
from runboard.web.door.sessions import COOKIE
from runboard.web.door.static_files import composed
from tests import scenario
from tests.conftest import HandClock
from tests.pairing import paired
from tests.serving import ROOT

SCREENS = ("/", "/trays")
STATIC = ROOT / "static"
IMPORTED = re.compile(r"""\b(?:from|import)\s*\(?\s*["'](\.[^"']+)["']""")
SHOWN = re.compile(r"""\b(?:href|src)="(/(?:static|composed)/[^"]+)\"""")
IN_STYLES = re.compile(r"""url\(["']?(?!data:)([^"')]+)["']?\)|@import\s+["']([^"']+)["']""")
WORDS = re.compile(r"""["'](en(?:\.[a-z]+)?)["']""")
FETCHED = re.compile(r"""\bfetch\(["'](/[^"']+)["']\)""")


@pytest.fixture
def kept(house: House) -> list[str]:
    """The addresses that the worker keeps."""
    with house.app.test_request_context():
        return offline.kept_files()


@pytest.fixture
def a_copy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of ``static/`` that the worker keeps instead."""
    place = tmp_path / "copy"
    shutil.copytree(STATIC, place)
    monkeypatch.setattr(offline, "folder", lambda name: place if name == "static" else ROOT / name)
    return place


@pytest.fixture
def door(tmp_path: Path, clock: HandClock) -> Iterator[FlaskClient]:
    """A paired device of a server that asks everybody to pair."""
    house = build(Settings(tmp_path, clock))
    client = house.app.test_client()
    client.set_cookie(COOKIE, paired(tmp_path))
    yield client
    house.close()


def drawn_with() -> Iterator[Path]:
    """Every script of Now and Trays: those that the screens begin with, and all that these import, early or late."""
    found = {STATIC / "now" / "now.js", STATIC / "trays" / "trays.js"}
    new = set(found)
    while new:
        texts = [(path, path.read_text("utf-8")) for path in new]
        new = {(path.parent / name).resolve() for path, text in texts for name in IMPORTED.findall(text)} - found
        found |= new
    yield from sorted(found)


def version(client: FlaskClient) -> str:
    """The version that the worker names itself by."""
    found = re.match(r'const VERSION = "([0-9a-f]{16})";', client.get("/worker.js").text)
    assert found
    return found[1]


def test_everything_that_is_kept_is_there_for_a_paired_device(door: FlaskClient, kept: list[str]) -> None:
    answers = {address: door.get(address).status_code for address in (*kept, "/worker.js")}

    assert set(answers.values()) == {200}, [one for one, status in answers.items() if status != 200]


def test_a_stranger_gets_no_worker(door: FlaskClient) -> None:
    door.delete_cookie(COOKIE)

    assert door.get("/worker.js").status_code == 401


def test_the_worker_says_what_it_keeps(client: FlaskClient, kept: list[str]) -> None:
    answer = client.get("/worker.js")
    said = re.search(r"^const FILES = (.*);$", answer.text, re.MULTILINE)

    assert said and json.loads(said[1]) == kept
    assert answer.content_type.startswith("text/javascript")
    assert answer.headers["Cache-Control"] == "no-cache"
    assert len(set(kept)) == len(kept)


def test_the_worker_needs_no_other_file() -> None:
    assert not IMPORTED.search((STATIC / "worker.js").read_text("utf-8"))
    assert "importScripts" not in (STATIC / "worker.js").read_text("utf-8")


def test_every_script_of_now_and_trays_is_kept_in_a_composed_file(kept: list[str]) -> None:
    scripts = {path.relative_to(STATIC).as_posix() for path in drawn_with()}
    files = [composed(STATIC, one.removeprefix("/composed/")) for one in kept if one.startswith("/composed/")]

    assert len(scripts) > 40
    assert scripts - {name for file in files if file for name, _, _ in file.made_of} == set()


def test_every_catalogue_and_address_that_they_ask_for_is_kept(kept: list[str]) -> None:
    texts = [path.read_text("utf-8") for path in drawn_with()]
    wanted = {f"/static/words/{name}.ftl" for text in texts for name in WORDS.findall(text)}
    wanted |= {address for text in texts for address in FETCHED.findall(text)}

    assert "/static/words/en.sheets.ftl" in wanted and "/table.json" in wanted
    assert wanted - set(kept) == set()


@pytest.mark.parametrize("screen", (*SCREENS, "/help"))
def test_what_the_page_itself_names_is_kept(client: FlaskClient, kept: list[str], screen: str) -> None:
    named = set(SHOWN.findall(client.get(screen).text))

    assert len(named) > 3
    assert named - set(kept) == set()


def test_what_styles_and_the_manifest_name_is_kept(client: FlaskClient, kept: list[str]) -> None:
    named = set()
    for sheet in [one for one in kept if one.endswith(".css")]:
        found = ["".join(pair) for pair in IN_STYLES.findall(client.get(sheet).text)]
        named |= {normpath(join(dirname(sheet), one)) for one in found if not one.startswith("#")}
    manifest = json.loads(client.get("/static/runboard.webmanifest").data)
    named |= {icon["src"] for icon in manifest["icons"]}

    assert named - set(kept) == set()


def test_what_other_screens_need_is_left_out(kept: list[str]) -> None:
    assert not [one for one in kept if "htmx" in one or "/forms/" in one or one.endswith("worker.js")]


@pytest.mark.parametrize("name", ["commands", "lan", "review"])
def test_what_the_server_alone_says_is_left_out(kept: list[str], name: str) -> None:
    assert (STATIC / "words" / f"en.{name}.ftl").exists()
    assert f"/static/words/en.{name}.ftl" not in kept


@pytest.mark.parametrize("name", ["words/en.pages.help.ftl", "words/en.pages.now.ftl", "words/en.pages.door.ftl"])
def test_the_version_follows_what_a_kept_page_says(client: FlaskClient, a_copy: Path, name: str) -> None:
    before = version(client)

    with (a_copy / name).open("a", encoding="utf-8") as file:
        file.write("\n")

    assert version(client) != before


@pytest.mark.parametrize("name", ["help/help.html", "now/now.html", "trays/trays.html", "door/page.html"])
def test_the_version_follows_what_a_kept_page_is_drawn_by(house: House, tmp_path: Path, name: str) -> None:
    client, place = house.app.test_client(), tmp_path / "templates"
    shutil.copytree(ROOT / "templates", place)
    house.app.template_folder = str(place)
    before = version(client)

    with (place / name).open("a", encoding="utf-8") as file:
        file.write("\n")

    assert version(client) != before


def test_another_emergency_number_is_another_version(client: FlaskClient, house: House) -> None:
    """The help, which a phone keeps, names it."""
    before = version(client)

    house.workshop.books.save({**scenario.shop(), "emergency": "999"}, house.workshop.clock.now())

    assert version(client) != before


@pytest.mark.parametrize(
    "name", ["now/now.js", "table/dues.js", "trays/tray.js", "words/en.sheets.ftl", "tokens.css", "worker.js"]
)
def test_the_version_follows_what_a_kept_file_holds(client: FlaskClient, a_copy: Path, name: str) -> None:
    before = version(client)

    with (a_copy / name).open("a", encoding="utf-8") as file:
        file.write("\n")

    assert version(client) != before


def test_a_file_more_or_less_is_another_version(client: FlaskClient, a_copy: Path) -> None:
    first = version(client)

    (a_copy / "words" / "en.extra.ftl").write_text("", encoding="utf-8")
    with_more = version(client)
    (a_copy / "words" / "en.extra.ftl").unlink()

    assert with_more != first
    assert version(client) == first


def test_what_is_not_kept_makes_no_new_version(client: FlaskClient, a_copy: Path) -> None:
    before = version(client)

    (a_copy / "forms" / "forms.css").write_text("/* other */", encoding="utf-8")

    assert version(client) == before


def test_an_unchanged_worker_is_not_sent_again(client: FlaskClient) -> None:
    first = client.get("/worker.js")

    again = client.get("/worker.js", headers={"If-None-Match": first.headers["ETag"]})

    assert (again.status_code, again.data) == (304, b"")
