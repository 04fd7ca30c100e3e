"""What somebody in the demo shop takes of what the shop offers: the first of it, and a wait for what comes soon."""

from datetime import timedelta
from typing import Any

from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.plan.move import Move
from runboard.shop.product import ZERO

WORTH_WAITING = timedelta(minutes=30)


def first_offer(floor: Shopfloor, person: str) -> Move | None:
    """The first that this person would begin of what is offered; None where the shop says to stop, to watch or to do as
    one likes before it."""
    for move in floor.moves(person):
        # Whoever started a machine goes to it by themselves.
        if move.code in ("start", "go on", "unload", "job") and move.because["code"] != "machine due":
            return move
        if move.code in ("stop", "free", "watch"):
            return None
    return None


def worth_waiting(floor: Shopfloor, person: str) -> timedelta:
    """How long somebody at no machine waits for what comes next; nothing where it is time to go."""
    first, until = floor.moves(person)[0], floor.state.people[person].until
    if first.code != "free" or "at" not in first.facts or until is None:
        return ZERO
    wait: timedelta = first.facts["at"] - floor.now
    return wait if wait <= WORTH_WAITING and first.facts["at"] < until else ZERO


def is_time_to_go(floor: Shopfloor, person: str) -> bool:
    """Whether nothing is offered to somebody at no machine, and nothing comes soon."""
    return first_offer(floor, person) is None and worth_waiting(floor, person) == ZERO


def draft_of(move: Move) -> Draft:
    """The press that begins what is offered."""
    if move.code == "job":
        return draft("job started", {"job": move.id.split("|")[1]})
    body: dict[str, Any] = {"pieces": dict(move.pieces)} if move.code == "start" else {}
    if move.places:
        body["places"] = {tray: list(placed) for tray, placed in move.places.items()}
    kind = "unloading started" if move.code == "unload" else "load started"
    return draft(kind, body, run=move.run, load=move.load, operation=move.step, station=move.station)
