"""Look at a file before a run: a program, a drawing, or a question as JSON; print the answer, or write what it draws. Without a file,
look the run itself through.

Exit code 0: read; 1: read, with doubts that may change the time, or with something on the run sheet that is open; 2: not readable,
with one sentence.
"""

import json
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from shutil import get_terminal_size
from typing import Any
from xml.sax.saxutils import escape

from runboard.commands.asking import Mistaken, broken, check_shop, opened, rewritten_line, run_meant
from runboard.commands.whole_file import check_out, whole
from runboard.floor.changing.run_sheet import run_sheet_of
from runboard.floor.looking.answers import most_of
from runboard.floor.looking.at_hand import shop_now
from runboard.floor.looking.files_looked_at import files_looked_at
from runboard.places import folder
from runboard.plan.before.asking import kinds_reading, question_from, question_to_json
from runboard.plan.before.kind import File, Kind, Record
from runboard.plan.before.kinds import KINDS
from runboard.run.fold.state import ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Station
from runboard.shop.book_json import BookError
from runboard.shop.json_text import read_json_text
from runboard.shop.numbers import any_number
from runboard.shop.problem import Unreadable
from runboard.shop.record import fields_of
from runboard.web.before.drawn import drawn
from runboard.words.before.run_sheet import run_sheet_lines, run_sheet_record
from runboard.words.before.said import Said, Table
from runboard.words.before.sayings import said_of
from runboard.words.facts import zone_of
from runboard.words.sentences import say

# Options that are fields of the question about a program, and may be of another's.
_FIGURES = ("rapid", "accel", "corner")
_END = "</svg>"
_SVG = '<svg xmlns="http://www.w3.org/2000/svg" '


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    command.epilog = say("option", "exit-codes-checked")
    command.add_argument("file", nargs="?", type=Path, metavar="FILE", help=say("option", "file-checked"))
    command.add_argument("--json", action="store_true", help=say("option", "json-checked"))
    command.add_argument("--rapid", metavar="MM_PER_MIN", help=say("option", "rapid-checked"))
    command.add_argument("--accel", metavar="MM_PER_S2", help=say("option", "accel-checked"))
    command.add_argument("--corner", metavar="MM", help=say("option", "corner-checked"))
    command.add_argument("--station", default="", metavar="NAME", help=say("option", "station-checked"))
    command.add_argument("--data", type=Path, metavar="DIR", help=say("option", "data-checked"))
    command.add_argument("--run", default="", metavar="RUN", help=say("option", "run-checked"))
    command.add_argument("--out", type=Path, metavar="FILE", help=say("option", "out-checked"))


@dataclass(frozen=True)
class _Shop:
    """The shop that is asked for; without one an empty book, of which nothing is known."""

    book: Book
    state: ShopState | None = None


def do(asked: Namespace) -> int:
    """Look, and print or write what was found; answers the exit code."""
    if asked.file is None:
        return _look_through(asked)
    if asked.out is not None:
        check_out(asked.out)
    with _shop(asked.data) as shop:
        kind, question, file = _question(asked, shop)
        told, clear = _progress()
        try:
            answer = kind.answer(shop.book, question, file, told)
        finally:
            clear()
        said = said_of(kind, shop.book, question, answer)
        if asked.out is not None:
            _write(asked.out, said, lambda: drawn(kind, shop.book, question, answer))
    if asked.json:
        sys.stdout.write(json.dumps(said.record, ensure_ascii=False, indent=2) + "\n")
    else:
        wide = get_terminal_size().columns if sys.stdout.isatty() else 0
        sys.stdout.write("\n".join(part for line in _lines(said) for part in broken(line, wide)) + "\n")
    return 1 if said.changes_time else 0


def _look_through(asked: Namespace) -> int:
    """The run sheet of the run named, else of the one that is open; 1 where something on it is open."""
    if asked.data is None and asked.run:
        raise Mistaken("run without shop")
    if asked.data is None:
        raise Mistaken("nothing to check")
    check_shop(asked.data)
    with opened(asked.data) as (store, workshop):
        run = run_meant(workshop, asked.run)
        sheet = run_sheet_of(workshop, run.id, files_looked_at(store.settings))
        book = workshop.book
    if asked.json:
        sys.stdout.write(json.dumps(run_sheet_record(book, sheet), ensure_ascii=False, indent=2) + "\n")
    else:
        lines = [run.name, *run_sheet_lines(book, sheet, zone_of(book.time_zone))]
        sys.stdout.write("\n".join(lines) + "\n")
    return 0 if sheet.is_ready else 1


@contextmanager
def _shop(data: Path | None) -> Iterator[_Shop]:
    if data is None:
        yield _Shop(Book())
        return
    check_shop(data)
    with opened(data) as (_, workshop):
        book, state = shop_now(workshop)
    yield _Shop(book, state)


# what is asked


def _question(asked: Namespace, shop: _Shop) -> tuple[Kind, Any, File | None]:
    """The kind, the question and the file that it is about."""
    read = _read(asked.file)
    kind, record = _kind_of(read)
    file = read if record is None else _beside(asked.file, kind, record)
    keys = {"run": asked.run, "station": _station(asked.station, shop.book).key if asked.station else ""}
    begun = kind.begin(shop.book, {name: key for name, key in keys.items() if key})
    record = question_to_json(begun) | (record or {}) | _typed(asked, kind, keys["station"])
    question = _read_question(kind, record, shop.book)
    if shop.state is not None:
        question = kind.learned(shop.book, shop.state, question)
    return kind, question, file


def _beside(path: Path, kind: Kind, record: Record) -> File | None:
    """The file that a question as JSON is about: it says where that lies, from where it lies itself."""
    named = record.pop("file", None) if "file" not in fields_of(kind.question) else None
    if named is None and kind.needs_file:
        raise Refused("no file chosen")
    return None if named is None else _read(path.parent / str(named))


def _read_question(kind: Kind, record: Record, book: Book) -> Any:
    try:
        return question_from(kind, record, book)
    except BookError as wrong:
        raise Mistaken("question wrong", why=wrong.problems[0].sentence) from wrong


def _read(path: Path) -> File:
    most = most_of(path.name)
    try:
        with path.open("rb") as file:
            content = file.read(most + 1)
    except OSError as why:
        raise Mistaken("file not opened", file=path, why=why.strerror or str(why)) from why
    if not content:
        raise Refused("looked-at file empty", name=path.name)
    if len(content) > most:
        raise Refused("looked-at file too large", name=path.name, most=most // 1_000_000)
    return File(path.name, content)


def _kind_of(file: File) -> tuple[Kind, Record | None]:
    """By its ending, else by how it begins; of a question as JSON its fields too."""
    if file.name.lower().endswith(".json"):
        return _asked_as_json(file)
    found = kinds_reading(file.name)
    if not found:
        begins = file.content[:1_000].lstrip()
        found = kinds_reading("x.svg" if begins.startswith(b"<") else "x.ngc")
    if not found:
        raise Refused("looked-at file unknown", name=file.name)
    return found[0], None


def _asked_as_json(file: File) -> tuple[Kind, Record]:
    try:
        record = read_json_text(file.content, file.name)
    except Unreadable as why:
        raise Mistaken("question wrong", why=str(why)) from why
    kind = KINDS.get(str(record.get("kind"))) if isinstance(record, dict) else None
    if kind is None:
        raise Mistaken("no kind", file=file.name, kinds=", ".join(KINDS))
    return kind, {name: value for name, value in record.items() if name != "kind"}


def _station(named: str, book: Book) -> Station:
    """The station of that key or name, in letters of either size."""
    for station in book.stations:
        if named.casefold() in (station.key.casefold(), station.name.casefold()):
            return station
    if not book.stations:
        raise Mistaken("station without shop", station=named)
    raise Mistaken("no such station", station=named, stations=", ".join(station.name for station in book.stations))


def _typed(asked: Namespace, kind: Kind, station: str) -> Record:
    """The station that was named, and the figures that were typed in place of its own."""
    found: Record = {"station": station} if station and "station" in fields_of(kind.question) else {}
    for name in _FIGURES:
        text = getattr(asked, name)
        if text is None:
            continue
        if name not in fields_of(kind.question):
            raise Mistaken("option of no use", option=f"--{name}", kind=say("before-kind", kind.name))
        number = any_number(text)
        if number is None:
            raise Mistaken("no number", option=f"--{name}", text=text)
        found[name] = number
    return found


# what is said


def _lines(said: Said) -> Iterator[str]:
    yield said.head
    yield from said.cautions
    yield from said.lines
    for table in said.tables:
        yield from ("", *([table.title] if table.title else ()), *_rows(table))
    if said.doubts:
        yield ""
        yield from (f"- {doubt}" for doubt in said.doubts)


def _rows(table: Table) -> Iterator[str]:
    """A table's rows with their columns below one another."""
    rows = (table.heads, *table.rows)
    wide = [max(len(row[at]) for row in rows) for at in range(len(table.heads))]
    for row in rows:
        cells = (text.rjust(wide[at]) if at in table.numbers else text.ljust(wide[at]) for at, text in enumerate(row))
        yield "  ".join(cells).rstrip()


def _progress() -> tuple[Any, Any]:
    write, clear = rewritten_line(sys.stderr)

    def told(done: int, total: int) -> None:
        write(say("told", "checking", {"percent": 100 * done // total if total else 0}))

    return told, clear


def _write(out: Path, said: Said, draw: Any) -> None:
    """The first file that the answer offers with that ending, else its first drawing as SVG."""
    texts = [each.text for each in said.downloads if each.name.lower().endswith(out.suffix.lower() or "\0")]
    if not texts and out.suffix.lower() == ".svg":
        texts = [_alone(str(drawing)) for drawing in draw()[:1]]
    if not texts:
        raise Mistaken("nothing to write", file=out)
    with whole(out) as part:
        part.write_text(texts[0], encoding="utf-8")


def _alone(drawing: str) -> str:
    """A drawing of a page as a file of its own, with the style that it has there by day."""
    if "xmlns=" in drawing[:500]:
        return drawing
    static = folder("static")
    by_day = (static / "tokens.css").read_text("utf-8").partition("@media")[0]
    style = by_day + (static / "charts.css").read_text("utf-8")
    begin, end = (
        drawing[drawing.index("<svg ") : drawing.index(_END) + len(_END)].replace("<svg ", _SVG, 1).split(">", 1)
    )
    return f"{begin}><style>{escape(style)}</style>{end}"
