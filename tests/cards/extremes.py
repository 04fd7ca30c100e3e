"""Runs with the longest texts that the forms take, in Latin, Cyrillic and Greek, as Hypothesis finds them."""

from collections.abc import Callable
from datetime import timedelta
from types import MappingProxyType
from typing import Any

from hypothesis import strategies as st

from runboard.run.fold.state import OrderLine, RunState, Tray
from runboard.shop.book import Book, Person, Station
from runboard.shop.finish import Finish
from runboard.shop.product import Check, Instruction, Operation, Pass, Product, Wait
from tests.cards.making import NOW, run_of

NAME, TEXT = 200, 2000
_LETTERS = st.one_of(
    st.characters(min_codepoint=0x20, max_codepoint=0x24F),
    st.characters(min_codepoint=0x370, max_codepoint=0x3FF),
    st.characters(min_codepoint=0x400, max_codepoint=0x4FF),
)
_WORDS = st.sampled_from(
    [
        "W" * NAME,
        "Ж" * NAME,
        "Ω" * NAME,
        "Щит для ключей из ясеня " * 8,
        "Κλειδοθήκη εισόδου από μελιά " * 6,
        "iiii " * 40,
    ]
)


def names(most: int = NAME) -> st.SearchStrategy[str]:
    """A name as somebody may have typed it, or one of the widest there are."""
    free = st.text(_LETTERS, min_size=1, max_size=min(most, 300)).map(lambda text: text.strip() or "x")
    return st.one_of(free, _WORDS.map(lambda text: text[:most].strip()))


def widest(most: int = NAME) -> st.SearchStrategy[str]:
    """A name of the widest letters, as long as it may be, without a place to break it."""
    return st.just("W" * min(most, NAME))


Named = Callable[..., st.SearchStrategy[str]]


@st.composite
def shops(draw: Any, names: Named = names, operations: int = 14) -> tuple[Book, RunState]:
    """A book and a run of 14 ``operations`` and 40 order lines."""
    stations = tuple(
        Station(kind.replace(" ", "-"), draw(names()), kind, "shop")
        for kind in ("cnc", "hand cutter", "laser", "finishing", "bench", "sander")
    )
    finish = Finish(
        "oil", draw(names()), *(timedelta(hours=hours) for hours in (12, 24, 900)), ventilation=draw(names(TEXT))
    )
    route = tuple(_operation(draw, at, stations[at % len(stations)], names) for at in range(operations))
    product = Product("p", draw(names()), route, wood=draw(names()))
    book = Book(
        units=draw(st.sampled_from(["mm", "in"])),
        emergency=draw(names()),
        stations=stations,
        people=(Person("ann", draw(names())),),
        products=(product,),
        finishes=(finish,),
    )
    return book, _run(draw, product, names)


def _operation(draw: Any, at: int, station: Station, names: Named) -> Operation:
    wait = Wait("clamp", timedelta(minutes=20), timedelta(minutes=75)) if at % 3 == 0 else None
    return Operation(
        key=f"o{at}",
        name=draw(names()),
        station=station.key,
        passes=(Pass("a", draw(names()), "jig", 5),) if at % 4 else (Pass("a", draw(names())), Pass("b", "180")),
        attendance="watched",
        wait=wait,
        checklist=(draw(names(TEXT)),),
        setup_sheet=((draw(names()), draw(names(TEXT))),),
        checks=(Check("c", draw(names()), nominal=60.325, plus=0.3, minus=0.2), Check("d", draw(names()), per="run")),
        cautions=(draw(names(TEXT)), "eye protection"),
        personal=at == 5,
        finish="oil" if at % 5 == 3 else None,
        instructions=(Instruction(draw(names(TEXT))),),
        translations=MappingProxyType({}),
    )


def _run(draw: Any, product: Product, names: Named) -> RunState:
    orders = tuple(OrderLine(str(at), 3, draw(names()), draw(names()), NOW + timedelta(hours=at)) for at in range(40))
    run = run_of(product, name=draw(names()), product_name=product.name, orders=orders)
    places = {at: (str(at), orders[at].text) for at in range(1, 6)}
    key = draw(st.one_of(st.sampled_from(["4", "12", "128", "4a"]), names(80)))
    tray = Tray(key, 5, at={"o1": 5}, places=places if draw(st.booleans()) else {}, wood=draw(names()))
    return RunState(**{**vars(run), "trays": {key: tray}})
