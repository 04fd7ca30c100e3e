"""Trying a change on the demo's run: from the forms to the answer, and from there to the Review."""

import re
import shutil
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import expect

from runboard.demo.make import make_demo
from tests.browser.conftest import Phones
from tests.browser.looking import Looking
from tests.serving import Served, serving_demo

RUN = "r5"


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    folder: Path = tmp_path_factory.mktemp("tried") / "shop"
    make_demo(folder, datetime.now(UTC))
    with serving_demo(folder) as server:
        yield server
    shutil.rmtree(folder, ignore_errors=True)


def test_a_change_is_tried_and_kept_for_the_review(phones: Phones, demo: Served) -> None:
    page = phones.new()
    page.goto(f"{demo.address}plan/try?run={RUN}")
    looking = Looking(page, demo.address)
    looking.unfold()
    looking.at("plan try")

    form = page.locator("details", has_text="Faster or slower work")
    form.get_by_label("Operation").select_option(index=1)
    form.get_by_label("New time, %").fill("80")
    form.get_by_role("button").click()
    expect(page.get_by_text(re.compile("The finish (moves|does not move)"))).to_be_visible(timeout=30_000)
    looking.at("plan tried")

    page.get_by_role("button", name="Keep as a change to try").click()
    expect(page.get_by_role("heading", name="Changes to try")).to_be_visible(timeout=30_000)
    looking.at("review to try")
    assert looking.wrong == []
