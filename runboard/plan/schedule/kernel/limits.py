"""What stations, services and the air of a room allow from one moment to another."""

from runboard.plan.schedule.kernel.layout import (
    AIR,
    AIR_COUNT,
    CAPACITIES,
    DRAW_COUNT,
    OPEN_RUN,
    RUNS,
    STATION_COUNT,
    STATIONS,
    TAKEN,
)
from runboard.plan.schedule.kernel.row import Row


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


def forget_draws(t: Row, s: Row, tick: int) -> None:
    """Let go of draws, air and runs that are over."""
    kept = s[TAKEN]
    for at in range(s[DRAW_COUNT]):
        place = s[TAKEN] + 4 * at
        if s[place + 2] > tick:
            for field in range(4):
                s[kept + field] = s[place + field]
            kept += 4
    s[DRAW_COUNT] = (kept - s[TAKEN]) // 4
    kept = s[AIR]
    for at in range(s[AIR_COUNT]):
        place = s[AIR] + 4 * at
        if s[place + 1] > tick:
            for field in range(4):
                s[kept + field] = s[place + field]
            kept += 4
    s[AIR_COUNT] = (kept - s[AIR]) // 4
    for station in range(t[STATION_COUNT]):
        to = t[t[STATIONS] + 5 * station + 3]
        while s[s[OPEN_RUN] + station] < to and t[t[RUNS] + 2 * s[s[OPEN_RUN] + station] + 1] <= tick:
            s[s[OPEN_RUN] + station] += 1
