"""When the pieces of each order line were there: good pieces go to the earliest due first."""

from collections.abc import Iterator
from datetime import datetime

from runboard.review.happened.nouns import OrderLineDone
from runboard.review.past import Past
from runboard.run.fold.state import OrderLine
from runboard.shop.product import ZERO


def order_lines_of(past: Past) -> tuple[OrderLineDone, ...]:
    """Every order line, the earliest due first."""
    there = _there(past)
    found, wanted = [], 0
    for order in past.run.by_due:
        wanted += order.pieces
        found.append(_line(order, there[wanted - 1] if 0 < wanted <= len(there) else None))
    return tuple(found)


def _line(order: OrderLine, done: datetime | None) -> OrderLineDone:
    late = max(ZERO, done - order.due) if done is not None and order.due is not None else None
    return OrderLineDone(order.line, order.whom, order.text, order.pieces, order.due, done, late)


def _there(past: Past) -> list[datetime]:
    """For each good piece when it, and as many as come before it, were there for good."""
    good = sum(tray.good for tray in past.run.trays.values())
    made, found = 0, list[datetime]()
    for moment, pieces in sorted(_came_good(past), key=lambda one: one[0]):
        made += pieces
        del found[max(0, made) :]
        found += [moment] * (made - len(found))
    # What somebody moved or counted in ways that no moment tells of is there all the same, by the end at the latest.
    return (found + [past.until] * max(0, good - len(found)))[:good]


def _came_good(past: Past) -> Iterator[tuple[datetime, int]]:
    run = past.run
    told = _counted_at(past)
    for tray in run.trays.values():
        route = run.route_of(tray)
        last = route.steps[-1].key
        for load, (good, _) in tray.counts.get(last, {}).items():
            known = run.past.get(load) or run.loads.get(load)
            moment = known.done_at if known is not None else None
            if good:
                yield moment or told.get((tray.id, last)) or past.until, good
    for event in past.events:
        if event.kind == "pieces moved" and event.run == run.id and not event.operation:
            yield event.moment, -event.get("pieces")


def _counted_at(past: Past) -> dict[tuple[str, str], datetime]:
    """When the pieces of a tray were last counted at a step that no load of its own tells of."""
    counted = (event for event in past.events if event.kind == "pieces counted" and event.run == past.run.id)
    return {(event.tray, event.operation): event.moment for event in counted}
