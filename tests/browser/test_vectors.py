"""The page's interpreter of the transition table gives what the server's gives, in a real browser."""

import json
from typing import Any

from playwright.sync_api import Page

from runboard.run.fold.table import table_text
from tests.core.test_page_rooms import FOLDED
from tests.vectors.make import FILE
from tests.vectors.patch import patched

ALL = json.loads(FILE.read_text("utf-8"))
FOLD = """async ({cases, table}) => {
    const {overlay} = await import("/table/fold.js");
    return cases.map(({state, events}) => {
        const before = JSON.stringify(state);
        const after = overlay(state, events, JSON.parse(table));
        return {after, changed: JSON.stringify(state) !== before};
    });
}"""


def is_a_pages(one: dict[str, Any]) -> bool:
    """Whether the press, or the one that it settles, is of a kind that the page folds."""
    settled = one["event"].get("body", {}).get("event") if one["event"]["kind"] == "entry settled" else None
    told = patched(ALL["base"], one["state"]).get("unsettled", []) if settled else []
    kinds = [one["event"]["kind"], *(entry["kind"] for entry in told if entry["event"] == settled)]
    return FOLDED.issuperset(kinds)


VECTORS = [one for one in ALL["vectors"] if is_a_pages(one)]


def folded(page: Page, cases: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What the page makes of each case's state and events."""
    return page.evaluate(FOLD, {"cases": cases, "table": table_text()})


def as_told(state: dict[str, Any]) -> dict[str, Any]:
    """The state as the server would tell it: without done loads, which the page keeps; due moments in one order."""
    runs = {
        key: {**run, "loads": {name: load for name, load in run["loads"].items() if load["state"] != "done"}}
        for key, run in state["runs"].items()
    }
    return {**state, "runs": runs, "dues": sorted(state["dues"], key=lambda one: one["id"])}


def test_the_page_folds_each_press_as_the_server_does(page: Page) -> None:
    states = [patched(ALL["base"], one["state"]) for one in VECTORS]
    cases = [{"state": state, "events": [one["event"]]} for state, one in zip(states, VECTORS, strict=True)]

    answers = folded(page, cases)

    assert len(VECTORS) > 200
    for state, one, answer in zip(states, VECTORS, answers, strict=True):
        assert as_told(answer["after"]) == as_told(patched(state, one["after"])), (one["name"], one["event"])
        assert not answer["changed"], f"{one['name']} changed the state that it was given"


def test_who_calls_again_for_the_same_rings_once_until_somebody_says_that_they_come(page: Page) -> None:
    """As ``tests/core/test_calls.py`` has it of the server."""
    bodies = [{"why": "help", "note": note} for note in ("", "Come.", "")]
    presses = [("lead called", body) for body in bodies]
    presses += [("alert claimed", {"alert": "call|press-1"}), ("lead called", {"why": "help"})]
    about = {"person": "ben", "run": "r1", "tray": "1", "operation": ""}
    events = [
        {**about, "id": f"press-{at}", "at": f"2026-06-01T17:00:0{at}Z", "kind": kind, "body": body}
        for at, (kind, body) in enumerate(presses, 1)
    ]

    (answer,) = folded(page, [{"state": ALL["base"], "events": events}])

    said = answer["after"]["calls"]
    assert {key: (one.get("times"), one["note"]) for key, one in said.items()} == {
        "press-1": (3, "Come."),
        "press-5": (None, ""),
    }
    assert [due["id"] for due in answer["after"]["dues"] if due["kind"] == "call"] == ["call|press-1", "call|press-5"]


def test_a_press_that_is_undone_before_it_is_sent_never_happened(page: Page) -> None:
    state = ALL["base"]
    press = {"id": "press-1", "at": "2026-06-01T17:00:00Z", "person": "ann", "kind": "load started", "run": "r1"}
    start = {**press, "load": "cut/1", "body": {}}
    second = {**start, "id": "press-1.2", "kind": "machine started"}
    undo = {**press, "id": "press-2", "kind": "event undone", "body": {"event": "press-1"}}

    (answer,) = folded(page, [{"state": state, "events": [start, second, undo]}])

    assert answer["after"]["runs"] == state["runs"]
    assert "hands" not in answer["after"]["people"]["ann"]


def test_something_that_ran_out_without_saying_until_when_is_out(page: Page) -> None:
    press = {"id": "press-1", "at": "2026-06-01T17:00:00Z", "kind": "supply out", "run": "r1"}

    (answer,) = folded(page, [{"state": ALL["base"], "events": [{**press, "body": {"supply": "hooks"}}]}])

    assert answer["after"]["runs"]["r1"]["out"] == {"hooks": None}


def test_a_machine_that_only_a_press_says_to_run_is_looked_at_again_on_a_phone_without_the_server(page: Page) -> None:
    about = {"run": "r1", "load": "engrave/1", "step": "engrave", "station": "laser"}
    due = {"id": "watch check|r1|engrave/1|blind-1|0", "kind": "watch check", "said": "blind", **about}
    said = {"id": "engrave/1", "state": "running", "said": "blind", "watcher": "ann", "revision": 1, **about}
    state = ALL["base"] | {
        "said_running": {"r1|engrave/1": said},
        "dues": [due | {"due_at": "2026-06-01T17:00:00.000Z"}],
    }
    press = {"id": "press-1", "at": "2026-06-01T17:00:30.000Z", "kind": "alert answered", "person": "ann"}

    (answer,) = folded(page, [{"state": state, "events": [{**press, "body": {"alert": due["id"], "answer": "seen"}}]}])

    assert [one["due_at"] for one in answer["after"]["dues"]] == ["2026-06-01T17:02:30.000Z"]


def test_odd_states_and_events_throw_nothing(page: Page) -> None:
    event = ALL["vectors"][0]["event"]
    odd: list[Any] = [{}, {"runs": {}}, {"runs": {"r1": {}}}, {"runs": {"r1": {"state": "open"}}}, {"people": None}]
    cases = [{"state": state, "events": [one["event"] for one in ALL["vectors"]]} for state in odd]
    cases += [{"state": ALL["base"], "events": [broken]} for broken in ({}, {"id": "x"}, {**event, "at": "soon"})]

    answers = folded(page, cases)

    assert len(answers) == len(cases)
