"""Plans of instance number one, their bounds and gaps beside a first trial's; and job shops beside a bare CP-SAT model."""

import argparse
import os
import platform
import time
from collections.abc import Iterator
from statistics import median
from typing import Any

from ortools.sat.python import cp_model

from runboard.plan.schedule.problem.hours import open_ticks
from runboard.plan.schedule.problem.people import walks_in
from runboard.plan.schedule.rule import wandering
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import warm
from runboard.plan.schedule.search import improve as improving
from runboard.plan.schedule.search.best import Improved
from runboard.plan.schedule.search.bounds import bound
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.search.model import Model
from runboard.plan.schedule.search.solving import Aim, SolveLimits
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


# What the planner came to before its search was made anew: plan and bound in open minutes, walks, after 20 s on two idle cores.
BEFORE = {
    (9, 1): (827, 827, 7), (9, 2): (762, 762, 5), (9, 3): (753, 753, 1),
    (18, 1): (1472, 1470, 10), (18, 2): (843, 843, 25), (18, 3): (834, 834, 2),
    (36, 1): (2942, 2895, 23), (36, 2): (1554, 1473, 22), (36, 3): (1332, 1314, 39),
    (72, 1): (5732, 5478, 24), (72, 2): (3030, 2895, 32), (72, 3): (2211, 2007, 58),
}  # fmt: skip


def _nothing(*_: Any) -> None:
    pass


# Parts of the search that may be left out: where each stands, and what stands there instead.
PARTS: dict[str, tuple[Any, str, Any]] = {
    "priorities": (improving._Search, "_wander", _nothing),
    "gathering": (wandering, "_GATHER", 0.0),
    "as begun": (wandering, "_AS_BEGUN", 0.0),
    "weights": (wandering, "_WEIGHTS", (1, 1)),
    "again": (wandering, "_STUCK", 10**9),
    "evenings": (improving._Search, "_count_evenings", _nothing),
    "model": (improving._Search, "_race", _nothing),
    "around": (improving, "WHOLE", 10**9),  # long plans searched as short ones are
    "heads": (improving, "counts_heads", lambda _: False),
    "walks": (improving._Search, "_walk_less", _nothing),
}


def run(arguments: list[str]) -> int:
    """``plan [--quick]`` prints the tables; with ``--without PART``, as often as wanted, or ``--compare``, only plans side by
    side: ``--seconds``, ``--seeds`` and ``--trays`` say of how much."""
    asked = argparse.ArgumentParser(prog="plan")
    asked.add_argument("--quick", action="store_true")
    asked.add_argument("--compare", action="store_true")
    asked.add_argument("--without", action="append", choices=list(PARTS), default=[])
    asked.add_argument("--seconds", type=float, default=SECONDS)
    asked.add_argument("--seeds", type=int, default=3)
    asked.add_argument("--trays", type=int, nargs="*", default=[9, 18, 36, 72])
    given = asked.parse_args(arguments)
    if given.without or given.compare:
        return compare_without(given.without, given.seconds, given.seeds, given.trays)
    return main(given.quick)


def compare_without(parts: list[str], seconds: float, seeds: int, sizes: list[int]) -> int:
    """Print plan, bound and walks of each instance, as the search is and without each of some parts, in the mean of seeds."""
    warm()
    print(
        f"{seconds} s, {WORKERS} workers, {seeds} seeds, load {os.getloadavg()[0]:.1f}; plan/bound/walks, in open minutes"
    )
    print("trays people   before             whole              " + "".join(f"without {one:<28}" for one in parts))
    for trays, people in ((trays, people) for trays in sizes for people in (1, 2, 3)):
        whole = _mean(trays, people, seconds, seeds)
        before = BEFORE[trays, people]
        cells = [f"{trays:4} {people:4}  {_cell(before)} {_cell(whole)}"]
        for part in parts:
            where, name, instead = PARTS[part]
            kept = getattr(where, name)
            setattr(where, name, instead)
            less = _mean(trays, people, seconds, seeds)
            setattr(where, name, kept)
            changes = (f"{100 * (one - other) / max(1, other):+.1f}" for one, other in zip(less, whole, strict=True))
            cells.append(f"{_cell(less)} ({' '.join(changes)} %)")
        print("  ".join(cells), flush=True)
    return 0


def _cell(found: tuple[float, float, float]) -> str:
    return f"{found[0]:6.0f}/{found[1]:.0f}/{found[2]:<5.1f}"


def _mean(trays: int, people: int, seconds: float, seeds: int) -> tuple[float, float, float]:
    """Plan, bound and walks in the mean of some seeds."""
    problem, rows = the_trial(trays, people), []
    for seed in range(1, seeds + 1):
        first = greedy_plan(problem)
        found = improve(problem, first, seconds, _nothing, seed=seed, workers=WORKERS, clock=time.perf_counter)
        minutes = (open_ticks(problem, tick) / 2 for tick in (found.plan.finish(problem), found.bound.tick))
        rows.append((*minutes, walks_in(problem, found.plan)))
    plan, least, walks = (sum(row[at] for row in rows) / seeds for at in range(3))
    return plan, least, walks


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
    beside = f"{known[0]:5} {known[1]:4.1f} %" if known else "     –      "
    was = "before: {}/{}, walks {}".format(*BEFORE[trays, people])
    calmer = found.calmer
    calm = f", {walks_in(problem, calmer)} at {open_ticks(problem, calmer.finish(problem)) / 2}" if calmer else ""
    greedy = open_ticks(problem, first.finish(problem)) / 2
    print(
        f"{trays:3} trays {people} people {greedy:8.1f} ({1000 * at_once:3.0f} ms) {plan:8.1f} {least:8.1f} "
        f"({found.bound.rule}) {gap:5.1f} %  {took:5.1f} s {'proved' if found.is_proved else ''}  {beside}  "
        f"walks: {walks_in(problem, first)} → {walks_in(problem, found.plan)}{calm}  {was}",
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
    answer = Model(problem, Aim(HORIZON, bound(problem).tick)).solve(SolveLimits(120, WORKERS, seed))
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
