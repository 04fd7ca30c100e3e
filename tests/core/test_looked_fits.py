"""What is found of screws and feeds when a run is looked through before it starts."""

from dataclasses import replace
from datetime import UTC, date, datetime
from typing import Any, cast

import pytest

from runboard.plan.before.finding import BeforeRun, Finding
from runboard.plan.feeds import looked as feeds
from runboard.plan.fits import looked as fits
from runboard.run.fold.route import Route
from runboard.run.fold.state import Revision, RunState, ShopState, Tray
from runboard.shop.book import Book
from runboard.shop.fasteners import Fastening, Screw
from runboard.shop.machines import GoodFeed
from runboard.words.before.run_sheet import found_in_words
from tests.core.test_feeds import CLEAN, CUT, SHOP

HOOKS = replace(CUT, key="hooks", name="Hooks", station="bench", cutter=None, rpm=None, feed=None)


def run_of(*operations: Any, name: str = "Rails 5", **more: Any) -> RunState:
    product = replace(SHOP.products[0], operations=operations)
    opened = datetime(2026, 11, 28, 8, tzinfo=UTC)
    return RunState("r5", name, "open", opened, "rail", "Key rail", (Revision(1, "1", Route(product)),), **more)


def asked(run: RunState, book: Book = SHOP, *others: RunState) -> BeforeRun:
    runs = {one.id: one for one in (run, *others)}
    return BeforeRun(book, ShopState(runs=runs), run, cast(Any, None), date(2026, 11, 30))


def screws(fastening: Fastening, screw: Screw | None = None) -> tuple[Finding, str]:
    book = replace(SHOP, screws=(screw or Screw("hook", "Hook screw", 16, gauge=4, head="round"),))
    (found,) = fits.findings(asked(run_of(replace(HOOKS, fastenings=(fastening,))), book))
    return found, found_in_words(SHOP, found)


@pytest.mark.parametrize(
    ("into", "level", "says"),
    [
        (15, "stop", "Hooks: Hook screw comes out by 1 mm. Take 12 mm."),
        (18, "look", "Hooks: Hook screw stays inside, but stops only 2 mm short of the far face, and you want 3 mm."),
        (20, "green", "Hooks: Hook screw stops 4 mm short of the far face. Pilot 2 mm, depth stop 16 mm."),
    ],
)
def test_a_screw_is_looked_at_in_its_stack(into: float, level: str, says: str) -> None:
    found, sentence = screws(Fastening("hook", into=into))

    assert (found.level, found.check, sentence) == (level, "screw hooks.1", says)
    assert found.link == "/before/screw?product=rail&step=hooks"


def test_a_screw_that_hardly_holds_is_to_be_looked_at() -> None:
    found, sentence = screws(Fastening("hook", through=10, into=20))

    assert (found.level, sentence) == ("look", "Hooks: only 6 mm of Hook screw’s thread holds.")


def test_a_screw_that_is_too_short_stops_the_run() -> None:
    found, sentence = screws(Fastening("hook", through=17, into=20))

    assert (found.level, sentence) == ("stop", "Hooks: Hook screw does not reach the wood that should hold it.")


def test_a_screw_without_sizes_and_one_that_is_gone_are_to_be_looked_at() -> None:
    assert screws(Fastening("hook"), Screw("hook", "Hook screw", 16))[0].code == "screw-size"
    assert screws(Fastening("other"))[0].code == "screw-gone"


def feeds_found(run: RunState, book: Book = SHOP, *others: RunState) -> tuple[Finding, str]:
    (found,) = feeds.findings(asked(run, book, *others))
    return found, found_in_words(SHOP, found)


def test_a_feed_of_the_shops_own_is_green() -> None:
    found, sentence = feeds_found(run_of(replace(CUT, feed=1800)))

    assert (found.level, found.code) == ("green", "feed-good")
    assert sentence == "Cut: 18,000 turns and 1800 mm per minute are good values in this shop, 0.05 mm per tooth."


def test_a_feed_that_nobody_kept_is_said_to_be_new() -> None:
    found, sentence = feeds_found(run_of(replace(CUT, feed=2400)))

    assert found.level == "green"
    assert sentence.endswith("The shop has not kept them as good yet.")


def test_a_spindle_that_does_not_turn_so_fast_stops_the_run() -> None:
    found, sentence = feeds_found(run_of(replace(CUT, rpm=30_000.0)))

    assert found.level == "stop"
    assert sentence == "Cut: 30,000 turns per minute, but the spindle of Router does 24,000 at most."


def test_values_that_were_kept_as_tearing_out_are_to_be_looked_at() -> None:
    assert feeds_found(run_of(CUT))[0].code == "feed-tore"


def test_what_tore_out_in_an_earlier_run_is_said_with_its_run() -> None:
    scrap = {"cut": ({"pieces": 2, "why": "tear-out"}, {"pieces": 1, "why": "tear-out"}, {"pieces": 4, "why": "knot"})}
    earlier = replace(run_of(CUT, name="Rails 4"), id="r4", trays={"1": Tray("1", 5, scrap=scrap)})
    book = replace(SHOP, feeds=(CLEAN, GoodFeed("other", "six", 12_000, 900, "ash")))

    found, sentence = feeds_found(run_of(CUT), book, earlier)

    assert found.level == "look"
    assert sentence == ("Cut: 3 tore out at Cut in run Rails 4 with these values, 18,000 turns and 3600 mm per minute.")
    assert "torn=3" in found.link
    assert feeds_found(run_of(replace(CUT, feed=1800)), book, earlier)[0].level == "green"


def test_a_step_without_its_values_finds_nothing() -> None:
    assert list(feeds.findings(asked(run_of(HOOKS)))) == []
    assert list(fits.findings(asked(run_of(HOOKS)))) == []
