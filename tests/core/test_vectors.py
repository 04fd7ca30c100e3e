"""The vectors that hold the page's fold to the server's: what they say is what the server's fold does."""

import json

from tests.vectors.make import CODES, DUES, FILE, make, shown_by, to_show
from tests.vectors.patch import difference, patched

VECTORS = json.loads(FILE.read_text("utf-8"))["vectors"]


def test_the_file_is_what_its_maker_makes():
    assert FILE.read_text("utf-8") == make(), "run: python -m tests.vectors.make"


def test_every_row_of_the_table_is_taken_from_every_state_that_it_starts_from():
    assert to_show() - set().union(*map(shown_by, VECTORS)) == set()


def test_every_refusal_of_the_fold_is_shown():
    assert {one["unsettled"] for one in VECTORS if "unsettled" in one} == CODES


def test_what_must_not_be_forgotten_and_calls_for_the_lead_are_shown():
    changed = {name for one in VECTORS for name in one["after"]}
    due = {due["kind"] for one in VECTORS for due in one["after"].get("dues", ())}

    assert {"care", "calls", "reminders"} <= changed
    assert due >= DUES


def test_a_patch_makes_one_record_of_another():
    before = {"kept": 1, "gone": 2, "deep": {"kept": [1], "changed": [2]}}
    after = {"kept": 1, "deep": {"kept": [1], "changed": [3, {"new": {}}]}, "new": {"empty": {}}}

    assert patched(before, difference(before, after)) == after
