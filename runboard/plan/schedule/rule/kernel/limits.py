"""What people, stations, services and the air of a room allow from one moment to another; and when that changes next."""

from runboard.plan.schedule.rule.kernel.records import (
    BIG,
    HANDS,
    MOST_WATCHERS,
    WATCH,
    Person,
    Shop,
    Span,
    Station,
    Use,
)


def closing(shop: Shop, person: Person, tick: int) -> int:
    """When the window that is open for somebody at a tick closes; -1 where none is."""
    for at in range(person.open, person.hour_to):
        hours = shop.hours[at]
        if hours.closes > tick:
            return hours.closes if hours.opens <= tick else -1
    return -1


def may_run(shop: Shop, station: Station, start: int, end: int) -> bool:
    """Whether a station may be used all the time from start to end."""
    for at in range(station.open, station.hour_to):
        hours = shop.hours[at]
        if hours.closes > start:
            return hours.opens <= start and end <= hours.closes
    return False


def walk_between(shop: Shop, one: int, other: int) -> int:
    """Ticks from room to room; none from where nobody knows."""
    return 0 if one < 0 or other < 0 else shop.walks[one][other]


def can_overlap(shop: Shop, what: int, station: Station, span: Span) -> bool:
    """Whether somebody can be at a station, as HANDS or WATCH, during another span of theirs."""
    if what == HANDS:
        return span.what == WATCH and shop.in_sight[span.station][station.index] == 1
    if span.what == HANDS:
        return shop.in_sight[station.index][span.station] == 1
    return shop.together[station.index][span.station] == 1


def arrival(shop: Shop, person: Person, station: Station, tick: int) -> int:
    """The first moment from ``tick`` on at which somebody who is free can put hands to a station; -1 where they are not."""
    found, spans = tick, shop.spans[person.index]
    for at in range(person.span_from, person.span_to):
        span = spans[at]
        if span.end <= tick:
            found = max(found, span.end + walk_between(shop, span.room, station.room))
        elif span.start <= tick and not can_overlap(shop, HANDS, station, span):
            return -1
    return found


def can_attend(shop: Shop, person: Person, what: int, station: Station, start: int, end: int) -> bool:
    """Whether somebody can be at a station from start to end, beside all that they do already."""
    if closing(shop, person, start) < end:
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


def attend(shop: Shop, person: Person, what: int, station: int, room: int, start: int, end: int) -> None:
    """Somebody is at a station from start to end."""
    span = shop.spans[person.index][person.span_to]
    span.start, span.end, span.what, span.station, span.room = start, end, what, station, room
    person.span_to += 1
    person.room = room
    if what == HANDS:
        person.hands_from, person.hands_to = start, end


def choose_watchers(shop: Shop, hands: int, others: int, station: Station, start: int, end: int) -> bool:
    """Find who watches a machine from start to end: one person, or one after another where hours end meanwhile.

    Whoever loaded it comes first, or, with ``others``, whoever is in the room already. The answer lies in ``chosen``.
    """
    tick, count, last = start, 0, -1
    while tick < end and count < MOST_WATCHERS:
        best, best_reach, best_rank = -1, tick, BIG
        for person in shop.people:
            reach = min(closing(shop, person, tick), end)
            rank = 1 if person.index == hands else 3
            if person.index != hands and person.room == station.room:
                rank = 0 if others == 1 else 2
            better = reach > best_reach or (reach == best_reach and rank < best_rank)
            if person.index == last or reach <= tick or not better:
                continue
            if can_attend(shop, person, WATCH, station, tick, reach):
                best, best_reach, best_rank = person.index, reach, rank
        if best < 0:
            return False
        shop.chosen[count].person, shop.chosen[count].start = best, tick
        tick, last = best_reach, best
        count += 1
    shop.go.chosen_count = count if tick >= end else 0
    return tick >= end


def taken_at(shop: Shop, service: int, tick: int) -> int:
    """How much of a service is drawn at a tick."""
    found = 0
    for at in range(shop.go.taken_count):
        use = shop.taken[at]
        if use.what == service and use.start <= tick < use.end:
            found += use.count
    return found


def can_draw(shop: Shop, service: int, count: int, start: int, end: int) -> bool:
    """Whether so much of a service is free all the time from start to end."""
    most = shop.capacities[service] - count
    if taken_at(shop, service, start) > most:
        return False
    for at in range(shop.go.taken_count):
        use = shop.taken[at]
        if use.what == service and start < use.start < end and taken_at(shop, service, use.start) > most:
            return False
    return True


def draw_on(shop: Shop, service: int, count: int, start: int, end: int, holder: int) -> None:
    """Take so much of a service from start to end."""
    use = shop.taken[shop.go.taken_count]
    use.what, use.start, use.end, use.count, use.holder = service, start, end, count, holder
    shop.go.taken_count += 1
    shop.go.taken_until = min(shop.go.taken_until, end)


def is_clear(shop: Shop, room: int, what: int, start: int, end: int) -> bool:
    """Whether a room's air allows WET, DUST, SOLVENT or HEAT from start to end."""
    for at in range(shop.go.air_count):
        use = shop.air[at]
        # Of each pair of numbers one may not be where the other is.
        if use.what == 4 * room + (what ^ 1) and start < use.end and use.start < end:
            return False
    return True


def fill_air(shop: Shop, room: int, what: int, start: int, end: int) -> None:
    """One of them is in a room's air from start to end."""
    use = shop.air[shop.go.air_count]
    use.what, use.start, use.end = 4 * room + what, start, end
    shop.go.air_count += 1
    shop.go.air_until = min(shop.go.air_until, end)


def forget(shop: Shop, tick: int) -> None:
    """Let go of what is over: spans from which no walk reaches any longer, draws, air, hours. Most ticks end none."""
    go = shop.go
    for person in shop.people:
        spans = shop.spans[person.index]
        while person.span_from < person.span_to and spans[person.span_from].end + go.farthest <= tick:
            person.span_from += 1
    if go.taken_until <= tick:
        go.taken_count, go.taken_until = keep_later(shop.taken, go.taken_count, tick)
    if go.air_until <= tick:
        go.air_count, go.air_until = keep_later(shop.air, go.air_count, tick)
    if go.open_until <= tick:
        go.open_until = BIG
        for person in shop.people:
            person.open = first_open(shop, person.open, person.hour_to, tick)
        for station in shop.stations:
            station.open = first_open(shop, station.open, station.hour_to, tick)
    while shop.openings[go.next_opening] <= tick:
        go.next_opening += 1


def keep_later(uses: list[Use], count: int, tick: int) -> tuple[int, int]:
    """Keep of so many uses those that end later than a tick: (how many, the first end)."""
    kept, first = 0, BIG
    for at in range(count):
        use, place = uses[at], uses[kept]
        if use.end > tick:
            first = min(first, use.end)
            place.what, place.start, place.end = use.what, use.start, use.end
            place.count, place.holder = use.count, use.holder
            kept += 1
    return kept, first


def first_open(shop: Shop, at: int, to: int, tick: int) -> int:
    """The first of somebody's or a station's hours, from ``at`` on, that are not over; and note when they will be."""
    while at < to and shop.hours[at].closes <= tick:
        at += 1
    if at < to:
        shop.go.open_until = min(shop.go.open_until, shop.hours[at].closes)
    return at


def next_moment(shop: Shop, tick: int) -> int:
    """The first moment after ``tick`` at which somebody, a station, a service or a room's air is free; BIG after the last."""
    go = shop.go
    at = go.next_opening
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
    found = min(found, first_end(shop.taken, go.taken_until, go.taken_count, tick))
    return min(found, first_end(shop.air, go.air_until, go.air_count, tick))


def first_end(uses: list[Use], first: int, count: int, tick: int) -> int:
    """The first end after ``tick`` of so many uses; ``first`` is the first of all."""
    if first > tick:
        return first
    found = BIG
    for at in range(count):
        if tick < uses[at].end < found:
            found = uses[at].end
    return found
