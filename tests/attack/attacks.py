"""Every attack by its name, with the shop that it is made on."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from tests.attack import by_clock, by_count, by_file, by_wire
from tests.attack.scene import Scene


@dataclass(frozen=True)
class Attack:
    """``does`` attacks a server; with ``planner`` one that plans. Where presses may be told to come again (the database
    is held), that is no refusal."""

    does: Callable[[Scene], None]
    shop: Callable[[Path], None] = by_clock.small_shop
    planner: bool = False
    may_be_busy: bool = False

    @property
    def about(self) -> str:
        return (self.does.__doc__ or "").split("\n")[0]


ATTACKS: dict[str, Attack] = {
    "half-bodies": Attack(by_wire.half_sent_bodies),
    "half-heads": Attack(by_wire.half_sent_heads),
    "drips": Attack(by_wire.drips),
    "silent": Attack(by_wire.silent),
    "unread": Attack(by_wire.unread_answers),
    "streams": Attack(by_wire.all_streams),
    "plan-reloads": Attack(by_count.plan_reloads, by_clock.big_shop, planner=True),
    "notes-batch": Attack(by_count.notes_in_one_batch),
    "notes-state": Attack(by_count.notes_and_the_state),
    "refused": Attack(by_count.refused_presses),
    "calls": Attack(by_count.calls),
    "one-card": Attack(by_count.guests_by_one_card),
    "bad-files": Attack(by_file.bad_files),
    "heavy-file": Attack(by_file.heavy_run_file, planner=True),
    "numbers": Attack(by_file.numbers_and_depths),
    "amended": Attack(by_clock.amended_into_the_future),
    "future": Attack(by_clock.pressed_in_the_future),
    "clocks": Attack(by_clock.clocks_years_off),
    "server-ahead": Attack(by_clock.served_after_that, by_clock.server_was_ahead),
    "codes": Attack(by_count.wrong_codes),
    "database": Attack(by_clock.database_held, may_be_busy=True),
    "everything": Attack(by_clock.all_at_once),
}
