"""What is usual for a kind of finish, to begin from where a shop has no label at hand yet; the label always wins."""

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

_SOURCES = ("source", "url")


@cache
def common_finishes() -> Mapping[str, Mapping[str, Any]]:
    """By key: the record of a finish without a sheet's date, with its ``source`` and, where there is one, ``url``."""
    text = files("runboard.shop").joinpath("common_finishes.json").read_text("utf-8")
    return MappingProxyType({one["key"]: MappingProxyType(one) for one in json.loads(text)["finishes"]})


def begin_from(key: str) -> dict[str, Any]:
    """What a new finish of this kind begins with, as in the book's record but without a key; empty where nobody knows
    the kind."""
    common = common_finishes().get(key, {})
    return {name: value for name, value in common.items() if name not in ("key", *_SOURCES)}
