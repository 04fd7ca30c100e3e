"""The dispatch rule: at each moment begin what comes first and can begin, until nothing can; then the next moment.

Who is looked at stands in the front, by priority: groups, and of each kind of blocks the first that may begin soon. Blocks of
one kind ask the same of the shop, so behind one of them that is ready no other has to be looked at.
"""

from collections.abc import Sequence

from runboard.plan.schedule.rule.kernel.limits import attend, closing, forget, insert, next_moment, walks_of
from runboard.plan.schedule.rule.kernel.placing import begin, choose, find_place, place, try_group
from runboard.plan.schedule.rule.kernel.records import BIG, HANDS, LAST, BlockRecord, GroupRecord, Shop


def replicate(
    shop: Shop, priority: Sequence[int], lengths: Sequence[Sequence[int]], marks: Sequence[int], found: list[list[int]]
) -> None:
    """Run the dispatch rule once for each row of ``lengths``: how long each stretch, then each block's setup, will take, which
    the rule does not know when it decides. A row of ``found`` gets the finish, or -1, and when each block in ``marks`` ends."""
    for at in range(len(lengths)):
        begin_afresh(shop, priority, lengths[at])
        found[at][0] = dispatch(shop)
        for mark in range(len(marks)):
            found[at][1 + mark] = shop.blocks[marks[mark]].end


def begin_afresh(shop: Shop, priority: Sequence[int], lengths: Sequence[int]) -> None:
    """Take the shop back to where only what is begun is placed."""
    go, many = shop.go, len(shop.stretches)
    go.front_count = go.waiting_count = go.not_joined = go.taken_count = go.watcher_count = go.open_until = 0
    go.next_opening, go.taken_until, go.careful = 0, BIG, 1
    for at in range(many):
        shop.stretches[at].real = lengths[at]
    for kind in shop.kinds:
        kind.first = kind.failed = -1
    for room in range(len(shop.spoiling)):
        shop.spoiling[room] = 0
    for station in shop.stations:
        station.free, station.stands_on, station.open = 0, station.stood_on, station.hour_from
    for person in shop.people:  # where they were seen for no time, so that the walk from there counts
        person.span_from = person.span_to = 0
        person.open = person.hour_from
        attend(shop, person, HANDS, 0, person.seen, 0, 0)
    for block in shop.blocks:
        shop.values[block.index] = priority[block.index] * len(shop.blocks) + block.rank
        shop.spoiling[shop.stations[block.station].room] += block.spoils
        block.real_setup, block.takers = lengths[many + block.index], block.taker_to - block.lag_to
        block.start, block.ready = -1, block.release
        block.left = block.lag_to - block.lag_from + int(block.unloads >= 0)
    for group in shop.groups:
        group.left, group.wake, group.failed = group.waits, 0, -1
        first = group.member_from
        while first + 1 < group.member_to and shop.blocks[shop.members[first]].begun == 1:
            first += 1
        shop.values[len(shop.blocks) + group.index] = shop.values[shop.members[first]]
        if group.left == 0 and group.unbegun > 0:
            join_front(shop, len(shop.blocks) + group.index)
    for block in shop.blocks:
        if block.begun == 0 and block.group < 0 and block.left == 0:
            wait(shop, block)
    for block in shop.blocks:
        if block.begun == 1:
            place_begun(shop, block)


def place_begun(shop: Shop, block: BlockRecord) -> None:
    """Put a block where it is already: from now on, in the hands or before the eyes of whoever is at it."""
    hands, go = block.by, shop.go
    if hands >= 0:
        go.chosen_count, shop.watchers[go.watcher_count].person = 1, hands
    elif not choose(shop, block, -1, 0, 0):
        go.chosen_count = 0
    if block.has_hands == 0:
        hands = -1
    elif hands < 0:
        hands = 0
        while hands + 1 < len(shop.people) and shop.able[block.index][hands] == 0:
            hands += 1
    place(shop, block, hands, 0, 0)
    release_followers(shop, block)


def dispatch(shop: Shop) -> int:
    """Place every block of a shop begun afresh, those of lower priority first; answers the finish, or -1 where some block
    found no place (its start is -1)."""
    tick = 0
    while tick < BIG and not is_over(shop):
        forget(shop, tick)
        while begin_one(shop, tick):
            pass
        following = min(next_moment(shop, tick), next_ready(shop, tick))
        if following == BIG and shop.go.careful == 1:
            shop.go.careful = 0  # nothing can be begun with care
            look_again(shop)
        else:
            tick = following
    finish = shop.go.sum_of_ends = shop.go.walks = 0
    for block in shop.blocks:
        if block.start < 0:
            return -1
        finish = max(finish, block.end)
        shop.go.sum_of_ends += block.end
    for person in shop.people:
        shop.go.walks += walks_of(shop, person)
    return finish


def is_over(shop: Shop) -> bool:
    """Whether nothing is left that could begin."""
    return shop.go.front_count == 0 and shop.go.not_joined == shop.go.waiting_count


def begin_one(shop: Shop, tick: int) -> bool:
    """Begin what comes first of all that can begin as decided at ``tick``; False where nothing can."""
    join_soon(shop, tick + shop.go.farthest)
    best, best_at, best_value, best_who, best_when = -1, -1, LAST, -1, -1
    for at in range(shop.go.front_count):
        work = shop.front[at]
        if shop.values[work] >= best_value:
            break
        if work >= len(shop.blocks):
            group = shop.groups[work - len(shop.blocks)]
            if group.wake <= tick and group.failed != tick:
                best, best_at, best_value = work, at, shop.values[work]
            continue
        kind = shop.kinds[shop.blocks[work].kind]
        if kind.failed == tick or wets_from(shop, shop.blocks[work], tick) > tick:
            continue
        # What one that is ready can have or not have, the others of its kind can or cannot, too.
        is_open = True
        while is_open and work >= 0 and shop.values[work] < best_value:
            block = shop.blocks[work]
            is_open = block.ready > tick
            who, when, walk = find_place(shop, block, tick)
            value = shop.values[work] + shop.go.stay * walk * len(shop.blocks)
            if when >= 0 and value < best_value:
                best, best_at, best_value, best_who, best_when = work, at, value, who, when
            elif when < 0 and not is_open:
                kind.failed = tick
            work = block.next
    if best < 0:
        return False
    if best >= len(shop.blocks):
        begin_group(shop, shop.groups[best - len(shop.blocks)], best_at, tick)
        return True
    begin(shop, shop.blocks[best], best_who, best_when)
    leave_kind(shop, shop.blocks[best], best_at)
    release_followers(shop, shop.blocks[best])
    return True


def begin_group(shop: Shop, group: GroupRecord, at: int, tick: int) -> None:
    """Place a group, or put it off."""
    if try_group(shop, group, tick) < 0:
        group.failed = tick
        return
    leave_front(shop, at)
    for member in range(group.member_from, group.member_to):
        block = shop.blocks[shop.members[member]]
        if block.begun == 0:
            release_followers(shop, block)


def release_followers(shop: Shop, block: BlockRecord) -> None:
    """Tell those that wait for a block when it ends; one that waits for nothing else joins the front."""
    shop.spoiling[shop.stations[block.station].room] -= block.spoils
    shop.go.careful = 1
    for at in range(block.lag_from, block.lag_to):
        before = shop.blocks[shop.lags[at].block]
        if before.takers == 0 and before.hold_to > before.hold_from:
            look_again(shop)
    for at in range(block.lag_to, block.follower_to):
        other = shop.blocks[shop.lags[at].block]
        other.ready = max(other.ready, block.end + shop.lags[at].least)
        other.left -= 1
        if other.begun == 1:
            continue
        if other.group < 0:
            if other.left == 0:
                wait(shop, other)
        elif other.group != block.group:
            group = shop.groups[other.group]
            group.left -= 1
            if group.left == 0:
                join_front(shop, len(shop.blocks) + group.index)


def look_again(shop: Shop) -> None:
    """What was held is free: whatever could not be begun at this moment may be able to."""
    for kind in shop.kinds:
        kind.failed = -1
    for group in shop.groups:
        group.wake, group.failed = 0, -1


def next_ready(shop: Shop, tick: int) -> int:
    """The first moment after ``tick`` at which one that waits for nothing else has waited long enough."""
    go, at = shop.go, shop.go.not_joined
    while at > 0 and shop.blocks[shop.waiting[at - 1]].ready > tick:
        at -= 1
    while at < go.waiting_count and shop.blocks[shop.waiting[at]].ready <= tick:
        at += 1
    found = shop.blocks[shop.waiting[at]].ready if at < go.waiting_count else BIG
    if go.late_wet == 0 and len(shop.groups) == 0:
        return found
    for at in range(go.front_count):
        work = shop.front[at]
        if work >= len(shop.blocks):
            ready = shop.groups[work - len(shop.blocks)].wake
        else:
            ready = wets_from(shop, shop.blocks[work], tick)
        if tick < ready < found:
            found = ready
    return found


def wets_from(shop: Shop, block: BlockRecord, tick: int) -> int:
    """From when a finish may be brought on, where it is kept for so long before the end of somebody's hours as long as
    dusty or hot work is left for the same room; ``tick`` itself where it is not kept, or nobody is there."""
    late_wet, room = shop.go.late_wet, shop.stations[block.station].room
    if late_wet == 0 or block.wets == 0 or shop.spoiling[room] <= block.spoils:
        return tick
    found = BIG
    for person in shop.people:
        if shop.able[block.index][person.index] == 1:
            closes = closing(shop, person.open, person.hour_to, tick)
            if closes >= 0:
                found = min(found, max(tick, closes - late_wet - block.length))
    return tick if found == BIG else found


# the front


def join_front(shop: Shop, work: int) -> None:
    """One more in the front: behind those that come before it."""
    at = shop.go.front_count
    while at > 0 and shop.values[shop.front[at - 1]] > shop.values[work]:
        at -= 1
    insert(shop.front, shop.go.front_count, at, work)
    shop.go.front_count += 1


def leave_front(shop: Shop, at: int) -> None:
    """Take one out of the front, which stays in order."""
    shop.go.front_count -= 1
    for place_ in range(at, shop.go.front_count):
        shop.front[place_] = shop.front[place_ + 1]


def join_kind(shop: Shop, block: BlockRecord) -> None:
    """One more of its kind that may begin soon: in the front itself where it comes first of them."""
    kind, value = shop.kinds[block.kind], shop.values[block.index]
    if kind.first >= 0 and shop.values[kind.first] <= value:
        before = shop.blocks[kind.first]
        while before.next >= 0 and shop.values[before.next] <= value:
            before = shop.blocks[before.next]
        block.next, before.next = before.next, block.index
        return
    if kind.first >= 0:
        at = 0
        while shop.front[at] != kind.first:
            at += 1
        leave_front(shop, at)
    block.next, kind.first = kind.first, block.index
    join_front(shop, block.index)


def leave_kind(shop: Shop, block: BlockRecord, at: int) -> None:
    """Take a block out of those of its kind, of which the first is ``at`` its place in the front."""
    kind = shop.kinds[block.kind]
    if kind.first != block.index:
        before = shop.blocks[kind.first]
        while before.next != block.index:
            before = shop.blocks[before.next]
        before.next = block.next
        return
    leave_front(shop, at)
    kind.first = block.next
    if kind.first >= 0:
        join_front(shop, kind.first)


def wait(shop: Shop, block: BlockRecord) -> None:
    """A block waits for nothing but time from now on."""
    go, at = shop.go, shop.go.waiting_count
    while at > 0 and shop.blocks[shop.waiting[at - 1]].ready > block.ready:
        at -= 1
    insert(shop.waiting, go.waiting_count, at, block.index)
    go.waiting_count += 1
    if at < go.not_joined:
        go.not_joined += 1
        join_kind(shop, block)


def join_soon(shop: Shop, tick: int) -> None:
    """Let all that are ready by a tick be looked at."""
    go = shop.go
    while go.not_joined < go.waiting_count and shop.blocks[shop.waiting[go.not_joined]].ready <= tick:
        go.not_joined += 1
        join_kind(shop, shop.blocks[shop.waiting[go.not_joined - 1]])
