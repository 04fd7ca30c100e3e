"""Tables of everything: each column is written down, and files of them say the same."""

import csv
import io
import json
import re
from pathlib import Path
from zipfile import ZipFile

import pytest

from runboard.review.table_files import json_of, zip_of
from runboard.review.tables import COLUMNS, Table

GUIDE = Path(__file__).parents[2] / "runboard" / "review" / "README.md"
LOSSES = Table("losses", [("r1", "rails", "clean", "Clean up", "=chipped", "ash", "3", 3)])
LINES = Table("order_lines", [("r1", "1", "Änne", "12", 2, None, None, None)])


@pytest.mark.parametrize("table", COLUMNS)
def test_each_column_stands_in_the_guide_in_its_order(table: str) -> None:
    part = GUIDE.read_text("utf-8").split(f"### {table}\n")[1].split("\n### ")[0]

    assert re.findall(r"^\| `(\w+)` \|", part, re.MULTILINE) == list(COLUMNS[table])


def test_json_has_a_list_of_objects_for_each_table() -> None:
    record = json.loads(json_of([LOSSES, LINES]))

    assert record["losses"][0]["reason"] == "=chipped"
    assert record["order_lines"] == [
        {
            "run": "r1",
            "line": "1",
            "for": "Änne",
            "text": "12",
            "pieces": 2,
            "due": None,
            "done": None,
            "late_minutes": None,
        }
    ]


def test_a_zip_has_a_csv_for_each_table_without_formulas() -> None:
    with ZipFile(io.BytesIO(zip_of([LOSSES, LINES]))) as found:
        assert found.namelist() == ["losses.csv", "order_lines.csv"]
        (row,) = csv.DictReader(io.StringIO(found.read("losses.csv").decode(), newline=""))

    assert (row["reason"], row["pieces"]) == ("'=chipped", "3")


def test_the_same_tables_give_the_same_files() -> None:
    assert zip_of([LOSSES, LINES]) == zip_of([LOSSES, LINES])
    assert json_of([LOSSES, LINES]) == json_of([LOSSES, LINES])
