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


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command, "the shop's data folder; made if not there")
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
            raise Mistaken("nothing was taken")
        _read_file(asked.file, store.pictures.keep)
        if "runboard_book" in record:
            book = workshop.books.save(record, workshop.clock.now())
            print(f"The book of {book.name} is in {asked.data}, revision {book.revision}.")
        else:
            print(f"Run {record['run']} is in {asked.data}: {import_run(workshop, record)} new events.")
            take_changes(workshop, store.settings, record["run"], changes_in(record))


def _is_wanted(coming: Coming) -> bool:
    """Say what a run's file would do; a person at the terminal is asked whether it may."""
    run, zone = coming.run, zone_of(coming.file.time_zone)
    moments = [event.moment for event in coming.file.own]
    print(
        f"{tidy(run.name)}: {sum(order.pieces for order in run.orders)} pieces wanted, {len(run.trays)} trays, "
        f"{events_in_words(len(coming.fresh))} new here, {dated(min(moments), zone)} to {dated(max(moments), zone)}."
    )
    if coming.left_out:
        print(f"Left out, since it is about the shop: {', '.join(sorted(coming.left_out))}.")
    return not sys.stdin.isatty() or is_agreed("Take it?")


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
