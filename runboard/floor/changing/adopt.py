"""Changes of a review: adopted in one press for the next run, and judged after it.

What can be written down becomes the product's route or the shop's book, by the same way as every save of the book; the log
notes what it promised. What cannot (a helper) is noted all the same. A change that is dropped is taken back where the book
still has exactly what it made; else whoever drops it is told what to undo.
"""

import copy
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from runboard.floor.changing.products import product_place
from runboard.floor.changing.promised_times import promised_times, taken_back
from runboard.floor.changing.runs import new_event
from runboard.floor.changing.shop_book import Record, book_record, change_book, record_at, save_book
from runboard.floor.looking.review import past_of
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.change import Change, change_record, services_in
from runboard.review.changes.ledger import adopted_of, is_after, range_of
from runboard.review.changes.nouns import Span3, Tried
from runboard.review.changes.now import Made, made_of
from runboard.run.fold.adopted import AdoptedChange
from runboard.run.fold.decide import decide
from runboard.run.fold.state import RunState
from runboard.run.log.event import Event
from runboard.run.refusal import Refused
from runboard.shop.book_json import product_to_json


@dataclass(frozen=True)
class WayBack:
    """What became of what a dropped change had altered. ``code`` is 'undone', 'nothing' (it had altered nothing) or 'by hand':
    the book is another since, so somebody has to put back the ``route`` or ``services`` of it themselves."""

    code: str
    what: str = ""


def adopt_change(
    workshop: Workshop, run: str, tried: Tried, person: str, seen: int | None = None, why: str = ""
) -> AdoptedChange:
    """The change of an idea that was tried on a run holds for the next runs of its product; returns it as the log has it.

    ``why`` is the change in words: what was learned of the times that it alters is overruled by what it promises, with that as
    the reason; without words what was learned goes on to be believed until more is measured.

    ``seen`` is the book's revision that the person had before them: refused 'book outdated' where what the change alters is
    another since. Refused 'run unknown', 'run open' (what a change promises is known once the run is over), 'change adopted',
    'change done' where the shop says all of it already, 'idea not tried', 'product unknown', and as the change itself is where it makes no sense any more; then nothing is stored."""
    with workshop.lock:
        found = _run_that_is_over(workshop, run)
        if tried.refused is not None:
            raise Refused("idea not tried")
        _check_taken(workshop, _adoption(workshop, found, tried, "noted", person))
        made = what_it_makes(workshop, found, tried.idea.change)
        if made.is_done:
            raise Refused("change done")
        _alter(workshop, found, tried.idea.change, made, seen)
        event = _adoption(workshop, found, tried, made.did, person)
        said = promised_times(workshop, found, tried.idea.change, event.id, why, person) if why.strip() else []
        record_events(workshop, [event, *said])
        return workshop.ledger.state.changes[event.id]


def judge_change(
    workshop: Workshop, adopted: str, after: str, verdict: str, person: str, saved: Span3 | None = None
) -> WayBack:
    """Whether an adopted change stays ('kept') or not ('dropped'), as somebody says after the run ``after`` with what was
    ``saved`` of it. Refused 'change unknown', 'change judged', 'change not tried' where that run is none of the product's
    that was opened since and is over."""
    with workshop.lock:
        known = _not_judged_yet(workshop, adopted)
        if not is_after(known, find_run(workshop, after)):
            raise Refused("change not tried")
        said = {} if saved is None else {"saved": range_of(saved)}
        body = {"adopted": adopted, "verdict": verdict, **said}
        event = new_event(workshop, "change judged", body, run=after, person=person, device="server")
        if verdict != "dropped":
            record_events(workshop, [event])
            return WayBack("nothing")
        back = _take_back(workshop, known)
        record_events(workshop, [event, *taken_back(workshop, adopted, person)])
        return back


def take_back_change(workshop: Workshop, adopted: str, person: str) -> None:
    """An adopted change never was, as long as nobody judged it: the book is as before it, and so are the times. Refused 'change
    unknown', 'change judged', and 'change not as made' where the book is another since."""
    with workshop.lock:
        known = _not_judged_yet(workshop, adopted)
        undone = new_event(workshop, "event undone", {"event": adopted}, person=person, device="server")
        _check_taken(workshop, undone)
        if way_back(workshop, known).code == "by hand":
            raise Refused("change not as made")
        _take_back(workshop, known)
        record_events(workshop, [*taken_back(workshop, adopted, person), undone])


def _not_judged_yet(workshop: Workshop, adopted: str) -> AdoptedChange:
    catch_up(workshop)
    known = workshop.ledger.state.changes.get(adopted)
    if known is None:
        raise Refused("change unknown")
    if known.verdict:
        raise Refused("change judged", verdict=known.verdict)
    return known


def way_back(workshop: Workshop, known: AdoptedChange) -> WayBack:
    """What dropping a change would do: it is asked before anybody says so."""
    with workshop.lock:
        catch_up(workshop)
        if known.did == "noted":
            return WayBack("nothing")
        parts = _PARTS[known.did]
        made = _part(record_at(workshop, known.revision), known, parts)
        is_as_made = bool(made) and made == _part(book_record(workshop), known, parts)
        return WayBack("undone" if is_as_made else "by hand", known.did)


# adopting


def _run_that_is_over(workshop: Workshop, run: str) -> RunState:
    catch_up(workshop)
    found = find_run(workshop, run)
    if found.state == "open":
        raise Refused("run open", run=found.name)
    return found


def _adoption(workshop: Workshop, run: RunState, tried: Tried, did: str, person: str) -> Event:
    body: dict[str, Any] = {
        "of": run.product,
        "change": change_record(tried.idea.change),
        "earlier": range_of(tried.earlier),
        "hands": range_of(tried.hands),
        "did": did,
        "revision": workshop.book.revision,
    }
    said = {"cost": tried.idea.cost, "because": tried.idea.because}
    body |= {name: value for name, value in said.items() if value not in (None, "")}
    return new_event(workshop, "change adopted", body, run=run.id, person=person, device="server")


def _check_taken(workshop: Workshop, event: Event) -> None:
    """Refuses what the log would, before the book is another."""
    decide(workshop.ledger, replace(event, seen=workshop.ledger.last_seq))


def what_it_makes(workshop: Workshop, run: RunState, change: Change) -> Made:
    """What a change that was tried on a run makes of the shop as it is now. Refused where it makes no sense any more."""
    with workshop.lock:
        catch_up(workshop)
        return made_of(change, past_of(workshop, run.id).book, run.route.product, workshop.book)


def _alter(workshop: Workshop, run: RunState, change: Change, made: Made, seen: int | None) -> None:
    """Write what a change makes of the shop into the book, where a book can say it."""
    is_shared = bool(services_in(change))

    def about(record: Record) -> object:
        products = [one for one in record["products"] if one["key"] == run.product]
        return products if made.did == "route" else None, record["services"] if is_shared else None

    def altered(record: Record) -> None:
        counts = {service.key: service.capacity for service in made.book.services}
        for service in record["services"]:
            service["capacity"] = counts[service["key"]]
        if made.did == "route" and made.product is not None:
            at = product_place(record, run.product)
            record["products"][at] = product_to_json(made.product)

    if made.did != "noted":
        change_book(workshop, workshop.book.revision if seen is None else seen, altered, about)


# taking back

_PARTS = {"route": ("products", "services"), "book": ("services",)}


def _take_back(workshop: Workshop, known: AdoptedChange) -> WayBack:
    back = way_back(workshop, known)
    if back.code != "undone":
        return back
    before = record_at(workshop, known.revision - 1)
    record = copy.deepcopy(book_record(workshop))
    parts = _PARTS[known.did]
    for name in parts:
        was = {one["key"]: one for one in before[name]}
        mine = {one["key"] for one in _part(record, known, (name,))}
        record[name] = [was.get(one["key"], one) if one["key"] in mine else one for one in record[name]]
    save_book(workshop, record)
    return back


def _part(record: Record, known: AdoptedChange, names: tuple[str, ...]) -> list[Record]:
    return [one for name in names for one in _concerned(record, known, name)]


def _concerned(record: Record, known: AdoptedChange, name: str) -> Iterator[Record]:
    """What of the book a change altered: its product, and the services that it names."""
    if name == "products":
        return (one for one in record[name] if one["key"] == known.product)
    change = adopted_of(known).change
    named = set() if change is None else services_in(change)
    return (one for one in record[name] if one["key"] in named)
