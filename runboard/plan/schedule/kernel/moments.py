"""The next moment at which something can be begun that could not be before."""

from runboard.plan.schedule.kernel.layout import (
    AIR,
    AIR_COUNT,
    BIG,
    DRAW_COUNT,
    FREE,
    OPEN_RUN,
    OPEN_WINDOW,
    PEOPLE,
    PEOPLE_COUNT,
    RUNS,
    SPAN_COUNT,
    SPAN_ROOM,
    SPAN_WIDTH,
    SPANS,
    STATION_COUNT,
    STATIONS,
    TAKEN,
    WINDOWS,
)
from runboard.plan.schedule.kernel.row import Row


def next_moment(t: Row, s: Row, tick: int) -> int:
    """The first moment after ``tick`` at which somebody, a station, a service or a room's air is free; BIG after the last."""
    found = BIG
    for person in range(t[PEOPLE_COUNT]):
        place = s[SPANS] + person * s[SPAN_ROOM] * SPAN_WIDTH + 1
        for _ in range(s[s[SPAN_COUNT] + person]):
            if tick < s[place] < found:
                found = s[place]
            place += SPAN_WIDTH
        found = min(found, next_opening(t, WINDOWS, s[s[OPEN_WINDOW] + person], t[t[PEOPLE] + 3 * person + 2], tick))
    for station in range(t[STATION_COUNT]):
        if tick < s[s[FREE] + station] < found:
            found = s[s[FREE] + station]
        found = min(found, next_opening(t, RUNS, s[s[OPEN_RUN] + station], t[t[STATIONS] + 5 * station + 3], tick))
    for at in range(s[DRAW_COUNT]):
        if tick < s[s[TAKEN] + 4 * at + 2] < found:
            found = s[s[TAKEN] + 4 * at + 2]
    for at in range(s[AIR_COUNT]):
        if tick < s[s[AIR] + 4 * at + 1] < found:
            found = s[s[AIR] + 4 * at + 1]
    return found


def next_opening(t: Row, section: int, from_: int, to: int, tick: int) -> int:
    """When the first of some windows opens after ``tick``; BIG where none does."""
    for at in range(from_, to):
        if t[t[section] + 2 * at] > tick:
            return t[t[section] + 2 * at]
    return BIG
