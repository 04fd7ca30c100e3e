"""Nobody is sent home before what cannot wait until the next session: its latest end passes while the shop is empty."""

from datetime import timedelta

import pytest

from runboard.plan.answer import answer
from runboard.plan.move import Move
from runboard.plan.next_move import moves
from runboard.plan.offers import lines
from tests.core.pressing import Floor
from tests.scenario import shop


def after_the_oil(dries: float, latest: float | None, left: float) -> Floor:
    """A tray that dries after its oil; Ann has so many minutes left, with those to tidy up."""
    record = shop()
    oil = record["products"][0]["operations"][4]
    oil["wait"] |= {"least_minutes": dries, "latest_minutes": latest}
    record["products"][0]["operations"][5]["passes"][0]["hand_minutes"] = 0.5
    record["people"] = record["people"][:1]
    for person in record["people"]:
        person["hours"] = [{"days": person["hours"][0]["days"], "from": "08:00", "to": "19:00"}]
    floor = Floor(record)
    body = {"name": "Rails", "product": record["products"][0], "orders": [{"line": "1", "pieces": 5}], "wood": "ash"}
    floor.press("run opened", {**body, "trays": [{"tray": "1", "pieces": 5, "at": "oil"}]}, run="r1")
    floor.press("person came", {"until": "2026-06-01T17:00:00Z", "room": "shop"})
    floor.press("load done", run="r1", load="oil/1")
    floor.now = floor.now.replace(hour=16, minute=0, second=0) + timedelta(minutes=60 - left)
    return floor


def first(floor: Floor) -> Move:
    offer = answer(floor.state, floor.book, floor.now).offers["ann"]
    assert moves(floor.state, floor.book, "ann", floor.now)[0].code == "stop"
    return lines(floor.state, floor.book, "ann", floor.now, offer)[0]


def test_what_cannot_wait_until_tomorrow_comes_before_stopping():
    assert first(after_the_oil(dries=10, latest=300, left=19)).id == "start|r1|hooks/1"


def test_they_wait_for_it_where_it_is_ready_in_a_moment():
    made = first(after_the_oil(dries=44, latest=300, left=18))

    assert (made.code, made.facts["next"]) == ("free", "Hooks")


@pytest.mark.parametrize("latest", [None, 2000])
def test_what_can_wait_until_tomorrow_does(latest: float | None):
    assert first(after_the_oil(dries=10, latest=latest, left=19)).code == "stop"
