"""The forecast: the same rule, compiled and plain, on the same draws; ranges and chances that make sense."""

import shutil
import sys
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from pathlib import Path
from statistics import mean, stdev
from typing import Any

import numpy as np
import pytest
from numba.core.codegen import JITCPUCodegen

from runboard.plan.schedule.problem.nouns import FAR, OrderDue, Problem
from runboard.plan.schedule.rule import rule as rules
from runboard.plan.schedule.rule.greedy import greedy, greedy_plan
from runboard.plan.schedule.rule.kernel import compiled as compiling
from runboard.plan.schedule.rule.kernel import keeping
from runboard.plan.schedule.rule.kernel.compiled import compiled
from runboard.plan.schedule.rule.rule import Cores, Knobs, Rule
from runboard.plan.schedule.told.forecast import Scatter, drawn_lengths, follow, forecast
from tests.bench.simpy_shop import SimpyShop
from tests.core.instances import the_trial
from tests.core.test_schedule_check import hand, shop


@pytest.fixture
def warm():
    """The rule compiled for one test."""
    assert rules.warm()
    yield
    rules._WARM.clear()


def due(problem: Problem, tick: int, pieces: int = 45) -> Problem:
    return replace(problem, orders=(OrderDue("r1", "1", pieces, pieces, tick),))


@pytest.mark.parametrize(("trays", "people"), [(9, 1), (9, 2)])
def test_compiled_plain_and_simpy_are_equal_on_the_same_draws(trays: int, people: int):
    problem = the_trial(trays, people)
    plain, fast = Rule(problem), Rule(problem, compiled())
    priority, knobs = follow(plain, greedy_plan(problem))
    reals = drawn_lengths(problem, 12)
    marks = [block.index for block in problem.blocks if block.last]

    found = plain.ends(reals.tolist(), priority, knobs, marks)

    assert fast.ends(reals, priority, knobs, marks).tolist() == found
    assert [SimpyShop(plain, priority, knobs).finish(row) for row in reals.tolist()] == [row[0] for row in found]
    assert len({row[0] for row in found}) > 1


def test_draws_are_lognormal_about_the_estimate_and_named_by_what_they_are_of():
    problem = the_trial(9)
    drawn = drawn_lengths(problem, 4000)
    loading, machine = drawn[:, 0].tolist(), drawn[:, 1].tolist()

    assert mean(loading) == pytest.approx(8, rel=0.02)
    assert stdev(machine) / mean(machine) == pytest.approx(0.025, rel=0.15)
    assert (drawn_lengths(problem, 50) == drawn[:50]).all(), "the same luck however often"
    fewer = replace(problem, blocks=problem.blocks[:2])
    assert (drawn_lengths(fewer, 4000)[:, :3] == drawn[:, :3]).all(), "and whatever else is to be done"


def test_without_spread_the_forecast_is_the_plan():
    problem = the_trial(9, 2)
    plan = greedy_plan(problem)

    told = forecast(problem, plan, 5, spread=lambda block, kind: Scatter())

    assert set(told.finish.values()) == {plan.finish(problem)}


def test_a_range_and_chances_by_evening(warm: None):
    problem = the_trial(9)
    found = greedy(problem)

    told = forecast(problem, found.plan)

    assert told.goes == 1000
    finish = list(told.finish.values())
    assert finish == sorted(finish)
    assert finish[0] < finish[-1]
    chances = [chance for _, chance in told.by_evening]
    assert chances == sorted(chances)
    assert chances[-1] == 1


def test_a_later_due_moment_is_likelier_kept():
    problem = the_trial(9)
    plan = greedy_plan(problem)
    finish = plan.finish(problem)

    chances = [forecast(due(problem, tick), plan, 30).by_due["r1", "1"] for tick in (0, finish, FAR)]

    assert chances[0] == 0 <= chances[1] <= chances[2] == 1


def test_some_of_the_pieces_are_there_before_all_of_them():
    problem = shop(hand(0, last=True), hand(1, last=True))
    problem = replace(
        problem, orders=(OrderDue("r", "1", 5, 5, 14), OrderDue("r", "2", 5, 10, 14), OrderDue("r", "3", 9, 19, 900))
    )

    told = forecast(problem, greedy_plan(problem), 40)

    assert told.by_due["r", "1"] > 0.8
    assert told.by_due["r", "2"] < 0.2
    assert told.by_due["r", "3"] == 0, "more than the plan makes"


def test_the_same_seed_gives_the_same_forecast():
    problem = the_trial(9)
    plan = greedy_plan(problem)

    assert forecast(problem, plan, 10) == forecast(problem, plan, 10)
    assert forecast(problem, plan, 10) != forecast(problem, plan, 10, seed=2)


def test_a_plan_s_rule_is_the_one_that_comes_nearest_to_it():
    problem = the_trial(9)
    found = greedy(problem)
    rule = Rule(problem)

    priority, knobs = follow(rule, found.plan)

    assert rule.finish(priority, knobs) <= found.plan.finish(problem) + 60
    assert isinstance(knobs, Knobs)


def test_without_a_compiler_all_goes_on_in_plain_python(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.delitem(sys.modules, compiling.__name__)
    monkeypatch.setitem(sys.modules, "numba", None)

    assert rules.warm() is False
    assert not rules.is_warm()
    assert not Rule(the_trial(9)).is_compiled


def test_where_compiling_fails_all_goes_on_in_plain_python(monkeypatch: pytest.MonkeyPatch):
    def fail():
        raise TypeError("another numba")

    monkeypatch.setattr(compiling, "compiled", fail)

    assert rules.warm() is False
    assert not Rule(the_trial(9)).is_compiled


def test_the_compiled_rule_is_kept_under_a_digest_of_all_its_source(tmp_path: Path):
    source = Path(compiling.__file__).parent
    folder = keeping._cache_folder("rule", source)
    assert folder is not None and folder == keeping._cache_folder("rule", source)

    for one in source.glob("*.py"):
        shutil.copy(one, tmp_path)
    assert keeping._cache_folder("rule", tmp_path) == folder
    (tmp_path / "records.py").write_text("BIG = 1")
    assert keeping._cache_folder("rule", tmp_path) != folder


@pytest.fixture
def quick(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Something quick in place of the rule, which takes ten seconds; where it is kept."""
    monkeypatch.setattr(keeping.Path, "home", lambda: tmp_path)
    monkeypatch.setattr(compiling.dispatch, "replicate", count)
    return tmp_path / ".cache" / "runboard"


def count(shop, priority, lengths, marks, found):
    found[0, 0] += len(priority)


def counted(rule: Any) -> int:
    row, rows = np.zeros(5, np.int64), np.zeros((1, 1), np.int64)
    rule(Rule(the_trial(3), rule).given, row, rows, row, rows)
    return int(rows[0, 0])


def hits(rule_folder: Path) -> list[float]:
    return [one.stat().st_mtime_ns for one in sorted(rule_folder.rglob("*.nb?"))]


def test_the_compiled_rule_is_read_back_and_made_anew_where_it_is_damaged(quick: Path):
    assert not compiling.is_kept()
    assert rules.is_new()
    assert counted(compiled()) == 5
    (folder,) = quick.iterdir()
    first = hits(folder)
    assert compiling.is_kept()

    assert counted(compiled()) == 5
    assert hits(folder) == first, "read back"
    for name in ("*.nbc", "*.nbi", "sha256"):
        file = next(folder.rglob(name))
        file.write_bytes(file.read_bytes()[:-30])
        before = hits(folder)
        assert counted(compiled()) == 5
        assert hits(folder) != before, "half a file is none"
    assert [folder] == list(quick.iterdir()), "nothing half done lies about"


def test_what_another_processor_compiled_is_compiled_anew(quick: Path, monkeypatch: pytest.MonkeyPatch):
    compiled()
    (folder,) = quick.iterdir()
    before = len(hits(folder))

    monkeypatch.setattr(JITCPUCodegen, "magic_tuple", lambda self: ("another", "processor", ""))

    assert counted(compiled()) == 5
    assert len(hits(folder)) > before


def test_where_nothing_can_be_kept_the_rule_is_compiled_all_the_same(quick: Path):
    quick.parent.write_text("no folder")

    assert counted(compiled()) == 5


def test_many_cores_find_what_one_does():
    problem = the_trial(9, 2)
    rule = Rule(problem, compiled())
    priority, knobs = follow(rule, greedy_plan(problem, 4))
    reals, marks = drawn_lengths(problem, 41), [block.index for block in problem.blocks if block.last]

    with ThreadPoolExecutor(4) as threads:
        found = rule.ends(reals, priority, knobs, marks, Cores(4, threads.map))

    assert (found == rule.ends(reals, priority, knobs, marks)).all()
    assert len(found) == 41
