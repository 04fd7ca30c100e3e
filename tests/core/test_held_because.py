"""The load that what held a run most kept back, as the log shows it."""

from datetime import timedelta

import pytest

from runboard.review.held.because import because
from runboard.review.held.nouns import Because, What
from runboard.review.held.replay import replay
from runboard.review.held.replayable import replayable
from tests.core.pasts import past_of
from tests.core.pressing import START, Floor
from tests.core.test_held_replay import work
from tests.scenario import a_pass, operation, shop


def oiled(places: int) -> Floor:
    """Two trays are sanded, oiled and, when they are dry, packed; the first is packed before the second is oiled."""
    record = shop()
    record["services"].append({"key": "rack", "name": "Rack", "capacity": places})
    drying = {"why": "dry", "least_minutes": 60, "holds": {"rack": 1}}
    works = [
        operation("sand", "sander", a_pass(hand=10)),
        operation("oil", "finishing", a_pass(hand=10), wait=drying),
        operation("pack", "bench", a_pass(hand=20)),
    ]
    product = {"key": "rail", "name": "Rails", "pieces_a_tray": 5, "wood": "", "operations": works}
    floor = Floor(record)
    floor.open_run(trays=2, product=product, boards={})
    floor.press("person came", {"until": (floor.now + timedelta(hours=6)).isoformat()})
    work(floor, "sand/1", 10)
    work(floor, "sand/2", 10)
    work(floor, "oil/1", 10)
    floor.wait(60)
    work(floor, "pack/1", 20)
    work(floor, "oil/2", 10)
    floor.wait(60)
    work(floor, "pack/2", 20)
    return floor


def kept(floor: Floor, what: What) -> Because | None:
    known = replayable(past_of(floor))
    as_it_was = known and replay(known)
    assert known and as_it_was
    return because(known, as_it_was, what)


def minutes(found: Because) -> tuple[int, int]:
    return round((found.since - START) / timedelta(minutes=1)), round((found.until - START) / timedelta(minutes=1))


@pytest.mark.parametrize(
    ("what", "step", "tray", "by", "when"),
    [
        (("service", "rack"), "oil", "2", "", (30, 110)),
        (("hands", "ann"), "oil", "2", "pack", (90, 110)),
        (("wait", "oil"), "oil", "2", "", (120, 180)),
        (("station", "sander"), "sand", "2", "sand", (0, 10)),
    ],
)
def test_what_held_it_is_told_by_a_load_that_the_log_shows_kept_back(
    what: What, step: str, tray: str, by: str, when: tuple[int, int]
) -> None:
    found = kept(oiled(places=1), what)

    assert found is not None
    assert (found.step, found.trays, found.by_step) == (step, (tray,), by)
    assert minutes(found) == when


def test_where_there_were_places_the_log_shows_nothing_that_lacked_one() -> None:
    assert kept(oiled(places=2), ("service", "rack")) is None
    assert kept(oiled(places=1), ("hours", "")) is None
