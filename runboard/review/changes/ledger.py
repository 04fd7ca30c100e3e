"""The ledger of changes: all that were ever adopted, with what they promised, what was found, and whether they stayed."""

from datetime import timedelta

from runboard.plan.change import Change, change_from_record
from runboard.review.changes.nouns import Adopted, Span3
from runboard.run.fold.adopted import AdoptedChange, Range
from runboard.run.fold.state import RunState, ShopState
from runboard.run.refusal import Refused


def ledger_of_changes(state: ShopState) -> tuple[Adopted, ...]:
    """All of them, the newest first."""
    return tuple(sorted(map(adopted_of, state.changes.values()), key=lambda one: (one.at, one.id), reverse=True))


def adopted_of(known: AdoptedChange) -> Adopted:
    """A change of the log as a line of the ledger."""
    return Adopted(
        known.id, known.run, known.product, _change(known), known.because, span3(known.earlier), span3(known.hands),
        known.cost, known.did, known.person, known.at, known.verdict, None if known.saved is None else span3(known.saved),
        known.judged_at, known.judged_after,
    )  # fmt: skip


def to_judge(state: ShopState, run: str) -> tuple[Adopted, ...]:
    """The changes on which a finished run can give a verdict: of its product, adopted before it was opened, and not judged."""
    after = state.runs.get(run)
    if after is None:
        return ()
    return tuple(adopted_of(known) for known in state.changes.values() if is_after(known, after) and not known.verdict)


def is_after(known: AdoptedChange, run: RunState) -> bool:
    """Whether a run is one that a change was adopted for, and is over."""
    return run.product == known.product and run.opened_at >= known.at and run.state == "finished"


def span3(minutes: Range) -> Span3:
    """Three spans of so many minutes."""
    low, mid, high = (timedelta(minutes=each) for each in minutes)
    return Span3(low, mid, high)


def range_of(found: Span3) -> dict[str, float]:
    """Three spans as an event says them: minutes, to the tenth."""
    said = {"low": found.low, "mid": found.mid, "high": found.high}
    return {name: round(span / timedelta(minutes=1), 1) for name, span in said.items()}


def _change(known: AdoptedChange) -> Change | None:
    try:
        return change_from_record(known.change)
    except Refused:
        return None
