"""A shorter order by shifting one to three groups at a time to where they are nearer, and by swapping two stretches where that finds no more.

Where many groups wait for others, routing stays where it is pushed to; shifts within what is allowed go on (iterated local search: Lourenço,
Martin & Stützle, 2003; from memory). So many rounds, no clock.
"""

from random import Random

from runboard.plan.program.moves import Array

_LONGEST, _TRIES = 3, 200


def shifted(ticks: Array, before: Array, begin: list[int], rounds: int) -> list[int]:
    """The best order of so many rounds from ``begin``; each keeps what comes before what (``before``, with all that follows from it)."""
    chance = Random(1)  # noqa: S311 - the same answer each time
    ways, waits, many = ticks.tolist(), before.tolist(), len(begin)
    best = _shift_all(ways, waits, begin)
    least = _cost(ways, best)
    for _ in range(rounds if many > 2 else 0):
        found = _shift_all(ways, waits, _swapped(waits, best, chance))
        if (cost := _cost(ways, found)) < least:
            best, least = found, cost
    return best


def _cost(ways: list[list[int]], order: list[int]) -> int:
    many = len(order)
    return sum(ways[one][other] for one, other in zip([many, *order], [*order, many + 1], strict=True))


def _swapped(waits: list[list[bool]], order: list[int], chance: Random) -> list[int]:
    for _ in range(_TRIES):
        first, middle, last = sorted(chance.sample(range(len(order) + 1), 3))
        if not any(waits[one][other] for one in order[first:middle] for other in order[middle:last]):
            return order[:first] + order[middle:last] + order[first:middle] + order[last:]
    return order


def _shift_all(ways: list[list[int]], waits: list[list[bool]], order: list[int]) -> list[int]:
    is_shorter = True
    while is_shorter:
        is_shorter = False
        for long in range(1, _LONGEST + 1):
            for at in range(len(order) - long + 1):
                to = _better_place(ways, waits, order, at, long)
                if to >= 0:
                    rest = order[:at] + order[at + long :]
                    order, is_shorter = rest[:to] + order[at : at + long] + rest[to:], True
    return order


def _better_place(ways: list[list[int]], waits: list[list[bool]], order: list[int], at: int, long: int) -> int:
    """Where among the others these would be nearest, -1 where they are."""
    many = len(order)
    ends, own = [many, *order, many + 1], order[at : at + long]
    gain = ways[ends[at]][own[0]] + ways[own[-1]][ends[at + long + 1]] - ways[ends[at]][ends[at + long + 1]]
    best, least = -1, 0
    for places in (range(at + long, many), range(at - 1, -1, -1)):
        is_behind = places.step > 0
        for place in places:
            passed = order[place]
            if any(waits[one][passed] if is_behind else waits[passed][one] for one in own):
                break
            left, right = (passed, ends[place + 2]) if is_behind else (ends[place], passed)
            longer = ways[left][own[0]] + ways[own[-1]][right] - ways[left][right] - gain
            if longer < least:
                best, least = (place + 1 - long if is_behind else place), longer
    return best
