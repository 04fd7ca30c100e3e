"""Long work in child processes: what becomes of it, however it goes."""

import os
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from runboard.background.children import MOST_WAITING, Children
from runboard.background.task import Task
from runboard.floor.planning.planner import OUT_OF_MEMORY
from tests.background import work

PATIENCE = 30.0


@pytest.fixture
def children() -> Iterator[Children]:
    before = threading.active_count()
    found = Children(most=2, grace=0.3)
    yield found
    found.close()
    assert threading.active_count() == before


def until(true: Callable[[], object]) -> None:
    """Wait until it is so."""
    end = time.monotonic() + PATIENCE
    while not true():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.01)


def over(children: Children, task: Task | None) -> Task:
    """The task once it is over."""
    assert task is not None
    until(lambda: now(children, task).is_over)
    return now(children, task)


def now(children: Children, task: Task) -> Task:
    found = children.look(task.id)
    assert found is not None
    return found


def is_there(process: int) -> bool:
    """Whether a process is there, be it dead and not buried."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def test_work_is_done_in_another_process_and_its_result_comes_back(children: Children) -> None:
    task = over(children, children.start("sum", "r1", work.add_up, [1, 2, 3]))

    assert (task.state, task.result, task.done, task.total, task.latest) == ("done", 6, 3, 3, 6)
    assert (task.what, task.subject) == ("sum", "r1")


def test_better_and_better_results_are_heard_in_order(children: Children) -> None:
    heard: list[Task] = []

    over(children, children.start("sum", "r1", work.add_up, [5, 5, 5], heard=heard.append))

    until(lambda: heard[-1].is_over)
    assert [one.latest for one in heard if one.latest] == [5, 10, 15, 15]


def test_what_a_child_raises_is_said(children: Children) -> None:
    task = over(children, children.start("fall", "", work.fall))

    assert task.state == "failed"
    assert task.failure is not None
    assert (task.failure.kind, task.failure.says) == ("ValueError", "there is a knot in it")


def test_a_child_that_dies_says_so(children: Children) -> None:
    task = over(children, children.start("die", "", work.die))

    assert task.failure is not None
    assert (task.state, task.failure.kind, task.failure.says) == ("failed", "died", "-9")


def test_a_result_that_cannot_be_sent_is_a_failure(children: Children) -> None:
    task = over(children, children.start("odd", "", work.answer_badly))

    assert task.state == "failed"


def test_arguments_that_cannot_be_sent_are_a_failure(children: Children) -> None:
    task = over(children, children.start("odd", "", work.add_up, lambda: None))

    assert task.failure is not None
    assert task.failure.kind == "not started"


def test_ended_by_request_it_is_gone_and_keeps_the_best_it_told_of(children: Children, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    task = children.start("plan", "r1", work.sleep_long, mark)
    until(mark.exists)
    until(lambda: now(children, task).latest)

    children.end(task.id)

    assert (now(children, task).state, now(children, task).latest) == ("ended", "asleep")
    until(lambda: not is_there(int(mark.read_text())))


def test_ended_twice_or_after_it_is_over_nothing_happens(children: Children) -> None:
    task = over(children, children.start("sum", "", work.add_up, [1]))

    children.end(task.id)
    children.end(task.id)
    children.end("nobody")

    assert now(children, task).state == "done"


def test_a_child_that_does_not_hear_is_killed_after_the_grace(children: Children, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    task = children.start("deaf", "", work.sleep_deaf, mark)
    until(mark.exists)

    children.end(task.id)

    until(lambda: not is_there(int(mark.read_text())))


def test_told_to_end_it_may_still_say_the_best_it_has(children: Children, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    task = children.start("plan", "", work.give_in, mark)
    until(mark.exists)

    children.end(task.id)

    until(lambda: now(children, task).latest == "half a plan")
    assert now(children, task).state == "ended"


def test_what_a_child_started_ends_with_it(children: Children, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    task = children.start("two", "", work.start_another, mark)
    until(mark.exists)

    children.end(task.id)

    until(lambda: is_gone_or_dead(int(mark.read_text())))


def is_gone_or_dead(process: int) -> bool:
    """Gone, or dead and to be buried by whoever takes in orphans."""
    try:
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except FileNotFoundError:
        return True


def test_no_more_run_at_once_than_are_let(children: Children, tmp_path: Path) -> None:
    go = tmp_path / "go"
    started = [children.start("wait", str(at), work.write_then_wait, tmp_path / f"{at}.mark", go) for at in range(4)]
    until(lambda: len(list(tmp_path.glob("*.mark"))) == 2)

    assert [now(children, task).state for task in started] == ["running", "running", "waiting", "waiting"]

    children.end(started[3].id)
    go.touch()
    assert [over(children, task).state for task in started] == ["done", "done", "done", "ended"]
    assert not (tmp_path / "3.mark").exists()


def test_too_much_waiting_is_not_taken(children: Children, tmp_path: Path) -> None:
    go = tmp_path / "go"
    for at in range(2):
        children.start("wait", "", work.write_then_wait, tmp_path / f"{at}.mark", go)
    until(lambda: len(list(tmp_path.glob("*.mark"))) == 2)
    for at in range(MOST_WAITING):
        children.start("wait", "", work.write_then_wait, tmp_path / f"more{at}", go)

    assert children.start("wait", "", work.write_then_wait, tmp_path / "last", go) is None


def test_starting_and_looking_do_not_wait_for_the_child(children: Children) -> None:
    task = children.start("sum", "", work.add_up, list(range(200_000)))

    assert not now(children, task).is_over
    children.end(task.id)


def test_a_child_that_chatters_is_not_held_up(children: Children) -> None:
    assert over(children, children.start("chatter", "", work.chatter)).result == "said"


def test_more_than_a_pipe_holds_gets_through(children: Children) -> None:
    assert len(over(children, children.start("big", "", work.say_big)).latest) == 1_000_000


def test_the_newest_of_a_subject_is_found(children: Children) -> None:
    children.start("sum", "r1", work.add_up, [1])
    second = children.start("sum", "r1", work.add_up, [2])
    children.start("sum", "r2", work.add_up, [3])

    found = children.newest("sum", "r1")

    assert found is not None
    assert found.id == second.id
    assert children.newest("plan", "r1") is None


def test_closing_ends_all_of_it_and_takes_no_more(tmp_path: Path) -> None:
    children = Children(most=1, grace=0.3)
    mark = tmp_path / "mark"
    running, waiting = (
        children.start("one", "", work.sleep_long, mark),
        children.start("two", "", work.sleep_long, mark),
    )
    until(mark.exists)

    children.close()

    assert [now(children, one).state for one in (running, waiting)] == ["ended", "ended"]
    assert not is_there(int(mark.read_text()))
    assert children.start("three", "", work.add_up, [1]) is None


def test_a_child_goes_when_the_server_is_killed(tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    text = (
        "import sys, time\nfrom pathlib import Path\nfrom runboard.background.children import Children\n"
        "from tests.background import work\n"
        "if __name__ == '__main__':\n"
        "    Children().start('long', '', work.sleep_deaf, Path(sys.argv[1]))\n    time.sleep(60)\n"
    )
    server = tmp_path / "server.py"
    server.write_text(text)
    root = str(Path(__file__).parents[2])
    process = subprocess.Popen([sys.executable, server, mark], env={**os.environ, "PYTHONPATH": root})
    until(mark.exists)

    process.kill()
    process.wait()

    until(lambda: is_gone_or_dead(int(mark.read_text())))


@pytest.mark.skipif(sys.platform == "win32", reason="no limit of memory there")
def test_a_child_that_wants_too_much_memory_ends_and_the_next_one_works() -> None:
    children = Children(most=1, grace=0.3, memory=400 << 20)
    try:
        task = over(children, children.start("eat", "", work.take_memory))
        after = over(children, children.start("sum", "r1", work.add_up, [1, 2, 3]))
    finally:
        children.close()

    assert task.failure is not None
    assert (task.state, task.failure.kind in OUT_OF_MEMORY) == ("failed", True)
    assert task.done < 8
    assert after.result == 6


def test_the_command_that_a_child_loads_again_brings_nothing_that_only_commands_need() -> None:
    """A spawned process runs the parent's main module up to its name, for each long work anew."""
    heavy = ("fluent.runtime", "babel", "sqlite3", "flask", "runboard.opening")
    asked = f"import sys, runboard.cli; print([one for one in {heavy} if one in sys.modules])"

    said = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=True)

    assert said.stdout.strip() == "[]"
