"""A review of a run of 300 pieces with 10,000, 20,000 and 40,000 events, an idea tried on it, and a review with ten years of
runs in the book: seconds of this process's own work, each beside its goal.

Runs are those of made-up shops (``tests/simulated``), whose hand work has presses more that take no time.
"""

import gc
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from statistics import median
from time import process_time
from typing import Any

from runboard.floor.looking.over_runs import over_runs_now
from runboard.floor.looking.review import essentials_at
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.plan.change import Times
from runboard.plan.schedule.rule.rule import warm
from runboard.review.changes.nouns import Idea, Worth
from runboard.review.changes.trying import tried
from runboard.review.essentials import essentials_of
from runboard.review.happened.happened import happened
from runboard.review.held.held import held_of
from runboard.review.held.replayable import replayable
from runboard.review.measured.time_study import time_study
from runboard.review.past import Past
from runboard.review.weighing import asked_of, weigh
from tests.floor.fakes import workshop
from tests.simulated import looking_back
from tests.simulated.history import History, history
from tests.simulated.shops import shop
from tests.simulated.world import World, book_of

PIECES, A_TRAY = 300, 5
EVENTS = (10_000, 20_000, 40_000)
# Held by a service, by a rack, by hands.
SEEDS = (2, 3, 6)
RUNS, WEEKS, TRAYS = 300, 2, 3
GOAL, LINEAR = 1.0, 2.2
TIMES = 3


def main(quick: bool = False) -> int:
    """Measure and print; 1 where a goal is not met."""
    warm()
    return max(_large_runs(SEEDS[:1] if quick else SEEDS), _ten_years())


def _large_runs(seeds: tuple[int, ...]) -> int:
    missed = False
    for seed in seeds:
        world = replace(shop(seed), trays=PIECES // A_TRAY, a_tray=A_TRAY)
        print(f"\n{world.name}, meant to be held by {' '.join(world.designed)}: a run of {PIECES} pieces; seconds")
        whole = []
        for events in EVENTS:
            made = with_events(world, seed, events)
            parts = _parts(looking_back.past_of(made))
            whole.append(parts["whole"])
            print(f"  {len(made.events):>6} events: {_told(parts)}")
        grows = whole[2] / whole[1]
        weighed = _in_the_child(looking_back.past_of(with_events(world, seed, EVENTS[1])))
        print(f"  20,000 events {whole[1]:.2f} (goal {GOAL}), doubled {grows:.2f}x (goal {LINEAR}x)")
        print(f"  replayed: {_told(weighed)}   (goal of an idea {GOAL})")
        missed = missed or whole[1] > GOAL or grows > LINEAR or weighed["an idea"] > GOAL
    return int(missed)


def _told(parts: Mapping[str, float]) -> str:
    return ", ".join(f"{part} {seconds:.2f}" for part, seconds in parts.items())


def with_events(world: World, seed: int, events: int) -> History:
    """A run of a world with about so many events."""
    plain = len(history(world, seed).events)
    some = len(history(world, seed, extras=20).events) - plain
    return history(world, seed, extras=round(20 * (events - plain) / some))


def _parts(past: Past) -> Mapping[str, float]:
    """The seconds of each part of a review; the first pays for what the others ask of it."""
    found: dict[str, Callable[[Past], Any]] = {
        "whole": essentials_of,
        "of it elements": lambda past: past.elements,
        "time study": time_study,
        "happened": happened,
    }
    return {part: _seconds(work, past) for part, work in found.items()}


def _in_the_child(past: Past) -> Mapping[str, float]:
    """What people wait for in front of a page that is whole otherwise: an idea alone, and all that is weighed."""
    known, quick = replayable(past), essentials_of(past)
    idea = Idea("one", Times(past.run.id, past.run.route.steps[-1].operation.key, "", 80))
    asked = asked_of(quick, (idea,), Worth())
    return {
        "an idea": _seconds(lambda _: tried(known, [idea]), past),
        "what held it": _seconds(lambda _: held_of(known), past),
        "everything": _seconds(lambda _: weigh(asked), past, 1),
    }


def _ten_years() -> int:
    world = replace(shop(2), trays=TRAYS, a_tray=A_TRAY)
    past = history(world, 1, RUNS, WEEKS)
    made = workshop(book_of(world))
    made.clock.moment = past.now
    made.log.stored.extend(replace(event, seq=seq) for seq, event in enumerate(past.events, 1))
    catch_up(made)
    print(f"\n{RUNS} runs in ten years, {len(past.events)} events; seconds")
    missed = False
    for name, seconds in _newest(made, f"r{RUNS}"):
        print(f"  {name:<44} {seconds:.3f}   (goal {GOAL})")
        missed = missed or seconds > GOAL
    return int(missed)


def _newest(made: Workshop, run: str) -> Iterator[tuple[str, float]]:
    yield "the newest run, times of all runs learned", _seconds(lambda _: essentials_at(made, run), None, 1)
    yield "the newest run again", _seconds(lambda _: essentials_at(made, run), None)
    yield "over all runs, asked for the first time", _seconds(lambda _: over_runs_now(made), None, 1)
    yield "over all runs again", _seconds(lambda _: over_runs_now(made), None)


def _seconds(work: Callable[[Any], Any], past: Past | None, times: int = TIMES) -> float:
    """The middle of some goes, each of a ``Past`` that remembers nothing."""
    took = []
    for _ in range(times):
        fresh = None if past is None else replace(past)
        gc.collect()
        started = process_time()
        work(fresh)
        took.append(process_time() - started)
    return median(took)
