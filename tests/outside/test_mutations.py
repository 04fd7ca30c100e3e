"""The changes of ``tests/mutations.py`` can still be made: each text stands once where it is said to stand."""

from pathlib import Path

import pytest

from tests.mutations import MUTATIONS, ROOT, Mutation


@pytest.mark.parametrize("one", MUTATIONS, ids=lambda one: one.breaks)
def test_a_text_that_is_to_be_changed_stands_once_in_its_file(one: Mutation) -> None:
    assert (ROOT / one.file).read_text("utf-8").count(one.text) == 1
    assert one.put != one.text
    assert (Path(__file__).parent / f"test_{one.tests}.py").exists()


def test_there_are_25_of_them() -> None:
    assert len({(one.file, one.text) for one in MUTATIONS}) == 25
