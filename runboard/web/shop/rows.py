"""The shop's lists as its page shows them: each folded with its count, and in each row what one looks for."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from runboard.floor.looking.shopping import at_hand_now
from runboard.plan.supplies.at_hand import AtHand
from runboard.run.supplies.said import word_of
from runboard.shop.book import Station
from runboard.shop.units import Unit
from runboard.web.door.pages import workshop
from runboard.web.forms.asked import Record, choice_word
from runboard.web.forms.shop import COMMON_PRACTICE, THINGS, Thing, name_in
from runboard.words.before.measures import size_in_words
from runboard.words.before.supplies import amount_in_words
from runboard.words.facts import number_in_words, typed_day
from runboard.words.sentences import sentence

# Without these nothing can be done: as long as they are empty they stand open.
NEEDED_FIRST = ("rooms", "stations", "people")


@dataclass(frozen=True)
class Row:
    """One thing: its key, its name, what stands beside it."""

    key: str
    name: str
    said: str


@dataclass(frozen=True)
class ShopList:
    """A list of the shop's things, and whether it is open."""

    thing: Thing
    rows: tuple[Row, ...]
    is_open: bool


def lists_of(record: Record, opened: str = "") -> list[ShopList]:
    """Every list in the order of the page; ``opened`` is the one that somebody comes back to."""
    there = {here.word: here for here in at_hand_now(workshop())} if record["supplies"] else {}
    beside: Mapping[str, Callable[[Record], str]] = {
        **_BESIDE,
        **{name: _sized(name, record["units"]) for name in _SIZES},
        "supplies": lambda supply: _there(there.get(word_of(supply["name"]))),
        "feeds": lambda feed: _feed(feed, record["units"]),
    }
    return [
        ShopList(
            thing,
            tuple(
                Row(each["key"], name_in(name, record, each), beside[name](each) if name in beside else "")
                for each in record[name]
            ),
            name == opened or (name in NEEDED_FIRST and not record[name]),
        )
        for name, thing in THINGS.items()
    ]


def _row(name: str, **facts: object) -> str:
    return sentence(f"shop-row-{name}", facts)


def _known_by(finish: Record) -> str:
    """By what a finish's figures are known."""
    return (
        sentence("finish-label-of", {"date": typed_day(finish["sheet_date"])})
        if finish["sheet_date"]
        else COMMON_PRACTICE
    )


_BESIDE: Mapping[str, Callable[[Record], str]] = {
    "stations": lambda station: choice_word(Station, "kind", station["kind"]).partition(":")[0],
    "services": lambda service: sentence("shop-at-once", {"capacity": service["capacity"]}),
    "people": lambda person: sentence("shop-lead-helper", {"access": person["access"]}),
    "jobs": lambda job: sentence("shop-about-min", {"minutes": job["minutes"]}),
    "finishes": _known_by,
    "jigs": lambda jig: _row("jigs", columns=jig["columns"], rows=jig["rows"]),
}
# The sizes that stand beside a thing, in their order.
_SIZES: Mapping[str, tuple[str, ...]] = {
    "stocks": ("length", "width", "thickness"), "screws": ("diameter", "length"), "inserts": ("diameter", "length"),
    "cutters": ("diameter",),
}  # fmt: skip


def _sized(name: str, units: Unit) -> Callable[[Record], str]:
    """'1000 × 350 × 18 mm, 2 there'"""

    def said(each: Record) -> str:
        size = size_in_words([each[side] for side in _SIZES[name] if each[side] is not None], units)
        return _row(name, size=size or "none", have=each.get("have", 0), flutes=each.get("flutes") or 0)

    return said


def _there(here: AtHand | None) -> str:
    """How much of a supply there should be."""
    return _row(
        "supplies", there=amount_in_words(here.there, here.unit) if here and here.there is not None else "unknown"
    )


def _feed(feed: Record, units: Unit) -> str:
    return _row("feeds", rpm=number_in_words(feed["rpm"]), feed=size_in_words([feed["feed"]], units))
