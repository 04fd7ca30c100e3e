"""What becomes of people who always do Now's first line, beside plans that knew every length: 50 made-up shops.

For each shop: order lines late, the finish in minutes in which anybody is there, walks, minutes in which somebody was idle
while work was ready, prices that said nothing where something was lost, and moments without a plan though there is one.
"""

import argparse
import os
import platform
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from statistics import median

from runboard.plan.answer import Answer
from runboard.plan.offers import things_of
from runboard.plan.prices import windows_by
from runboard.plan.schedule.problem.check import broken
from runboard.plan.schedule.problem.hours import open_minutes
from runboard.plan.schedule.problem.nouns import Plan, Problem
from runboard.plan.schedule.problem.worth import late_lines, lateness_of
from runboard.plan.schedule.rule.rule import warm
from tests.bench.hindsight import known_afterwards
from tests.bench.obeying import Course, House, Idle, SentHome, Taken, found_in, obey
from tests.bench.shops import LOADS, Shop, sessions
from tests.bench.shops import shop as shop_of

SHOPS = 50
# Seconds of the search for each answer, for each plan known afterwards, and for a price that seems to have said too little.
SEARCH, KNOWN, JUDGED = 0.0, 1.0, 1.0
# Less than this is no loss: minutes in which somebody is there, and ticks by which order lines are later.
SMALL_MINUTES, SMALL_TICKS = 5.0, 10
# What is said with so much of a session left is said in time.
IN_TIME = timedelta(hours=1)
GOAL_KEPT, GOAL_LATER, GOAL_PRICES = 48 / 50, 2.0, 300


@dataclass(frozen=True)
class Lost:
    """A line that was taken whose price said nothing, and what it cost."""

    taken: Taken
    what: str


@dataclass(frozen=True)
class Judged:
    """What became of one shop. Finishes are in minutes in which anybody is there; ``later`` is by how many sessions."""

    shop: Shop
    house: House
    known: Course
    lost_lines: Sequence[tuple[str, str]]
    finish: float | None
    best: float
    later: int
    is_said: bool
    silent: Sequence[Lost]
    asked: int
    planless: Sequence[datetime]
    needed: Sequence[SentHome]
    seconds: float
    loads: int = 0

    @property
    def over(self) -> float:
        """By how many per cent the finish is later than it could have been."""
        return 100.0 * (self.finish - self.best) / self.best if self.finish is not None else float("inf")

    @property
    def idle(self) -> float:
        return sum(one.minutes for one in self.house.noted.idle)


def main(arguments: Sequence[str] = ()) -> int:
    """Print the figures; 1 if a goal is not met."""
    asked = _asked(arguments)
    return figures(asked, range(asked.seed, asked.seed + asked.shops))


def _asked(arguments: Sequence[str]) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.bench obey")
    parser.add_argument("--shops", type=int, default=SHOPS, help="how many")
    parser.add_argument("--seed", type=int, default=0, help="of the first of them; 0 and 1 are the demo's two products")
    parser.add_argument("--search", type=float, default=SEARCH, help="seconds of the search after each event")
    parser.add_argument("--known", type=float, default=KNOWN, help="seconds for each plan that is known afterwards")
    parser.add_argument(
        "--loads", type=int, nargs=2, default=LOADS, help="about how many in a shop, at least and at most"
    )
    parser.add_argument("--each", action="store_true", help="a line for each shop, and what went wrong there")
    return parser.parse_args(list(arguments))


def figures(asked: argparse.Namespace, seeds: Sequence[int]) -> int:
    """Work these shops, and print what became of them; 1 if a goal is not met."""
    print(
        f"{platform.machine()}, {os.cpu_count()} cores, load {os.getloadavg()[0]:.1f}; shops {seeds[0]} to {seeds[-1]}"
    )
    print(
        f"searched for {asked.search:g} s after each event; plans known afterwards for {asked.known:g} s each",
        flush=True,
    )
    warm()
    found = []
    for seed in seeds:
        found.append(judged(shop_of(seed, tuple(asked.loads)), asked.search, asked.known))
        if asked.each:
            print(line_of(found[-1]), flush=True)
            for text in details(found[-1]):
                print(f"      {text}", flush=True)
    return summed(found)


def judged(shop: Shop, search: float = SEARCH, known_seconds: float = KNOWN, judge: float = JUDGED) -> Judged:
    """Work a shop to its end as Now says, and once more with plans that know every length."""
    began = time.process_time()
    house = obey(shop, search)
    known = known_afterwards(shop, known_seconds)
    assert known.finished_at is not None, f"shop {shop.seed}: the plan known afterwards is not whole"
    open_ = _open_spans(shop)
    done = house.course.finished_at
    asked = [one for one in house.noted.taken if _says_nothing(one) and one.before.plan and one.after.plan]
    asked = asked if judge > 0 else []
    later_by = 0 if done is None else _sessions_by(open_, done) - _sessions_by(open_, known.finished_at)
    lost = [one for one in house.course.late() if one not in known.late()]
    return Judged(
        shop,
        house,
        known,
        lost,
        None if done is None else _minutes(open_, done),
        _minutes(open_, known.finished_at),
        later_by,
        later_by <= 0 or (done is not None and _is_said(house, open_, done, known.finished_at)),
        [lost for one in asked if (lost := silent_loss(one, judge)) is not None],
        len(asked),
        [at for at, is_proved in house.noted.planless if not is_proved],
        [one for one in house.noted.sent_home if _is_needed(one)],
        time.process_time() - began,
        sum(block.unloads is None for block in house.noted.published[0][1].problem.blocks),
    )


# when anybody is there


def _open_spans(shop: Shop) -> list[tuple[datetime, datetime]]:
    found: list[tuple[datetime, datetime]] = []
    every = sorted(one for at in range(len(shop.book.people)) for one in sessions(shop.book, shop.start, at))
    for opens, closes in every:
        if found and opens <= found[-1][1]:
            found[-1] = (found[-1][0], max(closes, found[-1][1]))
        else:
            found.append((opens, closes))
    return found


def _minutes(spans: Sequence[tuple[datetime, datetime]], moment: datetime) -> float:
    spent = (min(closes, moment) - opens for opens, closes in spans if opens < moment)
    return sum(spent, timedelta(0)).total_seconds() / 60


def _sessions_by(spans: Sequence[tuple[datetime, datetime]], moment: datetime) -> int:
    return sum(opens < moment for opens, _ in spans)


def _is_said(house: House, open_: Sequence[tuple[datetime, datetime]], done: datetime, best: datetime) -> bool:
    """Whether a plan said that it would be so late with an hour left of the session in which all could have been done."""
    last = next(closes for opens, closes in open_ if closes >= best)
    return any(
        made.plan is not None
        and at <= last - IN_TIME
        and _sessions_by(open_, made.problem.moment(made.finish)) >= _sessions_by(open_, done)
        for at, made in house.noted.published
    )


# prices


def _says_nothing(taken: Taken) -> bool:
    """Whether a line was shown without a price, or with one that is next to nothing."""
    return all(not said or (name == "minutes" and said < SMALL_MINUTES) for name, said in taken.move.price.items())


def silent_loss(taken: Taken, seconds: float) -> Lost | None:
    """What taking a line cost, where its price said nothing: by the same times, and not to be made good by a search."""
    before, after = taken.before, taken.after
    if before.plan is None or after.plan is None or broken(before.problem, before.plan):
        return None
    if not _cost(before, before.plan, after.problem, after.plan):
        return None
    plan = found_in(after.problem, after.plan, seconds)
    what = _cost(before, before.plan, after.problem, plan)
    return Lost(taken, what) if what else None


def _cost(before: Answer, planned: Plan, problem: Problem, plan: Plan) -> str:
    """What one plan loses against an earlier one, '' where that is nothing."""
    were = {(order.run, order.line) for order, _, _ in late_lines(before.problem, planned)}
    fresh = [
        f"{order.run}/{order.line}" for order, _, _ in late_lines(problem, plan) if (order.run, order.line) not in were
    ]
    ticks = lateness_of(problem, plan) - lateness_of(before.problem, planned)
    finish = before.problem.tick(problem.moment(plan.finish(problem)))
    planned_finish = planned.finish(before.problem)
    minutes = open_minutes(before.problem, planned_finish, finish)
    windows = windows_by(before.problem, finish) - windows_by(before.problem, planned_finish)
    is_later = finish > planned_finish and (minutes >= SMALL_MINUTES or windows > 0)
    found = [f"order line {one} late" for one in fresh]
    found += [f"order lines {ticks / 2:.0f} min later"] if ticks > SMALL_TICKS and not fresh else []
    # A finish that goes for an order line's sake is no loss.
    found += [f"finish {minutes:.0f} min, {windows} windows later"] if is_later and ticks >= 0 else []
    return ", ".join(found)


# plans


def _is_needed(sent: SentHome) -> bool:
    """Whether the plan had work for them in the session that they were sent home from."""
    problem, plan = sent.answer.problem, sent.answer.plan
    at = next(at for at, one in enumerate(problem.people) if one.key == sent.person)
    if plan is None or sent.line.because["code"] == "session ends":
        return False
    return any(
        problem.moment(one.start) < sent.until - timedelta(minutes=1) for one in things_of(problem, plan, at)[:1]
    )


# tables


def line_of(one: Judged) -> str:
    """A shop in a line."""
    finish = "never done" if one.finish is None else f"{one.finish:6.0f} {one.best:6.0f} {one.over:+6.1f} %"
    return (
        f"{one.shop.seed:3} {len(one.shop.book.people)} people {one.loads:3} loads  late {len(one.house.course.late())}"
        f" ({len(one.known.late())}), lost {len(one.lost_lines)}  {finish} {one.later:+d} {'' if one.is_said else 'UNSAID'}"
        f"  walks {one.house.course.walks:3} ({one.known.walks:3})  idle {one.idle:4.0f}  silent {len(one.silent)} of {one.asked}"
        f"  no plan {len(one.planless)} of {len(one.house.noted.planless)}  home {len(one.needed)}  "
        f"refused {len(one.house.noted.refused)}  past latest {len(one.house.noted.too_late)}  {one.seconds:.0f} s"
    )


def details(one: Judged) -> Iterator[str]:
    """What went wrong, each with its moment."""
    late = one.house.course.late()
    for run, line in one.lost_lines:
        by = late[run, line]
        yield f"lost: {run}/{line} late by {by if by is not None else 'ever'}"
    for lost in one.silent:
        move = lost.taken.move
        yield f"silent {lost.taken.at:%m-%d %H:%M} {lost.taken.person}: {move.id} {dict(move.price)}: {lost.what}"
    for at in one.planless[:1]:
        yield f"no plan from {at:%m-%d %H:%M}"
    for sent in one.needed:
        yield f"home {sent.at:%m-%d %H:%M} {sent.person}: {sent.line.because['code']}, hours until {sent.until:%H:%M}"
    for at, person, load in one.house.noted.too_late:
        yield f"past its latest end {at:%m-%d %H:%M} {person}: {load}"
    for idle in _longest(one.house.noted.idle):
        yield f"idle {idle.at:%m-%d %H:%M} {idle.person}: {idle.minutes:.0f} min, said {idle.said}, ready {idle.ready}"
    for at, person, what, code in one.house.noted.refused[:3]:
        yield f"refused {at:%m-%d %H:%M} {person}: {what}: {code}"


def _longest(idle: Sequence[Idle]) -> list[Idle]:
    """Waits for the same ready load put together, the longest three."""
    joined: dict[tuple[str, str, str], Idle] = {}
    for one in idle:
        key = (one.person, one.said, one.ready)
        before = joined.get(key)
        joined[key] = (
            one if before is None else Idle(before.at, one.person, before.minutes + one.minutes, one.said, one.ready)
        )
    return sorted((one for one in joined.values() if one.minutes >= SMALL_MINUTES), key=lambda one: -one.minutes)[:3]


@dataclass
class _Sums:
    rows: list[tuple[str, str, str, bool]] = field(default_factory=list)

    def row(self, what: str, value: str, goal: str, is_met: bool) -> None:
        self.rows.append((what, value, goal, is_met))


def summed(found: Sequence[Judged]) -> int:
    """Print the sums beside their goals; 1 if one is not met."""
    sums, many = _Sums(), len(found)
    kept = sum(not one.lost_lines for one in found)
    sums.row("shops that lost no order line", f"{kept} of {many}", f"{GOAL_KEPT:.0%}", kept >= GOAL_KEPT * many)
    lines, known = (
        sum(len(late) for late in some)
        for some in zip(*((one.house.course.late(), one.known.late()) for one in found), strict=True)
    )
    lost = sum(len(one.lost_lines) for one in found)
    sums.row("order lines late; with a plan known afterwards; lost", f"{lines}; {known}; {lost}", "", True)
    over = median(one.over for one in found)
    sums.row("finish later than that plan, in the middle", f"{over:+.1f} %", f"{GOAL_LATER:.0f} %", over <= GOAL_LATER)
    unsaid = sum(not one.is_said for one in found)
    later_by = sum(one.later > 0 for one in found)
    sums.row("shops done a session later; without saying so", f"{later_by}; {unsaid}", "0", unsaid == 0)
    walks = [sum(one.house.course.walks for one in found), sum(one.known.walks for one in found)]
    sums.row("walks; with that plan", f"{walks[0]}; {walks[1]}", "", True)
    idle = sum(one.idle for one in found)
    sums.row("minutes idle while work was ready, a shop", f"{idle / many:.0f}", "", True)
    silent, asked = sum(len(one.silent) for one in found), sum(one.asked for one in found)
    sums.row(
        "lines whose price said nothing where something was lost",
        f"{silent} of {asked}",
        f"1 in {GOAL_PRICES}",
        silent * GOAL_PRICES <= asked,
    )
    planless, least = sum(len(one.planless) for one in found), sum(len(one.house.noted.planless) for one in found)
    sums.row("moments without a plan; without a proof that there is none", f"{least}; {planless}", "0", planless == 0)
    looking = sum(len(one.house.noted.looking) for one in found)
    sums.row("moments at which one had to be looked for first", f"{looking}", "", True)
    home = sum(len(one.needed) for one in found)
    sums.row("sent home though the plan needs them", f"{home}", "0", home == 0)
    past = sum(len(one.house.noted.too_late) for one in found)
    sums.row("loads begun past the latest end of their wait", f"{past}", "0", past == 0)
    refused = sum(len(one.house.noted.refused) for one in found)
    sums.row("first lines that the shop refused", f"{refused}", "0", refused == 0)
    never = sum(one.finish is None for one in found)
    sums.row("shops never done", f"{never}", "0", never == 0)
    print()
    for what, value, goal, is_met in sums.rows:
        print(f"{what:<58}{value:>16}  {'goal ' + goal if goal else '':<14}{'' if is_met else 'MISSED'}")
    return int(not all(is_met for *_, is_met in sums.rows))
