"""The manifest has what browsers ask before they offer to install a page.

Members: 'What does it take to be installable', https://web.dev/installable-manifest/, and
https://developer.mozilla.org/en-US/docs/Web/Progressive_web_apps/Manifest: a name, icons of 192 and 512 pixels, a
start address, a display of its own, and no native app that is preferred. Size of a PNG: the width and the height are
the first two numbers of the IHDR chunk, PNG (third edition), 11.2.1, https://www.w3.org/TR/png-3/#11IHDR.
"""

import json
import re
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.house import Settings
from tests.conftest import HandClock
from tests.outside.said import published
from tests.web.conftest import client, house  # noqa: F401 - fixtures

PNG = b"\x89PNG\r\n\x1a\n"
ICONS = ("/static/icons/icon-192.png", "/static/icons/icon-512.png", "/static/icons/icon-full-512.png")


INSTALLABLE = "https://web.dev/installable-manifest/ and https://developer.mozilla.org, Web App Manifest"


@cache
def served() -> dict[str, Any]:
    """The manifest as a browser gets it, at the address that the page links to."""
    with TemporaryDirectory() as folder:
        house = build(Settings(Path(folder), HandClock(), open_to_all=True))
        try:
            browser = house.app.test_client()
            (link,) = re.findall(r'rel="manifest" href="([^"]+)"', browser.get("/").text)
            answer = browser.get(link)
            return {**json.loads(answer.data), "content type": answer.content_type}
        finally:
            house.close()


@published(
    INSTALLABLE,
    {
        "a name": True,
        "start_url": True,
        "display": True,
        "192x192": True,
        "512x512": True,
        "prefer_related_applications": False,
    },
)
def test_the_manifest_has_what_makes_a_page_installable(asked: str) -> bool:
    shown = {icon["sizes"] for icon in served()["icons"] if "any" in icon.get("purpose", "any").split()}
    return {
        "a name": bool(served().get("name") or served().get("short_name")),
        "start_url": served().get("start_url") == "/",
        "display": served().get("display") in ("fullscreen", "standalone", "minimal-ui"),
        "192x192": "192x192" in shown,
        "512x512": "512x512" in shown,
        "prefer_related_applications": bool(served().get("prefer_related_applications")),
    }[asked]


@published("https://web.dev/learn/pwa/web-app-manifest.md.txt", {"content type": "application/manifest+json"})
def test_the_manifest_is_served_as_what_it_is(asked: str) -> str:
    return served()[asked]


def test_there_is_an_icon_for_a_mask() -> None:
    assert any("maskable" in icon.get("purpose", "").split() for icon in served()["icons"])


@pytest.mark.parametrize("address", ICONS)
def test_each_icon_is_a_picture_of_the_size_that_is_said(client: FlaskClient, address: str) -> None:  # noqa: F811
    assert tuple(one["src"] for one in served()["icons"]) == ICONS
    icon = next(one for one in served()["icons"] if one["src"] == address)

    answer = client.get(address)
    data = answer.data

    assert (answer.status_code, answer.content_type) == (200, icon["type"])
    assert data[:8] == PNG and data[12:16] == b"IHDR"
    assert f"{int.from_bytes(data[16:20])}x{int.from_bytes(data[20:24])}" == icon["sizes"]


def test_the_manifest_stays_on_this_site() -> None:
    assert served()["scope"] == "/" and served()["id"] == "/"
    assert all(icon["src"].startswith("/static/") for icon in served()["icons"])
