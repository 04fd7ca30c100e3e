"""What a storm left: whether every press is there once, whether everybody sees what the log says, how late alarms rang."""

import json
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from random import Random
from typing import Any

from runboard.opening import open_workshop
from runboard.run.calls.dues import dues
from runboard.run.fold.fold import fold
from runboard.run.fold.ledger import Ledger
from runboard.run.fold.record import Cache, people_record, plain, run_text, stations_record, unsettled_record
from runboard.run.fold.shown import newest
from runboard.run.fold.state import ShopState
from runboard.run.log.event import Event
from runboard.shop.book import Book
from runboard.store.events import MOST_REFUSED_OF_ONE
from tests.core.pressing import conserved
from tests.faults.alarms import Alarms, alarms, row
from tests.faults.storm import Happened


@dataclass
class Report:
    """The findings. ``wrong`` has a sentence for each thing that must not be."""

    happened: Happened
    made: int = 0
    accepted: int = 0
    refused: int = 0
    to_settle: int = 0
    events: int = 0
    lost: int = 0
    twice: int = 0
    views_that_differ: int = 0
    unsettled: int = 0
    network: Counter[str] = field(default_factory=Counter)
    offset_errors: list[float] = field(default_factory=list)
    alarms: Alarms | None = None
    wrong: list[str] = field(default_factory=list)

    def must(self, holds: bool, sentence: str) -> None:
        if not holds:
            self.wrong.append(sentence)

    def lines(self) -> Iterator[str]:
        """The table."""
        happened, wanted, rung = self.happened, self.happened.wanted, self.alarms
        yield (
            f"{wanted.phones} phones, {self.made:,} presses' events in {happened.seconds:.0f} s; server killed "
            f"{happened.kills} times, frozen {len(happened.frozen)} times; seed {wanted.seed}"
        )
        yield f"  answered: accepted {self.accepted:,} (to settle {self.to_settle:,}), refused {self.refused:,}"
        faults = ("went offline", "cut off", "half sent", "twice at once", "reordered", "sent again", "timed out")
        yield "  network: " + ", ".join(f"{name} {self.network[name]:,}" for name in (*faults, "nobody answered"))
        yield f"  the phones' clocks, off by up to 10 min, corrected to {max(self.offset_errors, default=0):.0f} ms"
        yield f"presses lost                      {self.lost:>6}   goal 0"
        yield f"presses counted twice             {self.twice:>6}   goal 0"
        yield f"phones that see another shop      {self.views_that_differ:>6}   goal 0   ({self.unsettled} to settle)"
        if rung is not None:
            yield f"alarms that had to ring           {rung.had_to_ring:>6}"
            yield f"  never rang                      {len(rung.never_rang):>6}   goal 0"
            yield f"  told twice by the stream        {len(rung.told_twice):>6}   goal 0"
            missed = len(rung.not_told_while_listening)
            yield f"  not told while a page listened  {missed:>6}   goal 0   (of {rung.listened_for})"
            yield f"  rang late, the server being up all the while: {row(rung.late)}"
            yield f"  rang late, a freeze or a kill between, in seconds of a server that was up: {row(rung.late_after)}"
            yield f"  told late by the stream, the server being up: {row(rung.told_late)}"
        yield from (f"WRONG: {sentence}" for sentence in self.wrong)


def report(happened: Happened) -> Report:
    """Judge a storm by what lies in its folder."""
    found = Report(happened)
    said = [json.loads(path.read_text("utf-8")) for path in sorted(happened.place.glob("phone-*.json"))]
    found.must(len(said) == happened.wanted.phones, "a phone did not come to its end")
    found.must(all(code == 0 for code in happened.exits), f"processes ended with {happened.exits}")
    found.must(happened.pressed >= happened.wanted.presses, f"only {happened.pressed} were pressed in time")
    found.must(happened.kills == happened.wanted.kills, f"the server was killed {happened.kills} times only")
    store, workshop = open_workshop(happened.data)
    try:
        events, book = workshop.log.events(), workshop.books.latest()
        refused = {row[0] for row in store.connections.here().conn.execute("SELECT id FROM refused")}
        with workshop.log.write() as write:
            held = write.dues_held()
    finally:
        store.close()
    state = fold(book, events)
    _presses(found, said, events, refused)
    _views(found, said, state, book)
    rebuilt = {key: due.due_at for key, due in dues(state, book).items()}
    found.must(rebuilt == held, "the stored due moments are not those of the fold")
    found.must(all(conserved(run) for run in state.runs.values()), "pieces came or went")
    _any_order(found, events, state, book)
    found.alarms = alarms(happened)
    found.must(not found.alarms.never_rang, f"alarms never rang: {found.alarms.never_rang[:5]}")
    found.must(not found.alarms.told_twice, f"alarms were told twice: {found.alarms.told_twice[:5]}")
    deaf = found.alarms.not_told_while_listening
    found.must(not deaf, f"the stream kept alarms back: {deaf[:5]}")
    tracebacks = [line for line in happened.said if "Traceback" in line]
    found.must(not tracebacks, "the server printed tracebacks:\n" + "".join(happened.said)[-2000:])
    return found


def _presses(found: Report, said: list[dict[str, Any]], events: list[Event], refused: set[str]) -> None:
    made = {key for phone in said for key in phone["made"]}
    taken = Counter(event.id for event in events if event.device != "server")
    answers: dict[str, dict[str, int]] = {}
    for phone in said:
        answers |= phone["answers"]
        found.network += Counter(phone["network"])
        found.to_settle += phone["network"].get("to settle", 0)
        found.offset_errors.append(abs(phone["offset_error_ms"]))
        found.must(not phone["left"], f"a phone still holds {len(phone['left'])} presses")
    if len(refused) >= MOST_REFUSED_OF_ONE:  # the oldest are stored no more; their phones have the answer
        refused = refused | {key for key, one in answers.items() if "refused" in one and key not in taken}
    found.made, found.events = len(made), len(events)
    found.accepted, found.refused = len(made & taken.keys()), len(made & refused)
    found.lost = len(made - taken.keys() - refused) + len(made - answers.keys())
    counted = sum(times > 1 for times in taken.values()) + len(taken.keys() & refused)
    found.twice = counted + sum(one.get("accepted", 0) > 1 for one in answers.values())
    wrongly = [
        key
        for key, one in answers.items()
        if (key in refused) != ("refused" in one) or (key in taken) == ("refused" in one)
    ]
    found.must(found.lost == 0, "presses were lost")
    found.must(found.twice == 0, "presses were counted twice")
    found.must(not wrongly, f"answers do not fit what is stored: {wrongly[:5]}")
    failed = {name: times for name, times in found.network.items() if name.startswith("status 5")}
    found.must(not failed, f"the server failed: {failed}")


def _views(found: Report, said: list[dict[str, Any]], state: ShopState, book: Book) -> None:
    wanted = _as_seen(state, book)
    found.unsettled = len(state.unsettled)
    for number, phone in enumerate(said):
        differing = [name for name, one in wanted.items() if phone["view"].get(name) != one]
        if phone["view"].get("dues") is not None:
            shown = {due["id"]: due["due_at"] for due in phone["view"]["dues"]}
            if shown != {key: plain(due.due_at) for key, due in dues(state, book).items()}:
                differing.append("dues")
        if differing:
            found.views_that_differ += 1
            found.wrong.append(f"phone {number} sees other {', '.join(differing)} than the log says")


def _as_seen(state: ShopState, book: Book) -> dict[str, Any]:
    cache = Cache()
    return {
        "runs": {one.id: json.loads(run_text(one, cache, book)) for one in state.runs.values() if one.state == "open"},
        "people": people_record(state, book),
        "stations": json.loads(json.dumps(stations_record(state, book))),
        "unsettled": [unsettled_record(entry) for entry in newest(state.unsettled).values()],
        "asks": plain(state.asks),
    }


def _any_order(found: Report, events: list[Event], state: ShopState, book: Book) -> None:
    shuffled = list(events)
    Random(len(events)).shuffle(shuffled)
    other = Ledger(book)
    other.load(shuffled)
    found.must(other.state == state, "the same events in another order of arrival make another state")
