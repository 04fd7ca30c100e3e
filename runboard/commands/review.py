"""Print what a run took, what held it and what would have helped: as lines, as a record, or as one file."""

import json
import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path
from shutil import get_terminal_size

from runboard.cards.friends_file import friends_file
from runboard.cards.friends_page import review_html, write_review_pdf
from runboard.cards.pdf import NoPango
from runboard.commands.asking import Mistaken, add_folder, broken, check_shop, opened, rewritten_line
from runboard.commands.whole_file import check_out, whole
from runboard.floor.looking.reviews import review_at_once
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.review.essentials import Essentials
from runboard.run.fold.state import RunState
from runboard.shop.book import Person
from runboard.words.review import five_lines
from runboard.words.review_lines import review_lines
from runboard.words.review_record import review_record
from runboard.words.sentences import say

SUFFIXES = (".html", ".pdf")


def add_to(command: ArgumentParser) -> None:
    """What it takes."""
    command.add_argument("run", nargs="?", default="", metavar="RUN", help=say("option", "run-reviewed"))
    add_folder(command)
    command.add_argument("--json", action="store_true", help=say("option", "json"))
    command.add_argument("--out", type=Path, metavar="FILE", help=say("option", "review-file"))


def do(asked: Namespace) -> None:
    """Look back, and print it or write it."""
    check_shop(asked.data)
    if asked.out is not None:
        if asked.out.suffix.lower() not in SUFFIXES:
            raise Mistaken("no review file", file=asked.out)
        check_out(asked.out)
    found, people = look_back(asked.data, asked.run)
    if asked.out is not None:
        write_file(found, people, asked.out)
        print(say("told", "review", {"file": asked.out, "run": found.past.run.name}))
    elif asked.json:
        sys.stdout.write(json.dumps(review_record(found), ensure_ascii=False, indent=2) + "\n")
    else:
        wide = get_terminal_size().columns if sys.stdout.isatty() else 0
        lines = (part for line in review_lines(found) for part in broken(line, wide))
        sys.stdout.write("\n".join(lines) + "\n")


def look_back(data: Path, named: str) -> tuple[Essentials, Sequence[Person]]:
    """The whole review of the run named, else of the one that was finished last, and who is in the book now. Refused for a run
    that there is not."""
    told, clear = rewritten_line(sys.stderr)
    with opened(data) as (store, workshop):
        run = run_looked_at(workshop, named)
        told(say("told", "review weighing"))
        try:
            return review_at_once(workshop, store.settings, run.id), workshop.book.people
        finally:
            clear()


def run_looked_at(workshop: Workshop, named: str) -> RunState:
    """The run named, else the one that was closed last, else the newest."""
    if named:
        return find_run(workshop, named)
    catch_up(workshop)
    runs = workshop.ledger.state.runs.values()
    if not runs:
        raise Mistaken("no run yet")
    return max(runs, key=lambda run: (run.closed_at is not None, run.closed_at or run.opened_at))


def write_file(found: Essentials, people: Sequence[Person], out: Path) -> None:
    """The review as one file, whole or not at all, without anybody's name. ``people`` are those of the book as it is now."""
    file = friends_file(found, lambda essentials: [line.sentence for line in five_lines(essentials)], people=people)
    with whole(out) as part:
        if out.suffix.lower() == ".html":
            part.write_text(review_html(file), encoding="utf-8")
            return
        try:
            write_review_pdf(file, part, lambda done, total: None)
        except NoPango as missing:
            raise Mistaken("no pango", packages=missing.packages) from missing
