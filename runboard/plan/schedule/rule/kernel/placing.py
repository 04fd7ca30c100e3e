"""One block at one moment: whether it can begin there, by whom, and what it takes when it does. And groups of blocks, placed
together, each of them at its earliest, or not at all yet."""

from runboard.plan.schedule.rule.kernel.limits import (
    arrival,
    attend,
    can_attend,
    can_draw,
    choose_watchers,
    closing,
    draw_on,
    is_clear,
    next_moment,
    room_of,
    taken_at,
    walk_between,
)
from runboard.plan.schedule.rule.kernel.records import BIG, HANDS, WATCH, BlockRecord, GroupRecord, Shop, StationRecord


def setup_of(shop: Shop, block: BlockRecord) -> int:
    """How long its station must be set up for a block, as it stands."""
    fits = block.family < 0 or shop.stations[block.station].stands_on == block.family
    return 0 if fits or block.unloads >= 0 or block.begun == 1 else block.setup


def find_place(shop: Shop, block: BlockRecord, tick: int) -> tuple[int, int, int]:
    """(who, when, how far they walk) for a block that is begun as decided at ``tick``: the start is later only by a walk.
    Nobody where no hands are wanted; when is -1 where it cannot be."""
    station, setup, floor = shop.stations[block.station], setup_of(shop, block), block.ready
    if block.unloads < 0:
        floor = max(floor, station.free)
    if floor > tick + shop.go.farthest:
        return -1, -1, 0
    who, when, walks = -1, -1, BIG
    wants_hands = block.has_hands == 1 or setup > 0
    for at in range(len(shop.people) if wants_hands else 1):
        start, walk = tick, 0
        if wants_hands:
            start = arrival(shop, shop.people[at], station, tick) if shop.able[block.index][at] == 1 else -1
        if start < floor:
            continue
        if wants_hands:
            walk = walk_between(shop, room_of(shop, shop.people[at]), station.room)
        hands = at if wants_hands else -1
        if (walk < walks or (walk == walks and start < when)) and can_begin(shop, block, hands, start, setup):
            who, when, walks = hands, start, walk
    return who, when, walks


def can_begin(shop: Shop, block: BlockRecord, hands: int, start: int, setup: int) -> bool:
    """Whether a block can begin at ``start`` in somebody's hands, what it takes off being free from then on."""
    station = shop.stations[block.station]
    take_off(shop, block, start)
    fits = is_free(shop, block, start + setup)
    put_back(shop, block)
    return (
        fits
        and closing(shop, station.open, station.hour_to, start) >= start + setup + block.length
        and can_handle(shop, block, hands, start, setup)
        and choose(shop, block, hands, shop.go.others_watch, start + setup)
    )


def is_free(shop: Shop, block: BlockRecord, begins: int) -> bool:
    """Whether the air in its room and the services it draws on allow a block's own work to begin at a moment."""
    end = begins + block.length
    for at in range(block.rival_to, block.air_to):
        if not is_clear(shop, shop.draws[at].what, begins, end + shop.draws[at].after):
            return False
    if block.taker_to > block.lag_to and not can_hold(shop, block, end):
        return False
    for at in range(block.stretch_from, block.stretch_to):
        stretch = shop.stretches[at]
        from_, to = begins + stretch.offset, begins + stretch.offset + stretch.length
        for each in range(stretch.draw_from, stretch.draw_to):
            if not can_draw(shop, shop.draws[each].what, shop.draws[each].count, from_, to):
                return False
    return True


def can_hold(shop: Shop, block: BlockRecord, end: int) -> bool:
    """Whether a block's pieces can hold their services from its end until nobody knows when, and leave enough for whoever must
    come before they are taken off (Habermann 1969: something that holds can then always be brought to its end)."""
    for at in range(block.hold_from, block.hold_to):
        hold = shop.draws[at]
        if not can_draw(shop, hold.what, hold.count, end, BIG):
            return False
        left = shop.capacities[hold.what] - hold.count - taken_at(shop, hold.what, end)
        for each in range(block.hold_to, block.rival_to if shop.go.careful == 1 else block.hold_to):
            rival = shop.draws[each]
            if rival.what == hold.what and shop.blocks[rival.block].start < 0:
                left -= rival.count
        if left < 0:
            return False
    return True


def take_off(shop: Shop, block: BlockRecord, start: int) -> None:
    """Let a block that begins at ``start`` take off what it waited for: where it is the last that did, what was held until
    then is free."""
    for at in range(block.lag_from, block.lag_to):
        before = shop.blocks[shop.lags[at].block]
        before.takers -= 1
        if before.takers == 0 and before.hold_to > before.hold_from:
            end_hold(shop, before, max(start, taken_off(shop, before)))


def put_back(shop: Shop, block: BlockRecord) -> None:
    """Undo it."""
    for at in range(block.lag_from, block.lag_to):
        before = shop.blocks[shop.lags[at].block]
        if before.takers == 0 and before.hold_to > before.hold_from:
            end_hold(shop, before, BIG)
        before.takers += 1


def taken_off(shop: Shop, block: BlockRecord) -> int:
    """When the last of those that are placed took off what a block holds."""
    found = 0
    for at in range(block.lag_to, block.taker_to):
        found = max(found, shop.blocks[shop.lags[at].block].start)
    return found


def end_hold(shop: Shop, block: BlockRecord, end: int) -> None:
    """What a block's pieces hold is free from ``end`` on."""
    for at in range(shop.go.taken_count):
        if shop.taken[at].holder == block.index:
            shop.taken[at].end = end
            shop.go.taken_until = min(shop.go.taken_until, end)


def can_handle(shop: Shop, block: BlockRecord, hands: int, start: int, setup: int) -> bool:
    """Whether somebody can put hands to a block: a setup and all that follows by hand without a pause are one."""
    station, begins = shop.stations[block.station], start + setup
    since, until = start if setup > 0 else -1, begins
    for at in range(block.stretch_from, block.stretch_to + 1):
        if at < block.stretch_to and shop.stretches[at].attendance == HANDS:
            stretch = shop.stretches[at]
            since = begins + stretch.offset if since < 0 else since
            until = begins + stretch.offset + stretch.length
        elif since >= 0:
            if not can_attend(shop, shop.people[hands], HANDS, station, since, until):
                return False
            since = -1
    return True


def choose(shop: Shop, block: BlockRecord, hands: int, others: int, begins: int) -> bool:
    """Choose who watches a block's machine, where it must be watched; False where nobody can."""
    shop.go.chosen_count = 0
    for at in range(block.stretch_from, block.stretch_to):
        stretch = shop.stretches[at]
        if stretch.attendance == WATCH:
            from_ = begins + stretch.offset
            return choose_watchers(shop, hands, others, shop.stations[block.station], from_, from_ + stretch.length)
    return True


def place(shop: Shop, block: BlockRecord, hands: int, start: int, setup: int) -> None:
    """Begin a block whose watchers lie in ``chosen``: it takes as long as it really will."""
    station, tick = shop.stations[block.station], start
    if setup > 0:
        tick += block.real_setup
        attend(shop, shop.people[hands], HANDS, station.index, station.room, start, tick)
    begins = tick
    take_off(shop, block, start)
    block.start, block.set_up, block.hands = start, setup, hands
    for at in range(block.stretch_from, block.stretch_to):
        stretch = shop.stretches[at]
        from_, tick = tick, tick + stretch.real
        for each in range(stretch.draw_from, stretch.draw_to):
            draw_on(shop, shop.draws[each].what, shop.draws[each].count, from_, tick, -1)
        if stretch.attendance == HANDS:
            attend(shop, shop.people[hands], HANDS, station.index, station.room, from_, tick)
        elif stretch.attendance == WATCH:
            watch(shop, block, station, from_, tick)
    block.end = tick
    until = BIG if block.takers > 0 else taken_off(shop, block)
    for at in range(block.hold_from, block.hold_to):
        draw_on(shop, shop.draws[at].what, shop.draws[at].count, tick, until, block.index)
    for at in range(block.rival_to, block.air_to):
        draw_on(shop, shop.draws[at].what, 1, begins, tick + shop.draws[at].after, -1)
    station.free = tick if block.is_unloaded == 0 else BIG
    if block.family >= 0:
        station.stands_on = block.family


def watch(shop: Shop, block: BlockRecord, station: StationRecord, start: int, end: int) -> None:
    """Let the chosen watch a machine, each until the next takes over."""
    first, count = shop.go.watcher_count, shop.go.chosen_count
    for at in range(first, first + count):
        person = shop.watchers[at].person
        from_ = start if at == first else shop.watchers[at].start
        to = end if at + 1 == first + count else min(end, shop.watchers[at + 1].start)
        if from_ < to:
            attend(shop, shop.people[person], WATCH, station.index, station.room, from_, to)
            watcher = shop.watchers[shop.go.watcher_count]
            watcher.block, watcher.person, watcher.start = block.index, person, from_
            shop.go.watcher_count += 1


# groups


def try_group(shop: Shop, group: GroupRecord, tick: int) -> int:
    """Place all that is left of a group from ``tick`` on; answers when its first begins, or -1 where it cannot be placed
    yet. One that would begin later only is left for then, unless a part of it was begun: that one waits for the rest."""
    for at in range(group.member_from, group.member_to):
        shop.blocks[shop.members[at]].not_before = 0
    save(shop)
    for _ in range(2 * (group.member_to - group.member_from) + 2):
        first = place_members(shop, group, tick)
        if first >= 0 and (first <= tick + shop.go.farthest or group.unbegun < group.member_to - group.member_from):
            return first
        restore(shop, group)
        if first >= -1:
            group.wake = first if first >= 0 else BIG
            return -1
        if first == -2:
            return -1
    return -1


def place_members(shop: Shop, group: GroupRecord, tick: int) -> int:
    """Place each of a group in turn. When the first begins, or -1 where there is no place for one, -2 where its station is
    held, -3 where one came too late: what it came too late for has to be begun later."""
    first = BIG
    for at in range(group.member_from, group.member_to):
        block = shop.blocks[shop.members[at]]
        if block.begun == 1:
            continue
        block.ready = max(ready_of(shop, block), block.not_before)
        if block.unloads < 0 and shop.stations[block.station].free == BIG:
            return -2
        who, when, moment = -1, -1, max(tick, block.ready)
        while when < 0:
            if moment == BIG:
                return -1
            who, when, _ = find_place(shop, block, moment)
            moment = next_moment(shop, moment)
        begin(shop, block, who, when)
        late = is_late(shop, block)
        if late != 0:
            return late
        first = min(first, when)
    return first


def begin(shop: Shop, block: BlockRecord, hands: int, start: int) -> None:
    """Place a block where ``find_place`` found it."""
    setup = setup_of(shop, block)
    choose(shop, block, hands, shop.go.others_watch, start + setup)
    place(shop, block, hands, start, setup)


def ready_of(shop: Shop, block: BlockRecord) -> int:
    """From when a block may begin, by what it waits for."""
    found = block.release
    if block.unloads >= 0:
        found = max(found, shop.blocks[block.unloads].end)
    for at in range(block.lag_from, block.lag_to):
        found = max(found, shop.blocks[shop.lags[at].block].end + shop.lags[at].least)
    return found


def is_late(shop: Shop, block: BlockRecord) -> int:
    """0 where a block is in time for all that it may not come too late for, else -3, or -1 where nothing can be done."""
    found = 0
    for at in range(block.lag_from, block.lag_to):
        before, latest = shop.blocks[shop.lags[at].block], shop.lags[at].latest
        if latest >= 0 and block.start > before.start + before.set_up + latest:
            if before.begun == 1:
                return -1
            before.not_before = max(before.not_before, block.start - latest)
            found = -3
    return found


def save(shop: Shop) -> None:
    """Remember what a try changes."""
    go = shop.go
    go.was_taken_count, go.was_taken_until, go.was_watcher_count = go.taken_count, go.taken_until, go.watcher_count
    for person in shop.people:
        person.was_span_to = person.span_to
    for station in shop.stations:
        station.was_free, station.was_on = station.free, station.stands_on


def restore(shop: Shop, group: GroupRecord) -> None:
    """Take back a try: what was added lies at the end of each list."""
    go = shop.go
    go.taken_count, go.taken_until, go.watcher_count = go.was_taken_count, go.was_taken_until, go.was_watcher_count
    for person in shop.people:
        person.span_to = person.was_span_to
    for station in shop.stations:
        station.free, station.stands_on = station.was_free, station.was_on
    for at in range(group.member_from, group.member_to):
        block = shop.blocks[shop.members[at]]
        if block.begun == 0 and block.start >= 0:
            block.start = -1
            put_back(shop, block)
