"""A made-up review: sixty key rails, two chipped, a drying rack that was full on two evenings, hooks that took longer than
anybody guessed."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.looking.at_hand import shop_now
from runboard.floor.workshop import Workshop
from runboard.plan.change import Capacity, Swapped, Times
from runboard.plan.estimates import Estimates
from runboard.review.changes.nouns import Idea, Span3, Together, Tried
from runboard.review.essentials import Essentials
from runboard.review.happened.nouns import (
    DayPart,
    Doing,
    ElementError,
    Happened,
    Lost,
    OperationBar,
    OrderLineDone,
    ProcessLine,
    SinceChange,
    StepYield,
    Waiting,
)
from runboard.review.held.nouns import Because, Held, HeldStretch, HourValue
from runboard.review.measured.study import ElementStudy, LearningCurve, LeftOut, Press, TimeStudy
from runboard.review.past import Past
from runboard.review.time_study import INTERRUPTED, Element
from runboard.run.refusal import Refused

# Shows the pages the made-up review, with what a test changes in it.
Seen = Callable[[Callable[[Essentials], Essentials]], None]
ZERO = timedelta(0)
RUN = "r1"


def minutes(number: float) -> timedelta:
    return timedelta(minutes=number)


def open_a_run(workshop: Workshop) -> None:
    """Sixty rails of the demo's book, for two people."""
    orders = [
        {"line": "1", "pieces": 36, "for": "the market"},
        {"line": "2", "pieces": 24, "for": "Nora", "text": "12"},
    ]
    open_run(workshop, Wish("rails", orders, start=60, name="Key rails, run 7"))


def essentials_at(workshop: Workshop, run: str) -> Essentials:
    """What ``floor.looking.review`` answers, of a run that is over and was measured."""
    book, state = shop_now(workshop)
    found = state.runs.get(run)
    if found is None:
        raise Refused("run unknown", run=run)
    opened = datetime.combine(found.opened_at.date(), found.opened_at.timetz()).replace(hour=16, minute=0)
    over = replace(found, state="finished", closed_at=opened + timedelta(days=4, hours=3))
    past = Past(book, state, over, (), {}, opened + timedelta(days=5), Estimates(), Estimates())
    return Essentials(past, study(), happened(opened), held(opened), tried(), together(), is_weighed=True)


OPERATIONS = {
    "cut": ("Cut", 184, 190, 32, 34),
    "clean": ("Clean up", 60, 71, 60, 71),
    "sand": ("Sand", 158, 150, 158, 150),
    "engrave": ("Engrave", 240, 246, 72, 70),
    "oil": ("Oil", 48, 44, 48, 44),
    "hooks": ("Fit hooks", 100, 170, 100, 170),
    "pack": ("Inspect and pack", 120, None, 120, None),
}


def bars() -> tuple[OperationBar, ...]:
    return tuple(
        OperationBar(
            key, name, minutes(guess), None if taken is None else minutes(taken), minutes(hands),
            None if hands_taken is None else minutes(hands_taken), (hands_taken or 0) / 550,
        )
        for key, (name, guess, taken, hands, hands_taken) in OPERATIONS.items()
    )  # fmt: skip


def happened(opened: datetime) -> Happened:
    done = opened + timedelta(days=4, hours=2)
    return Happened(
        wanted=60, started=60, good=58, scrap=2, hands=timedelta(hours=9, minutes=10), first_pass=0.94, rolled=0.91,
        bars=bars(),
        day=tuple(day(opened, late=0)), planned=tuple(day(opened, late=-12)),
        waiting=(
            Waiting("person", "robin", "no load", minutes(46)), Waiting("person", "kim", "service taken", minutes(25), "rack"),
            Waiting("person", "kim", "not said", minutes(0.4)),
            Waiting("station", "cnc", "no load", timedelta(hours=5)), Waiting("station", "laser", "no person", minutes(95)),
            Waiting("tray", "", "drying", timedelta(hours=48)), Waiting("tray", "", "service taken", timedelta(hours=21), "rack"),
        ),
        lost=(Lost("clean", "Clean up", "chipped", "ash", "3", 2),),
        yields=(
            StepYield("cut", "Cut", 60, 60, 60), StepYield("clean", "Clean up", 60, 56, 58), StepYield("hooks", "Fit hooks", 58, 57, 58),
        ),
        process=(
            ProcessLine("operation", "cut", "Cut", "cnc", timedelta(hours=2, minutes=32), waited=minutes(20), pieces=60),
            ProcessLine("operation", "clean", "Clean up", "bench", minutes(71), waited=minutes(12), pieces=58),
            ProcessLine("transport", "", "", "", None, walking=minutes(2), walks=9),
            ProcessLine("transport", "engrave", "Engrave", "laser", None, walking=timedelta(seconds=8), walks=2),
            ProcessLine("operation", "engrave", "Engrave", "laser", timedelta(hours=4, minutes=6), waited=minutes(50), pieces=58),
            ProcessLine("delay", "oil", "Oil", "", timedelta(hours=12), pieces=58),
            ProcessLine("operation", "hooks", "Fit hooks", "bench", minutes(170), waited=timedelta(hours=9), pieces=58),
            ProcessLine("inspection", "pack", "Inspect and pack", "table", None, pieces=58),
        ),
        order_lines=(
            OrderLineDone("1", "the market", "", 36, done - timedelta(hours=8), done, timedelta(hours=8)),
            OrderLineDone("2", "Nora", "12", 24, done + timedelta(days=1), done, ZERO),
        ),
        promised=opened + timedelta(days=3, hours=1), finished=done,
        since_changes=(SinceChange("cnc", "cutter", opened, minutes(90), ((15, 0), (15, 2))),),
        errors=(ElementError("hooks", "Fit hooks", "hooks", "hand", minutes(2), "guess", minutes(2.8), 5, 0.4, 0.6, True),),
    )  # fmt: skip


def day(opened: datetime, late: float) -> list[DayPart]:
    """Two evenings of Robin, Kim, the CNC and the bench."""

    def part(row: str, key: str, on: int, start: float, end: float, doing: Doing, **more: str) -> DayPart:
        begins = opened + timedelta(days=on)
        shifted = late if start else 0
        assert row in ("person", "station")
        row_ = "person" if row == "person" else "station"
        return DayPart(
            row_, key, begins + minutes(start + shifted), begins + minutes(end + late), doing,  # type: ignore[arg-type]
            kind=more.get("kind", ""), why=more.get("why", ""), run=RUN, step=more.get("step", ""), load=more.get("load", ""),
            of=more.get("of", ""),
        )  # fmt: skip

    found = []
    for on in (0, 1):
        found += [
            part("person", "robin", on, 12, 20, "work", kind="setup", step="cut", load="cut/1"),
            part("person", "robin", on, 20, 58, "watching", step="cut", load="cut/1"),
            part("person", "robin", on, 58, 60, "walking"),
            part("person", "robin", on, 60, 95, "waiting", why="no load"),
            part("person", "robin", on, 95, 170, "work", kind="hand", step="hooks", load="hooks/1"),
            part("person", "kim", on, 60, 131, "work", kind="hand", step="clean", load="clean/1"),
            part("person", "kim", on, 131, 156, "waiting", why="service taken", of="rack"),
            part("station", "cnc", on, 12, 20, "work", kind="setup", step="cut", load="cut/1"),
            part("station", "cnc", on, 20, 58, "work", kind="machine", step="cut", load="cut/1"),
            part("station", "cnc", on, 58, 170, "waiting", why="no load"),
            part("station", "bench", on, 60, 131, "work", kind="hand", step="clean", load="clean/1"),
        ]
    return found


def held(opened: datetime) -> Held:
    rack, robin, hours = ("service", "rack"), ("hands", "robin"), ("hours", "")

    def stretch(what: tuple[str, str], day: int, start: float, length: float, open_: float) -> HeldStretch:
        begins = opened + timedelta(days=day, hours=start)
        there = ((begins, begins + minutes(open_)),) if open_ else ()
        return HeldStretch(what, begins, begins + timedelta(hours=length), minutes(open_), there)

    return Held(
        rack, timedelta(days=1),
        (
            stretch(robin, 0, 0, 3, 180), stretch(hours, 0, 3, 21, 0), stretch(robin, 1, 0, 1.5, 90), stretch(rack, 1, 1.5, 22, 90),
            stretch(rack, 2, 1, 23, 120), stretch(robin, 3, 0, 3, 180),
        ),
        (
            HourValue(rack, minutes(74)), HourValue(robin, minutes(48)), HourValue(("station", "laser"), ZERO),
            HourValue(("station", "cnc"), ZERO), HourValue(("hands", "kim"), minutes(6), minutes(40)),
        ),
        opened + timedelta(days=4, hours=1.8), opened + timedelta(days=4, hours=2),
        Because("oil", ("6",), opened + timedelta(days=1, hours=2), opened + timedelta(days=2, hours=1)),
    )  # fmt: skip


def span3(low: float, mid: float, high: float) -> Span3:
    return Span3(minutes(low), minutes(mid), minutes(high))


def tried() -> tuple[Tried, ...]:
    return (
        Tried(
            Idea("a1", Capacity("rack", 12), "service holds", {"service": "Drying rack places", "held": timedelta(hours=21)}, 45.0),
            span3(1200, 1440, 1500), span3(0, 0, 0), 0.0, 1.2, 2.0,
        ),
        Tried(Idea("a2", Times(RUN, "hooks", "hand", 70), "furthest", {"step": "Fit hooks", "kind": "hand", "taken": minutes(170), "guess": minutes(100)}, 20.0), span3(0, 20, 65), span3(42, 51, 60), 0.0, 0.8, 1.5),
        Tried(Idea("a3", Swapped(RUN, "engrave"), "", {}), span3(0, 0, 0), span3(0, 0, 0), refused=("try order", {})),
    )  # fmt: skip


def together() -> Together:
    return Together(("a1", "a2"), span3(1210, 1460, 1530), span3(42, 51, 60), ("a1", "a2"))


def study() -> TimeStudy:
    def known(step: str, name: str, kind: str, guess: float, *lengths: float, **more: object) -> ElementStudy:
        spans = tuple(minutes(length) for length in lengths)
        middle = sorted(spans)[len(spans) // 2] if spans else None
        fields: dict[str, object] = {
            "lengths": spans, "median": middle, "mean": sum(spans, ZERO) / len(spans) if spans else None,
            "deviation": minutes(0.4) if len(spans) > 1 else None, "guessed_total": minutes(guess * 60),
            "taken_total": sum(spans, ZERO) * 15 if spans else None, "guessed_of_taken": minutes(guess * 15 * len(spans)), **more,
        }  # fmt: skip
        source = f"measured {len(spans)}" if spans else "guess"
        return ElementStudy(
            step,
            name,
            step.split(":")[0],
            kind,
            minutes(guess),
            minutes(guess),
            middle or minutes(guess),
            source,
            **fields,  # type: ignore[arg-type]
        )

    broken = Element("hooks", "Fit hooks", "hooks/3", "bench", ("3",), 15, "hand", "robin", known=INTERRUPTED)
    return TimeStudy(
        (
            known("cut", "Cut", "machine", 38, 38.2, 38.1, 38.4, 38.2),
            known("cut", "Cut", "loading", 2, 2.4, 1.9, 2.2),
            known("clean", "Clean up", "hand", 1, 1.4, 1.2, 1.1, 1.05, curve=LearningCurve(minutes(1.42), 0.86, 0.97, True)),
            known("sand:120", "Sand 120", "hand", 1.5, 1.4, 1.6),
            known("engrave", "Engrave", "machine", 14, *(14.1, 14.0, 14.3, 14.2, 14.1, 14.4, 14.2, 14.0, 14.1, 14.2, 14.5, 14.1)),
            known(
                "hooks", "Fit hooks", "hand", 2, 3.4, 2.6, 2.9, 2.4, 2.7, left_out=(LeftOut(broken, "interrupted"),), needed=7
            ),
            known("pack", "Inspect and pack", "hand", 2),
        ),
        0.83,
        (
            Press("load started", "pack", "Inspect and pack", minutes(120)),
            Press("load done", "sand:120", "Sand 120", minutes(40)),
            Press("load started", "oil", "Oil", minutes(12)),
        ),
    )  # fmt: skip
