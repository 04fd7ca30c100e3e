"""The manifest has what browsers ask before they offer to install a page.

Members: 'What does it take to be installable', https://web.dev/installable-manifest/, and
https://developer.mozilla.org/en-US/docs/Web/Progressive_web_apps/Manifest: a name, icons of 192 and 512 pixels, a
start address, a display of its own, and no native app that is preferred. Size of a PNG: the width and the height are
the first two numbers of the IHDR chunk, PNG (third edition), 11.2.1, https://www.w3.org/TR/png-3/#11IHDR.
"""

import json
from typing import Any

import pytest
from flask.testing import FlaskClient

from tests.serving import ROOT
from tests.web.conftest import client, house  # noqa: F401 - fixtures

PNG = b"\x89PNG\r\n\x1a\n"
MANIFEST: dict[str, Any] = json.loads((ROOT / "static" / "runboard.webmanifest").read_text("utf-8"))


def test_the_manifest_has_what_makes_a_page_installable() -> None:
    assert MANIFEST["name"] or MANIFEST["short_name"]
    assert MANIFEST["start_url"] == "/"
    assert MANIFEST["display"] in ("fullscreen", "standalone", "minimal-ui")
    assert MANIFEST.get("prefer_related_applications") is not True


def test_there_are_icons_of_both_sizes_for_any_purpose_and_one_for_a_mask() -> None:
    shown = {icon["sizes"] for icon in MANIFEST["icons"] if "any" in icon.get("purpose", "any").split()}

    assert {"192x192", "512x512"} <= shown
    assert any("maskable" in icon.get("purpose", "").split() for icon in MANIFEST["icons"])


@pytest.mark.parametrize("icon", MANIFEST["icons"], ids=lambda icon: icon["src"])
def test_each_icon_is_a_picture_of_the_size_that_is_said(client: FlaskClient, icon: dict[str, str]) -> None:  # noqa: F811
    answer = client.get(icon["src"])
    data = answer.data

    assert (answer.status_code, answer.content_type) == (200, icon["type"])
    assert data[:8] == PNG and data[12:16] == b"IHDR"
    assert f"{int.from_bytes(data[16:20])}x{int.from_bytes(data[20:24])}" == icon["sizes"]


def test_the_manifest_is_served_as_what_it_is_and_stays_on_this_site(client: FlaskClient) -> None:  # noqa: F811
    answer = client.get("/static/runboard.webmanifest")

    assert answer.content_type == "application/manifest+json"
    assert MANIFEST["scope"] == "/" and MANIFEST["id"] == "/"
    assert all(icon["src"].startswith("/static/") for icon in MANIFEST["icons"])
