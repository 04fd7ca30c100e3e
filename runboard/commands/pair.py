"""Show a code that pairs a lead's phone: the first, or in place of a lost one."""

from argparse import ArgumentParser, Namespace

from runboard.commands.asking import add_folder, check_folder
from runboard.floor.letting_in.devices import CODE_LASTS, make_console_code
from runboard.opening import open_door
from runboard.store.holding import hold
from runboard.words.sentences import say


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_folder(command)


def do(asked: Namespace) -> None:
    """Make a code and print it."""
    check_folder(asked.data)
    with hold(asked.data):
        store, door = open_door(asked.data)
        code, _ = make_console_code(door)
        store.close()
    print(say("told", "code", {"code": code, "minutes": CODE_LASTS}))
    print(say("told", "code how"))
