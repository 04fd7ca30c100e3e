"""A program dropped on the product's page, on a phone: its time is read, taken into the step, and stands there with where it is from."""

import re
import shutil
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from runboard.demo.files import PROGRAM, rail_board_program
from runboard.demo.make import make_demo
from runboard.opening import open_workshop
from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book
from tests.browser.conftest import TABLET, Phones
from tests.browser.looking import Looking
from tests.serving import Served, serving_demo

ANSWER = re.compile(r"About .+ per load, .+ of it cutting")
# A file let go of over an element, as a browser tells it of one that is dragged in.
DROP = """([name, text]) => {
  const dragged = new DataTransfer();
  dragged.items.add(new File([text], name));
  const at = document.querySelector("form.drop");
  for (const kind of ["dragenter", "dragover", "drop"]) {
    at.dispatchEvent(new DragEvent(kind, {bubbles: true, cancelable: true, dataTransfer: dragged}));
  }
}"""


@pytest.fixture
def folder(tmp_path: Path) -> Iterator[Path]:
    folder = tmp_path / "shop"
    make_demo(folder, datetime.now(UTC))
    yield folder
    shutil.rmtree(folder, ignore_errors=True)


@pytest.fixture
def demo(folder: Path) -> Iterator[Served]:
    with serving_demo(folder) as server:
        yield server


@pytest.fixture
def program(tmp_path: Path) -> Path:
    path = tmp_path / PROGRAM
    path.write_text(rail_board_program())
    return path


def stored(folder: Path) -> Book:
    store, workshop = open_workshop(folder)
    try:
        return workshop.books.latest()
    finally:
        store.close()


def answered(page: Page) -> str:
    """The sentence of the answer, once it is there."""
    head = page.get_by_role("heading", name=ANSWER)
    expect(head).to_be_visible(timeout=60_000)
    return head.inner_text()


def test_a_program_is_dropped_on_a_product_and_its_time_taken_into_the_step(
    phones: Phones, demo: Served, folder: Path, program: Path
) -> None:
    page = phones.new()
    looking = Looking(page, demo.address)
    page.goto(f"{demo.address}plan/products/rails")

    page.get_by_label("A program or a drawing").set_input_files(program)
    said = answered(page)
    looking.picture("before program")
    looking.unfold()
    looking.at("before program unfolded")

    page.get_by_role("button", name=re.compile(r"Use .+ for Cut")).click()
    expect(page.get_by_text(re.compile(rf"Cut now plans with .+ from {re.escape(PROGRAM)}"))).to_be_visible()
    page.get_by_role("link", name="Show me").click()
    expect(page.get_by_text(f"from the program {PROGRAM}")).to_be_visible()
    page.goto(f"{demo.address}plan/products/rails/operations/cut")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("heading", level=1, name="Entry key rails")).to_be_visible()

    product = stored(folder).product("rails")
    assert product is not None
    cut = product.operations[0].passes[0]
    assert cut.reckoned is not None
    assert (cut.reckoned.what, cut.reckoned.name) == ("program", PROGRAM)
    assert abs(cut.machine.total_seconds() - cut.reckoned.seconds) <= 0.5
    assert re.search(r"\d", said)
    assert looking.wrong == []
    assert phones.complaints == []


def test_a_file_is_dropped_on_a_big_screen_and_asked_about_otherwise_without_being_sent_again(
    phones: Phones, demo: Served
) -> None:
    page = phones.new(viewport=TABLET)
    page.goto(f"{demo.address}before?product=rails")

    page.evaluate(DROP, [PROGRAM, rail_board_program()])
    before = answered(page)
    page.get_by_text("How the machine moves").click()
    page.get_by_label("Acceleration, mm/s²").fill("20")
    page.get_by_role("button", name="Work it out").click()
    expect(page.get_by_role("heading", name=before)).to_be_hidden(timeout=60_000)
    slower = answered(page)

    assert slower != before
    expect(page.get_by_text(PROGRAM).first).to_be_visible()
    assert "accel=20" in page.url
    page.go_back()
    assert answered(page) == before
    assert phones.complaints == []


@pytest.mark.parametrize("name", KINDS)
def test_each_kind_of_question_is_in_order(name: str, phones: Phones, demo: Served) -> None:
    page = phones.new()
    looking = Looking(page, demo.address)
    page.goto(f"{demo.address}before/{name}?product=rails")
    expect(page.get_by_role("heading", level=1)).to_be_visible()

    looking.unfold()
    looking.at(f"before asked {name}")

    assert looking.wrong == []


def test_the_list_of_questions_is_in_order(phones: Phones, demo: Served) -> None:
    page = phones.new()
    looking = Looking(page, demo.address)
    page.goto(f"{demo.address}before")
    expect(page.get_by_role("heading", level=1)).to_be_visible()

    looking.picture("before")
    looking.at("before")

    assert looking.wrong == []
