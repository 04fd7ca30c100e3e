"""An app on a data folder of its own, asked without a network. Nobody has to pair, except where a test is about that."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from runboard.app import House, Settings, build
from tests.conftest import HandClock


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    built = build(Settings(tmp_path, clock, open_to_all=True))
    built.app.testing = True
    yield built
    built.close()


@pytest.fixture
def client(house: House) -> FlaskClient:
    return house.app.test_client()
