"""A field is declared once: read, written and described from its line in the dataclass."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Annotated, Any, Literal

import pytest
from jsonschema import Draft202012Validator

from runboard.shop.book import Station
from runboard.shop.reading import Reading, Record
from runboard.shop.record import Key, Length, Of, schema_of, to_json


@dataclass(frozen=True)
class Vice(Station):
    """A station of somebody who wrote a few more lines."""

    jaws: Literal["wood", "steel"] = "wood"
    opens: Length | None = None
    warm_up: Annotated[timedelta, Of("Before the first load.", least=1)] = timedelta(minutes=1)
    spare: tuple[str, ...] = ()


PLAIN = {"key": "vice", "name": "Vice", "kind": "bench", "room": "shop"}
SAID = PLAIN | {"jaws": "steel", "opens": 120.5, "warm_up_minutes": 5, "spare": ["pads"]}


def read(said: dict[str, Any]) -> tuple[Vice, list[tuple[str, str]]]:
    reading = Reading({})
    found = Record(said, reading, None, "vice").read(Vice)
    return found, [(problem.path, problem.code) for problem in reading.problems]


def schema() -> Draft202012Validator:
    records: dict[str, Any] = {}
    return Draft202012Validator({**schema_of(Vice, records), "$defs": records})


def test_a_field_that_is_added_is_read_and_written() -> None:
    found, wrong = read(SAID)

    assert wrong == []
    assert (found.jaws, found.opens, found.warm_up, found.spare) == ("steel", 120.5, timedelta(minutes=5), ("pads",))
    assert to_json(found) == to_json(read(PLAIN)[0]) | SAID
    assert schema().is_valid(to_json(found))


def test_a_field_that_is_missing_is_what_the_dataclass_says() -> None:
    found, wrong = read(PLAIN)

    assert wrong == []
    assert found == Vice("vice", "Vice", "bench", "shop")


@pytest.mark.parametrize(
    ("name", "value", "code"),
    [
        ("jaws", "brass", "not a choice"),
        ("opens", "wide", "length unreadable"),
        ("opens", -1, "too small"),
        ("warm_up_minutes", 0, "too small"),
        ("warm_up_minutes", None, "wrong type"),
        ("spare", [""], "text empty"),
        ("jaw", "wood", "unknown field"),
    ],
)
def test_what_is_wrong_in_it_is_noted(name: str, value: object, code: str) -> None:
    _, wrong = read(SAID | {name: value})

    assert [(path.partition("[")[0], said) for path, said in wrong] == [(f"vice.{name}", code)]
    assert schema().is_valid(SAID | {name: value}) == (code == "length unreadable")


def test_what_stands_further_out_is_said_of_it() -> None:
    @dataclass(frozen=True)
    class Clamp:
        """One clamp."""

        key: Annotated[Key, Of("Its number on the wall.")]
        reach: Annotated[Length | None, Of(most=900)] = None

    fields = schema_of(Clamp, {})["properties"]

    assert fields["key"]["description"] == "Its number on the wall."
    assert fields["key"]["type"] == "string" and "pattern" in fields["key"]
    assert fields["reach"]["anyOf"][0]["anyOf"][0] == {"type": "number", "minimum": 0, "maximum": 900}
