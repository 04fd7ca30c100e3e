"""The next moment at which something can be begun that could not be before."""

from runboard.plan.schedule.rule.kernel.layout import (
    AIR,
    AIR_COUNT,
    AIR_UNTIL,
    BIG,
    DRAW_COUNT,
    DRAWS_UNTIL,
    FREE,
    NEXT_OPENING,
    OPENINGS,
    PEOPLE_COUNT,
    SPAN_COUNT,
    SPAN_ROOM,
    SPAN_WIDTH,
    SPANS,
    STATION_COUNT,
    TAKEN,
)
from runboard.plan.schedule.rule.kernel.row import Row


def next_moment(t: Row, s: Row, tick: int) -> int:
    """The first moment after ``tick`` at which somebody, a station, a service or a room's air is free; BIG after the last."""
    at = t[OPENINGS] + s[NEXT_OPENING]
    while t[at] <= tick:
        at += 1
    found = t[at]
    for person in range(t[PEOPLE_COUNT]):
        place = s[SPANS] + person * s[SPAN_ROOM] * SPAN_WIDTH + 1
        for _ in range(s[s[SPAN_COUNT] + person]):
            if tick < s[place] < found:
                found = s[place]
            place += SPAN_WIDTH
    for station in range(t[STATION_COUNT]):
        if tick < s[s[FREE] + station] < found:
            found = s[s[FREE] + station]
    found = min(found, first_end(s, s[DRAWS_UNTIL], s[TAKEN] + 2, s[DRAW_COUNT], tick))
    return min(found, first_end(s, s[AIR_UNTIL], s[AIR] + 1, s[AIR_COUNT], tick))


def first_end(s: Row, first: int, place: int, count: int, tick: int) -> int:
    """The first end after ``tick`` among the records of four at a place; ``first`` is the first end of all."""
    if first > tick:
        return first
    found = BIG
    for _ in range(count):
        if tick < s[place] < found:
            found = s[place]
        place += 4
    return found
