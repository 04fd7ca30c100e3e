"""Which text goes on which piece, once pieces are personal: earliest due first, spoiled ones back in the queue."""

from collections import Counter
from datetime import datetime
from typing import Any

from runboard.run.state import RunState, Tray


def text_queue(run: RunState) -> list[tuple[str, str]]:
    """(order line, text) for every piece that is wanted and stands on no tray yet, earliest due first."""
    placed = Counter(line for tray in run.trays.values() for line, _ in tray.places.values())
    far = datetime.max.replace(tzinfo=run.opened_at.tzinfo)
    queue: list[tuple[str, str]] = []
    for order in sorted(run.orders, key=lambda one: one.due or far):
        queue += [(order.line, order.text)] * max(0, order.pieces - placed[order.line])
    return queue


def places_for(run: RunState, trays: dict[str, int], step_index: int) -> dict[str, list[dict[str, Any]]]:
    """For pieces that become personal at this step: a text for each position that has none yet."""
    personal = run.route.personal_from
    if personal is None or step_index != personal:
        return {}
    queue = iter(text_queue(run))
    found: dict[str, list[dict[str, Any]]] = {}
    for key, pieces in trays.items():
        wanted = _bare_positions(run.trays[key], pieces)
        placed = [{"position": at, "line": line, "text": text} for at, (line, text) in zip(wanted, queue, strict=False)]
        if placed:
            found[key] = placed
    return found


def _bare_positions(tray: Tray, pieces: int) -> list[int]:
    """Positions without a text, so many that each of the pieces has one."""
    missing = pieces - len(tray.places)
    every = range(1, pieces + len(tray.places) + 1)
    return [at for at in every if at not in tray.places][: max(0, missing)]
