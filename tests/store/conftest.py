"""A store in a folder of its own."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from runboard.store.books import BookFile
from runboard.store.dues import DuesFile
from runboard.store.events import LogFile
from runboard.store.open import Store, open_store
from tests.made_once import waits_for_no_disk  # noqa: F401 - for every test


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path)
    yield opened
    opened.close()


@pytest.fixture
def log(store: Store) -> LogFile:
    return store.log


@pytest.fixture
def dues(store: Store) -> DuesFile:
    return store.dues


@pytest.fixture
def books(store: Store) -> BookFile:
    return store.books
