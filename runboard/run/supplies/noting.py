"""What is said of supplies and cutters is noted with what had been used by then, for what was used since follows from it."""

from collections.abc import Callable, Mapping
from typing import Literal

from runboard.run.fold.draft import Draft, put
from runboard.run.log.event import Event
from runboard.run.supplies.said import NO_PIECES, CutterChange, SupplySaid, word_of
from runboard.run.supplies.spent import spent_by


def counted(draft: Draft, event: Event) -> None:
    """So much is there now, whatever was reckoned before."""
    note(draft, event, "counted", event.get("have"))


def bought(draft: Draft, event: Event) -> None:
    """So much came to what was there."""
    note(draft, event, "bought", event.get("amount"))


def note(draft: Draft, event: Event, what: Literal["counted", "bought", "out", "in"], amount: float = 0.0) -> None:
    """Keep what an event says of its supply."""
    name = event.get("supply")
    word, known = word_of(name), draft.shop("supplies")
    spent = NO_PIECES
    if what in ("counted", "out"):
        spent = spent_by(draft.base.runs.values()).uses.get(word, NO_PIECES)
    said = SupplySaid(what, name, float(amount), event.moment, event.id, event.person, event.run, spent)
    draft.changes["supplies"] = put(known, word, (*known.get(word, ()), said))


def cutter_changed(draft: Draft, event: Event) -> None:
    """A cutter was changed: what it does from now on is counted anew."""
    worn = spent_by(draft.base.runs.values()).worn
    change = CutterChange(event.station, event.get("cutter", ""), event.moment, event.id, worn)
    known = draft.shop("cutters")
    draft.changes["cutters"] = put(known, event.station, (*known.get(event.station, ()), change))


HANDLERS: Mapping[str, Callable[[Draft, Event], None]] = {"supply counted": counted, "supply bought": bought}
