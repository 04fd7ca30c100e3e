"""Finishes: what a label says, what is usual for a kind of finish, and a finish known by its words, wherever somebody wrote
them down.

Words and common practice have no source: the label of the product in the shop's hand wins. Where words leave it open which
finish it is, and where nobody knows it, the careful reading holds: it heats by itself and gives off solvent.
"""

import json
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from functools import cache, lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Annotated, Any

from runboard.shop.record import Key, Name, Of


@dataclass(frozen=True)
class Finish:
    """A finish as its label and data sheet say, typed in by the shop; times count from the end of the coat. Without a
    ``sheet_date`` the figures are common practice only, and the label has to be read. While ``solvent`` is in the air, for
    ``airing``, nothing in that room may spark or heat."""

    key: Key
    name: Name
    recoat: timedelta | None = None
    handle: timedelta | None = None
    cure: timedelta | None = None
    airing: Annotated[timedelta | None, Of("How long its solvent is in the air.")] = None
    self_heats: Annotated[bool, Of("Its rags can start a fire by themselves.")] = True
    solvent: bool = False
    ventilation: str = ""
    sheet_date: Annotated[
        str, Of("The date of the label or data sheet, such as 2026-03-14; empty where nobody read it.", kind="date")
    ] = ""


# What nobody wrote down: the careful reading of it, until somebody says otherwise.
UNKNOWN_FINISH = Finish("", "", solvent=True)


@cache
def _common_practice() -> Mapping[str, Any]:
    """``finishes`` by kind; the words by which one is ``known_by``, where the first whose word is found counts; the words that
    are ``unclear``: that a finish is brought on, and not which. A word stands alone, with its usual endings where it ends in
    '*'; several words stand side by side."""
    found: Mapping[str, Any] = json.loads(files("runboard.shop").joinpath("common_finishes.json").read_text("utf-8"))
    return found


@cache
def common_finishes() -> Mapping[str, Mapping[str, Any]]:
    """What is usual for each kind of finish, by key: its record without a sheet's date, with its ``source`` and, where there
    is one, ``url``."""
    return MappingProxyType({finish["key"]: MappingProxyType(finish) for finish in _common_practice()["finishes"]})


def begin_from(key: str) -> dict[str, Any]:
    """What a new finish of this kind begins with, as in the book's record but without a key; empty where nobody knows
    the kind."""
    common = common_finishes().get(key, {})
    return {name: value for name, value in common.items() if name not in ("key", "source", "url")}


@lru_cache(maxsize=512)  # asked for every load that Now offers and the plan holds, of few words
def finish_by_words(text: str) -> Finish | None:
    """What the words of a step say that it brings on: a finish without times; ``UNKNOWN_FINISH`` where they leave it open
    which; None where they speak of none."""
    plain = f" {plain_words(text)} "
    for known in _common_practice()["known_by"]:
        if any(_holds(plain, word) for word in known["words"]):
            return Finish("", known["name"], self_heats=known["self_heats"], solvent=known["solvent"])
    return UNKNOWN_FINISH if any(_holds(plain, word) for word in _common_practice()["unclear"]) else None


def plain_words(text: str) -> str:
    """The words of a text in small letters without accents, one space between two."""
    bare = "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
    return re.sub(r"[^a-z]+", " ", bare).strip()


def _holds(plain: str, word: str) -> bool:
    return f" {word[:-1]}" in plain if word.endswith("*") else f" {word} " in plain
