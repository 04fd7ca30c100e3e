"""Replications of a run's rest per second: compiled, as plain Python, and the same rule in simpy, on the same draws."""

from collections.abc import Callable
from time import perf_counter, process_time
from typing import Any

from runboard.commands.plan import all_cores
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.rule.rule import Replicate, Rule, plain, warm
from runboard.plan.schedule.told.forecast import drawn_lengths, follow
from tests.bench.simpy_shop import SimpyShop
from tests.core.instances import the_trial

GOAL = 100


def _rate(goes: int, work: Callable[[], Any], times: int = 3, clock: Callable[[], float] = process_time) -> float:
    """The best of some: others may be at work on the same cores."""
    best = 0.0
    for _ in range(times):
        started = clock()
        work()
        best = max(best, goes / (clock() - started))
    return best


def main() -> int:
    """Print replications per second at 9 trays and more, and how many times simpy's that is."""
    started = process_time()
    warm()
    print(f"compiled rule ready after {process_time() - started:.1f} s")
    print(
        f"{'trays/people':>14} {'compiled':>10} {'all cores':>10} {'plain':>8} {'simpy':>8} {'ratio':>7}   goal {GOAL}x, equal on the same draws"
    )
    for trays, people in ((9, 1), (9, 2), (18, 2), (36, 2)):
        _compare(trays, people, plain())
    return 0


def _compare(trays: int, people: int, plain_: Replicate) -> None:
    problem = the_trial(trays, people)
    fast, slow_ = Rule(problem), Rule(problem, plain_)
    priority, knobs = follow(fast, greedy_plan(problem))
    many, few = max(200, 18000 // trays), max(10, 900 // trays)
    reals = drawn_lengths(problem, many)
    rows = reals[:few].tolist()
    answers: list[Any] = []
    compiled = _rate(many, lambda: answers.append(fast.ends(reals, priority, knobs, [])[:few, 0].tolist()))
    with all_cores() as cores:
        spread = _rate(many, lambda: fast.ends(reals, priority, knobs, [], cores), clock=perf_counter)
    slow = _rate(few, lambda: answers.append([row[0] for row in slow_.ends(rows, priority, knobs, [])]))
    shop = SimpyShop(slow_, priority, knobs)
    events = _rate(few, lambda: answers.append([shop.finish(row) for row in rows]))
    equal = "equal" if all(one == answers[0] for one in answers) else "NOT EQUAL"
    print(
        f"{trays:>11}/{people} {compiled:>11.0f} {spread:>10.0f} {slow:>8.0f} {events:>8.0f} {compiled / events:>6.0f}x   {equal}"
    )
