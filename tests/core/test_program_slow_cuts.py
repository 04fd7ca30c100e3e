"""Cuts at the plunge's feed, named where the tool goes faster elsewhere."""

from runboard.plan.program.report import report
from runboard.shop.machines import Motion
from tests.core.moves_by_hand import Block, feed, moves, rapid, tool

MACHINE = Motion()


def found(*blocks: Block) -> list[tuple[int, int, float, float]]:
    doubts = report(moves(*blocks, start=(0, 0, 5)), MACHINE).doubts
    return [
        (doubt.line, doubt.facts["more"], round(doubt.facts["feed"]), round(doubt.facts["most"]))
        for doubt in doubts
        if doubt.code == "feed-of-the-plunge"
    ]


def down(z: float, x: float = 0.0) -> Block:
    return feed(x, 0, z, speed=5)


def test_a_cut_that_goes_on_at_the_plunge_s_feed_is_named_with_both_feeds() -> None:
    assert found(down(-1), feed(100, 0, -1, speed=5), feed(400, 0, -1, speed=30)) == [(2, 0, 300, 1800)]
    assert found(
        down(-1), feed(60, 0, -1, speed=5), feed(100, 0, -1, speed=5), feed(900, 0, -1, speed=30)
    ) == [(2, 1, 300, 1800)]  # fmt: skip


def test_a_ramp_and_a_tool_of_one_feed_are_none() -> None:
    assert found(down(-1), feed(100, 0, -4, speed=5), feed(400, 0, -4, speed=30)) == []
    assert found(down(-1), feed(100, 0, -1, speed=5), feed(400, 0, -1, speed=5)) == []


def test_a_slow_cut_whose_feed_was_said_anew_is_meant() -> None:
    assert (
        found(
            down(-1),
            feed(300, 0, -1, speed=30),
            rapid(300, 0, 5),
            down(-1, 300),
            feed(300, 5, -1, speed=30),
            feed(300, 90, -1, speed=5),
        )
        == []
    )


def test_each_tool_is_compared_with_itself() -> None:
    first = (tool(1), down(-1), feed(100, 0, -1, speed=5))

    assert found(*first, rapid(100, 0, 5), tool(2), down(-1, 100), feed(900, 0, -1, speed=30)) == []
