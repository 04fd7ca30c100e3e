"""Writes ``table.json``: ``python -m tests.vectors.make``. A seeded chooser presses, the server's fold says what follows.

Each vector is {"name", "state", "event", "after", "unsettled"?}. ``state`` is a merge patch on the file's ``base``,
``after`` one on that state; both are the page's JSON. Only presses that show something new are kept.
"""

import json
from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random
from typing import Any

from runboard.run.draft import Draft
from runboard.run.dues import dues
from runboard.run.event import Event, event_to_json
from runboard.run.fold import apply
from runboard.run.form import check_form
from runboard.run.record import (
    Cache,
    book_record,
    due_record,
    people_record,
    plain,
    run_text,
    stations_record,
    unsettled_record,
)
from runboard.run.refusal import Refused
from runboard.run.state import ShopState
from runboard.run.table import find_row, kinds_of, load_at_hand, rows, tray_at_hand
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from tests.vectors.patch import difference
from tests.vectors.presses import Chooser
from tests.vectors.scenes import opened, rails, shelves, the_shop

FILE = Path(__file__).parent / "table.json"
START = datetime(2026, 6, 1, 16, 0, tzinfo=UTC)
SEQUENCES, PRESSES, MOST = 60, 60, 240
# What only the server does: the page waits for its answer.
SERVER_ONLY = (
    "reminder answered",
    "signal received",
    "server restarted",
    "span answered",
    "orders changed",
    "run opened",
)


def page_state(state: ShopState, book: Book) -> dict[str, Any]:
    """The parts of the page's JSON that presses change, and those that they are judged by."""
    found = {
        **{name: value for name, value in book_record(book).items() if name == "shop"},
        "people": people_record(state, book),
        "stations": stations_record(state, book),
        "runs": {run.id: json.loads(run_text(run, Cache())) for run in state.runs.values()},
        "dues": [due_record(due) for due in sorted(dues(state, book).values(), key=lambda one: (one.due_at, one.id))],
        "answers": plain(state.answers),
        "unsettled": [unsettled_record(entry) for entry in state.unsettled.values()],
        "asks": plain(state.asks),
    }
    return json.loads(json.dumps(found))


def pressed(book: Book, random: Random, number: int) -> Iterator[tuple[ShopState, Event, ShopState]]:
    """One evening of presses from a fresh start: (before, event, after)."""
    state, now = ShopState(), START
    for count, body in enumerate((opened(rails(), 3, 2, 2), opened(shelves(), 2, 2, None)), 1):
        record = {"id": f"open-{number:03d}-{count}", "kind": "run opened", "at": now.isoformat(), "run": f"r{count}"}
        state = apply(state, check_form({**record, "body": body}), book)
    for at in range(PRESSES):
        now += timedelta(minutes=random.choice((0.5, 2, 7, 25)))
        kind, fields, body = Chooser(state, book, random, now, wild=0.25).choose()
        record = {"id": f"press-{number:03d}-{at:03d}", "kind": kind, "at": now.isoformat(), "body": body}
        record |= {"person": random.choice(("ann", "ann", "ben")), "seen": 0, **fields}
        event = check_form({name: value for name, value in record.items() if value != ""})
        after = apply(state, event, book)
        yield state, event, after
        state = after


def row_of(state: ShopState, event: Event, book: Book) -> tuple[str, int, str] | None:
    """(subject, index, from) of the row of the table that an event takes, if it takes one."""
    subject = next((one for one in ("load", "tray") if event.kind in kinds_of(one)), "")
    if not subject:
        return None
    draft = Draft(state, book)
    try:
        if subject == "load":
            load, step = load_at_hand(draft, event)
            at = load.state
        else:
            _, step, at = tray_at_hand(draft, event)
    except Refused:
        return None
    row = find_row(subject, event, at, step)
    every = json.loads(json.dumps(table_rows(subject)))
    return None if row is None else (subject, every.index(row), at)


def table_rows(subject: str) -> list[dict[str, Any]]:
    """The rows of the table for a load or a tray."""
    found: list[dict[str, Any]] = []
    for some in rows()[subject].values():
        found += [row for row in some if row not in found]
    return sorted(found, key=lambda row: json.dumps(row, sort_keys=True))


def fields_changed(patch: dict[str, Any]) -> set[str]:
    """Which fields of which sort of record a patch changes, whoever's they are."""
    found = {name for name in patch if name not in ("runs", "people", "stations")}
    records = [(sort, one) for sort in ("people", "stations") for one in patch.get(sort, {}).values()]
    for run in patch.get("runs", {}).values():
        found |= {f"run {name}" for name in run if name not in ("trays", "loads")}
        records += [(sort, one) for sort in ("trays", "loads") for one in run.get(sort, {}).values()]
    for sort, one in records:
        found |= {f"{sort} {name}" for name in one or ("gone",)}
    return found - {"people last", "people seen_at"}


def vectors(book: Book, base: dict[str, Any]) -> Iterator[dict[str, Any]]:
    """Every press that shows a row, a code or a set of changes not seen before."""
    seen: set[Any] = set()
    random = Random(20260601)
    for number in range(SEQUENCES):
        for before, event, after in pressed(book, random, number):
            entry = after.unsettled.get(event.id)
            was, now = page_state(before, book), page_state(after, book)
            patch = difference(was, now)
            code = entry.code if entry else ""
            row = row_of(before, event, book)
            signs = {("row", event.kind, row, code)}
            if not code:
                signs.add(("what", event.kind, *sorted(fields_changed(patch))))
            if event.kind in SERVER_ONLY or not signs - seen:
                continue
            seen |= signs
            name = f"{event.kind}, {row[2]}" if row else event.kind
            vector = {"name": name, "state": difference(base, was), "event": event_to_json(event), "after": patch}
            yield {**vector, **({"row": list(row[:2])} if row else {}), **({"unsettled": code} if code else {})}


def make() -> str:
    """The file's text: a vector a line."""
    book = book_from_json(the_shop())
    first, _, _ = next(pressed(book, Random(0), 999))
    base = page_state(first, book)
    lines = [json.dumps(one, separators=(",", ":")) for one in vectors(book, base)][:MOST]
    return '{"base":' + json.dumps(base, separators=(",", ":")) + ',\n"vectors":[\n' + ",\n".join(lines) + "\n]}\n"


if __name__ == "__main__":
    FILE.write_text(make(), encoding="utf-8")
