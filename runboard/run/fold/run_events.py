"""What happens to a run as a whole: opened, closed, its orders, route, boards, supplies, first pieces."""

from collections.abc import Callable, Mapping
from typing import Any

from runboard.run.care.care import reminders
from runboard.run.change import replace
from runboard.run.fold.draft import Draft, open_run, put, without
from runboard.run.fold.hands import end_spans, leave_station, unhand
from runboard.run.fold.moves_of_pieces import follow_route
from runboard.run.fold.pieces import shift
from runboard.run.fold.route import Route
from runboard.run.fold.state import EMPTY, OrderLine, Passed, Revision, RunState, Ticked, Tray
from runboard.run.log.event import Event, parse_moment
from runboard.run.refusal import Refused
from runboard.run.rules.resting import revised
from runboard.run.supplies.noting import note
from runboard.shop.book_json import BookError, product_from_json
from runboard.shop.hours import local_day
from runboard.shop.product import Product


def orders_from(records: Any) -> tuple[OrderLine, ...]:
    """Order lines from their JSON."""
    return tuple(
        OrderLine(
            order["line"],
            order["pieces"],
            order.get("for", ""),
            order.get("text", ""),
            parse_moment(order["due"]) if order.get("due") else None,
        )
        for order in records
    )


def _product(event: Event) -> Product:
    """The product that an event embeds."""
    try:
        product = product_from_json(event.get("product"))
    except BookError as error:
        raise Refused("product wrong", problems=error.facts["problems"]) from None
    if not product.operations:
        raise Refused("route empty", product=product.name)
    return product


def opened(draft: Draft, event: Event) -> None:
    if event.run in draft.base.runs:
        raise Refused("run known", run=event.run)
    product = _product(event)
    route = Route(product)
    trays = {}
    first = route.steps[0].key
    for tray in event.get("trays"):
        at = tray.get("at") or first
        if route.step(at) is None:
            raise Refused("step unknown", step=at, tray=tray["tray"])
        wood = tray.get("wood") or event.get("wood", "")
        trays[tray["tray"]] = shift(Tray(tray["tray"], tray["pieces"], wood=wood), at, tray["pieces"])
    boards = {key: dict(pieces) for key, pieces in (event.get("boards") or {}).items()}
    trays = _on_boards(trays, boards)
    draft.put_run(
        RunState(
            event.run,
            event.get("name"),
            "open",
            event.moment,
            product.key,
            product.name,
            (Revision(1, next(iter(trays), ""), route),),
            orders=orders_from(event.get("orders")),
            wood=event.get("wood", ""),
            certainty=event.get("certainty", 0.9),
            good_rate=event.get("good_rate", 1.0),
            good_rate_from=event.get("good_rate_from", ""),
            trays=trays,
            boards=boards,
        )
    )


def _on_boards(trays: dict[str, Tray], boards: Mapping[str, Mapping[str, int]]) -> dict[str, Tray]:
    on = {tray: board.split("/")[-1] for board, pieces in boards.items() for tray in pieces}
    return {key: replace(tray, board=on.get(key, "")) for key, tray in trays.items()}


def closed(draft: Draft, event: Event) -> None:
    """Finished or abandoned."""
    run = open_run(draft, event)
    if event.v > 1:
        _may_end(draft, event, run)
    _let_go(draft, event)
    state = event.kind.removeprefix("run ")
    draft.put_run(replace(draft.run(event.run), state=state, closed_at=event.moment))


def _may_end(draft: Draft, event: Event, run: RunState) -> None:
    """A run ends only when nothing of it runs, is in hands or is asked about."""
    said = [load for load in draft.base.said_running.values() if load.run == run.id]
    for load in (*draft.open_loads(run.id), *said):
        name = draft.station_name(load.station)
        if load.state == "running":
            raise Refused("machine runs", station=name, trays=list(load.pieces))
        if load.people:
            raise Refused("load in hands", station=name, trays=list(load.pieces))
    for tray in run.trays.values():
        for key, rest in tray.rests.items():
            if rest.latest_at is not None and rest.ended_at is None and tray.at:
                step = run.route_at(rest.revision or tray.revision).step_name(key)
                raise Refused("wait open", tray=tray.id, step=step, why=rest.why)
    for reminder, _, due_at, entry in reminders(draft.base, draft.book):
        if entry["run"] == run.id and due_at <= event.moment:
            raise Refused("care open", reminder=reminder)


def _let_go(draft: Draft, event: Event) -> None:
    """A run that ends leaves no load on a station and no hands at one."""
    for load in draft.open_loads(event.run):
        for person in load.people:
            unhand(draft, person, load)
        leave_station(draft, load)
        over = end_spans(load, event.moment, measured=False)
        draft.put_load(replace(over, state="off", people=(), done_at=event.moment))
        for tray in load.pieces:
            held = draft.tray(event.run, tray)
            draft.put_tray(event.run, replace(held, busy=without(held.busy, load.step)))


def orders_changed(draft: Draft, event: Event) -> None:
    draft.put_run(replace(open_run(draft, event), orders=orders_from(event.get("orders"))))


def order_ticked(draft: Draft, event: Event) -> None:
    """Packed, collected, paid: pieces are fetched and paid for after the run is over too."""
    run, line, tick = draft.run(event.run), event.get("line"), event.get("tick")
    if all(order.line != line for order in run.orders):
        raise Refused("line unknown", line=line, run=run.name)
    ticks = run.ticks.get(line, EMPTY)
    held, new = ticks.get(tick), Ticked(event.person, event.moment, event.get("pieces", 0))
    if not event.get("on"):
        draft.put_run(replace(run, ticks=put(run.ticks, line, without(ticks, tick))))
    elif held is None or held.pieces not in (0, new.pieces):
        draft.put_run(replace(run, ticks=put(run.ticks, line, put(ticks, tick, new))))


def route_revised(draft: Draft, event: Event) -> None:
    """The new route holds from a tray on, for operations not begun; what would strand pieces, or have them do again what
    they have done, is refused."""
    run = open_run(draft, event)
    route = Route(_product(event))
    keys = list(run.trays)
    if event.get("from_tray") not in keys:
        raise Refused("tray unknown", tray=event.get("from_tray"))
    number = len(run.revisions) + 1
    for key in keys[keys.index(event.get("from_tray")) :]:
        tray = run.trays[key]
        rests = {
            at: revised(draft.book, run.route_at(rest.revision or tray.revision), route, number, at, rest)
            for at, rest in tray.rests.items()
        }
        tray = follow_route(tray, run.route_of(tray), route, stays=event.v < 2)
        draft.put_tray(run.id, replace(tray, revision=number, rests=rests))
    revision = Revision(number, event.get("from_tray"), route)
    draft.put_run(replace(draft.run(run.id), revisions=(*run.revisions, revision)))


def board_added(draft: Draft, event: Event) -> None:
    run = open_run(draft, event)
    pieces = dict(event.get("pieces"))
    first = run.route.steps[0].key
    for key, count in pieces.items():
        if draft.has_tray(run.id, key):
            raise Refused("tray known", tray=key)
        board = event.get("board").split("/")[-1]
        tray = Tray(key, count, len(run.revisions), wood=run.wood, board=board)
        draft.put_tray(run.id, shift(tray, first, count))
    draft.put_run(replace(draft.run(run.id), boards=put(run.boards, event.get("board"), pieces)))


def board_lost(draft: Draft, event: Event) -> None:
    """Pieces of the board that are not cut yet are scrap; those past the cut go on."""
    run = open_run(draft, event)
    key = event.get("board")
    if key not in run.boards:
        raise Refused("board unknown", board=key)
    for tray_key in run.boards[key]:
        tray = draft.tray(run.id, tray_key)
        step = run.route_of(tray).steps[0].key
        lost = tray.free(step)
        if lost:
            good, scrap = tray.counts.get(step, {}).get(key, (0, 0))
            reasons = (
                *tray.scrap.get(step, ()),
                {"pieces": lost, "why": event.get("why") or "board lost", "load": key},
            )
            counts = put(tray.counts, step, put(tray.counts.get(step, {}), key, (good, scrap + lost)))
            tray = replace(shift(tray, step, -lost), scrap=put(tray.scrap, step, reasons), counts=counts)
            draft.put_tray(run.id, tray)


def supply_out(draft: Draft, event: Event) -> None:
    run = open_run(draft, event)
    until = parse_moment(event.get("until")) if event.get("until") else None
    draft.put_run(replace(run, out=put(run.out, event.get("supply"), until)))
    note(draft, event, "out")


def supply_in(draft: Draft, event: Event) -> None:
    run = open_run(draft, event)
    draft.put_run(replace(run, out=without(run.out, event.get("supply"))))
    note(draft, event, "in")


def check_scope(draft: Draft, event: Event, per: str) -> str:
    """For what a first-piece check holds: the run, the load, or the setup on that day."""
    if per == "run":
        return "run"
    if per == "load":
        return event.load
    step = draft.run(event.run).route.step(event.operation)
    station = event.station or (step.operation.station if step else "")
    return f"{draft.station(station).setups}|{local_day(event.moment, draft.book.time_zone)}"


def first_piece_checked(draft: Draft, event: Event) -> None:
    """A first piece that fails stops the operation until somebody decides."""
    run = open_run(draft, event)
    step = run.route.step(event.operation)
    if step is None:
        raise Refused("step unknown", step=event.operation, tray="")
    key = event.get("check", "")
    per = next((check.per for check in step.operation.checks if check.key == key), "setup")
    scope = f"{step.key}|{check_scope(draft, event, per)}|{key}"
    stopped = run.stopped
    if event.get("result") == "fail":
        stopped = put(stopped, step.key, event.id)
    draft.put_run(replace(run, first_pieces=put(run.first_pieces, scope, event.get("result")), stopped=stopped))


def first_piece_decided(draft: Draft, event: Event) -> None:
    run = open_run(draft, event)
    passed = {
        key: "pass" if event.get("what") == "go on" and key.startswith(f"{event.operation}|") else result
        for key, result in run.first_pieces.items()
        if not (event.get("what") == "check again" and key.startswith(f"{event.operation}|"))
    }
    draft.put_run(replace(run, stopped=without(run.stopped, event.operation), first_pieces=passed))


def given(draft: Draft, event: Event) -> None:
    run = open_run(draft, event)
    told = dict(run.given)
    for tray in event.get("trays"):
        key = f"{event.operation}|{tray}"
        if event.get("to"):
            told[key] = {"to": event.get("to"), "look": bool(event.get("look"))}
        else:
            told.pop(key, None)
    draft.put_run(replace(run, given=told))


def look_given(draft: Draft, event: Event) -> None:
    run = open_run(draft, event)
    draft.put_run(replace(run, looks=put(run.looks, f"{event.operation}|{event.tray}", event.get("result"))))


def look_passed(draft: Draft, event: Event) -> None:
    """The newest answer stands; one whose finding has become another is asked again by whoever looks the run through."""
    run = open_run(draft, event)
    passed = Passed(event.get("found"), event.get("initials").strip(), event.person, event.moment, event.id)
    draft.put_run(replace(run, passed=put(run.passed, event.get("check"), passed)))


def noted(draft: Draft, event: Event) -> None:
    """A note changes nothing: it is read in the log."""
    if event.run:
        draft.run(event.run)


HANDLERS: Mapping[str, Callable[[Draft, Event], None]] = {
    "run opened": opened,
    "run finished": closed,
    "run abandoned": closed,
    "orders changed": orders_changed,
    "order ticked": order_ticked,
    "route revised": route_revised,
    "board added": board_added,
    "board lost": board_lost,
    "supply out": supply_out,
    "supply in": supply_in,
    "first piece checked": first_piece_checked,
    "first piece decided": first_piece_decided,
    "operation given": given,
    "look given": look_given,
    "look passed": look_passed,
    "note written": noted,
}
