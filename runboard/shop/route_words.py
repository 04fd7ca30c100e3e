"""What the words of a route in a few words mean: which kind of station does it, and how long it takes until somebody
says or measures more. Everything here is a guess, and the operations made from it say so."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta
from types import MappingProxyType

from runboard.shop.book import STATION_KINDS, Attendance, Station, WaitWhy
from runboard.shop.durations import OVERNIGHT


@dataclass(frozen=True)
class Guess:
    """Minutes until better is known: ``work`` is machine time a load where there is a machine, else hands a tray."""

    work: float
    machine: bool = False
    setup: float = 0
    loading: float = 0
    unloading: float = 0


GUESSES: Mapping[str, Guess] = MappingProxyType(
    {
        "bench": Guess(10),
        "cnc": Guess(30, machine=True, setup=5, loading=2, unloading=2),
        "hand cutter": Guess(10, setup=5),
        "sander": Guess(20),
        "laser": Guess(15, machine=True, setup=3, loading=2, unloading=1),
        "heater": Guess(30, machine=True, loading=2, unloading=2),
        "finishing": Guess(10),
        "clamping": Guess(10),
        "other machine": Guess(20, machine=True, setup=2, loading=2, unloading=2),
    }
)

# Kinds in the order in which they are tried: a shop without a CNC cuts at the saw.
_WORDS: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...] = (
    (("cut", "mill", "pocket", "carve", "profile"), ("cnc", "hand cutter")),
    (("engrave", "etch", "burn"), ("laser", "cnc")),
    (("sand", "scuff"), ("sander",)),
    (("rout", "round", "chamfer", "saw", "rip", "crosscut", "trim", "plane", "bevel"), ("hand cutter", "cnc")),
    (("oil", "varnish", "wax", "paint", "stain", "lacquer", "shellac", "wipe"), ("finishing",)),
    (("glue", "laminate"), ("clamping",)),
    (("bake", "heat", "steam"), ("heater",)),
)
# Words that say it only where no other word does: 'finish sanding' is done at the sander.
_WEAK_WORDS = ((("finish", "coat"), ("finishing",)),)

# Those of 'settle' that name no reason take the usual one of the station before them.
WAIT_WORDS: Mapping[str, WaitWhy | None] = MappingProxyType(
    {
        **dict.fromkeys(("dry", "drying", "dries"), "dry"),
        **dict.fromkeys(("cure", "curing", "cures"), "cure"),
        **dict.fromkeys(("clamp", "clamps", "clamped"), "clamp"),
        **dict.fromkeys(("cool", "cooling", "cools"), "cool"),
        **dict.fromkeys(("settle", "settling"), "settle"),
        **dict.fromkeys(("overnight", "rest", "wait", "waiting"), None),
    }
)
FILLERS = frozenset(("let", "leave", "it", "to", "in", "the", "for", "at", "least", "off"))
WAIT_GUESSES: Mapping[WaitWhy, timedelta] = MappingProxyType(
    {
        "dry": OVERNIGHT,
        "cure": timedelta(hours=24),
        "clamp": timedelta(hours=1),
        "cool": timedelta(minutes=30),
        "settle": timedelta(hours=1),
    }
)
_USUAL_WAIT: Mapping[str, WaitWhy] = MappingProxyType({"finishing": "dry", "clamping": "clamp", "heater": "cool"})


def usual_wait(kind: str) -> WaitWhy:
    """Why one waits after work at a kind of station."""
    return _USUAL_WAIT.get(kind, "settle")


def attendance_for(kind: str) -> Attendance:
    """What a route in a few words asks while a load runs: the least its station allows, and watched for any machine."""
    least = STATION_KINDS[kind].least
    if not GUESSES[kind].machine:
        return "hands-on"
    return "watched" if least == "none" else least


def station_for(words: Sequence[str], stations: Sequence[Station]) -> Station:
    """The station of the kind that the words call for, else a bench, else the first. ``stations`` is not empty."""
    for table in (_WORDS, _WEAK_WORDS):
        for word in words:
            for stems, kinds in table:
                if any(_is_form_of(word, stem) for stem in stems):
                    return _first_of((*kinds, "bench"), stations)
    return _first_of(("bench",), stations)


def _is_form_of(word: str, stem: str) -> bool:
    """Whether a word is a stem with an ending: engrave, engraves, engraving; cut, cutting."""
    root = stem.removesuffix("e")
    return word.startswith(root) and len(word) - len(root) <= 4


def _first_of(kinds: Sequence[str], stations: Sequence[Station]) -> Station:
    for kind in kinds:
        for station in stations:
            if station.kind == kind:
                return station
    return stations[0]
