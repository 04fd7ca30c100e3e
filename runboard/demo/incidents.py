"""What comes in between while somebody works: a collet is worn, hooks run out."""

from collections.abc import Callable
from dataclasses import dataclass

from runboard.demo.acts import HOUR
from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.run.fold.state import ShopState
from runboard.run.log.event import write_moment

# Whether a state is as it is waited for.
Enough = Callable[[ShopState], bool]


@dataclass
class Incident:
    """What comes in between, once, as soon as ``when`` holds: somebody presses ``drafts``."""

    when: Enough
    drafts: Callable[[ShopState], list[Draft]]


def out_of_hooks(run: str, floor: Shopfloor) -> list[Incident]:
    """When the rails are oiled there are no hooks left; the next day there are some again."""
    supply = "brass hooks"

    def oiled(state: ShopState) -> bool:
        return "oil" in state.runs[run].trays["1"].rests

    def out(state: ShopState) -> list[Draft]:
        return [draft("supply out", {"supply": supply, "until": write_moment(floor.now + 20 * HOUR)}, run=run)]

    def are_there(state: ShopState) -> bool:
        until = state.runs[run].out.get(supply)
        return until is not None and until <= floor.now

    def back(state: ShopState) -> list[Draft]:
        seen = [
            draft("alert answered", {"alert": due.id, "answer": "done"}, run=run) for due in floor.ringing("supply due")
        ]
        return [*seen, draft("supply in", {"supply": supply}, run=run)]

    return [Incident(oiled, out), Incident(are_there, back)]
