"""Which text goes on which piece, once pieces are personal: earliest due first, spoiled ones back in the queue."""

from collections import Counter
from collections.abc import Mapping
from typing import Any

from runboard.run.fold.state import RunState, Tray


def text_queue(run: RunState) -> list[tuple[str, str]]:
    """(order line, text) for every piece that is wanted and stands on no tray yet, earliest due first."""
    placed = Counter(line for tray in run.trays.values() for line, _ in tray.places.values())
    queue: list[tuple[str, str]] = []
    for order in run.by_due:
        queue += [(order.line, order.text)] * max(0, order.pieces - placed[order.line])
    return queue


def places_for(run: RunState, pieces: Mapping[str, int], key: str) -> dict[str, list[dict[str, Any]]]:
    """For so many pieces of each tray, where they become personal at the step ``key`` of the tray's own route: a text for
    each position that has none yet."""
    queue = iter(text_queue(run))
    found: dict[str, list[dict[str, Any]]] = {}
    for tray_key, count in pieces.items():
        tray = run.trays[tray_key]
        if not _begin_here(run, tray, key):
            continue
        wanted = _bare_positions(tray, _in_hand(run, tray, key), count)
        placed = [{"position": at, "line": line, "text": text} for at, (line, text) in zip(wanted, queue, strict=False)]
        if placed:
            found[tray_key] = placed
    return found


def texts_at(tray: Tray) -> dict[int, str]:
    """The text at each position of a tray, by position; where an order line has no text, the line's name."""
    return {at: text or line for at, (line, text) in sorted(tray.places.items())}


def _begin_here(run: RunState, tray: Tray, key: str) -> bool:
    """Whether pieces of a tray become personal at this step."""
    route = run.route_of(tray)
    return route.personal_from is not None and route.steps[route.personal_from].key == key


def _in_hand(run: RunState, tray: Tray, key: str) -> int:
    """How many positions with a text have their piece still before the end of the step: the others went on with theirs."""
    route = run.route_of(tray)
    here = route.by_key[key].index
    gone_on = tray.good + sum(count for at, count in tray.at.items() if (step := route.step(at)) and step.index > here)
    return max(0, len(tray.places) - gone_on)


def _bare_positions(tray: Tray, in_hand: int, pieces: int) -> list[int]:
    """Positions without a text, so many that each of the pieces has one."""
    missing = max(0, pieces - in_hand)
    every = range(1, missing + len(tray.places) + 1)
    return [at for at in every if at not in tray.places][:missing]
