"""Pieces that change trays or go back in the route, and what is noted of a tray."""

from collections.abc import Mapping, Sequence
from typing import Any

from runboard.run.change import replace
from runboard.run.fold.draft import Draft, put
from runboard.run.fold.pieces import shift, take_out
from runboard.run.fold.route import Route
from runboard.run.fold.state import Rest, Tray
from runboard.run.log.event import Event
from runboard.run.refusal import Refused


def move(draft: Draft, event: Event) -> None:
    """One event moves pieces: split, merge, borrow, fill, rework. They never move forward in the route this way."""
    run, source_key, target_key = event.run, event.tray, event.get("to")
    pieces, to_step = event.get("pieces"), event.get("to_operation")
    source = draft.tray(run, source_key)
    route = draft.run(run).route_of(source)
    to = route.step(to_step)
    come_from = route.step(event.operation) if event.operation else None
    if to is None or (event.operation and come_from is None):
        raise Refused("step unknown", step=to_step if to is None else event.operation, tray=source_key)
    if pieces <= 0:
        raise Refused("nothing to move", tray=source_key)
    if come_from is not None and to.index > come_from.index:
        raise Refused("moves only back", tray=source_key, step=come_from.name, to_step=to.name)
    if target_key == source_key and (come_from is None or to.index == come_from.index) and event.operation:
        raise Refused("same tray", tray=source_key)
    take_out(draft, run, source_key, event.operation, pieces)
    if not draft.has_tray(run, target_key):
        draft.put_tray(run, Tray(target_key, 0, source.revision, wood=source.wood, board=source.board, of=source_key))
    source, target = draft.tray(run, source_key), draft.tray(run, target_key)
    if draft.run(run).route_of(target).step(to_step) is None:
        raise Refused("step unknown", step=to_step, tray=target_key)
    if source_key != target_key:
        source = replace(source, gone=source.gone + pieces)
        target = replace(target, came=target.came + pieces)
        source, target = _carry_places(source, target, event, to.index, route.personal_from)
        target = _carry_rest(source, target, event)
        draft.put_tray(run, source)
    draft.put_tray(run, shift(target, to_step, pieces))


def _carry_places(
    source: Tray, target: Tray, event: Event, to_index: int, personal_from: int | None
) -> tuple[Tray, Tray]:
    """Personal pieces take their texts along, unless they go back to before they were personal."""
    positions = [position for position in event.get("positions") or () if position in source.places]
    if not positions:
        return source, target
    kept = {place: text for place, text in source.places.items() if place not in positions}
    moved = dict(target.places)
    if personal_from is not None and to_index > personal_from:
        for position in positions:
            place = position if position not in moved else max(moved) + 1
            moved[place] = source.places[position]
    return replace(source, places=kept), replace(target, places=moved)


def _carry_rest(source: Tray, target: Tray, event: Event) -> Tray:
    """Pieces that are waiting take their wait along; of two waits the later end holds."""
    for step, rest in source.rests.items():
        if rest.ended_at is None and rest.ready_at > event.moment and event.operation == event.get("to_operation"):
            old = target.rests.get(step)
            target = replace(target, rests=put(target.rests, step, _later(old, rest)))
    return target


def _later(old: Rest | None, new: Rest) -> Rest:
    if old is None or old.ended_at is not None:
        return new
    ends = [latest_at for latest_at in (old.latest_at, new.latest_at) if latest_at is not None]
    return Rest(
        new.why,
        min(old.began_at, new.began_at),
        max(old.ready_at, new.ready_at),
        min(ends) if ends else None,
        revision=new.revision,
    )


def follow_route(tray: Tray, before: Route, route: Route, *, stays: bool = False) -> Tray:
    """A tray whose route is ``route`` from now on. Pieces keep their place by its step's key, but for those with nothing begun
    there: they go back to what was put in since the last step that they have done.

    Refused 'would strand' where their step is lost, 'would repeat' where a step that they have done comes after it. With
    ``stays``, as it was taken once, they stay whatever was put in or turned round.
    """
    for key in tray.at:
        here, there = before.step(key), route.step(key)
        if here is None or there is None:
            raise Refused("would strand", tray=tray.id, step=here.name if here else key)
        if stays:
            continue
        done = [earlier for step in before.steps[: here.index] if (earlier := route.step(step.key))]
        last = max(done, key=lambda step: step.index, default=None)
        following = 0 if last is None else last.index + 1
        if last is not None and last.index > there.index:
            raise Refused("would repeat", tray=tray.id, step=last.name)
        free = tray.free(key)
        if free and following < there.index:
            tray = shift(shift(tray, key, -free), route.steps[following].key, free)
    return tray


def place(draft: Draft, run: str, tray_key: str, placed: Sequence[Mapping[str, Any]]) -> None:
    """Which text is at which position: what is said replaces those positions."""
    tray = draft.tray(run, tray_key)
    places = dict(tray.places)
    for said in placed:
        if said["line"] == "-":
            places.pop(said["position"], None)
        else:
            places[said["position"]] = (said["line"], said["text"])
    draft.put_tray(run, replace(tray, places=dict(sorted(places.items()))))


def note(draft: Draft, event: Event) -> None:
    """Wood and board, texts, prints of a tray."""
    tray = draft.tray(event.run, event.tray)
    if event.kind == "texts placed":
        place(draft, event.run, event.tray, event.get("places"))
    elif event.kind == "card printed":
        draft.put_tray(event.run, replace(tray, print=event.get("print")))
    else:
        wood, board = event.get("wood", tray.wood), event.get("board", tray.board)
        draft.put_tray(event.run, replace(tray, wood=wood, board=board))
