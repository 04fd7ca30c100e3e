"""Tables as text for a spreadsheet: comma-separated values by RFC 4180."""

import csv
import io
from collections.abc import Iterable, Sequence

# A cell that begins so is a formula to a spreadsheet, whoever wrote it.
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


def csv_text(head: Sequence[str], rows: Iterable[Sequence[object]]) -> str:
    """The lines, each ended by CR LF. Texts that a spreadsheet would run as a formula get an apostrophe before them;
    numbers stay numbers."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow(head)
    for row in rows:
        writer.writerow([_cell(value) for value in row])
    return out.getvalue()


def _cell(value: object) -> object:
    if value is None:
        return ""
    if isinstance(value, str) and value.lstrip(" ").startswith(_FORMULA):
        return f"'{value}"
    return value
