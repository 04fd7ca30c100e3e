"""What a traveller says, as a record."""

import pickle
import re
from dataclasses import replace
from datetime import timedelta

import pytest

from runboard.cards.model import Cell, Work
from runboard.cards.of_a_run import traveller
from runboard.cards.page import page_html
from runboard.run.fold.state import OrderLine, RunState, Tray
from runboard.shop.book import Book
from runboard.shop.finish import Finish
from tests.cards.making import NOW, link, order, rails_book, resting, run_of, speech

HOUR = timedelta(hours=1)
OIL = Finish("oil", "Hard oil", 12 * HOUR, 24 * HOUR, timedelta(days=14), sheet_date="2025-11")


def works(book: Book, run: RunState, tray: str = "1", language: str = "en") -> dict[str, Work]:
    made = traveller(book, run, run.trays[tray], link, speech(book, language))
    return {one.steps[0].name: one for one in made.works}


def rails(**more: object) -> tuple[Book, RunState]:
    book = rails_book(**more)
    return book, run_of(book.products[0])


def with_tray(run: RunState, **changes: object) -> RunState:
    return replace(run, trays={**run.trays, "1": replace(run.trays["1"], **changes)})


def test_every_pass_is_a_step_with_its_own_boxes() -> None:
    book, run = rails()

    names = [step.name for work in works(book, run).values() for step in work.steps]

    assert names == ["Cut", "Clean", "Sand 120", "Sand 180", "Engrave", "Oil", "Hooks"]


def test_a_step_that_is_done_carries_its_counts() -> None:
    book, run = rails()
    run = with_tray(run, at={"clean": 4}, counts={"cut": {"cut/1": (4, 1)}})

    (cut,) = works(book, run)["Cut"].steps
    (clean,) = works(book, run)["Clean"].steps

    assert (cut.done, cut.good, cut.scrap) == (True, "4", "1")
    assert (clean.done, clean.good) == (False, "")


def test_the_board_that_feeds_the_tray_is_named() -> None:
    book, run = rails()
    run = replace(run, boards={"cut/2": {"1": 5}})

    assert works(book, run)["Cut"].steps[0].where == "CNC, board 2"


def test_a_first_piece_has_nominal_tolerance_and_limits_in_the_shops_units() -> None:
    check = {"key": "width", "text": "Width", "per": "setup", "nominal": 60, "plus": 0.3, "minus": 0.2}
    book, run = rails(cut={"checks": [check]})

    (metric,) = works(book, run)["Cut"].checks
    (inch,) = works(replace(book, units="in"), run)["Cut"].checks

    assert (metric.when, metric.text) == ("First piece after setting up", "Width")
    assert (metric.measure, metric.limits) == ("60 mm +0.3 −0.2", "59.8 to 60.3")
    assert (inch.measure, inch.limits) == ("2.362 in +0.012 −0.008", "2.354 to 2.374")


def test_cautions_stand_beside_their_operation_with_their_signs() -> None:
    book, run = rails()

    engrave = works(book, run)["Engrave"].care

    assert engrave[0].text.startswith("Stay and watch")
    assert ("W004",) in [one.signs for one in engrave]
    assert all(one.text and not one.text.startswith("care-") for one in engrave)


def test_only_dusty_work_after_the_oil_warns_of_its_dust() -> None:
    book, run = rails()

    assert not any("oiled wood" in one.text for one in works(book, run)["Hooks"].care)


def test_own_texts_are_said_in_the_cards_language() -> None:
    book, run = rails(
        clean={
            "cautions": ["Mind the tabs"],
            "instructions": [{"text": "Pare the tabs flush"}],
            "translations": {
                "de": {"name": "Verputzen", "cautions": ["Auf die Stege achten"], "instructions": ["Stege bündig"]}
            },
        }
    )

    german = works(book, run, language="de")["Verputzen"]

    assert german.how == ("Stege bündig",)
    assert "Auf die Stege achten." in [one.text for one in german.care]
    assert works(book, run, language="fr")["Clean"].how == ("Pare the tabs flush",)


@pytest.mark.parametrize("kinds", ["full", "everything"])
def test_a_text_that_nobody_translated_says_that_it_is_english(kinds: str) -> None:
    told = {"name": "Verputzen", "instructions": ["Stege bündig"]}
    texts = [{"text": "Pare the tabs flush"}, {"text": "Brush the holes"}]
    book, run = rails(clean={"instructions": texts, "translations": {"de": told}})

    german = page_html(order(book, run, language="de", kinds=kinds))
    english = page_html(order(book, run, kinds=kinds))

    assert '<span lang="en">Brush the holes</span>' in german and "<span>Stege bündig</span>" in german
    assert re.search(r'<b[^>]* lang="en">Sand', german) and not re.search(r'<b[^>]* lang="en">Verputzen', german)
    assert ' lang="en">' not in english.partition("<body")[2]


def test_the_wait_has_blanks_before_it_begins_and_moments_after() -> None:
    book, run = rails()
    begun = replace(run, trays={**run.trays, "1": resting(run.trays["1"], "oil", NOW, 12 * HOUR)})

    before, after = works(book, run)["Oil"].wait, works(book, begun)["Oil"].wait

    assert before is not None
    assert after is not None
    assert before.title == "Let dry: at least 12 h"
    assert before.cells == (Cell("carry on from"),)
    assert after.cells == (Cell("carry on from", "Thu 04:00"),)


def test_a_latest_end_counts_from_the_first_piece() -> None:
    wait = {"why": "clamp", "least_minutes": 20, "latest_minutes": 75, "holds": {}}
    book, run = rails(clean={"wait": wait})
    begun = resting(run.trays["1"], "clean", NOW, HOUR / 3, 1.25 * HOUR)

    clamped = works(book, replace(run, trays={"1": begun}))["Clean"].wait

    assert clamped is not None
    assert clamped.cells == (Cell("carry on from", "Wed 16:20"), Cell("at latest (1 h 15)", "Wed 17:15"))


def test_label_data_of_a_finish_gives_recoat_handling_and_full_cure() -> None:
    book, run = rails(oil={"finish": "oil"})
    book = replace(book, finishes=(OIL,))
    begun = replace(run, trays={"1": resting(run.trays["1"], "oil", NOW, 24 * HOUR)})

    wait = works(book, begun)["Oil"].wait

    assert wait is not None
    # Not to be handled before 24 h: nobody goes on after the 12 of the route.
    assert [(one.label, one.text) for one in wait.cells] == [
        ("carry on from", "Thu 16:00"),
        ("recoat from (12 h)", "Thu 04:00"),
        ("handle from (24 h)", "Thu 16:00"),
        ("full cure (14 days)", "Wed 18 Mar, 16:00"),
    ]
    assert wait.notes == ("Times: label, sheet of 2025-11.",)


def test_without_label_data_times_are_called_common_practice() -> None:
    book, run = rails()

    wait = works(book, run)["Oil"].wait

    assert wait is not None
    assert wait.notes == ("Typical times: read the label.",)
    assert "Dry to the touch is not cured." in [one.text for one in works(book, run)["Oil"].care]


def test_texts_stand_by_position_and_blank_ones_wait_for_theirs() -> None:
    book, run = rails()
    placed = with_tray(run, places={2: ("1", "14a"), 1: ("1", "12")})

    assert works(book, placed)["Engrave"].places == (Cell("position 1", "12"), Cell("position 2", "14a"))
    assert works(book, run)["Engrave"].places == tuple(Cell(f"position {at}") for at in range(1, 6))


def test_due_is_the_runs_until_the_pieces_are_for_somebody() -> None:
    book, run = rails()
    run = replace(run, orders=(*run.orders, OrderLine("3", 2, "Berg", "3", NOW + timedelta(days=2))))
    placed = with_tray(run, places={1: ("3", "3"), 2: ("1", "12"), 3: ("2", "7a")})

    whole = traveller(book, run, run.trays["1"], link, speech(book))
    own = traveller(book, placed, placed.trays["1"], link, speech(book))

    assert (whole.due, whole.orders) == ("run due Thu 17:00 to Fri 16:00", ())
    assert own.due == "due Thu 17:00"
    assert own.orders == ("1 for Thu 17:00: Meyer", "1 for Fri 16:00: Berg", "1 with no date: Ito")


def test_it_names_its_route_revision_and_its_print() -> None:
    book, run = rails()
    run = with_tray(run, print=2)

    assert (
        "route revision 1 · print 3 · Wed 4 Mar 2026, 16:00"
        in traveller(book, run, run.trays["1"], link, speech(book)).foot.print
    )


def test_the_foot_says_whom_to_tell_and_what_to_call() -> None:
    book, run = rails()

    foot = traveller(replace(book, emergency="911"), run, run.trays["1"], link, speech(book)).foot

    assert "tell Ann" in foot.bad
    assert foot.danger == "Fire or injury: hit the emergency stop if you can do it safely. Get out. Call\u00a0911."


def test_an_order_goes_to_another_process_whole() -> None:
    book, run = rails()
    asked = order(book, run, kinds="everything")

    assert pickle.loads(pickle.dumps(asked)) == asked


def test_a_tray_that_was_emptied_has_a_card_too() -> None:
    book, run = rails()
    run = replace(run, trays={"4a": Tray("4a", 0)})

    made = traveller(book, run, run.trays["4a"], link, speech(book))

    assert made.about[0] == "0 pieces"
    assert all(step.done for work in made.works for step in work.steps)
