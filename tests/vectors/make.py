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

from runboard.run.calls.dues import Due, dues
from runboard.run.fold.draft import Draft
from runboard.run.fold.fold import apply
from runboard.run.fold.record import (
    Cache,
    book_record,
    due_record,
    people_record,
    plain,
    run_text,
    stations_record,
    unsettled_record,
)
from runboard.run.fold.state import ShopState
from runboard.run.fold.table import find_row, kinds_of, load_at_hand, table_text, tray_at_hand
from runboard.run.log.event import Event, event_from_json, event_to_json, parse_moment
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json
from tests.vectors.chooser import Chooser
from tests.vectors.patch import difference
from tests.vectors.presses import choose
from tests.vectors.scenes import opened, rails, shelves, the_shop

FILE = Path(__file__).parent / "table.json"
START = datetime(2026, 6, 1, 16, 0, tzinfo=UTC)
SEQUENCES, MOST_SEQUENCES, PRESSES, MOST = 70, 400, 60, 240
# What the fold itself can say; the rest is refused before, by the form, the rights or the rules.
CODES = frozenset(
    (
        "board unknown",
        "care open",
        "counts do not fit",
        "counts gone on",
        "load in hands",
        "machine runs",
        "moves only back",
        "nothing to move",
        "nothing to settle",
        "pieces not there",
        "run closed",
        "same tray",
        "station busy",
        "station unknown",
        "step unknown",
        "transition",
        "tray unknown",
        "wait open",
    )
)
DUES = frozenset(("care start", "care end", "call", "nobody near", "watch check"))
# What only the server does: the page waits for its answer.
SERVER_ONLY = (
    "signal received",
    "server restarted",
    "span answered",
    "orders changed",
    "run opened",
)


def page_state(state: ShopState, book: Book, cache: Cache) -> dict[str, Any]:
    """The parts of the page's JSON that presses change, and those that they are judged by. ``cache`` keeps what an evening's
    states share, as it does for the server."""
    return {
        **{name: value for name, value in book_record(book).items() if name in ("shop", "jobs", "finishes")},
        "people": people_record(state, book),
        "stations": stations_record(state, book),
        "runs": {run.id: json.loads(run_text(run, cache, book)) for run in state.runs.values()},
        "dues": [due_record(due) for due in _dues(state, book)],
        "answers": plain(state.answers),
        "unsettled": [unsettled_record(entry) for entry in state.unsettled.values()],
        "asks": plain(state.asks),
        "care": plain(state.care),
        "calls": plain(state.calls),
        "reminders": plain(state.reminders),
    }


def _dues(state: ShopState, book: Book) -> list[Due]:
    """The due moments but for what the page leaves to the server: the next morning, and what a press that did not fit
    says to run."""
    found = [due for due in dues(state, book).values() if due.kind != "care morning" and not due.said]
    return sorted(found, key=lambda one: (one.due_at, one.id))


def pressed(book: Book, random: Random, number: int) -> Iterator[tuple[ShopState, Event, ShopState]]:
    """One evening of presses from a fresh start: (before, event, after)."""
    state, now = ShopState(), START
    for count, body in enumerate((opened(rails(), 3, 2, 2), opened(shelves(), 2, 2, None)), 1):
        record = {"id": f"open-{number:03d}-{count}", "kind": "run opened", "at": now.isoformat(), "run": f"r{count}"}
        state = apply(state, check_form({**record, "body": body}), book)
    for at in range(PRESSES):
        now += timedelta(minutes=random.choice((0.5, 2, 7, 25)))
        kind, fields, body = choose(Chooser(state, book, random, now, wild=0.25))
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
    return None if row is None else (subject, json.loads(table_text())[subject]["rows"].index(row), at)


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


def vectors(book: Book, base: dict[str, Any]) -> list[dict[str, Any]]:
    """One press for each row, state and code; then those that show a set of changes not seen before, up to ``MOST``.
    Evenings go on until everything that must be shown is."""
    seen: set[Any] = set()
    needed, more = [], []
    random = Random(4)
    missing = to_show()
    for number in range(MOST_SEQUENCES):
        if number >= SEQUENCES and not missing:
            break
        was, cache = None, Cache()
        for before, event, after in pressed(book, random, number):
            was, now = was or page_state(before, book, cache), page_state(after, book, cache)
            patch, code = difference(was, now), after.unsettled[event.id].code if event.id in after.unsettled else ""
            row = row_of(before, event, book)
            sign = (event.kind, row, code)
            changes = (event.kind, code or tuple(sorted(fields_changed(patch))), is_sooner(event, patch))
            # What a press that did not fit says to run is told to the page, and is in no vector.
            told = before.said_running and event.kind in ("run finished", "run abandoned")
            if event.kind not in SERVER_ONLY and not told and (sign not in seen or changes not in seen):
                made = vector(event, difference(base, was), patch, row, code)
                shows = shown_by(made) & missing
                (needed if shows or sign not in seen else more).append(made)
                missing -= shows
                seen |= {sign, changes}
            was = now
    return [*needed, *more[: max(0, MOST - len(needed))]]


def to_show() -> set[Any]:
    """Every row of the table from every state that it starts from, every code of the fold, some kinds of due moment."""
    table = json.loads(table_text())
    rows = {
        (subject, at, state)
        for subject in ("load", "tray")
        for at, row in enumerate(table[subject]["rows"])
        for state in row["from"]
    }
    return rows | {(*one[:2], "fits") for one in rows} | CODES | DUES | {"sooner than said"}


def is_sooner(event: Event, patch: dict[str, Any]) -> bool:
    """Whether an answer asks again sooner than it says: about a machine that must be watched."""
    said, kept = event.get("ask_again_at"), patch.get("answers", {}).get(event.get("alert")) or {}
    return bool(said and kept and parse_moment(kept["ask_again_at"]) < parse_moment(said))


def shown_by(made: dict[str, Any]) -> set[Any]:
    """What of that a vector shows."""
    found: set[Any] = {made.get("unsettled")} | {due["kind"] for due in made["after"].get("dues", ())}
    if is_sooner(event_from_json(made["event"]), made["after"]):
        found.add("sooner than said")
    if "row" in made:
        found |= {(*made["row"], made["from"])} | ({(*made["row"], "fits")} if "unsettled" not in made else set())
    return found


def vector(event: Event, state: Any, after: Any, row: Any, code: str) -> dict[str, Any]:
    """A vector's record."""
    name = ", ".join(one for one in (event.kind, row[2] if row else "", code) if one)
    found = {"name": name, "state": state, "event": event_to_json(event), "after": after}
    return {**found, **({"row": row[:2], "from": row[2]} if row else {}), **({"unsettled": code} if code else {})}


def make() -> str:
    """The file's text: a vector a line."""
    book = book_from_json(the_shop())
    first, _, _ = next(pressed(book, Random(0), 999))
    base = page_state(first, book, Cache())
    lines = [json.dumps(one, separators=(",", ":")) for one in vectors(book, base)]
    return '{"base":' + json.dumps(base, separators=(",", ":")) + ',\n"vectors":[\n' + ",\n".join(lines) + "\n]}\n"


if __name__ == "__main__":
    FILE.write_text(make(), encoding="utf-8")
