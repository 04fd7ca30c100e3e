"""What the words of a route mean. A route in a few words is taken apart into its steps, each with its words, minutes and what
a load is (``route_text`` has the grammar); words say which kind of station does it, and how long it takes until somebody says
or measures more: a guess, and the operations made from it say so. An operation's name and wait say which symbol of a process
chart it carries.

Source of the symbols: ASME Standard 101, Operation and Flow Process Charts (1947), as told in R. Muther, Systematic Layout
Planning.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import timedelta
from types import MappingProxyType

from runboard.shop.book import STATION_KINDS, Book, Station
from runboard.shop.durations import OVERNIGHT, parse_duration
from runboard.shop.problem import Unreadable
from runboard.shop.product import Attendance, LoadSize, Operation, WaitWhy


@dataclass(frozen=True)
class Guess:
    """Minutes until better is known: ``work`` is machine time a load at a kind that is a machine, else hands a tray."""

    work: float
    setup: float = 0
    loading: float = 0
    unloading: float = 0


GUESSES: Mapping[str, Guess] = MappingProxyType(
    {
        "bench": Guess(10),
        "cnc": Guess(30, setup=5, loading=2, unloading=2),
        "hand cutter": Guess(10, setup=5),
        "sander": Guess(20),
        "laser": Guess(15, setup=3, loading=2, unloading=1),
        "heater": Guess(30, loading=2, unloading=2),
        "finishing": Guess(10),
        "clamping": Guess(10),
        "other machine": Guess(20, setup=2, loading=2, unloading=2),
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
    known = STATION_KINDS[kind]
    if not known.machine:
        return "hands-on"
    return "watched" if known.least == "none" else known.least


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


# the steps of a line of text

MOST_STEPS = 100
MOST_LETTERS = 120
# A comma between two digits is a decimal comma.
_BETWEEN = re.compile(r",(?!\d)|(?<!\d),|[;\n\r→]|->|\bthen\b", re.IGNORECASE)
_EACH = re.compile(r"\s+(?:each|(?:a|per) piece)$", re.IGNORECASE)
_A_TRAY = re.compile(r"\s+(?:a|per) tray$", re.IGNORECASE)
_LOAD = re.compile(r"\s*\b(?:(?:a|per|on a)\s+)?(board|jig) of (\d{1,4})\b", re.IGNORECASE)


@dataclass(frozen=True)
class StepSaid:
    """What one step says, taken apart."""

    number: int
    text: str
    words: tuple[str, ...]
    time: timedelta | None
    each: bool = False
    size: LoadSize = "tray"
    pieces: int | None = None

    @property
    def says_load(self) -> bool:
        """Whether it says how many pieces go on at once."""
        return self.size != "tray" or self.each or _A_TRAY.search(self.text) is not None


def steps_of(text: str) -> list[StepSaid]:
    """The steps of a line of text, in order, at least one. Refuses with ``Unreadable`` what says no work."""
    plain = "".join(char for char in text if char.isprintable() or char.isspace())
    pieces = [piece.strip(" .\t") for piece in _BETWEEN.split(plain)]
    pieces = [piece for piece in pieces if piece]
    if not pieces:
        raise Unreadable("route empty")
    if len(pieces) > MOST_STEPS:
        raise Unreadable("route too long", most=MOST_STEPS, found=len(pieces))
    return [_said(number, piece) for number, piece in enumerate(pieces, 1)]


def _said(number: int, text: str) -> StepSaid:
    if len(text) > MOST_LETTERS:
        raise Unreadable("route step too long", number=number, text=text[:MOST_LETTERS], most=MOST_LETTERS)
    size, pieces, rest = _load_size(text)
    each = _EACH.search(rest) is not None
    tokens = _A_TRAY.sub("", _EACH.sub("", rest)).split()
    words, time = _words_and_time(tokens)
    if any(re.match(r"-\d", word) for word in words):
        raise Unreadable("route time unreadable", number=number, text=text)
    if not any(char.isalpha() for word in words for char in word):
        raise Unreadable("route step without word", number=number, text=text)
    return StepSaid(number, text, words, time, each, size, pieces)


def _load_size(text: str) -> tuple[LoadSize, int | None, str]:
    load = _LOAD.search(text)
    if load is None or int(load[2]) == 0:
        return "tray", None, text
    return "board" if load[1].lower() == "board" else "jig", int(load[2]), text[: load.start()] + text[load.end() :]


def _words_and_time(tokens: Sequence[str]) -> tuple[tuple[str, ...], timedelta | None]:
    """The words, and the longest span of time that the step ends or begins with."""
    for at in range(len(tokens)):
        time = _time(tokens[at:])
        if time is not None:
            return tuple(tokens[:at]), time
    for at in range(len(tokens), 0, -1):
        time = _time(tokens[:at])
        if time is not None:
            return tuple(tokens[at:]), time
    return tuple(tokens), None


def _time(tokens: Sequence[str]) -> timedelta | None:
    try:
        return parse_duration(" ".join(tokens))
    except Unreadable as refused:
        if refused.code == "time too long":
            raise
        return None


def is_wait(words: Sequence[str]) -> bool:
    """Whether a step is nothing but a wait: 'overnight', 'let it dry', but not 'dry fit'."""
    plain = [word.lower() for word in words]
    return any(word in WAIT_WORDS for word in plain) and all(word in WAIT_WORDS or word in FILLERS for word in plain)


# a process chart

SYMBOLS: Mapping[str, str] = MappingProxyType(
    {"operation": "○", "transport": "⇨", "inspection": "□", "delay": "D", "storage": "▽"}
)
_LOOKS = ("inspect", "check", "measure")


def symbols(book: Book, operation: Operation, before: Operation | None = None) -> tuple[str, str]:
    """(what stands before the operation's name, what after it): carried from another room, then done or inspected; then
    a delay where its pieces wait."""
    carried = before is not None and _room(book, before) != _room(book, operation)
    word = operation.name.casefold()
    done = SYMBOLS["inspection" if word.startswith(_LOOKS) else "operation"]
    return (SYMBOLS["transport"] if carried else "") + done, SYMBOLS["delay"] if operation.wait else ""


def _room(book: Book, operation: Operation) -> str:
    station = book.station(operation.station)
    return station.room if station is not None else ""
