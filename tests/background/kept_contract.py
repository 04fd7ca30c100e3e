"""What work that is kept keeps to, however it is done: the fake of the floor's tests, and the child process."""

from collections.abc import Callable
from typing import Any

from runboard.floor.long_work import KeptWork, TaskSeen

# How a test lets what was given be worked at until something is true of it.
GoOn = Callable[[Callable[[], object]], None]


class KeptContract:
    """Run on ``kept``, which does what ``tests.background.work.at`` does."""

    def now(self, kept: KeptWork, task: TaskSeen | None) -> Any:
        assert task is not None
        return kept.look(task.id)

    def over(self, kept: KeptWork, go_on: GoOn, task: TaskSeen | None) -> Any:
        """The job once it is over."""
        go_on(lambda: self.now(kept, task).is_over)
        return self.now(kept, task)

    def test_a_job_is_done_and_its_result_is_there(self, kept: KeptWork, go_on: GoOn) -> None:
        task = kept.give("tell", None)
        assert task is not None and not task.is_over

        found = self.over(kept, go_on, task)

        assert (found.state, found.result, found.latest, found.done, found.total) == ("done", "all", 3, 3, 3)

    def test_what_fails_says_why_and_the_next_job_is_done(self, kept: KeptWork, go_on: GoOn) -> None:
        failed = self.over(kept, go_on, kept.give("fall", None))
        done = self.over(kept, go_on, kept.give("tell", None))

        assert (failed.state, failed.failure.kind, failed.failure.says) == (
            "failed",
            "ValueError",
            "there is a knot in it",
        )
        assert done.state == "done"

    def test_a_new_job_takes_the_place_of_the_old_one(self, kept: KeptWork, go_on: GoOn) -> None:
        first = kept.give("go on", None)
        go_on(lambda: self.now(kept, first).latest == "half")

        second = kept.give("tell", None)

        assert first is not None and kept.look(first.id) is None
        assert self.over(kept, go_on, second).latest == 3

    def test_one_that_is_ended_keeps_what_it_told_of(self, kept: KeptWork, go_on: GoOn) -> None:
        task = kept.give("go on", None)
        go_on(lambda: self.now(kept, task).latest == "half")
        assert task is not None

        kept.end(task.id)

        assert (self.now(kept, task).state, self.now(kept, task).latest) == ("ended", "half")
        assert self.over(kept, go_on, kept.give("tell", None)).state == "done"

    def test_what_is_over_or_unknown_is_not_ended_again(self, kept: KeptWork, go_on: GoOn) -> None:
        task = self.over(kept, go_on, kept.give("tell", None))

        kept.end(task.id)
        kept.end("nobody")

        assert self.now(kept, task).state == "done"
        assert kept.look("nobody") is None
