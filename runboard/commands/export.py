"""Write the shop's book, or one run with its events, as JSON."""

import json
import sys
from argparse import ArgumentParser, Namespace

from runboard.commands.asking import add_folder, check_folder, opened
from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.kept_changes import with_changes
from runboard.floor.changing.pictures import with_pictures
from runboard.words.sentences import say


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command)
    command.add_argument("--run", metavar="RUN", help=say("option", "run or book"))


def do(asked: Namespace) -> None:
    """Print the record, pictures and all."""
    check_folder(asked.data)
    with opened(asked.data) as (store, workshop):
        record = export_run(workshop, asked.run) if asked.run else workshop.books.record()
        record = with_changes(store.settings, record)
    record = with_pictures(store.pictures, record)
    json.dump(record, sys.stdout, indent=1, ensure_ascii=False)
    print()
