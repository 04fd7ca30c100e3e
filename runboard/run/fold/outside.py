"""What of a shop is no affair of one run: compared before and after that run's file is taken in."""

from collections.abc import Iterator, Mapping
from typing import Any

from runboard.run.calls.dues import Due, dues
from runboard.run.fold.state import PersonState, ShopState, StationState
from runboard.shop.book import Book

Differs = tuple[str, str]


def first_difference(before: ShopState, after: ShopState, book: Book, run: str) -> Differs | None:
    """(what, its name) of the first thing outside of ``run`` that is another one ``after``: 'run', 'station', 'person',
    'press' (one to settle), 'due', 'other'. None where the run alone has changed.

    A station that was free and hands that were free may be the run's now: its loads are where they were left.
    """
    return next(_differences(before, after, book, run), None)


def _differences(before: ShopState, after: ShopState, book: Book, run: str) -> Iterator[Differs]:
    for key in before.runs.keys() | after.runs.keys():
        if key != run and before.runs.get(key) != after.runs.get(key):
            yield "run", before.runs[key].name if key in before.runs else key
    for key in before.stations.keys() | after.stations.keys():
        if _station(before, key, run) != _station(after, key, run) or _was_taken(before, after, key, run):
            station = book.station(key)
            yield "station", station.name if station else key
    for key in before.people.keys() | after.people.keys():
        if _person(before, key, run) != _person(after, key, run) or _was_called_over(before, after, key, run):
            person = book.person(key)
            yield "person", person.name if person else key
    if _entries(before, run) != _entries(after, run):
        yield "press", ""
    if not _same_dues(dues(before, book), dues(after, book), run):
        yield "due", ""
    if _rest(before, run) != _rest(after, run):
        yield "other", ""


def _station(state: ShopState, key: str, run: str) -> tuple[Any, ...]:
    station = state.stations.get(key) or StationState(key)
    return station.out, station.signal, None if station.load and station.load[0] == run else station.load


def _was_taken(before: ShopState, after: ShopState, key: str, run: str) -> bool:
    here, there = before.stations.get(key), after.stations.get(key)
    return bool(here and here.load and here.load[0] != run and there and there.load != here.load)


def _person(state: ShopState, key: str, run: str) -> tuple[Any, ...]:
    person = state.people.get(key) or PersonState(key)
    hands = None if person.hands and person.hands[0] == run else person.hands
    return person.came_at, person.until, person.away, person.name, person.shown, person.declined, hands


def _was_called_over(before: ShopState, after: ShopState, key: str, run: str) -> bool:
    here, there = before.people.get(key), after.people.get(key)
    return bool(here and here.hands and here.hands[0] != run and there and there.hands != here.hands)


def _entries(state: ShopState, run: str) -> set[str]:
    return {key for key, entry in state.unsettled.items() if entry.run != run}


def _rest(state: ShopState, run: str) -> tuple[Any, ...]:
    # Changes of cutters are left out: a run in whose time one was changed says so by a stand-in, and is taken in all the same.
    kept = state.asks, state.jobs_done, state.changes, state.overruled, _supplies(state, run)
    return *kept, _others(state, run)


def _supplies(state: ShopState, run: str) -> Mapping[str, Any]:
    """What was said of supplies, but by the run's own steps that waited for one; what pieces had used by then is derived."""
    said = {
        word: [(one.what, one.amount, one.at, one.event) for one in some if one.run != run]
        for word, some in state.supplies.items()
    }
    return {word: some for word, some in said.items() if some}


def _others(state: ShopState, run: str) -> Mapping[str, Any]:
    said = {key: load for key, load in state.said_running.items() if load.run != run}
    return {**said, **{key: call for key, call in state.calls.items() if call["run"] != run}}


def _same_dues(before: Mapping[str, Due], after: Mapping[str, Due], run: str) -> bool:
    """The same is due at the same time. What is asked about care may be named by a press of the run, but is still asked."""
    here = {_named(due): due.due_at for due in before.values() if due.run != run}
    there = {_named(due): due.due_at for due in after.values()}
    fresh = {_named(due) for due in after.values() if due.run != run}
    still = all(
        there.get(name) == due_at or (name.startswith("care ") and name in there) for name, due_at in here.items()
    )
    return still and fresh <= here.keys()


def _named(due: Due) -> str:
    return due.id.rpartition("|")[0] if due.kind.startswith("care ") else due.id
