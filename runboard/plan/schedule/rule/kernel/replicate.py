"""The same run many times over, each time with other lengths of its time elements."""

from runboard.plan.schedule.rule.kernel.dispatch import dispatch
from runboard.plan.schedule.rule.kernel.layout import END
from runboard.plan.schedule.rule.kernel.row import Row


def replicate(
    t: Row,
    s: Row,
    fresh: Row,
    reals: Row,
    real: Row,
    width: int,
    priority: Row,
    knobs: Row,
    marks: Row,
    marked: int,
    found: Row,
    goes: int,
) -> None:
    """Run the dispatch rule once for each of ``goes`` records in ``reals``, of ``width`` lengths each: a record of ``found``
    gets the finish, or -1, and then when each of the ``marked`` blocks in ``marks`` ends. ``real`` has place for one."""
    for go in range(goes):
        for at in range(width):
            real[at] = reals[go * width + at]
        place_ = go * (marked + 1)
        found[place_] = dispatch(t, s, fresh, real, priority, knobs)
        for at in range(marked):
            found[place_ + 1 + at] = s[s[END] + marks[at]]
