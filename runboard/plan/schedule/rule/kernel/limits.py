"""What stations, services and the air of a room allow from one moment to another."""

from runboard.plan.schedule.rule.kernel.layout import (
    AIR,
    AIR_COUNT,
    AIR_UNTIL,
    BIG,
    CAPACITIES,
    DRAW_COUNT,
    DRAWS_UNTIL,
    NEXT_OPENING,
    OPEN_RUN,
    OPEN_UNTIL,
    OPEN_WINDOW,
    OPENINGS,
    PEOPLE,
    PEOPLE_COUNT,
    RUNS,
    STATION_COUNT,
    STATIONS,
    TAKEN,
    WINDOWS,
)
from runboard.plan.schedule.rule.kernel.row import Row


def may_run(t: Row, s: Row, station: int, start: int, end: int) -> bool:
    """Whether a station may be used all the time from start to end."""
    at = s[s[OPEN_RUN] + station]
    to = t[t[STATIONS] + 5 * station + 3]
    while at < to:
        place = t[RUNS] + 2 * at
        if t[place + 1] > start:
            return t[place] <= start and end <= t[place + 1]
        at += 1
    return False


def taken_at(s: Row, service: int, tick: int) -> int:
    """How much of a service is drawn at a tick."""
    found, place = 0, s[TAKEN]
    for _ in range(s[DRAW_COUNT]):
        if s[place] == service and s[place + 1] <= tick < s[place + 2]:
            found += s[place + 3]
        place += 4
    return found


def can_draw(t: Row, s: Row, service: int, count: int, start: int, end: int) -> bool:
    """Whether so much of a service is free all the time from start to end."""
    most = t[t[CAPACITIES] + service] - count
    if taken_at(s, service, start) > most:
        return False
    place = s[TAKEN]
    for _ in range(s[DRAW_COUNT]):
        if s[place] == service and start < s[place + 1] < end and taken_at(s, service, s[place + 1]) > most:
            return False
        place += 4
    return True


def draw_on(s: Row, service: int, count: int, start: int, end: int) -> None:
    """Take so much of a service from start to end."""
    place = s[TAKEN] + 4 * s[DRAW_COUNT]
    s[place] = service
    s[place + 1] = start
    s[place + 2] = end
    s[place + 3] = count
    s[DRAW_COUNT] += 1
    s[DRAWS_UNTIL] = min(s[DRAWS_UNTIL], end)


def is_clear(s: Row, room: int, wet: int, start: int, end: int) -> bool:
    """Whether a room's air allows a wet finish (``wet`` 1) or heat and dust (0) from start to end."""
    place = s[AIR]
    for _ in range(s[AIR_COUNT]):
        if s[place + 2] == room and s[place + 3] != wet and start < s[place + 1] and s[place] < end:
            return False
        place += 4
    return True


def fill_air(s: Row, room: int, wet: int, start: int, end: int) -> None:
    """A wet finish, or heat and dust, is in a room's air from start to end."""
    place = s[AIR] + 4 * s[AIR_COUNT]
    s[place] = start
    s[place + 1] = end
    s[place + 2] = room
    s[place + 3] = wet
    s[AIR_COUNT] += 1
    s[AIR_UNTIL] = min(s[AIR_UNTIL], end)


def forget_draws(t: Row, s: Row, tick: int) -> None:
    """Let go of draws, air, hours and runs that are over; most ticks end none."""
    if s[DRAWS_UNTIL] <= tick:
        s[DRAW_COUNT], s[DRAWS_UNTIL] = keep_later(s, s[TAKEN], s[DRAW_COUNT], 2, tick)
    if s[AIR_UNTIL] <= tick:
        s[AIR_COUNT], s[AIR_UNTIL] = keep_later(s, s[AIR], s[AIR_COUNT], 1, tick)
    if s[OPEN_UNTIL] <= tick:
        s[OPEN_UNTIL] = BIG
        for person in range(t[PEOPLE_COUNT]):
            place = t[PEOPLE] + 3 * person
            pass_closed(t, s, s[OPEN_WINDOW] + person, t[WINDOWS], t[place + 2], tick)
        for station in range(t[STATION_COUNT]):
            place = t[STATIONS] + 5 * station
            pass_closed(t, s, s[OPEN_RUN] + station, t[RUNS], t[place + 3], tick)
    while t[t[OPENINGS] + s[NEXT_OPENING]] <= tick:
        s[NEXT_OPENING] += 1


def keep_later(s: Row, from_: int, count: int, end: int, tick: int) -> tuple[int, int]:
    """Keep the records of four, from a place on, whose ``end`` is later than a tick: (how many, the first end)."""
    kept, first = from_, BIG
    for at in range(count):
        place = from_ + 4 * at
        if s[place + end] > tick:
            first = min(first, s[place + end])
            for field in range(4):
                s[kept + field] = s[place + field]
            kept += 4
    return (kept - from_) // 4, first


def pass_closed(t: Row, s: Row, at: int, spans: int, to: int, tick: int) -> None:
    """Go on to the first span that is not over, where a place says which is, and note when it will be."""
    while s[at] < to and t[spans + 2 * s[at] + 1] <= tick:
        s[at] += 1
    if s[at] < to:
        s[OPEN_UNTIL] = min(s[OPEN_UNTIL], t[spans + 2 * s[at] + 1])
