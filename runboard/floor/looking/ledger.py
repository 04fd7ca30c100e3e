"""The ledger of changes as a page shows it: all that were adopted, and what a run says of those that nobody judged yet."""

from collections.abc import Iterator
from dataclasses import dataclass

from runboard.floor.looking.at_hand import shop_now
from runboard.floor.looking.review import past_of
from runboard.floor.workshop import Workshop
from runboard.review.changes.ledger import ledger_of_changes, to_judge
from runboard.review.changes.nouns import Adopted, SeenRun, Verdict
from runboard.review.changes.verdict import judged, seen_run
from runboard.review.essentials import essentials_of
from runboard.run.fold.state import RunState
from runboard.shop.book import Book


@dataclass(frozen=True)
class InLedger:
    """A line of the ledger. ``run`` is the one that it was adopted after; ``after`` the newest one that can judge it, with what
    that says: None where it is judged already, or no run can."""

    line: Adopted
    run: RunState | None
    after: RunState | None = None
    verdict: Verdict | None = None


def changes_adopted(workshop: Workshop) -> tuple[Book, list[InLedger]]:
    """The book, and every change that was ever adopted, the newest first."""
    book, state = shop_now(workshop)
    newest: dict[str, RunState] = {}
    for run in sorted(state.runs.values(), key=lambda run: run.opened_at):
        newest |= {line.id: run for line in to_judge(state, run.id)}
    seen: dict[str, SeenRun] = {}

    def found() -> Iterator[InLedger]:
        for line in ledger_of_changes(state):
            before, after = state.runs.get(line.run), newest.get(line.id)
            if before is None or after is None:
                yield InLedger(line, before)
            else:
                verdict = judged(line, _seen(workshop, before, seen), _seen(workshop, after, seen))
                yield InLedger(line, before, after, verdict)

    return book, list(found())


def _seen(workshop: Workshop, run: RunState, seen: dict[str, SeenRun]) -> SeenRun:
    if run.id not in seen:
        quick = essentials_of(past_of(workshop, run.id))
        seen[run.id] = seen_run(quick.study, quick.happened)
    return seen[run.id]
