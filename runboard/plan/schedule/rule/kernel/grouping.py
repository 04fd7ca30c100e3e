"""Groups of blocks that are placed together, each of them at its earliest, or not at all yet."""

from runboard.plan.schedule.rule.kernel.layout import (
    AIR_COUNT,
    AIR_UNTIL,
    BEGUN,
    BIG,
    BLOCK_WIDTH,
    BLOCKS,
    DRAW_COUNT,
    DRAWS_UNTIL,
    END,
    FARTHEST,
    FREE,
    GROUP_WAKE,
    GROUPS,
    HANDS_FROM,
    HANDS_TO,
    LAG_FROM,
    LAG_TO,
    LAGS,
    MEMBERS,
    NOT_BEFORE,
    PEOPLE_COUNT,
    READY,
    RELEASE,
    ROOM_OF,
    SAVED,
    SET_UP,
    SPAN_COUNT,
    STANDS_ON,
    START,
    STATION,
    STATION_COUNT,
    UNLOADS,
    WATCHER_COUNT,
)
from runboard.plan.schedule.rule.kernel.moments import next_moment
from runboard.plan.schedule.rule.kernel.placing import can_begin, find_place, place, setup_of
from runboard.plan.schedule.rule.kernel.row import Row


def try_group(t: Row, s: Row, real: Row, group: int, tick: int, others: int) -> int:
    """Place all that is left of a group from ``tick`` on; answers when its first begins, or -1 where it cannot be placed
    yet. One that would begin later only is left for then, unless a part of it was begun: that one waits for the rest."""
    from_, to = t[t[GROUPS] + 2 * group], t[t[GROUPS] + 2 * group + 1]
    pressing = False
    for at in range(from_, to):
        block = t[t[MEMBERS] + at]
        pressing = pressing or t[t[BLOCKS] + block * BLOCK_WIDTH + BEGUN] == 1
        s[s[NOT_BEFORE] + block] = 0
    save(t, s)
    for _ in range(2 * (to - from_) + 2):
        first = place_members(t, s, real, from_, to, tick, others)
        if first >= 0 and (first <= tick + t[FARTHEST] or pressing):
            return first
        restore(t, s, from_, to)
        if first >= 0 or first == -1:
            s[s[GROUP_WAKE] + group] = first if first >= 0 else BIG
            return -1
        if first == -2:
            return -1
    return -1


def place_members(t: Row, s: Row, real: Row, from_: int, to: int, tick: int, others: int) -> int:
    """Place each of a group in turn. When the first begins, or -1 where there is no place for one, -2 where its station is
    held, -3 where one came too late: what it came too late for has to be begun later."""
    first = BIG
    for at in range(from_, to):
        block = t[t[MEMBERS] + at]
        row = t[BLOCKS] + block * BLOCK_WIDTH
        if t[row + BEGUN] == 1:
            continue
        s[s[READY] + block] = max(ready_of(t, s, block), s[s[NOT_BEFORE] + block])
        if t[row + UNLOADS] < 0 and s[s[FREE] + t[row + STATION]] == BIG:
            return -2
        moment = max(tick, s[s[READY] + block])
        who, when, _ = find_place(t, s, block, moment, others)
        while when < 0:
            moment = next_moment(t, s, moment)
            if moment == BIG:
                return -1
            who, when, _ = find_place(t, s, block, moment, others)
        setup = setup_of(t, s, block)
        can_begin(t, s, block, who, when, setup, others)
        place(t, s, real, block, who, when, setup)
        late = is_late(t, s, block, when)
        if late != 0:
            return late
        first = min(first, when)
    return first


def ready_of(t: Row, s: Row, block: int) -> int:
    """From when a block may begin, by what it waits for."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    found = t[row + RELEASE]
    if t[row + UNLOADS] >= 0:
        found = max(found, s[s[END] + t[row + UNLOADS]])
    for lag in range(t[row + LAG_FROM], t[row + LAG_TO]):
        found = max(found, s[s[END] + t[t[LAGS] + 3 * lag]] + t[t[LAGS] + 3 * lag + 1])
    return found


def is_late(t: Row, s: Row, block: int, when: int) -> int:
    """0 where a block is in time for all that it may not come too late for, else -3, or -1 where nothing can be done."""
    row, found = t[BLOCKS] + block * BLOCK_WIDTH, 0
    for lag in range(t[row + LAG_FROM], t[row + LAG_TO]):
        before, latest = t[t[LAGS] + 3 * lag], t[t[LAGS] + 3 * lag + 2]
        if latest >= 0 and when > s[s[START] + before] + s[s[SET_UP] + before] + latest:
            if t[t[BLOCKS] + before * BLOCK_WIDTH + BEGUN] == 1:
                return -1
            s[s[NOT_BEFORE] + before] = max(s[s[NOT_BEFORE] + before], when - latest)
            found = -3
    return found


def save(t: Row, s: Row) -> None:
    """Remember what a try changes."""
    at = s[SAVED]
    s[at], s[at + 1], s[at + 2] = s[DRAW_COUNT], s[AIR_COUNT], s[WATCHER_COUNT]
    s[at + 3], s[at + 4] = s[DRAWS_UNTIL], s[AIR_UNTIL]
    at += 5
    for person in range(t[PEOPLE_COUNT]):
        s[at], s[at + 1] = s[s[SPAN_COUNT] + person], s[s[ROOM_OF] + person]
        s[at + 2], s[at + 3] = s[s[HANDS_FROM] + person], s[s[HANDS_TO] + person]
        at += 4
    for station in range(t[STATION_COUNT]):
        s[at] = s[s[FREE] + station]
        s[at + 1] = s[s[STANDS_ON] + station]
        at += 2


def restore(t: Row, s: Row, from_: int, to: int) -> None:
    """Take back a try: what was added lies at the end of each list."""
    at = s[SAVED]
    s[DRAW_COUNT], s[AIR_COUNT], s[WATCHER_COUNT] = s[at], s[at + 1], s[at + 2]
    s[DRAWS_UNTIL], s[AIR_UNTIL] = s[at + 3], s[at + 4]
    at += 5
    for person in range(t[PEOPLE_COUNT]):
        s[s[SPAN_COUNT] + person], s[s[ROOM_OF] + person] = s[at], s[at + 1]
        s[s[HANDS_FROM] + person], s[s[HANDS_TO] + person] = s[at + 2], s[at + 3]
        at += 4
    for station in range(t[STATION_COUNT]):
        s[s[FREE] + station] = s[at]
        s[s[STANDS_ON] + station] = s[at + 1]
        at += 2
    for member in range(from_, to):
        block = t[t[MEMBERS] + member]
        if t[t[BLOCKS] + block * BLOCK_WIDTH + BEGUN] == 0:
            s[s[START] + block] = -1
