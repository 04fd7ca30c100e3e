"""The forms of a run: what is wanted, for whom, until when, and how it begins."""

import re
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime
from typing import Any

from runboard.run.fold.route import Route
from runboard.run.fold.state import OrderLine
from runboard.run.log.event import write_moment
from runboard.shop.limits import MOST_ORDER_LINES
from runboard.shop.numbers import whole_number
from runboard.shop.product import Product
from runboard.web.door.run_pages import due_moment, due_texts
from runboard.web.forms.field import Choices, Field, Section
from runboard.web.forms.form import Form

Record = dict[str, Any]

CERTAINTY: Choices = (
    ("0.5", "1 time in 2"),
    ("0.8", "4 times in 5"),
    ("0.9", "9 times in 10"),
    ("0.95", "19 times in 20"),
    ("0.99", "99 times in 100"),
)
MOST_PIECES_A_LINE = 999_999
_PIECES = "Enter a whole number of pieces, 1 or more."
_NOT_A_DATE = "Enter a date and a time of day."

_ORDER = (
    Field("line", "", "kept"),
    Field("pieces", "Pieces", "count", wrong=_PIECES, half=True),
    Field("for", "For", half=True),
    Field("text", "Text on it", hint="If each piece has its own: a house number, a name."),
    Field("date", "Due", "date", half=True),
    Field("time", "At", "time", hint="Empty: the end of that day.", half=True),
)


def orders_section(title: str = "") -> Section:
    """Order lines, typed one by one or pasted."""
    return Section(
        title,
        (
            Field("orders", "", "rows", rows=_ORDER, one="order line"),
            Field(
                "paste",
                "Or paste a list",
                "long",
                hint="One per line: text, for whom, pieces. For example: 12, Miller, 2",
            ),
        ),
    )


def opening_form(product: Product) -> list[Section]:
    """Everything that opening a run asks; the order lines are enough."""
    steps = tuple((step.key, step.name) for step in Route(product).steps)
    begun = (
        Field("trays", "Trays", hint="1, or 1-3, or 1, 2, 5"),
        Field("at", "They are at", "choice", choices=steps),
    )
    return [
        orders_section("What is wanted"),
        Section(
            "",
            (
                Field("certainty", "How sure do you want to be of enough good ones?", "choice", choices=CERTAINTY),
                Field("pieces_a_tray", "Pieces per tray", "count", empty=None, wrong=_PIECES),
                Field("wood", "Wood"),
            ),
        ),
        Section(
            "Name, quantity, part-done trays",
            (
                Field("name", "Name of the run", hint="Empty: the product and the run's number."),
                Field(
                    "start",
                    "Pieces to start",
                    "count",
                    hint="Empty: as many as that takes.",
                    empty=None,
                    wrong=_PIECES,
                ),
                Field("begun", "Part-done trays", "rows", rows=begun, one="group of trays"),
            ),
            folded=True,
        ),
    ]


def order_rows(orders: Iterable[OrderLine], zone: str, with_due: bool = True) -> list[Record]:
    """Order lines as the rows of a form."""
    rows = []
    for order in orders:
        date, time = due_texts(order.due if with_due else None, zone)
        text = {"for": order.whom, "text": order.text}
        rows.append({"line": order.line, "pieces": order.pieces, **text, "date": date, "time": time})
    return rows


def read_orders(form: Form, said: Mapping[str, Any], zone: str) -> list[Record]:
    """The order lines that a form says, as an event takes them; what is wrong is put at its field."""
    found = []
    taken = {order["line"] for order in said["orders"] if order["line"]}
    for at, row in enumerate(said["orders"]):
        pieces, due = row["pieces"], None
        if pieces == "":
            pieces = 1
        if not isinstance(pieces, int) or not 0 < pieces <= 100_000:
            form.errors[f"orders.{at}.pieces"] = _PIECES
            pieces = 1
        try:
            due = due_moment(row["date"], row["time"], zone)
        except (ValueError, OverflowError):
            form.errors[f"orders.{at}.date"] = _NOT_A_DATE
        if row["time"] and not row["date"]:
            form.errors[f"orders.{at}.date"] = "Enter the day too."
        found.append(order_record(row["line"] or _next(taken), pieces, row["for"], row["text"], due))
    try:
        found += [order_record(_next(taken), *row) for row in pasted(said["paste"])]
    except ValueError as wrong:
        form.errors["paste"] = str(wrong)
    if len(found) > MOST_ORDER_LINES:
        form.errors["paste"] = f"A run takes at most {MOST_ORDER_LINES} order lines."
    return found


def order_record(line: str, pieces: int, whom: str = "", text: str = "", due: datetime | None = None) -> Record:
    """One order line; what is empty is left out."""
    said: Record = {"line": line, "pieces": pieces}
    for name, value in (("for", whom), ("text", text), ("due", write_moment(due) if due else "")):
        if value:
            said[name] = value
    return said


def _next(taken: set[str]) -> str:
    number = max((whole_number(line) or 0 for line in taken), default=0) + 1
    taken.add(str(number))
    return str(number)


def pasted(text: str) -> list[tuple[int, str, str]]:
    """(pieces, for whom, text) of each pasted line 'text, for whom, pieces'; whom and pieces may be left out.

    ``ValueError`` says which line holds something else.
    """
    found = []
    for number, line in enumerate(text.splitlines(), 1):
        parts = [part.strip() for part in re.split(r"\t|;|,", line)]
        if not any(parts):
            continue
        pieces = 1
        if len(parts) > 1 and (said := whole_number(parts[-1], MOST_PIECES_A_LINE)) is not None:
            pieces = said
            parts.pop()
        if len(parts) > 2 or pieces < 1:
            raise ValueError(f"Line {number}, '{line[:60]}': enter text, for whom, pieces, with commas between.")
        found.append((pieces, parts[1] if len(parts) > 1 else "", parts[0]))
    return found


def read_begun(form: Form, rows: Sequence[Mapping[str, Any]]) -> dict[str, str]:
    """Which trays begin at which step."""
    found: dict[str, str] = {}
    for at, row in enumerate(rows):
        for group in re.split(r"[,;\s]+", row["trays"]):
            span = re.fullmatch(r"(\d{1,3})(?:[-–](\d{1,3}))?", group)
            if span is None:
                form.errors[f"begun.{at}.trays"] = "Enter trays like 1-3, or 1, 2, 5."
                break
            for tray in range(int(span[1]), int(span[2] or span[1]) + 1):
                found[str(tray)] = row["at"]
    return found
