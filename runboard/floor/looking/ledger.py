"""The ledger of changes as a page shows it: all that were adopted, and what a run says of those that nobody judged yet."""

from collections.abc import Iterator
from dataclasses import dataclass

from runboard.floor.changing.adopt import way_back
from runboard.floor.looking.at_hand import book_at, shop_now
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.looking.review import quick_at
from runboard.floor.workshop import Workshop
from runboard.review.changes.believed import as_believed, known_before
from runboard.review.changes.ledger import adopted_of, ledger_of_changes, to_judge
from runboard.review.changes.nouns import Adopted, SeenRun, Verdict
from runboard.review.changes.now import Moved, moved_in
from runboard.review.changes.verdict import judged, seen_run
from runboard.run.fold.adopted import AdoptedChange
from runboard.run.fold.state import RunState
from runboard.shop.book import Book

# Of so many of those that were judged the two runs are set against each other again; of older ones what was found then is said.
MOST_AGAIN = 12


@dataclass(frozen=True)
class InLedger:
    """A line of the ledger. ``run`` is the one that it was adopted after; ``after`` the one that judged it, or the newest one that
    can, with what that says: None where no run can. ``moved`` is what it made another, from what to what. ``back`` is what
    taking it back would do."""

    line: Adopted
    run: RunState | None
    after: RunState | None = None
    verdict: Verdict | None = None
    moved: tuple[Moved, ...] = ()
    back: str = "nothing"


def changes_adopted(workshop: Workshop) -> tuple[Book, list[InLedger]]:
    """The book, and every change that was ever adopted, the newest first."""
    book, state = shop_now(workshop)
    newest: dict[str, RunState] = {}
    for run in sorted(state.runs.values(), key=lambda run: run.opened_at):
        newest |= {line.id: run for line in to_judge(state, run.id)}
    seen: dict[str, SeenRun] = {}

    def found() -> Iterator[InLedger]:
        again = 0
        for line in ledger_of_changes(state):
            before, after = state.runs.get(line.run), newest.get(line.id) or state.runs.get(line.judged_after)
            moved, back = (
                _moved(workshop, state.changes[line.id], before),
                way_back(workshop, state.changes[line.id]).code,
            )
            again += bool(line.verdict)
            if before is None or after is None or again > MOST_AGAIN:
                yield InLedger(line, before, after, None, moved, back)
            else:
                verdict = judged(line, _seen(workshop, before, seen), _seen(workshop, after, seen))
                yield InLedger(line, before, after, verdict, moved, back)

    return book, list(found())


def _moved(workshop: Workshop, known: AdoptedChange, run: RunState | None) -> tuple[Moved, ...]:
    """What a change made another in the book, from the revision before it to its own; its times as they were believed then."""
    if known.did == "noted" or known.revision < 1:
        return ()
    before, after = (book_at(workshop, known.revision - less) for less in (1, 0))
    moved = tuple(moved_in(before, before.product(known.product), after, after.product(known.product)))
    change = adopted_of(known).change
    if run is None or change is None or all(one.what != "time" for one in moved):
        return moved
    return as_believed(run, known_before(estimates_now(workshop), known.at), change, moved)


def _seen(workshop: Workshop, run: RunState, seen: dict[str, SeenRun]) -> SeenRun:
    if run.id not in seen:
        quick = quick_at(workshop, run.id)
        seen[run.id] = seen_run(quick.study, quick.happened, run.opened_at)
    return seen[run.id]
