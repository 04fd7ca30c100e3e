"""Jigs and engravings on pages: asked, kept with one press, and put back by what the jig's page says."""

import io
import re

import pytest
from flask.testing import FlaskClient

from runboard.house import House
from runboard.plan.outlines.svg import read_svg

pytestmark = pytest.mark.usefixtures("small_shop")

SIZES = {"asked": "yes", "station": "laser", "piece_length": "300", "piece_width": "40", "pieces": "5", "columns": "1", "rows": "5",
         "gap": "10", "kerf": "0.15", "margin": "10", "fit": "snug", "product": "rail", "step": "", "numbers": "yes"}  # fmt: skip
DRAWING = b'<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="250mm" viewBox="0 0 300 250"><rect x="100" y="20" width="20" height="20"/></svg>'


def test_a_jig_is_asked_downloaded_kept_and_put_back(client: FlaskClient, house: House) -> None:
    answered = client.post("/before/jig", data={**SIZES, "corner_x": "12.5", "corner_y": "8"})
    text = client.get(answered.location).get_data(as_text=True)
    link = re.search(r'href="(/before/jig/files/0[^"]*)"', text)
    assert link is not None
    file = client.get(link[1].replace("&amp;", "&"))
    pressed = client.post(
        "/before/jig/keep", data={**SIZES, "corner_x": "12.5", "corner_y": "8", "keep": "jig", "seen": _seen(text)}
    )

    (jig,) = house.workshop.books.latest().jigs
    kept = client.get(f"/shop/jigs/{jig.key}").get_data(as_text=True)

    assert "5 places in a column" in text
    assert file.mimetype == "image/svg+xml"
    assert len(read_svg(file.data).outlines) > 6
    assert pressed.status_code == 303
    assert (jig.station, jig.rows, jig.corner_x, jig.corner_y) == ("laser", 5, 12.5, 8)
    assert "Move the head to x 12.5, y 8" in kept
    assert "jig-plate" in kept


def test_a_station_leads_to_the_jigs_that_are_put_back_on_it(client: FlaskClient, house: House) -> None:
    text = client.get("/before/jig?" + "&".join(f"{name}={value}" for name, value in SIZES.items())).text
    client.post("/before/jig/keep", data={**SIZES, "keep": "jig", "seen": _seen(text)})

    (jig,) = house.workshop.books.latest().jigs

    assert f'href="/shop/jigs/{jig.key}"' in client.get("/shop/stations/laser").text
    assert "/shop/jigs/" not in client.get("/shop/stations/cnc").text


def test_a_jig_can_be_written_down_by_hand_and_named_by_an_operation(client: FlaskClient, house: House) -> None:
    form = client.get("/shop/jigs/new").get_data(as_text=True)
    fields = {"seen": _seen(form), "name": "Pairs", "station": "laser", "columns": "2", "rows": "1", "piece_length": "100",
              "piece_width": "50", "pitch_x": "110", "pitch_y": "60", "margin": "10", "clearance": "0.2", "kerf": "0.1"}  # fmt: skip

    saved = client.post("/shop/jigs/new", data=fields)

    (jig,) = house.workshop.books.latest().jigs
    assert saved.status_code == 303
    assert (jig.key, jig.columns, jig.corner_x) == ("pairs", 2, None)
    assert "Its corner on Laser is missing" in client.get("/shop/jigs/pairs").get_data(as_text=True)
    product = house.workshop.books.latest().products[0]
    operation = client.get(f"/plan/products/{product.key}/operations/{product.operations[-1].key}").get_data(
        as_text=True
    )
    assert '<option value="pairs">Pairs</option>' in operation


def test_an_engraving_is_looked_at_with_its_drawing(client: FlaskClient) -> None:
    form = client.get("/before/engraving?product=rail").get_data(as_text=True)

    assert "Sweeping speed, mm/s" in form
    sent = client.post("/before/file", data={"product": "rail", "file": (io.BytesIO(DRAWING), "number.svg")})
    assert sent.status_code == 303
    assert "/before/engraving?" in sent.location


def _seen(text: str) -> str:
    found = re.search(r'name="seen" value="(\d+)"', text)
    return found[1] if found else "0"
