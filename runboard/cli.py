"""The commands. What a person typed wrong gets a sentence on stderr and exit code 2, and nothing is half-written."""

import argparse
import json
import sqlite3
import sys
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from datetime import datetime
from pathlib import Path

from runboard.cards_command import add_cards
from runboard.floor.changing.exchange import Coming, export_run, import_run, look_at_run
from runboard.floor.changing.file_in import Record, Take, nothing, read_file
from runboard.floor.changing.kept_changes import changes_in, take_changes, with_changes
from runboard.floor.changing.pictures import with_pictures
from runboard.floor.changing.run_file import read_run_file
from runboard.floor.letting_in.devices import CODE_LASTS, make_console_code
from runboard.floor.workshop import Workshop
from runboard.mistaken import Mistaken
from runboard.plan_command import add_plan
from runboard.restore_command import add_restore, events_in_words, is_agreed, tidy
from runboard.run.refusal import NotStored, Refused
from runboard.shop.book_json import BookError, book_from_json
from runboard.shop.care import check_watch_intervals
from runboard.shop.limits import check_book_size
from runboard.shop.problem import Unreadable
from runboard.store.backup import BackupFolder, copy_to, zone_in
from runboard.store.closed import make_folder
from runboard.store.connect import FILE_NAME
from runboard.store.holding import InUse, hold
from runboard.store.open import Store
from runboard.store.pictures import PictureFolder
from runboard.store.proof import BadCopy
from runboard.words.sentences import say, zone_of

DEFAULT_PORT = 8210
_CODE_MINUTES = int(CODE_LASTS.total_seconds() // 60)
_UNUSABLE = ("SQLITE_CANTOPEN", "SQLITE_READONLY", "SQLITE_NOTADB", "SQLITE_CORRUPT")
_LOOK_THERE = "See that the folder can be written; if the file is ruined, put a copy back with runboard restore."


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; answers the exit code."""
    asked = _parser().parse_args(arguments)
    try:
        asked.do(asked)
    except (Mistaken, BookError) as mistake:
        print(f"runboard: {mistake}", file=sys.stderr)
    except Refused as refused:
        print(f"runboard: {say('refused', refused.code, refused.facts)}", file=sys.stderr)
    except BadCopy as bad:
        print(f"runboard: {say('bad-copy', bad.code, bad.facts)}", file=sys.stderr)
    except InUse as folder:
        print(f"runboard: a copy is being put back into {folder}. Try again once that has ended.", file=sys.stderr)
    except NotStored as failed:
        print(f"runboard: {say('not-stored', failed.why)}", file=sys.stderr)
    except sqlite3.DatabaseError as error:
        if getattr(error, "sqlite_errorname", "") not in _UNUSABLE:
            raise
        print(f"runboard: the shop's database cannot be used: {error}. {_LOOK_THERE}", file=sys.stderr)
    else:
        return 0
    return 2


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="runboard", description="A small shop's runs: what to do now, and until when."
    )
    commands = parser.add_subparsers(title="commands", required=True)

    serve = commands.add_parser("serve", help="serve the shop in a data folder to the phones on its network")
    serve.add_argument(
        "--data", type=Path, required=True, metavar="DIR", help="the shop's data folder; made if not there"
    )
    _for_serving(serve)
    serve.add_argument(
        "--https-port", type=_port, metavar="Q", help="for the pages with the certificate; default P + 1; 0 for any"
    )
    serve.add_argument("--local", action="store_true", help="listen to this computer alone, and announce nothing")
    serve.set_defaults(do=_serve)

    demo = commands.add_parser("demo", help="serve a shop made up to try, with a run in full swing")
    demo.add_argument(
        "--data",
        type=Path,
        metavar="DIR",
        help="keep it in this folder; made if not there, gone on with if it was made before",
    )
    _for_serving(demo)
    demo.set_defaults(do=_demo)

    pair = commands.add_parser(
        "pair", help="show a code that pairs a lead's phone: the first, or in place of a lost one"
    )
    pair.add_argument("--data", type=Path, required=True, metavar="DIR")
    pair.set_defaults(do=_pair)

    add_plan(commands)
    add_cards(commands, DEFAULT_PORT)

    export = commands.add_parser("export", help="write the shop's book, or one run with its events, as JSON")
    export.add_argument("--data", type=Path, required=True, metavar="DIR")
    export.add_argument("--run", metavar="RUN", help="the run's key; without it the book is written")
    export.set_defaults(do=_export)

    take = commands.add_parser("import", help="read a book or a run that export wrote")
    take.add_argument(
        "--data", type=Path, required=True, metavar="DIR", help="the shop's data folder; made if not there"
    )
    take.add_argument("file", type=Path, metavar="FILE")
    take.set_defaults(do=_import)

    backup = commands.add_parser("backup", help="copy the shop, be it served or not; the copy is dated and proved")
    backup.add_argument("--data", type=Path, required=True, metavar="DIR")
    backup.add_argument("--to", type=Path, metavar="FOLDER", help="a folder that is there; default DIR/backups")
    backup.set_defaults(do=_backup)

    add_restore(commands)
    return parser


def _for_serving(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--port", type=_port, default=DEFAULT_PORT, metavar="P", help=f"default {DEFAULT_PORT}; 0 for any"
    )
    command.add_argument("--no-open", action="store_true", help="do not open a browser")
    command.add_argument(
        "--no-planner",
        action="store_true",
        help="make no plan beside the server: a small computer answers phones sooner",
    )


def _port(text: str) -> int:
    if not text.isdecimal() or int(text) > 65535:
        raise argparse.ArgumentTypeError(f"{text!r} is no port: a number from 0 to 65535")
    return int(text)


def _pair(asked: argparse.Namespace) -> None:
    from runboard.app import Settings, open_door

    if not asked.data.is_dir():
        raise Mistaken(f"there is no data folder {asked.data}.")
    with hold(asked.data):
        store, door = open_door(Settings(asked.data))
        code, _ = make_console_code(door)
        store.close()
    print(f"The code is {code}: it pairs one phone as a lead's, once, within {_CODE_MINUTES} minutes.")
    print("Open runboard on the phone, type it there, and revoke the lost one on the Shop page.")


def _serve(asked: argparse.Namespace) -> None:
    # Imported here: export and import need no web server, and answer at once.
    from runboard.serving import Asked, serve_shop

    with _told():
        serve_shop(
            Asked(asked.data, asked.port, asked.https_port, asked.local, not asked.no_open, not asked.no_planner)
        )


def _demo(asked: argparse.Namespace) -> None:
    from runboard.serving import Asked, serve_demo

    with tempfile.TemporaryDirectory(prefix="runboard-demo-") as place:
        data = asked.data or Path(place)
        was_served = (data / FILE_NAME).exists()
        if not was_served:
            if data.exists() and (not data.is_dir() or any(data.iterdir())):
                raise Mistaken(f"{data} holds something else. Name a folder for the demo that is not there yet.")
            _make_demo(data)
        with _told():
            serve_demo(
                Asked(data, asked.port, open_browser=not asked.no_open, planner=not asked.no_planner),
                was_served=was_served,
            )


def _make_demo(data: Path) -> None:
    from runboard.demo.make import make_demo  # only a demo needs the simulator

    _check_folder(data)
    make_demo(data)


@contextmanager
def _told() -> Iterator[None]:
    """What keeps a server from starting, as a sentence."""
    from runboard.serving import CannotMake
    from runboard.web.door.serve import CannotListen

    try:
        yield
    except CannotListen as problem:
        raise Mistaken(
            f"port {problem.port} cannot be used ({problem}). Is runboard already running? Or name another with --port "
            "and --https-port."
        ) from problem
    except CannotMake as problem:
        raise Mistaken(f"{problem.folder} cannot be a data folder: {problem}.") from problem


def _check_folder(data: Path) -> None:
    try:
        make_folder(data)
    except OSError as problem:
        raise Mistaken(f"{data} cannot be a data folder: {problem.strerror}.") from problem


def _export(asked: argparse.Namespace) -> None:
    if not asked.data.is_dir():
        raise Mistaken(f"there is no data folder {asked.data}.")
    with _shop(asked.data) as (store, workshop):
        record = export_run(workshop, asked.run) if asked.run else workshop.books.record()
        record = with_changes(store.settings, record)
    record = with_pictures(PictureFolder(asked.data), record)
    json.dump(record, sys.stdout, indent=1, ensure_ascii=False)
    print()


def _import(asked: argparse.Namespace) -> None:
    record = _read_file(asked.file)
    if "runboard_book" in record:
        book = book_from_json(record)
        check_watch_intervals(book)
        check_book_size(book)  # a wrong book makes no data folder
    else:
        read_run_file(record)
        changes_in(record)
    with _shop(asked.data) as (store, workshop):
        if "runboard_run" in record and not _is_wanted(look_at_run(workshop, record)):
            raise Mistaken("nothing was taken")
        _read_file(asked.file, PictureFolder(asked.data).keep)
        if "runboard_book" in record:
            book = workshop.books.save(record, workshop.clock.now())
            print(f"The book of {book.name} is in {asked.data}, revision {book.revision}.")
        else:
            print(f"Run {record['run']} is in {asked.data}: {import_run(workshop, record)} new events.")
            take_changes(workshop, store.settings, record["run"], changes_in(record))


def _is_wanted(coming: Coming) -> bool:
    """Say what a run's file would do; a person at the terminal is asked whether it may."""
    run, zone = coming.run, zone_of(coming.file.time_zone)
    moments = [one.moment.astimezone(zone) for one in coming.file.own]
    print(
        f"{tidy(run.name)}: {sum(one.pieces for one in run.orders)} pieces wanted, {len(run.trays)} trays, "
        f"{events_in_words(len(coming.fresh))} new here, {min(moments):%Y-%m-%d %H:%M} to {max(moments):%Y-%m-%d %H:%M}."
    )
    if coming.left_out:
        print(f"Left out, since it is about the shop: {', '.join(sorted(coming.left_out))}.")
    return not sys.stdin.isatty() or is_agreed("Take it?")


def _backup(asked: argparse.Namespace) -> None:
    if not (asked.data / FILE_NAME).is_file():
        raise BadCopy("nothing to copy", folder=str(asked.data))
    with hold(asked.data):
        now = datetime.now(zone_in(asked.data))
        made = copy_to(asked.data, asked.to, now) if asked.to else BackupFolder(asked.data).make(now)
    print(f"{made.path}: {events_in_words(made.events)}.")


@contextmanager
def _shop(data: Path) -> Iterator[tuple[Store, Workshop]]:
    """The store and the workshop over a data folder, without a server: nobody is listening."""
    from runboard.app import Settings, open_workshop

    _check_folder(data)
    with hold(data):
        store, workshop = open_workshop(Settings(data))
        try:
            yield store, workshop
        finally:
            store.close()


def _read_file(path: Path, take: Take = nothing) -> Record:
    try:
        with path.open("rb") as file:
            return read_file(file, take)
    except OSError as problem:
        raise Mistaken(f"{path} cannot be read: {problem.strerror}.") from problem
    except Unreadable as problem:
        raise Mistaken(f"{path}: {problem}") from problem
    except Refused as problem:
        if problem.code != "file nothing":
            raise
        raise Mistaken(
            f"{path} is neither a shop's book nor a run: it has no 'runboard_book' and no 'runboard_run'."
        ) from problem


if __name__ == "__main__":
    sys.exit(main())
