"""A thread that works in turns."""

import threading

from runboard.background.turns import Turns


def test_a_turn_comes_at_the_start_and_soon_after_waking():
    done = threading.Semaphore(0)
    turns = Turns("turns", done.release, every=60, rest=0)

    turns.start()
    assert done.acquire(timeout=5)
    turns.wake()
    assert done.acquire(timeout=5)

    turns.stop()


def test_turns_come_by_themselves():
    done = threading.Semaphore(0)
    turns = Turns("turns", done.release, every=0.01, rest=0)

    turns.start()
    assert all(done.acquire(timeout=5) for _ in range(3))

    turns.stop()


def test_a_turn_that_fails_is_logged_and_the_next_one_comes(caplog):
    done = threading.Semaphore(0)

    def fail() -> None:
        done.release()
        raise ValueError("no")

    turns = Turns("turns", fail, every=0.01, rest=0)
    turns.start()
    assert all(done.acquire(timeout=5) for _ in range(2))
    turns.stop()

    assert "turns failed" in caplog.text


def test_nothing_runs_once_it_is_stopped():
    turns = Turns("turns", lambda: None, every=60)
    turns.start()

    turns.stop()
    turns.wake()

    assert not any(one.name == "turns" for one in threading.enumerate())


def test_where_there_is_more_to_do_the_next_turn_comes_at_once():
    left, done = [True, True, False], threading.Semaphore(0)

    def work() -> bool:
        done.release()
        return left.pop(0)

    turns = Turns("turns", work, every=60, rest=0)
    turns.start()
    assert all(done.acquire(timeout=5) for _ in range(3))
    turns.stop()

    assert left == []


def test_each_work_has_its_turn_though_one_fails_and_a_count_is_no_more_to_do():
    done: list[str] = []

    def fail() -> None:
        done.append("fails")
        raise ValueError("no")

    def count() -> int:
        done.append("counts")
        return 1

    assert not Turns("turns", fail, count).turn()
    assert done == ["fails", "counts"]
