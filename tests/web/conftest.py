"""An app on a data folder of its own, asked without a network."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from flask.testing import FlaskClient

from runboard.app import House, Settings, build
from tests.conftest import HandClock


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    built = build(Settings(tmp_path, clock))
    built.app.testing = True
    yield built
    built.close()


@pytest.fixture
def client(house: House) -> FlaskClient:
    return house.app.test_client()
