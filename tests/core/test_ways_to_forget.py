"""Any order of ways to forget: runs that end, routes that change, bulk entry, undo, amended moments, another book, midnight,
the clocks going back, restarts, blind presses. What runs watched and what is oily, by a list of the test's own, is what the
shop still asks about."""

import copy
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule

from runboard.run.calls.dues import dues
from runboard.run.fold.ledger import Ledger
from runboard.run.log.event import Event, write_moment
from runboard.run.refusal import Refused
from runboard.shop.book_json import book_from_json
from tests.core.pressing import Floor
from tests.examples import examples
from tests.scenario import key_rails, shop

BERLIN = ZoneInfo("Europe/Berlin")
TRAYS = ("1", "2", "3", "4", "5", "6")
# An evening in June, one before the clocks go forward, one before they go back.
STARTS = (
    datetime(2026, 6, 1, 16, tzinfo=UTC),
    datetime(2026, 3, 28, 21, tzinfo=UTC),
    datetime(2026, 10, 24, 20, tzinfo=UTC),
)
ENDS = ("machine ended", "unloading started", "load taken off", "load stopped", "load done")


@dataclass(frozen=True)
class Pressed:
    """What somebody pressed, as the test remembers it."""

    event: str
    at: datetime
    what: str  # starts, ends, coats
    tray: str
    undone: bool = False
    of: str = ""  # the press that was kept when this one settled it


def rails() -> dict[str, Any]:
    product = key_rails()
    next(one for one in product["operations"] if one["key"] == "oil")["finish"] = "oil"
    return product


def record(heats: bool = True, finishing: str = "finishing", knows_oil: bool = True) -> dict[str, Any]:
    found = shop() | {"products": [rails()] if knows_oil else []}
    found["finishes"] = [{"key": "oil", "name": "Danish oil", "self_heats": heats}] if knows_oil else []
    found["stations"] = [one | ({"kind": finishing} if one["key"] == "finishing" else {}) for one in found["stations"]]
    return found


class WaysToForget(RuleBasedStateMachine):
    """Two people press, also blind; the test keeps its own list of what they said."""

    @initialize(start=st.sampled_from(STARTS))
    def opens(self, start: datetime) -> None:
        self.floor = Floor(record())
        self.floor.now = start
        self.floor.open_run(trays=6, product=rails())
        self.pressed: list[Pressed] = []
        self.answered: set[tuple[str, str, str]] = set()  # (kind, day, the press that it names)
        self.heats = [(start - timedelta(days=1), True)]
        self.on_the_bench: set[str] = set()

    # what is pressed

    def press(self, blind: bool, kind: str, body: dict[str, Any] | None = None, **fields: Any) -> Event | None:
        """The event, or None where the shop took none."""
        fields = {"run": "r1", "person": "ben" if blind else "ann", **fields}
        try:
            if blind:
                return self.floor.blind(kind, body, **fields)
            return self.floor.press(kind, body, **fields)
        except Refused:
            self.floor.now += timedelta(seconds=1)
            return None

    def remember(self, event: Event | None, what: str, tray: str) -> None:
        if event is not None:
            self.pressed.append(Pressed(event.id, event.moment, what, tray))

    @rule(tray=st.sampled_from(TRAYS), blind=st.booleans())
    def starts_the_laser(self, tray: str, blind: bool) -> None:
        if tray in self.on_the_bench:
            return
        if not blind:
            self.press(False, "load started", {"early": True}, load=f"engrave/{tray}")
        self.remember(self.press(blind, "machine started", {"minutes": 20}, load=f"engrave/{tray}"), "starts", tray)

    @rule(tray=st.sampled_from(TRAYS), blind=st.booleans(), kind=st.sampled_from(ENDS))
    def says_that_it_does_not_run(self, tray: str, blind: bool, kind: str) -> None:
        if tray in self.on_the_bench and f"engrave/{tray}" not in self.running():
            return
        body = {"why": "power"} if kind == "load stopped" else {}
        self.remember(self.press(blind, kind, body, load=f"engrave/{tray}"), "ends", tray)

    @rule(tray=st.sampled_from(TRAYS), blind=st.booleans(), how=st.sampled_from(("done", "counted", "paper", "past")))
    def coats(self, tray: str, blind: bool, how: str) -> None:
        if tray in self.coated() or f"engrave/{tray}" in self.running():
            return
        if how == "done":
            event = self.press(blind, "load done", load=f"oil/{tray}")
        else:
            step = {"past": "hooks"}.get(how, "oil")
            basis = "paper" if how == "paper" else "tapped"
            event = self.press(blind, "pieces counted", {"good": 5}, tray=tray, operation=step, basis=basis)
        self.remember(event, "coats", tray)

    @rule(number=st.integers(0, 30), minutes=st.sampled_from([0, 30, 240]))
    def takes_back_or_amends(self, number: int, minutes: int) -> None:
        """Undo of any press; or its moment was earlier than said."""
        if not self.pressed:
            return
        at = number % len(self.pressed)
        one = self.pressed[at]
        if not minutes and not one.undone:
            if self.press(True, "event undone", {"event": one.event}, run="") is not None:
                self.pressed[at] = replace(one, undone=True)
        elif minutes and one.what == "coats" and not one.undone:
            earlier = one.at - timedelta(minutes=minutes)
            said = {"event": one.event, "at": write_moment(earlier)}
            if self.press(True, "event amended", said, run="") is not None:
                self.pressed[at] = replace(one, at=earlier)

    @rule(number=st.integers(0, 30), kinds=st.sampled_from(["care end", "care morning", "care start"]))
    def says_what_was_done(self, number: int, kinds: str) -> None:
        open_ = sorted(one.id for one in dues(self.floor.state, self.floor.book).values() if one.kind == kinds)
        if open_:
            reminder = open_[number % len(open_)]
            self.press(False, "reminder answered", {"reminder": reminder, "done": "in water, in the can"}, run="")
            kind, _, day, _, by = reminder.split("|")
            self.answered.add((kind, day, by))

    @rule(keep=st.sampled_from(["shop", "press"]), number=st.integers(0, 9))
    def settles(self, keep: str, number: int) -> None:
        entries = list(self.floor.state.unsettled.values())
        if not entries:
            return
        entry = entries[number % len(entries)]
        said = self.press(False, "entry settled", {"event": entry.event, "keep": keep})
        known = next((one for one in self.pressed if one.event == entry.event), None)
        if said is not None and keep == "press" and known is not None:  # said again, now
            self.pressed.append(Pressed(said.id, said.moment, known.what, known.tray, of=known.event))

    # ways to forget

    @rule(kind=st.sampled_from(["run finished", "run abandoned"]), blind=st.booleans())
    def ends_the_run(self, kind: str, blind: bool) -> None:
        self.press(blind, kind)

    @rule(tray=st.sampled_from(TRAYS), what=st.sampled_from(["bench", "name", "wait"]))
    def changes_the_route(self, tray: str, what: str) -> None:
        product = copy.deepcopy(rails())
        engrave, oil = (next(one for one in product["operations"] if one["key"] == key) for key in ("engrave", "oil"))
        if what == "bench":
            engrave |= {"station": "bench", "attendance": "hands-on"}
        elif what == "name":
            oil |= {"name": "Brush off"}
        else:
            oil |= {"wait": None}
        if self.press(False, "route revised", {"product": product, "from_tray": tray}) is not None:
            later = set(TRAYS[TRAYS.index(tray) :])
            self.on_the_bench = self.on_the_bench | later if what == "bench" else self.on_the_bench - later

    @rule(heats=st.booleans(), knows=st.booleans(), finishing=st.sampled_from(["finishing", "bench"]))
    def saves_another_book(self, heats: bool, knows: bool, finishing: str) -> None:
        after = book_from_json(record(heats, finishing, knows)).following(self.floor.book, self.floor.now)
        self.heats.append((self.floor.now, heats or not knows))
        self.floor.book = after
        self.floor.ledger.take_book(after)

    @rule(kind=st.sampled_from(["person went", "person called away", "person came", "person came back"]))
    def comes_or_goes(self, kind: str) -> None:
        body = (
            {"until": write_moment(self.floor.now + timedelta(hours=2)), "room": "shop"}
            if kind == "person came"
            else {}
        )
        self.press(False, kind, body, run="")

    @rule(minutes=st.sampled_from([1, 30, 240, 900]))
    def waits(self, minutes: int) -> None:
        self.floor.wait(minutes)

    @rule()
    def the_server_comes_back(self) -> None:
        ledger = Ledger(self.floor.book)
        ledger.load(list(self.floor.ledger.arrived.values()))
        assert ledger.state == self.floor.state
        ledger.last_seq = self.floor.ledger.last_seq
        ledger.seq_by_device = self.floor.ledger.seq_by_device
        self.floor.ledger = ledger
        self.press(False, "server restarted", {"open": []}, run="", person="")

    # the test's own list

    def in_order(self) -> Iterator[Pressed]:
        gone = {one.event for one in self.pressed if one.undone}
        held = (one for one in self.pressed if not one.undone and one.of not in gone)
        yield from sorted(held, key=lambda one: (one.at, one.event))

    def running(self) -> set[str]:
        found: set[str] = set()
        for one in self.in_order():
            if one.what == "starts":
                found.add(f"engrave/{one.tray}")
            elif one.what == "ends":
                found.discard(f"engrave/{one.tray}")
        return found

    def coated(self) -> set[str]:
        return {one.tray for one in self.in_order() if one.what == "coats"}

    def oily(self) -> set[tuple[str, str]]:
        """(day, last press) of each day on which something oily may lie about, until its morning was answered."""
        last: dict[str, tuple[str, bool]] = {}
        for one in self.in_order():
            if one.what == "coats":
                day = str(one.at.astimezone(BERLIN).date())
                heated = next(
                    heats for since, heats in reversed(self.heats) if since <= one.at or since is self.heats[0][0]
                )
                if heated or not last.get(day, ("", False))[1]:
                    last[day] = (one.event, heated)
        now_heats = bool(self.floor.book.finish("oil") and self.heats[-1][1])
        return {
            (day, event)
            for day, (event, heated) in last.items()
            if (heated or now_heats) and ("care morning", day, event) not in self.answered
        }

    @invariant()
    def what_runs_is_watched(self) -> None:
        asked = {one.load for one in dues(self.floor.state, self.floor.book).values() if one.kind == "watch check"}

        assert asked == self.running()

    @invariant()
    def what_is_oily_is_asked_about(self) -> None:
        waits = [one.id.split("|") for one in dues(self.floor.state, self.floor.book).values()]
        asked = {(day, by) for kind, what, day, _, by in (one for one in waits if one[0] == "care morning")}

        assert asked == self.oily()

    @invariant()
    def what_was_just_coated_is_asked_about_at_once(self) -> None:
        ends = {one.id for one in dues(self.floor.state, self.floor.book).values() if one.kind == "care end"}
        for day, event in self.oily():
            assert ("care end", day, event) in self.answered or f"care end|rags|{day}|oil|{event}" in ends


WaysToForget.TestCase.settings = settings(
    max_examples=examples(60),
    stateful_step_count=30,
    suppress_health_check=list(HealthCheck),
)
test_nothing_is_forgotten = WaysToForget.TestCase


def test_a_start_is_watched_though_the_route_by_which_it_is_watched_no_longer_fits() -> None:
    shop = WaysToForget()
    shop.opens(start=datetime(2026, 6, 1, 16, 0, tzinfo=UTC))
    shop.changes_the_route(tray="2", what="bench")
    shop.starts_the_laser(tray="1", blind=True)
    shop.ends_the_run(kind="run finished", blind=True)  # kept to settle: the laser runs
    shop.changes_the_route(tray="1", what="name")  # tray 2 is engraved at the laser again
    shop.starts_the_laser(tray="2", blind=True)

    shop.takes_back_or_amends(number=0, minutes=0)  # so that the run was over before its route changed

    shop.what_runs_is_watched()
    assert shop.running() == {"engrave/2"}
