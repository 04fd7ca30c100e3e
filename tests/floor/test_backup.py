"""A copy each night, made up for where nobody was there; and what is said of the last one."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.keeping.backup import last_night, look_at_copies, make_copy, make_nightly_copy
from runboard.floor.workshop import Workshop
from tests.floor.fakes import FakeClock, workshop
from tests.scenario import shop


@dataclass
class FakeCopy:
    at: datetime
    events: int = 3


@dataclass
class FakeFailure:
    at: datetime
    code: str = "no room"
    facts: Mapping[str, Any] = field(default_factory=lambda: {"folder": "backups"})


class Full(Exception):
    pass


class FakeCopies:
    def __init__(self) -> None:
        self.made: list[FakeCopy] = []
        self.failed: FakeFailure | None = None
        self.is_full = False

    def last_at(self, now: datetime) -> datetime | None:
        return self.made[-1].at if self.made else None

    def last(self, now: datetime) -> FakeCopy | None:
        return self.made[-1] if self.made else None

    def failure(self) -> FakeFailure | None:
        return self.failed

    def make(self, now: datetime) -> FakeCopy:
        if self.is_full:
            self.failed = FakeFailure(now)
            raise Full
        self.failed = None
        self.made.append(FakeCopy(now))
        return self.made[-1]


@pytest.fixture
def copies() -> FakeCopies:
    return FakeCopies()


@pytest.fixture
def made() -> Workshop:
    """A shop with something written down."""
    opened = workshop(shop())
    open_run(opened, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    return opened


def set_clock(made: Workshop, text: str) -> datetime:
    """Let it be this time in the shop."""
    moment = datetime.fromisoformat(text).replace(tzinfo=ZoneInfo("Europe/Berlin"))
    assert isinstance(made.clock, FakeClock)
    made.clock.moment = moment.astimezone(UTC)
    return moment


def nightly(made: Workshop, copies: FakeCopies, text: str) -> bool:
    set_clock(made, text)
    return make_nightly_copy(made, copies)


def test_a_copy_is_made_each_night_at_three_where_the_shop_is(made: Workshop, copies: FakeCopies) -> None:
    nightly(made, copies, "2026-06-01T03:00")

    assert not nightly(made, copies, "2026-06-02T02:59")
    assert nightly(made, copies, "2026-06-02T03:00")
    assert not nightly(made, copies, "2026-06-02T03:01")
    assert copies.made[-1].at.isoformat() == "2026-06-02T03:00:00+02:00"


def test_a_night_without_a_server_is_made_up_for(made: Workshop, copies: FakeCopies) -> None:
    nightly(made, copies, "2026-06-01T03:00")

    assert nightly(made, copies, "2026-06-04T18:00")
    assert not nightly(made, copies, "2026-06-04T22:00")


def test_a_shop_with_nothing_written_down_needs_no_copy(copies: FakeCopies) -> None:
    assert not nightly(workshop(shop()), copies, "2026-06-01T03:00")


def test_after_a_failure_it_is_tried_again_in_an_hour(made: Workshop, copies: FakeCopies) -> None:
    copies.is_full = True
    with pytest.raises(Full):
        nightly(made, copies, "2026-06-01T03:00")

    assert not nightly(made, copies, "2026-06-01T03:59")
    copies.is_full = False
    assert nightly(made, copies, "2026-06-01T04:00")


@pytest.mark.parametrize(
    ("now", "night"),
    [
        ("2026-06-01T12:00", "2026-06-01T03:00+02:00"),
        ("2026-06-01T02:00", "2026-05-31T03:00+02:00"),
        ("2026-03-29T12:00", "2026-03-29T03:00+02:00"),  # the night that has no 2:30
        ("2026-10-25T12:00", "2026-10-25T03:00+01:00"),  # the night that has it twice
        ("2026-10-25T02:30", "2026-10-24T03:00+02:00"),
    ],
)
def test_the_last_night_is_found_on_any_day_of_the_year(made: Workshop, now: str, night: str) -> None:
    assert last_night(set_clock(made, now)) == datetime.fromisoformat(night)


def test_a_copy_can_be_made_at_any_time(made: Workshop, copies: FakeCopies) -> None:
    now = set_clock(made, "2026-06-01T12:00")

    assert make_copy(made, copies).at == now


def test_what_is_said_of_the_last_copy(made: Workshop, copies: FakeCopies) -> None:
    assert look_at_copies(made, copies).state == "none"

    now = set_clock(made, "2026-06-01T12:00")
    copies.made = [FakeCopy(now - timedelta(hours=48))]
    good = look_at_copies(made, copies)
    assert (good.state, good.is_red, good.events) == ("good", False, 3)

    copies.made = [FakeCopy(now - timedelta(hours=48, minutes=1))]
    old = look_at_copies(made, copies)
    assert (old.state, old.is_red) == ("old", True)

    copies.made = [FakeCopy(now, events=-1)]
    unreadable = look_at_copies(made, copies)
    assert (unreadable.state, unreadable.is_red) == ("unreadable", True)


def test_a_failure_is_red_however_young_the_last_copy_is(made: Workshop, copies: FakeCopies) -> None:
    now = set_clock(made, "2026-06-01T12:00")
    copies.made, copies.failed = [FakeCopy(now)], FakeFailure(now)

    look = look_at_copies(made, copies)

    assert look.is_red
    assert (look.state, look.code, look.facts, look.at) == ("failed", "no room", {"folder": "backups"}, now)
