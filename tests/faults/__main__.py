"""``python -m tests.faults``: a storm of presses against a server that is frozen and killed, and what it left."""

import argparse
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from tests.faults.report import report
from tests.faults.storm import Wanted, storm


@contextmanager
def busy(count: int) -> Iterator[None]:
    """So many processes of this one's that compute for nothing meanwhile, as on a slow computer."""
    others = [subprocess.Popen([sys.executable, "-c", "while True: sum(range(1000))"]) for _ in range(count)]
    try:
        yield
    finally:
        for one in others:
            one.kill()
            one.wait()


def main() -> int:
    usual = Wanted()
    parser = argparse.ArgumentParser(prog="python -m tests.faults", description=__doc__)
    parser.add_argument("--presses", type=int, default=usual.presses)
    parser.add_argument("--kills", type=int, default=usual.kills)
    parser.add_argument("--phones", type=int, default=usual.phones)
    parser.add_argument("--limit", type=float, default=usual.limit, help="seconds, after which nobody presses any more")
    parser.add_argument("--seed", type=int, default=usual.seed)
    parser.add_argument(
        "--beside", type=int, default=0, help="so many processes that compute for nothing, on the same cores"
    )
    parser.add_argument("--keep", type=Path, help="leave what happened in this new folder")
    asked = parser.parse_args()
    wanted = Wanted(asked.presses, asked.kills, asked.phones, asked.seed, asked.limit)
    with tempfile.TemporaryDirectory(prefix="runboard-storm-") as made:
        place = asked.keep or Path(made)
        place.mkdir(parents=True, exist_ok=True)
        with busy(asked.beside):
            found = report(storm(wanted, place))
    print("\n".join(found.lines()))
    return int(bool(found.wrong))


if __name__ == "__main__":
    sys.exit(main())
