"""What people, stations, services and the air of a room allow from one moment to another; when that changes next; and how
often people walk."""

from runboard.plan.schedule.rule.kernel.records import (
    BIG,
    HANDS,
    MOST_WATCHERS,
    WATCH,
    PersonRecord,
    Shop,
    SpanRecord,
    StationRecord,
)


def closing(shop: Shop, at: int, to: int, tick: int) -> int:
    """When those of the hours from ``at`` on close that are open at a tick; -1 where none are."""
    while at < to and shop.hours[at].closes <= tick:
        at += 1
    return shop.hours[at].closes if at < to and shop.hours[at].opens <= tick else -1


def walk_between(shop: Shop, one: int, other: int) -> int:
    """Ticks from room to room; none from where nobody knows."""
    return 0 if one < 0 or other < 0 else shop.walks[one][other]


def room_of(shop: Shop, person: PersonRecord) -> int:
    """Where somebody is by what they do last."""
    return shop.spans[person.index][person.span_to - 1].room


def can_overlap(shop: Shop, what: int, station: StationRecord, span: SpanRecord) -> bool:
    """Whether somebody can be at a station, as HANDS or WATCH, during another span of theirs."""
    if what == HANDS:
        return span.what == WATCH and shop.in_sight[span.station][station.index] == 1
    if span.what == HANDS:
        return shop.in_sight[station.index][span.station] == 1
    return shop.together[station.index][span.station] == 1


def arrival(shop: Shop, person: PersonRecord, station: StationRecord, tick: int) -> int:
    """The first moment from ``tick`` on at which somebody who is free can put hands to a station; -1 where they are not."""
    found, spans = tick, shop.spans[person.index]
    for at in range(person.span_to - 1, person.span_from - 1, -1):  # what keeps them is mostly the last
        span = spans[at]
        if span.end <= tick:
            found = max(found, span.end + walk_between(shop, span.room, station.room))
        elif span.start <= tick and not can_overlap(shop, HANDS, station, span):
            return -1
    return found


def can_attend(shop: Shop, person: PersonRecord, what: int, station: StationRecord, start: int, end: int) -> bool:
    """Whether somebody can be at a station from start to end, beside all that they do already."""
    if closing(shop, person.open, person.hour_to, start) < end:
        return False
    spans = shop.spans[person.index]
    for at in range(person.span_from, person.span_to):
        span = spans[at]
        if start < span.end and span.start < end:
            if not can_overlap(shop, what, station, span):
                return False
        elif span.room != station.room:
            gap = start - span.end if start >= span.end else span.start - end
            if gap < walk_between(shop, span.room, station.room):
                return False
    return True


def attend(shop: Shop, person: PersonRecord, what: int, station: int, room: int, start: int, end: int) -> None:
    """Somebody is at a station from start to end."""
    span = shop.spans[person.index][person.span_to]
    span.start, span.end, span.what, span.station, span.room = start, end, what, station, room
    person.span_to += 1


def choose_watchers(shop: Shop, hands: int, others: int, station: StationRecord, start: int, end: int) -> bool:
    """Find who watches a machine from start to end: one person, or one after another where hours end meanwhile.

    Whoever loaded it comes first, or, with ``others``, whoever is in the room already. The answer is put behind ``watchers``.
    """
    tick, count, last = start, 0, -1
    while tick < end and count < MOST_WATCHERS:
        best, best_reach, best_rank = -1, tick, BIG
        for person in shop.people:
            reach = min(closing(shop, person.open, person.hour_to, tick), end)
            rank = 1 if person.index == hands else 3
            if person.index != hands and room_of(shop, person) == station.room:
                rank = 0 if others == 1 else 2
            better = reach > best_reach or (reach == best_reach and rank < best_rank)
            if person.index == last or reach <= tick or not better:
                continue
            if can_attend(shop, person, WATCH, station, tick, reach):
                best, best_reach, best_rank = person.index, reach, rank
        if best < 0:
            return False
        chosen = shop.watchers[shop.go.watcher_count + count]
        chosen.person, chosen.start = best, tick
        tick, last = best_reach, best
        count += 1
    shop.go.chosen_count = count if tick >= end else 0
    return tick >= end


def taken_at(shop: Shop, what: int, tick: int) -> int:
    """How much of a service is drawn at a tick."""
    found = 0
    for at in range(shop.go.taken_count):
        use = shop.taken[at]
        if use.what == what and use.start <= tick < use.end:
            found += use.count
    return found


def can_draw(shop: Shop, what: int, count: int, start: int, end: int) -> bool:
    """Whether so much of a service is free all the time from start to end."""
    most = shop.capacities[what] - count
    if taken_at(shop, what, start) > most:
        return False
    for at in range(shop.go.taken_count):
        use = shop.taken[at]
        if use.what == what and start < use.start < end and taken_at(shop, what, use.start) > most:
            return False
    return True


def is_clear(shop: Shop, what: int, start: int, end: int) -> bool:
    """Whether nothing is in a room's air from start to end that may not be there with one of WET, DUST, SOLVENT, HEAT."""
    for at in range(shop.go.taken_count):
        use = shop.taken[at]
        if use.what == what ^ 1 and start < use.end and use.start < end:
            return False
    return True


def draw_on(shop: Shop, what: int, count: int, start: int, end: int, holder: int) -> None:
    """Take so much of a service, or be in a room's air, from start to end."""
    if start < end:
        use = shop.taken[shop.go.taken_count]
        use.what, use.start, use.end, use.count, use.holder = what, start, end, count, holder
        shop.go.taken_count += 1
        shop.go.taken_until = min(shop.go.taken_until, end)


def forget(shop: Shop, tick: int) -> None:
    """Let go of what is over: spans from which no walk reaches any longer, draws, hours. Most ticks end none."""
    go = shop.go
    for person in shop.people:
        spans = shop.spans[person.index]
        while person.span_from < person.span_to and spans[person.span_from].end + go.farthest <= tick:
            person.span_from += 1
    if go.taken_until <= tick:
        many, go.taken_count, go.taken_until = go.taken_count, 0, BIG
        for at in range(many):
            use = shop.taken[at]
            if use.end > tick:
                draw_on(shop, use.what, use.count, use.start, use.end, use.holder)
    if go.open_until <= tick:
        go.open_until = BIG
        for person in shop.people:
            person.open = first_open(shop, person.open, person.hour_to, tick)
        for station in shop.stations:
            station.open = first_open(shop, station.open, station.hour_to, tick)
    while shop.openings[go.next_opening] <= tick:
        go.next_opening += 1


def first_open(shop: Shop, at: int, to: int, tick: int) -> int:
    """The first of somebody's or a station's hours, from ``at`` on, that are not over; and note when they will be."""
    while at < to and shop.hours[at].closes <= tick:
        at += 1
    if at < to:
        shop.go.open_until = min(shop.go.open_until, shop.hours[at].closes)
    return at


def next_moment(shop: Shop, tick: int) -> int:
    """The first moment after ``tick`` at which somebody, a station, a service or a room's air is free; BIG after the last."""
    at = shop.go.next_opening
    while shop.openings[at] <= tick:
        at += 1
    found = shop.openings[at]
    for person in shop.people:
        spans = shop.spans[person.index]
        for each in range(person.span_from, person.span_to):
            if tick < spans[each].end < found:
                found = spans[each].end
    for station in shop.stations:
        if tick < station.free < found:
            found = station.free
    if shop.go.taken_until > tick:
        return min(found, shop.go.taken_until)
    for at in range(shop.go.taken_count):
        if tick < shop.taken[at].end < found:
            found = shop.taken[at].end
    return found


# walks


def walks_of(shop: Shop, person: PersonRecord) -> int:
    """How often somebody goes from a room to another: they are where their hands are, and while they only watch in that room.
    Room and moment of each thing that they turn to lie in ``places``, as one number, in order."""
    spans, count, until, low = shop.spans[person.index], 0, -1, 1
    put_in_order(shop, person)
    for at in range(1, person.span_to):
        span = spans[shop.order[at]]
        if 0 <= until < span.start:
            count, low = turn_back(shop, person, low, count, until)
            until = -1
        if span.what == HANDS or until <= span.start:
            count = turn_to(shop, count, span.start, span.room)
        if span.what == HANDS and span.end > span.start:
            until = max(until, span.end)
    if until >= 0:
        count, low = turn_back(shop, person, low, count, until)
    room, found = person.seen, 0
    for at in range(count):
        found += room not in (-1, shop.places[at] % len(shop.spoiling))
        room = shop.places[at] % len(shop.spoiling)
    return found


def put_in_order(shop: Shop, person: PersonRecord) -> None:
    """Put somebody's spans behind the first in ``order``, by their start, hands first."""
    spans = shop.spans[person.index]
    for at in range(1, person.span_to):
        place, key = at, 2 * spans[at].start + spans[at].what
        while place > 1 and 2 * spans[shop.order[place - 1]].start + spans[shop.order[place - 1]].what > key:
            place -= 1
        insert(shop.order, at, place, at)


def turn_back(shop: Shop, person: PersonRecord, low: int, count: int, tick: int) -> tuple[int, int]:
    """(how many places, the first span that is not over): hands are free at a tick, and what is watched goes on."""
    spans = shop.spans[person.index]
    while low < person.span_to and spans[shop.order[low]].end <= tick:
        low += 1
    for at in range(low, person.span_to):
        span = spans[shop.order[at]]
        if span.start >= tick:
            break
        if span.what != HANDS and span.end > tick:
            count = turn_to(shop, count, tick, span.room)
    return count, low


def turn_to(shop: Shop, count: int, tick: int, room: int) -> int:
    """One more place, where it is not known yet; how many there are then."""
    at, place = count, tick * len(shop.spoiling) + room
    while at > 0 and shop.places[at - 1] > place:
        at -= 1
    if at > 0 and shop.places[at - 1] == place:
        return count
    insert(shop.places, count, at, place)
    return count + 1


def insert(numbers: list[int], count: int, at: int, number: int) -> None:
    """Put a number at a place among so many, those from there on one place later."""
    for place in range(count, at, -1):
        numbers[place] = numbers[place - 1]
    numbers[at] = number
