"""How many observations, normal and standard time, against worked problems of the handbooks."""

from itertools import pairwise
from statistics import fmean

from runboard.review.measured.samples import deviation, for_a_shift, needed, rounded_up, student, wanted
from runboard.review.measured.standards import normal_time, standard_time
from tests.outside.said import calculated, from_memory, published

HEIZER = (
    "Heizer & Render, Operations Management, chapter 10: https://quesba.com/questions/results-time-study-perform-quality-"
    "control-test-shown-following-table-848603"
)
KRAJEWSKI = (
    "Krajewski, Operations Management, test bank, supplement H, question 27: "
    "https://www.coursepaper.com/quiz/978-0134741062-test-bank-supplement-h-part-1/"
)
A_PRODUCTION_JOB = "https://www.question.com/a-production-job-was-being-timed-to-determine-a-1552505.html"
HANDBOOK = "NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.2.2"

LORD = (3.5, 3.2, 4.1, 3.6, 3.9)
# A watch that was never stopped: each element is what lies between two readings.
WATCH = (22.0, 51.0, 72.0, 98.0, 128.0, 150.0)
ELEMENTS = tuple(later - earlier for earlier, later in pairwise((0.0, *WATCH)))


@calculated(f"inputs of {HEIZER}", {"mean": 3.66, "deviation": 0.350714, "n": 14.11, "n with z 2": 14.69}, within=0.005)
def test_five_observations_and_how_many_they_ask_for(figure: str) -> float:
    mean, spread = fmean(LORD), deviation(LORD)
    assert spread is not None
    return {
        "mean": mean,
        "deviation": spread,
        "n": wanted(mean, spread, 0.05, 1.96),
        "n with z 2": wanted(mean, spread, 0.05, 2),
    }[figure]


@calculated(f"inputs of {HEIZER}", {1.96: 10, 2: 10})
def test_ten_more_make_fifteen(z: float) -> int | None:
    return needed(LORD, 0.05, z)


@published(KRAJEWSKI, {"deviation": 3.9}, within=0.05)
def test_the_spread_of_a_continuous_watch(_: str) -> float | None:
    assert ELEMENTS == (22, 29, 21, 26, 30, 22)
    return deviation(ELEMENTS)


@calculated(f"inputs of {KRAJEWSKI}", {"mean": 25, "deviation": 3.8987, "n": 58.39, "more": 53}, within=0.006)
def test_a_continuous_watch_and_how_many_more(figure: str) -> float | None:
    spread = deviation(ELEMENTS)
    assert spread is not None
    return {
        "mean": fmean(ELEMENTS),
        "deviation": spread,
        "n": wanted(fmean(ELEMENTS), spread, 0.04, 1.96),
        "more": needed(ELEMENTS, 0.04, 1.96),
    }[figure]


@published(A_PRODUCTION_JOB, {"n": 9, "normal": 11.7, "standard": 14.04, "pieces in 480 min": 3418}, within=0.1)
def test_a_production_job_of_thirteen_hundredths(figure: str) -> float:
    normal = normal_time(13.0, 0.9)
    standard = standard_time(normal, 0.2)
    pieces = int(480 * 100 / standard)
    return {"n": wanted(13, 1, 0.05, 1.96), "normal": normal, "standard": standard, "pieces in 480 min": pieces}[figure]


@calculated(f"inputs of {A_PRODUCTION_JOB}", {"rounded up": 10, "allowance of the day": 14.625}, within=1e-9)
def test_the_same_rounded_up_and_with_an_allowance_of_the_day(figure: str) -> float:
    normal = normal_time(13.0, 0.9)
    day = standard_time(normal, 0.2, of="day")
    return {"rounded up": rounded_up(wanted(13, 1, 0.05, 1.96)), "allowance of the day": day}[figure]


@published(HANDBOOK, {True: 9, False: 11})
def test_a_one_sided_test_that_sees_a_shift_of_one_deviation(known: bool) -> int:
    return for_a_shift(1, 0.05, 0.1, known)


@from_memory(
    "the table of Student's t in any text on statistics, 97.5 %",
    {1: 12.706, 2: 4.303, 3: 3.182, 4: 2.776, 5: 2.571, 8: 2.306, 10: 2.228, 20: 2.086, 30: 2.042, 120: 1.980},
    within=0.006,
)
def test_students_t_at_97_5(free: int) -> float:
    return student(0.975, free)
