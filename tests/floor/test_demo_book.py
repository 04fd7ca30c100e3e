"""The demo's book: what it tells a helper is whole in every language, and it leaves the laser its usual interval."""

import re
from collections.abc import Iterable
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from runboard.demo.book import demo_book
from runboard.demo.drawing import add_pictures
from runboard.run.care.cautions import start_points
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from runboard.shop.care import finish_of, watch_interval
from runboard.shop.keys import pictures_named
from runboard.shop.product import Operation
from runboard.store.pictures import PictureFolder
from runboard.words.sentences import say


def book() -> Book:
    return book_from_json(demo_book(datetime(2026, 6, 1, 12, tzinfo=UTC), "UTC"))


def operations() -> list[Operation]:
    return [one for product in book().products for one in product.operations]


def translated() -> list[Operation]:
    return [one for one in operations() if one.translations]


@pytest.mark.parametrize("operation", translated(), ids=lambda one: one.key)
def test_a_translation_says_every_step_in_every_language(operation: Operation) -> None:
    assert set(operation.translations) == {"de", "es", "fr"}
    for said in operation.translations.values():
        assert said.name and said.name != operation.name
        assert len(said.instructions) == len(operation.instructions)
        assert len(said.checks) in (0, len(operation.checks))


def long_words(points: Iterable[str]) -> set[str]:
    return {word for point in points for word in re.findall(r"[a-z]{6,}", point.lower())}


@pytest.mark.parametrize("operation", operations(), ids=lambda one: one.key)
def test_a_start_list_asks_for_nothing_twice(operation: Operation) -> None:
    asked = long_words(say("care", key) for key in start_points(book(), operation))

    assert asked & long_words(operation.checklist) == set()


def test_several_operations_can_be_handed_to_somebody_new() -> None:
    assert [one.key for one in translated()] == ["clean", "sand", "oil", "hooks"]


def test_every_finish_in_use_is_written_down_from_its_label() -> None:
    found = [finish for one in operations() if (finish := finish_of(book(), one)) is not None]

    assert found and all(finish.sheet_date and finish.self_heats for finish in found)


def test_the_laser_is_looked_at_as_often_as_is_usual() -> None:
    engrave = next(one for one in operations() if one.station == "laser")

    assert watch_interval(book(), engrave) == timedelta(minutes=2)


def test_every_picture_that_the_demo_names_is_in_its_folder(tmp_path: Path) -> None:
    shelf = PictureFolder(tmp_path)

    record = add_pictures(demo_book(datetime(2026, 6, 1, 12, tzinfo=UTC), "UTC"), shelf)

    named = list(pictures_named(record))
    assert len(named) == 5
    assert all(shelf.read(name) for name in named)


def test_what_is_used_up_by_the_piece_is_written_down_once() -> None:
    """A step that counts its discs as a supply names no disc as its cutter: else two figures say how many are needed."""
    sand = next(step for step in book().products[0].operations if step.key == "sand")

    assert (len(sand.uses), sand.cutter) == (1, None)
    assert [cutter.key for cutter in book().cutters] == ["six"]
