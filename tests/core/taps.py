"""A machine that taps from three phones in any order: duplicates, delays, late entries, splits, stops, undo, waiting.

Its invariants are the shop's rules; its tally says what became of the presses, and where they led.
"""

from datetime import datetime, timedelta
from random import Random
from typing import Any

from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    rule,
)

from runboard.floor.changing.runs import Wish, close_run, new_event, open_run
from runboard.floor.pressing.taps import record_events, take_taps
from runboard.run.calls.dues import dues
from runboard.run.fold.fold import apply, fold
from runboard.run.fold.ledger import Ledger
from runboard.run.log.event import write_moment
from runboard.run.log.form import check_form
from runboard.run.refusal import Refused
from tests.core.phones import Phone, Tally, three_phones
from tests.core.pressing import conserved
from tests.floor.fakes import workshop
from tests.vectors.chooser import Chooser, Press
from tests.vectors.presses import choose, choose_rare
from tests.vectors.scenes import rails, shelves, the_shop

CHANCE = st.integers(0, 2**32 - 1).map(Random)
PHONES = st.integers(0, 2)


class Taps(RuleBasedStateMachine):
    """Three phones in a small shop."""

    tally = Tally()

    @initialize()
    def opens(self) -> None:
        self.shop = workshop({**the_shop(), "products": [rails(), shelves()]})
        self.phones = three_phones()
        self.number = 0
        self.tally.reworked.clear()
        open_run(self.shop, Wish("rail", [{"line": "1", "pieces": 8, "text": "12"}], pieces_a_tray=3), "ann")
        self.tally.kinds["run opened"] += 1

    # what people do

    @rule(random=CHANCE, which=PHONES, presses=st.integers(2, 12))
    def presses(self, random: Random, which: int, presses: int) -> None:
        phone = self.phones[which]
        for _ in range(presses):
            self._look(phone)
            self.shop.clock.pass_(random.choice((0.2, 1, 4, 15)))
            chooser = Chooser(phone.view, self.shop.book, random, self.shop.clock.now(), wild=0.02)
            self._press(phone, [choose(chooser)])

    @rule(random=CHANCE, which=PHONES)
    def presses_what_is_rare(self, random: Random, which: int) -> None:
        phone = self.phones[which]
        self._look(phone)
        for _ in range(3):
            self._press(phone, [choose_rare(Chooser(phone.view, self.shop.book, random, self.shop.clock.now(), 0))])

    @rule(random=CHANCE, which=PHONES)
    def finishes_and_starts_the_next(self, random: Random, which: int) -> None:
        """One press of two events: this load is done, the next begins."""
        phone = self.phones[which]
        self._look(phone)
        hands = phone.view.people[phone.person].hands if phone.person in phone.view.people else None
        load = phone.view.runs[hands[0]].loads.get(hands[1]) if hands and hands[0] in phone.view.runs else None
        if load is not None and load.state in ("working", "unloading"):
            done = ("load done", {"run": load.run, "load": load.id, "operation": load.step}, {})
            self._press(phone, [done, ("job started", {}, {"job": "bins"})])

    @rule(random=CHANCE, which=PHONES, minutes=st.sampled_from([2, 5, 15, 40]))
    def says_it_late(self, random: Random, which: int, minutes: int) -> None:
        """'Finished 15 minutes ago': the press is judged by the state of that moment."""
        phone = self.phones[which]
        self._look(phone)
        at = self.shop.clock.now() - timedelta(minutes=minutes)
        view = phone.view if phone.offline else self.shop.ledger.at(at)
        self._press(phone, [choose(Chooser(view, self.shop.book, random, at, wild=0.02))], at)

    @rule(which=PHONES)
    def loses_the_network(self, which: int) -> None:
        self._look(self.phones[which])
        self.phones[which].offline = True

    @rule(which=PHONES)
    def finds_the_network(self, which: int) -> None:
        phone = self.phones[which]
        phone.offline = False
        batch, phone.held = phone.held, []
        self._send(phone, batch)

    @rule(random=CHANCE, which=PHONES, other=PHONES)
    def both_work_and_one_is_offline(self, random: Random, which: int, other: int) -> None:
        self.loses_the_network(which)
        for _ in range(2):
            self.presses(random, which, 3)
            self.presses(random, other, 3)
        self.finds_the_network(which)

    @rule(random=CHANCE, which=PHONES)
    def settles_what_did_not_fit(self, random: Random, which: int) -> None:
        phone = self.phones[which]
        self._look(phone)
        if phone.view.unsettled:
            entry = random.choice(list(phone.view.unsettled.values()))
            body = {"event": entry.event, "keep": random.choice(("shop", "press"))}
            self._press(phone, [("entry settled", {}, body)])

    @rule(random=CHANCE, which=PHONES)
    def sends_twice(self, random: Random, which: int) -> None:
        """A batch that was answered already counts once, and is answered alike."""
        phone = self.phones[which]
        batch = random.sample(phone.sent, min(3, len(phone.sent)))
        before = self.shop.ledger.state

        answers = self._post(phone, batch)

        refused = set(self.shop.log.refused)
        assert [one["answer"] for one in answers] == ["refused" if one["id"] in refused else "known" for one in batch]
        assert self.shop.ledger.state == before

    @rule(minutes=st.sampled_from([1, 10, 45, 120, 900]))
    def waits(self, minutes: int) -> None:
        self.shop.clock.pass_(minutes)

    @rule(which=PHONES)
    def undoes_the_last_press(self, which: int) -> None:
        phone = self.phones[which]
        self._look(phone)
        seen = phone.view.people.get(phone.person)
        if seen is not None and seen.last:
            self._press(phone, [("event undone", {}, {"event": seen.last})])

    @rule(random=CHANCE, which=PHONES)
    def amends_a_count(self, random: Random, which: int) -> None:
        phone = self.phones[which]
        counted = [one for one in self.shop.ledger.held if one.kind == "pieces counted"]
        if counted and not phone.offline:
            self._look(phone)
            event = random.choice(counted[-4:])
            body = {"good": max(0, event.get("good") - random.choice((0, 1)))}
            self._press(phone, [("event amended", {}, {"event": event.id, "body": body})])

    # what the lead and the server do

    @rule()
    def a_second_run_is_opened(self) -> None:
        if len(self.shop.ledger.state.runs) < 3:
            open_run(self.shop, Wish("shelf", [{"line": "1", "pieces": 4}]), "ann")

    @rule(random=CHANCE)
    def a_run_is_changed(self, random: Random) -> None:
        """The route from a tray on, or one more board: by somebody who is up to date."""
        runs = [run for run in self.shop.ledger.state.runs.values() if run.state == "open"]
        run = random.choice(runs) if runs else None
        if run is not None and run.product == "rail":
            product = dict(rails(), wood=random.choice(("ash", "oak")))
            board, tray = f"cut/{len(run.boards) + 1}", f"{len(run.trays) + 20}"
            phone = self.phones[0]
            self._look(phone)
            revised = (
                "route revised",
                {"run": run.id},
                {"product": product, "from_tray": random.choice(list(run.trays))},
            )
            added = ("board added", {"run": run.id}, {"board": board, "pieces": {tray: 2}})
            self._press(phone, [random.choice((revised, added))])

    @rule(random=CHANCE)
    def a_run_is_closed(self, random: Random) -> None:
        state = self.shop.ledger.state
        run = list(state.runs.values())[-1]
        if len(state.runs) < 3 or run.state != "open":
            return
        kind = random.choice(("run finished", "run abandoned"))
        try:
            close_run(self.shop, run.id, kind, "ann", "enough")
        except Refused as refusal:
            assert refusal.code in ("machine runs", "load in hands", "wait open", "care open")
        else:
            self.tally.kinds[kind] += 1

    @rule()
    def the_server_comes_back(self) -> None:
        """What was kept in memory is gone; the log has it all."""
        self.shop.ledger, self.shop.version = Ledger(self.shop.book), -1
        self._record("server restarted", {"open": []})

    @rule(on=st.booleans())
    def a_sensor_says(self, on: bool) -> None:
        self._record("signal received", {"on": on, "source": "plug"}, station="cnc", basis="sensor")

    def _record(self, kind: str, body: dict[str, Any], **fields: Any) -> None:
        record_events(self.shop, [new_event(self.shop, kind, body, device="server", **fields)])
        self.tally.kinds[kind] += 1

    # the phones

    def _look(self, phone: Phone) -> None:
        """An online phone is up to date; one without the network sees what it saw, and its own presses."""
        if not phone.offline:
            phone.seen, phone.view = self.shop.ledger.last_seq, self.shop.ledger.state

    def _press(self, phone: Phone, presses: list[Press], at: datetime | None = None) -> None:
        self.number += 1
        now = self.shop.clock.now()
        events = []
        for part, (kind, fields, body) in enumerate(presses, 1):
            record = {
                "id": f"press-{self.number:05d}" + (f".{part}" if part > 1 else ""),
                "kind": kind,
                "at": write_moment((at or now) + phone.off),
                "person": phone.person,
                "seen": phone.seen,
                "body": body,
                **fields,
            }
            events.append({name: value for name, value in record.items() if value != ""})
        if phone.offline:
            phone.held += events
            for record in events:
                event = check_form({**record, "at": write_moment(at or now), "offset_ms": 0})
                if event.kind not in ("event undone", "event amended"):
                    phone.view = apply(phone.view, event, self.shop.book)
        else:
            self._send(phone, events)

    def _send(self, phone: Phone, batch: list[dict[str, Any]]) -> None:
        before = self.shop.ledger.state
        answers = self._post(phone, batch)
        phone.sent = (phone.sent + batch)[-30:]
        for record, answer in zip(batch, answers, strict=True):
            settled = answer["answer"] == "accepted" and "to_settle" not in answer
            self.tally.answers["taken" if settled else "to settle" if "to_settle" in answer else "refused"] += 1
            if settled:
                self.tally.kinds[record["kind"]] += 1
                self.tally.note_reached(before, record)

    def _post(self, phone: Phone, batch: list[dict[str, Any]]) -> list[dict[str, Any]]:
        sent_at = write_moment(self.shop.clock.now() + phone.off)
        return take_taps(self.shop, {"device": phone.device, "sent_at": sent_at, "taps": batch})["taps"]

    # what always holds

    @invariant()
    def pieces_are_conserved(self) -> None:
        for run in self.shop.ledger.state.runs.values():
            assert conserved(run)
            for load in run.loads.values():
                assert all(count >= 0 for count in load.pieces.values())

    @invariant()
    def nobody_and_nothing_is_in_two_places(self) -> None:
        state = self.shop.ledger.state
        at_work = [(load, (run.id, load.id)) for run in state.runs.values() for load in run.loads.values()]
        for load, key in at_work:
            assert state.stations[load.station].load == key, load
            assert all(state.people[person].hands == key for person in load.people), load
            assert len(set(load.people)) == len(load.people)
        begun = {key: load for load, key in at_work}
        for station in state.stations.values():
            assert station.load is None or station.load in begun, station
        for person in state.people.values():
            if person.hands is not None and person.hands[0]:
                assert person.key in begun[person.hands].people, person

    @invariant()
    def the_live_state_is_the_rebuilt_one(self) -> None:
        rebuilt = fold(self.shop.book, self.shop.log.events())
        assert rebuilt == self.shop.ledger.state
        assert {key: due.due_at for key, due in dues(rebuilt, self.shop.book).items()} == self.shop.log.dues_held()

    @invariant()
    def note_what_was_reached(self) -> None:
        state = self.shop.ledger.state
        self.tally.reached["two open runs"] += sum(run.state == "open" for run in state.runs.values()) >= 2
        self.tally.reached["waiting"] += any(tray.rests for run in state.runs.values() for tray in run.trays.values())

    def teardown(self) -> None:
        """The same events in another order of arrival make the same state."""
        if not hasattr(self, "shop"):
            return
        events = self.shop.log.events()
        Random(len(events)).shuffle(events)
        other = Ledger(self.shop.book)
        for seq, event in enumerate(events, 1):
            other.keep(other.try_event(event), seq)
        assert other.state == self.shop.ledger.state
