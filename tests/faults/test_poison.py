"""Whatever is accepted, from whoever: the server starts again on it, and every page, the plan, the cards, the state and
the clock answer."""

import faulthandler
import json
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from runboard.app import build
from runboard.floor.changing.exchange import export_run, import_run
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.access import CREW, GUEST, LEAD
from runboard.floor.pressing.ahead import told_ahead
from runboard.floor.pressing.taps import Sender, take_taps_of
from runboard.house import House, Settings
from runboard.run.refusal import Refused
from runboard.web.fittings import fitted
from tests.conftest import HandClock
from tests.examples import examples
from tests.faults.poison import events
from tests.scenario import shop

MOST = 8
# No test of speed: a page that takes as long as this goes on for ever.
HANGS_AFTER = 60
FIXED = {"about": "limits", "where": "products", "key": "rail", "operation": "cut", "thing": "stations", "name": "en"}
# What a person loads, saves or sees without the shop in it.
NOT_ASKED = (
    "static_files.static",
    "welcome.certificate",
    "welcome.profile",
    "pictures.show",
    "helper.picture",
    "cards.pdf",
)
ROLES = (LEAD, CREW, GUEST)


@contextmanager
def served(folder: Path, clock: HandClock) -> Iterator[House]:
    """A server on the folder, come back as it does at a start."""
    house = build(Settings(folder, clock, open_to_all=True))
    house.app.testing = True
    house.open()
    try:
        yield house
    finally:
        house.close()


def begun(house: House) -> None:
    """A run of two trays and more, its first presses made."""
    house.workshop.books.save(shop(), house.settings.clock.now())
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 12, "text": "12"}]), "ann")


def press(house: House, record: dict[str, Any], role: str) -> str:
    sender = Sender("phone-1", role, ("r1", "1") if role == GUEST else ("", ""))
    answer = take_taps_of(house.workshop, {"taps": [record]}, sender)["taps"][0]
    return str(answer["answer"])


def every_page(house: House) -> Iterator[tuple[str, int]]:
    """Each address that may be read, and what it answers."""
    client = house.app.test_client()
    with house.app.test_request_context():
        addresses = sorted(set(_addresses(house)))
    for address in addresses:
        faulthandler.dump_traceback_later(HANGS_AFTER, exit=True)
        try:
            yield address, client.get(address).status_code
        finally:
            faulthandler.cancel_dump_traceback_later()


def _addresses(house: House) -> Iterator[str]:
    state = house.workshop.ledger.state
    for rule in house.app.url_map.iter_rules():
        if "GET" in rule.methods and rule.endpoint not in NOT_ASKED:
            for run in state.runs.values():
                tray, load = next(iter(run.trays), "1"), next(iter(run.loads), "cut/1")
                named = {"run": run.id, "tray": tray, "load": load, "step": "oil"}
                key = {"key": run.id} if "runs" in rule.rule else {}
                values = {name: {**FIXED, **named, **key}.get(name, "x") for name in rule.arguments}
                yield str(rule.build(values, append_unknown=False)[1])
    yield from ("/state?person=ann", "/state?person=ben", "/plan/runs/r1/cards/print?trays=1")


def check_it_goes_on(folder: Path, clock: HandClock) -> None:
    """It starts, plans, rings and answers; what is wrong with the log is said to the lead."""
    with served(folder, clock) as house:
        planner = fitted(house.app).planner
        planner.turn()
        house.alerts.passed()
        failed = [(address, status) for address, status in every_page(house) if status >= 500]
        assert not failed
        state = json.loads(house.app.test_client().get("/state?person=ann").data)
        assert "ahead" not in state or told_ahead(house.workshop)


@settings(max_examples=examples(8), suppress_health_check=list(HealthCheck))
@given(st.data())
def test_no_accepted_press_stops_the_shop(data: st.DataObject) -> None:
    clock = HandClock()
    with TemporaryDirectory() as place:
        folder = Path(place)
        with served(folder, clock) as house:
            begun(house)
            for number in range(data.draw(st.integers(1, MOST))):
                record = data.draw(events(clock.now(), number))
                press(house, record, data.draw(st.sampled_from(ROLES)))
                clock.forward(minutes=data.draw(st.sampled_from([0, 3, 600])))
        check_it_goes_on(folder, clock)


@settings(max_examples=examples(8), suppress_health_check=list(HealthCheck))
@given(st.data())
def test_no_imported_run_stops_the_shop(data: st.DataObject) -> None:
    clock = HandClock()
    with TemporaryDirectory() as one, TemporaryDirectory() as other:
        with served(Path(one), clock) as house:
            begun(house)
            file = export_run(house.workshop, "r1")
        file["events"] += [data.draw(events(clock.now(), number)) for number in range(data.draw(st.integers(1, MOST)))]
        with served(Path(other), clock) as house:
            house.workshop.books.save(shop(), clock.now())
            try:
                import_run(house.workshop, file)
            except Refused:
                return
        check_it_goes_on(Path(other), clock)
