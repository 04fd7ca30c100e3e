"""The stored vocabulary: the code's table, the JSON Schema and the guide agree, and a kind never changes its word."""

import json
from typing import Any

import jsonschema
import pytest

from runboard.run.fold import changes, people, run_events, shop_events
from runboard.run.fold.table import kinds_of
from runboard.run.log import kinds
from runboard.run.log.event import event_from_json, event_to_json
from runboard.run.log.form import check_form, needed
from runboard.run.log.kinds import KINDS
from runboard.run.refusal import Refused
from runboard.run.supplies import noting
from tests.kinds_written import BEGIN, END, GUIDE, SCHEMA, event_schema, kinds_table, schema_text, with_kinds
from tests.scenario import key_rails

SCHEMA_OF_EVENTS = event_schema()
# The words are stored in every log there is: this list only grows.
STORED = """
person came|person went|person called away|person came back|room changed|time said|job started|job done|move declined
span answered|station out of use|station back in use|setup changed|checklist ticked|signal received|alert claimed
alert answered|watch checked|watch taken|reminder answered|server restarted|restart answered|run opened|run finished
run abandoned|orders changed|route revised|board added|board lost|supply out|supply in|first piece checked
first piece decided|operation given|look given|look passed|note written|lead called|load started|machine started|machine ended
unloading started|load done|load stopped|stop settled|load put aside|load taken off|pieces counted|pieces moved
pieces held|pieces released|wait ended|wood noted|texts placed|card printed|shown how|event undone|event amended
entry settled|change adopted|change judged|time overruled|supply counted|supply bought|order ticked
"""


def filled(shape: dict[str, Any]) -> Any:
    """A value of this shape with something in every field."""
    if "enum" in shape:
        return shape["enum"][0]
    if "anyOf" in shape:
        return filled(shape["anyOf"][0])
    if shape["type"] == "object":
        fields = {name: filled(one) for name, one in shape.get("properties", {}).items()}
        more = shape.get("additionalProperties")
        return {**fields, "1": filled(more)} if isinstance(more, dict) else fields
    if shape["type"] == "array":
        return [filled(shape["items"])]
    if shape.get("format") == "date-time":
        return "2026-06-01T16:00:00.000Z"
    return {"string": "abc", "integer": 1, "number": 0.5, "boolean": True}[shape["type"]]


def sample(kind: str) -> dict[str, Any]:
    """An event of this kind with every field of its body."""
    known = KINDS[kind]
    body = {name: filled(shape) for name, shape in {**known.required, **known.optional}.items()}
    if "product" in body:
        body["product"] = key_rails()
    record = {
        "id": "sample-01",
        "v": 1,
        "kind": kind,
        "at": "2026-06-01T16:00:00.000Z",
        "basis": "tapped",
        "body": body,
    }
    return {**record, **dict.fromkeys(needed(kind), "x1")}


@pytest.mark.parametrize("kind", KINDS)
def test_a_sample_of_each_kind_makes_the_round_trip(kind):
    record = sample(kind)

    event = check_form(record)

    assert event_to_json(event) == record
    assert event_from_json(json.loads(json.dumps(event_to_json(event)))) == event


@pytest.mark.parametrize("kind", KINDS)
def test_a_sample_of_each_kind_fits_the_schema(kind):
    jsonschema.validate(sample(kind), SCHEMA_OF_EVENTS)


@pytest.mark.parametrize("kind", KINDS)
def test_a_field_that_nobody_knows_is_refused_by_schema_and_form_alike(kind):
    record = sample(kind)
    record["body"]["surprise"] = 1

    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(record, SCHEMA_OF_EVENTS)
    with pytest.raises(Refused):
        check_form(record)


@pytest.mark.parametrize("kind", [kind for kind in KINDS if needed(kind)])
def test_an_event_that_names_nothing_is_refused_by_schema_and_form_alike(kind):
    record = {name: value for name, value in sample(kind).items() if name not in needed(kind)}

    with pytest.raises(jsonschema.ValidationError):
        jsonschema.validate(record, SCHEMA_OF_EVENTS)
    with pytest.raises(Refused):
        check_form(record)


def test_no_stored_word_is_ever_lost():
    stored = set(STORED.strip().replace("\n", "|").split("|"))

    assert stored == set(KINDS), "a new kind joins the list here; one that is there stays"


def test_kinds_are_words_and_not_the_names_of_classes():
    classes = {name.lower() for name in vars(kinds) if name[0].isupper()}

    assert all(kind == kind.lower() and " " in kind and kind.replace(" ", "") not in classes for kind in KINDS)


def test_every_kind_has_somebody_who_folds_it():
    folded = {
        *people.HANDLERS,
        *shop_events.HANDLERS,
        *run_events.HANDLERS,
        *changes.HANDLERS,
        *noting.HANDLERS,
        "entry settled",
    }

    assert folded | kinds_of("load") | kinds_of("tray") == set(KINDS)


def test_the_schema_file_is_what_the_code_says():
    assert SCHEMA.read_text("utf-8") == schema_text(), "run: python -m tests.kinds_written"
    jsonschema.Draft7Validator.check_schema(SCHEMA_OF_EVENTS)


def test_the_guide_has_the_table_of_kinds():
    guide = GUIDE.read_text("utf-8")

    assert guide.split(BEGIN)[1].split(END)[0].strip() == kinds_table(), "run: python -m tests.kinds_written"
    assert with_kinds(guide) == guide
