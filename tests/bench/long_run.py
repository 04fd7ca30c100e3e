"""The data of ``bench pages``: one open run of so many pieces, the first boards through, others on their way, with order
lines that are due day after day."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from runboard.demo.book import LEAD, demo_book
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.warm import catch_up
from runboard.opening import open_workshop
from tests.bench.big_run import STEPS, Clock, Presses

BOARD_TRAYS = 3
LINE = 10
# One board in so many is packed, as many more are sanded; the machine has one of those after them.
SHARE = 10
DRYING = STEPS.index("hooks")


def make_long_run(folder: Path, pieces: int) -> str:
    """Fill a data folder; answers the id of the run, which begins exactly so many pieces. One board is on the CNC, tray
    ``in_hand(pieces)`` is cut, and one tray's oil dries."""
    clock = Clock(datetime.now(UTC).replace(microsecond=0) - timedelta(days=2))
    store, workshop = open_workshop(folder, clock)
    workshop.books.save(demo_book(datetime.now(UTC), "Europe/Berlin"), clock.moment)
    catch_up(workshop)
    run = open_run(workshop, Wish("rails", list(_orders(pieces, clock.moment)), start=pieces), LEAD)
    presses, boards = Presses(workshop, clock, run), boards_packed(pieces)
    for board in range(1, 2 * boards + 1):
        presses.machine(f"cut/{board}")
        for tray in trays_of(board):
            _work(presses, tray, STEPS if board <= boards else STEPS[:3])
    presses.machine(f"cut/{2 * boards + 1}")
    clock.moment = datetime.now(UTC) - timedelta(minutes=2)
    _work(presses, trays_of(boards + 1)[0], STEPS[3:DRYING])
    presses.press("load started", load=on_machine(pieces))
    presses.press("machine started", {"minutes": 600}, load=on_machine(pieces))
    presses.send()
    store.close()
    return run


def boards_packed(pieces: int) -> int:
    """How many boards are through."""
    return max(1, pieces // (BOARD_TRAYS * 5) // SHARE)


def trays_of(board: int) -> list[int]:
    """The trays that a board feeds."""
    return [BOARD_TRAYS * (board - 1) + at for at in range(1, BOARD_TRAYS + 1)]


def in_hand(pieces: int) -> int:
    """A tray that is cut and not cleaned up."""
    return trays_of(2 * boards_packed(pieces) + 1)[0]


def on_machine(pieces: int) -> str:
    """The load that the CNC runs."""
    return f"cut/{2 * boards_packed(pieces) + 2}"


def drying(pieces: int) -> int:
    """The tray whose oil dries."""
    return trays_of(boards_packed(pieces) + 1)[0]


def _work(presses: Presses, tray: int, steps: tuple[str, ...]) -> None:
    for step in steps:
        presses.press("load started", {"early": True} if step == "hooks" else None, load=f"{step}/{tray}")
        if step == "engrave":
            presses.press("machine started", {"minutes": 14}, load=f"{step}/{tray}")
            presses.press("unloading started", load=f"{step}/{tray}")
        presses.press("load done", load=f"{step}/{tray}")


def _orders(pieces: int, now: datetime) -> Iterator[dict[str, Any]]:
    """Nine tenths of the pieces are wanted, ten for each; every other line is due, one a day."""
    for line in range(1, pieces * 9 // 10 // LINE + 1):
        order = {"line": str(line), "pieces": LINE, "for": "Mill Lane", "text": str(line)}
        due = now + timedelta(days=6 + line)
        yield order | ({"due": due.isoformat()} if line % 2 else {})
