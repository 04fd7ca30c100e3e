"""A screw's sizes and what they say of holes and of holding.

Gauge: ASME B18.6.1, D = 0.060 + 0.013 N inches. Pilot: the root's diameter in hardwood, 15 % less in softwood (a maker's rule; the
Wood Handbook, from memory, has 90 % and 70 % of it). Withdrawal from side grain: allowable 2850 G² D and, from memory, ultimate
15 700 G² D, in pounds an inch of thread (Wood Handbook, chapter 8).
"""

from dataclasses import dataclass

from runboard.plan.fits.drills import nearest_drill
from runboard.shop.common_screws import pitch_of
from runboard.shop.fasteners import Screw
from runboard.shop.units import MM_A_INCH, Unit

INCH = float(MM_A_INCH)
NEWTON_A_POUND = 4.4482216152605
# psi as N/mm²: pounds over square inches.
_PSI = NEWTON_A_POUND / INCH**2
ALLOWABLE, ULTIMATE = 2850.0, 15_700.0
# Of the diameter, within what handbooks give for No. 4 to 10 (from memory; their ranges differ).
ROOT_SHARE = 0.70
# Of the length, where nobody measured: a wood screw's thread is about two thirds of it. Common practice, no source.
THREAD_SHARE = 2 / 3
# Of the diameter, of a countersunk head: how high. Common practice, no source.
HEAD_SHARE = 0.5
SOFT_SHARE = 0.85


def diameter_of_gauge(gauge: float) -> float:
    """Outside the thread, mm, of a screw of this number."""
    return (0.060 + 0.013 * gauge) * INCH


def root_of(diameter: float) -> float:
    """At the bottom of the thread, mm, where nobody measured it."""
    return ROOT_SHARE * diameter


def pilot_share(hard: bool) -> float:
    """Of the root's diameter."""
    return 1.0 if hard else SOFT_SHARE


def gravity_squared(gravity: float) -> float:
    """G², as tables of withdrawal print it."""
    return gravity**2


def allowable(gravity: float, diameter: float, thread: float) -> float:
    """What ``thread`` mm in side grain may be loaded with straight out, N, as published for dry wood. Information only."""
    return ALLOWABLE * _PSI * gravity_squared(gravity) * diameter * thread


def ultimate(gravity: float, diameter: float, thread: float) -> float:
    """What pulls it out, N, as published. Information only."""
    return ULTIMATE * _PSI * gravity_squared(gravity) * diameter * thread


@dataclass(frozen=True)
class Sizes:
    """A screw with every size said, mm. ``assumed`` names those that nobody measured; ``pilot_hard`` and ``pilot_soft`` are the
    shop's own figures, where it has them."""

    name: str
    length: float
    diameter: float
    root: float
    thread: float
    pitch: float
    is_countersunk: bool
    head_height: float
    pilot_hard: float | None = None
    pilot_soft: float | None = None
    source: str = ""
    assumed: tuple[str, ...] = ()


def sizes_of(screw: Screw) -> Sizes | None:
    """All sizes of a screw; None where neither gauge nor diameter is said."""
    if screw.diameter is None and screw.gauge is None:
        return None
    diameter = screw.diameter if screw.diameter is not None else diameter_of_gauge(screw.gauge or 0)
    is_countersunk = screw.head == "countersunk"
    head = screw.head_height if screw.head_height is not None else HEAD_SHARE * diameter
    usual = {"root": root_of(diameter), "thread": max(1.0, THREAD_SHARE * screw.length)}
    assumed = tuple(name for name in usual if getattr(screw, name) is None)
    root = min(screw.root or usual["root"], diameter)
    return Sizes(
        screw.name,
        screw.length,
        diameter,
        root,
        min(screw.thread or usual["thread"], screw.length),
        pitch_of(screw.gauge, diameter),
        is_countersunk,
        head,
        screw.pilot_hard,
        screw.pilot_soft,
        screw.source,
        assumed,
    )


@dataclass(frozen=True)
class Pilot:
    """The hole for a screw's thread: what is wanted, and the nearest drill in millimetres and in 64ths of an inch; mm. ``is_own``
    where it is the shop's own figure for this screw."""

    wanted: float
    in_mm: float
    in_64ths: float
    is_own: bool

    def in_units(self, units: Unit) -> float:
        """The shop's drill; its own figure as it stands."""
        return self.wanted if self.is_own else self.in_mm if units == "mm" else self.in_64ths


def pilot_for(screw: Sizes, hard: bool) -> Pilot:
    """The pilot hole in hardwood or softwood."""
    own = screw.pilot_hard if hard else screw.pilot_soft
    wanted = own if own is not None else pilot_share(hard) * screw.root
    return Pilot(wanted, nearest_drill(wanted, "mm"), nearest_drill(wanted, "in"), own is not None)
