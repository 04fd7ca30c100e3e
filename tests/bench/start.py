"""What it costs to start: CPU seconds of a process of its own that imports the server, and of one that serves until it answers
the first page, each beside a Python that does nothing else."""

import subprocess
import sys
import tempfile
import urllib.request
from collections.abc import Iterator
from pathlib import Path

from tests.bench.now import Row
from tests.serving import running

GOAL = 1.5
TIMES = 5
# At the end it says what its own process has used, its children left out.
_TELLING = """
import atexit, resource, sys
def say():
    used = resource.getrusage(resource.RUSAGE_SELF)
    print("used", used.ru_utime + used.ru_stime, flush=True)
atexit.register(say)
"""
_SERVING = f"{_TELLING}from runboard.cli import main\nsys.exit(main())\n"


def main() -> int:
    """Measure and print it; 1 where the goal is not met."""
    print(f"{'':<58}{'ours':>9}    {'against':>8}{'ratio':>7}  goal")
    found = []
    for row in rows():
        print(row, flush=True)
        found.append(row)
    return int(any(row.met is False for row in found))


def rows() -> Iterator[Row]:
    nothing = min(_of("") for _ in range(TIMES))
    yield Row("a Python that does nothing", nothing, unit="s")
    yield Row("import runboard.cli", min(_of("import runboard.cli") for _ in range(TIMES)), nothing, unit="s")
    yield Row("import runboard.app", min(_of("import runboard.app") for _ in range(TIMES)), nothing, unit="s")
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place:
        data = Path(place) / "demo"
        made = _served(data, planner=True)
        again = min(_served(data, planner=True) for _ in range(TIMES))
        alone = min(_served(data, planner=False) for _ in range(TIMES))
    yield Row("demo on its folder, to the first page", again, None, GOAL, "s")
    yield Row("the same without a planner", alone, None, GOAL, "s")
    yield Row("demo made first: what that adds", made - again, unit="s")


def _of(code: str) -> float:
    done = subprocess.run([sys.executable, "-c", _TELLING + code], capture_output=True, text=True, check=True)
    return float(done.stdout.split()[-1])


def _served(data: Path, *, planner: bool) -> float:
    with running("demo", "--data", str(data), python=(sys.executable, "-c", _SERVING), planner=planner) as server:
        urllib.request.urlopen(server.address, timeout=60).close()
        server.interrupt()
    return float(next(line for line in server.said if line.startswith("used")).split()[1])
