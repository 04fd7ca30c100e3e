"""What somebody said that kept work off for a time: a station out of use, a supply out, pieces held, a first piece failed."""

from collections.abc import Callable, Hashable, Iterable, Mapping
from datetime import datetime

from runboard.review.happened.tiles import Spans
from runboard.run.log.event import Event

_KINDS = frozenset(
    (
        "station out of use", "station back in use", "supply out", "supply in", "pieces held", "pieces released",
        "first piece checked", "first piece decided", "load stopped", "stop settled", "board added", "pieces moved",
    )
)  # fmt: skip
Kept = Mapping[Hashable, Spans]


class Said:
    """For each thing that was kept off when it was, until ``closes`` where nobody took it back. ``came`` is when each tray
    (run, tray) came that was not there at the opening."""

    def __init__(self, events: Iterable[Event], closes: datetime) -> None:
        told = [event for event in events if event.kind in _KINDS]
        self.outs = _kept(told, closes, "station out of use", "station back in use", lambda event: event.station)
        self.supplies = _kept(told, closes, "supply out", "supply in", lambda event: (event.run, event.get("supply")))
        self.held = _kept(told, closes, "pieces held", "pieces released", lambda event: (event.run, event.tray))
        failed = [event for event in told if event.kind != "first piece checked" or event.get("result") == "fail"]
        self.failed = _kept(
            failed, closes, "first piece checked", "first piece decided", lambda event: (event.run, event.operation)
        )
        self.stopped = _kept(told, closes, "load stopped", "stop settled", lambda event: (event.run, event.load))
        self.came: dict[tuple[str, str], datetime] = {}
        for event in told:
            trays = {"board added": event.get("pieces"), "pieces moved": (event.get("to"),)}.get(event.kind) or ()
            for tray in trays:
                self.came.setdefault((event.run, tray), event.moment)


def _kept(
    events: Iterable[Event], closes: datetime, begins: str, ends: str, about: Callable[[Event], Hashable]
) -> Kept:
    found: dict[Hashable, list[tuple[datetime, datetime]]] = {}
    since: dict[Hashable, datetime] = {}
    for event in events:
        if event.kind == begins:
            since.setdefault(about(event), event.moment)
        elif event.kind == ends and (key := about(event)) in since:
            found.setdefault(key, []).append((since.pop(key), event.moment))
    for key, moment in since.items():
        found.setdefault(key, []).append((moment, closes))
    return {key: Spans(spans) for key, spans in found.items()}
