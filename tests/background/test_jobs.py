"""Long work in child processes: what becomes of it, however it goes."""

import os
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from runboard.background.job import Job
from runboard.background.jobs import MOST_WAITING, Jobs
from tests.background import work

PATIENCE = 30.0


@pytest.fixture
def jobs() -> Iterator[Jobs]:
    before = threading.active_count()
    found = Jobs(most=2, grace=0.3)
    yield found
    found.close()
    assert threading.active_count() == before


def until(true: Callable[[], object]) -> None:
    """Wait until it is so."""
    end = time.monotonic() + PATIENCE
    while not true():
        assert time.monotonic() < end, "it never came"
        time.sleep(0.01)


def over(jobs: Jobs, job: Job | None) -> Job:
    """The job once it is over."""
    assert job is not None
    until(lambda: now(jobs, job).is_over)
    return now(jobs, job)


def now(jobs: Jobs, job: Job) -> Job:
    found = jobs.look(job.id)
    assert found is not None
    return found


def is_there(process: int) -> bool:
    """Whether a process is there, be it dead and not buried."""
    try:
        os.kill(process, 0)
    except ProcessLookupError:
        return False
    return True


def test_work_is_done_in_another_process_and_its_result_comes_back(jobs: Jobs) -> None:
    job = over(jobs, jobs.start("sum", "r1", work.add_up, [1, 2, 3]))

    assert (job.state, job.result, job.done, job.total, job.latest) == ("done", 6, 3, 3, 6)
    assert (job.what, job.subject) == ("sum", "r1")


def test_better_and_better_results_are_heard_in_order(jobs: Jobs) -> None:
    heard: list[Job] = []

    over(jobs, jobs.start("sum", "r1", work.add_up, [5, 5, 5], heard=heard.append))

    until(lambda: heard[-1].is_over)
    assert [one.latest for one in heard if one.latest] == [5, 10, 15, 15]


def test_what_a_child_raises_is_said(jobs: Jobs) -> None:
    job = over(jobs, jobs.start("fall", "", work.fall))

    assert job.state == "failed"
    assert job.failure is not None
    assert (job.failure.kind, job.failure.says) == ("ValueError", "there is a knot in it")


def test_a_child_that_dies_says_so(jobs: Jobs) -> None:
    job = over(jobs, jobs.start("die", "", work.die))

    assert job.failure is not None
    assert (job.state, job.failure.kind, job.failure.says) == ("failed", "died", "-9")


def test_a_result_that_cannot_be_sent_is_a_failure(jobs: Jobs) -> None:
    job = over(jobs, jobs.start("odd", "", work.answer_badly))

    assert job.state == "failed"


def test_arguments_that_cannot_be_sent_are_a_failure(jobs: Jobs) -> None:
    job = over(jobs, jobs.start("odd", "", work.add_up, lambda: None))

    assert job.failure is not None
    assert job.failure.kind == "not started"


def test_ended_by_request_it_is_gone_and_keeps_the_best_it_told_of(jobs: Jobs, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    job = jobs.start("plan", "r1", work.sleep_long, mark)
    until(mark.exists)
    until(lambda: now(jobs, job).latest)

    jobs.end(job.id)

    assert (now(jobs, job).state, now(jobs, job).latest) == ("ended", "asleep")
    until(lambda: not is_there(int(mark.read_text())))


def test_ended_twice_or_after_it_is_over_nothing_happens(jobs: Jobs) -> None:
    job = over(jobs, jobs.start("sum", "", work.add_up, [1]))

    jobs.end(job.id)
    jobs.end(job.id)
    jobs.end("nobody")

    assert now(jobs, job).state == "done"


def test_a_child_that_does_not_hear_is_killed_after_the_grace(jobs: Jobs, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    job = jobs.start("deaf", "", work.sleep_deaf, mark)
    until(mark.exists)

    jobs.end(job.id)

    until(lambda: not is_there(int(mark.read_text())))


def test_told_to_end_it_may_still_say_the_best_it_has(jobs: Jobs, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    job = jobs.start("plan", "", work.give_in, mark)
    until(mark.exists)

    jobs.end(job.id)

    until(lambda: now(jobs, job).latest == "half a plan")
    assert now(jobs, job).state == "ended"


def test_what_a_child_started_ends_with_it(jobs: Jobs, tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    job = jobs.start("two", "", work.start_another, mark)
    until(mark.exists)

    jobs.end(job.id)

    until(lambda: is_gone_or_dead(int(mark.read_text())))


def is_gone_or_dead(process: int) -> bool:
    """Gone, or dead and to be buried by whoever takes in orphans."""
    try:
        return Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()[0] == "Z"
    except FileNotFoundError:
        return True


def test_no_more_run_at_once_than_are_let(jobs: Jobs, tmp_path: Path) -> None:
    go = tmp_path / "go"
    started = [jobs.start("wait", str(at), work.write_then_wait, tmp_path / f"{at}.mark", go) for at in range(4)]
    until(lambda: len(list(tmp_path.glob("*.mark"))) == 2)

    assert [now(jobs, job).state for job in started] == ["running", "running", "waiting", "waiting"]

    jobs.end(started[3].id)
    go.touch()
    assert [over(jobs, job).state for job in started] == ["done", "done", "done", "ended"]
    assert not (tmp_path / "3.mark").exists()


def test_too_much_waiting_is_not_taken(jobs: Jobs, tmp_path: Path) -> None:
    go = tmp_path / "go"
    for at in range(2):
        jobs.start("wait", "", work.write_then_wait, tmp_path / f"{at}.mark", go)
    until(lambda: len(list(tmp_path.glob("*.mark"))) == 2)
    for at in range(MOST_WAITING):
        jobs.start("wait", "", work.write_then_wait, tmp_path / f"more{at}", go)

    assert jobs.start("wait", "", work.write_then_wait, tmp_path / "last", go) is None


def test_starting_and_looking_do_not_wait_for_the_child(jobs: Jobs) -> None:
    began = time.monotonic()

    job = jobs.start("sum", "", work.add_up, list(range(200_000)))
    jobs.look(job.id)

    assert time.monotonic() - began < 0.5
    jobs.end(job.id)


def test_a_child_that_chatters_is_not_held_up(jobs: Jobs) -> None:
    assert over(jobs, jobs.start("chatter", "", work.chatter)).result == "said"


def test_more_than_a_pipe_holds_gets_through(jobs: Jobs) -> None:
    assert len(over(jobs, jobs.start("big", "", work.say_big)).latest) == 1_000_000


def test_the_newest_of_a_subject_is_found(jobs: Jobs) -> None:
    jobs.start("sum", "r1", work.add_up, [1])
    second = jobs.start("sum", "r1", work.add_up, [2])
    jobs.start("sum", "r2", work.add_up, [3])

    found = jobs.newest("sum", "r1")

    assert found is not None
    assert found.id == second.id
    assert jobs.newest("plan", "r1") is None


def test_closing_ends_all_of_it_and_takes_no_more(tmp_path: Path) -> None:
    jobs = Jobs(most=1, grace=0.3)
    mark = tmp_path / "mark"
    running, waiting = jobs.start("one", "", work.sleep_long, mark), jobs.start("two", "", work.sleep_long, mark)
    until(mark.exists)

    jobs.close()

    assert [now(jobs, one).state for one in (running, waiting)] == ["ended", "ended"]
    assert not is_there(int(mark.read_text()))
    assert jobs.start("three", "", work.add_up, [1]) is None


def test_a_child_goes_when_the_server_is_killed(tmp_path: Path) -> None:
    mark = tmp_path / "mark"
    text = (
        "import sys, time\nfrom pathlib import Path\nfrom runboard.background.jobs import Jobs\n"
        "from tests.background import work\n"
        "if __name__ == '__main__':\n"
        "    Jobs().start('long', '', work.sleep_deaf, Path(sys.argv[1]))\n    time.sleep(60)\n"
    )
    server = tmp_path / "server.py"
    server.write_text(text)
    root = str(Path(__file__).parents[2])
    process = subprocess.Popen([sys.executable, server, mark], env={**os.environ, "PYTHONPATH": root})
    until(mark.exists)

    process.kill()
    process.wait()

    until(lambda: is_gone_or_dead(int(mark.read_text())))
