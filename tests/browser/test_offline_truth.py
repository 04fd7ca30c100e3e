"""One truth: what a phone shows of an evening without the server is what the fold says once its presses are sent,
those to settle included. The presses are drawn by dice, some hundred over a dozen evenings."""

import json
from collections import Counter
from datetime import datetime, timedelta
from random import Random
from typing import Any

from playwright.sync_api import Page

from runboard.floor.looking.look import state_for
from runboard.run.fold.table import table_text
from tests.browser.test_vectors import FOLD
from tests.browser.truth import differences
from tests.core.taps import Taps
from tests.core.test_page_rooms import MADE
from tests.vectors.chooser import Press
from tests.vectors.make import SERVER_ONLY

EVENINGS, ACTS = 16, 26
PHONE, OTHER = 0, 1


class Evening(Taps):
    """The machine of taps, with one phone that loses the network and goes on."""

    def opens(self) -> None:
        super().opens()  # type: ignore[no-untyped-call]
        self.lost_at: datetime | None = None

    @property
    def phone(self) -> Any:
        return self.phones[PHONE]

    def goes_offline(self) -> dict[str, Any]:
        """The phone is up to date and then without the network; answers what its page holds."""
        self.loses_the_network(PHONE)
        self.lost_at = self.shop.clock.now()
        self.shop.clock.pass_(1)
        return self.told()

    def told(self) -> dict[str, Any]:
        """What the server tells the phone's page."""
        return dict(json.loads(state_for(self.shop, self.phone.person)[1]))

    def _press(self, phone: Any, presses: list[Press], at: datetime | None = None) -> None:
        """What only the server does is not pressed; what was late before the network went, the page cannot place."""
        if phone.offline and (at is not None and self.lost_at is not None and at <= self.lost_at):
            return
        if phone.offline and not MADE.issuperset(self._kinds(presses)):
            return
        if not any(kind in SERVER_ONLY for kind, _, _ in presses):
            super()._press(phone, presses, at)

    def _kinds(self, presses: list[Press]) -> set[str]:
        """What is pressed, and what is settled by it: without the server a page makes its own kinds alone."""
        settled = {body.get("event") for kind, body, _ in presses if kind == "entry settled"}
        told = self.told()["unsettled"] if settled else []
        return {kind for kind, _, _ in presses} | {one["kind"] for one in told if one["event"] in settled}

    def undoes_one_of_its_own(self, random: Random) -> None:
        """One of the last presses of this phone that wait to be sent."""
        mine = [one["id"] for one in self.phone.held if "." not in one["id"] and one["kind"] != "event undone"]
        if mine:
            self._press(self.phone, [("event undone", {}, {"event": random.choice(mine[-3:])})])

    def somebody_else_is_there(self) -> None:
        """Another phone is heard of meanwhile, so that nothing of what this one did can be refused."""
        self._look(self.phones[OTHER])
        self._press(self.phones[OTHER], [("person came", {"person": "cleo"}, {})])


def acts(evening: Evening, random: Random, times: int) -> None:
    """So many things that a person does, mostly sensible ones."""
    for _ in range(times):
        evening.shop.clock.pass_(random.choice((0.5, 2, 6, 20)))
        what = random.random()
        if what < 0.45:
            evening.presses(random, PHONE, random.randint(1, 3))
        elif what < 0.6:
            evening.finishes_and_starts_the_next(random, PHONE)
        elif what < 0.75:
            evening.presses_what_is_rare(random, PHONE)
        elif what < 0.85:
            evening.says_it_late(random, PHONE, random.choice((2, 5, 15)))
        elif what < 0.93:
            evening.settles_what_did_not_fit(random, PHONE)
        elif evening.phone.offline:
            evening.undoes_one_of_its_own(random)


def laid_over(page: Page, state: dict[str, Any], events: list[dict[str, Any]]) -> dict[str, Any]:
    """The state as the page shows it with these presses of its own."""
    cases = [{"state": state, "events": events}]
    return dict(page.evaluate(FOLD, {"cases": cases, "table": table_text()})[0]["after"])


def told_without(name: str, *states: dict[str, Any]) -> None:
    """Leaves out the person that only the other phone told of."""
    for state in states:
        state["people"].pop(name, None)


def listed(state: dict[str, Any]) -> set[str]:
    return {entry["event"] for entry in state["unsettled"]}


def test_what_a_phone_shows_offline_is_what_the_fold_says_afterwards(page: Page) -> None:
    pressed: Counter[str] = Counter()
    to_settle = 0
    for seed in range(EVENINGS):
        random, evening = Random(seed), Evening()
        evening.opens()
        evening.a_second_run_is_opened()
        acts(evening, random, ACTS)
        seen = evening.goes_offline()
        acts(evening, random, ACTS)
        held = list(evening.phone.held)
        shown = laid_over(page, seen, held)

        evening.somebody_else_is_there()
        evening.finds_the_network(PHONE)

        # Ids that nobody knows are refused, and the phone says why; they did not fit there either.
        refused = {one["id"] for one in held} & set(evening.shop.log.refused)
        settled = {one["body"]["event"] for one in held if one["kind"] == "entry settled"}
        assert refused <= listed(shown) | settled
        left = laid_over(page, seen, [one for one in held if one["id"] not in refused]) if refused else shown
        said = evening.told()
        told_without("cleo", left, said)
        assert not (found := differences(left, said)), "\n".join([f"evening {seed}", *found])
        pressed.update(one["kind"] for one in held)
        to_settle += len(listed(said) & {one["id"] for one in held})

    print(f"{sum(pressed.values())} presses of {len(pressed)} kinds without the server, {to_settle} of them to settle")
    assert sum(pressed.values()) > 400
    assert len(pressed) > 30
    assert to_settle > 10


def test_late_presses_take_their_place_among_those_of_the_phone(page: Page) -> None:
    evening = Evening()
    evening.opens()
    seen = evening.goes_offline()
    now = evening.shop.clock.pass_(60)
    cut = {"run": "r1", "load": "cut/1"}
    for kind, minutes in (("load done", 5), ("load started", 50), ("machine started", 45)):
        evening._press(evening.phone, [(kind, cut, {})], now - timedelta(minutes=minutes))
    shown = laid_over(page, seen, evening.phone.held)

    evening.somebody_else_is_there()
    evening.finds_the_network(PHONE)

    said = evening.told()
    told_without("cleo", shown, said)
    assert said["unsettled"] == []
    assert differences(shown, said) == []
