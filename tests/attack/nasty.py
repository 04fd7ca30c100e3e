"""What nobody means: texts, numbers and shapes that programs stumble over, and JSON mutated with them."""

import json
import re
from copy import deepcopy
from random import Random
from typing import Any

TEXTS = (
    "", " ", "\0", "a\nb", "x\r\nSet-Cookie: a=b", "\u2028", "\u202eabc", "\ud800", "\udfff\ud800", "é́", "🪚", "\ufeff",
    "0", "-1", "1.5", "1,5", "1e309", "-1e309", "1e-400", "1e99", "NaN", "nan", "Infinity", "-inf", "0x10", "1_000", "١٢", "²", "½",
    "9" * 309, "9" * 5000, "-" * 50, "../../x", "..\\..\\x", "%00", "%2e%2e%2f", "%", "<b>&quot;'", "{{7*7}}", "{x}", "%s%n", "'; --",
    "a" * 81, "a" * 500, "a" * 10_000, "\n" * 300, "5+6", "a/b", "a|b|c", "|", "/", ":", ".", "..", "+", "sand:120", "cut/1", "cut/0",
    "cut/99999999999", "r1", "r2", "1", "rail", "cnc", "ann", "new", "server", "event|x|y", "2199-12-31T23:59:59Z", "1990-01-01T00:00:00Z",
    "0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00", "2026-03-07T09:00:00", "2026-03-07T09:00:00+99:00", "2026-02-30T00:00:00Z",
    "2026-03-29T02:30:00+01:00", "2026-03-07", "24:00", "25:61", "1 h 30 min", "99999999 h", "1e9 min", "3/4 in", "1/0 in", "yes", "true",
    "null", "[]", "{}", "data:,x", "javascript:x", "file:///etc/passwd", "http://127.0.0.1:1/", "json://127.0.0.1:1/",
)  # fmt: skip
NUMBERS = (0, -1, 1, 2, 63, 2**31, 2**53, 2**53 + 1, 2**63, 2**64, -(2**63), 10**308, 10**400, 100_000, 1_000_000, 0.1, -0.0, 1e-320,
           1e308, float("nan"), float("inf"), float("-inf"))  # fmt: skip
# What json.dumps cannot write is put in afterwards.
_DIGITS, _DEEP, _DEEPER, _LONG = "@digits@", "@deep@", "@deeper@", "@long@"
_WRITTEN = {
    f'"{_DIGITS}"': "9" * 5000,
    f'"{_DEEP}"': "[" * 979 + "]" * 979,
    f'"{_DEEPER}"': '{"a":' * 20_000 + "1" + "}" * 20_000,
    f'"{_LONG}"': '"' + "x" * 100_000 + '"',
}
SHAPES: tuple[Any, ...] = (
    None, True, False, [], {}, [[]], [None], {"": None}, {"a": {"a": {"a": []}}}, ["x"] * 600, {str(at): at for at in range(600)},
    _DIGITS, _DEEP, _DEEPER, _LONG,
)  # fmt: skip


_PLAIN_TEXTS = tuple(one for one in TEXTS if not re.search("[\ud800-\udfff]", one))
_PLAIN_NUMBERS = tuple(
    one for one in NUMBERS if abs(one) <= 2**53 or (2**53 < abs(one) < 1e100 and isinstance(one, float))
)
_PLAIN_SHAPES = tuple(one for one in SHAPES if one not in (_DIGITS, _DEEPER))


def text(random: Random, odd: bool = True) -> str:
    """A text that nobody means, or two in one; without ``odd`` one that is text all the same."""
    found = random.choice(TEXTS if odd else _PLAIN_TEXTS)
    return found + random.choice(_PLAIN_TEXTS)[:200] if random.random() < 0.1 else found


def value(random: Random, odd: bool = True) -> Any:
    """A value that nobody means; without ``odd`` one that is plain JSON, which is taken to pieces further in."""
    chance = random.random()
    if chance < 0.55:
        return text(random, odd)
    if chance < 0.8:
        return random.choice(NUMBERS if odd else _PLAIN_NUMBERS)
    return deepcopy(random.choice(SHAPES if odd else _PLAIN_SHAPES))  # it may be changed further


def written(record: Any) -> str:
    """The JSON of a record, with what no library would write."""
    found = json.dumps(record)
    for mark, words in _WRITTEN.items():
        if mark in found:
            found = found.replace(mark, words)
    return found


def mutated(random: Random, record: Any, times: int = 1, odd: bool = True) -> Any:
    """A copy of a JSON value in which so many places are other than they should be."""
    found = json.loads(json.dumps(record))
    for _ in range(times):
        found = _once(random, found, odd)
    return found


def _once(random: Random, whole: Any, odd: bool) -> Any:
    if not isinstance(whole, dict | list) or not whole:
        return value(random, odd)
    place, key = whole, random.choice(_keys(whole))
    while isinstance(place[key], dict | list) and place[key] and random.random() < 0.85:
        place = place[key]
        key = random.choice(_keys(place))
    _change(random, place, key, odd)
    return whole


def _keys(place: Any) -> list[Any]:
    return list(place) if isinstance(place, dict) else list(range(len(place)))


def _change(random: Random, place: Any, key: Any, odd: bool) -> None:
    chance = random.random()
    if chance < 0.65:
        place[key] = value(random, odd)
    elif chance < 0.75:
        del place[key]
    elif chance < 0.85 and isinstance(place, dict):
        place[text(random, odd)] = place[key]
    elif isinstance(place, list):
        place += [deepcopy(place[key]) for _ in range(random.choice((1, 1, 3, 50)))]
    else:
        place[key] = [place[key]] if random.random() < 0.5 else {"x": place[key]}
