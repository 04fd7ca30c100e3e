"""How a machine stands between two lines: its modes, where it is, what is set (NISTIR 6556, 3.4 and 3.6.1)."""

from dataclasses import dataclass, field

from runboard.shop.units import Unit

MM_PER_INCH = 25.4
NO_MODE = -1  # no motion was named yet


@dataclass
class State:
    """``at``: mm of the program's own coordinates, G92 reckoned in. ``is_known``: by axis, whether anything said where that is.
    ``scale``: mm a unit; ``are_units_named``: whether G20 or G21 was there. ``motion`` and ``system``: G codes times ten.
    ``feed``: mm/s, 0 where none is set. ``offsets``: mm, those of G92, ``kept_offsets`` those that G92.3 brings back;
    ``shift``: mm, of the coordinate system beside the first; ``origins``: mm, by the system's number, where G10 set it.
    ``sticky``: the numbers of the canned cycle that goes on, in mm or seconds."""

    at: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    is_known: list[bool] = field(default_factory=lambda: [False, False, False])
    scale: float = 1.0
    are_units_named: bool = False
    is_absolute: bool = True
    motion: int = NO_MODE
    feed: float = 0.0
    is_inverse: bool = False
    plane: int = 0
    is_exact: bool = False
    goes_back_up: bool = True  # G98: a canned cycle ends at the height at which it began
    series_from: float = 0.0  # where the canned cycles of one series began, along their third axis
    tool: int = 0
    next_tool: int = -1
    spindle: int = 5  # the M code
    offsets: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    kept_offsets: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    shift: list[float] = field(default_factory=lambda: [0.0, 0.0, 0.0])
    origins: dict[int, list[float]] = field(default_factory=dict)
    system: int = 540
    sticky: dict[str, float] = field(default_factory=dict)
    parameters: dict[int, float] = field(default_factory=dict)
    has_ended: bool = False

    @property
    def units(self) -> Unit:
        return "mm" if self.scale == 1.0 else "in"

    def given(self, axis: int, value: float) -> float:
        """Where a number of the program lies along an axis, in mm of ``at``. The compiled reader reckons in the same order."""
        if self.is_absolute:
            return value * self.scale + (self.offsets[axis] + self.shift[axis])
        return self.at[axis] + value * self.scale

    def end(self) -> None:
        """What M2 and M30 do (3.6.1): the offsets and the coordinate system go back, and the modes to their first."""
        self.kept_offsets, self.offsets = self.offsets, [0.0, 0.0, 0.0]
        self.system, self.plane, self.is_absolute = 540, 0, True
        self.is_inverse, self.spindle, self.motion = False, 5, 10
        self.has_ended = True
