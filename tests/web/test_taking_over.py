"""Where somebody takes over watching in the middle of a run, the Plan page and ``runboard plan`` say who and when."""

import re
from dataclasses import replace
from datetime import UTC, timedelta

import pytest
from flask.testing import FlaskClient

from runboard.floor.planning.planner import Planner
from runboard.floor.planning.plans import Planned, plan_at_once
from runboard.house import House
from runboard.plan.move import Move
from runboard.plan.schedule.problem.nouns import Plan
from runboard.plan.schedule.search.bounds import Bound
from runboard.words.plan_record import move_words, plan_lines, plan_record
from tests.figured import show
from tests.fitting import fit
from tests.web.test_plan_schedule import opened
from tests.web.test_shop_pages import words

ANN, BEN = 0, 1


@pytest.fixture
def handed(house: House) -> Planned:
    """A plan in which Ben takes over at the laser six minutes after Ann has begun to watch."""
    fit(house, planner=Planner(house.workshop, None, lambda seq: None))
    opened(house)
    planned = plan_at_once(house.workshop)
    plan, problem = planned.answer.plan, planned.answer.problem
    assert plan is not None
    first = next(one for one in plan.placed if problem.blocks[one.block].operation == "engrave" and one.watchers)
    start = first.watchers[0][1]
    other = replace(first, watchers=((ANN, start), (BEN, start + 12)))
    plan = Plan(tuple(other if one is first else one for one in plan.placed))
    return replace(planned, answer=replace(planned.answer, plan=plan))


def test_the_list_beside_the_chart_says_who_takes_over(client: FlaskClient, house: House, handed: Planned) -> None:
    show(house.workshop, handed)

    said = words(client.get("/plan"))

    ends = re.search(r"\d+:\d\d–(\d+:\d\d) Ann stays and watches: Engrave, tray \d", said)
    begins = re.search(r"(\d+:\d\d)–\d+:\d\d Ben takes over watching: Engrave, tray \d", said)
    assert ends is not None
    assert begins is not None
    assert ends[1] == begins[1]


def test_the_table_and_the_record_say_who_takes_over_and_when(house: House, handed: Planned) -> None:
    run = next(iter(handed.answer.state.runs.values()))

    record = plan_record(run, handed.answer, Bound(0, "search"), None)
    lines = list(plan_lines(run, handed.answer, Bound(0, "search"), None))

    handed_over = [
        [part for part in one["parts"] if part["kind"] == "machine"]
        for one in record["operations"]
        if sum(part["kind"] == "machine" for part in one["parts"]) > 1
    ]
    assert [[part["people"] for part in parts] for parts in handed_over] == [[["ann"], ["ben"]]]
    assert handed_over[0][0]["end"] == handed_over[0][1]["start"]
    assert sum(bool(re.search(r"; Ben takes over watching at \d+:\d\d$", line)) for line in lines) == 1


def test_who_is_to_take_over_soon_is_told_when_and_at_once_without_a_moment(handed: Planned) -> None:
    answer, zone = handed.answer, UTC
    facts = {"station": "Laser", "person": "Ann"}
    soon = Move("m", "take over", {}, facts={**facts, "at": answer.now + timedelta(minutes=12)})

    said = [move_words(answer.state, answer, move, zone) for move in (soon, replace(soon, facts=facts))]

    assert re.fullmatch(r"Watch the Laser from (\w+ )?\d+:\d\d", said[0])
    assert said[1] == "Take over the Laser from Ann"
