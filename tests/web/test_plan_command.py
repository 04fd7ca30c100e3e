"""``runboard plan``: when a run will be done, as lines or as JSON; what was asked for wrongly gets a sentence and code 2."""

import io
import json
from dataclasses import replace
from datetime import datetime
from itertools import groupby, pairwise
from pathlib import Path
from typing import Any

import pytest

from runboard.cli import main
from runboard.commands import plan
from runboard.floor.changing.runs import close_run
from runboard.opening import open_workshop
from runboard.plan.schedule.problem.nouns import Plan
from runboard.plan.schedule.rule import rule
from runboard.plan.schedule.search.improve import improve
from runboard.plan.schedule.told.effort import person_loads
from runboard.plan.search import Found
from tests import scenario
from tests.web.at_terminal import Terminal, with_a_run

PART_KINDS = {"setup", "loading", "machine", "unloading", "hand"}
CUT = ("setup", "loading", "machine", "unloading")


def asked(data: Path, capsys: pytest.CaptureFixture[str], *more: str) -> dict[str, Any]:
    assert main(["plan", "--seconds", "2", *more, "--data", str(data), "--json"]) == 0
    told = capsys.readouterr()
    assert told.err == ""
    found: dict[str, Any] = json.loads(told.out)
    return found


def moment(text: str) -> datetime:
    assert text.endswith("Z")
    return datetime.fromisoformat(text)


def test_the_record_holds_what_it_promises(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = asked(data, capsys)

    assert set(found) >= {
        "run", "made_at", "finish", "bound", "bound_rule", "gap_open_minutes", "proved", "hands_on_minutes", "walks",
        "operations", "moves", "forecast",
    }  # fmt: skip
    assert found["run"] == "r1"
    assert moment(found["made_at"]) < moment(found["bound"]) <= moment(found["finish"])
    assert found["proved"] == (found["gap_open_minutes"] == 0)
    assert set(found["forecast"]) == {"p5", "p25", "p50", "p75", "p95", "chance_by_due", "chance_by_evening"}
    assert found["forecast"]["chance_by_due"] == {"1": 1.0}
    assert [datetime.fromisoformat(day) for day in found["forecast"]["chance_by_evening"]]


def test_the_operations_are_all_that_is_left_and_end_with_the_finish(
    data: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    found = asked(data, capsys, "r1")

    loads = found["operations"]
    assert sorted({one["operation"] for one in loads}) == ["clean", "cut", "engrave", "hooks", "oil", "sand"]
    assert max(one["end"] for one in loads) == found["finish"]
    assert sum(one["operation"] == "hooks" for one in loads) == 3
    cut = next(one for one in loads if one["operation"] == "cut")
    assert (cut["station"], cut["trays"]) == ("cnc", ["1", "2", "3"])
    assert [kind for kind, _ in groupby(part["kind"] for part in cut["parts"])] == list(CUT)
    watching = [part["people"] for part in cut["parts"] if part["kind"] == "machine"]
    assert all(first != then for first, then in pairwise(watching))  # in two parts only where another takes over


def test_the_parts_lie_in_their_load_and_have_somebody_at_them(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    found = asked(data, capsys)

    hands = 0.0
    for load in found["operations"]:
        for part in load["parts"]:
            assert part["kind"] in PART_KINDS
            assert load["start"] <= part["start"] < part["end"] <= load["end"]
            assert set(part["people"]) <= {"ann", "ben"}
            assert part["people"]  # everything here is hands-on or watched
            if part["kind"] != "machine":
                hands += (moment(part["end"]) - moment(part["start"])).total_seconds() / 60
    assert found["hands_on_minutes"] == hands


def test_each_person_has_a_first_thing_with_its_reason(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    moves = asked(data, capsys)["moves"]

    assert {one["person"] for one in moves} == {"ann", "ben"}
    ann = moves[0]
    assert (ann["sentence"], bool(ann["reason"])) == ("Cut, trays 1 to 3", True)
    for one in moves:
        assert len(one["alternatives"]) <= 3
        keys = {"sentence", "delay_open_minutes", "delay_windows", "late", "more_walks"}
        assert all(set(other) == keys for other in one["alternatives"])


def test_a_run_among_others_has_its_own_finish_and_a_bound_of_its_own(
    data: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with_a_run(data, "r2")

    first, second = asked(data, capsys, "r1"), asked(data, capsys, "r2")

    assert {one["load"] for one in first["operations"]} >= {"cut/1"}
    assert moment(first["bound"]) <= moment(first["finish"])
    assert moment(second["bound"]) <= moment(second["finish"])
    assert len(first["operations"]) == len(second["operations"])


def test_of_several_runs_the_figures_and_the_table_are_the_named_ones(
    data: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    record = scenario.shop()
    record["products"][0]["operations"][0]["name"] = "Saw"
    store, workshop = open_workshop(data)
    workshop.books.save(record, workshop.clock.now())
    store.close()
    with_a_run(data, "r2")

    first, second = (asked(data, capsys, run, "--seconds", "0") for run in ("r1", "r2"))
    assert main(["plan", "r2", "--data", str(data), "--seconds", "0"]) == 0
    told = capsys.readouterr().out

    for found in (first, second):
        hands = [part for one in found["operations"] for part in one["parts"] if part["kind"] != "machine"]
        assert found["hands_on_minutes"] == sum(
            (moment(one["end"]) - moment(one["start"])).total_seconds() / 60 for one in hands
        )
    whole = plan.make_plan(data, "r1", 0, lambda *_: None)
    assert first["walks"] + second["walks"] == sum(one.walks for one in person_loads(whole.problem, whole.plan))
    assert max(first["walks"], second["walks"]) > 0
    assert "Saw, trays 1 to 3" in told and "Cut, trays 1 to 3" not in told.split("\n\n")[1]


def test_the_lines_begin_with_when_it_is_done(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "--data", str(data), "--seconds", "0"]) == 0

    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "r1 (r1)"
    assert lines[1].startswith("Done ")
    assert any(line.startswith("Ann: Cut, trays 1 to 3. ") for line in lines)
    assert any("Engrave, tray 2" in line and "Laser" in line for line in lines)
    assert any(line.startswith("No plan can be done before ") for line in lines)


def test_what_cannot_be_planned_is_said_and_is_no_mistake(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    record = scenario.shop()
    for person in record["people"]:
        person["hours"] = []
    with_a_run(tmp_path / "shop", "r1", record)

    found = asked(tmp_path / "shop", capsys)
    assert main(["plan", "--data", str(tmp_path / "shop"), "--seconds", "0"]) == 0

    assert (found["finish"], found["bound"], found["forecast"], found["operations"]) == (None, None, None, [])
    assert "nobody who may do it has hours" in found["left_out"][0]
    assert "Nothing can be planned yet." in capsys.readouterr().out


def test_several_runs_are_listed(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with_a_run(data, "r2")

    assert main(["plan", "--data", str(data)]) == 2

    assert capsys.readouterr().err == "runboard: several runs are open: r1 (r1), r2 (r2). Name one.\n"


def test_a_run_that_is_over_or_unknown_is_refused(data: Path, capsys: pytest.CaptureFixture[str]) -> None:
    store, workshop = open_workshop(data)
    close_run(workshop, "r1", "run abandoned", "ann", "")
    store.close()

    codes = [main(["plan", *run, "--data", str(data)]) for run in (["r1"], ["r9"], [])]

    err = capsys.readouterr().err
    assert codes == [2, 2, 2]
    assert "r1 is abandoned: there is nothing left to plan." in err
    assert "no run is open" in err


def test_a_folder_without_a_shop_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "--data", str(tmp_path)]) == 2
    assert "there is no shop in" in capsys.readouterr().err


@pytest.mark.parametrize("seconds", ["-1", "soon", "nan", "1e9"])
def test_seconds_are_a_number(data: Path, seconds: str) -> None:
    with pytest.raises(SystemExit):
        main(["plan", "--data", str(data), "--seconds", seconds])


def test_a_bar_grows_where_somebody_watches_and_is_taken_away() -> None:
    screen = Terminal()
    told, clear = plan.progress(screen)

    told(5, 10, Plan(()))
    clear()

    assert "[############------------]" in screen.getvalue()
    assert screen.getvalue().endswith("\r\x1b[K")


def test_who_watches_is_told_that_the_planner_is_made_ready_once(
    data: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(rule, "is_new", lambda: True)

    asked(data, capsys)
    monkeypatch.setattr("sys.stderr.isatty", lambda: True, raising=False)
    main(["plan", "--seconds", "0", "--data", str(data)])

    assert capsys.readouterr().err.startswith("Getting the planner ready, once: about 15 seconds.\n")


def test_nothing_is_written_where_nobody_watches() -> None:
    pipe = io.StringIO()
    told, clear = plan.progress(pipe)

    told(5, 10, Plan(()))
    clear()

    assert pipe.getvalue() == ""


def test_stopped_by_the_keyboard_the_best_so_far_is_printed(
    data: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def stopped(problem: Any, plan: Any, seconds: float, told: Any, **_: Any) -> None:
        told(1, 10, improve(problem, plan, 0.0, told))
        raise KeyboardInterrupt

    monkeypatch.setattr("runboard.plan.schedule.search.improve.improve", stopped)

    assert asked(data, capsys)["finish"]


@pytest.fixture
def without_a_plan(monkeypatch: pytest.MonkeyPatch) -> None:
    """None is made at once."""
    at_once = plan.plan_at_once

    def plan_at_once(workshop: Any) -> Any:
        planned = at_once(workshop)
        return replace(planned, answer=replace(planned.answer, plan=None))

    monkeypatch.setattr(plan, "plan_at_once", plan_at_once)


@pytest.mark.usefixtures("without_a_plan")
@pytest.mark.parametrize("seconds", ["0", "2"])
def test_where_the_rules_find_no_plan_one_is_looked_for(
    data: Path, capsys: pytest.CaptureFixture[str], seconds: str
) -> None:
    found = asked(data, capsys, "--seconds", seconds)

    assert max(one["end"] for one in found["operations"]) == found["finish"]


@pytest.mark.usefixtures("without_a_plan")
@pytest.mark.parametrize(
    ("found", "says"),
    [
        (
            Found(None, None, True, (0, 1)),
            "no plan fits into people's hours beside what has been started. No room for: Cut",
        ),
        (Found(None, None, True), "no plan fits into people's hours beside what has been started."),
        (Found(None), "no plan found in"),
    ],
)
def test_what_fits_nowhere_is_said_and_only_a_proof_says_so(
    data: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, found: Found, says: str
) -> None:
    monkeypatch.setattr(plan, "search", lambda *_: found)

    assert main(["plan", "--data", str(data)]) == 2
    assert says in capsys.readouterr().err
