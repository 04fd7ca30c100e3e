"""What a machine can do, what is clamped in it, and where jigs sit on it."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Annotated, Literal

from runboard.shop.record import Key, Length, Name, Of

# mm/min and mm/s²: what a small router of a home shop does. Common practice, no source; a machine's own manual wins.
RAPID, RAPID_Z, ACCELERATION, ACCELERATION_Z, CORNER = 5000.0, 1500.0, 400.0, 200.0, 0.02


@dataclass(frozen=True)
class Motion:
    """How a machine moves. Speeds in mm/min, accelerations in mm/s². ``corner`` is how far its path may leave a corner, which
    says how fast it goes round it. ``scan`` ones are of a laser that sweeps."""

    travel_x: Annotated[Length | None, Of("How far it reaches; of a laser, its bed.", least=1)] = None
    travel_y: Annotated[Length | None, Of(least=1)] = None
    travel_z: Annotated[Length | None, Of(least=1)] = None
    rapid: Annotated[float, Of("mm/min, without cutting.", least=1)] = RAPID
    rapid_z: Annotated[float, Of("mm/min, up and down.", least=1)] = RAPID_Z
    accel_x: Annotated[float, Of("mm/s².", least=0.1)] = ACCELERATION
    accel_y: Annotated[float, Of("mm/s².", least=0.1)] = ACCELERATION
    accel_z: Annotated[float, Of("mm/s².", least=0.1)] = ACCELERATION_Z
    corner: Annotated[Length, Of("How far its path may leave a corner.", most=10)] = CORNER
    tool_change: Annotated[timedelta, Of("To change the cutter.")] = timedelta(minutes=2)
    spindle_most: Annotated[float | None, Of("Turns a minute at most.", least=1)] = None
    scan_speed: Annotated[float | None, Of("mm/s, of a laser that sweeps.", least=0.1)] = None
    scan_accel: Annotated[float | None, Of("mm/s², of a laser that sweeps.", least=0.1)] = None
    line_spacing: Annotated[Length | None, Of("Between two lines of a sweep.", least=0.01, most=10)] = None


@dataclass(frozen=True)
class Cutter:
    """What is clamped in and wears: a router bit, a blade, a disc. ``life`` is counted in pieces or in minutes of cutting."""

    key: Key
    name: Name
    what: Literal["cutter", "blade", "disc", "belt"] = "cutter"
    diameter: Annotated[Length | None, Of(least=0.1)] = None
    flutes: Annotated[int | None, Of(least=1, most=20)] = None
    life: Annotated[float | None, Of("After how much it is worn.", least=1)] = None
    life_in: Literal["pieces", "minutes"] = "pieces"
    price: Annotated[float | None, Of("Of one, in the shop's money.")] = None
    supply: Annotated[str | None, Of("The supply that a new one is taken from.", refers="supply")] = None


@dataclass(frozen=True)
class GoodFeed:
    """Values that the shop found good, for one wood and cutter. ``feed`` in mm/min, ``depth`` a pass."""

    key: Key
    cutter: Annotated[str, Of(refers="cutter")]
    rpm: Annotated[float, Of("Turns a minute.", least=1)]
    feed: Annotated[Length, Of("How far it goes in a minute.", least=1)]
    wood: Annotated[str, Of(most=200)] = ""
    station: Annotated[str | None, Of(refers="station")] = None
    depth: Annotated[Length | None, Of("Of one pass.", least=0.01)] = None
    note: Annotated[str, Of("What was seen: clean, burnt, tore out.", most=2000)] = ""
    tore_out: Annotated[bool, Of("The wood tore out with them.")] = False
    torn: Annotated[int | None, Of("How many pieces tore out.")] = None
    torn_of: Annotated[int | None, Of("Of how many.")] = None


@dataclass(frozen=True)
class Jig:
    """Places for pieces on a bed, and where its corner mark sits, so that it can be put back months later. ``corner_x`` and
    ``corner_y`` are the mark's coordinates on the machine; the places run from it to the right and down, as they are drawn."""

    key: Key
    name: Name
    station: Annotated[str, Of(refers="station")]
    columns: Annotated[int, Of(least=1, most=100)] = 1
    rows: Annotated[int, Of(least=1, most=100)] = 1
    piece_length: Annotated[Length, Of("Along x.", least=1)] = 100.0
    piece_width: Annotated[Length, Of("Along y.", least=1)] = 50.0
    pitch_x: Annotated[Length, Of("From one place to the next.", least=1)] = 110.0
    pitch_y: Annotated[Length, Of("From one row to the next.", least=1)] = 60.0
    corner_x: Annotated[Length | None, Of("Null: nobody wrote it down.", most=100_000)] = None
    corner_y: Annotated[Length | None, Of("Null: nobody wrote it down.", most=100_000)] = None
    margin: Annotated[Length, Of("Around the places, to the edge of the jig.", most=1_000)] = 10.0
    clearance: Annotated[Length, Of("A place is larger than its piece by this.", most=10)] = 0.2
    kerf: Annotated[Length, Of("What the beam burns away.", most=5)] = 0.0
    note: Annotated[str, Of(most=2000)] = ""


@dataclass(frozen=True)
class Reckoned:
    """A machine time that a file said: the file's ``name`` and ``digest`` (sha256, hex), ``seconds`` as they were reckoned without
    the station's own factor, and the day."""

    what: Literal["program", "engraving"]
    name: Name
    digest: Annotated[str, Of(most=64)]
    seconds: Annotated[float, Of(least=0)]
    day: Annotated[str, Of(kind="date", most=10)] = ""
    reach_x: Annotated[Length | None, Of("How far it goes along x, in all.")] = None
    reach_y: Annotated[Length | None, Of("Along y.")] = None
    reach_z: Annotated[Length | None, Of("Up and down.")] = None
