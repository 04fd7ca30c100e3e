"""Hands full: Now says aloud what comes next and each alarm, once it is wanted; a button at a station presses for hands."""

import urllib.request
from pathlib import Path

import pytest
from playwright.sync_api import expect

from runboard.floor.keeping.buttons import make_button
from tests.browser.conftest import Phones
from tests.browser.test_alarm import Listener
from tests.phone import Phone
from tests.serving import Here

# A phone with a voice of its own for English, and one far away; what is said is written down.
VOICES = """
window.spoken = [];
const own = (name, lang, localService) => ({name, lang, localService, default: false, voiceURI: name});
const voices = [own("Far", "en-GB", false), own("Near", "en-GB", true), own("Nah", "de-DE", true)];
Object.defineProperty(window, "speechSynthesis", {value: {
  getVoices: () => voices, cancel() {}, speak: (said) => window.spoken.push({text: said.text, volume: said.volume, voice: said.voice.name}),
}});
window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
"""
NO_VOICE = VOICES.replace('own("Near", "en-GB", true), ', "")


class Speaker(Listener):
    """Somebody with Now open, whose phone has a voice."""

    def __init__(self, phones: Phones, server: Here, person: str, voices: str = VOICES) -> None:
        super().__init__(phones, server, person, voices)

    @property
    def said(self) -> list[str]:
        return [said["text"] for said in self.page.evaluate("window.spoken")]

    def wants(self) -> None:
        self.page.get_by_role("button", name="Say aloud").click()
        self.page.wait_for_function("() => window.spoken.length === 1")
        self.page.evaluate("window.spoken = []")


@pytest.fixture
def ben(shop_with_a_run: Path, server: Here) -> Phone:
    """Ben's other phone."""
    found = Phone(server.address, person="ben")
    found.state()
    return found


def test_nothing_is_said_until_it_is_wanted(phones: Phones, ben: Phone, server: Here) -> None:
    ann = Speaker(phones, server, "Ann")

    ben.press("machine started", {"minutes": 0.02}, run="r1", load="cut/1")
    ann.hears()
    ann.waits(6)

    assert ann.said == []


def test_an_alarm_is_said_once_by_the_phones_own_voice(phones: Phones, ben: Phone, server: Here) -> None:
    ann = Speaker(phones, server, "Ann")
    ann.wants()

    ben.press("machine started", {"minutes": 0.02}, run="r1", load="cut/1")
    ann.hears()
    ann.page.wait_for_function("() => window.spoken.some((said) => said.text.includes('CNC'))")
    ann.waits(30)

    alarms = [said for said in ann.page.evaluate("window.spoken") if "CNC" in said["text"]]
    assert len([said for said in alarms if "finished" in said["text"] or "ended" in said["text"]]) == 1
    assert {said["voice"] for said in alarms} == {"Near"}
    assert {said["volume"] for said in alarms} == {1}


def test_what_now_says_next_is_said_when_it_changes(phones: Phones, ben: Phone, server: Here) -> None:
    ann = Speaker(phones, server, "Ann")
    ann.wants()
    ann.waits(9)

    Phone(server.address, person="ann").press("load started", run="r1", load="cut/2")
    heading = ann.page.get_by_role("heading", level=1)
    expect(heading).to_contain_text("Load: Cut")
    ann.page.wait_for_function("() => window.spoken.some((said) => said.text.includes('Load: Cut'))")
    ann.waits(30)

    assert ann.said.count(heading.inner_text()) == 1


def test_hands_at_a_cutter_are_told_more_quietly(phones: Phones, ben: Phone, server: Here) -> None:
    ann = Speaker(phones, server, "Ann")
    ann.wants()
    Phone(server.address, person="ann").press("load started", run="r1", load="cut/2")
    expect(ann.page.get_by_role("heading", level=1)).to_contain_text("Load: Cut")

    ben.press("machine started", {"minutes": 0.02}, run="r1", load="engrave/1")
    ann.page.wait_for_function("() => window.spoken.some((said) => said.text.includes('Laser'))")

    (loudness,) = {said["volume"] for said in ann.page.evaluate("window.spoken") if "Laser" in said["text"]}
    assert loudness < 0.5


def test_a_phone_without_a_voice_of_its_own_says_so_and_asks_nobody_far_away(
    phones: Phones, ben: Phone, server: Here
) -> None:
    ann = Speaker(phones, server, "Ann", NO_VOICE)

    expect(ann.page.get_by_text("This phone can't read English aloud by itself.")).to_be_visible()
    expect(ann.page.get_by_role("button", name="Say aloud")).to_have_count(0)


def test_open_pages_sound_when_a_button_at_a_station_is_pressed(phones: Phones, ben: Phone, server: Here) -> None:
    ann = Speaker(phones, server, "Ann")
    token = make_button(server.house.leaving.ears, "cnc", "Foot switch")[0]
    ben.press("machine started", run="r1", load="cut/1")
    ben.press("unloading started", run="r1", load="cut/1")
    expect(ann.page.get_by_text("unloading").first).to_be_visible()
    ann.forgets()
    trays = phones.new()
    trays.goto(f"{server.address}trays")
    expect(trays.get_by_role("article").first).to_be_visible()

    told = urllib.request.Request(f"{server.address}buttons/cnc", b"", {"Authorization": f"Bearer {token}"})
    with urllib.request.urlopen(told, timeout=10) as answer:
        assert answer.status == 200

    expect(ann.page.get_by_role("status").filter(has_text="CNC: done, for Ben")).to_be_visible()
    expect(trays.get_by_role("status").filter(has_text="CNC: done, for Ben")).to_be_visible()
    ann.page.wait_for_function("() => window.tones.length >= 2")
    assert [tone["pitch"] for tone in ann.tones[:2]] == [660, 880]
