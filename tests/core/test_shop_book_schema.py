"""The JSON Schema beside the reader describes the same file: what is wrong in form is refused by both."""

import copy
import json
from collections.abc import Iterator
from importlib.resources import files
from typing import Any

from hypothesis import given, settings
from jsonschema import Draft202012Validator

from runboard.shop.book import STATION_KINDS, Book
from runboard.shop.book_json import BookError, book_from_json, book_to_json, schema_text
from runboard.shop.keys import KEY_PATTERN
from tests.core.books import books, everything

SCHEMA = json.loads(schema_text())
VALIDATOR = Draft202012Validator(SCHEMA)

# What is wrong in form, and so a matter for the schema too. All other codes speak of what hangs together.
OF_FORM = {
    "not an object",
    "missing field",
    "unknown field",
    "wrong type",
    "not a choice",
    "too small",
    "too large",
    "text empty",
    "text too long",
    "not a key",
    "list too short",
    "listed twice",
    "not a time of day",
    "other version",
}
WRONG = (None, "", "x y", -1, 0.5, 2_000_000, True, [], ["a", "a"], [1], {}, {"odd": 1}, "y" * 2001)


def mutations(value: Any, change: Any = lambda one: one) -> Iterator[Any]:
    """Every record that differs from ``value`` in one place: another value there, a field less, a field more."""
    yield from (change(wrong) for wrong in WRONG)
    if isinstance(value, dict):
        yield change({**value, "odd": 1})
        for name, inner in value.items():
            yield change({other: one for other, one in value.items() if other != name})
            yield from mutations(inner, lambda one, name=name: change({**value, name: one}))
    elif isinstance(value, list):
        for at, inner in enumerate(value):
            yield from mutations(inner, lambda one, at=at: change([*value[:at], one, *value[at + 1 :]]))


def codes_of(record: object) -> set[str]:
    try:
        book_from_json(record)
    except BookError as refused:
        return {problem.code for problem in refused.problems}
    return set()


def test_the_schema_is_a_schema() -> None:
    Draft202012Validator.check_schema(SCHEMA)


def test_the_schema_knows_every_kind_of_station_and_the_form_of_a_key() -> None:
    defined = SCHEMA["$defs"]

    assert defined["station"]["properties"]["kind"]["enum"] == list(STATION_KINDS)
    assert defined["station"]["properties"]["key"]["pattern"] == KEY_PATTERN


def test_the_file_beside_the_package_is_what_the_dataclasses_say() -> None:
    assert files("runboard.shop").joinpath("book.schema.json").read_text("utf-8") == schema_text()


@settings(max_examples=20)
@given(books())
def test_every_book_that_is_written_fits_the_schema(book: Book) -> None:
    record = json.loads(json.dumps(book_to_json(book)))

    assert VALIDATOR.is_valid(record)


def test_schema_and_reader_refuse_the_same_forms() -> None:
    record = everything()
    apart = []

    for changed in mutations(record):
        codes = codes_of(copy.deepcopy(changed))
        if VALIDATOR.is_valid(changed) != (not codes & OF_FORM):
            apart.append((changed, codes))

    assert apart == []


def test_schema_and_reader_refuse_the_same_pictures_in_a_file() -> None:
    pictures = {"a" * 64 + ".jpg": "aGVsbG8="}
    apart = []

    for changed in [pictures, *mutations(pictures), {"bed.png": "aGVsbG8="}, {"A" * 64 + ".jpg": "aGVsbG8="}]:
        record = everything() | {"pictures": changed}
        if VALIDATOR.is_valid(record) != (not codes_of(record) & OF_FORM):
            apart.append(changed)

    assert apart == []


def test_a_book_brings_pictures_along_and_does_not_hold_them() -> None:
    record = everything() | {"pictures": {"a" * 64 + ".jpg": "aGVsbG8="}}

    assert book_from_json(record) == book_from_json(everything())
