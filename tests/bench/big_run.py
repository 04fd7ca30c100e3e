"""The data of the benchmark: a run of 300 pieces in 50 trays with 5,000 events, and 200 finished runs if wanted."""

from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from runboard.demo.book import LEAD, demo_book
from runboard.floor.changing.runs import Wish, close_run, open_run
from runboard.floor.pressing.taps import take_taps
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.opening import open_workshop
from runboard.run.calls.dues import dues

PIECES, A_TRAY, BOARD = 300, 6, 30
TRAYS = PIECES // A_TRAY
EVENTS = 5_000
FINISHED_RUNS = 200
BATCH = 250
# So far each tray has come, in a run that is half through: to packed, to the laser, cut.
PACKED, SANDED, CUT = 25, 40, 45
STEPS = ("clean", "sand:120", "sand:180", "engrave", "oil", "hooks", "pack")
NEVER_BLIND = 2**50


class Clock:
    """The story's own clock."""

    def __init__(self, moment: datetime) -> None:
        self.moment = moment

    def now(self) -> datetime:
        return self.moment


class Presses:
    """Presses of the lead, a minute apart, sent in batches."""

    def __init__(self, workshop: Workshop, clock: Clock, run: str) -> None:
        self.workshop, self.clock, self.run = workshop, clock, run
        self.taps: list[dict[str, Any]] = []
        self.number = 0

    def press(self, kind: str, body: dict[str, Any] | None = None, **fields: str) -> None:
        self.number += 1
        self.clock.moment += timedelta(seconds=40)
        event = {"id": f"{self.run}-{self.number:06d}", "kind": kind, "at": self.clock.moment.isoformat()}
        common = {"person": LEAD, "run": self.run, "seen": NEVER_BLIND, "body": body or {}}
        self.taps.append({**event, **common, **fields})
        if len(self.taps) >= BATCH:
            self.send()

    def send(self) -> None:
        batch = {"device": "phone-1", "sent_at": self.clock.moment.isoformat(), "taps": self.taps}
        answers = take_taps(self.workshop, batch)["taps"] if self.taps else []
        self.taps = []
        for answer in answers:
            assert answer["answer"] == "accepted" and not answer.get("to_settle"), answer

    def machine(self, load: str) -> None:
        self.press("load started", load=load)
        self.press("machine started", {"minutes": 30}, load=load)
        self.press("watch checked", load=load)
        self.press("unloading started", load=load)
        self.press("load done", load=load)

    def by_hand(self, load: str, times: int) -> None:
        """Taken up, put aside and taken up again, so often, and done."""
        self.press("load started", load=load)
        for _ in range(times):
            self.press("load put aside", load=load)
            self.press("load started", load=load)
        self.press("load done", load=load)


def make_big_run(folder: Path, finished_runs: int = 0) -> str:
    """Fill a data folder; answers the id of the big run, whose log holds exactly ``EVENTS`` events."""
    clock = Clock(datetime.now(UTC).replace(microsecond=0) - timedelta(days=40))
    store, workshop = open_workshop(folder, clock)
    workshop.books.save(_book(clock.moment), clock.moment)
    catch_up(workshop)
    for number in range(finished_runs):
        _finished(workshop, clock, number)
    clock.moment = datetime.now(UTC).replace(microsecond=0) - timedelta(days=3)
    run = open_run(workshop, Wish("rails", _orders(60, 5), pieces_a_tray=A_TRAY, start=PIECES), LEAD)
    assert len(workshop.ledger.state.runs[run].trays) == TRAYS
    _half_way(Presses(workshop, clock, run))
    store.close()
    return run


def _book(now: datetime) -> dict[str, Any]:
    book = demo_book(now, "Europe/Berlin")
    book["products"][0]["operations"][0]["passes"][0]["pieces"] = BOARD
    return book


def _orders(lines: int, pieces: int) -> list[dict[str, Any]]:
    return [
        {"line": str(line), "pieces": pieces, "for": "Mill Lane", "text": str(line)} for line in range(1, lines + 1)
    ]


def _half_way(presses: Presses) -> None:
    """Work the run half through; taking up and putting aside fills the log to its number."""
    for board in range(1, CUT * A_TRAY // BOARD + 1):
        presses.machine(f"cut/{board}")
    for tray in range(1, SANDED + 1):
        for step in STEPS if tray <= PACKED else STEPS[:3]:
            early = {"early": True} if step == "hooks" else None
            if step == "engrave":
                presses.machine(f"{step}/{tray}")
            elif early:
                presses.press("load started", early, load=f"{step}/{tray}")
                presses.press("load done", load=f"{step}/{tray}")
            else:
                presses.by_hand(f"{step}/{tray}", times=9)
    last = CUT * A_TRAY // BOARD + 1
    presses.press("load started", load=f"cut/{last}")
    presses.press("machine started", {"minutes": 90_000}, load=f"cut/{last}")
    while presses.number + 1 < EVENTS:  # the run's opening is one event too
        presses.press("watch checked", load=f"cut/{last}")
    presses.send()
    assert presses.number + 1 == EVENTS, presses.number


def _finished(workshop: Workshop, clock: Clock, number: int) -> None:
    """One tray's run from cut to packed."""
    clock.moment += timedelta(minutes=1)
    run = open_run(workshop, Wish("rails", _orders(3, 2), name=f"Rails {number}", start=5), LEAD)
    presses = Presses(workshop, clock, run)
    presses.machine("cut/1")
    for step in STEPS:
        presses.press("load started", {"early": True}, load=f"{step}/1")
        presses.press("load done", load=f"{step}/1")
    presses.send()
    for due in dues(workshop.ledger.state, workshop.book).values():
        if due.kind.startswith("care ") and due.run == run and due.due_at <= clock.moment:
            presses.press("reminder answered", {"reminder": due.id, "done": "in water, in the lidded can"})
    presses.send()
    clock.moment += timedelta(minutes=1)
    close_run(workshop, run, "run finished", LEAD)
