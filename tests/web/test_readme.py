"""README tells of every command and each of its options, and of none that there is not."""

import argparse
import re
from importlib import import_module
from pathlib import Path

import pytest

from runboard.cli import COMMANDS

README = Path(__file__).parents[2] / "README.md"


def told() -> dict[str, set[str]]:
    """The options of each command in the table."""
    rows = re.findall(r"^\| `runboard (\w+)(.*?)` \|", README.read_text("utf-8"), re.M)
    found: dict[str, set[str]] = {}
    for name, rest in rows:
        found.setdefault(name, set()).update(re.findall(r"--[a-z-]+", rest))
    return found


def options(name: str) -> set[str]:
    parser = argparse.ArgumentParser(prog=name, add_help=False)
    import_module(f"runboard.commands.{COMMANDS[name]}").add_to(parser)
    return {option for action in parser._actions for option in action.option_strings if option.startswith("--")}


def test_every_command_has_its_row() -> None:
    assert set(told()) == set(COMMANDS)


@pytest.mark.parametrize("name", COMMANDS)
def test_a_command_s_row_has_its_options(name: str) -> None:
    assert told()[name] == options(name)
