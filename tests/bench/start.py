"""What it costs to start: CPU seconds of a process of its own that imports the server, and of one that serves until it answers
the first page, each beside a Python that does nothing else; and what is asked so often that it must cost nothing."""

import json
import subprocess
import sys
import tempfile
import time
import urllib.request
from collections.abc import Callable, Iterator
from pathlib import Path

from scipy.stats import binom

from runboard.demo.rails import key_rails
from runboard.lan.addresses import whereabouts
from runboard.plan.extras import pieces_to_start
from runboard.shop.book_json import product_from_json
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
    yield from _small()


def _small() -> Iterator[Row]:
    """Milliseconds of what a form, an import or every tick of the clock asks, beside what a library takes for its part."""
    record = key_rails()
    record["operations"] = [{**record["operations"][0], "key": f"step{number}"} for number in range(10)]
    text = json.dumps(record)
    yield Row("a product of ten operations read; JSON's own reading", _least(lambda: product_from_json(record)),
              _least(lambda: json.loads(text)))  # fmt: skip
    yield Row("how many to start of 5,000; scipy's binomial once a number", _least(lambda: pieces_to_start(5000, 0.5, 0.95)),
              _least(lambda: [binom.sf(4999, start, 0.5) for start in range(10_000, 10_170)]))  # fmt: skip
    yield Row("where this computer is, at every tick", _least(whereabouts), None, 20)


def _least(work: Callable[[], object]) -> float:
    """Milliseconds of the quietest of some goes."""
    spent = []
    for _ in range(20):
        began = time.perf_counter()
        work()
        spent.append(time.perf_counter() - began)
    return min(spent) * 1000


def _of(code: str) -> float:
    done = subprocess.run([sys.executable, "-c", _TELLING + code], capture_output=True, text=True, check=True)
    return float(done.stdout.split()[-1])


def _served(data: Path, *, planner: bool) -> float:
    with running("demo", "--data", str(data), python=(sys.executable, "-c", _SERVING), planner=planner) as server:
        urllib.request.urlopen(server.address, timeout=60).close()
        server.interrupt()
    return float(next(line for line in server.said if line.startswith("used")).split()[1])
