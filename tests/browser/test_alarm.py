"""A machine ends: every open page rings until somebody answers on one of them."""

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.beside import ago, asks_again
from tests.browser.conftest import Phones
from tests.phone import Phone
from tests.serving import Here, Served

# Writes down each tone that the page puts on the audio clock: its pitch, in how many seconds, and the loudest volume.
# Counts the turns of the page's clock, each second one.
SPY = """
window.tones = [];
window.ticks = 0;
const again = window.setInterval;
window.setInterval = (tick, ms) => again(() => { tick(); window.ticks += 1; }, ms);
const Real = window.AudioContext;
window.AudioContext = class extends Real {
  createGain() {
    const gain = super.createGain();
    const ramp = gain.gain.linearRampToValueAtTime.bind(gain.gain);
    gain.gain.linearRampToValueAtTime = (volume, at) => { this.volume = Math.max(volume, 0) || this.volume; return ramp(volume, at); };
    return gain;
  }
  createOscillator() {
    const voice = super.createOscillator();
    const start = voice.start.bind(voice);
    voice.start = (at) => { window.tones.push({pitch: voice.frequency.value, after: at - this.currentTime, volume: this.volume}); start(at); };
    return voice;
  }
};
"""
PLAIN_TITLE = re.compile(r"^Now · runboard$")


class Listener:
    """Somebody with Now open and its sound turned on."""

    def __init__(self, phones: Phones, server: Served, person: str, script: str = "") -> None:
        self.page = phones.new(init_script=SPY + script)
        self.page.goto(server.address)
        self.page.get_by_role("button", name=person, exact=True).click()
        self.page.get_by_role("button", name="Turn on sound").click()
        expect(self.page.get_by_role("button", name="Turn on sound")).to_be_hidden()

    def hears(self) -> None:
        expect(self.page.get_by_role("alert").filter(has_text="should be finished")).to_be_visible()
        expect(self.page).to_have_title(re.compile("^▲ "))

    def hears_nothing_more(self, within_ms: float) -> None:
        expect(self.page).to_have_title(PLAIN_TITLE, timeout=within_ms)
        expect(self.page.get_by_role("alert").filter(has_text="should be finished")).to_be_hidden()

    def waits(self, seconds: float) -> None:
        """So much time passes on the page, and what rings by then has rung."""
        self.page.evaluate("(ms) => { const now = Date.now; Date.now = () => now.call(Date) + ms; }", seconds * 1000)
        turns = self.page.evaluate("window.ticks")
        self.page.wait_for_function("(turns) => window.ticks >= turns + 2", arg=turns)

    @property
    def tones(self) -> list[dict[str, float]]:
        found: list[dict[str, float]] = self.page.evaluate("window.tones")
        return found

    def forgets(self) -> None:
        self.page.evaluate("window.tones = []")


@pytest.fixture
def phone_without_screen(shop_with_a_run: Path, server: Served) -> Phone:
    """Ben's other phone, which starts machines."""
    found = Phone(server.address, person="ben")
    found.state()
    return found


def test_every_page_rings_until_somebody_answers_on_one(
    phones: Phones, phone_without_screen: Phone, server: Served
) -> None:
    ann, ben = Listener(phones, server, "Ann"), Listener(phones, server, "Ben")
    ann.forgets()

    phone_without_screen.press("machine started", {"minutes": 0.05}, run="r1", load="cut/1")
    for listener in (ann, ben):
        listener.hears()
    ahead = [tone for tone in ann.tones if tone["after"] > 0.5]
    assert ahead, "nothing was put on the audio clock before the machine ended"
    ann.page.wait_for_function("() => window.tones.length >= 6")

    ben.page.get_by_role("button", name="I'm unloading it").first.click()
    ben.hears_nothing_more(within_ms=1000)
    ann.hears_nothing_more(within_ms=3000)
    ann.forgets()
    ann.waits(6)
    assert ann.tones == []

    answers = [key for key in phone_without_screen.state()["answers"] if key.startswith("machine end")]
    assert answers == ["machine end|r1|cut/1|1"]


def test_it_rings_when_the_server_says_that_it_is_due_and_not_at_the_next_tick(
    phones: Phones, phone_without_screen: Phone, server: Served
) -> None:
    page = phones.new(init_script="window.setInterval = () => 0;")
    page.goto(server.address)
    expect(page.get_by_role("heading", level=1)).to_be_visible()

    phone_without_screen.press("machine started", {"minutes": 0.05}, run="r1", load="cut/1")

    expect(page.get_by_role("alert").filter(has_text="should be finished")).to_be_visible()
    expect(page).to_have_title(re.compile("^▲ "))


def test_while_hands_are_at_a_cutter_the_call_is_soft_and_says_finish_first(
    phones: Phones, phone_without_screen: Phone, server: Served
) -> None:
    ann, ben = Listener(phones, server, "Ann"), Listener(phones, server, "Ben")
    Phone(server.address, person="ann").press("load started", run="r1", load="cut/2")
    expect(ann.page.get_by_role("heading", level=1)).to_contain_text("Load: Cut")
    for listener in (ann, ben):
        listener.forgets()

    phone_without_screen.press("machine started", {"minutes": 0.05}, run="r1", load="engrave/1")
    for listener in (ann, ben):
        listener.hears()
        listener.page.wait_for_function("() => window.tones.length >= 1")

    expect(soft_words(ann.page)).to_be_visible()
    expect(soft_words(ben.page)).to_be_hidden()
    ben.page.wait_for_function("() => window.tones.length >= 6")
    assert max(tone["volume"] for tone in ann.tones) < 0.1 < max(tone["volume"] for tone in ben.tones)
    assert max(tone["pitch"] for tone in ann.tones) < 400


def soft_words(page: Page) -> Locator:
    return page.get_by_text("Finish the pass, switch off, then go")


def test_a_look_rings_on_the_watchers_page_and_on_all_once_that_page_has_gone(
    phones: Phones, phone_without_screen: Phone, server: Here
) -> None:
    ann, ben = Listener(phones, server, "Ann"), Listener(phones, server, "Ben")
    phone_without_screen.press("person came", {"room": "house"}, person="ann", at=ago(2))
    phone_without_screen.press(
        "machine started", {"minutes": 20}, run="r1", load="engrave/1", person="ann", at=ago(1.97)
    )

    expect(ann.page).to_have_title(re.compile("^▲ "))
    asks_again(ben.page)
    expect(ben.page).to_have_title(PLAIN_TITLE)
    ann.page.close()
    server.forward(seconds=13)
    expect(ben.page).to_have_title(re.compile("^▲ "))
