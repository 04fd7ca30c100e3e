import pytest

from runboard.plan.change import Change, Instead, OnePersonMore, OneVisit, Several, Swapped
from runboard.words.trying import words_of_change
from tests.core.pressing import Floor
from tests.core.test_changes_kinds import EVERY_KIND


@pytest.mark.parametrize("change", EVERY_KIND, ids=lambda change: type(change).__name__)
def test_every_kind_of_change_can_be_said(change: Change) -> None:
    floor = Floor()
    floor.open_run()

    said = words_of_change(floor.book, floor.run, change)

    assert said
    assert "{" not in said
    assert "change-" not in said


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (Swapped("r1", "clean"), "Sand before Clean"),
        (OneVisit("r1", "oil"), "Hooks right after Oil, in one visit"),
        (Instead("r1", "sand", "abrasive", "Mesh", 85, 0.98), "Sand: Mesh as the abrasive, in 85 % of the time, 98 of 100 good"),
        (Instead("r1", "gone", "wood", "Oak", 100, 0.98), "gone: Oak as the wood, in the same time, 98 of 100 good"),
        (
            Several((Swapped("r1", "clean"), OneVisit("r1", "oil"))),
            "Together: Sand before Clean and Hooks right after Oil, in one visit",
        ),
        (OneVisit("r1", "hooks"), "– right after Hooks, in one visit"),
        (OnePersonMore("gone"), "One more person, with gone’s hours, from now on, for steps that need no skill"),
    ],
)  # fmt: skip
def test_a_change_is_said_so(change: Change, said: str) -> None:
    floor = Floor()
    floor.open_run()

    assert words_of_change(floor.book, floor.run, change) == said
