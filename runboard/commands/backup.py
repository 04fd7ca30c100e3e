"""Copy the shop, be it served or not; the copy is dated and proved."""

from argparse import ArgumentParser, Namespace
from datetime import datetime
from pathlib import Path

from runboard.commands.asking import add_folder, events_in_words
from runboard.store.backup import BackupFolder, copy_to, zone_in
from runboard.store.connect import FILE_NAME
from runboard.store.holding import hold
from runboard.store.proof import BadCopy
from runboard.words.sentences import say


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command)
    command.add_argument("--to", type=Path, metavar="FOLDER", help=say("option", "to"))


def do(asked: Namespace) -> None:
    """Make the copy, and say where it is."""
    if not (asked.data / FILE_NAME).is_file():
        raise BadCopy("nothing to copy", folder=str(asked.data))
    with hold(asked.data):
        now = datetime.now(zone_in(asked.data))
        made = copy_to(asked.data, asked.to, now) if asked.to else BackupFolder(asked.data).make(now)
    print(say("told", "copy", {"file": made.path, "events": events_in_words(made.events)}))
