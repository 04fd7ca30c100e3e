"""What the shop changes for its next run, and whether it worked: adopted and judged, each once."""

from collections.abc import Callable, Mapping
from typing import Any

from runboard.run.change import replace
from runboard.run.fold.adopted import AdoptedChange, Range
from runboard.run.fold.draft import Draft, put
from runboard.run.log.event import Event
from runboard.run.refusal import Refused


def adopted(draft: Draft, event: Event) -> None:
    """Refused 'change adopted' where the same one holds already for what the run made."""
    draft.run(event.run)
    known = draft.shop("changes")
    if any(is_same(change, event.get("of"), event.get("change")) for change in known.values()):
        raise Refused("change adopted")
    made = AdoptedChange(
        event.id,
        event.run,
        event.get("of"),
        event.get("change"),
        _range(event.get("earlier")),
        _range(event.get("hands")),
        event.get("did"),
        event.person,
        event.moment,
        event.get("revision", 0),
        event.get("cost"),
        event.get("because", ""),
    )
    draft.changes["changes"] = put(known, made.id, made)


def judged(draft: Draft, event: Event) -> None:
    """Refused 'change unknown', 'change judged'."""
    draft.run(event.run)
    known = draft.shop("changes")
    change: AdoptedChange | None = known.get(event.get("adopted"))
    if change is None:
        raise Refused("change unknown")
    if change.verdict:
        raise Refused("change judged", verdict=change.verdict)
    saved = event.get("saved")
    found = replace(
        change,
        verdict=event.get("verdict"),
        saved=None if saved is None else _range(saved),
        judged_at=event.moment,
        judged_after=event.run,
    )
    draft.changes["changes"] = put(known, change.id, found)


def is_same(change: AdoptedChange, product: str, record: Mapping[str, Any]) -> bool:
    """Whether a change, which was not dropped since, is this one."""
    return change.verdict != "dropped" and change.product == product and dict(change.change) == dict(record)


def _range(said: Mapping[str, Any]) -> Range:
    return float(said["low"]), float(said["mid"]), float(said["high"])


HANDLERS: Mapping[str, Callable[[Draft, Event], None]] = {"change adopted": adopted, "change judged": judged}
