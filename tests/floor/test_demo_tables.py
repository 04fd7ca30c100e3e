"""The demo's tables, written and read back: their rows and sums are the fold's, in every form."""

import csv
import io
import json
import sqlite3
from collections.abc import Callable, Iterator, Mapping
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from zipfile import ZipFile

import pytest

from runboard.demo.make import make_demo
from runboard.demo.phone import HandClock
from runboard.floor.looking.look_back import look_back_at
from runboard.floor.looking.over_runs import tables_now
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.review.table_files import json_of, zip_of
from runboard.review.tables import COLUMNS, Table
from runboard.store.tables import write_tables

NOW = datetime(2026, 6, 3, 18, 40, tzinfo=UTC)
Read = Mapping[str, list[dict[str, Any]]]


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Workshop]:
    folder: Path = tmp_path_factory.mktemp("demo")
    make_demo(folder, NOW, zone="Europe/Berlin")
    store, workshop = open_workshop(folder, HandClock(NOW))
    catch_up(workshop)
    yield workshop
    store.close()


@pytest.fixture(scope="module")
def tables(demo: Workshop) -> list[Table]:
    return tables_now(demo)


def from_json(tables: list[Table], _: Path) -> Read:
    found: dict[str, Any] = json.loads(json_of(tables))
    return {name: found[name] for name in COLUMNS}


def from_zip(tables: list[Table], _: Path) -> Read:
    with ZipFile(io.BytesIO(zip_of(tables))) as found:
        texts = {name: found.read(f"{name}.csv").decode() for name in COLUMNS}
    return {name: list(csv.DictReader(io.StringIO(text, newline=""))) for name, text in texts.items()}


def from_sqlite(tables: list[Table], folder: Path) -> Read:
    write_tables(folder / "shop.sqlite", tables)
    with closing(sqlite3.connect(folder / "shop.sqlite")) as found:
        found.row_factory = sqlite3.Row
        return {name: [dict(row) for row in found.execute(f"SELECT * FROM {name}")] for name in COLUMNS}


@pytest.mark.parametrize("read", [from_json, from_zip, from_sqlite])
def test_what_is_read_back_is_the_folds(
    demo: Workshop, tables: list[Table], tmp_path: Path, read: Callable[[list[Table], Path], Read]
) -> None:
    found, runs = read(tables, tmp_path), demo.ledger.state.runs

    assert [row["run"] for row in found["runs"]] == list(runs)
    for row, run in zip(found["runs"], runs.values(), strict=True):
        study = look_back_at(demo, run.id)
        mine = {
            name: [each for each in found[name] if each["run"] == run.id]
            for name in ("elements", "order_lines", "losses")
        }
        hands = study.hours.all("hands").total_seconds() / 60

        assert int(row["good"]) == sum(tray.good for tray in run.trays.values())
        assert float(row["hands_minutes"]) == pytest.approx(hands, abs=0.01)
        assert len(mine["elements"]) == len(study.elements)
        assert minutes_of(mine["elements"], "machine") == pytest.approx(
            study.hours.all("machine").total_seconds() / 60, abs=0.1
        )
        assert sum(int(line["pieces"]) for line in mine["order_lines"]) == sum(order.pieces for order in run.orders)
        assert sum(int(lost["pieces"]) for lost in mine["losses"]) == int(row["scrap"])


def minutes_of(elements: list[dict[str, Any]], kind: str) -> float:
    return sum(float(one["minutes"]) for one in elements if one["element"] == kind and one["minutes"] not in ("", None))


def test_estimates_are_those_of_the_newest_run(demo: Workshop, tables: list[Table]) -> None:
    found = {row["step"]: row for row in tables[-1].records() if row["product"] == "rails" and row["element"] == "hand"}

    assert (found["hooks"]["written_minutes"], found["hooks"]["source"]) == (2.0, "measured")
    assert 3.0 < float(str(found["hooks"]["minutes"])) < 4.0


def test_a_database_is_strict(tables: list[Table], tmp_path: Path) -> None:
    write_tables(tmp_path / "shop.sqlite", tables)

    with closing(sqlite3.connect(tmp_path / "shop.sqlite")) as found, pytest.raises(sqlite3.IntegrityError):
        found.execute("UPDATE runs SET good = 'many'")
