"""What the newcomer reads on Now and the plan says what to do or what is, and no more."""

import pytest

from runboard.words.sentences import sentence

LATE = {"what": "20 Quarry Road", "due": "17:00", "there": "Tue 10:30"}


@pytest.mark.parametrize(("pieces", "said"), [(1, "1 piece"), (2, "2 pieces")])
def test_a_late_line_says_when_it_is_due_and_ready_and_then_how_many_pieces(pieces: int, said: str) -> None:
    assert (
        sentence("late-line-will", {**LATE, "pieces": pieces})
        == f"20 Quarry Road will be late: due 17:00, ready Tue 10:30 ({said})"
    )


def test_a_machine_to_be_looked_at_says_so() -> None:
    assert sentence("state-watch-check-due") == "look at it now"
