"""Whether scrap gathers at one wood, board, cutter or hour of the day more than chance would have it.

Fisher's exact test, one-sided (R. A. Fisher, *The Design of Experiments*, 1935): were the lost pieces of a step dealt out to
all that came to it by chance, a group of n would have k or more of them with the hypergeometric probability that is reckoned
here. It is asked of every group of a step, so it is the chance that as many gather at any of them (Boole's bound). Pieces of one load
are taken as lost independently of each other; where one slip spoils a whole tray, chance alone gathers more.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from math import comb
from zoneinfo import ZoneInfo

from runboard.review.past import Past
from runboard.run.fold.state import Load, Tray

BY = ("wood", "board", "cutter", "hour")
# What chance alone does more often than once in ten runs says nothing: a look at the board costs a minute, so this is less
# strict than what a paper asks for, and the sentence says how likely it is.
SELDOM = 0.1
# Of fewer lost pieces nothing gathers.
LEAST_LOST = 3


@dataclass(frozen=True)
class Gathered:
    """Of a step's pieces ``lost`` of ``of`` at one ``which`` of the kind ``by`` (a wood, a board, the hours from an hour on, the
    cutter since its nth change), and ``others_lost`` of ``others`` elsewhere. ``chance`` is how likely chance alone gathers
    as many at any of the step's groups of that kind."""

    by: str
    which: str
    step: str
    lost: int
    of: int
    others_lost: int
    others: int
    chance: float


def gathered(past: Past) -> tuple[Gathered, ...]:
    """Where scrap gathers in a run, the surest first."""
    found: list[Gathered] = []
    for (by, step), groups in _groups(past).items():
        pieces, all_lost = (sum(each) for each in zip(*groups.values(), strict=True))
        for which, (of, lost) in groups.items():
            if lost < LEAST_LOST or of == pieces:
                continue
            chance = sum(at_least(lost, each, all_lost, pieces) for each, _ in groups.values())
            if chance <= SELDOM:
                found.append(Gathered(by, which, step, lost, of, all_lost - lost, pieces - of, chance))
    return tuple(sorted(found, key=lambda one: (one.chance, BY.index(one.by), one.step, one.which)))


def at_least(lost: int, of: int, all_lost: int, pieces: int) -> float:
    """The hypergeometric probability that ``lost`` or more of the ``all_lost`` of ``pieces`` are among ``of`` of them."""
    most = min(of, all_lost)
    ways = sum(comb(all_lost, each) * comb(pieces - all_lost, of - each) for each in range(lost, most + 1))
    return ways / comb(pieces, of)


Groups = dict[tuple[str, str], dict[str, tuple[int, int]]]


def _groups(past: Past) -> Groups:
    """By (kind, step) for each group the pieces counted, and those lost of them."""
    found: Groups = {}
    cutters: dict[str, list[datetime]] = {}
    for event in past.events:
        if event.kind == "setup changed" and event.get("what") == "cutter":
            cutters.setdefault(event.station, []).append(event.moment)
    for tray in past.run.trays.values():
        for step, loads in tray.counts.items():
            for load, (good, bad) in loads.items():
                known = past.run.past.get(load) or past.run.loads.get(load)
                for by, which in (*_of_tray(past, tray), *_of_load(past, known, cutters)):
                    groups = found.setdefault((by, step), {})
                    of, lost = groups.get(which, (0, 0))
                    groups[which] = (of + good + bad, lost + bad)
    return found


def _of_tray(past: Past, tray: Tray) -> Iterator[tuple[str, str]]:
    """(kind, which) of the groups that a tray's pieces are in."""
    if tray.wood or past.run.wood:
        yield "wood", tray.wood or past.run.wood
    if tray.board:
        yield "board", tray.board


def _of_load(past: Past, load: Load | None, cutters: Mapping[str, list[datetime]]) -> Iterator[tuple[str, str]]:
    """Those that the pieces of a load are in, which nobody knows of one that was not pressed."""
    began = min((span.began_at for span in load.spans), default=None) if load is not None else None
    if load is None or began is None:
        return
    if load.station in cutters:
        yield "cutter", str(sum(moment <= began for moment in cutters[load.station]) + 1)
    yield "hour", str(began.astimezone(ZoneInfo(past.book.time_zone)).hour)
