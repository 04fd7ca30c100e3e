"""Blocks that must be placed together: a wait that may not last too long ties what follows it to what came before.

Once the first is begun the rest has its latest moment, so a group is placed as one, with all of it found a place at once.
"""

from runboard.plan.schedule.problem.nouns import Problem


def groups_of(problem: Problem) -> list[list[int]]:
    """Groups of blocks, each in an order in which they can be placed: an unloading right after what it unloads."""
    if not any(lag.latest is not None for block in problem.blocks for lag in block.lags):
        return []
    label = list(range(len(problem.blocks)))
    for block in problem.blocks:
        for lag in block.lags:
            if lag.latest is not None:
                _join(label, block.index, lag.before)
    _tie_loads(problem, label)
    while _close(problem, label):
        _tie_loads(problem, label)
    members: dict[int, list[int]] = {}
    for index, group in enumerate(label):
        members.setdefault(group, []).append(index)
    return [_in_order(problem, group) for group in members.values() if len(group) > 1]


def _join(label: list[int], one: int, other: int) -> None:
    kept, gone = sorted((label[one], label[other]))
    label[:] = [kept if group == gone else group for group in label]


def _tie_loads(problem: Problem, label: list[int]) -> None:
    """A load that would hold its station until a group is placed belongs to the group: the group may need the station."""
    for block in problem.blocks:
        if block.unloads is not None and (_is_tied(label, block.index) or _is_tied(label, block.unloads)):
            _join(label, block.index, block.unloads)


def _is_tied(label: list[int], block: int) -> bool:
    return label.count(label[block]) > 1


def _close(problem: Problem, label: list[int]) -> bool:
    """Take in what waits for one of a group while another of it waits for that; answers whether anything was."""
    after: dict[int, set[int]] = {group: set() for group in label}
    for block in problem.blocks:
        for before in _waits_for(problem, block.index):
            if label[before] != label[block.index]:
                after[label[before]].add(label[block.index])
    for group in after:
        reached = _reached(after, group)
        ring = [one for one in reached if group in after[one]]
        if ring:
            _join(label, group, ring[0])
            return True
    return False


def _reached(after: dict[int, set[int]], group: int) -> set[int]:
    found: set[int] = set()
    todo = list(after[group])
    while todo:
        one = todo.pop()
        if one not in found:
            found.add(one)
            todo += after[one]
    return found


def _waits_for(problem: Problem, block: int) -> list[int]:
    one = problem.blocks[block]
    return [lag.before for lag in one.lags] + ([] if one.unloads is None else [one.unloads])


def _in_order(problem: Problem, members: list[int]) -> list[int]:
    found: list[int] = []
    left = sorted(members)
    while left:
        free = [one for one in left if not set(_waits_for(problem, one)) & set(left)]
        unloading = [one for one in free if problem.blocks[one].unloads in found[-1:]]
        found.append((unloading or free)[0])
        left.remove(found[-1])
    return found
