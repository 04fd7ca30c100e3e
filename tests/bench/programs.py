"""Machine programs: lines read *and timed* a second beside two packages that only parse them (gcodeparser and pygcode, from the
registry), whether the cost goes with the lines, what memory a long program takes; and how near the order of visits comes to the best."""

import json
import os
import platform
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from random import Random
from statistics import median

from runboard.plan.program.moves import Moves
from runboard.plan.program.read import read_program
from tests.bench.now import Row
from tests.bench.visits import main as visits

GOAL_SPEED, GOAL_LINEAR, GOAL_MEMORY = 0.1, 1.25, 300.0
BESIDE, LONG, TIMES = 50_000, 1_000_000, 5


def plain_program(lines: int, seed: int = 1) -> bytes:
    """Straight cuts and arcs, G0 to G3, as a relief has them: many short ones, and now and then a travel."""
    chance = Random(seed)
    found, x, y = ["G21 G90 G17", "G0 X0 Y0 Z5 F1200"], 0.0, 0.0
    while len(found) < lines:
        x, y = x + chance.uniform(-1, 1), y + chance.uniform(-1, 1)
        match chance.randrange(20):
            case 0:
                found.append(f"G0 X{x:.3f} Y{y:.3f} Z5.000")
            case 1 | 2:
                found.append(f"G{chance.choice('23')} X{x:.3f} Y{y:.3f} R{chance.uniform(2, 9):.3f}")
            case 3:
                found.append(f"G1 X{x:.3f} Y{y:.3f} Z{-chance.random():.3f} F{chance.randrange(300, 1500)}")
            case _:
                found.append(f"G1 X{x:.3f} Y{y:.3f} Z{-chance.random():.3f}")
    return ("\n".join(found) + "\n").encode()


def main(quick: bool = False) -> int:
    """Measure and print it; 1 where a goal is not met."""
    print(
        f"{platform.machine()}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}, Python {platform.python_version()}"
    )
    print(f"{'':<58}{'ours':>9}    {'against':>8}{'ratio':>7}  goal")
    found = []
    for row in rows(quick):
        print(row, flush=True)
        found.append(row)
    print()
    return int(any(row.met is False for row in found)) | visits(quick)


def rows(quick: bool) -> Iterator[Row]:
    yield from _beside(plain_program(BESIDE // 5 if quick else BESIDE))
    yield from _linear(LONG // 5 if quick else LONG)
    yield from _memory(LONG // 5 if quick else LONG)


def work(content: bytes) -> Moves:
    """Read and timed."""
    from runboard.plan.program.motion import timed
    from runboard.shop.machines import Motion

    moves = read_program(content, way="compiled")
    timed(moves, Motion(), is_compiled=True)
    return moves


def _beside(content: bytes) -> Iterator[Row]:
    text, lines = content.decode(), content.count(b"\n")
    work(content)  # the machine code is at hand
    ours, by_package = [], {name: [] for name in PARSERS}  # type: ignore[var-annotated]
    for _ in range(TIMES):  # in turn, so that whatever else the computer does hits all
        ours.append(_milliseconds(lambda: work(content)))
        for name, parse in PARSERS.items():
            by_package[name].append(_milliseconds(lambda parse=parse: parse(text)))  # type: ignore[misc]
    mine = median(ours)
    faster = min(median(one) for one in by_package.values())
    for name, took in by_package.items():
        goal = GOAL_SPEED if median(took) == faster else None
        yield Row(f"{lines} lines read and timed, beside {name}", mine, median(took), goal)
    yield Row("thousand lines a second, read and timed", lines / mine, unit="/ms")
    alone = median(_milliseconds(lambda: read_program(content, way="interpreted")) for _ in range(TIMES))
    yield Row("the same by the interpreter, read only", lines / alone, unit="/ms")


def _gcodeparser(text: str) -> None:
    from gcodeparser import parse_gcode_lines

    for _ in parse_gcode_lines(text):
        pass


def _pygcode(text: str) -> None:
    from pygcode import Line

    for line in text.splitlines():
        Line(line)


PARSERS: dict[str, Callable[[str], None]] = {"gcodeparser": _gcodeparser, "pygcode": _pygcode}


def _linear(lines: int) -> Iterator[Row]:
    """Microseconds a line of a program ten times as long, beside those of the shorter."""
    long, short = plain_program(lines), plain_program(lines // 10)
    work(short)
    took = [(_milliseconds(lambda: work(long)), _milliseconds(lambda: work(short))) for _ in range(TIMES)]
    by_long, by_short = (1000 * median(one[at] for one in took) for at in (0, 1))
    yield Row(
        f"a line of {lines} beside one of {lines // 10}", by_long / lines, 10 * by_short / lines, GOAL_LINEAR, "µs"
    )


_MEASURED = """
import json, re, sys
from pathlib import Path
from tests.bench.programs import plain_program, work
def megabytes(what):
    return int(re.search(what + r":\\s+(\\d+)", Path("/proc/self/status").read_text())[1]) / 1024
bare = megabytes("VmRSS")
work(plain_program(1000))
idle = megabytes("VmRSS")
moves = work(Path(sys.argv[1]).read_bytes())
print(json.dumps([bare, idle, megabytes("VmHWM"), len(moves)]))
"""


def _memory(lines: int) -> Iterator[Row]:
    """MB at most of a process of its own that reads and times a program, over what it had before with all machine code at hand."""
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place:
        file = Path(place) / "long.ngc"
        file.write_bytes(plain_program(lines))
        said = subprocess.run([sys.executable, "-c", _MEASURED, str(file)], check=True, capture_output=True, text=True)
    bare, idle, most, blocks = json.loads(said.stdout)
    yield Row(f"MB over the idle process, {blocks} blocks", most - idle, None, GOAL_MEMORY, "MB")
    yield Row("what the machine code adds to a bare process", idle - bare, unit="MB")


def _milliseconds(do: Callable[[], object]) -> float:
    begun = time.perf_counter()
    do()
    return 1000 * (time.perf_counter() - begun)
