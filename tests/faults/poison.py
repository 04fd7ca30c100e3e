"""Events of every kind with anything in them that their form allows: what one accepted press could do to a shop."""

import re
from collections.abc import Mapping
from datetime import UTC, datetime, timedelta
from typing import Any

from hypothesis import strategies as st

from runboard.run.log.form import needed
from runboard.run.log.kinds import KINDS
from runboard.run.log.shapes import MOMENT
from tests.scenario import key_rails

# Subjects that are there, mostly; and some that are not, or look like another thing.
NAMES: Mapping[str, tuple[str, ...]] = {
    "run": ("r1", "r1", "r1", "r1", "r1", "r2"),
    "tray": ("1", "1", "2", "3", "1", "x"),
    "load": ("cut/1", "sand:120/1", "clean/2", "engrave/1", "oil/1+2", "hooks/1.2", "cut/x"),
    "operation": ("cut", "clean", "sand:120", "sand:180", "engrave", "oil", "hooks", "none"),
    "station": ("cnc", "bench", "sander", "laser", "finishing", "cnc", "laser", "none"),
    "person": ("ann", "ann", "ben", "ann", "guest-1"),
}
LONG = ("x" * 80, "é" * 40, "\u2028", "‮", "0", "-1", "NaN", "__proto__", "{ $at }", "r1|cut/1")


def values(shape: Mapping[str, Any], field: str, now: datetime) -> st.SearchStrategy[Any]:
    """Anything that this JSON Schema takes, with its limits and the shop's own names among it."""
    if shape is MOMENT or shape.get("format") == "date-time":
        return moments(now)
    if "enum" in shape:
        return st.sampled_from(shape["enum"])
    if "anyOf" in shape:
        return st.one_of(*(values(one, field, now) for one in shape["anyOf"]))
    kind = shape["type"]
    if kind == "object":
        return _objects(shape, field, now)
    if kind == "array":
        most = min(int(shape.get("maxItems", 5)), 5)
        return st.lists(values(shape["items"], field, now), max_size=most)
    if kind == "string":
        return _texts(shape, field)
    if kind in ("integer", "number"):
        return _numbers(shape, whole=kind == "integer")
    return st.booleans() if kind == "boolean" else st.none()


def moments(now: datetime) -> st.SearchStrategy[str]:
    """From the first year that is taken to the last, and around now."""
    near = [now + timedelta(minutes=one) for one in (-600, -31, -1, 0, 0.9, 5, 90, 1500, 60_000)]
    far = [datetime(1990, 1, 2, tzinfo=UTC), datetime(2199, 12, 31, 23, 59, 59, 999000, tzinfo=UTC)]
    return st.sampled_from([one.isoformat() for one in (*near, *far)])


def events(now: datetime, number: int) -> st.SearchStrategy[dict[str, Any]]:
    """A record of any kind; its id is the number's, so that corrections can name it."""
    return st.sampled_from(list(KINDS)).flatmap(lambda kind: _event(kind, now, number))


def _event(kind: str, now: datetime, number: int) -> st.SearchStrategy[dict[str, Any]]:
    known = KINDS[kind]
    must = {name: _field(name, shape, now, number) for name, shape in known.required.items()}
    may = {name: _field(name, shape, now, number) for name, shape in known.optional.items()}
    wanted = {name: _names(name) for name in needed(kind)}
    more = {name: _names(name) for name in NAMES if name not in wanted}
    return st.fixed_dictionaries(
        {
            "id": st.just(f"poison-{number:03d}"),
            "kind": st.just(kind),
            "at": moments(now),
            "body": st.fixed_dictionaries(must, optional=may),
            **wanted,
        },
        optional={**more, "revision": st.integers(0, 3), "seen": st.sampled_from([0, 10_000])},
    )


def _field(name: str, shape: Mapping[str, Any], now: datetime, number: int) -> st.SearchStrategy[Any]:
    if name == "product":
        return products()
    if name == "event":
        return st.integers(0, max(0, number - 1)).map(lambda one: f"poison-{one:03d}")
    return values(shape, name, now)


def products() -> st.SearchStrategy[dict[str, Any]]:
    """Key rails with one number of their route turned to something large, small or none."""
    places = [
        (at, name)
        for at, operation in enumerate(key_rails()["operations"])
        for name, value in operation["passes"][0].items()
        if name.endswith("_minutes") or (name == "pieces" and value)
    ]
    return st.tuples(st.sampled_from(places), st.sampled_from([0, 1, 0.001, 500, 9999, 100_000])).map(
        lambda one: _with(*one[0], one[1])
    )


def _with(at: int, name: str, value: float) -> dict[str, Any]:
    product = key_rails()
    product["operations"][at]["passes"][0][name] = int(value) or 1 if name == "pieces" else value
    return product


def _objects(shape: Mapping[str, Any], field: str, now: datetime) -> st.SearchStrategy[dict[str, Any]]:
    named = shape.get("properties")
    if named is not None:
        wanted = shape.get("required", ())
        return st.fixed_dictionaries(
            {name: values(named[name], name, now) for name in wanted},
            optional={name: values(one, name, now) for name, one in named.items() if name not in wanted},
        )
    more = shape.get("additionalProperties")
    if not isinstance(more, Mapping):
        return st.just({})
    keys = st.sampled_from(NAMES["tray"]) if "propertyNames" in shape else st.sampled_from(NAMES["tray"] + LONG)
    return st.dictionaries(keys, values(more, field, now), max_size=3)


def _texts(shape: Mapping[str, Any], field: str) -> st.SearchStrategy[str]:
    found = (*NAMES.get(field, ()), *NAMES["tray"], *NAMES["operation"], *NAMES["person"], *LONG)
    most = int(shape.get("maxLength", 80))
    cut = [*(one[:most] for one in found), "z" * most]
    return st.sampled_from([one for one in cut if re.search(shape.get("pattern", ""), one)])


def _numbers(shape: Mapping[str, Any], *, whole: bool) -> st.SearchStrategy[Any]:
    least, most = shape.get("minimum", 0), shape.get("maximum", 10**6)
    found = [least, most, 1, 2, 5] + ([] if whole else [0.001, 1e-300, 38.5])
    return st.sampled_from([one for one in found if least <= one <= most])


def _names(field: str) -> st.SearchStrategy[str]:
    return st.sampled_from(NAMES[field])
