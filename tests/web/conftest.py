"""An app on a data folder of its own, asked without a network. Nobody has to pair, except where a test is about that."""

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.demo.book import demo_book
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.letting_in.devices import make_code, pair
from runboard.floor.looking import review as looking
from runboard.floor.workshop import Workshop
from runboard.house import House, Settings
from runboard.review.essentials import Essentials
from runboard.store.connect import FILE_NAME
from runboard.store.open import open_store
from tests import scenario
from tests.conftest import START, HandClock
from tests.made_once import waits_for_no_disk  # noqa: F401 - for every test
from tests.web import reviewed
from tests.web.at_terminal import with_a_run


@cache
def empty() -> bytes:
    """The database of a shop in which nothing happened yet."""
    with TemporaryDirectory() as folder:
        open_store(Path(folder)).close()
        return (Path(folder) / FILE_NAME).read_bytes()


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    shop = tmp_path / FILE_NAME
    shop.touch(0o600)
    shop.write_bytes(empty())
    built = build(Settings(tmp_path, clock, open_to_all=True))
    built.app.testing = True
    yield built
    built.close()


@pytest.fixture
def small_shop(house: House) -> None:
    house.workshop.books.save(scenario.shop(), START)


@pytest.fixture
def client(house: House) -> FlaskClient:
    return house.app.test_client()


@pytest.fixture
def crew(tmp_path: Path, clock: HandClock) -> Iterator[FlaskClient]:
    """Ben's phone, crew's, in a shop where everybody has to pair and a run of three trays is open."""
    built = build(Settings(tmp_path / "paired", clock))
    built.workshop.books.save(scenario.shop(), START)
    open_run(built.workshop, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")
    client = built.app.test_client()
    code, _ = make_code(built.door, "crew")
    token, _session = pair(built.door, code, "Ben's phone", "127.0.0.1")
    client.set_cookie("runboard", token)
    yield client
    built.close()


@pytest.fixture
def data(tmp_path: Path) -> Path:
    """A shop with a run of three trays."""
    folder = tmp_path / "shop"
    with_a_run(folder, "r1")
    return folder


@pytest.fixture
def seen(house: House, monkeypatch: pytest.MonkeyPatch) -> reviewed.Seen:
    """The made-up review of the demo's key rails, as the pages see it."""
    house.workshop.books.save(demo_book(START, "Europe/Berlin"), START)
    reviewed.open_a_run(house.workshop)

    def see(change: Callable[[Essentials], Essentials] = lambda found: found) -> None:
        def at(workshop: Workshop, run: str) -> Essentials:
            return change(reviewed.essentials_at(workshop, run))

        monkeypatch.setattr(looking, "essentials_at", at)

    see()
    return see
