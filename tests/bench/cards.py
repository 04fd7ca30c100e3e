"""How long cards take, beside bare WeasyPrint on the very same pages in the same run, and what they hold in memory.

Each sample is a process of its own, so that its peak of memory is its own; both sides take turns, and the middle one of
each is told.
"""

import json
import os
import platform
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass, replace
from pathlib import Path
from statistics import median

from runboard.cards.layout import sheets
from runboard.cards.model import CardOrder
from runboard.cards.page import page_html
from tests.cards.making import order, rails_book, run_of

SMALL, LARGE = 60, 200
GOAL = 1.2
FLAT = 1.1  # a card of many may cost so much more than a card of few


@dataclass(frozen=True)
class Sample:
    """Seconds of this process's work from the order to the PDF on disk (what else runs here does not count), the process's peak of memory in MB, and the size of the PDF in KB."""

    seconds: float
    peak: float
    size: float


def main(quick: bool = False) -> int:
    """Measure everything and print it; 1 where a goal is not met."""
    times = 1 if quick else 3
    print(f"{platform.machine()}, {os.cpu_count()} cores, Python {platform.python_version()}; the middle of {times}")
    print(f"{'':<42}{'ours':>9}    {'bare':>9}{'ratio':>8}  goal")
    ratios, each = [], []
    for cards in (SMALL, LARGE):
        ours, bare = in_turns(cards, times)
        ratios.append(ours.seconds / bare.seconds)
        each.append(ours.seconds / cards)
        met = "met" if ratios[-1] <= GOAL else "NOT MET"
        print(
            f"{cards} cards, 4 to an A4 page{'':<16}{ours.seconds:9.2f} s  {bare.seconds:9.2f}{ratios[-1]:7.2f}×  ≤ {GOAL}× {met}"
        )
        print(f"{'    peak of memory':<42}{ours.peak:9.0f} MB {bare.peak:9.0f}{ours.peak / bare.peak:7.2f}×")
        print(f"{'    size of the PDF':<42}{ours.size:9.0f} KB {bare.size:9.0f}")
        print(f"{'    a card':<42}{1000 * each[-1]:9.1f} ms", flush=True)
    flat = each[1] / each[0]
    print(
        f"{'a card of 200 against a card of 60':<42}{flat:9.2f} ×{'':<20}≤ {FLAT}× {'met' if flat <= FLAT else 'NOT MET'}"
    )
    return int(max(ratios) > GOAL or flat > FLAT)


def in_turns(cards: int, times: int) -> tuple[Sample, Sample]:
    """The middle sample of ours and of bare WeasyPrint."""
    taken: dict[str, list[Sample]] = {"ours": [], "bare": []}
    for _ in range(times):
        for side, found in taken.items():
            found.append(in_a_process(side, cards))
    return middle(taken["ours"]), middle(taken["bare"])


def middle(samples: list[Sample]) -> Sample:
    return Sample(*(median(getattr(one, name) for one in samples) for name in ("seconds", "peak", "size")))


def in_a_process(side: str, cards: int) -> Sample:
    said = subprocess.run(
        [sys.executable, "-m", "tests.bench.cards", side, str(cards)], capture_output=True, text=True, check=True
    )
    return Sample(*json.loads(said.stdout))


def measure(side: str, cards: int) -> Sample:
    """One sample in this process. WeasyPrint is loaded before the clock starts, for both."""
    import weasyprint

    from runboard.cards.pdf import write_pdf

    book = rails_book()
    run = run_of(book.products[0], trays=cards)
    with tempfile.TemporaryDirectory(prefix="runboard-bench-") as place:
        out = Path(place) / "cards.pdf"
        html = page_html(first_cards(order(book, run, "a4"), cards)) if side == "bare" else ""
        began = time.process_time()
        if side == "ours":
            write_pdf(first_cards(order(book, run, "a4"), cards), out, lambda done, total: None)
        else:
            weasyprint.HTML(string=html).write_pdf(out)
        return Sample(time.process_time() - began, peak_mb(), out.stat().st_size / 1000)


def first_cards(whole: CardOrder, cards: int) -> CardOrder:
    """As many trays of an order as make that many printed cards."""
    a_tray = sum(len(sheet.faces) for sheet in sheets(replace(whole, cards=whole.cards[:1])))
    return replace(whole, cards=whole.cards[: -(-cards // a_tray)])


def peak_mb() -> float:
    """The largest memory that this process has had."""
    status = Path("/proc/self/status").read_text("ascii")
    return int(next(line for line in status.splitlines() if line.startswith("VmHWM")).split()[1]) / 1000


if __name__ == "__main__":
    made = measure(sys.argv[1], int(sys.argv[2]))
    print(json.dumps([made.seconds, made.peak, made.size]))
