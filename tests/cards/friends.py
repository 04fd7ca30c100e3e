"""Essentials of a run to send to a friend: a small shop whose people, customers and notes have names."""

from datetime import datetime, timedelta
from typing import Any

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.workshop import Workshop
from runboard.plan.estimates import Estimates
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import Happened, Lost, OperationBar, OrderLineDone, ProcessLine, StepYield
from runboard.review.measured.study import ElementStudy, TimeStudy
from runboard.review.past import Past
from runboard.run.fold.state import RunState
from tests.floor.fakes import workshop
from tests.scenario import shop

ORDERS = [
    {"line": "Mulberry-7", "pieces": 1, "for": "Tessa Quill", "text": "Quill House 7"},
    {"line": "12", "pieces": 5, "for": "Harbour Café", "text": ""},
]
# Whoever must not be in a file by default: people, a guest, customers, what they ordered, what the run is called after them.
NAMES = (
    "Annelies",
    "Borg",
    "Annelies Borg",
    "Bendix",
    "Zora",
    "Tessa",
    "Quill",
    "Harbour Café",
    "Quill House 7",
    "Mulberry",
)
NAMES += ("annelies", "quill")


def M(minutes: float) -> timedelta:  # noqa: N802 - a unit
    return timedelta(minutes=minutes)


def named_record() -> dict[str, Any]:
    """The book of a shop with people of uncommon names."""
    record = shop()
    record["people"][0]["name"], record["people"][1]["name"] = "Annelies Borg", "Bendix"
    operations = record["products"][0]["operations"]
    operations[1]["name"] = "Clean up as Bendix likes it"
    operations[0]["instructions"] = [{"text": "Ask Annelies for the ash.", "picture": None}]
    return record


def named_shop() -> Workshop:
    """That shop, with a run called after a customer."""
    made = workshop(named_record())
    open_run(made, Wish("rail", ORDERS, name="Rails for Tessa Quill"), "ann")
    return made


def essentials_of(shop_: Workshop, run: str = "r1") -> Essentials:
    """What a review would say of its run, made up."""
    now = shop_.clock.now()
    state = shop_.ledger.state
    found = state.runs[run]
    past = Past(shop_.book, state, found, tuple(shop_.ledger.held), {}, now, Estimates({}), Estimates({}))
    return Essentials(past, TimeStudy(_studies(), 0.8), _happened(found, now), is_weighed=True)


def _studies() -> tuple[ElementStudy, ...]:
    known = ElementStudy(
        "hooks", "Hooks", "hooks", "hand", M(2), M(2), M(2.9), "measured 9", (M(2.8),) * 9, M(2.8), M(2.9), M(0.3)
    )
    unknown = ElementStudy("sand:120", "Sand 120", "sand", "hand", M(3), M(3), M(3), "guess")
    return (unknown, known)


def _happened(run: RunState, now: datetime) -> Happened:
    def bar(key: str, guess: float, taken: float | None) -> OperationBar:
        name = next(one.name for one in run.route.product.operations if one.key == key)
        length = None if taken is None else M(taken)
        return OperationBar(
            key, name, M(guess), length, M(guess * 0.6), length and length * 0.6, 0.0 if length is None else 1.0
        )

    bars = (bar("hooks", 100, 170), bar("cut", 160, 150), bar("clean", 60, 66), bar("sand", 300, None))
    orders = tuple(
        OrderLineDone(str(one["line"]), str(one["for"]), str(one["text"]), 1, None, now, None) for one in ORDERS
    )
    return Happened(
        wanted=60,
        started=63,
        good=58,
        scrap=2,
        hands=M(550),
        first_pass=0.97,
        rolled=0.95,
        bars=bars,
        day=(),
        planned=(),
        waiting=(),
        lost=(Lost("clean", "Clean up", "chipped, annelies says the quill cutter", "ash", "Quill 3", 2),),
        yields=(StepYield("clean", "Clean up", 60, 57, 58),),
        process=(
            ProcessLine("operation", "hooks", "Hooks", "bench", M(170), M(4), 2, M(900), 58),
            ProcessLine("operation", "cut", "Cut", "cnc", M(150)),
        ),
        order_lines=orders,
        promised=None,
        finished=now,
    )
