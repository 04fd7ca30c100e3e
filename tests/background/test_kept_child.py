"""A child that is kept: it goes over to what it is given at once, and comes up again however it went."""

import os
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from functools import partial
from pathlib import Path
from typing import Any

import pytest

from runboard.background.kept_child import KeptChild
from runboard.background.task import Task
from runboard.floor.planning.planner import OUT_OF_MEMORY
from tests.background import work
from tests.background.kept_contract import GoOn, KeptContract
from tests.background.test_children import is_gone_or_dead, until


@pytest.fixture
def kept() -> Iterator[KeptChild]:
    before = threading.active_count()
    found = KeptChild("search", work.come_up, work.at, grace=0.3, pause=0.05)
    yield found
    found.close()
    assert threading.active_count() == before


@pytest.fixture
def go_on() -> GoOn:
    return until


def over(kept: KeptChild, task: Task | None) -> Task:
    """The job once it is over."""
    assert task is not None
    until(lambda: now(kept, task).is_over)
    return now(kept, task)


def now(kept: KeptChild, task: Task | None) -> Any:
    assert task is not None
    return kept.look(task.id)


def used(process: int) -> int:
    """The clock ticks of processor time that a process has used."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return int(fields[11]) + int(fields[12])


class TestKeptChild(KeptContract):
    """The contract, kept by a process."""


def test_one_process_does_all_of_it_and_has_come_up_before_it_is_wanted(kept: KeptChild) -> None:
    kept.begin()
    until(lambda: kept.prepared)

    found = {over(kept, kept.give("which", None)).result for _ in range(5)}

    assert found == {kept.prepared}


@pytest.mark.parametrize("job", ["go on", "asked"])
def test_it_goes_over_to_a_new_job_without_being_begun_anew(kept: KeptChild, job: str) -> None:
    first = kept.give(job, None)
    until(lambda: now(kept, first).latest)
    before = kept.prepared

    assert over(kept, kept.give("which", None)).result == before


def test_of_many_jobs_at_once_the_newest_is_done(kept: KeptChild) -> None:
    given = [kept.give("go on", None) for _ in range(50)]

    assert over(kept, kept.give("tell", None)).result == "all"
    assert [kept.look(one.id) for one in given if one is not None] == [None] * 50


def test_a_job_that_does_not_stop_is_killed_and_the_next_is_done(kept: KeptChild, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    kept.give("deaf", mark)
    until(mark.exists)

    assert over(kept, kept.give("tell", None)).result == "all"
    assert is_gone_or_dead(int(mark.read_text()))


def test_a_job_that_forgets_the_time_is_killed(tmp_path: Path) -> None:
    kept = KeptChild("search", work.come_up, work.at, pause=0.05, longest=0.2)
    try:
        task = over(kept, kept.give("deaf", None))
        after = over(kept, kept.give("tell", None))
    finally:
        kept.close()

    assert task.failure is not None
    assert (task.state, task.failure.kind in OUT_OF_MEMORY, task.latest) == ("failed", True, "half")
    assert after.result == "all"


def test_a_job_that_kills_it_is_said_and_not_done_again(kept: KeptChild) -> None:
    task = over(kept, kept.give("die", None))

    assert task.failure is not None
    assert (task.state, task.failure.kind, task.failure.says) == ("failed", "died", "-9")
    first = kept.prepared
    until(lambda: kept.prepared != first)
    assert now(kept, task) == task
    assert over(kept, kept.give("tell", None)).result == "all"


def test_killed_while_it_has_nothing_to_do_it_comes_up_again(kept: KeptChild) -> None:
    over(kept, kept.give("tell", None))
    first = kept.prepared

    os.kill(first, 9)

    until(lambda: kept.prepared != first)
    assert over(kept, kept.give("which", None)).result == kept.prepared


@pytest.mark.skipif(sys.platform == "win32", reason="no limit of memory there")
def test_one_that_wants_too_much_memory_fails_and_the_next_one_works() -> None:
    kept = KeptChild("search", work.come_up, work.at, pause=0.05, memory=400 << 20)
    try:
        task = over(kept, kept.give("eat", None))
        after = over(kept, kept.give("which", None))
    finally:
        kept.close()

    assert task.failure is not None
    assert (task.state, task.failure.kind in OUT_OF_MEMORY) == ("failed", True)
    assert after.state == "done"


def test_a_child_that_cannot_come_up_fails_what_waits_for_it() -> None:
    kept = KeptChild("search", work.fall_at_once, work.at, pause=60)
    try:
        task = over(kept, kept.give("tell", None))
    finally:
        kept.close()

    assert task.failure is not None
    assert task.failure.kind == "not started"
    assert kept.prepared is False


@pytest.mark.parametrize("job", [("answer badly", None), ("tell", lambda: None)])
def test_what_cannot_be_sent_is_a_failure(kept: KeptChild, job: tuple[Any, ...]) -> None:
    assert over(kept, kept.give(*job)).state == "failed"
    assert over(kept, kept.give("tell", None)).state == "done"


def test_more_than_a_pipe_holds_is_given_while_it_works(kept: KeptChild) -> None:
    kept.give("go on", None)
    until(lambda: kept.prepared)

    assert over(kept, kept.give("tell", Path("x" * 3_000_000))).state == "done"


def test_news_is_said_and_whoever_hears_it_may_fail(kept: KeptChild) -> None:
    heard: list[int] = []

    def hear() -> None:
        heard.append(1)
        raise RuntimeError("nobody is there")

    kept.heard = hear

    over(kept, kept.give("tell", None))

    until(lambda: len(heard) >= 5)  # it came up, three tellings, a result


def test_with_nothing_to_do_it_uses_no_processor(kept: KeptChild) -> None:
    over(kept, kept.give("tell", None))
    before = used(kept.prepared)

    time.sleep(1)

    assert used(kept.prepared) - before <= 1


@pytest.mark.parametrize("job", ["go on", "deaf", "tell"])
def test_closed_in_the_middle_of_anything_it_is_gone_and_takes_no_more(job: str, tmp_path: Path) -> None:
    kept = KeptChild("search", work.come_up, work.at)
    mark = tmp_path / "mark"
    task = kept.give(job, mark)
    until(mark.exists if job != "tell" else partial(is_over, kept, task))

    kept.close()

    assert now(kept, task).is_over
    assert is_gone_or_dead(kept.prepared)
    assert kept.give("tell", None) is None


def is_over(kept: KeptChild, task: Task | None) -> bool:
    return bool(now(kept, task).is_over)


@pytest.mark.parametrize("begun", [False, True])
def test_closed_before_it_came_up_it_is_gone(begun: bool) -> None:
    kept = KeptChild("search", partial(time.sleep, 60), work.at)
    if begun:
        kept.begin()

    kept.close()

    assert kept.give("tell", None) is None


def test_it_goes_when_the_server_is_killed(tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    server = tmp_path / "server.py"
    server.write_text(
        "import sys, time\nfrom pathlib import Path\nfrom runboard.background.kept_child import KeptChild\n"
        "from tests.background import work\n"
        "if __name__ == '__main__':\n"
        "    KeptChild('search', work.come_up, work.at).give('deaf', Path(sys.argv[1]))\n    time.sleep(60)\n"
    )
    root = str(Path(__file__).parents[2])
    process = subprocess.Popen([sys.executable, server, mark], env={**os.environ, "PYTHONPATH": root})
    until(mark.exists)

    process.kill()
    process.wait()

    until(lambda: is_gone_or_dead(int(mark.read_text())))
