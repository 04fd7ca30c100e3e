"""The real server on a data folder, with one page more: an empty one to measure against."""

import argparse
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from runboard.app import build, served
from runboard.house import Settings
from runboard.web.door.serve import listen, serve
from tests.serving import Running, running


@contextmanager
def running_on(data: Path, *, planner: bool = True) -> Iterator[Running]:
    """The server in a process of its own, on which devices pair, with the planner beside it."""
    with running(str(data), python=(sys.executable, "-m", "tests.bench.server"), planner=planner) as server:
        server.data = data
        yield server


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("data", type=Path)
    parser.add_argument("--port", type=int, default=0)
    parser.add_argument("--no-open", action="store_true")
    parser.add_argument("--no-planner", action="store_true")
    asked = parser.parse_args()
    house = build(Settings(asked.data, plans=not asked.no_planner))
    house.app.add_url_rule("/empty", view_func=lambda: "")
    with listen(asked.port) as listening:
        serve(served(house), listening, open_browser=False)


if __name__ == "__main__":
    main()
