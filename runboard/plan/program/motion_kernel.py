"""How long each block of a program takes: three passes over arrays, plain Python or compiled by numba, of one source.

Law: arrays, numbers and loops, nothing that numba would not take. The method and its limits stand in ``motion``. Squares of
speeds are called ``w`` (mm²/s²): in them what a block of length L may gain or lose by an acceleration a is 2·a·L.
"""

from math import cos, hypot, sin, sqrt

from runboard.plan.program.moves import DWELL, FEED, NO_ARC, PLANES, RAPID, TOOL, Array

ENDLESS = 1e30
# A turn smaller than this (rad), or off the straight by less than this (mm), is none: what rounding leaves of a straight move in two.
_NO_TURN, _NO_DEVIATION = 1e-4, 1e-5


def seconds_of(
    moves: tuple[Array, Array, Array, Array, Array, Array, Array, Array],
    limits: tuple[Array, Array, float, float],
    length: Array,
    seconds: Array,
) -> None:
    """Fill ``length`` (mm) and ``seconds`` of each block. ``moves`` are the arrays kind, to, speed, plane, centre, sweep,
    exact and start of ``Moves``; ``limits`` each axis's greatest speed (mm/s) and acceleration (mm/s²), the deviation at corners
    (mm) and the seconds of a change of tools."""
    top, pull, entry = length.copy(), length.copy(), length.copy()
    _lay(moves, limits, length, top, pull, entry)
    _slow_down(length, top, pull, entry)
    _go(moves, limits[3], length, top, pull, entry, seconds)


def _lay(
    moves: tuple[Array, Array, Array, Array, Array, Array, Array, Array],
    limits: tuple[Array, Array, float, float],
    length: Array,
    top: Array,
    pull: Array,
    entry: Array,
) -> None:
    """Each block by itself: its length, the w it may have by its command, its axes and its bend (``top``), its acceleration
    (``pull``), and with which w its corner may be passed (``entry``)."""
    kind, to, speed, plane, centre, sweep, exact, start = moves
    fast, accel, corner, _ = limits
    x, y, z = start[0], start[1], start[2]
    out_x = out_y = out_z = 0.0  # the way in which the block before ended
    before, stands, run = 0.0, True, 0.0  # the top of it; whether the machine stands; how far it has gone straight
    bend, bend_w = -1, 0.0  # the last corner, and its w for each mm that is straight behind it
    for at in range(len(kind)):
        length[at] = top[at] = pull[at] = entry[at] = 0.0
        if kind[at] != RAPID and kind[at] != FEED:
            stands = True
            continue
        by_x, by_y, by_z = to[at, 0] - x, to[at, 1] - y, to[at, 2] - z
        if plane[at] == NO_ARC or kind[at] == RAPID:
            long = sqrt(by_x * by_x + by_y * by_y + by_z * by_z)
            if long > 0.0:
                by_x, by_y, by_z = by_x / long, by_y / long, by_z / long
            end_x, end_y, end_z = by_x, by_y, by_z
            w, gain = _straight(by_x, by_y, by_z, fast), _along(by_x, by_y, by_z, accel)
        else:
            first, second, third = PLANES[plane[at]]
            place = (x, y, z)
            from_first, from_second = place[first] - centre[at, 0], place[second] - centre[at, 1]
            rise, radius, angle = to[at, third] - place[third], hypot(from_first, from_second), sweep[at]
            round_it = radius * abs(angle)
            long = hypot(round_it, rise)
            flat, steep = (round_it / long, rise / long) if long > 0.0 else (0.0, 0.0)
            turn = (1.0 if angle >= 0.0 else -1.0) * flat / (radius if radius > 0.0 else 1.0)
            in_first, in_second = -from_second * turn, from_first * turn
            c, s = cos(angle), sin(angle)
            by_x, by_y, by_z = _in_axes(first, in_first, in_second, steep)
            end_x, end_y, end_z = _in_axes(first, in_first * c - in_second * s, in_first * s + in_second * c, steep)
            w = min(_least(fast[first], fast[second], flat), _least(fast[third], fast[third], abs(steep)))
            gain = min(_least(accel[first], accel[second], flat), _least(accel[third], accel[third], abs(steep)))
            w = min(w * w, min(accel[first], accel[second]) * radius / (flat * flat) if flat > 0.0 else ENDLESS)
        x, y, z = to[at, 0], to[at, 1], to[at, 2]
        if kind[at] == FEED:
            w = min(w, speed[at] * speed[at]) if speed[at] > 0.0 else 0.0
        if long == 0.0 or w == 0.0:  # nothing moves, or nobody said how fast
            length[at] = long
            stands = stands or exact[at] or long > 0.0
            continue
        length[at], top[at], pull[at] = long, w, gain
        cosine = 1.0 if stands else out_x * by_x + out_y * by_y + out_z * by_z
        across = sqrt(max(0.0, (out_x - by_x) ** 2 + (out_y - by_y) ** 2 + (out_z - by_z) ** 2))
        if not stands and cosine > 0.0 and (across < _NO_TURN or across * min(long, run) < _NO_DEVIATION):
            entry[at], run = min(before, w), run + long
        else:
            if bend >= 0:
                entry[bend] = min(entry[bend], bend_w * run)
            bend = -1
            if not stands:
                sine = sqrt(max(0.0, 0.5 + 0.5 * cosine))  # of half the angle between the two
                if sine > 1e-6 and across > 0.0:
                    a = _along((by_x - out_x) / across, (by_y - out_y) / across, (by_z - out_z) / across, accel)
                    # The arc that rounds the corner begins no earlier than in the middle of what is straight beside it.
                    bend, bend_w = at, 0.5 * a * sine / (0.5 * across)
                    entry[at] = min(min(before, w), min(corner_w(a, corner, sine), bend_w * run))
            run = long
        out_x, out_y, out_z, before, stands = end_x, end_y, end_z, w, exact[at]
    if bend >= 0:
        entry[bend] = min(entry[bend], bend_w * run)


def corner_w(a: float, corner: float, sine: float) -> float:
    """The w with which a corner is passed on the arc that touches both its sides and leaves its point by ``corner`` mm:
    a·δ·s/(1 − s), ``sine`` the sine of half the angle between the sides (1 straight on, 0 a reversal)."""
    return a * corner * sine / (1.0 - sine) if sine < 1.0 else ENDLESS


def _in_axes(first: int, one: float, two: float, three: float) -> tuple[float, float, float]:
    """Parts along a plane's first, second and third axis, as x, y and z."""
    if first == 0:
        return one, two, three
    return (two, three, one) if first == 2 else (three, one, two)


def _least(one: float, two: float, share: float) -> float:
    """What two axes allow along a path of which they go this share."""
    return min(one, two) / share if share > 0.0 else ENDLESS


def _along(by_x: float, by_y: float, by_z: float, most: Array) -> float:
    """What the axes allow along a direction of length 1."""
    found = ENDLESS
    if abs(by_x) * found > most[0]:
        found = most[0] / abs(by_x)
    if abs(by_y) * found > most[1]:
        found = most[1] / abs(by_y)
    if abs(by_z) * found > most[2]:
        found = most[2] / abs(by_z)
    return found


def _straight(by_x: float, by_y: float, by_z: float, fast: Array) -> float:
    v = _along(by_x, by_y, by_z, fast)
    return v * v if v < ENDLESS else ENDLESS


def _slow_down(length: Array, top: Array, pull: Array, entry: Array) -> None:
    """From the end backwards: no block is entered faster than it can be left in time."""
    after = 0.0
    for at in range(len(length) - 1, -1, -1):
        if top[at] > 0.0:
            entry[at] = after = min(entry[at], after + 2.0 * pull[at] * length[at])


def _go(
    moves: tuple[Array, Array, Array, Array, Array, Array, Array, Array],
    change: float,
    length: Array,
    top: Array,
    pull: Array,
    entry: Array,
    seconds: Array,
) -> None:
    """Forwards: no block is left faster than it can get; the time of each."""
    kind, speed = moves[0], moves[2]
    last, w = -1, 0.0  # the block that goes on, and the w it is entered with
    has_cut = False  # the tool of the first cut is clamped in as the machine is set up
    for at in range(len(length)):
        seconds[at] = 0.0
        has_cut = has_cut or kind[at] == FEED
        if kind[at] == DWELL:
            seconds[at] = max(0.0, speed[at])
        elif kind[at] == TOOL and has_cut:
            seconds[at] = change
        if top[at] > 0.0:
            if last >= 0:
                left = min(entry[at], w + 2.0 * pull[last] * length[last])
                seconds[last] = span(length[last], top[last], pull[last], w, left)
                w = left
            last = at
    if last >= 0:
        seconds[last] = span(length[last], top[last], pull[last], w, 0.0)


def span(long: float, top: float, a: float, w_in: float, w_out: float) -> float:
    """Seconds for ``long`` mm from the one w to the other, by the acceleration ``a`` and at most at ``top``: up, along, down,
    or up and down where it is too short for that. Any text of mechanics: d/v + v/a, or 2·√(d/a), from rest to rest."""
    peak = min(top, a * long + 0.5 * (w_in + w_out))
    v = sqrt(peak)
    even = long - (2.0 * peak - w_in - w_out) / (2.0 * a)
    return (2.0 * v - sqrt(w_in) - sqrt(w_out)) / a + max(0.0, even) / v
