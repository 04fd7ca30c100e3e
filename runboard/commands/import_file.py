"""Read a book or a run that export wrote."""

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from runboard.commands.asking import Mistaken, add_folder, events_in_words, is_agreed, opened, tidy
from runboard.floor.changing.exchange import Coming, import_run, look_at_run
from runboard.floor.changing.file_in import Record, Take, nothing, read_file
from runboard.floor.changing.kept_changes import changes_in, take_changes
from runboard.floor.changing.run_file import read_run_file
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_from_json
from runboard.shop.limits import check_limits
from runboard.shop.problem import Unreadable
from runboard.words.facts import dated, zone_of
from runboard.words.sentences import say


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command, is_made=True)
    command.add_argument("file", type=Path, metavar="FILE")


def do(asked: Namespace) -> None:
    """Look at what is in the file, and take it."""
    record = _read_file(asked.file)
    if "runboard_book" in record:
        book = book_from_json(record)
        check_limits(book)  # a wrong book makes no data folder
    else:
        read_run_file(record)
        changes_in(record)
    with opened(asked.data) as (store, workshop):
        if "runboard_run" in record and not _is_wanted(look_at_run(workshop, record)):
            raise Mistaken("nothing taken")
        _read_file(asked.file, store.pictures.keep)
        if "runboard_book" in record:
            book = workshop.books.save(record, workshop.clock.now())
            facts = {"book": book.name, "folder": asked.data, "revision": str(book.revision)}
            print(say("told", "book in", facts))
        else:
            facts = {"run": record["run"], "folder": asked.data, "events": str(import_run(workshop, record))}
            print(say("told", "run in", facts))
            take_changes(workshop, store.settings, record["run"], changes_in(record))


def _is_wanted(coming: Coming) -> bool:
    """Say what a run's file would do; a person at the terminal is asked whether it may."""
    run, zone = coming.run, zone_of(coming.file.time_zone)
    moments = [event.moment for event in coming.file.own]
    facts = {
        "run": tidy(run.name),
        "pieces": str(sum(order.pieces for order in run.orders)),
        "trays": str(len(run.trays)),
        "events": events_in_words(len(coming.fresh)),
        "first": dated(min(moments), zone),
        "last": dated(max(moments), zone),
    }
    print(say("told", "run coming", facts))
    if coming.left_out:
        print(say("told", "left out", {"kinds": ", ".join(sorted(coming.left_out))}))
    return not sys.stdin.isatty() or is_agreed(say("told", "take it"))


def _read_file(path: Path, take: Take = nothing) -> Record:
    try:
        with path.open("rb") as file:
            return read_file(file, take)
    except OSError as problem:
        raise Mistaken("file unread", file=path, why=problem.strerror) from problem
    except Unreadable as problem:
        raise Mistaken("file wrong", file=path, why=str(problem)) from problem
    except Refused as problem:
        if problem.code != "file nothing":
            raise
        raise Mistaken("file nothing", file=path) from problem
