"""What a person could do now, best first, by a greedy rule: one sentence each, with its reason.

The rule: what waits for hands first (an ended machine, a latest end, a stopped load, a load put aside), then machines
that run while other work goes on, then what must dry overnight, then what stands set up, furthest along the route. Last
comes what is no work: taking over a watch.
"""

from collections.abc import Iterator
from datetime import datetime, timedelta
from typing import Any

from runboard.plan.candidates import SOON, Candidate, Wanted, WhoAsks, candidates, is_allowed, time_left
from runboard.plan.move import Move, of_load
from runboard.plan.taking_over import takes
from runboard.run.fold.fold import apply
from runboard.run.fold.state import Load, RunState, ShopState
from runboard.run.log.event import Event, parse_moment
from runboard.run.rules.resting import wait_after
from runboard.run.rules.texts import places_for
from runboard.shop.book import Book, may_work_while_watching
from runboard.shop.hours import local_day
from runboard.shop.parts import LoadContents, parts

LONG_WAIT = timedelta(hours=2)
STOP_WELL = timedelta(minutes=10)
# A change of grit is no reason to leave the station.
SHORT_SETUP = timedelta(minutes=2)
# What should be done already is done in a moment.
A_MOMENT = timedelta(minutes=1)


# For a load's state: what to do about it, why, and the event that the press would make.
LOADS_THAT_WAIT = {
    "running": ("unload", "machine due", "unloading started"),
    "ended": ("unload", "machine waits", "unloading started"),
    "stopped": ("settle", "stopped early", "stop settled"),
}


def moves(
    state: ShopState, book: Book, person: str, now: datetime, most: int = 12, wanted: Wanted | None = None
) -> list[Move]:
    """What ``person`` could do at ``now``, best first. With hands at a load: what could follow it. ``wanted`` are the trays
    that a plan wants of hand work over several, where one is at hand: without one, all that are ready are one load."""
    ahead = after_hands(state, book, person, now)
    declined = _declined(state, person, now)
    asks = WhoAsks(ahead, book, person, now, station_at(state, person), wanted, declined)
    found = [move for move in _all(asks) if move.id not in declined]
    found.sort(key=lambda move: move.rank)
    stop = _stop(asks, bool(found))
    if not any(move.code != "job" for move in found):
        nothing = _free(asks)
        # Beside a machine that must be watched, watching it comes before any small job.
        found.insert(0 if nothing.code == "watch" else len(found), nothing)
    if stop is not None:
        goes_on = time_left(asks) > STOP_WELL and any(_comes_in_time(move, asks) for move in found)
        found.insert(len(found) if goes_on else 0, stop)
    # Last, and never left out: taking over is no work, and it hides neither a stop nor that nothing waits.
    over = [move for move in takes(asks) if move.id not in declined]
    return [*found[: most - len(over)], *over]


def after_hands(state: ShopState, book: Book, person: str, now: datetime) -> ShopState:
    """The state once the person has done what their hands are at: the next move is looked for from there."""
    seen = state.people.get(person)
    if seen is None or seen.hands is None or not seen.hands[0]:
        return state
    run, key = seen.hands
    load = state.runs[run].loads.get(key) if run in state.runs else None
    if load is None:
        return state
    kind = "machine started" if load.state == "loading" else "load done"
    return apply(state, Event("zzzzzz", kind, now, run=run, load=key, person=person, body={}), book)


def station_at(state: ShopState, person: str) -> str:
    """Where the person's hands are now: to go on there costs no walk."""
    seen = state.people.get(person)
    run, key = seen.hands if seen is not None and seen.hands else ("", "")
    load = state.runs[run].loads.get(key) if run in state.runs else None
    return load.station if load is not None else ""


def _declined(state: ShopState, person: str, now: datetime) -> set[str]:
    seen = state.people.get(person)
    if seen is None:
        return set()
    return {move for move, until in seen.declined.items() if not until or parse_moment(until) > now}


def _all(asks: WhoAsks) -> Iterator[Move]:
    for run, load in asks.state.open_loads():
        move = _of_load(asks, run, load)
        if move is not None:
            yield move
    ready = candidates(asks)
    left = time_left(asks)
    for candidate in ready:
        if candidate.length <= left:
            yield _start(asks, candidate, ready)
    yield from _jobs(asks, left)


def _comes_in_time(move: Move, asks: WhoAsks) -> bool:
    """Whether something is left to do in this session: work, or a wait or machine that ends before it does."""
    if move.code in ("job", "free"):
        return move.code == "job" or move.facts.get("at", asks.now + time_left(asks)) < asks.now + time_left(asks)
    return True


def _of_load(asks: WhoAsks, run: RunState, load: Load) -> Move | None:
    """A machine that has ended or should have, a load put aside, a load that stopped early."""
    if load.people or (load.state == "running" and (load.end_at is None or load.end_at > asks.now)):
        return None
    code, because, kind = LOADS_THAT_WAIT.get(load.state, ("go on", "put aside", "load started"))
    body = {"how": "resume"} if kind == "stop settled" else {}
    if not is_allowed(asks, kind, run, load.id, body):
        return None
    rank = {"unload": 0, "settle": 2, "go on": 3}[code]
    return of_load(asks.book, run, load, code, because, (rank, load.phase_at or asks.now))


def _start(asks: WhoAsks, candidate: Candidate, ready: list[Candidate]) -> Move:
    rank, because = _rank(asks, candidate, ready)
    seen = asks.state.people.get(asks.person)
    here = seen is not None and seen.room == candidate.station.room
    due = min((order.due for order in candidate.run.orders if order.due), default=None)
    first = list(candidate.run.trays).index(next(iter(candidate.pieces)))
    costly = candidate.fresh and candidate.step.pass_.setup > SHORT_SETUP
    elsewhere = candidate.station.key != asks.at
    order = (
        rank,
        costly,
        not here,
        elsewhere,
        candidate.fresh,
        due is None,
        due or asks.now,
        -candidate.step.index,
        first,
    )
    room = asks.book.room(candidate.station.room)
    return Move(
        f"start|{candidate.run.id}|{candidate.load}",
        "start",
        because,
        order,
        candidate.run.id,
        candidate.load,
        candidate.step.key,
        candidate.station.key,
        candidate.station.room,
        tuple(candidate.pieces),
        dict(candidate.pieces),
        places_for(candidate.run, candidate.pieces, candidate.step.key),
        round(candidate.length.total_seconds() / 60, 1),
        candidate.fresh,
        {
            "step": candidate.step.name,
            "station": candidate.station.name,
            "room": room.name if room else candidate.station.room,
        },
    )


def _rank(asks: WhoAsks, candidate: Candidate, ready: list[Candidate]) -> tuple[int, dict[str, Any]]:
    """How early a start comes, and why."""
    facts: dict[str, Any] = {"station": candidate.station.name, "step": candidate.step.name}
    if candidate.latest_at is not None and candidate.latest_at - asks.now <= SOON:
        return 1, {"code": "latest", "facts": {**facts, "at": candidate.latest_at}}
    if candidate.step.has_machine:
        beside = _work_beside(asks, candidate, ready)
        if candidate.step.operation.attendance == "none" or beside is not None:
            return 4, {"code": "machine earns", "facts": {**facts, "beside": beside.step.name if beside else ""}}
        return 7, {"code": "machine idle", "facts": facts}
    if _fills_up(candidate):
        return 7, {"code": "next in line", "facts": {**facts, "after": ""}}
    route = candidate.run.route_of(candidate.run.trays[next(iter(candidate.pieces))])
    wait = wait_after(asks.book, route, candidate.step)
    if wait is not None and wait.least >= LONG_WAIT:
        return 5, {"code": "then it waits", "facts": {**facts, "why": wait.why}}
    if not candidate.fresh:
        return 6, {"code": "stands set up", "facts": facts}
    following = route.step(route.after(candidate.step.key))
    return 6, {"code": "next in line", "facts": {**facts, "after": following.name if following else ""}}


def _fills_up(candidate: Candidate) -> bool:
    """Whether a load over several trays would take more, and more is ready just before it: then that comes first."""
    if candidate.step.pass_.size != "run" or candidate.step.index == 0:
        return False
    most, there = candidate.step.pass_.pieces, sum(candidate.pieces.values())
    others = [tray for key, tray in candidate.run.trays.items() if key not in candidate.pieces]
    coming = (
        tray.free(before) for tray in others if (before := candidate.run.route_of(tray).before(candidate.step.key))
    )
    return any(pieces and (most is None or there + pieces <= most) for pieces in coming)


def _work_beside(asks: WhoAsks, candidate: Candidate, ready: list[Candidate]) -> Candidate | None:
    """Hand work that may be done while this machine runs in sight."""
    for other in ready:
        by_hand = not other.step.has_machine and other.station.key != candidate.station.key
        if by_hand and may_work_while_watching(asks.book, candidate.station.key, other.station.key):
            return other
    return None


def _jobs(asks: WhoAsks, left: timedelta) -> Iterator[Move]:
    """The shop's own small jobs that fit, once a day each."""
    today = local_day(asks.now, asks.book.time_zone)
    rooms = [asks.book.station(load.station) for load in asks.watched]
    for number, job in enumerate(asks.book.jobs):
        done = asks.state.jobs_done.get(job.key)
        away = job.room and any(station is not None and station.room != job.room for station in rooms)
        if job.minutes <= left and not away and (done is None or local_day(done, asks.book.time_zone) != today):
            minutes = round(job.minutes.total_seconds() / 60, 1)
            facts = {"job": job.name}
            because = {"code": "gap", "facts": {}}
            yield Move(f"job|{job.key}", "job", because, (8, number), room=job.room or "", minutes=minutes, facts=facts)


def _stop(asks: WhoAsks, something: bool) -> Move | None:
    """Stop well, once there is little time left: nothing that runs may be watched by this person then."""
    left = time_left(asks)
    if asks.watched or (left > SOON and something):
        return None
    seen = asks.state.people.get(asks.person)
    if seen is None or seen.until is None:
        return None
    because: dict[str, Any] = {"code": "nothing left", "facts": {}}
    if left <= SOON:
        because = {"code": "session ends", "facts": {"at": seen.until}}
    return Move(f"stop|{asks.person}", "stop", because, (9,), facts={"at": seen.until})


def _free(asks: WhoAsks) -> Move:
    """Nothing useful can be done now: until when, and for what."""
    ends = [
        (load.end_at, "machine", load.station)
        for run, load in asks.state.open_loads()
        if load.state == "running" and load.end_at is not None
    ]
    ends += [
        (rest.ready_at, rest.why, tray.id)
        for run in asks.state.open_runs()
        for tray in run.trays.values()
        for rest in tray.rests.values()
        if rest.ended_at is None and rest.ready_at > asks.now
    ]
    ends += [(max(asks.now + A_MOMENT, end), "hands", load.station) for load, end in _in_other_hands(asks)]
    watching = [load.station for load in asks.watched]
    if watching:
        station = asks.book.station(watching[0])
        facts: dict[str, Any] = {"station": station.name if station else watching[0]}
        return Move("watch", "watch", {"code": "must be watched", "facts": facts}, (9,), facts=facts)
    if not ends:
        return Move("free", "free", {"code": "nothing left", "facts": {}}, (9,))
    at, why, what = min(ends, key=lambda end: end[0])
    facts = {"at": at, "why": why, "what": what}
    return Move("free", "free", {"code": "free until", "facts": facts}, (9,), facts=facts)


def _in_other_hands(asks: WhoAsks) -> Iterator[tuple[Load, datetime]]:
    """What others are at, and when it should be done: it may be wanted here next."""
    for run, load in asks.state.open_loads():
        step = run.step_of(load)
        if not load.people or asks.person in load.people or step is None or load.phase_at is None:
            continue
        contents = LoadContents(step.pass_.key, sum(load.pieces.values()), needs_setup=load.fresh)
        kinds = ("unloading",) if load.state == "unloading" else ("setup", "loading", "machine", "hand")
        lengths = [part.length for part in parts(step.operation, contents) if part.kind in kinds]
        yield load, load.phase_at + sum(lengths, timedelta(0))
