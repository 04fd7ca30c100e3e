"""The codes of the language and which of them exclude one another (NISTIR 6556, 3.4, Table 4)."""

from runboard.plan.program.language.doubts import Doubts, LeftOut
from runboard.plan.program.language.line import Line

CYCLES = range(810, 891, 10)
SYSTEMS = (540, 550, 560, 570, 580, 590, 591, 592, 593)
# G codes are times ten: G38.2 is 382.
_G_GROUPS: dict[int, tuple[int, ...]] = {
    0: (40, 100, 280, 300, 530, 920, 921, 922, 923),
    1: (0, 10, 20, 30, 382, 800, *CYCLES),
    2: (170, 180, 190),
    3: (900, 910),
    5: (930, 940),
    6: (200, 210),
    7: (400, 410, 420),
    8: (430, 490),
    10: (980, 990),
    12: SYSTEMS,
    13: (610, 611, 640),
}
_M_GROUPS: dict[int, tuple[int, ...]] = {4: (0, 1, 2, 30, 60), 6: (6,), 7: (3, 4, 5), 8: (7, 8, 9), 9: (48, 49)}
_GROUP_OF_G = {code: group for group, codes in _G_GROUPS.items() for code in codes}
_GROUP_OF_M = {code: group for group, codes in _M_GROUPS.items() for code in codes}
# No code of the report's; elsewhere it says what holds in it anyway (3.5.17).
_CENTRES_INCREMENTAL = 911
# Those of group 0 that use axis words for something else than a motion.
TAKES_AXES = (100, 280, 300, 920)


def named(code: int) -> str:
    """A G code as it is written: 'G38.2'."""
    return f"G{code // 10}" if code % 10 == 0 else f"G{code / 10:.1f}"


def by_group(line: Line, doubts: Doubts) -> tuple[dict[int, int], dict[int, int]]:
    """The line's G codes and M codes by their group. Codes that the language does not have are named and left out; where one
    stands beside axis words nobody knows what these mean, and the line is left out, as it is with two codes of a group."""
    if _CENTRES_INCREMENTAL in line.g:
        doubts.once(line.number, "centres-incremental")
    unknown = [code for code in line.g if code not in _GROUP_OF_G and code != _CENTRES_INCREMENTAL]
    if unknown and line.has("xyz"):
        raise LeftOut("code-unknown", word=named(unknown[0]))
    for code in unknown:
        doubts.add(line.number, "code-unknown", changes_time=True, word=named(code))
    for code in line.m:
        if code not in _GROUP_OF_M:
            doubts.add(line.number, "code-unknown", changes_time=True, word=f"M{code}")
    found_g: dict[int, int] = {}
    for code in line.g:
        group = _GROUP_OF_G.get(code)
        if group in found_g:
            raise LeftOut("same-group", one=named(found_g[group]), other=named(code))
        if group is not None:
            found_g[group] = code
    found_m: dict[int, int] = {}
    for code in line.m:
        group = _GROUP_OF_M.get(code)
        if group in found_m:
            raise LeftOut("same-group", one=f"M{found_m[group]}", other=f"M{code}")
        if group is not None:
            found_m[group] = code
    if 1 in found_g and found_g[1] != 800 and found_g.get(0) in TAKES_AXES:
        raise LeftOut("axes-for-two", one=named(found_g[1]), other=named(found_g[0]))
    return found_g, found_m
