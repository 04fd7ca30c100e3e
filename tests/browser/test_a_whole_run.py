"""A whole run, from an empty data folder to 'finished', pressed on a phone: what a person would do, in their words."""

import re
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Locator, Page, expect

from runboard.floor.warm import catch_up
from runboard.opening import open_workshop
from runboard.run.fold.state import ShopState
from runboard.run.log.event import Event
from tests.serving import Served

ROUTE = "cut 4 board of 12, clean up 5, sand 5, engrave 5, oil 3, dry 5 min, hooks 5"

BIG = re.compile("^(Done, |Open start list|Checked as before: .* started$|The .* is running$|Start$|Carry on$)")


def test_a_run_of_12_pieces_from_one_line_of_text_to_finished(phone: Page, server: Served, data: Path) -> None:
    person = Person(phone, server.address)
    person.describes_the_shop()
    person.writes_the_product()
    person.opens_the_run()
    person.comes()

    person.cuts_the_board_and_it_stops_early()
    person.takes_a_mistap_back()
    person.lays_a_bad_piece_aside()
    person.sends_a_piece_back_to_rework()
    person.splits_a_tray()
    person.works_to_the_end()
    person.says_what_became_of_the_rags()
    person.finishes_the_run()

    events, state = stored(data)
    (run,) = state.runs.values()
    trays = run.trays.values()
    assert run.state == "finished"
    assert sum(tray.started for tray in trays) == 12
    assert (sum(tray.good for tray in trays), sum(tray.scrapped for tray in trays)) == (11, 1)
    assert not any(tray.in_process for tray in trays)
    assert not run.loads and not state.unsettled
    times = Counter(event.kind for event in events)
    for kind in ("run opened", "load stopped", "stop settled", "pieces counted", "event undone", "run finished"):
        assert times[kind] == 1, kind
    moves = [event for event in events if event.kind == "pieces moved"]
    assert [(event.body or {})["why"] for event in moves] == ["rework", "split"]
    assert {event.person for event in events if event.kind == "load done"} == {"p1"}


class Person:
    """Ann, with her phone."""

    def __init__(self, phone: Page, address: str) -> None:
        self.phone = phone
        self.address = address

    # what a person does with a page

    def press(self, name: str | re.Pattern[str], within: Locator | None = None) -> None:
        (within or self.phone).get_by_role("button", name=name, exact=isinstance(name, str)).first.click()

    def follows(self, name: str) -> None:
        self.phone.get_by_role("link", name=name, exact=True).first.click()

    def writes(self, label: str, text: str) -> None:
        self.phone.get_by_label(label, exact=True).first.fill(text)

    def goes_to(self, screen: str) -> None:
        self.phone.get_by_role("navigation", name="Screens").get_by_role("link", name=screen).click()

    def unfolds(self, words: str | re.Pattern[str], within: Locator | None = None) -> None:
        (within or self.phone).locator("summary").filter(has_text=words).first.click()

    def reads(self, words: str | re.Pattern[str]) -> None:
        expect(self.phone.get_by_role("heading", level=1)).to_contain_text(words)

    @contextmanager
    def in_the_sheet(self, title: str | re.Pattern[str]) -> Iterator[Locator]:
        """Whatever is pressed in a sheet that has opened; it is closed at the end."""
        sheet = self.phone.get_by_role("dialog", name=title)
        expect(sheet).to_be_visible()
        yield sheet
        expect(sheet).to_be_hidden()

    # before

    def describes_the_shop(self) -> None:
        self.phone.goto(self.address)
        self.goes_to("Shop")
        self.adds("room", Name="Shop")
        for name, kind in (
            ("CNC", "CNC router"),
            ("Bench", "bench"),
            ("Sander", "sander"),
            ("Laser", "laser"),
            ("Finishing", "finishing: oil, varnish"),
        ):
            self.follows("Add a station")
            self.writes("Name", name)
            self.phone.get_by_label("What it is").select_option(label=kind)
            self.press("Save")
        self.adds("person", Name="Ann")
        self.follows("Change the shop's name, zone, units")
        self.writes("Name of the shop", "Ann's shop")
        self.press("Save")
        self.reads("Ann's shop")

    def adds(self, thing: str, **fields: str) -> None:
        self.follows(f"Add a {thing}")
        for label, text in fields.items():
            self.writes(label, text)
        self.press("Save")

    def writes_the_product(self) -> None:
        self.goes_to("Plan")
        self.follows("New product")
        self.writes("Name", "Key rail")
        self.writes("Steps, in one line", ROUTE)
        expect(self.phone.get_by_role("heading", name="This reads as")).to_be_visible()
        self.writes("Engrave, at the Laser", "5")  # how many go on it at once, which the line does not say
        self.press("Create product")
        self.reads("Key rail")

    def opens_the_run(self) -> None:
        self.follows("Open a run")
        self.writes("Pieces", "11")
        self.unfolds("Name, quantity, part-done trays")
        self.writes("Pieces to start", "12")
        expect(self.phone.get_by_text("Start 12: 11 wanted, 1 extra")).to_be_visible()
        # Leaving a field looks ahead once more; a page that is left meanwhile complains of the answer it never got.
        with self.phone.expect_response("**/plan/runs/preview"):
            self.phone.get_by_label("Pieces to start").blur()
        self.press("Open run")

    def comes(self) -> None:
        self.follows("Go to Now")
        self.press("2 h")
        self.reads("Cut, board 1")

    # during

    def cuts_the_board_and_it_stops_early(self) -> None:
        self.press("Start")
        self.goes_through_the_list()
        self.press("Something is wrong")
        self.press("The machine stopped early")
        with self.in_the_sheet("Stopped early: Cut, board 1") as sheet:
            self.press("cutter", sheet)
            for place in range(1, 9):
                self.press(re.compile(rf"^Position {place}:"), sheet)
            self.press(re.compile(r"^Position 9:"), sheet)
            self.press(re.compile(r"^Position 9:"), sheet)
            expect(sheet.get_by_role("button", name="Position 9: half")).to_be_visible()
            self.press("Record the stop", sheet)
        self.reads("Stopped: Cut, board 1")
        self.press("Say what to do with it")
        self.press("Carry on from where it stopped")
        self.goes_through_the_list()
        self.is_at_the_machine("CNC")
        self.press(re.compile("^Done, all 12 good"))
        # 'Done' begins the next load with the same press only where the page already knew what comes next.
        self.reads("Clean up, tray 1")
        self.works_until("Clean up, tray 1")

    def goes_through_the_list(self) -> None:
        """Every point of the start list is ticked; only then the machine may be said to run."""
        self.press("Open start list")
        sheet = self.phone.get_by_role("dialog", name=re.compile("^Start list"))
        runs = sheet.get_by_role("button", name=re.compile("started$|to tick$"))
        expect(runs).to_be_disabled()
        if sheet.get_by_label("What is it made of?").count():
            sheet.get_by_label("What is it made of?").fill("ash")
            self.press("Note it", sheet)
        for point in sheet.get_by_role("checkbox").all():
            point.check()
        runs.click()
        expect(sheet).to_be_hidden()

    def is_at_the_machine(self, name: str) -> None:
        """Its row on Now opens its load; there it is said that somebody is at it, though by its estimate it still runs."""
        self.press(re.compile(f"^{name}.*running"))
        sheet = self.phone.get_by_role("dialog")
        self.press("I'm unloading it", sheet)
        self.press("Yes", sheet)
        expect(sheet).to_be_hidden()

    def takes_a_mistap_back(self) -> None:
        self.press(re.compile("^Done, all 5 good"))
        self.reads("Clean up, tray 2")
        self.press(re.compile("^Undo"))
        self.reads("Clean up, tray 1")

    def lays_a_bad_piece_aside(self) -> None:
        self.press("Something is wrong")
        self.press("A bad piece")
        with self.in_the_sheet("Bad piece: Clean up") as sheet:
            self.press("crack", sheet)
            self.press("1 scrap: crack", sheet)
        self.press(re.compile("^Done, 4 good, 1 scrap"))
        self.reads("Clean up, tray 2")

    def sends_a_piece_back_to_rework(self) -> None:
        self.works_until("Sand, tray 2")
        self.press("Something is wrong")
        self.press("A bad piece")
        with self.in_the_sheet("Bad piece: Sand") as sheet:
            self.press("Rework", sheet)
            self.press("Clean up", sheet)
            self.press("1 to rework", sheet)

    def splits_a_tray(self) -> None:
        self.press(re.compile("^Done, all 4 good"))
        self.goes_to("Trays")
        tray = self.phone.get_by_role("article").filter(
            has=self.phone.get_by_role("heading", name="tray 2", exact=True)
        )
        self.unfolds("Assign, move, count, hold, history", tray)
        self.press("Split, merge, move", tray)
        with self.in_the_sheet("Move pieces from tray 2") as sheet:
            self.press("More: How many", sheet)
            self.press("Move 2 to tray 2b", sheet)
        expect(self.phone.get_by_role("heading", name="tray 2b", exact=True)).to_be_visible()
        self.goes_to("Now")

    def works_until(self, sentence: str) -> None:
        """Press on until that is what the person is in the middle of."""
        for _ in range(20):
            if self.screen()[0] == sentence and self.screen()[1].startswith("Done, "):
                return
            self.presses_on()
        raise AssertionError(f"'{sentence}' never came")

    def works_to_the_end(self) -> None:
        for _ in range(100):
            if not re.match("(Nothing for you|Time to wrap up)", self.screen()[0]):
                self.presses_on()
            elif not self.ends_waits():
                return
        raise AssertionError("the run never ends")

    def screen(self) -> tuple[str, str]:
        """What stands large on Now: the sentence, and the first button under it."""
        heading = self.phone.get_by_role("heading", level=1)
        expect(heading).to_be_visible()
        buttons = self.phone.get_by_role("button", name=BIG)
        return plain(heading.inner_text()), plain("".join(buttons.all_inner_texts()[:1]))

    def presses_on(self) -> None:
        """One press: what is running is unloaded; else the big button. Then the screen says something else."""
        before = self.screen()
        running = self.phone.get_by_role("button", name=re.compile("^(CNC|Laser).*running"))
        if running.count():
            self.is_at_the_machine(running.first.inner_text().split()[0])
        else:
            big = self.phone.get_by_role("button", name=BIG).first
            if big.inner_text().startswith("Open start list"):
                self.goes_through_the_list()
            else:
                big.click()
        while self.screen() == before:
            self.phone.wait_for_timeout(20)

    def ends_waits(self) -> bool:
        """On Trays, each wait that is still on is ended early; answers whether there were any."""
        self.goes_to("Trays")
        expect(self.phone.get_by_role("article").first).to_be_visible()
        ended = 0
        for tray in self.phone.get_by_role("article").all():
            self.unfolds("Assign, move, count, hold, history", tray)
            ends = tray.get_by_role("button", name="End the wait: Oil")
            if ends.count():
                ends.click()
                with self.in_the_sheet("End the wait: Oil") as sheet:
                    self.press(re.compile("^End it early"), sheet)
                expect(ends).to_have_count(0)
                ended += 1
        self.goes_to("Now")
        return ended > 0

    # after

    def says_what_became_of_the_rags(self) -> None:
        """Until that is said, no run ends."""
        asked = self.phone.locator("[role=alert] .panel")
        expect(asked.first).to_be_visible()
        while left := asked.count():
            asked.first.get_by_role("button").first.click()
            expect(asked).to_have_count(left - 1)

    def finishes_the_run(self) -> None:
        self.goes_to("Plan")
        self.follows("Key rail, run 1")
        self.unfolds("End the run")
        self.press("Finish run")
        expect(self.phone.get_by_text("11 of 11 good")).to_be_visible()


def plain(words: str) -> str:
    """The screen keeps 'tray 4' together with a space that does not break."""
    return words.replace("\xa0", " ")


def stored(data: Path) -> tuple[list[Event], ShopState]:
    """The log and its state, as the data folder has them."""
    store, workshop = open_workshop(data)
    try:
        catch_up(workshop)
        return list(workshop.log.events()), workshop.ledger.state
    finally:
        store.close()
