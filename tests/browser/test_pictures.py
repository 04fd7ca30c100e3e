"""A picture taken with the phone: it shows as soon as it is chosen, and is there for good once the form is saved."""

from pathlib import Path

from playwright.sync_api import Page, Route, expect

from runboard.opening import open_workshop
from runboard.shop.product import Operation
from tests.browser.conftest import Phones
from tests.serving import Served
from tests.web.pictures import photograph

CUT = "plan/products/rail/operations/cut"


def saved(data: Path) -> Operation:
    store, workshop = open_workshop(data)
    operation = workshop.books.latest().products[0].operations[0]
    store.close()
    return operation


def write_step(page: Page, address: str, text: str) -> None:
    """Open the form of the cut, and write a new step into it."""
    page.goto(address + CUT)
    page.get_by_role("heading", name="Instructions").click()
    page.get_by_text("Add step").click()
    page.get_by_label("What to do").fill(text)


def choose(page: Page, content: bytes) -> None:
    picture = {"name": "IMG_0001.jpg", "mimeType": "image/jpeg", "buffer": content}
    page.get_by_label("Picture", exact=True).set_input_files(picture)  # type: ignore[arg-type]


def test_a_step_gets_its_picture_from_the_camera(
    shop_with_a_run: Path, data: Path, server: Served, phone: Page
) -> None:
    write_step(phone, server.address, "Lay the board on the bed.")

    choose(phone, photograph())
    expect(phone.get_by_role("img", name="Picture")).to_be_visible()
    phone.get_by_role("button", name="Save").click()
    expect(phone.get_by_role("heading", name="Entry key rails")).to_be_visible()

    (step,) = saved(data).instructions
    assert step.text == "Lay the board on the bed."
    assert step.picture and (data / "files" / step.picture).is_file()


def test_a_refused_picture_is_said_at_once_and_what_is_typed_stays(
    shop_with_a_run: Path, data: Path, server: Served, phones: Phones
) -> None:
    page = phones.new()
    write_step(page, server.address, "Clamp it.")

    choose(page, b"no picture")

    expect(page.get_by_role("alert")).to_contain_text("not a JPEG, PNG or WebP picture")
    expect(page.get_by_label("What to do")).to_have_value("Clamp it.")
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("heading", name="Entry key rails")).to_be_visible()
    assert [(step.text, step.picture) for step in saved(data).instructions] == [("Clamp it.", None)]
    phones.complaints.clear()  # the browser tells of the 422 itself


def test_a_picture_that_could_not_be_sent_alone_goes_with_the_form(
    shop_with_a_run: Path, data: Path, server: Served, phones: Phones
) -> None:
    page = phones.new()
    write_step(page, server.address, "Clamp it.")
    page.route("**/pictures", _unanswered)

    choose(page, photograph())
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("heading", name="Entry key rails")).to_be_visible()

    assert saved(data).instructions[0].picture
    phones.complaints.clear()  # the browser tells of the silence itself


def _unanswered(route: Route) -> None:
    route.abort()
