"""How somebody helps with their own phone: what a lead who looks for people is led to."""

from dataclasses import dataclass

from runboard.floor.looking.at_hand import runs_now
from runboard.floor.pressing.access import LEAD
from runboard.web.door.pages import workshop
from runboard.web.door.sessions import access, door


@dataclass(frozen=True)
class Friend:
    """``codes`` is the page of the codes of the newest open run, '' where none is open; ``pairs`` where phones pair at all."""

    codes: str
    pairs: bool


def friend_with_a_phone() -> Friend | None:
    """The ways in that a lead can show; None for everybody else."""
    if access() != LEAD:
        return None
    newest = [run.id for run in runs_now(workshop()) if run.state == "open"][-1:]
    return Friend("".join(f"/plan/runs/{run}/codes" for run in newest), door() is not None)
