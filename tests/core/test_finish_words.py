"""A finish is known by its words wherever it is written; one that nobody can tell counts as the worst of them."""

import pytest

from runboard.shop.book_json import book_from_json
from runboard.shop.care import finish_is_unclear, finish_of
from runboard.shop.finish import finish_by_words
from tests.core.pressing import Floor
from tests.scenario import a_pass, key_rails, operation, shop

# (words, rags heat by themselves, solvent in the air)
KNOWN = [
    ("Linseed oil", True, True),
    ("Wipe on boiled linseed", True, True),
    ("Leinöl", True, True),
    ("Aceite de linaza", True, True),
    ("Huile de lin", True, True),
    ("Tung", True, True),
    ("walnut oil", True, True),
    ("Danish oil, thin", True, True),
    ("Hardwax oil", True, True),
    ("Hartwachsöl", True, True),
    ("oil-based varnish", True, True),
    ("Oil-based poly", True, True),
    ("Wipe-on poly", True, True),
    ("Shellac", False, True),
    ("Schellack", False, True),
    ("Spray", True, True),
    ("Nitrocellulose lacquer", True, True),
    ("Wax", True, True),
    ("Soap", False, False),
    ("Seife", False, False),
    ("Jabón", False, False),
    ("Water-based varnish", True, False),
    ("water-based poly", True, False),
    ("Barniz al agua", True, False),
    ("Mineral oil", False, False),
]


@pytest.mark.parametrize(("words", "heats", "solvent"), KNOWN)
def test_a_finish_is_known_by_its_words(words: str, heats: bool, solvent: bool) -> None:
    finish = finish_by_words(words)

    assert finish is not None
    assert (finish.self_heats, finish.solvent) == (heats, solvent)
    assert finish.name


@pytest.mark.parametrize(
    "words", ["Oil", "Oil and wipe", "Varnish", "Poly", "Lacquer", "Stain", "Ölen", "Barnizar", "Vernis", "Huiler"]
)
def test_where_the_words_leave_it_open_it_counts_as_the_worst_and_is_asked_about(words: str) -> None:
    finish = finish_by_words(words)

    assert finish is not None
    assert (finish.self_heats, finish.solvent, finish.name) == (True, True, "")


@pytest.mark.parametrize(
    "words",
    ["Fit hooks", "Fit coat hooks", "Finish sanding", "Cut walnut", "Plane teak", "Drive stainless screws", "Foil the edge", "Polish", "Pack", "Boil"],
)  # fmt: skip
def test_what_brings_on_no_finish_is_none(words: str) -> None:
    assert finish_by_words(words) is None


def route_with(step: dict[str, object]) -> dict[str, object]:
    product = key_rails()
    product["operations"] = [step if one["key"] == "oil" else one for one in product["operations"]]
    return product


@pytest.mark.parametrize("station", ["finishing", "bench"])
def test_its_rags_are_asked_about_at_whatever_bench_it_is_brought_on(station: str) -> None:
    floor = Floor()
    floor.open_run(product=route_with(operation("oil", station, a_pass(hand=1), name="Wipe on linseed")))

    floor.press("load done", run="r1", load="oil/1")

    assert [key.split("|")[0] for key in floor.state.care] == ["rags"]


def test_soap_asks_about_no_rags() -> None:
    floor = Floor()
    floor.open_run(product=route_with(operation("oil", "finishing", a_pass(hand=1), name="Soap")))

    floor.press("load done", run="r1", load="oil/1")

    assert not any(entry["heats"] for entry in floor.state.care.values())


def test_what_the_shop_wrote_down_comes_first() -> None:
    record = shop() | {
        "finishes": [{"key": "oil", "name": "Linseed, by its label", "self_heats": False, "solvent": False}]
    }
    oil = next(one for one in record["products"][0]["operations"] if one["key"] == "oil")
    oil["finish"] = "oil"
    book = book_from_json(record)
    step = next(one for one in book.products[0].operations if one.key == "oil")

    finish = finish_of(book, step)

    assert finish is not None
    assert not finish.self_heats
    assert not finish_is_unclear(book, step)
    assert finish_is_unclear(book_from_json(shop()), book_from_json(shop()).products[0].operations[4])
