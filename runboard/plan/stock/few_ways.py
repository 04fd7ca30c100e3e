"""The same boards cut in fewer different ways: who saws sets the stop less often, and more of what is left stays in one piece.

Every way that a board can be cut is listed where there are not too many; then whole boards are chosen among them, of no kind more than
before: in few different ways, and with one long offcut. A way fewer is worth as much as a longest offcut longer by a tenth of the longest
board; that rate is a choice, not a law.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from runboard.plan.stock.lengths import Cuts, Source
from runboard.plan.stock.nest import A_MM

_MOST_WAYS = 2_000  # that are chosen among; above it only those that are known
_A_WAY = 0.1  # of the longest board, on the longest offcut
_EFFORT = 0.4  # in the solver's deterministic seconds

Way = tuple[str, Cuts]  # a kind of board, and what it is cut into
Boards = Sequence[tuple[Source, Cuts, int]]


@dataclass(frozen=True)
class Ways:
    """``boards``: how many of a kind are cut in a way. ``is_best`` where it is proved that none is better with these boards, to the
    millimetre."""

    boards: tuple[tuple[str, Cuts, int], ...]
    is_best: bool


def in_few_ways(sizes: Sequence[int], boards: Boards) -> Ways:
    """The same pieces out of as many boards of each kind or fewer. ``sizes`` as for ``cut_to_length``, whose boards these are."""
    known = _together(boards)
    if not known:
        return Ways((), True)
    rooms = {source.key: source.room for source, _, _ in boards}
    counts = [sum(cuts[at] * times for (_, cuts), times in known.items()) for at in range(len(sizes))]
    listed = _all_ways(sizes, counts, rooms)
    found, is_best = _chosen(sizes, counts, rooms, known, listed or [*known])
    order = sorted(found.items(), key=lambda one: ([*rooms].index(one[0][0]), -one[1], [-cut for cut in one[0][1]]))
    return Ways(tuple((key, cuts, times) for (key, cuts), times in order), is_best and bool(listed))


def _together(boards: Boards) -> dict[Way, int]:
    """Boards that are bought and boards at hand are cut alike."""
    found: dict[Way, int] = {}
    for source, cuts, times in boards:
        found[source.key, cuts] = found.get((source.key, cuts), 0) + times
    return found


def _all_ways(sizes: Sequence[int], counts: Sequence[int], rooms: Mapping[str, int]) -> list[Way]:
    """Every way to cut a board of each kind; none where there are too many."""
    found: list[Way] = []
    for key, room in rooms.items():
        for cuts in _ways(sizes, counts, room):
            if any(cuts):
                found.append((key, cuts))
            if len(found) > _MOST_WAYS:
                return []
    return found


def _ways(sizes: Sequence[int], counts: Sequence[int], room: int) -> Iterator[Cuts]:
    if not sizes:
        yield ()
        return
    for count in range(min(counts[0], room // sizes[0]), -1, -1):
        for rest in _ways(sizes[1:], counts[1:], room - count * sizes[0]):
            yield (count, *rest)


def _chosen(
    sizes: Sequence[int], counts: Sequence[int], rooms: Mapping[str, int], known: Mapping[Way, int], ways: Sequence[Way]
) -> tuple[dict[Way, int], bool]:
    """How often each way; whether it is proved that none is better."""
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    most = {key: sum(times for (of, _), times in known.items() if of == key) for key in rooms}
    taken = [model.new_int_var(0, most[key], "") for key, _ in ways]
    used, longest = [model.new_bool_var("") for _ in ways], [model.new_bool_var("") for _ in ways]
    for at, count in enumerate(counts):
        model.add(sum(cuts[at] * var for var, (_, cuts) in zip(taken, ways, strict=True) if cuts[at]) == count)
    for key in rooms:
        model.add(sum(var for var, (of, _) in zip(taken, ways, strict=True) if of == key) <= most[key])
    for number, (key, cuts) in enumerate(ways):
        model.add(taken[number] <= most[key] * used[number])
        model.add(longest[number] <= taken[number])
        model.add_hint(taken[number], known.get((key, cuts), 0))
        model.add_hint(used[number], (key, cuts) in known)
    model.add_exactly_one(longest)
    rests = [
        (rooms[key] - sum(size * cut for size, cut in zip(sizes, cuts, strict=True))) // A_MM for key, cuts in ways
    ]
    left = sum(rest * var for rest, var in zip(rests, longest, strict=True))
    model.minimize(max(1, round(max(rooms.values()) / A_MM * _A_WAY)) * sum(used) - left)
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.random_seed = 1
    solver.parameters.max_deterministic_time = _EFFORT
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return dict(known), False
    found = {way: solver.value(var) for way, var in zip(ways, taken, strict=True) if solver.value(var)}
    return found, status == cp_model.OPTIMAL
