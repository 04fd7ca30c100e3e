"""Which elements of a run matter: far off and not for seconds alone, or most of what moved; at most three."""

from datetime import timedelta

from runboard.review.measured.matters import what_matters
from runboard.review.measured.study import ElementStudy, TimeStudy

MINUTE = timedelta(minutes=1)


def element(step: str, guess: float, taken: float, times: int, n: int = 3) -> ElementStudy:
    """It was done so many times, each as long as the others."""
    believed, median = guess * MINUTE, taken * MINUTE
    return ElementStudy(
        step, step, step, "hand", believed, believed, believed, "guess", (median,) * n, median if n else None,
        taken_total=median * times if n else None, guessed_of_taken=believed * times if n else timedelta(0),
    )  # fmt: skip


def matter(*elements: ElementStudy) -> list[str]:
    return [each.step for each in what_matters(TimeStudy(elements, 1.0))]


def test_the_one_that_moved_the_run_most_comes_first() -> None:
    assert matter(element("cut", 4, 6, 10), element("hooks", 2, 3, 60), element("oil", 1, 1, 60)) == ["hooks", "cut"]


def test_those_of_the_operation_that_the_first_screen_names_come_before_what_moved_more() -> None:
    study = TimeStudy((element("sand", 2, 3, 30), element("hooks", 2, 2.3, 60), element("cut", 2, 2.1, 60)), 1.0)

    assert [each.step for each in what_matters(study, "hooks")] == ["hooks", "sand"]


def test_of_the_operation_named_only_what_moved_comes_first() -> None:
    study = TimeStudy((element("sand", 2, 3, 30), element("hooks", 2, 2, 60)), 1.0)

    assert [each.step for each in what_matters(study, "hooks")] == ["sand"]


def test_no_more_than_three() -> None:
    assert len(matter(*(element(f"s{at}", 1, 2, 10) for at in range(6)))) == 3


def test_what_is_far_off_but_hardly_moved_anything_does_not_matter() -> None:
    assert matter(element("setup", 4, 6, 1), element("hooks", 2, 3, 60)) == ["hooks"]


def test_what_is_a_little_off_matters_where_it_is_most_of_what_moved() -> None:
    assert matter(element("clean", 1, 1.15, 60), element("oil", 1, 1.05, 20)) == ["clean"]


def test_what_nobody_measured_and_what_went_as_guessed_does_not_matter() -> None:
    assert matter(element("pack", 2, 2, 60, n=0), element("cut", 4, 4, 10)) == []
