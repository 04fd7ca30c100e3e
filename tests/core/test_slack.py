"""What the longest chain does with work that was made quicker."""

from runboard.plan.schedule.problem.nouns import Lag, Problem
from runboard.plan.schedule.rule.greedy import greedy_plan
from runboard.plan.schedule.told.holding import Slack, is_part, slack_of
from tests.core.test_optimum_properties import two_benches, work

EVENINGS = ((0, 100), (240, 340))


def slack(problem: Problem, operation: str) -> Slack:
    plan = greedy_plan(problem, 20)
    return slack_of(problem, plan, is_part(plan, "r", operation), "r")


def test_work_beside_the_longest_chain_has_slack() -> None:
    problem = two_benches(work(0, 0, 60), work(1, 1, 40, by=1))

    assert slack(problem, "1") == Slack(True, None, False)
    assert slack(problem, "0") == Slack(False, None, False)


def test_what_is_won_before_a_closed_hour_is_lost_there_and_behind_it_it_is_not() -> None:
    problem = two_benches(work(0, 0, 90), work(1, 1, 50, Lag(0)), windows=EVENINGS)

    assert slack(problem, "0") == Slack(False, 1, True)
    assert slack(problem, "1") == Slack(False, 1, False)


def test_only_the_part_that_is_asked_for_counts() -> None:
    problem = two_benches(work(0, 0, 60))
    plan = greedy_plan(problem, 20)

    assert [is_part(plan, "r", "0", kind)(problem.blocks[0]) for kind in ("hand", "setup", "machine")] == [
        True, False, False,
    ]  # fmt: skip
    assert not is_part(plan, "s", "0")(problem.blocks[0])


def test_a_wait_that_ends_within_hours_is_no_closed_hour() -> None:
    problem = two_benches(work(0, 0, 90), work(1, 1, 50, Lag(0, 160)), windows=EVENINGS)

    assert slack(problem, "0") == Slack(False, None, False)
