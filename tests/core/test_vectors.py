"""The vectors that hold the page's fold to the server's: what they say is what the server's fold does."""

import json

import pytest

from runboard.run.table import table_text
from tests.vectors.make import FILE, make
from tests.vectors.patch import difference, patched

VECTORS = json.loads(FILE.read_text("utf-8"))["vectors"]
# What the fold itself can say; the rest is refused before, by the form, the rights or the rules.
CODES = {
    "machine runs",
    "board unknown",
    "counts do not fit",
    "counts gone on",
    "moves only back",
    "nothing to move",
    "nothing to settle",
    "pieces not there",
    "run closed",
    "same tray",
    "station busy",
    "station unknown",
    "step unknown",
    "transition",
    "tray unknown",
}


def test_the_file_is_what_its_maker_makes():
    assert FILE.read_text("utf-8") == make(), "run: python -m tests.vectors.make"


@pytest.mark.parametrize("subject", ["load", "tray"])
def test_every_row_of_the_table_is_taken(subject):
    rows = json.loads(table_text())[subject]["rows"]
    taken = {tuple(one["row"]) for one in VECTORS if "row" in one and "unsettled" not in one}

    assert [row for at, row in enumerate(rows) if (subject, at) not in taken] == []


def test_every_state_that_a_row_starts_from_is_tried():
    tables = json.loads(table_text())
    tried = {(*one["row"], one["from"]) for one in VECTORS if "row" in one}
    wanted = {
        (subject, at, state)
        for subject in ("load", "tray")
        for at, row in enumerate(tables[subject]["rows"])
        for state in row["from"]
    }

    assert wanted - tried == set()


def test_every_refusal_of_the_fold_is_shown():
    assert {one["unsettled"] for one in VECTORS if "unsettled" in one} == CODES


def test_what_must_not_be_forgotten_and_calls_for_the_lead_are_shown():
    changed = {name for one in VECTORS for name in one["after"]}
    due = {due["kind"] for one in VECTORS for due in one["after"].get("dues", ())}

    assert {"care", "calls", "reminders"} <= changed
    assert {"care start", "care end", "call", "nobody near", "watch check"} <= due


def test_a_patch_makes_one_record_of_another():
    before = {"kept": 1, "gone": 2, "deep": {"kept": [1], "changed": [2]}}
    after = {"kept": 1, "deep": {"kept": [1], "changed": [3, {"new": {}}]}, "new": {"empty": {}}}

    assert patched(before, difference(before, after)) == after
