"""Tables as files: all of them in one JSON text, or a CSV each in one ZIP."""

import io
import json
from collections.abc import Iterable
from zipfile import ZIP_DEFLATED, ZipFile, ZipInfo

from runboard.review.table_text import csv_text
from runboard.review.tables import Table

VERSION = 1


def json_of(tables: Iterable[Table]) -> str:
    """An object with a list of objects for each table. The same tables give the same text."""
    record = {"runboard_tables": VERSION, **{table.name: list(table.records()) for table in tables}}
    return json.dumps(record, ensure_ascii=False, indent=1) + "\n"


def zip_of(tables: Iterable[Table]) -> bytes:
    """``runs.csv``, ``elements.csv`` and so on (RFC 4180, UTF-8). The same tables give the same bytes."""
    out = io.BytesIO()
    with ZipFile(out, "w", ZIP_DEFLATED) as made:
        for table in tables:
            entry = ZipInfo(f"{table.name}.csv")  # its date is always that of the oldest ZIP
            entry.compress_type = ZIP_DEFLATED
            made.writestr(entry, csv_text(list(table.columns), table.rows))
    return out.getvalue()
