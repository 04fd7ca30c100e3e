"""A second phone beside the one in hand, and a look into what was stored."""

import json
import sqlite3
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from tests.serving import Served


def ago(minutes: float) -> str:
    """That moment, as a press names it."""
    return (datetime.now(UTC) - timedelta(minutes=minutes)).isoformat()


def opened(page: Page, server: Served) -> Page:
    page.goto(server.address)
    page.get_by_role("button", name="Ann", exact=True).click()
    return page


def bodies(data: Path, kind: str) -> list[dict[str, Any]]:
    """What the log holds of a kind."""
    store = sqlite3.connect(data / "shop.db")
    found = [
        json.loads(body) for (body,) in store.execute("select body from event where kind = ? order by seq", [kind])
    ]
    store.close()
    return found


def arrived(data: Path, kind: str, seconds: float = 10, number: int = 1) -> None:
    """Wait until a press of that kind is stored, or so many: 'sent' on the page may still speak of the press before it."""
    until = time.monotonic() + seconds
    while len(bodies(data, kind)) < number and time.monotonic() < until:
        time.sleep(0.1)
