"""Pieces on their way: into a load, through an operation by absolute counts, to another tray.

At every moment, over a run: started = in process + scrap + good.
"""

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from runboard.run.change import replace
from runboard.run.fold.draft import Draft, put, without
from runboard.run.fold.hands import end_spans, leave_station, unhand
from runboard.run.fold.route import Route, Step
from runboard.run.fold.state import Hold, Load, Rest, Tray
from runboard.run.log.event import parse_moment
from runboard.run.refusal import Refused
from runboard.run.rules.resting import wait_after
from runboard.shop.book import Book

# Loads in these states can be taken as finished when a later operation is pressed on their pieces.
CAN_BE_ASSUMED_DONE = ("working", "ended", "unloading")


def shift(tray: Tray, step: str, pieces: int) -> Tray:
    """``tray`` with so many pieces more (or fewer) at ``step``; ``''`` is good."""
    if not step:
        return replace(tray, good=tray.good + pieces)
    left = tray.at.get(step, 0) + pieces
    return replace(tray, at=put(tray.at, step, left) if left else without(tray.at, step))


def keep_busy(tray: Tray, step: str, pieces: int) -> Tray:
    """``tray`` with so many pieces more (or fewer) in begun loads at ``step``."""
    left = tray.busy.get(step, 0) + pieces
    return replace(tray, busy=put(tray.busy, step, left) if left else without(tray.busy, step))


def counted(tray: Tray, step: str, load: str) -> tuple[int, int]:
    """(good, scrap) counted so far for ``load`` of ``tray`` at ``step``."""
    return tray.counts.get(step, {}).get(load, (0, 0))


def remaining(load: Load, tray: Tray) -> int:
    """Pieces of ``tray`` in ``load`` that are not counted yet."""
    return max(0, load.pieces.get(tray.id, 0) - sum(counted(tray, load.step, load.id)))


def fill_earlier(draft: Draft, run: str, tray_key: str, step: Step, wanted: int, moment: datetime) -> int:
    """Bring up to ``wanted`` free pieces to ``step``: what was not pressed at earlier steps is taken as done, all good.

    Returns how many are free at ``step`` then. Pieces on a running machine, held, or in a stopped load stay.
    """
    route = draft.run(run).route_of(draft.tray(run, tray_key))
    for earlier in reversed(route.steps[: step.index]):
        if draft.tray(run, tray_key).free(step.key) >= wanted:
            break
        for load in draft.open_loads(run):
            if load.step == earlier.key and load.state in CAN_BE_ASSUMED_DONE and load.pieces.get(tray_key):
                assume_done(draft, load, moment)
        tray = draft.tray(run, tray_key)
        pull = min(tray.free(earlier.key), wanted - tray.free(step.key))
        if pull > 0:
            _assume_passed(draft, run, tray_key, earlier, step, pull)
    return draft.tray(run, tray_key).free(step.key)


def _assume_passed(draft: Draft, run: str, tray_key: str, first: Step, until: Step, pieces: int) -> None:
    tray = draft.tray(run, tray_key)
    route = draft.run(run).route_of(tray)
    for step in route.steps[first.index : until.index]:
        good, scrap = counted(tray, step.key, assumed_load(step, tray_key))
        tray = _with_count(tray, step.key, assumed_load(step, tray_key), good + pieces, scrap)
    draft.put_tray(run, shift(shift(tray, first.key, -pieces), until.key, pieces))


def assumed_load(step: Step, tray: str) -> str:
    """The id under which a count stands that no load was named for."""
    return f"{step.key}/{tray}"


def assume_done(draft: Draft, load: Load, moment: datetime) -> None:
    """A load whose 'done' nobody pressed: all its pieces are good, its end is unknown, its station is free."""
    for tray_key in load.pieces:
        tray = draft.tray(load.run, tray_key)
        good = counted(tray, load.step, load.id)[0]
        count_tray(draft, load, tray_key, good + remaining(load, tray), None, moment)
    for person in load.people:
        unhand(draft, person, load)
    done = end_spans(replace(load, state="done", people=(), done_at=moment), moment, measured=False)
    draft.put_load(done)
    leave_station(draft, done)


def _with_count(tray: Tray, step: str, load: str, good: int, scrap: int) -> Tray:
    return replace(tray, counts=put(tray.counts, step, put(tray.counts.get(step, {}), load, (good, scrap))))


def count_tray(
    draft: Draft,
    load: Load,
    tray_key: str,
    good: int,
    scrap: tuple[Mapping[str, Any], ...] | None,
    moment: datetime,
) -> None:
    """Put an absolute count for (load, tray, step): pieces go on, come back, or are scrap. ``None`` leaves scrap as is.

    Refused where more are counted than there are, or fewer than have already gone on.
    """
    run = load.run
    tray = draft.tray(run, tray_key)
    step = draft.step(run, tray_key, load.step)
    old_good, old_scrap = counted(tray, step.key, load.id)
    reasons = tray.scrap.get(step.key, ())
    if scrap is not None:
        reasons = tuple(reason for reason in reasons if reason["load"] != load.id)
        reasons += tuple({**reason, "load": load.id} for reason in scrap if reason["pieces"])
    new_scrap = old_scrap if scrap is None else sum(reason["pieces"] for reason in scrap)
    more = (good + new_scrap) - (old_good + old_scrap)
    route = draft.run(run).route_of(tray)
    after = route.after(step.key)
    in_load = remaining(load, tray) if is_begun(load) else 0
    if more > in_load + tray.free(step.key):
        raise Refused(
            "counts do not fit",
            tray=tray_key,
            step=step.name,
            counted=good + new_scrap,
            there=old_good + old_scrap + in_load + tray.free(step.key),
        )
    back = old_good - good
    if back > (tray.good if not after else tray.free(after)):
        raise Refused("counts gone on", tray=tray_key, step=step.name, counted=good, before=old_good)
    tray = shift(shift(tray, step.key, -more), after, good - old_good)
    tray = _with_count(tray, step.key, load.id, good, new_scrap)
    if is_begun(load):
        tray = keep_busy(tray, step.key, remaining(load, tray) - in_load)
    tray = replace(tray, scrap=put(tray.scrap, step.key, reasons) if reasons else without(tray.scrap, step.key))
    tray = _drop_places(tray, scrap or ())
    if good > 0 and good != old_good:
        began_at = (load.started_at if is_begun(load) else None) or moment
        tray = begin_rest(draft.book, route, tray, step, began_at, moment)
    draft.put_tray(run, tray)


def is_begun(load: Load) -> bool:
    """Whether the load holds pieces: it is begun and not done."""
    return load.state not in ("done", "off", "none")


def _drop_places(tray: Tray, scrap: tuple[Mapping[str, Any], ...]) -> Tray:
    """A spoiled personal piece leaves its position; its text goes back in the queue."""
    gone = {position for reason in scrap for position in reason.get("positions", ())}
    if not gone or not tray.places:
        return tray
    return replace(tray, places={place: text for place, text in tray.places.items() if place not in gone})


def begin_rest(book: Book, route: Route, tray: Tray, step: Step, began_at: datetime, moment: datetime) -> Tray:
    """The wait after the last pass of an operation; pieces that come later make it later, its latest end stays."""
    wait = wait_after(book, route, step)
    if wait is None:
        return tray
    old = tray.rests.get(step.key)
    if old is not None and old.ended_at is None:
        began_at = min(began_at, old.began_at)
    latest = began_at + wait.latest if wait.latest is not None else None
    return replace(
        tray,
        rests=put(tray.rests, step.key, Rest(wait.why, began_at, moment + wait.least, latest, revision=tray.revision)),
    )


def spread(counts: Mapping[str, Any], pieces: Mapping[str, int]) -> dict[str, Any]:
    """Counts for each tray. What is counted for a whole board (``*``) shortens its last trays."""
    whole = counts.get("*")
    if whole is None:
        return dict(counts)
    lost = sum(pieces.values()) - whole["good"]
    scrap = list(whole.get("scrap", ()))
    found: dict[str, Any] = {}
    for tray, there in reversed(list(pieces.items())):
        here = max(0, min(there, lost))
        lost -= here
        taken, left = _take_scrap(scrap, here)
        scrap = left
        found[tray] = {"good": there - here, "scrap": taken}
    if lost < 0 and pieces:
        found[list(pieces)[-1]]["good"] -= lost
    return found


def _take_scrap(scrap: list[Mapping[str, Any]], pieces: int) -> tuple[list[dict[str, Any]], list[Mapping[str, Any]]]:
    taken: list[dict[str, Any]] = []
    left: list[Mapping[str, Any]] = []
    for reason in scrap:
        here = min(pieces, reason["pieces"])
        pieces -= here
        if here:
            taken.append({"pieces": here, "why": reason["why"]})
        if reason["pieces"] > here:
            left.append({**reason, "pieces": reason["pieces"] - here})
    return taken, left


def take_out(draft: Draft, run: str, tray_key: str, step: str, pieces: int) -> None:
    """Take pieces from ``step`` of a tray: free ones first, then out of a load that no machine is running."""
    tray = draft.tray(run, tray_key)
    if not step:
        if tray.good < pieces:
            raise Refused("pieces not there", tray=tray_key, step="", wanted=pieces, there=tray.good)
        draft.put_tray(run, shift(tray, "", -pieces))
        return
    name = draft.step(run, tray_key, step).name
    short = pieces - tray.free(step)
    for load in draft.open_loads(run):
        if short <= 0:
            break
        if load.step == step and load.state != "running":
            here = min(short, remaining(load, draft.tray(run, tray_key)))
            if here > 0:
                draft.put_load(replace(load, pieces=put(load.pieces, tray_key, load.pieces[tray_key] - here)))
                draft.put_tray(run, keep_busy(draft.tray(run, tray_key), step, -here))
                short -= here
    if short > 0:
        raise Refused("pieces not there", tray=tray_key, step=name, wanted=pieces, there=pieces - short)
    draft.put_tray(run, shift(draft.tray(run, tray_key), step, -pieces))


def hold(
    draft: Draft, run: str, tray_key: str, step: Step, pieces: int | None, body: Mapping[str, Any], moment: datetime
) -> None:
    """Hold free pieces of a tray at a step, or all of them."""
    tray = draft.tray(run, tray_key)
    free = tray.free(step.key)
    wanted = free if pieces is None else pieces
    if wanted <= 0 or wanted > free:
        raise Refused("pieces not there", tray=tray_key, step=step.name, wanted=wanted, there=free)
    until = parse_moment(body["until"]) if body.get("until") else None
    hold = Hold(step.key, wanted, body["why"], body.get("waiting_for", ""), until, moment)
    draft.put_tray(run, replace(tray, holds=(*tray.holds, hold)))
