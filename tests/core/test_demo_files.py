"""The demo's own program: it takes what its route says, and nothing in it is doubtful."""

from datetime import UTC, datetime

import pytest

from runboard.demo.book import demo_book
from runboard.demo.files import rail_board_program
from runboard.plan.program.read import read_program
from runboard.plan.program.report import report
from runboard.shop.book_json import book_from_json


def test_the_demo_s_program_takes_its_route_s_time_and_raises_no_doubt() -> None:
    book = book_from_json(demo_book(datetime(2026, 6, 3, tzinfo=UTC), "Europe/Berlin"))
    (cnc,) = (station for station in book.stations if station.key == "cnc")

    found = report(read_program(rail_board_program().encode()), cnc.motion, search=0.1)

    assert found.doubts == ()
    assert found.seconds.total / 60 == pytest.approx(38, abs=0.5)
