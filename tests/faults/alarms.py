"""The alarms of a storm: which had to ring, from the log alone; and whether and how late they rang on an open page."""

import json
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import groupby
from statistics import quantiles

from runboard.opening import open_workshop
from runboard.run.calls.dues import dues
from runboard.run.fold.ledger import Ledger
from runboard.run.log.event import parse_moment, write_moment
from tests.faults.storm import Happened

# One that was answered sooner than this, or that the server had less time for, need not have rung.
STOOD = 3.0
# A page that has listened for so long since an alarm was due must have been told.
LISTENED = 6.0
Key = tuple[str, str]


@dataclass(frozen=True)
class Episode:
    """A due moment from when it was stored until it was answered or moved, in seconds of the wall clock."""

    key: Key
    kind: str
    due_at: float
    put_at: float
    gone_at: float

    @property
    def begins(self) -> float:
        return max(self.due_at, self.put_at)


@dataclass(frozen=True)
class Alarms:
    """How the alarms of a storm went. ``late`` are seconds from when it was due, of those through which the server was
    up all the while; ``late_after`` the seconds of a server that was up, where it was also frozen or killed;
    ``told_late`` from when it was due until the stream told it."""

    had_to_ring: int
    never_rang: list[Key]
    told_twice: list[Key]
    not_told_while_listening: list[Key]
    listened_for: int
    late: list[float]
    late_after: list[float]
    told_late: list[float]


def alarms(happened: Happened) -> Alarms:
    """Judge them."""
    heard = json.loads((happened.place / "watcher.json").read_text("utf-8"))
    told = [((key, due_at), at) for key, due_at, at in heard["told"]]
    rang = [((key, due_at), since, until) for key, due_at, since, until in heard["rang"]]
    end = heard["until"]
    found = [one for one in episodes(happened) if one.begins < end - STOOD]
    up = _answering(happened)
    due = [one for one in found if _overlap(up, one.begins, min(one.gone_at, end)) >= STOOD]
    never, deaf, listened_for = list[Key](), list[Key](), 0
    late, late_after, told_late = list[float](), list[float](), list[float]()
    for one in due:
        first = rang_first(one, rang)
        if first is None or first > one.gone_at + STOOD:
            never.append(one.key)
            continue
        waited, clear = lateness(one, first, up)
        (late if clear else late_after).append(waited)
        if any(since < one.begins < until for since, until in _both(heard["listened"], up)):
            told_late += [max(0.0, at - one.begins) for key, at in told if key == one.key and at > one.begins - 0.1][:1]
        stood = one.begins + LISTENED
        if one.gone_at > stood and any(
            since < one.begins and until > stood for since, until in _both(heard["listened"], up)
        ):
            listened_for += 1
            if not any(key == one.key and -0.1 < at - one.begins < LISTENED for key, at in told):
                deaf.append(one.key)
    often = Counter(one.key for one in found)
    twice = [key for key, times in Counter(key for key, _ in told).items() if times > max(1, often[key])]
    return Alarms(len(due), never, twice, deaf, listened_for, late, late_after, told_late)


def episodes(happened: Happened) -> Iterator[Episode]:
    """Every due moment that the server stored, as the log of events says it must have: batch after batch."""
    store, workshop = open_workshop(happened.data)
    rows = store.connections.here().conn.execute("SELECT seq, received_at FROM event ORDER BY seq").fetchall()
    received = {seq: parse_moment(at).timestamp() for seq, at in rows}
    events, book = workshop.log.events(), workshop.books.latest()
    store.close()
    ledger, held = Ledger(book), dict[Key, tuple[str, float, float]]()
    for at, batch in groupby(events, key=lambda event: received[event.seq]):
        for event in batch:
            ledger.keep(ledger.try_event(event), event.seq)
        wanted = {(due.id, write_moment(due.due_at)): due for due in dues(ledger.state, book).values()}
        for key in [key for key in held if key not in wanted]:
            yield Episode(key, *held.pop(key), at)
        for key, due in wanted.items():
            held.setdefault(key, (due.kind, due.due_at.timestamp(), at))
    for key, one in held.items():
        yield Episode(key, *one, float("inf"))


def rang_first(one: Episode, rang: Iterable[tuple[Key, float, float]]) -> float | None:
    """When a page rang for it: at once where it still rang for the same moment, answered and back before the page heard."""
    return min(
        (max(since, one.begins) for key, since, until in rang if key == one.key and until > one.begins), default=None
    )


def lateness(one: Episode, rang_at: float, up: list[tuple[float, float]]) -> tuple[float, bool]:
    """The seconds of a server that was up between when it was due and when it rang, and whether it was up all the while."""
    waited = _overlap(up, one.begins, rang_at)
    return waited, any(since <= one.begins and rang_at <= until for since, until in up)


def row(seconds: list[float]) -> str:
    """'p50 12 ms, p95 …'"""
    if len(seconds) < 2:
        return "".join(f"{1000 * one:.0f} ms" for one in seconds) or "none"
    cuts = quantiles(seconds, n=100, method="inclusive")
    return f"p50 {1000 * cuts[49]:.0f} ms, p95 {1000 * cuts[94]:.0f} ms, max {1000 * max(seconds):.0f} ms"


def _answering(happened: Happened) -> list[tuple[float, float]]:
    """When the server was up and not frozen."""
    found = []
    for since, until in happened.ups:
        for began, ended in happened.frozen:
            if since < began < until:
                found.append((since, began))
                since = ended
        found.append((since, until))
    return found


def _overlap(stretches: list[tuple[float, float]], since: float, until: float) -> float:
    return sum(max(0.0, min(until, end) - max(since, begin)) for begin, end in stretches)


def _both(some: list[list[float]], others: list[tuple[float, float]]) -> list[tuple[float, float]]:
    return [(max(a, c), min(b, d)) for a, b in some for c, d in others if max(a, c) < min(b, d)]
