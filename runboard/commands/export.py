"""Write the shop's book, or one run with its events, as JSON; or tables of everything that reviews rest on."""

import json
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Callable, Sequence
from pathlib import Path

from runboard.commands.asking import Mistaken, add_folder, check_folder, opened
from runboard.commands.whole_file import check_out, whole
from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.kept_changes import with_changes
from runboard.floor.changing.pictures import with_pictures
from runboard.floor.looking.over_runs import tables_now
from runboard.review.table_files import json_of, zip_of
from runboard.review.tables import Table
from runboard.store.tables import write_tables
from runboard.words.sentences import say

# By the end of a file's name how tables are written into it.
_WRITTEN: dict[str, Callable[[Path, Sequence[Table]], object]] = {
    ".json": lambda file, tables: file.write_text(json_of(tables), "utf-8"),
    ".zip": lambda file, tables: file.write_bytes(zip_of(tables)),
    ".sqlite": write_tables,
}


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command)
    which = command.add_mutually_exclusive_group()
    which.add_argument("--run", metavar="RUN", help=say("option", "run or book"))
    which.add_argument("--tables", type=Path, metavar="FILE", help=say("option", "tables"))


def do(asked: Namespace) -> None:
    """Print the record, pictures and all; or write the tables, and say how much is in them."""
    check_folder(asked.data)
    if asked.tables is not None:
        print(write_all(asked.data, asked.tables))
        return
    with opened(asked.data) as (store, workshop):
        record = export_run(workshop, asked.run) if asked.run else workshop.books.record()
        record = with_changes(store.settings, record)
    record = with_pictures(store.pictures, record)
    json.dump(record, sys.stdout, indent=1, ensure_ascii=False)
    print()


def write_all(data: Path, file: Path) -> str:
    """The tables in a file of the form that its name says; answers what was written."""
    if file.suffix not in _WRITTEN:
        raise Mistaken("no tables", file=file, endings=", ".join(_WRITTEN))
    check_out(file)
    with opened(data) as (_, workshop):
        tables = tables_now(workshop)
    with whole(file) as part:
        _WRITTEN[file.suffix](part, tables)
    rows = {table.name: len(table.rows) for table in tables}
    return say("told", "tables", {"file": str(file), "runs": rows["runs"], "elements": rows["elements"]})
