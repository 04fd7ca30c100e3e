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


def test_it_is_read_in_five_minutes() -> None:
    """Without its commands: what is longer stands in the help, at its place in the program."""
    text = re.sub(r"```.*?```|^\|.*?\|$", "", README.read_text("utf-8"), flags=re.M | re.S)

    assert len(text.split()) <= 1100


def test_it_opens_with_the_job_and_shows_four_pictures_of_it() -> None:
    text = README.read_text("utf-8")
    pictures = [README.parent / name for name in re.findall(r"!\[[^\]]+\]\((.pictures/\w+\.png)\)", text)]

    assert text.startswith("# runboard\n\nRunboard is for a person who makes small goods")
    assert [path.stem for path in pictures] == ["now", "plan", "card", "review"]
    assert all(0 < path.stat().st_size < 60_000 for path in pictures)


def test_it_keeps_what_nobody_may_overlook() -> None:
    words = " ".join(README.read_text("utf-8").split())

    for said in (
        "emergency number",
        "never says that a running machine may be left",
        "stay and watch",
        "no fire watch",
        "no interlock",
    ):
        assert said in words
