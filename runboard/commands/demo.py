"""Serve a shop made up to try, with a run in full swing: to this computer alone, and nobody has to pair."""

import tempfile
from argparse import ArgumentParser, Namespace
from pathlib import Path

from runboard.app import build, served
from runboard.commands.asking import Mistaken, make_data_folder
from runboard.commands.serve import add_serving, listen_at
from runboard.house import Settings
from runboard.store.connect import FILE_NAME
from runboard.store.holding import hold
from runboard.web.door.serve import serve
from runboard.words.sentences import say


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    command.add_argument("--data", type=Path, metavar="DIR", help=say("option", "demo folder"))
    add_serving(command)


def do(asked: Namespace) -> None:
    """Make it, unless it was made before, and serve it until Ctrl-C."""
    with tempfile.TemporaryDirectory(prefix="runboard-demo-") as place:
        data = asked.data or Path(place)
        was_served = (data / FILE_NAME).exists()
        if not was_served:
            _make(data)
        with listen_at(asked.port) as listening, hold(data):
            how = Settings(data, demo=True, was_served=was_served, open_to_all=True, plans=not asked.no_planner)
            serve(served(build(how)), listening, not asked.no_open)


def _make(data: Path) -> None:
    from runboard.demo.make import make_demo  # one that was made before needs no simulator

    if data.exists() and (not data.is_dir() or any(data.iterdir())):
        raise Mistaken("something else there", folder=data)
    make_data_folder(data)
    make_demo(data)
