"""A data folder of any age opens, and looks as a new one does."""

import json
from pathlib import Path

import pytest
from sqlite_utils import Database

from runboard.store.connect import FILE_NAME, connect
from runboard.store.migrations import STEPS
from runboard.store.open import open_store

NAMES = [step.name for step in STEPS.pending(Database(memory=True))]


def schema_of(folder: Path) -> str:
    database = connect(folder / FILE_NAME)
    text = database.schema
    database.close()
    return text


@pytest.mark.parametrize("first_missing", NAMES)
def test_a_folder_of_any_age_is_brought_up_to_date(tmp_path: Path, first_missing: str) -> None:
    old = connect(tmp_path / FILE_NAME)
    STEPS.apply(old, stop_before=first_missing)
    old.close()

    open_store(tmp_path).close()
    open_store(tmp_path / "new").close()

    assert schema_of(tmp_path) == schema_of(tmp_path / "new")


def test_opening_again_changes_nothing(tmp_path: Path) -> None:
    open_store(tmp_path).close()
    before = schema_of(tmp_path)

    open_store(tmp_path).close()

    assert schema_of(tmp_path) == before


def test_devices_that_were_paired_before_stay_paired(tmp_path: Path) -> None:
    old = connect(tmp_path / FILE_NAME)
    STEPS.apply(old, stop_before="ways_of_sessions")
    day = "2026-03-07T09:00:00.000Z"
    old.conn.execute("INSERT INTO device VALUES ('d1', 'Phone', 'lead', ?, NULL, NULL, '', '')", (day,))
    old.conn.execute("INSERT INTO session (hash, device, renewed_at, ends_at) VALUES ('h', 'd1', ?, ?)", (day, day))
    old.close()

    store = open_store(tmp_path)

    session = store.devices.session("h")
    assert session is not None and (session.device.id, session.way) == ("d1", "")
    store.close()


def test_refused_presses_that_were_kept_at_any_length_are_cut_short(tmp_path: Path) -> None:
    old = connect(tmp_path / FILE_NAME)
    STEPS.apply(old, stop_before="refused_by_device")
    long = json.dumps({"id": "long", "text": "x" * 1_900_000})
    for id_, record in (("long", long), ("short", '{"id": "short"}')):
        values = (id_, record, "form", json.dumps({"what": "x" * len(record)}), "2026-03-07T12:00:00.000Z")
        old.conn.execute("INSERT INTO refused VALUES (?, ?, ?, ?, ?)", values)
    old.close()

    opened = open_store(tmp_path)

    kept = opened.connections.here().conn.execute("SELECT id, record, facts FROM refused ORDER BY id").fetchall()
    opened.close()
    assert [(id_, json.loads(record)) for id_, record, _ in kept] == [
        ("long", {"id": "long", "cut": len(long)}),
        ("short", {"id": "short"}),
    ]
    assert [len(facts) for _, _, facts in kept] == [2, 27]
