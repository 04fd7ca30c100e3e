"""A screw in its stack: where its point ends, what holds it, which hole it wants."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.plan.fits.driving import Drive, Driven, answer, begin
from runboard.plan.fits.keeping import keeps
from runboard.plan.fits.screws import pilot_for, sizes_of
from runboard.run.refusal import Refused
from runboard.shop.book import Book, Room, Station
from runboard.shop.book_json import book_from_json, book_to_json
from runboard.shop.fasteners import Fastening, Screw
from runboard.shop.product import Operation, Pass, Product
from runboard.shop.units import parse_length

HOOK = Screw("hook", "Hook screw", 16, gauge=4, head="round")
SHOP = Book(
    rooms=(Room("shop", "Shop"),),
    stations=(Station("bench", "Bench", "bench", "shop"),),
    screws=(HOOK,),
    products=(
        Product(
            "rail",
            "Key rail",
            (
                Operation("hooks", "Hooks", "bench", (Pass("1", "1"),), fastenings=(Fastening("hook", 0, 18, 3, 1),)),
                Operation("pack", "Pack", "bench", (Pass("1", "1"),)),
            ),
            wood="ash",
        ),
    ),
)


def asked(book: Book = SHOP, **said: Any) -> Driven:
    found = answer(book, Drive(**{"screw": "hook", "wood": "ash", **said}), None, lambda done, total: None)
    assert isinstance(found, Driven)
    return found


def test_a_screw_that_leaves_the_margin_stops_inside() -> None:
    found = asked(washer=1, into=18.5)

    assert (found.outcome, found.left) == ("inside", 3.5)


def test_a_screw_that_leaves_less_than_the_margin_is_near() -> None:
    found = asked(into=18.5)

    assert (found.outcome, found.left, found.safe) == ("near", 2.5, 12)


def test_a_screw_that_comes_through_says_which_length_does_not() -> None:
    found = asked(into=15, length=16.5)

    assert (found.outcome, found.left, found.safe) == ("through", -1.5, 12)


def test_where_no_usual_length_is_short_enough_none_is_named() -> None:
    assert asked(into=6).safe is None


def test_a_screw_that_does_not_reach_what_should_hold_it_is_too_short() -> None:
    found = asked(through=16, into=18)

    assert (found.outcome, found.held) == ("short", 0)
    assert asked(through=15.5, into=18).outcome == "inside"


def test_a_head_sunk_under_a_plug_sends_the_point_deeper() -> None:
    assert asked(into=25, sunk=5).left == asked(into=20).left


def test_the_pilot_goes_as_deep_as_the_screw_in_hardwood_and_less_deep_in_softwood() -> None:
    hard, soft = asked(into=25), asked(into=25, wood="spruce")

    assert (hard.stop, hard.is_hard, soft.is_hard) == (16, True, False)
    assert soft.stop == pytest.approx(16 - soft.screw.thread / 4, abs=0.1)
    assert soft.pilot.wanted < hard.pilot.wanted


def test_the_drill_never_goes_nearer_to_the_far_face_than_the_margin() -> None:
    assert asked(into=17).stop == 14


def test_what_is_fastened_gets_a_hole_as_wide_as_the_shank() -> None:
    found = asked(through=6, into=18)

    assert found.clear is not None
    assert found.clear >= found.screw.diameter
    assert (found.clear_to, found.below) == (6, 10)


def test_the_shops_own_pilot_wins_over_the_rule() -> None:
    shop = replace(SHOP, screws=(replace(HOOK, pilot_hard=2.2),))

    assert asked(shop).drill == 2.2
    assert asked(shop).pilot.is_own


def test_an_unknown_wood_counts_as_hard_and_nothing_is_said_of_its_strength() -> None:
    found = asked(wood="zebrano")

    assert (found.is_hard, found.hardness_from, found.ultimate) == (True, "nobody", None)


def test_in_end_grain_nothing_is_said_of_what_it_holds() -> None:
    assert asked().ultimate is not None
    assert asked(grain="end").ultimate is None


def test_less_than_half_of_a_screw_in_what_holds_it_is_little() -> None:
    assert asked(through=9, into=20).holds_little
    assert not asked(through=2, into=20).holds_little


def test_a_screw_without_a_size_is_refused() -> None:
    with pytest.raises(Refused, match="screw size needed"):
        asked(screw=None, length=16)
    with pytest.raises(Refused, match="screw size needed"):
        asked(screw=None, gauge=6)


@given(st.floats(1, 200), st.floats(1, 200), st.floats(0, 30), st.floats(1, 60), st.integers(0, 24))
def test_a_longer_screw_never_ends_further_from_the_far_face(
    one: float, other: float, through: float, into: float, gauge: int
) -> None:
    short, long = sorted((one, other))
    stack = {"screw": None, "gauge": gauge, "through": through, "into": into}

    assert asked(length=long, **stack).left <= asked(length=short, **stack).left


@given(st.floats(0.5, 20), st.booleans())
def test_a_pilot_is_thinner_than_the_thread(diameter: float, hard: bool) -> None:
    sizes = sizes_of(Screw("", "", 20, diameter=diameter))
    assert sizes is not None

    pilot = pilot_for(sizes, hard)

    assert max(pilot.wanted, pilot.in_mm, pilot.in_64ths) < diameter


@given(st.integers(4, 64), st.integers(0, 32), st.integers(8, 96), st.integers(0, 14))
def test_inches_and_millimetres_agree(length: int, through: int, into: int, gauge: int) -> None:
    def typed(unit: str) -> Driven:
        def size(parts: int) -> float:
            return parse_length(f"{parts}/32" if unit == "in" else f"{parts * 25.4 / 32:.5f}", unit)  # type: ignore[arg-type]

        return asked(screw=None, gauge=gauge, length=size(length), through=size(through), into=size(into))

    inches, mm = typed("in"), typed("mm")

    assert inches.left == pytest.approx(mm.left)
    assert inches.held == pytest.approx(mm.held)
    assert (inches.safe, inches.drill) == (mm.safe, mm.drill)


def test_a_step_begins_with_its_screw() -> None:
    assert begin(SHOP, {"product": "rail", "step": "hooks"}) == Drive(
        "hook", washer=1, into=18, wood="ash", product="rail", step="hooks"
    )


def test_pilot_and_depth_stop_are_kept_in_the_setup_sheet_of_the_step() -> None:
    question = Drive("hook", washer=0.5, into=20, wood="ash", product="rail", step="hooks")
    (keep,) = keeps(SHOP, question, asked(washer=0.5, into=20))
    record = book_to_json(SHOP)

    keep.put(record)
    keep.put(record)

    hooks = book_from_json(record).products[0].operations[0]
    assert hooks.setup_sheet == (("Pilot", "2 mm"), ("Depth stop", "15.5 mm"))
    assert hooks.fastenings == (Fastening("hook", 0, 20, 3, 0.5),)


def test_a_typed_screw_is_kept_with_the_step_that_drives_it() -> None:
    question = Drive(None, 6, None, 16.0, into=25, product="rail", step="pack")
    alone, sheet = keeps(SHOP, question, asked(screw=None, gauge=6, length=16, into=25))
    record = book_to_json(SHOP)

    sheet.put(record)

    book = book_from_json(record)
    assert alone.code == "screw"
    assert [(each.name, each.gauge, each.length) for each in book.screws[1:]] == [("#6 × 16 mm", 6, 16)]
    assert book.products[0].operations[1].fastenings[0].screw == book.screws[1].key


def steps_of(book: Book, question: Drive) -> list[str]:
    answered = answer(book, question, None, lambda done, total: None)
    return [each.key for each in keeps(book, question, answered) if each.code == "sheet"]


def test_the_step_that_drives_the_screw_comes_first_and_none_where_no_hand_works() -> None:
    (rail,) = SHOP.products
    drives, pack = rail.operations
    cut, dry = Operation("cut", "Cut", "cnc", pack.passes, "watched"), replace(pack, key="dry", attendance="none")
    plug = replace(pack, key="plug", fastenings=(Fastening("other"),))
    shop = replace(
        SHOP,
        stations=(*SHOP.stations, Station("cnc", "Router", "cnc", "shop")),
        screws=(HOOK, replace(HOOK, key="other", length=20)),
        products=(replace(rail, operations=(cut, pack, plug, dry, drives)),),
    )

    assert steps_of(shop, Drive("hook", into=25, product="rail")) == ["sheet hooks", "sheet plug"]
    assert steps_of(shop, Drive(None, 6, None, 16.0, into=25, product="rail")) == ["sheet plug", "sheet hooks"]
    bare = replace(shop, products=(replace(rail, operations=(cut, pack, dry)),))
    assert steps_of(bare, Drive("hook", into=25, product="rail")) == ["sheet pack"]
    assert steps_of(bare, Drive("hook", into=25, product="rail", step="cut")) == ["sheet cut"]


def test_the_step_opens_after_keeping_and_a_near_point_is_said_on_the_press() -> None:
    def facts(into: float) -> Any:
        question = Drive("hook", into=into, product="rail", step="hooks")
        return keeps(SHOP, question, asked(into=into, wood=""))[0].facts

    assert facts(25)["link"] == "/plan/products/rail/operations/hooks"
    assert (facts(25)["left"], facts(18.5)["left"]) == ("none", "2.5 mm")


def test_a_product_begins_with_the_first_screw_that_it_is_built_with() -> None:
    assert begin(SHOP, {"product": "rail"}) == begin(SHOP, {"product": "rail", "step": "hooks"})
    assert begin(SHOP, {"product": "rail", "step": "pack"}).step == "pack"


def test_a_form_begins_in_the_shops_units() -> None:
    begun = begin(replace(SHOP, units="in"), {})

    assert (begun.into, begun.margin) == (19.05, 3.175)


@pytest.mark.parametrize("stack", [{"into": 10}, {"through": 20}])
def test_a_screw_that_comes_through_or_is_too_short_is_kept_in_no_step(stack: dict[str, float]) -> None:
    question = Drive("hook", product="rail", **stack)  # type: ignore[arg-type]

    assert keeps(SHOP, question, asked(**stack)) == []


def test_a_step_that_is_gone_keeps_nothing() -> None:
    question = Drive("hook", into=25, product="rail", step="hooks")
    (keep,) = keeps(SHOP, question, asked(into=25))
    record = book_to_json(replace(SHOP, products=()))

    with pytest.raises(Refused, match="step to keep gone"):
        keep.put(record)
