"""Who is looked at when something may begin: of each kind the first, and groups, by priority; and who will be, once ready.

Blocks of one kind ask the same of the shop, so behind one of them that is ready no other has to be looked at.
"""

from runboard.plan.schedule.rule.kernel.layout import (
    BLOCK_COUNT,
    BLOCK_WIDTH,
    BLOCKS,
    FIRST_OF,
    FRONT,
    FRONT_COUNT,
    GROUPS,
    KIND,
    MEMBERS,
    NEXT_OF,
    NOT_JOINED,
    READY,
    START,
    UNREADY,
    WAITING,
    WAITING_COUNT,
)
from runboard.plan.schedule.rule.kernel.row import Row


def first_left(t: Row, s: Row, group: int) -> int:
    """The first of a group that is not placed; the group's first where all are."""
    for member in range(t[t[GROUPS] + 2 * group], t[t[GROUPS] + 2 * group + 1]):
        if s[s[START] + t[t[MEMBERS] + member]] < 0:
            return t[t[MEMBERS] + member]
    return t[t[MEMBERS] + t[t[GROUPS] + 2 * group]]


def value_of(t: Row, s: Row, priority: Row, one: int) -> int:
    """The priority of a block, or of the first of a group that is not placed."""
    return priority[one] if one < t[BLOCK_COUNT] else priority[first_left(t, s, one - t[BLOCK_COUNT])]


def leave_front(s: Row, at: int) -> None:
    """Take one out of the front, which stays in order."""
    s[FRONT_COUNT] -= 1
    for place_ in range(s[FRONT] + at, s[FRONT] + s[FRONT_COUNT]):
        s[place_] = s[place_ + 1]


def leave_kind(t: Row, s: Row, priority: Row, block: int, at: int) -> None:
    """Take a block out of those of its kind, of which the first is ``at`` its place in the front."""
    first = s[FIRST_OF] + t[t[BLOCKS] + block * BLOCK_WIDTH + KIND]
    if s[first] != block:
        before = s[first]
        while s[s[NEXT_OF] + before] != block:
            before = s[s[NEXT_OF] + before]
        s[s[NEXT_OF] + before] = s[s[NEXT_OF] + block]
        return
    leave_front(s, at)
    s[first] = s[s[NEXT_OF] + block]
    if s[first] >= 0:
        join_front(t, s, priority, s[first])


def join_front(t: Row, s: Row, priority: Row, one: int) -> None:
    """One more in the front: behind those that come before it or were there first."""
    value = value_of(t, s, priority, one)
    place_ = s[FRONT] + s[FRONT_COUNT]
    while place_ > s[FRONT] and value_of(t, s, priority, s[place_ - 1]) > value:
        s[place_] = s[place_ - 1]
        place_ -= 1
    s[place_] = one
    s[FRONT_COUNT] += 1


def join_kind(t: Row, s: Row, priority: Row, block: int) -> None:
    """One more of its kind that may begin soon: in the front itself where it comes first of them."""
    first = s[FIRST_OF] + t[t[BLOCKS] + block * BLOCK_WIDTH + KIND]
    before = s[first]
    if before >= 0 and priority[before] <= priority[block]:
        while s[s[NEXT_OF] + before] >= 0 and priority[s[s[NEXT_OF] + before]] <= priority[block]:
            before = s[s[NEXT_OF] + before]
        s[s[NEXT_OF] + block] = s[s[NEXT_OF] + before]
        s[s[NEXT_OF] + before] = block
        return
    if before >= 0:
        at = 0
        while s[s[FRONT] + at] != before:
            at += 1
        leave_front(s, at)
    s[s[NEXT_OF] + block] = before
    s[first] = block
    join_front(t, s, priority, block)


def wait(t: Row, s: Row, priority: Row, block: int) -> None:
    """A block waits for nothing but time from now on."""
    at, ready = s[WAITING_COUNT], s[s[READY] + block]
    while at > s[UNREADY] and s[s[READY] + s[s[WAITING] + at - 1]] > ready:
        s[s[WAITING] + at] = s[s[WAITING] + at - 1]
        at -= 1
    s[s[WAITING] + at] = block
    s[WAITING_COUNT] += 1
    if at < s[NOT_JOINED]:
        s[NOT_JOINED] += 1
        join_kind(t, s, priority, block)


def join_soon(t: Row, s: Row, priority: Row, tick: int) -> None:
    """Let all that are ready by a tick be looked at."""
    while s[NOT_JOINED] < s[WAITING_COUNT] and s[s[READY] + s[s[WAITING] + s[NOT_JOINED]]] <= tick:
        s[NOT_JOINED] += 1
        join_kind(t, s, priority, s[s[WAITING] + s[NOT_JOINED] - 1])


def is_over(s: Row) -> bool:
    """Whether nothing is left that could begin."""
    return s[FRONT_COUNT] == 0 and s[NOT_JOINED] == s[WAITING_COUNT]
