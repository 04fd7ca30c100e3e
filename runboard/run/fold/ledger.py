"""The log folded and kept warm: one event more costs one step, a late one rewinds to the last snapshot before it.

People who press at once are all a little late, so the newest states are all kept; older ones every so often.
"""

from bisect import bisect_left, bisect_right, insort
from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import datetime

from runboard.run.fold.fold import apply
from runboard.run.fold.state import ShopState
from runboard.run.log.corrections import amendments, press_of, voided
from runboard.run.log.event import Event, amended
from runboard.shop.book import Book

SNAPSHOT_EVERY = 64
RECENT = 64
CORRECTIONS = ("event undone", "event amended")


def read_by_the_fold(book: Book) -> tuple[object, ...]:
    """What of the book the fold reads: the time zone for the day, each station's name, room and kind, how often and from
    where it is watched, finishes, and older books for what was judged by them."""
    stations = tuple(
        (station.key, station.name, station.room, station.kind, station.watch_from, station.watch_every)
        for station in book.stations
    )
    return book.time_zone, stations, book.finishes, book.earlier


@dataclass
class Trial:
    """What the ledger would be with one event more. Nothing has changed until it is kept.

    ``before`` is the state at the event's own moment, which a rule is judged by; ``rewound`` how many events were
    folded again.
    """

    event: Event
    state: ShopState
    before: ShopState
    rewound: int = 0
    held: list[Event] | None = None
    from_index: int = 0
    snapshots: list[tuple[int, ShopState]] = field(default_factory=list)


class Ledger:
    """Events that arrived, those that hold in the fold's order, and the state that they make."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self.arrived: dict[str, Event] = {}
        self.held: list[Event] = []
        self.state = ShopState()
        self.last_seq = 0
        self.seq_by_device: dict[str, int] = {}
        self._named: set[str] = set()
        self._snapshots: list[tuple[int, ShopState]] = [(0, ShopState())]

    def load(self, events: list[Event]) -> None:
        """Take many events at once, in whatever order, and fold once."""
        for event in events:
            self._note(event)
        self.refold()

    def joined(self, events: Iterable[Event]) -> "Ledger":
        """Another ledger with these events too; this one stays as it is. Tell it their ``number`` once they are stored."""
        other = Ledger(self.book)
        other.arrived = {**self.arrived, **{event.id: event for event in events}}
        other._named = {known.get("event") for known in other.arrived.values() if known.kind in CORRECTIONS}
        other.last_seq, other.seq_by_device = self.last_seq, dict(self.seq_by_device)
        other.refold()
        return other

    def number(self, event: Event, seq: int) -> None:
        """An event that it holds was stored as arrival ``seq``."""
        self._note(event, seq)

    def refold(self) -> None:
        """Fold everything again."""
        self.held = self._effective()
        self._snapshots = [(0, ShopState())]
        self.state, made = self._fold_from(0, ShopState(), self.held)
        self._snapshots += made

    def take_book(self, book: Book) -> None:
        """The book was saved: fold again only if what the fold reads of it is different now."""
        before, self.book = self.book, book
        if read_by_the_fold(before) != read_by_the_fold(book):
            self.refold()

    def try_event(self, event: Event) -> Trial:
        """What the state would be with ``event``; the ledger itself stays as it is."""
        if event.kind in CORRECTIONS or self._is_corrected(event):
            return self._try_correction(event)
        if not self.held or event.order > self.held[-1].order:
            return Trial(event, apply(self.state, event, self.book), self.state)
        held = list(self.held)
        insort(held, event, key=lambda known: known.order)
        return self._try_order(event, held, bisect_left(held, event.order, key=lambda known: known.order))

    def keep(self, trial: Trial, seq: int) -> None:
        """Make a trial so."""
        event = trial.event
        self._note(event, seq)
        if trial.held is None:
            self.held.append(event)
            self._snapshots.append((len(self.held), trial.state))
        else:
            self.held = trial.held
            self._snapshots = [
                snapshot for snapshot in self._snapshots if snapshot[0] <= trial.from_index
            ] + trial.snapshots
        self.state = trial.state
        # No longer one of the newest: the one before them.
        if len(self._snapshots) > RECENT and self._snapshots[-RECENT - 1][0] % SNAPSHOT_EVERY:
            del self._snapshots[-RECENT - 1]

    def foreign_seq(self, device: str) -> int:
        """The last arrival from any other device."""
        return max((seq for sender, seq in self.seq_by_device.items() if sender != device), default=0)

    def _is_corrected(self, event: Event) -> bool:
        """Whether a correction of this event arrived before it."""
        return event.id in self._named or press_of(event.id) in self._named

    def _note(self, event: Event, seq: int = 0) -> None:
        self.arrived[event.id] = event
        if event.kind in CORRECTIONS:
            self._named.add(event.get("event"))
        seq = seq or event.seq
        self.last_seq = max(self.last_seq, seq)
        self.seq_by_device[event.device] = max(seq, self.seq_by_device.get(event.device, 0))

    def _effective(self, more: Event | None = None) -> list[Event]:
        events = self.arrived if more is None else {**self.arrived, more.id: more}
        void = voided(events)
        changes = amendments(events, void)
        held = [self._amended(event, changes) for event in events.values() if event.id not in void]
        held.sort(key=lambda event: event.order)
        return held

    @staticmethod
    def _amended(event: Event, changes: dict[str, list[Event]]) -> Event:
        for change in changes.get(event.id, ()):
            event = amended(event, change)
        return event

    def _try_correction(self, event: Event) -> Trial:
        held = self._effective(event)
        index = next(
            (at for at, (known, old) in enumerate(zip(held, self.held, strict=False)) if known != old),
            min(len(held), len(self.held)),
        )
        return self._try_order(event, held, index)

    def _try_order(self, event: Event, held: list[Event], index: int) -> Trial:
        start, state = self._snapshot(index)
        before, _ = self._fold_from(start, state, held[:index])
        after, made = self._fold_from(index, before, held)
        return Trial(event, after, before, len(held) - start, held, start, made)

    def _snapshot(self, index: int) -> tuple[int, ShopState]:
        """The last that was kept of the first ``index`` events or fewer."""
        return self._snapshots[bisect_right(self._snapshots, index, key=lambda kept: kept[0]) - 1]

    def _fold_from(
        self, start: int, state: ShopState, held: list[Event]
    ) -> tuple[ShopState, list[tuple[int, ShopState]]]:
        made = []
        for at in range(start, len(held)):
            state = apply(state, held[at], self.book)
            if (at + 1) % SNAPSHOT_EVERY == 0 or at + RECENT >= len(held):
                made.append((at + 1, state))
        return state, made

    def at(self, moment: datetime) -> ShopState:
        """The state as it was at a moment, by what is known now."""
        index = bisect_left(self.held, moment, key=lambda event: event.moment)
        start, state = self._snapshot(index)
        return self._fold_from(start, state, self.held[:index])[0]
