"""Every screen on the demo's data, light and dark, on a phone and a tablet: nothing that axe finds, nothing too wide,
nothing under the bars, nothing too small for a thumb, no question to a third party.

With RUNBOARD_PICTURES=FOLDER each is also written there, to be looked at by a person.
"""

import re
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.demo.make import make_demo
from tests.browser.conftest import Phones
from tests.browser.looking import Looking
from tests.phone import Phone
from tests.serving import Served, serving_demo

RUN = "r5"
CNC = "cut/4"


@pytest.fixture(scope="session")
def demo_data(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo as it stands at this moment, in a folder that tests copy."""
    folder = tmp_path_factory.mktemp("demo") / "shop"
    make_demo(folder, datetime.now(UTC))
    return folder


@dataclass
class Demo:
    """The demo, served, and Robin's phone without a screen."""

    server: Served
    robin: Phone


@contextmanager
def demo(demo_data: Path, place: Path) -> Iterator[Demo]:
    """A copy of the demo, served, its first question answered."""
    shutil.copytree(demo_data, place / "copy")
    with serving_demo(place / "copy") as server:
        robin = Phone(server.address, person="robin")
        for restart in robin.state().get("asks", {}):
            robin.press("restart answered", {"restart": restart})
        yield Demo(server, robin)


@pytest.fixture(scope="module")
def still_demo(demo_data: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """The demo for all who only look."""
    with demo(demo_data, tmp_path_factory.mktemp("still")) as found:
        yield found.server


@pytest.fixture
def own_demo(demo_data: Path, tmp_path: Path) -> Iterator[Demo]:
    """A demo of one's own, to press in."""
    with demo(demo_data, tmp_path) as found:
        yield found


# screens that are only looked at

PAGES = {
    "trays": "trays",
    "plan": "plan",
    "plan product": "plan/products/rails",
    "plan operation": "plan/products/rails/operations/engrave",
    "plan instructions": "plan/products/rails/operations/hooks",
    "plan new product": "plan/products/new",
    "plan open run": "plan/runs/new?product=rails",
    "plan copy run": f"plan/runs/new?copy={RUN}",
    "plan run": f"plan/runs/{RUN}",
    "plan run route": f"plan/runs/{RUN}/route",
    "plan run over": "plan/runs/r1",
    "plan search": "plan/search",
    "review": "review",
    "review run": "review/runs/r1",
    "review times": "review/runs/r2/times",
    "review happened": "review/runs/r2/happened",
    "review held": "review/runs/r2/held",
    "review changes": "review/runs/r2/changes",
    "review ledger": "review/changes",
    "review days": "review/days",
    "review over runs": "review/over-runs",
    "shop": "shop",
    "shop about": "shop/about",
    "shop room": "shop/rooms/house",
    "shop service": "shop/services/clamps",
    "shop station": "shop/stations/cnc",
    "shop person": "shop/people/robin",
    "shop job": "shop/jobs/bins",
    "shop new station": "shop/stations/new",
    "shop finish": "shop/finishes/hard-oil",
    "shop new finish": "shop/finishes/new",
    "shop usual finish": "shop/finishes/new?like=oil-varnish",
    "shop limits": "shop/limits",
    "shop import": "shop/import",
    "care": "care",
    "help": "help",
    "not found": "plan/runs/r99",
}


@pytest.mark.parametrize("name", PAGES)
def test_a_page_is_in_order(name: str, still_demo: Served, phones: Phones) -> None:
    page = phones.new()
    looking = Looking(page, still_demo.address)
    page.goto(still_demo.address + PAGES[name])
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    if name == "trays":
        expect(page.get_by_role("article").first).to_be_visible()

    looking.picture(name)
    looking.unfold()
    looking.at(f"{name} unfolded")

    if name == "not found":
        phones.complaints.clear()  # the browser tells of the 404 itself
    assert looking.wrong == []


# Now, and what opens on it


def opened(phones: Phones, server: Served, path: str = "", person: str = "Robin") -> tuple[Page, Looking]:
    """Now or Trays of that person, at rest."""
    page = phones.new()
    looking = Looking(page, server.address)
    page.goto(server.address)
    page.get_by_role("button", name=person, exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    if path:
        page.goto(server.address + path)
        expect(page.get_by_role("article").first).to_be_visible()
    return page, looking


def press(page: Page, *names: str | re.Pattern[str]) -> None:
    for name in names:
        page.get_by_role("button", name=name, exact=isinstance(name, str)).first.click()


SHEETS: dict[str, tuple[str | re.Pattern[str], ...]] = {
    "wrong": ("Something is wrong",),
    "bad piece": ("Something is wrong", "A bad piece"),
    "rework": ("Something is wrong", "A bad piece", "Rework"),
    "stopped early": ("Something is wrong", "The machine stopped early", re.compile("^Cut, board 4")),
    "out of something": ("Something is wrong", "Run out of something"),
    "hold": ("Something is wrong", "Hold pieces"),
    "new cutter": ("Something is wrong", "New cutter, wood, jig or focus"),
    "out of use": ("Something is wrong", "A machine is out of order"),
    "called away while it runs": ("Called away",),
    "machine": (re.compile("^CNC.*running"),),
    "lock-up": ("Finish for today",),
}
TRAY_SHEETS: dict[str, str] = {
    "split": "Split, merge, move",
    "count": "Correct a count",
    "tray hold": "Hold",
    "wood": "Wood and board",
}


def test_now_in_the_middle_of_something_and_each_of_its_sheets_is_in_order(phones: Phones, still_demo: Served) -> None:
    page, looking = opened(phones, still_demo)

    looking.at("now working")
    looking.unfold()
    looking.at("now unfolded")
    for name, names in SHEETS.items():
        press(page, *names)
        expect(page.get_by_role("dialog")).to_be_visible()
        looking.at(f"now sheet {name}")
        press(page, "Close")
    assert looking.wrong == []


def test_each_sheet_of_trays_is_in_order(phones: Phones, still_demo: Served) -> None:
    page, looking = opened(phones, still_demo, f"trays?run={RUN}")
    tray = page.get_by_role("article").filter(has=page.get_by_role("heading", name="tray 6", exact=True))
    tray.locator("summary").click()

    for name, button in TRAY_SHEETS.items():
        tray.get_by_role("button", name=button, exact=True).click()
        looking.at(f"trays sheet {name}")
        press(page, "Close")
    press(page, "Mark several trays done")
    looking.at("trays sheet several")
    press(page, "Close", "Assign to …", "Kim")
    looking.at("trays sheet give")
    press(page, "Close")
    page.locator("summary", has_text="Machine training").click()
    press(page, "Add training …")
    looking.at("trays sheet shown")
    assert looking.wrong == []


def to_begin(demo: Demo) -> None:
    demo.robin.press("load done", run=RUN, load=mine(demo))


def put_aside(demo: Demo) -> None:
    demo.robin.press("load put aside", run=RUN, load=mine(demo))


def loading(demo: Demo) -> None:
    demo.robin.press("load done", run=RUN, load=CNC)
    demo.robin.press("pieces released", run=RUN, tray="6", operation="engrave")
    demo.robin.press("load started", {"pieces": {"6": 4}}, run=RUN, load="engrave/6")


def ended(demo: Demo) -> None:
    demo.robin.press("machine started", {"minutes": 0.001}, run=RUN, load=CNC)


def stopped(demo: Demo) -> None:
    body = {"why": "cutter", "good": [1, 2, 3], "half": [4], "untouched": list(range(5, 16))}
    to_begin(demo)
    demo.robin.press("load stopped", body, run=RUN, load=CNC)


def away(demo: Demo) -> None:
    demo.robin.press("person called away")


def gone(demo: Demo) -> None:
    demo.robin.press("load done", run=RUN, load=CNC)
    for reminder in lock_up(demo):
        demo.robin.press("reminder answered", {"reminder": reminder, "done": "in water, lid on"})
    demo.robin.press("person went", {"ticked": []})


def to_settle(demo: Demo) -> None:
    another = Phone(demo.server.address, person="robin")
    another.press("load started", {"pieces": {"12": 5}}, run=RUN, load="sand:180/12")


def first_piece_failed(demo: Demo) -> None:
    load = mine(demo)
    check = {"load": load, "operation": load.split("/")[0]}
    demo.robin.press("first piece checked", {"result": "fail"}, run=RUN, **check)


def out_of_use_and_out_of_hooks(demo: Demo) -> None:
    demo.robin.press("station out of use", {"why": "lens is cracked"}, station="laser")
    demo.robin.press("supply out", {"supply": "brass hooks"}, run=RUN)


def lock_up(demo: Demo) -> list[str]:
    """What must be said of the rags before Robin goes: the server names it."""
    (answer,) = demo.robin.send(demo.robin.event("person went", {"ticked": []}))
    return list(answer.get("facts", {}).get("reminders", []))


def nobody_near(demo: Demo) -> None:
    """The CNC runs in the shop, and Kim and Robin were both last seen in the house."""
    put_aside(demo)
    kim = Phone(demo.server.address, person="kim")
    kim.state()
    kim.press("person called away")
    demo.robin.state()
    demo.robin.press("room changed", {"room": "house"})


def oiling(demo: Demo) -> None:
    demo.robin.press("load done", run=RUN, load=CNC)
    put_aside(demo)
    demo.robin.press("load started", run=RUN, load="oil/10")


def called(demo: Demo, why: str) -> None:
    kim = Phone(demo.server.address, person="kim")
    kim.state()
    kim.press("lead called", {"why": why, "note": "the second hook"}, run=RUN, tray="1", operation="hooks")


def mine(demo: Demo) -> str:
    """The load that Robin's hands are at."""
    load: str = demo.robin.state()["people"]["robin"]["hands"][1]
    return load


STATES: dict[str, tuple[Callable[[Demo], None], str]] = {
    "to begin": (to_begin, ""),
    "put aside": (put_aside, ""),
    "loading": (loading, "Load: "),
    "alert": (ended, ""),
    "stopped": (stopped, "Stopped: "),
    "away": (away, "You were called away"),
    "gone": (gone, ""),
    "to settle": (to_settle, ""),
    "first piece failed": (first_piece_failed, ""),
    "out of use": (out_of_use_and_out_of_hooks, ""),
    "nobody near": (nobody_near, ""),
    "oiling": (oiling, "Oil"),
    "called for help": (lambda demo: called(demo, "help"), ""),
    "called to look": (lambda demo: called(demo, "look"), ""),
    "hurt": (lambda demo: called(demo, "hurt"), ""),
}


@pytest.mark.parametrize("name", STATES)
def test_now_is_in_order_when_it_is(name: str, own_demo: Demo, phones: Phones) -> None:
    lead_to, sentence = STATES[name]
    lead_to(own_demo)

    page, looking = opened(phones, own_demo.server)

    expect(page.get_by_role("heading", level=1)).to_contain_text(sentence)
    looking.at(f"now {name}")
    assert looking.wrong == []


def test_the_question_after_a_restart_is_in_order(phones: Phones, demo_data: Path, tmp_path: Path) -> None:
    shutil.copytree(demo_data, tmp_path / "copy")
    with serving_demo(tmp_path / "copy") as server:
        page, looking = opened(phones, server)
        expect(page.get_by_role("heading", name="What was running?")).to_be_visible()

        looking.at("now asks")
        page.close()

    assert looking.wrong == []


def test_a_shop_that_has_nothing_yet_teaches_and_is_in_order(phones: Phones, server: Served) -> None:
    page = phones.new()
    looking = Looking(page, server.address)
    for name in ("", "trays", "plan", "plan/products/new", "review", "shop", "shop/stations/new"):
        page.goto(server.address + name)
        expect(page.get_by_role("heading", level=1)).to_be_visible()
        looking.at(f"empty {name.replace('/', ' ') or 'now'}")
    assert looking.wrong == []
