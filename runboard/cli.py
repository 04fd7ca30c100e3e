"""The commands. What a person typed wrong gets a sentence on stderr and exit code 2, and nothing is half-written. A command may
answer with a code of its own.

Every child process loads this module again before its own work: what commands need is loaded once one is run.
"""

import sys
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

# Each command, in the order in which --help lists them, and its module.
COMMANDS = {
    "serve": "serve",
    "demo": "demo",
    "pair": "pair",
    "plan": "plan",
    "check": "check",
    "review": "review",
    "cards": "cards",
    "export": "export",
    "import": "import_file",
    "backup": "backup",
    "restore": "restore",
}
_UNUSABLE = ("SQLITE_CANTOPEN", "SQLITE_READONLY", "SQLITE_NOTADB", "SQLITE_CORRUPT")


def main(arguments: Sequence[str] | None = None) -> int:
    """Run one command; answers the exit code."""
    import sqlite3

    from runboard.commands.asking import Mistaken
    from runboard.run.refusal import NotStored, Refused
    from runboard.shop.book_json import BookError
    from runboard.store.holding import InUse
    from runboard.store.proof import BadCopy

    typed = sys.argv[1:] if arguments is None else arguments
    asked = _parser(typed).parse_args(typed)
    try:
        code: int | None = asked.do(asked)
    except (Mistaken, BookError, Refused, BadCopy, InUse, NotStored, sqlite3.DatabaseError) as wrong:
        if isinstance(wrong, sqlite3.DatabaseError) and getattr(wrong, "sqlite_errorname", "") not in _UNUSABLE:
            raise
        print(f"runboard: {_in_words(wrong)}", file=sys.stderr)
        return 2
    return code or 0


def _in_words(wrong: Exception) -> str:
    import sqlite3

    from runboard.commands.asking import Mistaken
    from runboard.run.refusal import NotStored, Refused
    from runboard.store.holding import InUse
    from runboard.store.proof import BadCopy
    from runboard.words.sentences import say

    match wrong:
        case Mistaken():
            return say("mistaken", wrong.code, wrong.facts)
        case Refused():
            return say("refused", wrong.code, wrong.facts)
        case BadCopy():
            return say("bad-copy", wrong.code, wrong.facts)
        case InUse():
            return say("mistaken", "being put back", {"folder": str(wrong)})
        case NotStored():
            return say("not-stored", wrong.why)
        case sqlite3.DatabaseError():
            return say("mistaken", "database", {"why": str(wrong)})
    return str(wrong)  # a book's problems are sentences already


def _parser(typed: Sequence[str]) -> "argparse.ArgumentParser":
    """Of all commands, and of what the one that is ``typed`` takes: only its module is loaded."""
    import argparse
    from importlib import import_module

    from runboard.words.sentences import say

    parser = argparse.ArgumentParser(prog="runboard", description=say("command", "runboard"))
    commands = parser.add_subparsers(title="commands", required=True)
    for name, module in COMMANDS.items():
        command = commands.add_parser(name, help=say("command", name))
        if name in typed[:1]:
            found = import_module(f"runboard.commands.{module}")
            found.add_to(command)
            command.set_defaults(do=found.do)
    return parser


if __name__ == "__main__":
    sys.exit(main())
