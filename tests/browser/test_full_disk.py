"""The shop's computer takes nothing for now: the phone says so, keeps the press, and sends it when it can."""

from pathlib import Path

from playwright.sync_api import expect

from tests.browser.coming_back import Mortal, SamePort
from tests.browser.conftest import Phones
from tests.browser.test_outbox import WORKED, all_sent, at_the_bench, cleans_two_trays, foot, worked
from tests.faults.test_full_disk import let_files_grow


def test_presses_that_the_disk_does_not_take_stay_on_the_phone(phones: Phones, shop_with_a_run: Path) -> None:
    phone = phones.new()
    with Mortal(shop_with_a_run) as server:
        at_the_bench(phone, server)
        let_files_grow(server.now, 0)
        cleans_two_trays(phone)
        notice = phone.get_by_role("alert").filter(has_text="Your phone keeps it and sends it again by itself.")
        expect(notice).to_be_visible()
        expect(foot(phone)).to_contain_text("saved here")

        let_files_grow(server.now, -1)

        all_sent(phone)
        expect(notice).to_be_hidden()
        assert worked(server.data) == WORKED
    phones.complaints = [one for one in phones.complaints if "507" not in one]
    phones.forgive_silence_of_the_server()


def test_presses_that_were_too_many_at_once_stay_on_the_phone(phones: Phones, shop_with_a_run: Path) -> None:
    phone = phones.new()
    with SamePort(shop_with_a_run) as server:
        at_the_bench(phone, server)
        said = "Your phone keeps them and sends them again in 2 s."
        phone.route("**/taps", lambda route: route.fulfill(status=429, json={"sentence": said}))
        cleans_two_trays(phone)
        notice = phone.get_by_role("alert").filter(has_text=said)
        expect(notice).to_be_visible()
        expect(foot(phone)).to_contain_text("saved here")

        phone.unroute("**/taps")

        all_sent(phone)
        expect(notice).to_be_hidden()
        assert worked(server.data) == WORKED
    phones.complaints = [one for one in phones.complaints if "429" not in one]
    phones.forgive_silence_of_the_server()
