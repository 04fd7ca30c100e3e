"""Whether a page shows what the fold says: the parts of the state that presses change, compared."""

import json
import re
from datetime import datetime
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from runboard.floor.looking.look import state_for
from runboard.opening import open_workshop
from tests.browser.inside import OWN

WHAT_IT_SHOWS = f"(async () => JSON.stringify({OWN}['door/shop.js'].shop()))()"
PARTS = ("people", "stations", "runs", "answers", "unsettled", "asks", "care", "calls")
MOMENT = re.compile(r"^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d")
# The page knows its own clock to within half the way to the server.
APART_S = 1.0


def what_it_shows(page: Page) -> dict[str, Any]:
    """The state that the page is drawn from, its own unsent presses laid over the last one it got."""
    return dict(json.loads(page.evaluate(WHAT_IT_SHOWS)))


def what_the_fold_says(data: Path, person: str) -> dict[str, Any]:
    """The same state from the log in a data folder."""
    store, workshop = open_workshop(data)
    try:
        return dict(json.loads(state_for(workshop, person)[1]))
    finally:
        store.close()


def differences(shown: dict[str, Any], said: dict[str, Any], but: str = "") -> list[str]:
    """Where the two differ, as 'path: shown, said'; moments may be a second apart. ``but`` is a part left out."""
    one, other = _told(shown), _told(said)
    return [
        line for part in PARTS if part != but for line in _apart(part, one.get(part), other.get(part))
    ] + _dues_apart(shown, said)


def _told(state: dict[str, Any]) -> dict[str, Any]:
    """As the server tells it: without closed runs, done loads and the ids that the page adds, all of which it keeps."""
    runs = {}
    for key, run in state.get("runs", {}).items():
        if run["state"] != "open":
            continue
        loads = {name: load for name, load in run.get("loads", {}).items() if load["state"] != "done"}
        told = {name: value for name, value in run.items() if name not in ("id", "past", "loads")}
        runs[key] = {**told, **({"loads": loads} if loads else {})}
    unsettled = {entry["event"]: entry for entry in state.get("unsettled", [])}
    return {**state, "runs": runs, "unsettled": unsettled}


def _dues_apart(shown: dict[str, Any], said: dict[str, Any]) -> list[str]:
    """When the next morning is, the server alone says."""
    every = [[due for due in state.get("dues", []) if due["kind"] != "care morning"] for state in (shown, said)]
    ids = [sorted(due["id"] for due in some) for some in every]
    return [] if ids[0] == ids[1] else [f"dues: {ids[0]}, {ids[1]}"]


def _apart(path: str, one: Any, other: Any) -> list[str]:
    if isinstance(one, dict) and isinstance(other, dict):
        keys = dict.fromkeys([*one, *other])
        return [line for key in keys for line in _apart(f"{path}.{key}", one.get(key), other.get(key))]
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return [line for at, pair in enumerate(zip(one, other, strict=True)) for line in _apart(f"{path}[{at}]", *pair)]
    if one == other or _near(one, other) or (not one and not other):
        return []
    return [f"{path}: {one!r}, {other!r}"]


def _near(one: Any, other: Any) -> bool:
    if not (isinstance(one, str) and isinstance(other, str) and MOMENT.match(one) and MOMENT.match(other)):
        return False
    return abs((datetime.fromisoformat(one) - datetime.fromisoformat(other)).total_seconds()) <= APART_S
