"""Whether somebody can be there: hours, what else they do, rooms and walks."""

from runboard.plan.schedule.rule.kernel.layout import (
    BIG,
    CHOSEN,
    CHOSEN_COUNT,
    FARTHEST,
    HANDS,
    HANDS_FROM,
    HANDS_TO,
    IN_SIGHT,
    MOST_WATCHERS,
    OPEN_WINDOW,
    PEOPLE,
    PEOPLE_COUNT,
    ROOM_COUNT,
    ROOM_OF,
    SPAN_COUNT,
    SPAN_ROOM,
    SPAN_WIDTH,
    SPANS,
    STATION_COUNT,
    TOGETHER,
    WALKS,
    WATCH,
    WINDOWS,
)
from runboard.plan.schedule.rule.kernel.row import Row


def closing(t: Row, s: Row, person: int, tick: int) -> int:
    """When the window that is open for somebody at a tick closes; -1 where none is."""
    at = s[s[OPEN_WINDOW] + person]
    to = t[t[PEOPLE] + 3 * person + 2]
    while at < to:
        place = t[WINDOWS] + 2 * at
        if t[place + 1] > tick:
            return t[place + 1] if t[place] <= tick else -1
        at += 1
    return -1


def walk_between(t: Row, one: int, other: int) -> int:
    """Ticks from room to room; none from where nobody knows."""
    return 0 if one < 0 or other < 0 else t[t[WALKS] + one * t[ROOM_COUNT] + other]


def can_overlap(t: Row, what: int, station: int, else_what: int, else_station: int) -> bool:
    """Whether one person can do two things at once."""
    count = t[STATION_COUNT]
    if what == HANDS:
        return else_what == WATCH and t[t[IN_SIGHT] + else_station * count + station] == 1
    if else_what == HANDS:
        return t[t[IN_SIGHT] + station * count + else_station] == 1
    return t[t[TOGETHER] + station * count + else_station] == 1


def arrival(t: Row, s: Row, person: int, what: int, station: int, room: int, tick: int) -> int:
    """The first moment from ``tick`` on at which somebody who is free can be at a station; -1 where they are not free."""
    found = tick
    place = s[SPANS] + person * s[SPAN_ROOM] * SPAN_WIDTH
    for _ in range(s[s[SPAN_COUNT] + person]):
        end = s[place + 1]
        if end <= tick:
            found = max(found, end + walk_between(t, s[place + 4], room))
        elif s[place] <= tick and not can_overlap(t, what, station, s[place + 2], s[place + 3]):
            return -1
        place += SPAN_WIDTH
    return found


def can_attend(t: Row, s: Row, person: int, what: int, station: int, room: int, start: int, end: int) -> bool:
    """Whether somebody can be at a station from start to end, beside all that they do already."""
    closes = closing(t, s, person, start)
    if closes < end:
        return False
    place = s[SPANS] + person * s[SPAN_ROOM] * SPAN_WIDTH
    for _ in range(s[s[SPAN_COUNT] + person]):
        begins, ends = s[place], s[place + 1]
        if start < ends and begins < end:
            if not can_overlap(t, what, station, s[place + 2], s[place + 3]):
                return False
        elif s[place + 4] != room:
            gap = start - ends if start >= ends else begins - end
            if gap < walk_between(t, s[place + 4], room):
                return False
        place += SPAN_WIDTH
    return True


def attend(s: Row, person: int, what: int, station: int, room: int, start: int, end: int) -> None:
    """Somebody is at a station from start to end."""
    count = s[s[SPAN_COUNT] + person]
    place = s[SPANS] + (person * s[SPAN_ROOM] + count) * SPAN_WIDTH
    s[place] = start
    s[place + 1] = end
    s[place + 2] = what
    s[place + 3] = station
    s[place + 4] = room
    s[s[SPAN_COUNT] + person] = count + 1
    s[s[ROOM_OF] + person] = room
    if what == HANDS:
        s[s[HANDS_FROM] + person] = start
        s[s[HANDS_TO] + person] = end


def has_full_hands(s: Row, person: int, tick: int) -> bool:
    """Whether somebody is surely at a hands-on span at a tick."""
    return s[s[HANDS_FROM] + person] <= tick < s[s[HANDS_TO] + person]


def forget_spans(t: Row, s: Row, tick: int) -> None:
    """Let go of what is over for so long that no walk reaches from it."""
    for person in range(t[PEOPLE_COUNT]):
        base = s[SPANS] + person * s[SPAN_ROOM] * SPAN_WIDTH
        kept = base
        for at in range(s[s[SPAN_COUNT] + person]):
            place = base + at * SPAN_WIDTH
            if s[place + 1] + t[FARTHEST] > tick:
                if place != kept:
                    for field in range(SPAN_WIDTH):
                        s[kept + field] = s[place + field]
                kept += SPAN_WIDTH
        s[s[SPAN_COUNT] + person] = (kept - base) // SPAN_WIDTH


def choose_watchers(t: Row, s: Row, hands: int, others: int, station: int, room: int, start: int, end: int) -> bool:
    """Find who watches a machine from start to end: one person, or one after another where hours end meanwhile.

    Whoever loaded it comes first, or, with ``others``, whoever is in the room already. The answer lies in CHOSEN.
    """
    tick, count, last = start, 0, -1
    while tick < end and count < MOST_WATCHERS:
        best, best_reach, best_rank = -1, tick, BIG
        for person in range(t[PEOPLE_COUNT]):
            reach = min(closing(t, s, person, tick), end)
            rank = 1 if person == hands else 3
            if person != hands and s[s[ROOM_OF] + person] == room:
                rank = 0 if others == 1 else 2
            better = reach > best_reach or (reach == best_reach and rank < best_rank)
            if person == last or reach <= tick or not better:
                continue
            if can_attend(t, s, person, WATCH, station, room, tick, reach):
                best, best_reach, best_rank = person, reach, rank
        if best < 0:
            return False
        s[s[CHOSEN] + 2 * count] = best
        s[s[CHOSEN] + 2 * count + 1] = tick
        tick, last = best_reach, best
        count += 1
    s[CHOSEN_COUNT] = count
    return tick >= end
