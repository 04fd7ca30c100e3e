"""The dispatch rule as plain Python, and a plan out of the state that it leaves."""

from collections.abc import Sequence

from runboard.plan.schedule.problem.nouns import Placed, Plan
from runboard.plan.schedule.rule.kernel import layout
from runboard.plan.schedule.rule.kernel.layout import BLOCK_WIDTH, BLOCKS
from runboard.plan.schedule.rule.kernel.row import Row


def as_estimated(t: Row) -> list[int]:
    """How long each stretch, then each block's setup, takes when all goes as estimated."""
    stretches = [t[t[layout.STRETCHES] + 5 * at + 1] for at in range(t[layout.STRETCH_COUNT])]
    return stretches + [t[t[BLOCKS] + at * BLOCK_WIDTH + layout.SETUP] for at in range(t[layout.BLOCK_COUNT])]


def plan_in(t: Row, s: Row, source: str) -> Plan:
    """The plan in a state in which every block is placed."""
    watchers: dict[int, list[tuple[int, int]]] = {}
    for at in range(s[layout.WATCHER_COUNT]):
        row = s[layout.WATCHERS] + 3 * at
        watchers.setdefault(int(s[row]), []).append((int(s[row + 1]), int(s[row + 2])))
    return Plan(tuple(_placed(s, block, watchers.get(block, ())) for block in range(t[layout.BLOCK_COUNT])), source)


def _placed(s: Row, block: int, watchers: Sequence[tuple[int, int]]) -> Placed:
    start, setup = int(s[s[layout.START] + block]), int(s[s[layout.SET_UP] + block])
    hands = int(s[s[layout.BY_HANDS] + block])
    return Placed(block, start, setup, None if hands < 0 else hands, tuple(watchers))


def without_place(t: Row, s: Row) -> tuple[int, ...]:
    """The blocks for which no place was found."""
    return tuple(block for block in range(t[layout.BLOCK_COUNT]) if s[s[layout.START] + block] < 0)
