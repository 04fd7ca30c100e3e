"""Print when a run will be done, who does what until then, and how far any plan could beat it."""

import json
import os
import sys
import time
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from threading import Timer
from typing import TextIO

from runboard.commands.asking import Mistaken, add_folder, add_run, check_shop, opened, rewritten_line, run_meant
from runboard.floor.planning.plans import Planned, plan_at_once
from runboard.plan.answer import Answer, with_plan
from runboard.plan.clashes import in_the_way
from runboard.plan.estimates import spread_in
from runboard.plan.schedule.problem.nouns import Plan, Problem, of_run
from runboard.plan.schedule.rule import rule
from runboard.plan.schedule.rule.rule import Cores, warm
from runboard.plan.schedule.search.bounds import Bound, bound
from runboard.plan.schedule.told.forecast import Forecast, forecast
from runboard.plan.search import Found, search
from runboard.run.fold.state import RunState
from runboard.words.plan_record import plan_lines, plan_record
from runboard.words.sentences import say

SECONDS = 20.0
# What is kept back of the time for saying how it may turn out: seconds a block, on a slow computer.
LAST_SECONDS = 0.0008
# For any plan at all, where none is at hand and no time was given.
COLD_SECONDS = 5.0
# done, total, and the plan so far.
Told = Callable[[int, int, Plan], None]
_BAR = 24


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    add_run(command)
    add_folder(command)
    command.add_argument("--json", action="store_true", help=say("option", "json"))
    says = say("option", "seconds", {"seconds": f"{SECONDS:g}"})
    command.add_argument("--seconds", type=_seconds, default=SECONDS, metavar="N", help=says)


def _seconds(text: str) -> float:
    try:
        found = float(text)
    except ValueError:
        found = -1.0
    if not 0 <= found <= 86_400:
        raise ArgumentTypeError(say("mistaken", "no seconds", {"text": repr(text)}))
    return found


def do(asked: Namespace) -> None:
    """Plan, and print it as lines or as a record."""
    began = time.monotonic()
    check_shop(asked.data)
    if sys.stderr.isatty() and rule.is_new():
        say_new(sys.stderr)
    told, clear = progress(sys.stderr)
    try:
        found = make_plan(asked.data, asked.run, asked.seconds, told, began)
    finally:
        clear()
    if asked.json:
        record = plan_record(found.run, found.answer, found.bound, found.outlook)
        sys.stdout.write(json.dumps(record, ensure_ascii=False, indent=2) + "\n")
    else:
        lines = plan_lines(found.run, found.answer, found.bound, found.outlook)
        sys.stdout.write("\n".join(lines) + "\n")


def say_new(where: TextIO) -> None:
    """Say why nothing moves yet: the rule is compiled for the first time."""
    where.write(say("told", "planner made ready") + "\n")
    where.flush()


def progress(where: TextIO) -> tuple[Told, Callable[[], None]]:
    """(told, clear): a bar that grows while the plan is made better, and is taken away; nothing where nobody watches."""
    write, clear = rewritten_line(where)
    says = say("told", "looking")

    def told(done: int, total: int, plan: Plan) -> None:
        full = _BAR * done // total if total else 0
        write(f"[{'#' * full}{'-' * (_BAR - full)}] {says}")

    return told, clear


@dataclass(frozen=True)
class RunPlan:
    """A run's plan among all that is open, what no plan of it can beat, and how it may turn out."""

    run: RunState
    answer: Answer
    bound: Bound
    outlook: Forecast | None

    @property
    def problem(self) -> Problem:
        return self.answer.problem

    @property
    def plan(self) -> Plan:
        return self.answer.plan or Plan(())


def make_plan(data: Path, run: str, seconds: float, told: Told, began: float | None = None) -> RunPlan:
    """The best plan found for the run named, '' for the one that is open, within so many ``seconds`` since ``began``, which
    is read off the clock that only goes on: all of the answer is to be there by then, so that the search has what coming up
    and saying how it may turn out leave of it, and a quarter of it at least.

    ``told(done, total, plan)`` hears how far it is. Stopped by the keyboard it answers with the best so far. Where there is
    no plan, ``Mistaken`` says why; Refused for a run that there is not.
    """
    began = time.monotonic() if began is None else began
    warm()
    with opened(data) as (_, workshop):
        found = run_meant(workshop, run)
        if found.state != "open":
            raise Mistaken("run over", run=found.name, state=found.state)
        planned = plan_at_once(workshop)
    if planned.answer.is_too_much:
        raise Mistaken("too much open")
    problem = planned.answer.problem
    left = seconds - (time.monotonic() - began) - len(problem.blocks) * LAST_SECONDS
    answer, limit = _better(planned.answer, max(left, seconds / 4), told, seconds)
    if any(block.run != found.id for block in problem.blocks):
        limit = bound(of_run(problem, found.id))
    return RunPlan(found, answer, limit, _outlook(planned, answer, found.id))


def _better(answer: Answer, seconds: float, told: Told, asked: float) -> tuple[Answer, Bound]:
    """A better plan, or any where there is none, and what none can beat; of the seconds that were ``asked`` for these are left."""
    problem = answer.problem
    if answer.plan is not None and (not problem.blocks or seconds <= 0):
        return answer, bound(problem)
    latest = Found(answer.plan)

    def tell(done: int, total: int, found: Found | None = None) -> None:
        nonlocal latest
        latest = found or latest
        if latest.plan is not None:
            told(done, total, latest.plan)

    try:
        latest = search(
            problem, answer.plan, seconds or COLD_SECONDS, (), (), tell, _AfterSeconds(seconds), time.monotonic
        )
    except KeyboardInterrupt:
        if latest.plan is None:
            raise
    if latest.plan is None:
        raise _why_none(latest, answer, asked)
    made = answer if latest.plan is answer.plan else with_plan(answer, latest.plan)
    return made, latest.bound or bound(problem)


@dataclass(frozen=True)
class _AfterSeconds:
    """Has a search asked to stop when its time is up, whatever it is at."""

    seconds: float

    @contextmanager
    def calls(self, ask: Callable[[], object]) -> Iterator[None]:
        timer = Timer(self.seconds or COLD_SECONDS, ask)
        timer.daemon = True
        timer.start()
        try:
            yield
        finally:
            timer.cancel()


def _why_none(found: Found, answer: Answer, seconds: float) -> Mistaken:
    if not found.is_impossible:
        return Mistaken("no plan yet", seconds=f"{seconds:.0f}")
    steps = dict.fromkeys(
        str(left_out.facts["step"]) for left_out in in_the_way(answer.state, answer.problem, found.clash)
    )
    return Mistaken("no place left", steps=", ".join(steps)) if steps else Mistaken("no plan fits")


def _outlook(planned: Planned, answer: Answer, run: str) -> Forecast | None:
    if not any(block.run == run for block in answer.problem.blocks) or answer.plan is None:
        return None
    spread = spread_in(planned.answer.state, planned.estimates)
    with all_cores() as cores:
        return forecast(answer.problem, answer.plan, spread=spread, run=run, cores=cores)


@contextmanager
def all_cores() -> Iterator[Cores]:
    """This computer's cores, as threads: the compiled rule lets them work at the same time."""
    many = os.cpu_count() or 1
    with ThreadPoolExecutor(many) as threads:
        yield Cores(many, threads.map)
