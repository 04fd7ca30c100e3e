"""Changes to try, kept for the Review: they go with a run's file, and come in with it."""

import json
from typing import Any

import pytest

from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.kept_changes import (
    MOST_KEPT,
    changes_in,
    drop_change,
    keep_change,
    kept_changes,
    take_changes,
    with_changes,
)
from runboard.floor.changing.run_file import read_run_file
from runboard.plan.change import Times
from runboard.run.refusal import Refused
from tests.floor.test_exchange import Shop
from tests.floor.test_travellers import FakeSettings

SAID = {"change": "Sand: everything takes 80 % of its time", "answer": "The finish does not move."}


def filed(shop: Shop, settings: FakeSettings) -> dict[str, Any]:
    return dict(json.loads(json.dumps(with_changes(settings, export_run(shop.workshop, "r1")))))


def test_what_is_kept_goes_with_the_run_s_file_and_comes_in_once() -> None:
    shop, here, there = Shop(), FakeSettings(), FakeSettings()
    kept = keep_change(shop.workshop, here, "r1", SAID, "ann")
    keep_change(shop.workshop, here, "r2", {**SAID, "change": "another run's"}, "ann")

    record = filed(shop, here)
    for _ in range(2):
        take_changes(shop.workshop, there, "r1", changes_in(record))

    assert kept_changes(there, "r1") == [kept]
    assert kept_changes(there, "r2") == []
    assert read_run_file(record).run == "r1"


def test_what_was_kept_here_stays_as_it_is() -> None:
    shop, here, there = Shop(), FakeSettings(), FakeSettings()
    keep_change(shop.workshop, here, "r1", SAID, "ann")
    mine = keep_change(shop.workshop, there, "r1", {**SAID, "answer": "The finish moves 5 min earlier."}, "ben")

    take_changes(shop.workshop, there, "r1", changes_in(filed(shop, here)))

    assert kept_changes(there, "r1") == [mine]


def test_a_run_without_any_and_a_book_have_no_such_field() -> None:
    shop, here = Shop(), FakeSettings()

    assert "changes_to_try" not in filed(shop, here)
    assert with_changes(here, {"runboard_book": 1}) == {"runboard_book": 1}
    assert changes_in({}) == []


def test_one_that_is_taken_off_is_in_no_file() -> None:
    shop, here = Shop(), FakeSettings()
    kept = keep_change(shop.workshop, here, "r1", SAID, "ann")

    drop_change(shop.workshop, here, "r1", kept.id)

    assert "changes_to_try" not in filed(shop, here)


GOOD = {"id": "a", "at": "2026-06-01T18:00:00Z", "person": "ann", **SAID}


@pytest.mark.parametrize(
    "wrong",
    [
        {},
        [3],
        [{**GOOD, "more": ""}],
        [{**GOOD, "at": "soon"}],
        [{**GOOD, "at": 3}],
        [{**GOOD, "change": ""}],
        [{**GOOD, "answer": "!" * 6_000}],
        [{key: value for key, value in GOOD.items() if key != "person"}],
        [GOOD] * (MOST_KEPT + 1),
    ],
)
def test_a_file_whose_changes_are_wrong_is_refused(wrong: object) -> None:
    assert len(changes_in({"changes_to_try": [GOOD]})) == 1
    with pytest.raises(Refused, match="file change wrong"):
        changes_in({"changes_to_try": wrong})


def test_a_change_is_kept_as_a_record_too_and_comes_with_the_file() -> None:
    shop, here, there = Shop(), FakeSettings(), FakeSettings()
    change = Times("r1", "sand", "", 80)
    keep_change(shop.workshop, here, "r1", SAID, "ann", change)

    take_changes(shop.workshop, there, "r1", changes_in(filed(shop, here)))

    assert [kept.again for kept in (*kept_changes(here, "r1"), *kept_changes(there, "r1"))] == [change, change]


def test_what_was_kept_as_words_alone_is_still_read() -> None:
    settings = FakeSettings()
    old = {"id": "abc", "at": "2026-06-01T16:00:00Z", "person": "ann", **SAID}
    settings.put("changes to try/r1", {"changes": [old]})

    (kept,) = kept_changes(settings, "r1")

    assert (kept.change, kept.again) == (SAID["change"], None)
    assert changes_in({"changes_to_try": [old]}) == [kept]


def test_a_record_that_is_no_change_makes_the_file_wrong() -> None:
    old = {"id": "abc", "at": "2026-06-01T16:00:00Z", "person": "ann", **SAID}

    with pytest.raises(Refused, match="file change wrong"):
        changes_in({"changes_to_try": [{**old, "record": {"what": "flood"}}]})


def test_a_change_out_of_bounds_is_not_kept() -> None:
    shop, here = Shop(), FakeSettings()

    with pytest.raises(Refused, match="change wrong"):
        keep_change(shop.workshop, here, "r1", SAID, "ann", Times("r1", "sand", "", 5))

    assert kept_changes(here, "r1") == []


def test_a_record_that_nobody_reads_any_more_is_words_alone() -> None:
    settings = FakeSettings()
    old = {"id": "abc", "at": "2026-06-01T16:00:00Z", "person": "ann", **SAID, "record": {"what": "flood"}}
    settings.put("changes to try/r1", {"changes": [old]})

    (kept,) = kept_changes(settings, "r1")

    assert kept.again is None
