"""The plan at hand, and the search for a better one, one press further down from when it will be done."""

from typing import Any

from flask import Blueprint, Response

from runboard.floor.looking.at_hand import as_read
from runboard.floor.planning.planner import Planner
from runboard.floor.planning.plans import ShownPlan
from runboard.plan.schedule.problem.nouns import Problem
from runboard.web.door.pages import asks_for_a_part, page, see_other, workshop
from runboard.web.fittings import fittings
from runboard.words.dues import limit_sentences
from runboard.words.facts import zone_of
from runboard.words.pace import PaceWords, pace_words
from runboard.words.plan import Names

part = Blueprint("plan_schedule", __name__)


def planner() -> Planner | None:
    """This server's planner; None where it has none."""
    return fittings().planner


def gave_up() -> bool:
    """Whether the search needed more memory than it may use, so that none goes on."""
    found = planner()
    return found is not None and found.gave_up()


def latest() -> ShownPlan | None:
    """The plan at hand; nobody waits for a better one."""
    found = planner()
    return found.latest() if found is not None else None


def names_for(problem: Problem) -> Names:
    """What the plan's things are called in this shop."""
    book, runs = as_read(workshop())
    return Names(problem, runs, book, zone_of(book.time_zone), workshop().clock.now())


def older_sentence(shown: ShownPlan, names: Names) -> str:
    """That the log went on since the plan was made; '' where it did not."""
    return names.say("older", at=shown.made_at) if shown.is_older else ""


def pace_of(shown: ShownPlan) -> PaceWords:
    """How fast it goes; put into words only where it is shown, not each second while a search is looked at."""
    return PaceWords() if shown.figures is None else pace_words(shown.figures, names_for(shown.problem))


@part.get("/plan/search")
def search() -> Response:
    """What no plan can beat, and the search for a better one."""
    found, shown = planner(), latest()
    bound = _bound(shown)
    return page(
        "plan/search.html",
        "search",
        plans=found is not None,
        shown=shown,
        task=found.search() if found is not None else None,
        gave_up=gave_up(),
        pace=pace_of(shown) if shown is not None and bound["done"] and not asks_for_a_part() else None,
        **bound,
    )


@part.post("/plan/search")
def look_further() -> Response:
    """Look for a better plan."""
    if found := planner():
        found.look_further()
    return see_other("/plan/search")


@part.post("/plan/search/end")
def end() -> Response:
    """Stop looking; the best plan so far stays."""
    if found := planner():
        found.stop()
    return see_other("/plan/search")


def _bound(shown: ShownPlan | None) -> dict[str, Any]:
    if shown is None or not shown.problem.blocks:
        return {"done": "", "limits": [], "older": ""}
    names, finish = names_for(shown.problem), shown.plan.finish(shown.problem)
    done = names.say("itself", at=names.tick(finish))
    limits = [] if shown.bound is None else list(limit_sentences(names, shown.plan, shown.bound))
    return {"done": done, "limits": limits, "older": older_sentence(shown, names)}
