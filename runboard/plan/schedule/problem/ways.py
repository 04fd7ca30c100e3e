"""The least walking that joins some rooms."""

from runboard.plan.schedule.problem.nouns import Problem


def shortest_ways(problem: Problem, rooms: tuple[int, ...]) -> list[int]:
    """The ways of the shortest tree over rooms, in ticks: one fewer than the rooms (Prim 1957)."""
    reached, found = {rooms[0]}, []
    while len(reached) < len(rooms):
        walk, room = min(
            (min(problem.walks[one][other], problem.walks[other][one]), other)
            for one in reached
            for other in rooms
            if other not in reached
        )
        reached.add(room)
        found.append(walk)
    return found
