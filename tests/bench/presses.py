"""How many presses a tray of the demo's key rails takes from the first cut to packed, when nothing goes wrong.

One person works one board, three trays of five, and presses the page's big button each time: a press is one button,
however many events it makes. A press is shared by the trays of its load. What comes once a session (how long, start
lists, first pieces) is counted beside it.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from runboard.demo.book import LEAD, demo_book
from runboard.demo.checking import answers_to_checks, list_for, wants_full_list
from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.demo.watching import about, load_at
from runboard.floor.changing.runs import Wish, open_run
from runboard.run.fold.state import Load
from runboard.run.log.event import write_moment
from tests.bench import prompts
from tests.floor.fakes import MONDAY, FakeClock, workshop

GOAL = 8
BEGINS = ("start", "go on", "unload")


@dataclass
class Counted:
    """Presses by (operation, tray), the lines that say what each press was, and those that come once a session."""

    a_tray: Counter[tuple[str, str]] = field(default_factory=Counter)
    session: Counter[str] = field(default_factory=Counter)
    said: list[str] = field(default_factory=list)

    def press(self, load: Load, words: str) -> None:
        for tray in load.pieces:
            self.a_tray[(load.step, tray)] += 1 / len(load.pieces)
        self.said.append(words)

    @property
    def trays(self) -> list[str]:
        return sorted({tray for _, tray in self.a_tray})

    def total(self, tray: str) -> float:
        return sum(share for (_, one), share in self.a_tray.items() if one == tray)


class Script:
    """One person with one phone, who always presses the big button."""

    def __init__(self) -> None:
        record = demo_book(MONDAY, "UTC") | {"jobs": []}  # the shop's own jobs are no tray's
        made = workshop(record)
        assert isinstance(made.clock, FakeClock)
        self.clock = made.clock
        self.floor = Shopfloor(made, made.clock, _Never())  # type: ignore[arg-type]
        orders = [{"line": str(line), "pieces": 1, "text": str(line)} for line in range(1, 16)]
        self.run = open_run(made, Wish("rails", orders, start=15), LEAD)
        self.counted = Counted()

    def work(self) -> Counted:
        """Press until everything is packed."""
        for _ in range(200):
            if not any(tray.in_process for tray in self.floor.state.runs[self.run].trays.values()):
                return self.counted
            self._turn()
        raise AssertionError("the script does not come to its end")

    def _turn(self) -> None:
        person = self.floor.state.people.get(LEAD)
        if person is None or person.until is None or person.until <= self.clock.now():
            self._come()
        elif person.hands is not None:
            self._go_on(*load_at(self.floor, *person.hands))
        elif running := [one for one in self.floor.state.runs[self.run].loads.values() if one.state == "running"]:
            self._at_it(running[0])
        elif begins := self._begins():
            self.floor.press(LEAD, begins[0])
            self.counted.press(self._in_hand(), f"Start {self._in_hand().id}")
        else:
            self.clock.moment = person.until

    def _come(self) -> None:
        until = write_moment(self.clock.now() + timedelta(hours=14))
        self.floor.press(LEAD, draft("person came", {"until": until}))
        self.counted.session["how long have you got"] += 1

    def _go_on(self, load: Load, step: Any) -> None:
        if load.state == "loading":
            self._pass(step.pass_.loading)
            items, full = list_for(self.floor, step), wants_full_list(self.floor, load, LEAD)
            lists = [draft("checklist ticked", {"list": "full" if full else "short"}, about(load))] if items else []
            if items and full:
                self.counted.session[f"start list, {len(items)} points"] += 1
            self.floor.press(LEAD, *lists, draft("machine started", {}, about(load)))
            self.counted.press(load, f"The {load.station} is running: {load.id}")
            return
        self._pass(step.pass_.hand * sum(load.pieces.values()) + step.pass_.unloading)
        if checks := answers_to_checks(self.floor, load, step):
            self.floor.press(LEAD, *checks)
            self.counted.session["first piece"] += 1
        begins = self._begins()[:1]
        self.floor.press(LEAD, draft("load done", {}, about(load)), *begins)
        self.counted.press(load, f"Done, {load.id}, all good." + (f" Start {begins[0]['load']}" if begins else ""))

    def _at_it(self, load: Load) -> None:
        assert load.end_at is not None
        self.clock.moment = load.end_at
        answers = [
            draft("alert answered", {"alert": due.id, "answer": "ended"}, about(load))
            for due in self.floor.ringing("machine end", load.id)
        ]
        self.floor.press(LEAD, draft("unloading started", {}, about(load)), *answers)
        self.counted.press(load, f"I am at it: {load.id}")

    def _begins(self) -> list[Draft]:
        """What the page's button would begin next."""
        return [
            draft("load started", {"pieces": dict(move.pieces)}, run=move.run, load=move.load, operation=move.step)
            for move in self.floor.moves(LEAD)
            if move.code in BEGINS
        ]

    def _in_hand(self) -> Load:
        hands = self.floor.state.people[LEAD].hands
        assert hands is not None
        return load_at(self.floor, *hands)[0]

    def _pass(self, span: timedelta) -> datetime:
        self.clock.moment += span
        return self.clock.moment


class _Never:
    """Chance that gives an id for every press, and otherwise the middle."""

    def __init__(self) -> None:
        self.number = 0

    def getrandbits(self, bits: int) -> int:
        self.number += 1
        return self.number

    def triangular(self, low: float, high: float) -> float:
        return (low + high) / 2


def count() -> Counted:
    """The presses of one board of three trays."""
    return Script().work()


def table(counted: Counted) -> Iterator[str]:
    """The lines to print."""
    steps = list(dict.fromkeys(step for step, _ in counted.a_tray))
    yield "Presses per tray of five, key rails, from the first cut to packed"
    yield "operation    " + "".join(f"{'tray ' + tray:>9}" for tray in counted.trays)
    for step in steps:
        yield f"{step:<13}" + "".join(f"{counted.a_tray[(step, tray)]:9.2f}" for tray in counted.trays)
    yield "all          " + "".join(f"{counted.total(tray):9.2f}" for tray in counted.trays) + f"   goal ≤ {GOAL}"
    said = ", ".join(f"{times} × {what}" for what, times in counted.session.items())
    yield f"Beside it, once a session or after a change: {said}"


def main(verbose: bool = False) -> int:
    """Print the table; 1 if a tray takes more than the goal."""
    counted = count()
    if verbose:
        print("\n".join(counted.said))
    print("\n".join([*table(counted), "", *prompts.table(prompts.evening())]))
    return int(max(counted.total(tray) for tray in counted.trays) > GOAL + 1e-9)
