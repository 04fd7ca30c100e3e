"""The dispatch rule: at each moment begin what comes first and can begin, until nothing can; then the next moment."""

from runboard.plan.schedule.rule.kernel.attending import attend, choose_watchers, closing, forget_spans
from runboard.plan.schedule.rule.kernel.front import (
    first_left,
    is_over,
    join_front,
    join_soon,
    leave_front,
    leave_kind,
    value_of,
    wait,
)
from runboard.plan.schedule.rule.kernel.grouping import try_group
from runboard.plan.schedule.rule.kernel.layout import (
    ABLE,
    BEGUN,
    BIG,
    BLOCK_COUNT,
    BLOCK_WIDTH,
    BLOCKS,
    BY,
    CHOSEN,
    CHOSEN_COUNT,
    DUSTY,
    END,
    FAILED,
    FARTHEST,
    FOLLOW_FROM,
    FOLLOW_TO,
    FOLLOWERS,
    FRONT,
    FRONT_COUNT,
    GROUP,
    GROUP_COUNT,
    GROUP_FAILED,
    GROUP_LEFT,
    GROUP_WAKE,
    GROUPS,
    HANDS,
    HAS_HANDS,
    KIND,
    LAST,
    LATE_WET,
    LEFT,
    LENGTH,
    MEMBERS,
    NEXT_OF,
    OTHERS_WATCH,
    PEOPLE,
    PEOPLE_COUNT,
    READY,
    SPOIL_LEFT,
    START,
    STARTING,
    STATION,
    STATIONS,
    STAY,
    STRETCH_FROM,
    STRETCH_TO,
    STRETCHES,
    UNREADY,
    WAITING,
    WAITING_COUNT,
    WATCH,
    WET,
)
from runboard.plan.schedule.rule.kernel.limits import forget_draws
from runboard.plan.schedule.rule.kernel.moments import next_moment
from runboard.plan.schedule.rule.kernel.placing import can_begin, find_place, place, setup_of
from runboard.plan.schedule.rule.kernel.row import Row


def begin_afresh(t: Row, s: Row, fresh: Row, priority: Row) -> None:
    """Take the state ``s`` back to where nothing is placed. Somebody who was seen in a room is there at tick 0 for no time,
    so that the walk from it counts."""
    for at in range(fresh[STARTING]):
        s[at] = fresh[at]
    for person in range(t[PEOPLE_COUNT]):
        room = t[t[PEOPLE] + 3 * person]
        if room >= 0:
            attend(s, person, HANDS, 0, room, 0, 0)
    count = s[FRONT_COUNT]
    s[FRONT_COUNT] = 0
    for at in range(count):
        one = fresh[fresh[FRONT] + at]
        if one < t[BLOCK_COUNT]:
            wait(t, s, priority, one)
        else:
            join_front(t, s, priority, one)


def dispatch(t: Row, s: Row, fresh: Row, real: Row, priority: Row, knobs: Row) -> int:
    """Place every block, those of lower ``priority`` first; answers the finish, or -1 where some block found no place (its
    START is -1). ``real`` is how long each stretch, then each block's setup, will take, which the rule does not know when
    it decides; ``knobs`` say how dear a walk is and who watches. ``s`` is any state of the problem, ``fresh`` a new one."""
    begin_afresh(t, s, fresh, priority)
    for block in range(t[BLOCK_COUNT]):
        if t[t[BLOCKS] + block * BLOCK_WIDTH + BEGUN] == 1:
            place_begun(t, s, real, priority, block)
    tick = 0
    while tick < BIG:
        forget_spans(t, s, tick)
        forget_draws(t, s, tick)
        while begin_one(t, s, real, priority, knobs, tick):
            pass
        tick = min(next_moment(t, s, tick), next_ready(t, s, knobs[LATE_WET], tick))
        if is_over(s):
            break
    finish = 0
    for block in range(t[BLOCK_COUNT]):
        if s[s[START] + block] < 0:
            return -1
        finish = max(finish, s[s[END] + block])
    return finish


def place_begun(t: Row, s: Row, real: Row, priority: Row, block: int) -> None:
    """Put a block where it is already: from now on, in the hands or before the eyes of whoever is at it."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    station = t[row + STATION]
    person = t[row + BY]
    for at in range(t[row + STRETCH_FROM], t[row + STRETCH_TO]):
        stretch = t[STRETCHES] + 5 * at
        if t[stretch + 2] != WATCH:
            continue
        s[CHOSEN_COUNT] = 0
        if person >= 0:
            s[s[CHOSEN]] = person
            s[CHOSEN_COUNT] = 1
        elif not choose_watchers(
            t, s, -1, 0, station, t[t[STATIONS] + 5 * station], t[stretch], t[stretch] + t[stretch + 1]
        ):
            s[CHOSEN_COUNT] = 0
    if t[row + HAS_HANDS] == 0:
        person = -1
    elif person < 0:
        person = 0
        while person + 1 < t[PEOPLE_COUNT] and t[t[ABLE] + block * t[PEOPLE_COUNT] + person] == 0:
            person += 1
    place(t, s, real, block, person, 0, 0)
    release_followers(t, s, priority, block)


def begin_one(t: Row, s: Row, real: Row, priority: Row, knobs: Row, tick: int) -> bool:
    """Begin what comes first of all that can begin as decided at ``tick``; False where nothing can."""
    join_soon(t, s, priority, tick + t[FARTHEST])
    best, best_at, best_value, best_who, best_when = -1, -1, LAST, -1, -1
    for at in range(s[FRONT_COUNT]):
        one = s[s[FRONT] + at]
        if value_of(t, s, priority, one) >= best_value:
            break
        if one >= t[BLOCK_COUNT]:
            group = one - t[BLOCK_COUNT]
            if s[s[GROUP_WAKE] + group] <= tick and s[s[GROUP_FAILED] + group] != tick:
                best, best_at, best_value = one, at, value_of(t, s, priority, one)
            continue
        failed = s[FAILED] + t[t[BLOCKS] + one * BLOCK_WIDTH + KIND]
        if s[failed] == tick or wets_from(t, s, one, knobs[LATE_WET], tick) > tick:
            continue
        # What one that is ready can have or not have, the others of its kind can or cannot, too.
        is_open = True
        while is_open and one >= 0 and priority[one] < best_value:
            is_open = s[s[READY] + one] > tick
            who, when, walk = find_place(t, s, one, tick, knobs[OTHERS_WATCH])
            value = priority[one] + knobs[STAY] * walk
            if when >= 0 and value < best_value:
                best, best_at, best_value, best_who, best_when = one, at, value, who, when
            elif when < 0 and not is_open:
                s[failed] = tick
            one = s[s[NEXT_OF] + one]
    if best < 0:
        return False
    if best >= t[BLOCK_COUNT]:
        return begin_group(t, s, real, priority, best_at, tick, knobs[OTHERS_WATCH])
    setup = setup_of(t, s, best)
    can_begin(t, s, best, best_who, best_when, setup, knobs[OTHERS_WATCH])
    place(t, s, real, best, best_who, best_when, setup)
    leave_kind(t, s, priority, best, best_at)
    release_followers(t, s, priority, best)
    return True


def begin_group(t: Row, s: Row, real: Row, priority: Row, at: int, tick: int, others: int) -> bool:
    """Place a group, or put it off; True either way, for the next in turn is to be tried."""
    group = s[s[FRONT] + at] - t[BLOCK_COUNT]
    left = first_left(t, s, group)
    if try_group(t, s, real, group, tick, others) < 0:
        s[s[GROUP_FAILED] + group] = tick
        return True
    leave_front(s, at)
    for member in range(t[t[GROUPS] + 2 * group], t[t[GROUPS] + 2 * group + 1]):
        block = t[t[MEMBERS] + member]
        if left >= 0 and t[t[BLOCKS] + block * BLOCK_WIDTH + BEGUN] == 0:
            release_followers(t, s, priority, block)
    return True


def release_followers(t: Row, s: Row, priority: Row, block: int) -> None:
    """Tell those that wait for a block when it ends; one that waits for nothing else joins the front."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    s[s[SPOIL_LEFT] + t[t[STATIONS] + 5 * t[row + STATION]]] -= t[row + DUSTY]
    for at in range(t[row + FOLLOW_FROM], t[row + FOLLOW_TO]):
        follower, least = t[t[FOLLOWERS] + 2 * at], t[t[FOLLOWERS] + 2 * at + 1]
        other = t[BLOCKS] + follower * BLOCK_WIDTH
        s[s[READY] + follower] = max(s[s[READY] + follower], s[s[END] + block] + least)
        s[s[LEFT] + follower] -= 1
        if t[other + BEGUN] == 1:
            continue
        group = t[other + GROUP]
        if group < 0:
            if s[s[LEFT] + follower] == 0:
                wait(t, s, priority, follower)
        elif group != t[row + GROUP]:
            s[s[GROUP_LEFT] + group] -= 1
            if s[s[GROUP_LEFT] + group] == 0:
                join_front(t, s, priority, t[BLOCK_COUNT] + group)


def next_ready(t: Row, s: Row, late_wet: int, tick: int) -> int:
    """The first moment after ``tick`` at which one that waits for nothing else has waited long enough."""
    while s[UNREADY] < s[WAITING_COUNT] and s[s[READY] + s[s[WAITING] + s[UNREADY]]] <= tick:
        s[UNREADY] += 1
    found = BIG
    if s[UNREADY] < s[WAITING_COUNT]:
        found = s[s[READY] + s[s[WAITING] + s[UNREADY]]]
    if late_wet == 0 and t[GROUP_COUNT] == 0:
        return found
    for at in range(s[FRONT_COUNT]):
        one = s[s[FRONT] + at]
        if one >= t[BLOCK_COUNT]:
            ready = s[s[GROUP_WAKE] + one - t[BLOCK_COUNT]]
        else:
            ready = wets_from(t, s, one, late_wet, tick)
        if tick < ready < found:
            found = ready
    return found


def wets_from(t: Row, s: Row, block: int, late_wet: int, tick: int) -> int:
    """From when a finish may be brought on, where it is kept for so long before the end of somebody's hours as long as
    dusty or hot work is left for the same room; ``tick`` itself where it is not kept, or nobody is there."""
    row = t[BLOCKS] + block * BLOCK_WIDTH
    if late_wet == 0 or t[row + WET] <= 0:
        return tick
    if s[s[SPOIL_LEFT] + t[t[STATIONS] + 5 * t[row + STATION]]] <= t[row + DUSTY]:
        return tick
    found = BIG
    for person in range(t[PEOPLE_COUNT]):
        if t[t[ABLE] + block * t[PEOPLE_COUNT] + person] == 1:
            closes = closing(t, s, person, tick)
            if closes >= 0:
                found = min(found, max(tick, closes - late_wet - t[row + LENGTH]))
    return tick if found == BIG else found
