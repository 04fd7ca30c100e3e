"""A route in a few words: 'cut 40, clean up 5, sand 120/180 25, engrave 20, oil, overnight, hooks 10'.

The grammar, step by step between commas (or semicolons, line ends, 'then'):

- words, then minutes: machine time a load at a machine, hands for a whole tray elsewhere; 'hooks 2 each' is a piece;
- 'sand 120/180 25' makes two passes that share the minutes; 'rout sides A/B 20' too;
- 'cut 90 board of 15' says what a load is; 'drill at the bench 10' says where;
- 'overnight', 'dry 12 h', 'clamp 2 h', 'cure', 'cool', 'rest' are the wait of the step before.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import timedelta

from runboard.shop.book import Station
from runboard.shop.durations import OVERNIGHT, format_duration
from runboard.shop.keys import key_for
from runboard.shop.problem import Unreadable
from runboard.shop.product import ZERO, Operation, Pass, Wait
from runboard.shop.route_words import (
    GUESSES,
    WAIT_GUESSES,
    WAIT_WORDS,
    StepSaid,
    attendance_for,
    is_wait,
    station_for,
    steps_of,
    usual_wait,
)

_GRITS = re.compile(r"[1-9]\d{1,3}(?:/[1-9]\d{1,3})+")
_SIDES = re.compile(r"[A-Za-z0-9]{1,2}(?:/[A-Za-z0-9]{1,2})+")


def route_from_text(text: str, stations: Sequence[Station], pieces_a_tray: int = 5) -> tuple[Operation, ...]:
    """The operations that a line of text says, each marked as a guess, with permanent keys unlike each other.

    Words that say no kind of work go to a bench; where the shop lacks a station of the kind, too. Refuses with
    ``Unreadable``, which says at which step, what cannot be a route.
    """
    said = steps_of(text)
    if not stations:
        raise Unreadable("route without stations")
    found: list[Operation] = []
    for step in said:
        if is_wait(step.words):
            found[-1:] = [_with_wait(found[-1] if found else None, step, stations)]
            continue
        ends_overnight = step.words[-1].lower() == "overnight"
        work = replace(step, words=step.words[:-1]) if ends_overnight else step
        operation = _operation(work, stations, pieces_a_tray, {operation.key for operation in found})
        if ends_overnight:
            operation = _with_wait(operation, replace(step, words=("overnight",), time=None), stations)
        found.append(operation)
    return tuple(found)


@dataclass(frozen=True)
class UnclearLoad:
    """A step at a machine that does not say how many pieces go on at once: its ``number`` in the line."""

    number: int
    name: str
    station: Station


def unclear_loads(text: str, stations: Sequence[Station]) -> tuple[UnclearLoad, ...]:
    """The steps at machines whose load nobody said. Refuses with ``Unreadable`` as ``route_from_text`` does."""
    found = []
    for step in steps_of(text):
        if stations and not is_wait(step.words) and not step.says_load:
            words, station = _place(step.words, stations)
            if station.machine:
                found.append(UnclearLoad(step.number, " ".join(words).capitalize() or station.name, station))
    return tuple(found)


def with_loads(text: str, loads: Mapping[int, int], stations: Sequence[Station], pieces_a_tray: int) -> str:
    """The line with how many pieces go on at once at these steps: a tray, a board that makes more, a jig of its own."""
    kinds = {one.number: one.station.kind for one in unclear_loads(text, stations)}
    said = []
    for step in steps_of(text):
        pieces = loads.get(step.number) if step.number in kinds else None
        size = "board" if kinds.get(step.number) == "cnc" and (pieces or 0) > pieces_a_tray else "jig"
        load = "" if pieces is None else " a tray" if pieces == pieces_a_tray else f" {size} of {pieces}"
        said.append(step.text + load)
    return ", ".join(said)


def _with_wait(before: Operation | None, step: StepSaid, stations: Sequence[Station]) -> Operation:
    """The operation before with the wait that follows it; two waits in a row become one as long as both."""
    if before is None:
        raise Unreadable("route wait first", number=step.number, text=step.text)
    plain = [word.lower() for word in step.words]
    kind = next(station.kind for station in stations if station.key == before.station)
    why = next((WAIT_WORDS[word] for word in plain if WAIT_WORDS.get(word)), None) or usual_wait(kind)
    least = step.time
    if least is None:
        least = OVERNIGHT if "overnight" in plain else WAIT_GUESSES[why]
    if before.wait:
        why, least = before.wait.why, before.wait.least + least
    return replace(before, wait=Wait(why, least))


# operations


def _operation(step: StepSaid, stations: Sequence[Station], pieces_a_tray: int, taken: set[str]) -> Operation:
    words, station = _place(step.words, stations)
    names, words = _pass_names(words, station)
    name = " ".join(words) or station.name
    name = name[:1].upper() + name[1:]
    passes, keys = [], set[str]()
    for pass_name in names:
        key = key_for(pass_name.removeprefix("side ") or "1", keys)
        keys.add(key)
        passes.append(_pass(key, pass_name, step, station, pieces_a_tray, len(names)))
    return Operation(
        key=key_for(name, taken),
        name=name,
        station=station.key,
        passes=tuple(passes),
        attendance=attendance_for(station.kind),
        guess=True,
    )


def _place(words: tuple[str, ...], stations: Sequence[Station]) -> tuple[tuple[str, ...], Station]:
    """The station that the words name, without the 'at the bench' that named it, or the one they call for."""
    text = " ".join(words)
    for station in sorted(stations, key=lambda station: -len(station.name)):
        for called in (_bare(station.name), station.key):
            place = re.search(rf"(?:^|\s)at (?:the )?{re.escape(called)}$", text, re.IGNORECASE)
            if place:
                return tuple(text[: place.start()].split()), station
    for station in stations:
        if re.search(rf"(?<!\w){re.escape(_bare(station.name))}(?!\w)", text, re.IGNORECASE):
            return words, station
    return words, station_for([word.lower() for word in words], stations)


def _bare(name: str) -> str:
    return re.sub(r"^the\s+", "", name.strip(), flags=re.IGNORECASE)


def _pass_names(words: tuple[str, ...], station: Station) -> tuple[list[str], tuple[str, ...]]:
    """The names of the passes, and the words without them: grits at a sander, sides anywhere."""
    for at, word in enumerate(words):
        if station.kind == "sander" and _GRITS.fullmatch(word):
            return word.split("/"), words[:at] + words[at + 1 :]
        if at and words[at - 1].lower() in ("side", "sides") and _SIDES.fullmatch(word):
            return [f"side {side}" for side in word.upper().split("/")], words[: at - 1] + words[at + 1 :]
    return [""], words


def _pass(key: str, name: str, step: StepSaid, station: Station, pieces_a_tray: int, passes: int) -> Pass:
    guess = GUESSES[station.kind]
    work = timedelta(minutes=guess.work) if step.time is None else step.time
    if station.machine:
        total = work * pieces_a_tray if step.each else work
        machine, hand = total / passes, ZERO
    else:
        machine, hand = ZERO, (work if step.each and step.time is not None else work / pieces_a_tray) / passes
    return Pass(
        key=key,
        name=name or "1",
        size=step.size,
        pieces=step.pieces,
        setup=timedelta(minutes=guess.setup),
        loading=timedelta(minutes=guess.loading),
        machine=machine,
        unloading=timedelta(minutes=guess.unloading),
        hand=hand,
    )


# writing


def route_to_text(operations: Sequence[Operation], stations: Sequence[Station], pieces_a_tray: int = 5) -> str:
    """A route in a few words. ``route_from_text`` reads it back to the same where it came from there; what was refined
    since (setups, checks, services) has no words here."""
    said: list[str] = []
    for operation in operations:
        said.append(_step_text(operation, stations, pieces_a_tray))
        if operation.wait:
            said.append(_wait_text(operation, operation.wait, stations))
    return ", ".join(said)


def _step_text(operation: Operation, stations: Sequence[Station], pieces_a_tray: int) -> str:
    words = [_small(operation.name)]
    names = [pass_.name for pass_ in operation.passes]
    if all(name.startswith("side ") for name in names):
        words.append("sides " + "/".join(name.removeprefix("side ") for name in names))
    elif len(names) > 1:
        words.append("/".join(names))
    station = next((station for station in stations if station.key == operation.station), None)
    if station and stations and _place(tuple(operation.name.split()), stations)[1] != station:
        words.append(f"at {_bare(station.name)}")
    words.append(_time_text(operation, pieces_a_tray))
    first = operation.passes[0]
    if first.size in ("board", "jig") and first.pieces:
        words.append(f"{first.size} of {first.pieces}")
    return " ".join(words)


def _small(name: str) -> str:
    first, *rest = name.split(" ")
    return " ".join([first.lower() if first.istitle() else first, *rest])


def _time_text(operation: Operation, pieces_a_tray: int) -> str:
    """The minutes of a load or a tray; to the second, for a share of a pass may have been rounded."""
    machine = sum((pass_.machine for pass_ in operation.passes), ZERO)
    work = machine or sum((pass_.hand for pass_ in operation.passes), ZERO) * pieces_a_tray
    span = timedelta(seconds=round(work.total_seconds()))
    return format_duration(span).removesuffix(" min") if span < timedelta(hours=1) else format_duration(span)


def _wait_text(operation: Operation, wait: Wait, stations: Sequence[Station]) -> str:
    kind = next((station.kind for station in stations if station.key == operation.station), "bench")
    if wait.least != OVERNIGHT:
        return f"{wait.why} {format_duration(wait.least)}"
    return "overnight" if wait.why == usual_wait(kind) else f"{wait.why} overnight"
