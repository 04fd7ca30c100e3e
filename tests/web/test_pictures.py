"""Pictures: upright, small, bare and kept once; refused with a sentence, and nothing typed beside them is lost."""

import base64
import html
import io
import json
import re
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from werkzeug.test import TestResponse

from runboard import cli
from runboard.app import build
from runboard.floor.changing import photograph as photographs
from runboard.floor.changing.photograph import prepare
from runboard.floor.changing.shop_book import book_record
from runboard.house import House, Settings
from runboard.run.refusal import NotStored, Refused
from runboard.shop.keys import pictures_named
from runboard.shop.product import Instruction
from runboard.store.files import copy_files
from runboard.store.pictures import PictureFolder
from runboard.words.sentences import say
from tests import scenario
from tests.attack.cast import device_with
from tests.conftest import START, HandClock
from tests.web.pictures import drawing, opened, photograph
from tests.web.test_shop_pages import as_a_browser_posts, upload, words

CUT = "/plan/products/rail/operations/cut"


pytestmark = pytest.mark.usefixtures("small_shop")


def send(client: FlaskClient, content: bytes, name: str = "photo.jpg") -> TestResponse:
    return client.post("/pictures", data={"file": (io.BytesIO(content), name)}, content_type="multipart/form-data")


def kept(client: FlaskClient, content: bytes) -> str:
    """The name under which a picture is kept."""
    answer = send(client, content)
    assert answer.status_code == 200 and answer.json is not None
    return str(answer.json["name"])


def record(house: House) -> dict[str, Any]:
    return book_record(house.workshop)


def cut(house: House) -> dict[str, Any]:
    found: dict[str, Any] = record(house)["products"][0]["operations"][0]
    return found


def fill(client: FlaskClient, path: str, files: dict[str, bytes], **more: str) -> TestResponse:
    """Post a page's first form as it came, with ``more`` (points written ``__``) and pictures by their field."""
    form: dict[str, Any] = {
        name: texts for name, texts in as_a_browser_posts(client.get(path).text).items() if not name.endswith(".file")
    }
    form |= {name.replace("__", "."): text for name, text in more.items()}
    form |= {f"{name}.file": (io.BytesIO(content), "photo.jpg") for name, content in files.items()}
    return client.post(path, data=form, content_type="multipart/form-data")


# what is kept


def test_a_picture_is_made_upright_small_and_bare() -> None:
    content, ending = prepare(photograph(turned=True))

    image = opened(content)
    assert (ending, image.format, image.size) == ("jpg", "JPEG", (1200, 1600))
    assert not image.getexif()
    assert b"Maker" not in content and b"Exif" not in content
    # turned a quarter clockwise, the red left half is the upper one
    assert image.getpixel((600, 200))[0] > 150 and image.getpixel((600, 1400))[2] > 150  # type: ignore[index]


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_each_kind_of_photograph_becomes_a_jpeg(kind: str) -> None:
    content, ending = prepare(photograph(kind=kind))

    assert (ending, opened(content).format) == ("jpg", "JPEG")
    assert max(opened(content).size) == 1600


def test_a_small_picture_is_not_blown_up() -> None:
    content, _ = prepare(photograph((320, 240)))

    assert opened(content).size == (320, 240)


def test_a_drawing_of_few_colours_stays_a_sharp_png_with_its_ground_left_out() -> None:
    content, ending = prepare(drawing())

    image = opened(content)
    assert (ending, image.format, image.mode) == ("png", "PNG", "RGBA")
    assert image.getpixel((0, 0)) == (0, 0, 0, 0)


@pytest.mark.parametrize(
    "content", [b"", b"GIF89a", b"<svg xmlns='http://www.w3.org/2000/svg'/>", b"\xff\xd8\xff", photograph()[:900]]
)
def test_what_is_no_picture_is_refused(content: bytes) -> None:
    with pytest.raises(Refused, match="picture unreadable"):
        prepare(content)


@pytest.mark.filterwarnings("ignore")  # its decoders warn of what is spoiled
@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.data())
def test_a_picture_spoiled_on_the_way_is_kept_or_refused_and_nothing_else(data: st.DataObject) -> None:
    content = bytearray(data.draw(st.sampled_from([photograph((64, 48)), drawing((40, 30))])))
    for _ in range(data.draw(st.integers(1, 6))):
        content[data.draw(st.integers(0, len(content) - 1))] = data.draw(st.integers(0, 255))

    try:
        _, ending = prepare(bytes(content))
    except Refused:
        return
    assert ending in ("jpg", "png")


def test_too_many_pixels_are_refused_before_they_are_unpacked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(photographs, "MOST_PIXELS", 1000)

    with pytest.raises(Refused, match="picture too many pixels"):
        prepare(photograph((40, 30)))


def test_the_same_picture_is_kept_once(house: House, client: FlaskClient, tmp_path: Path) -> None:
    first, again = kept(client, photograph()), kept(client, photograph())

    assert first == again
    assert [path.name for path in (tmp_path / "files").iterdir()] == [first]


def test_a_full_disk_is_said_and_leaves_no_half_of_a_picture(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(path: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("runboard.store.pictures.keep_on_disk", full)

    with pytest.raises(NotStored, match="full"):
        PictureFolder(tmp_path).keep(b"picture", "jpg")
    assert list((tmp_path / "files").iterdir()) == []


def test_a_copy_of_the_shop_has_its_pictures(house: House, client: FlaskClient, tmp_path: Path) -> None:
    name = kept(client, photograph())

    copy_files(tmp_path, tmp_path / "copy")

    assert PictureFolder(tmp_path / "copy").read(name) == PictureFolder(tmp_path).read(name)


# who gets it


def test_a_picture_is_shown_with_its_type_and_kept_for_good(client: FlaskClient) -> None:
    answer = client.get(f"/pictures/{kept(client, photograph())}")

    assert answer.content_type == "image/jpeg"
    assert "immutable" in answer.headers["Cache-Control"] and "private" in answer.headers["Cache-Control"]
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert opened(answer.data).format == "JPEG"


@pytest.mark.parametrize("name", ["nothing.jpg", "..%2fshop.db", "0" * 64 + ".jpg", "0" * 64 + ".svg", "x" * 3000])
def test_there_is_nothing_under_another_name(client: FlaskClient, name: str) -> None:
    assert client.get(f"/pictures/{name}").status_code == 404


def test_a_lead_sends_pictures_and_a_helper_looks_at_them(tmp_path: Path, clock: HandClock) -> None:
    built = build(Settings(tmp_path / "shut", clock))
    built.workshop.books.save(scenario.shop(), START)
    lead, _ = device_with(built, "lead")
    crew, _ = device_with(built, "crew")
    name = kept(lead, photograph())

    answers = send(crew, photograph()), crew.get(f"/pictures/{name}"), built.app.test_client().get(f"/pictures/{name}")

    assert [answer.status_code for answer in answers] == [403, 200, 401]
    built.close()


# in forms


def test_a_step_gets_its_picture_and_keeps_it(client: FlaskClient, house: House) -> None:
    fill(client, CUT, {"instructions.0.picture": photograph()}, instructions__0__text="Lay the board on the bed.")
    first = cut(house)["instructions"]

    fill(client, CUT, {}, name="Cut out")

    assert first[0]["text"] == "Lay the board on the bed."
    assert client.get(f"/pictures/{first[0]['picture']}").status_code == 200
    assert cut(house)["instructions"] == first
    assert f'src="/pictures/{first[0]["picture"]}"' in client.get(CUT).text


def test_a_picture_is_taken_off(client: FlaskClient, house: House) -> None:
    fill(client, CUT, {"instructions.0.picture": photograph()}, instructions__0__text="Lay the board on the bed.")

    fill(client, CUT, {}, instructions__0__picture__gone="yes")

    assert cut(house)["instructions"] == [{"text": "Lay the board on the bed.", "picture": None}]


def test_a_refused_picture_is_said_at_its_step_and_the_others_and_all_texts_stay(
    client: FlaskClient, house: House
) -> None:
    files = {"instructions.3.picture": b"no picture", "instructions.5.picture": photograph()}
    typed = {"instructions__3__text": "Lay the board on the bed.", "instructions__5__text": "Clamp it."}

    answer = fill(client, CUT, files, name="Cut them", **typed)
    again = client.post(CUT, data=as_a_browser_posts(answer.text))

    assert answer.status_code == 422
    error = re.search(r'id="instructions.0.picture-error">(.*?)</p>', answer.text)
    assert error is not None and "not a JPEG, PNG or WebP" in html.unescape(error[1])
    assert again.status_code == 303
    assert cut(house)["name"] == "Cut them"
    assert [one["text"] for one in cut(house)["instructions"]] == ["Lay the board on the bed.", "Clamp it."]
    assert [bool(one["picture"]) for one in cut(house)["instructions"]] == [False, True]


def test_a_picture_is_kept_though_something_else_in_the_form_is_wrong(client: FlaskClient, house: House) -> None:
    answer = fill(
        client,
        CUT,
        {"instructions.0.picture": photograph()},
        instructions__0__text="Clamp it.",
        passes__0__machine_minutes="long",
    )

    assert answer.status_code == 422
    name = re.search(r'name="instructions.0.picture" value="([^"]+)"', answer.text)
    assert name is not None and client.get(f"/pictures/{name[1]}").status_code == 200


def test_a_picture_that_is_too_large_says_how_large_it_may_be() -> None:
    with pytest.raises(Refused) as refused:
        prepare(b"x" * (photographs.MOST_BYTES + 1))

    assert "over 20 MB" in say("refused", refused.value.code, refused.value.facts)


def test_a_product_has_a_picture(client: FlaskClient, house: House) -> None:
    before = client.get("/plan/products/rail").text
    data = {"seen": "1", "name": "Rails", "pieces_a_tray": "5", "wood": "ash"}

    answer = client.post(
        "/plan/products/rail",
        data=data | {"picture.file": (io.BytesIO(photograph()), "rail.jpg")},
        content_type="multipart/form-data",
    )

    assert answer.status_code == 303
    assert "/pictures/" not in before
    assert f'src="/pictures/{record(house)["products"][0]["picture"]}"' in client.get("/plan/products/rail").text


# in files


def with_a_picture(client: FlaskClient, house: House) -> str:
    fill(client, CUT, {"instructions.0.picture": photograph()}, instructions__0__text="Lay the board on the bed.")
    name: str = cut(house)["instructions"][0]["picture"]
    return name


def test_a_book_takes_its_pictures_along_to_another_shop(
    client: FlaskClient, house: House, tmp_path: Path, clock: HandClock
) -> None:
    name = with_a_picture(client, house)
    saved = client.get("/shop/book.json").data
    other = build(Settings(tmp_path / "other", clock, open_to_all=True))
    there = other.app.test_client()

    look = upload(there, saved)
    there.post("/shop/import", data=as_a_browser_posts(look.text))

    operation = other.workshop.books.latest().products[0].operations[0]
    assert operation.instructions == (Instruction("Lay the board on the bed.", name),)
    assert there.get(f"/pictures/{name}").data == client.get(f"/pictures/{name}").data
    assert "pictures" not in other.workshop.books.record()
    assert len(look.text) < len(saved)
    other.close()


def test_a_run_takes_its_pictures_along(client: FlaskClient, house: House) -> None:
    name = with_a_picture(client, house)
    client.post("/plan/runs/new", data={"product": "rail", "orders.0.pieces": "12", "certainty": "0.9"})

    saved = client.get("/plan/runs/r1/run.json").json

    assert saved is not None
    assert list(saved["pictures"]) == [name]
    assert base64.b64decode(saved["pictures"][name]) == client.get(f"/pictures/{name}").data


def test_the_commands_take_pictures_along_too(
    client: FlaskClient, house: House, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    name = with_a_picture(client, house)
    cli.main(["export", "--data", str(tmp_path)])
    file = tmp_path / "book.json"
    file.write_text(capsys.readouterr().out, "utf-8")

    code = cli.main(["import", "--data", str(tmp_path / "other"), str(file)])

    assert code == 0
    assert PictureFolder(tmp_path / "other").read(name) == PictureFolder(tmp_path).read(name)


@pytest.mark.parametrize("content", ["", "no base64!", base64.b64encode(b"<html>").decode()])
def test_a_picture_in_a_file_that_is_not_what_its_name_says_is_refused(
    client: FlaskClient, house: House, tmp_path: Path, content: str
) -> None:
    name = with_a_picture(client, house)
    book = json.loads(client.get("/shop/book.json").data)
    book["pictures"] = {name[::-1].replace("gpj.", "") + ".jpg": content}

    answer = upload(client, json.dumps(book).encode())

    assert answer.status_code == 422
    assert "not what its name says" in words(answer)
    assert [path.name for path in (tmp_path / "files").iterdir()] == [name]


def test_pictures_are_found_however_deep_they_are_named() -> None:
    one, other = "a" * 64 + ".jpg", "b" * 64 + ".png"
    named = {"picture": one, "operations": [{"instructions": [{"picture": other}, {"picture": None}]}], "text": other}

    assert list(pictures_named(named)) == [one, other]
