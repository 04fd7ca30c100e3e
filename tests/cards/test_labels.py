"""Labels at jigs and on the shelf, and the run's summary."""

from dataclasses import replace
from datetime import timedelta

from runboard.cards.model import Cell
from runboard.cards.of_a_run import jig_labels, run_sheet, shelf_labels
from runboard.cards.work import RESTING
from runboard.run.care.cautions import CATALOGUE
from tests.cards.making import NOW, link, rails_book, resting, run_of, speech

HOUR = timedelta(hours=1)


def test_a_jig_label_has_places_setup_start_list_and_cautions() -> None:
    book = rails_book(engrave={"setup_sheet": [["Focus", "7 mm"]], "checklist": ["Lens clean"]})
    run = run_of(book.products[0])

    (label,) = jig_labels(book, run, speech(book))

    assert (label.operation, label.station) == ("Engrave", "Laser")
    assert label.places == tuple(Cell(f"position {at}") for at in range(1, 6))
    assert label.setup == (("Focus", "7 mm"),)
    assert label.start[-1] == "Lens clean"
    assert any("extinguisher" in one for one in label.start)


def test_a_shelf_label_says_until_when_nobody_moves_the_tray() -> None:
    book = rails_book()
    run = run_of(book.products[0])
    run = replace(run, trays={**run.trays, "2": resting(run.trays["2"], "oil", NOW, 16 * HOUR)})

    (label,) = shelf_labels(book, run, link, speech(book))

    assert (label.tray, label.until) == ("2", "Thu 08:00")


def test_the_cautions_of_a_resting_tray_are_known() -> None:
    assert set(RESTING) <= set(CATALOGUE)


def test_the_summary_has_a_mark_for_each_step_of_each_tray() -> None:
    book = rails_book()
    run = run_of(book.products[0])
    one, two = run.trays["1"], run.trays["2"]
    run = replace(
        run,
        trays={"1": replace(one, at={"sand:180": 5}), "2": resting(replace(two, at={"hooks": 5}), "oil", NOW, HOUR)},
    )

    sheet = run_sheet(book, run, link, speech(book))

    assert sheet.about[0] == "13 wanted, 10 started, 0 good"
    assert sheet.trays[0].marks == ("done", "done", "done", "", "", "", "")
    assert sheet.trays[0].next == "next: Sand 180"
    assert sheet.trays[1].marks[5] == "wait"
    assert sheet.trays[1].next == "next: Hooks, not before Wed 17:00"
    assert sheet.orders[0] == ("9 pieces", "1, Meyer, 12", "Thu 17:00")
    assert sheet.supplies == (("hooks", "40"),)
