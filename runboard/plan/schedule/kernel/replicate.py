"""The same run many times over, each time with other lengths of its time elements."""

from runboard.plan.schedule.kernel.dispatch import dispatch
from runboard.plan.schedule.kernel.layout import END
from runboard.plan.schedule.kernel.row import Row, Rows


def replicate(
    t: Row, s: Row, fresh: Row, reals: Rows, priority: Row, knobs: Row, marks: Row, found: Rows, goes: int, marked: int
) -> None:
    """Run the dispatch rule once for each of ``reals``: a row of ``found`` gets the finish, or -1, and then when each of the
    blocks in ``marks`` ends."""
    for go in range(goes):
        row = found[go]
        row[0] = dispatch(t, s, fresh, reals[go], priority, knobs)
        for at in range(marked):
            row[at + 1] = s[s[END] + marks[at]]
