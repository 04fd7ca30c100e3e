"""The state of one go of the dispatch rule, before anything is placed."""

from runboard.plan.schedule.rule.kernel import layout
from runboard.plan.schedule.rule.kernel.layout import BLOCK_WIDTH, BLOCKS

Table = list[int]


def fresh_state(t: Table) -> Table:
    """The row ``s`` for a problem's row ``t``. Another go needs only its first STARTING places anew: what lies behind them
    is written before it is read."""
    blocks, people, stations = t[layout.BLOCK_COUNT], t[layout.PEOPLE_COUNT], t[layout.STATION_COUNT]
    groups, draws = t[layout.GROUP_COUNT], _draws(t)
    spans = 2 * blocks + t[layout.STRETCH_COUNT] + layout.MOST_WATCHERS * blocks + 1
    starting: dict[int, Table] = {
        layout.START: [-1] * blocks,
        layout.READY: [t[t[BLOCKS] + one * BLOCK_WIDTH + layout.RELEASE] for one in range(blocks)],
        layout.LEFT: _left(t),
        layout.FRONT: [0] * (blocks + groups),
        layout.FIRST_OF: [-1] * t[layout.KIND_COUNT],
        layout.FREE: [0] * stations,
        layout.STANDS_ON: [t[t[layout.STATIONS] + 5 * one + 4] for one in range(stations)],
        layout.ROOM_OF: [t[t[layout.PEOPLE] + 3 * one] for one in range(people)],
        layout.SPAN_COUNT: [0] * people,
        layout.OPEN_WINDOW: [t[t[layout.PEOPLE] + 3 * one + 1] for one in range(people)],
        layout.OPEN_RUN: [t[t[layout.STATIONS] + 5 * one + 2] for one in range(stations)],
        layout.HANDS_FROM: [0] * people,
        layout.HANDS_TO: [0] * people,
        layout.FAILED: [-1] * t[layout.KIND_COUNT],
        layout.GROUP_LEFT: _group_left(t),
        layout.GROUP_WAKE: [0] * groups,
        layout.GROUP_FAILED: [-1] * groups,
        layout.SPOIL_LEFT: _spoil_left(t),
    }
    written_first: dict[int, Table] = {
        layout.SET_UP: [0] * blocks,
        layout.BY_HANDS: [-1] * blocks,
        layout.END: [0] * blocks,
        layout.CHOSEN: [0] * (2 * layout.MOST_WATCHERS),
        layout.NEXT_OF: [-1] * blocks,
        layout.WAITING: [0] * blocks,
        layout.NOT_BEFORE: [0] * blocks,
        layout.SAVED: [0] * (5 + 4 * people + 2 * stations),
        layout.TAKEN: [0] * (4 * draws),
        layout.AIR: [0] * (8 * blocks),
        layout.WATCHERS: [0] * (3 * layout.MOST_WATCHERS * blocks),
        layout.SPANS: [0] * (people * spans * layout.SPAN_WIDTH),
    }
    state = _laid_out({**starting, **written_first}, spans)
    state[layout.STARTING] = state[layout.SET_UP]
    _fill_front(t, state)
    return state


def _laid_out(sections: dict[int, Table], spans: int) -> Table:
    head, at = [0] * layout.STATE_HEAD, layout.STATE_HEAD
    for section, values in sections.items():
        head[section] = at
        at += len(values)
    head[layout.SPAN_ROOM] = spans
    head[layout.DRAWS_UNTIL] = head[layout.AIR_UNTIL] = layout.BIG
    return [*head, *(value for values in sections.values() for value in values)]


def _draws(t: Table) -> int:
    """How many draws there can be at once: never more than all of them."""
    return (t[layout.LAGS] - t[layout.DRAWS]) // 2 + (t[layout.ABLE] - t[layout.HOLDS]) // 3


def _edges(t: Table) -> list[tuple[int, int]]:
    """(before, after) of all that wait for one another."""
    found = []
    for one in range(t[layout.BLOCK_COUNT]):
        row = t[BLOCKS] + one * BLOCK_WIDTH
        for at in range(t[row + layout.FOLLOW_FROM], t[row + layout.FOLLOW_TO]):
            found.append((one, t[t[layout.FOLLOWERS] + 2 * at]))
    return found


def _left(t: Table) -> Table:
    left = [0] * t[layout.BLOCK_COUNT]
    for _, after in _edges(t):
        left[after] += 1
    return left


def _group(t: Table, block: int) -> int:
    return t[t[BLOCKS] + block * BLOCK_WIDTH + layout.GROUP]


def _begun(t: Table, block: int) -> bool:
    return t[t[BLOCKS] + block * BLOCK_WIDTH + layout.BEGUN] == 1


def _group_left(t: Table) -> Table:
    """For each group what it waits for outside itself."""
    left = [0] * t[layout.GROUP_COUNT]
    for before, after in _edges(t):
        group = _group(t, after)
        if group >= 0 and group != _group(t, before) and not _begun(t, after):
            left[group] += 1
    return left


def _spoil_left(t: Table) -> Table:
    left = [0] * t[layout.ROOM_COUNT]
    for one in range(t[layout.BLOCK_COUNT]):
        row = t[BLOCKS] + one * BLOCK_WIDTH
        left[t[t[layout.STATIONS] + 5 * t[row + layout.STATION]]] += t[row + layout.DUSTY]
    return left


def _fill_front(t: Table, state: Table) -> None:
    front = []
    for block in range(t[layout.BLOCK_COUNT]):
        if not _begun(t, block) and _group(t, block) < 0 and state[state[layout.LEFT] + block] == 0:
            front.append(block)
    for group in range(t[layout.GROUP_COUNT]):
        members = range(t[t[layout.GROUPS] + 2 * group], t[t[layout.GROUPS] + 2 * group + 1])
        waiting = [at for at in members if not _begun(t, t[t[layout.MEMBERS] + at])]
        if waiting and state[state[layout.GROUP_LEFT] + group] == 0:
            front.append(t[layout.BLOCK_COUNT] + group)
    state[state[layout.FRONT] : state[layout.FRONT] + len(front)] = front
    state[layout.FRONT_COUNT] = len(front)
