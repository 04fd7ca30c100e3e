"""An infeasible shop: from what was written down or pressed to the sentence that names the clash, on every way there is."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.cli import main
from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.house import House
from runboard.opening import open_workshop
from tests import scenario
from tests.web.test_plan_schedule import NoWork, operations, planned, work
from tests.web.test_shop_pages import words

__all__ = ["work"]

Record = dict[str, Any]


def no_skill(record: Record) -> None:
    record["people"] = [{**one, "access": "crew"} for one in record["people"]]
    operations(record)[3]["skill"] = "laser"


def two_clamps(record: Record) -> None:
    record["services"].append({"key": "clamps", "name": "Clamps", "capacity": 2})
    operations(record)[1]["wait"] = {
        "why": "clamp", "least_minutes": 30, "latest_minutes": None, "holds": {"clamps": 2},
    }  # fmt: skip


def too_long(record: Record) -> None:
    operations(record)[0]["passes"][0]["machine_minutes"] = 20 * 60


def too_long_with_its_setup(record: Record) -> None:
    operations(record)[0]["passes"][0]["setup_minutes"] = 13 * 60 + 50


def too_quiet(record: Record) -> None:
    laser(record)["quiet"] = [{"days": scenario.ALL_WEEK, "from": "08:20", "to": "23:59"}]
    operations(record)[3]["passes"][0]["machine_minutes"] = 9 * 60


def never_together(record: Record) -> None:
    laser(record)["quiet"] = [{"days": scenario.ALL_WEEK, "from": "08:05", "to": "23:59"}]


def too_soon(record: Record) -> None:
    operations(record)[4]["wait"]["latest_minutes"] = operations(record)[4]["wait"]["least_minutes"] + 1


def nobody_there(record: Record) -> None:
    for person in record["people"]:
        person["hours"] = []


def as_it_is(record: Record) -> None:
    """Nothing is written down wrongly."""


def laser(record: Record) -> Record:
    found: Record = next(one for one in record["stations"] if one["key"] == "laser")
    return found


CLASHES: dict[str, tuple[Callable[[Record], None], str]] = {
    "a skill that nobody has": (no_skill, "Engrave: it needs the skill ‘laser’, and nobody has it."),
    "a load larger than a service": (two_clamps, "Clean: it needs 2 of Clamps at once, and the shop has fewer."),
    "longer than any hours": (too_long, "nobody who may do it has more than 14 h at a time."),
    "longer with its setup": (too_long_with_its_setup, "Cut: it takes 14 h 30 without a break, and nobody"),
    "longer than quiet hours leave": (
        too_quiet,
        "Laser runs 9 h 02 without a break, and its quiet hours leave",
    ),
    "hours that never meet": (never_together, "Engrave: when Laser may run, nobody who may do it is there"),
    "a wait that ends too soon": (too_soon, "Hooks: it must start within 12 h 01 of the first piece"),
    "no hours": (nobody_there, "nobody who may do it has hours."),
    "nobody in the book": (as_it_is, "Cut: nobody who works here is in the shop’s book."),
    "out of use without end": (as_it_is, "Laser is out of order, with no date."),
}


def clamp_lost(workshop: Workshop) -> None:
    """The book's own products ask for none any more; the run's route still does."""
    record = scenario.shop()
    record["services"].append({"key": "clamps", "name": "Clamps", "capacity": 1})
    workshop.books.save(record, workshop.clock.now())


def laser_out(workshop: Workshop) -> None:
    out = new_event(workshop, "station out of use", {}, station="laser", person="ann", device="s")
    record_events(workshop, [out])


def all_gone(workshop: Workshop) -> None:
    record = scenario.shop()
    record["people"] = [{**one, "removed": True} for one in record["people"]]
    workshop.books.save(record, workshop.clock.now())


SINCE = {
    "a load larger than a service": clamp_lost,
    "out of use without end": laser_out,
    "nobody in the book": all_gone,
}


def opened(workshop: Workshop, name: str) -> str:
    """A run in a shop with the clash; answers what is to be said of it."""
    change, said = CLASHES[name]
    record = scenario.shop()
    change(record)
    workshop.books.save(record, workshop.clock.now())
    open_run(workshop, Wish("rail", [{"line": "1", "pieces": 15}], name="Key rails", start=15), "ann")
    if name in SINCE:
        SINCE[name](workshop)
    return said


@pytest.mark.parametrize("name", CLASHES)
def test_the_plan_page_names_the_clash(client: FlaskClient, house: House, work: NoWork, name: str) -> None:
    said = opened(house.workshop, name)
    planned(house)

    page = words(client.get("/plan"))

    assert said in page
    assert "No plan was found" not in page


@pytest.mark.parametrize("name", CLASHES)
def test_the_command_names_the_clash(tmp_path: Path, capsys: pytest.CaptureFixture[str], name: str) -> None:
    store, workshop = open_workshop(tmp_path)
    said = opened(workshop, name)
    store.close()

    code = main(["plan", "--data", str(tmp_path), "--seconds", "0"])

    assert code == 0
    assert said in " ".join(capsys.readouterr().out.split())
