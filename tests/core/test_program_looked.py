"""A run's programs, looked through before it starts: no time reckoned, changed since, farther than the machine reaches."""

from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.before.looked_at import LookedAt
from runboard.plan.estimates import KnownTime, estimates_from
from runboard.plan.program.looked import changed_steps, findings
from runboard.plan.schedule.told.forecast import Scatter
from runboard.run.fold.route import Step
from runboard.run.fold.state import RunState
from runboard.words.before.program import found_facts
from runboard.words.sentences import say
from tests import scenario
from tests.core.pressing import START, Floor
from tests.core.test_reckoned import reckoned_rails


def asked(product: dict[str, Any], looked: LookedAt | None = None, **travel: float) -> BeforeRun:
    shop = scenario.shop() | {"products": [product]}
    shop["stations"][0]["motion"] = travel
    floor = Floor(shop)
    floor.open_run(product=product)
    estimates = estimates_from(floor.state, floor.book)
    found = BeforeRun(floor.book, floor.state, floor.run, estimates, START.date())
    return replace(found, looked=looked or LookedAt())


def rails(**reckoned: Any) -> dict[str, Any]:
    product = reckoned_rails()
    product["operations"][0]["passes"][0]["reckoned"] |= reckoned
    return product


def said(before: BeforeRun) -> list[str]:
    return [say("before-found", one.code, found_facts(before.book, one.facts)) for one in findings(before)]


def one(before: BeforeRun) -> Finding:
    [found] = findings(before)
    return found


def test_a_run_without_programs_is_told_nothing() -> None:
    assert list(findings(asked(scenario.key_rails()))) == []


def test_a_time_that_is_from_the_program_is_right() -> None:
    found = one(asked(rails()))

    assert (found.check, found.level, found.code, found.link) == ("program cut", "green", "program-fine", "")


def test_a_program_that_only_the_setup_sheet_names_has_no_time() -> None:
    product = scenario.key_rails()
    product["operations"][0]["setup_sheet"] = [["Program", "rail.ngc, version 3"]]
    product["operations"][1]["setup_sheet"] = [["Program", "none: by hand"]]

    before = asked(product)

    assert (one(before).level, one(before).code) == ("look", "program-no-time")
    assert one(before).link == "/before/program?product=rail&step=cut"
    assert said(before)[0].startswith("Cut: nobody has checked its program rail.ngc, version 3 yet")


def test_a_program_that_was_changed_since_is_looked_at_again() -> None:
    looked = LookedAt({"rail": {"rail.ngc": ("b" * 64, "2026-05-20")}})
    before = asked(rails(), looked)

    assert (one(before).level, one(before).code) == ("look", "program-changed")
    assert "changed on Wed 20 May 2026, after its time was taken" in said(before)[0]
    assert [(step.key, day) for step, _, day in changed_steps(before.book.products[0], looked)] == [
        ("cut", "2026-05-20")
    ]


@pytest.mark.parametrize(
    "looked",
    [
        LookedAt({"rail": {"rail.ngc": ("a" * 64, "2026-05-20")}}),
        LookedAt({"rail": {"other.ngc": ("b" * 64, "2026-05-20")}}),
        LookedAt({"shelf": {"rail.ngc": ("b" * 64, "2026-05-20")}}),
    ],
    ids=["the same again", "another file", "another product"],
)
def test_what_else_was_looked_at_makes_no_time_an_old_one(looked: LookedAt) -> None:
    assert one(asked(rails(), looked)).code == "program-fine"


def test_a_program_that_goes_farther_than_its_machine_is_said() -> None:
    before = asked(rails(reach_x=983.0, reach_y=335.0), travel_x=980.0, travel_y=600.0)

    assert (one(before).level, one(before).code) == ("look", "program-too-far")
    assert "goes 983 mm along X, but the machine reaches 980 mm" in said(before)[0]
    assert one(asked(rails(reach_x=983.0), travel_x=983.0)).code == "program-fine"
    assert one(asked(rails(reach_x=983.0))).code == "program-fine"


def named(*names: str) -> dict[str, Any]:
    product = scenario.key_rails()
    for operation, name in zip(product["operations"], names, strict=False):
        operation["setup_sheet"] = [["Program", name]]
    return product


class Measured:
    """Estimates of a shop in which every machine time was measured nine times."""

    def of(self, run: RunState, step: Step, kind: str) -> KnownTime:
        return KnownTime(timedelta(minutes=39), Scatter(0.1, 0.1, 0.1), "measured", 9)


def test_a_program_that_ran_and_was_measured_is_no_guess() -> None:
    before = replace(asked(named("rail.ngc")), estimates=Measured())  # type: ignore[arg-type]

    assert (one(before).level, one(before).code) == ("green", "program-measured")
    assert said(before) == [
        "Cut: nobody checked the program rail.ngc here for reach and cutters. Its time is known: measured 9 times."
    ]


def test_one_program_of_two_passes_is_one_look() -> None:
    product = named("rail.ngc")
    cut = product["operations"][0]
    cut["passes"] = [cut["passes"][0], {**cut["passes"][0], "key": "b", "name": "side B"}]

    assert one(asked(product)).check.startswith("program cut")


def test_a_laser_s_drawing_is_looked_at_as_an_engraving() -> None:
    product = scenario.key_rails()
    laser = next(each for each in product["operations"] if each["station"] == "laser")
    laser["setup_sheet"] = [["Program", "number-jig.svg"]]

    assert list(findings(asked(product))) == []
