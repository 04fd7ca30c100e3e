"""The fuzzer, reduced: no input makes the server fail, and the pages answer after them, before and after a restart.

The whole, a million inputs, is run by hand: ``python -m tests.attack fuzz``.
"""

from random import Random

import pytest

from tests.attack import nasty
from tests.attack.at_home import staying_at_home
from tests.attack.fuzz import Chapter, Found, chapters, lines, together
from tests.attack.fuzz_wire import on_the_wire
from tests.attack.ground import ground


def said(found: Found) -> str:
    return "\n".join(lines(found, 1, 1))


@pytest.mark.parametrize("number", range(3))
def test_no_input_makes_the_server_fail(number: int) -> None:
    found = together(chapters(1, range(number, number + 1)))

    assert not found.troubles, said(found)
    assert found.restarts == 1
    assert found.answers[("press", "accepted")] > 50 and found.answers[("request", "200")] > 10


def test_bytes_that_are_no_request_keep_no_phone_waiting() -> None:
    found = on_the_wire(1, 250)

    assert not found.troubles, said(found)


def test_a_chapter_is_the_same_each_time() -> None:
    some = [nasty.mutated(Random(7), {"a": [1, {"b": "x"}]}, 3) for _ in range(2)]

    assert repr(some[0]) == repr(some[1])


def test_what_fails_is_told_once_with_the_way_to_see_it_again() -> None:
    with staying_at_home(), ground() as place:
        chapter = Chapter(place, 1, 0, 1)

        def broken() -> None:
            raise ZeroDivisionError("on purpose")

        chapter._ask("request", "GET /broken", broken)
        chapter._ask("request", "GET /broken/2", broken)

    (trouble,) = chapter.found.troubles.values()
    assert "ZeroDivisionError" in trouble.line(1) and "--seed 1 --chapter 0" in trouble.line(1)
