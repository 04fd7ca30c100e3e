"""The command that prints when a run will be done, who does what until then, and how far any plan could beat it."""

import argparse
import json
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TextIO

from runboard.mistaken import Mistaken
from runboard.plan.schedule.problem.nouns import Plan
from runboard.store.connect import FILE_NAME

SECONDS = 20.0
_BAR = 24


def add_plan(commands: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Add it to the commands."""
    plan = commands.add_parser("plan", help="print when a run will be done, and who does what until then")
    plan.add_argument(
        "run", nargs="?", default="", metavar="RUN", help="the run's key; may be left out where one run is open"
    )
    plan.add_argument("--data", type=Path, required=True, metavar="DIR")
    plan.add_argument("--json", action="store_true", help="for other programs; moments are UTC")
    plan.add_argument(
        "--seconds",
        type=_seconds,
        default=SECONDS,
        metavar="N",
        help=f"how long to look for a better plan; default {SECONDS:g}, 0 for the first that is found",
    )
    plan.set_defaults(do=_plan)


def _seconds(text: str) -> float:
    try:
        found = float(text)
    except ValueError:
        found = -1.0
    if not 0 <= found <= 86_400:
        raise argparse.ArgumentTypeError(f"{text!r} is no number of seconds, 0 or more")
    return found


def _plan(asked: argparse.Namespace) -> None:
    began = time.monotonic()
    # Imported here: the other commands need no planner, and answer at once.
    from runboard.plan.schedule.rule.rule import is_new
    from runboard.planning import CannotPlan, make_plan
    from runboard.words.plan_record import plan_lines, plan_record

    if not (asked.data / FILE_NAME).is_file():
        raise Mistaken(f"there is no shop in {asked.data}.")
    if sys.stderr.isatty() and is_new():
        say_new(sys.stderr)
    told, clear = progress(sys.stderr)
    try:
        try:
            found = make_plan(asked.data, asked.run, asked.seconds, told, began)
        finally:
            clear()
    except CannotPlan as why:
        raise Mistaken(str(why)) from why
    if asked.json:
        record = plan_record(found.run, found.answer, found.bound, found.outlook)
        sys.stdout.write(json.dumps(record, ensure_ascii=False, indent=2) + "\n")
    else:
        lines = plan_lines(found.run, found.answer, found.bound, found.outlook)
        sys.stdout.write("\n".join(line for line in lines) + "\n")


def say_new(where: TextIO) -> None:
    """Say why nothing moves yet: the rule is compiled for the first time."""
    where.write("Making the planner ready, once: about 15 seconds.\n")
    where.flush()


def progress(where: TextIO) -> tuple[Callable[[int, int, Plan], None], Callable[[], None]]:
    """(told, clear): a bar that grows while the plan is made better, and is taken away; nothing where nobody watches."""
    if not where.isatty():
        return lambda done, total, plan: None, lambda: None

    def told(done: int, total: int, plan: Plan) -> None:
        full = _BAR * done // total if total else 0
        where.write(f"\r[{'#' * full}{'-' * (_BAR - full)}] looking for a better plan; Ctrl-C keeps the best so far")
        where.flush()

    def clear() -> None:
        where.write("\r\x1b[K")
        where.flush()

    return told, clear
