"""How often people walk in what a go left behind it."""

from runboard.plan.schedule.rule.kernel.records import HANDS, Person, Shop


def walks_of(shop: Shop, person: Person) -> int:
    """How often somebody goes from a room to another: they are where their hands are, and while they only watch in that room.
    Room and moment of each thing that they turn to lie in ``places``, as one number, in order."""
    spans, rooms, count, until = shop.spans[person.index], len(shop.rooms), 0, -1
    first = put_in_order(shop, person)
    low = first
    for at in range(first, person.span_to):
        span = spans[shop.order[at]]
        if 0 <= until < span.start:
            count, low = turn_back(shop, person, low, count, until)
            until = -1
        if span.what == HANDS:
            count = turn_to(shop, count, span.start * rooms + span.room)
            until = max(until, span.end) if span.end > span.start else until
        elif until <= span.start:
            count = turn_to(shop, count, span.start * rooms + span.room)
    if until >= 0:
        count, low = turn_back(shop, person, low, count, until)
    room, found = person.seen, 0
    for at in range(count):
        found += room not in (-1, shop.places[at] % rooms)
        room = shop.places[at] % rooms
    return found


def put_in_order(shop: Shop, person: Person) -> int:
    """Put somebody's spans in ``order``, by their start, hands first. The first of them: where they were seen is none."""
    spans, first = shop.spans[person.index], int(person.seen >= 0)
    for at in range(first, person.span_to):
        place, key = at, 2 * spans[at].start + spans[at].what
        while place > first and 2 * spans[shop.order[place - 1]].start + spans[shop.order[place - 1]].what > key:
            shop.order[place] = shop.order[place - 1]
            place -= 1
        shop.order[place] = at
    return first


def turn_back(shop: Shop, person: Person, low: int, count: int, tick: int) -> tuple[int, int]:
    """(how many places, the first span that is not over): hands are free at a tick, and what is watched goes on."""
    spans = shop.spans[person.index]
    while low < person.span_to and spans[shop.order[low]].end <= tick:
        low += 1
    for at in range(low, person.span_to):
        span = spans[shop.order[at]]
        if span.start >= tick:
            break
        if span.what != HANDS and span.end > tick:
            count = turn_to(shop, count, tick * len(shop.rooms) + span.room)
    return count, low


def turn_to(shop: Shop, count: int, place: int) -> int:
    """One more place, where it is not known yet; how many there are then."""
    at = count
    while at > 0 and shop.places[at - 1] > place:
        at -= 1
    if at > 0 and shop.places[at - 1] == place:
        return count
    for other in range(count, at, -1):
        shop.places[other] = shop.places[other - 1]
    shop.places[at] = place
    return count + 1
