"""One block at one moment: whether it can begin there, by whom, and what it takes when it does."""

from runboard.plan.schedule.rule.kernel.attending import (
    arrival,
    attend,
    can_attend,
    choose_watchers,
    has_full_hands,
    walk_between,
)
from runboard.plan.schedule.rule.kernel.layout import (
    ABLE,
    BEGUN,
    BIG,
    BLOCK_WIDTH,
    BLOCKS,
    BY_HANDS,
    CHOSEN,
    CHOSEN_COUNT,
    DRAWS,
    DUSTY,
    END,
    FAMILY,
    FARTHEST,
    FREE,
    HANDS,
    HAS_HANDS,
    HOLD_FROM,
    HOLD_TO,
    HOLDS,
    LENGTH,
    PEOPLE_COUNT,
    READY,
    ROOM_OF,
    SET_UP,
    SETUP,
    STANDS_ON,
    START,
    STATION,
    STATIONS,
    STRETCH_COUNT,
    STRETCH_FROM,
    STRETCH_TO,
    STRETCHES,
    UNLOADED_BY,
    UNLOADS,
    WATCH,
    WATCHER_COUNT,
    WATCHERS,
    WET,
)
from runboard.plan.schedule.rule.kernel.limits import can_draw, draw_on, fill_air, is_clear, may_run
from runboard.plan.schedule.rule.kernel.row import Row


def setup_of(t: Row, s: Row, block: int) -> int:
    """How long its station must be set up for a block, as it stands."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    family = t[row + FAMILY]
    if family < 0 or t[row + UNLOADS] >= 0 or t[row + BEGUN] == 1 or s[s[STANDS_ON] + t[row + STATION]] == family:
        return 0
    return t[row + SETUP]


def find_place(t: Row, s: Row, block: int, tick: int, others: int) -> tuple[int, int, int]:
    """(who, when, how far they walk) for a block that is begun as decided at ``tick``: the start is later only by a walk.
    Nobody where no hands are wanted; when is -1 where it cannot be."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    station = t[row + STATION]
    room = t[t[STATIONS] + 5 * station]
    setup = setup_of(t, s, block)
    floor = s[s[READY] + block]
    if t[row + UNLOADS] < 0:
        floor = max(floor, s[s[FREE] + station])
    if floor > tick + t[FARTHEST]:
        return -1, -1, 0
    if t[row + HAS_HANDS] == 0 and setup == 0:
        fits = floor <= tick and can_begin(t, s, block, -1, tick, setup, others)
        return -1, tick if fits else -1, 0
    who, when, walks = -1, -1, BIG
    for person in range(t[PEOPLE_COUNT]):
        if t[t[ABLE] + block * t[PEOPLE_COUNT] + person] == 0 or has_full_hands(s, person, tick):
            continue
        start = arrival(t, s, person, HANDS, station, room, tick)
        walk = walk_between(t, s[s[ROOM_OF] + person], room)
        if start < floor or walk > walks or (walk == walks and start >= when):
            continue
        if can_begin(t, s, block, person, start, setup, others):
            who, when, walks = person, start, walk
    return who, when, walks


def can_begin(t: Row, s: Row, block: int, person: int, start: int, setup: int, others: int) -> bool:
    """Whether a block can begin at ``start`` in somebody's hands; who watches then lies in CHOSEN."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    station = t[row + STATION]
    room = t[t[STATIONS] + 5 * station]
    begins = start + setup
    end = begins + t[row + LENGTH]
    if not may_run(t, s, station, start, end):
        return False
    if t[row + WET] >= 0 and not is_clear(s, room, 1, start, end + t[row + WET]):
        return False
    if t[row + DUSTY] == 1 and not is_clear(s, room, 0, start, end):
        return False
    for hold in range(t[row + HOLD_FROM], t[row + HOLD_TO]):
        place = t[HOLDS] + 3 * hold
        if not can_draw(t, s, t[place], t[place + 1], end, end + t[place + 2]):
            return False
    since = -1
    if setup > 0:
        since = start
        if not can_attend(t, s, person, HANDS, station, room, start, begins):
            return False
    for stretch in range(t[row + STRETCH_FROM], t[row + STRETCH_TO]):
        place = t[STRETCHES] + 5 * stretch
        from_, to = begins + t[place], begins + t[place] + t[place + 1]
        for draw in range(t[place + 3], t[place + 4]):
            if not can_draw(t, s, t[t[DRAWS] + 2 * draw], t[t[DRAWS] + 2 * draw + 1], from_, to):
                return False
        if t[place + 2] == HANDS:
            since = from_ if since < 0 else since
            if not can_attend(t, s, person, HANDS, station, room, since, to):
                return False
        else:
            since = -1
            if t[place + 2] == WATCH and not choose_watchers(t, s, person, others, station, room, from_, to):
                return False
    return True


def place(t: Row, s: Row, real: Row, block: int, person: int, start: int, setup: int) -> None:
    """Begin a block whose watchers lie in CHOSEN. ``real`` has how long each stretch, and each block's setup, will be."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    station = t[row + STATION]
    room = t[t[STATIONS] + 5 * station]
    tick = start
    if setup > 0:
        tick += real[t[STRETCH_COUNT] + block]
        attend(s, person, HANDS, station, room, start, tick)
    s[s[START] + block] = start
    s[s[SET_UP] + block] = setup
    s[s[BY_HANDS] + block] = person
    for stretch in range(t[row + STRETCH_FROM], t[row + STRETCH_TO]):
        at = t[STRETCHES] + 5 * stretch
        from_, tick = tick, tick + real[stretch]
        for draw in range(t[at + 3], t[at + 4]):
            draw_on(s, t[t[DRAWS] + 2 * draw], t[t[DRAWS] + 2 * draw + 1], from_, tick)
        if t[at + 2] == HANDS:
            attend(s, person, HANDS, station, room, from_, tick)
        elif t[at + 2] == WATCH:
            watch(s, block, station, room, from_, tick)
    s[s[END] + block] = tick
    for hold in range(t[row + HOLD_FROM], t[row + HOLD_TO]):
        at = t[HOLDS] + 3 * hold
        draw_on(s, t[at], t[at + 1], tick, tick + t[at + 2])
    if t[row + WET] >= 0:
        fill_air(s, room, 1, start, tick + t[row + WET])
    if t[row + DUSTY] == 1 and tick > start:
        fill_air(s, room, 0, start, tick)
    s[s[FREE] + station] = tick if t[row + UNLOADED_BY] < 0 else BIG
    if t[row + FAMILY] >= 0:
        s[s[STANDS_ON] + station] = t[row + FAMILY]


def watch(s: Row, block: int, station: int, room: int, start: int, end: int) -> None:
    """Let those in CHOSEN watch a machine, each until the next takes over."""
    count = s[CHOSEN_COUNT]
    for at in range(count):
        person = s[s[CHOSEN] + 2 * at]
        from_ = start if at == 0 else s[s[CHOSEN] + 2 * at + 1]
        to = end if at + 1 == count else min(end, s[s[CHOSEN] + 2 * at + 3])
        if from_ >= to:
            continue
        attend(s, person, WATCH, station, room, from_, to)
        row = s[WATCHERS] + 3 * s[WATCHER_COUNT]
        s[row] = block
        s[row + 1] = person
        s[row + 2] = from_
        s[WATCHER_COUNT] += 1
