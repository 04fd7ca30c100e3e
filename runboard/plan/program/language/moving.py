"""What a line makes the machine do: blocks, put down in the state's own terms."""

import math
from collections.abc import Sequence

from runboard.plan.program.language.arcs import centre_of, gap_between, sweep_between
from runboard.plan.program.language.blocks import Blocks
from runboard.plan.program.language.doubts import Doubts, LeftOut
from runboard.plan.program.language.limits import ARC_INCHES, ARC_MM, LONG_DWELL, OPEN_MM, OPEN_SHARE, SAME_PLACE
from runboard.plan.program.language.line import Line
from runboard.plan.program.language.state import MM_PER_INCH, State
from runboard.plan.program.moves import DWELL, FEED, PLANES, RAPID, STOP, TOOL
from runboard.run.refusal import Refused
from runboard.shop.units import format_length

AXES = "xyz"
_CENTRES = "ijk"


class Moving:
    """Puts blocks down one after another, and moves the state along."""

    def __init__(self, state: State, blocks: Blocks, doubts: Doubts) -> None:
        self.state, self.blocks, self.doubts = state, blocks, doubts
        self.start = [0.0, 0.0, 0.0]

    # what is no motion

    def dwell(self, line: int, seconds: float) -> None:
        """Wait where the machine stands."""
        if seconds >= LONG_DWELL:
            self.doubts.add(line, "dwell-long", changes_time=True, seconds=seconds)
        self._put(DWELL, line, self.state.at, seconds)

    def stop(self, line: int) -> None:
        """Wait for a person."""
        self._put(STOP, line, self.state.at, 0.0)

    def change_tool(self, line: int) -> None:
        """M6: the tool that was chosen comes into the spindle, which stands still then."""
        if self.state.next_tool < 0:
            self.doubts.add(line, "tool-not-chosen")
        else:
            self.state.tool = self.state.next_tool
        self.state.spindle = 5
        self._put(TOOL, line, self.state.at, 0.0)

    # motions

    def place(self, line: Line) -> list[float]:
        """Where the line's axis words lead, mm."""
        found = list(self.state.at)
        for axis, letter in enumerate(AXES):
            if letter in line.words:
                found[axis] = self.state.given(axis, line.words[letter])
        return found

    def rapid(self, line: int, to: Sequence[float], named_axes: str = "") -> None:
        """Travel straight there. Where the machine stood before its first travel along an axis nobody knows: it is taken to have
        stood at that travel's end, so that no time is made up."""
        self.find(to, named_axes)
        self._put(RAPID, line, to, 0.0)

    def find(self, to: Sequence[float], named_axes: str) -> None:
        """Know where the machine is along these axes by where it is to travel."""
        for axis, letter in enumerate(AXES):
            if not self.state.is_known[axis] and letter in named_axes:
                self.state.is_known[axis] = True
                if self.state.is_absolute:
                    self.start[axis] = self.state.at[axis] = to[axis]
                    self.blocks.begin_at(axis, to[axis])

    def feed(self, line: Line, to: Sequence[float], speed: float | None = None) -> None:
        """Cut straight there, in mm/s at ``speed`` or as commanded."""
        self.know(line)
        length = math.dist(self.state.at, to)
        self._put(FEED, line.number, to, self.speed(line, length) if speed is None else speed)

    def know(self, line: Line, axes: str = AXES) -> None:
        """Take the program's zero for where the machine stands along the line's axes, if nothing said where that is."""
        for axis, letter in enumerate(AXES):
            if letter in axes and letter in line.words and not self.state.is_known[axis]:
                self.state.is_known[axis] = True
                self.doubts.add(line.number, "start-unknown", changes_time=True, axis=letter.upper())

    def speed(self, line: Line, length: float) -> float:
        """mm/s of a cut of so many mm; 0, and a doubt, where no F says it. G93 (3.5.19): it takes 1/F minutes."""
        if self.state.is_inverse:
            per_minute = line.words.get("f", 0.0)
            if per_minute <= 0:
                self.doubts.add(line.number, "feed-missing-g93", changes_time=True)
                return 0.0
            return length * per_minute / 60
        if self.state.feed <= 0:
            self.doubts.add(line.number, "feed-missing", changes_time=True)
        return self.state.feed

    def arc(self, line: Line, clockwise: bool) -> None:
        """An arc or a helix, by its centre or by its radius (3.5.3)."""
        first, second, third = PLANES[self.state.plane]
        self.know(line)
        at, to = self.state.at, self.place(line)
        ends = (at[first], at[second], to[first], to[second])
        if "r" in line.words:
            x, y, gap, radius = self._by_radius(line, ends, clockwise)
        else:
            x, y, gap, radius = self._by_centre(line, ends)
        if gap > (ARC_MM if self.state.scale == 1.0 else ARC_INCHES * MM_PER_INCH):
            said, lies = format_length(gap, self.state.units), _lies(line, ends, (x, y))
            if gap > max(OPEN_MM, OPEN_SHARE * radius):
                raise Refused("program-arc", line=line.number, gap=said, lies=lies)
            self.doubts.add(line.number, "arc-open", gap=said, lies=lies)
        sweep = sweep_between(*ends, x, y, clockwise, SAME_PLACE)
        across = math.sqrt((at[first] - x) * (at[first] - x) + (at[second] - y) * (at[second] - y)) * sweep
        rise = to[third] - at[third]
        speed = self.speed(line, math.sqrt(across * across + rise * rise))
        self._put(FEED, line.number, to, speed, (self.state.plane, x, y, sweep))

    def _by_radius(
        self, line: Line, ends: tuple[float, float, float, float], clockwise: bool
    ) -> tuple[float, float, float, float]:
        radius = line.words["r"] * self.state.scale
        if line.has(_CENTRES):
            raise LeftOut("arc-both-ways")
        if radius == 0 or ends[:2] == ends[2:]:
            raise LeftOut("arc-by-radius-closed")
        x, y, gap = centre_of(*ends, radius, clockwise)
        return x, y, gap, abs(radius)

    def _by_centre(self, line: Line, ends: tuple[float, float, float, float]) -> tuple[float, float, float, float]:
        first, second, third = PLANES[self.state.plane]
        if not line.has(_CENTRES[first] + _CENTRES[second]):
            raise LeftOut("arc-without-centre", one=_CENTRES[first].upper(), other=_CENTRES[second].upper())
        if _CENTRES[third] in line.words:
            self.doubts.add(line.number, "word-idle", word=_CENTRES[third].upper())
        if not line.has(AXES[first] + AXES[second]):
            self.doubts.once(line.number, "arc-without-end", changes_time=True)
        x = ends[0] + line.words.get(_CENTRES[first], 0.0) * self.state.scale
        y = ends[1] + line.words.get(_CENTRES[second], 0.0) * self.state.scale
        radius = math.hypot(ends[0] - x, ends[1] - y)
        if radius == 0:
            raise LeftOut("arc-without-radius")
        return x, y, gap_between(*ends, x, y), radius

    def _put(
        self,
        kind: int,
        line: int,
        to: Sequence[float],
        speed: float,
        arc: tuple[int, float, float, float] | None = None,
    ) -> None:
        exact = self.state.is_exact and kind in (RAPID, FEED)
        self.blocks.add(kind, line, to, speed, self.state.tool, exact, arc)
        self.state.at = list(to)


def _lies(line: Line, ends: tuple[float, float, float, float], centre: tuple[float, float]) -> str:
    """Where the end of an arc that does not close lies, seen from its centre; 'short' where its R is."""
    if "r" in line.words:
        return "short"
    return "farther" if math.dist(ends[2:], centre) > math.dist(ends[:2], centre) else "nearer"
