"""Line after line, as the language orders what is on one (NISTIR 6556, 3.8, Table 8)."""

from runboard.plan.program.language.blocks import Blocks
from runboard.plan.program.language.codes import CYCLES, TAKES_AXES, by_group, named
from runboard.plan.program.language.cycles import run_cycle
from runboard.plan.program.language.doubts import Doubts, LeftOut
from runboard.plan.program.language.limits import NEAR_WHOLE
from runboard.plan.program.language.line import Line, take_apart
from runboard.plan.program.language.moving import Moving
from runboard.plan.program.language.offsets import choose_system, drop_offsets, offset_axes, set_origin
from runboard.plan.program.language.state import MM_PER_INCH, NO_MODE, State

_LENGTHS = "xyzijkrq"
# The words that a code takes which others do not; what no code on a line takes is named.
_TAKEN_BY: dict[str, tuple[int, ...]] = {
    "d": (410, 420),
    "h": (430,),
    "i": (20, 30, 870),
    "j": (20, 30, 870),
    "k": (20, 30, 870),
    "l": (100, *CYCLES),
    "p": (40, 100, *CYCLES),
    "q": (830,),
    "r": (20, 30, *CYCLES),
}


class Interpreter:
    """Reads lines in their order, and keeps what they come to: ``moving.blocks``, ``doubts``, ``state``."""

    def __init__(self, room: int = 16) -> None:
        self.state, self.doubts = State(), Doubts()
        self.moving = Moving(self.state, Blocks(room), self.doubts)

    def read(self, raw: bytes, number: int) -> None:
        """One line. Refused: a line after which nothing can be known."""
        try:
            line = take_apart(raw, number, lambda which: self._parameter(which, number), self.doubts)
            if line is not None:
                self._follow(line)
        except LeftOut as left_out:
            self.doubts.add(number, left_out.code, changes_time=True, **left_out.facts)

    def _parameter(self, which: int, line: int) -> float:
        if which not in self.state.parameters:
            self.doubts.once(line, "parameter-unknown", changes_time=True, number=which)
        return self.state.parameters.get(which, 0.0)

    def _follow(self, line: Line) -> None:
        """All that stands on a line, in the order of Table 8."""
        g, m = by_group(line, self.doubts)
        self.state.parameters.update(line.settings)
        if line.is_optional:
            self.doubts.once(line.number, "block-delete", changes_time=True)
        motion = self._motion(line, g)
        self._name_idle(line, g, motion)
        self._set_feed(line, g)
        self._turn(line, m)
        if g.get(0) == 40:
            self._dwell(line)
        self._set_modes(line, g)
        self._move_zero(line, g.get(0))
        if motion is not None:
            self._move(line, motion, is_in_machine=g.get(0) == 530)
        self._stop(line, m.get(4))

    # before the motion

    def _motion(self, line: Line, g: dict[int, int]) -> int | None:
        """Which motion the line makes, if any."""
        if 1 in g:
            if g[1] == 800:
                if line.has("xyz") and g.get(0) not in TAKES_AXES:
                    raise LeftOut("axes-after-g80")
                self.state.motion = 800
                return None
            if not line.has("xyz") and not (g[1] in (20, 30) and line.has("ijk")):
                self.doubts.add(line.number, "no-axes", word=named(g[1]))
                self.state.motion = g[1]
                return None
            return g[1]
        if g.get(0) in TAKES_AXES or not line.has("xyz"):
            return self.state.motion if self.state.motion in (20, 30) and line.has("ij") else None
        if self.state.motion == 800:
            raise LeftOut("axes-after-g80")
        if self.state.motion == NO_MODE:
            self.doubts.once(line.number, "no-motion-named", changes_time=True)
            return 10  # as after the end of the program before (3.6.1)
        return self.state.motion

    def _name_idle(self, line: Line, g: dict[int, int], motion: int | None) -> None:
        used = {*g.values(), motion}
        for letter, codes in _TAKEN_BY.items():
            if letter in line.words and used.isdisjoint(codes):
                self.doubts.add(line.number, "word-idle", word=letter.upper())

    def _set_feed(self, line: Line, g: dict[int, int]) -> None:
        if 5 in g and (g[5] == 930) != self.state.is_inverse:
            self.state.is_inverse, self.state.feed = g[5] == 930, 0.0
        if "f" not in line.words:
            return
        if line.words["f"] < 0:
            self.doubts.add(line.number, "feed-negative", changes_time=True)
            return
        if not self.state.is_inverse:
            self.state.feed = line.words["f"] * self._feed_scale(line, g) / 60

    def _feed_scale(self, line: Line, g: dict[int, int]) -> float:
        """F is set before the units change (Table 8), so it is in the old ones; only where the program names its units for the
        first time, the machine is taken to have been in them already."""
        if 6 not in g:
            return self.state.scale
        new = MM_PER_INCH if g[6] == 200 else 1.0
        if not self.state.are_units_named:
            return new
        if new != self.state.scale and line.words["f"]:
            self.doubts.add(line.number, "feed-before-units", changes_time=True)
        return self.state.scale

    def _turn(self, line: Line, m: dict[int, int]) -> None:
        """Spindle, tool, coolant and overrides: of these only the tool takes time."""
        if line.words.get("s", 0.0) < 0:
            self.doubts.add(line.number, "speed-negative")
        if "t" in line.words:
            self._choose_tool(line)
        if 6 in m:
            self.moving.change_tool(line.number)
        self.state.spindle = m.get(7, self.state.spindle)

    def _choose_tool(self, line: Line) -> None:
        tool = line.words["t"]
        if abs(tool - round(tool)) > NEAR_WHOLE or not 0 <= round(tool) < 1_000_000:
            self.doubts.add(line.number, "tool-number")
        else:
            self.state.next_tool = round(tool)

    def _dwell(self, line: Line) -> None:
        """G4 P…: seconds (3.5.4)."""
        seconds = line.words.get("p")
        if seconds is None or seconds < 0:
            self.doubts.add(line.number, "dwell-without-p", changes_time=True)
        else:
            self.moving.dwell(line.number, seconds)

    def _set_modes(self, line: Line, g: dict[int, int]) -> None:
        state = self.state
        state.plane = (g[2] - 170) // 10 if 2 in g else state.plane
        if 6 in g:
            state.scale = MM_PER_INCH if g[6] == 200 else 1.0
            state.are_units_named = True
        elif not state.are_units_named and line.has(_LENGTHS):
            state.are_units_named = True
            self.doubts.add(line.number, "units-not-named", changes_time=True)
        if g.get(7) in (410, 420):
            self.doubts.add(line.number, "cutter-radius", changes_time=True, word=named(g[7]))
        if g.get(8) == 430:
            self.doubts.once(line.number, "tool-length")
        if 12 in g:
            choose_system(state, line, g[12], self.doubts)
        state.is_exact = g[13] == 611 if 13 in g else state.is_exact
        state.is_absolute = g[3] == 900 if 3 in g else state.is_absolute
        state.goes_back_up = g[10] == 980 if 10 in g else state.goes_back_up

    def _move_zero(self, line: Line, code: int | None) -> None:
        """G10, G28, G30, G92 and its like."""
        if code in (280, 300):
            self._go_by_way_of(line)
            self.doubts.once(line.number, "home-unknown", changes_time=True, word=named(code))
        elif code == 100:
            set_origin(self.state, line, self.doubts)
        elif code == 920:
            offset_axes(self.state, line)
        elif code in (921, 922, 923):
            drop_offsets(self.state, code)

    def _go_by_way_of(self, line: Line) -> None:
        """The place that G28 and G30 pass; counted from a place that nobody knows it is none."""
        passed, to = "", self.moving.place(line)
        for axis, letter in enumerate("xyz"):
            if not self.state.is_absolute and not self.state.is_known[axis]:
                to[axis] = self.state.at[axis]
            elif letter in line.words:
                passed += letter
        if passed:
            self.moving.rapid(line.number, to, passed)

    # the motion, and after it

    def _move(self, line: Line, motion: int, is_in_machine: bool) -> None:
        if is_in_machine:
            if motion not in (0, 10) or not self.state.is_absolute:
                raise LeftOut("machine-coordinates-with", word=named(motion))
            self.state.motion = motion
            raise LeftOut("machine-coordinates")
        if motion == 0:
            axes = "".join(letter for letter in "xyz" if letter in line.words)
            self.moving.rapid(line.number, self.moving.place(line), axes)
        elif motion in (10, 382):
            if motion == 382:
                self.doubts.add(line.number, "probe", changes_time=True)
            self.moving.feed(line, self.moving.place(line))
        elif motion in (20, 30):
            self.moving.arc(line, clockwise=motion == 20)
        else:
            run_cycle(self.moving, line, motion)
        self.state.motion = motion

    def _stop(self, line: Line, code: int | None) -> None:
        if code in (0, 1, 60):
            self.moving.stop(line.number)
        elif code in (2, 30):
            self.state.end()
