"""The commands. What a person typed wrong gets a sentence on stderr and exit code 2, and nothing is half-written."""

import argparse
import sqlite3
import sys
from collections.abc import Sequence
from importlib import import_module

from runboard.commands.asking import Mistaken
from runboard.run.refusal import NotStored, Refused
from runboard.shop.book_json import BookError
from runboard.store.holding import InUse
from runboard.store.proof import BadCopy
from runboard.words.sentences import say

COMMANDS = {
    "serve": ("serve", "serve the shop in a data folder to the phones on its network"),
    "demo": ("demo", "serve a shop made up to try, with a run in full swing"),
    "pair": ("pair", "show a code that pairs a lead's phone: the first, or in place of a lost one"),
    "plan": ("plan", "print when a run will be done, and who does what until then"),
    "cards": ("cards", "print the cards of a run's trays into a PDF"),
    "export": ("export", "write the shop's book, or one run with its events, as JSON"),
    "import": ("import_file", "read a book or a run that export wrote"),
    "backup": ("backup", "copy the shop, be it served or not; the copy is dated and proved"),
    "restore": ("restore", "put a copy in the shop's place; what it replaces is kept"),
}
_UNUSABLE = ("SQLITE_CANTOPEN", "SQLITE_READONLY", "SQLITE_NOTADB", "SQLITE_CORRUPT")
_LOOK_THERE = "See that the folder can be written; if the file is ruined, put a copy back with runboard restore."


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; answers the exit code."""
    typed = sys.argv[1:] if arguments is None else arguments
    asked = _parser(typed).parse_args(typed)
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


def _parser(typed: Sequence[str]) -> argparse.ArgumentParser:
    """Of all commands, and of what the one that is ``typed`` takes: only its module is loaded."""
    parser = argparse.ArgumentParser(
        prog="runboard", description="A small shop's runs: what to do now, and until when."
    )
    commands = parser.add_subparsers(title="commands", required=True)
    for name, (module, says) in COMMANDS.items():
        command = commands.add_parser(name, help=says)
        if name in typed[:1]:
            found = import_module(f"runboard.commands.{module}")
            found.add_to(command)
            command.set_defaults(do=found.do)
    return parser


if __name__ == "__main__":
    sys.exit(main())
