"""Plans of instance number one, their bounds and gaps beside a first trial's; and job shops beside a bare CP-SAT model."""

import os
import platform
import time
from collections.abc import Iterator
from statistics import median
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.hours import open_ticks
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.rule.greedy import greedy_plan, warm
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.search.improve import Improved, improve
from runboard.plan.schedule.search.model import Limits, Model, Wish
from tests.bench.now import Row
from tests.bench.plan_answers import answers
from tests.core.instances import the_trial
from tests.job_shops import JOB_SHOPS, OPTIMA, Rows, job_shop

SECONDS, GOAL_PROOF, GOAL_RATIO = 20, 5.0, 1.3
WORKERS = 2
# (trays, people): (plan in open minutes, gap to its bound in per cent), of a trial in which two could sand at once.
TRIAL = {(9, 1): (827, 0.0), (9, 2): (752, 0.0), (18, 1): (1514, 7.7), (18, 2): (827, 8.5), (36, 1): (3002, 8.2)}
TRIAL |= {(36, 2): (1706, 25.0)}
GOALS = {9: 0.0, 18: 4.0, 36: 6.0}
HORIZON = 3000


def main(quick: bool = False) -> int:
    """Print the tables; 1 if a goal is not met."""
    print(f"{platform.machine()}, {os.cpu_count()} cores, {WORKERS} workers, load {os.getloadavg()[0]:.1f}")
    warm()
    missed = 0
    print(f"\n{'after an event in the middle of a run, two people':<58}{'ours':>9}")
    for row in answers(quick):
        print(row, flush=True)
        missed += row.met is False
    seconds = 5 if quick else SECONDS
    print(
        f"\nplan after {seconds} s, in open minutes: greedy, plan, bound (its rule), gap; the trial's plan and gap; walks"
    )
    for trays in (9, 18) if quick else (9, 18, 36, 72):
        for people in (1, 2, 3):
            missed += _print_plan(trays, people, seconds)
    print(f"\njob shops: generic path beside a bare model, {WORKERS} workers, median of 5 seeds")
    for row in job_shops(["la01", "la02", "la03"] if quick else ["la01", "la02", "la03", "ft10"]):
        print(row, flush=True)
        missed += row.met is False
    return int(missed > 0)


def _print_plan(trays: int, people: int, seconds: float) -> int:
    problem = the_trial(trays, people)
    started = time.perf_counter()
    first = greedy_plan(problem)
    at_once = time.perf_counter() - started
    started = time.perf_counter()
    proofs: list[float] = []

    def told(_done: int, _total: int, latest: Improved) -> None:
        if latest.is_proved:
            proofs.append(time.perf_counter() - started)

    found = improve(problem, first, seconds, told, workers=WORKERS, clock=time.perf_counter)
    took = proofs[0] if proofs else time.perf_counter() - started  # what follows a proof makes walks fewer
    plan, least = (open_ticks(problem, tick) / 2 for tick in (found.plan.finish(problem), found.bound.tick))
    gap = 100 * found.gap / plan
    known = TRIAL.get((trays, people))
    beside = f"{known[0]:5} {known[1]:4.1f} %" if known else "     –"
    greedy = open_ticks(problem, first.finish(problem)) / 2
    print(
        f"{trays:3} trays {people} people {greedy:8.1f} ({1000 * at_once:3.0f} ms) {plan:8.1f} {least:8.1f} "
        f"({found.bound.rule}) {gap:5.1f} %  {took:5.1f} s {'proved' if found.is_proved else ''}  {beside}  "
        f"walks: {walks_in(problem, first)} → {walks_in(problem, found.plan)}",
        flush=True,
    )
    return int(_misses(trays, gap, found, took))


def _misses(trays: int, gap: float, found: Improved, took: float) -> bool:
    if trays == 9:
        return not found.is_proved or took > GOAL_PROOF
    return gap > GOALS.get(trays, 100.0)


def job_shops(names: list[str]) -> Iterator[Row]:
    """For each: how much longer the generic path takes than the bare model, to the same proof."""
    for name in names:
        ours = median(_generic(name, seed) for seed in range(1, 6))
        bare = median(_bare(name, seed) for seed in range(1, 6))
        yield Row(f"{name}: to the proof", 1000 * ours, 1000 * bare, GOAL_RATIO)


def _generic(name: str, seed: int) -> float:
    problem = job_shop(*JOB_SHOPS[name])
    answer = Model(problem, Wish(HORIZON, bound(problem).tick)).solve(Limits(120, WORKERS, seed))
    assert answer.bound == OPTIMA[name], f"{name}: {answer.bound} is proved, {OPTIMA[name]} published"
    return answer.seconds


def _bare(name: str, seed: int) -> float:
    model, finish, rows = _bare_model(*JOB_SHOPS[name])
    for row in rows:
        model.add_no_overlap(row)
    model.minimize(finish)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers, solver.parameters.random_seed = WORKERS, seed
    solver.parameters.max_time_in_seconds = 120
    solver.solve(model)
    assert solver.objective_value == OPTIMA[name]
    return solver.wall_time


def _bare_model(durations: Rows, machines: Rows) -> tuple[cp_model.CpModel, Any, list[list[Any]]]:
    model = cp_model.CpModel()
    finish = model.new_int_var(0, HORIZON, "finish")
    rows: list[list[Any]] = [[] for _ in machines[0]]
    for lengths, order in zip(durations, machines, strict=True):
        before: Any = 0
        for length, machine in zip(lengths, order, strict=True):
            start = model.new_int_var(0, HORIZON, "")
            model.add(start >= before)
            rows[machine].append(model.new_fixed_size_interval_var(start, length, ""))
            before = start + length
        model.add(finish >= before)
    return model, finish, rows
