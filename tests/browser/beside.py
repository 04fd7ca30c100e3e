"""A second phone beside the one in hand, and a look into what was stored."""

import json
import re
import sqlite3
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from tests.browser.inside import CLOCK, OWN
from tests.serving import Here, Served

_STATE = re.compile(r"/state(\?|$)")
_LATER = f"async (now) => {CLOCK}.learn(Date.now(), Date.now(), now)"
_FETCH = f"""async (parts) => {{
  const {{ wanted }} = {OWN}["door/later.js"];
  const found = await Promise.all(parts.map(wanted));
  const sheets = parts.includes("sheets") ? Object.values(found[parts.indexOf("sheets")]) : [];
  await Promise.all(sheets.map((fetchIt) => fetchIt()));
}}"""


def ago(minutes: float) -> str:
    """That moment, as a press names it."""
    return (datetime.now(UTC) - timedelta(minutes=minutes)).isoformat()


def opened(page: Page, server: Served) -> Page:
    page.goto(server.address)
    page.get_by_role("button", name="Ann", exact=True).click()
    return page


def later(page: Page, server: Here, **span: float) -> None:
    """So much time passes for the server and on this page, which hears of it at once."""
    now = server.forward(**span)
    page.evaluate(_LATER, now.isoformat())
    asks_again(page)


def asks_again(page: Page) -> None:
    """The page asks the server now, as when somebody looks at it again, and shows what it was answered."""
    with page.expect_response(_STATE):
        page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")


def fetches(page: Page, *parts: str) -> None:
    """What Now fetches once it has come to rest, some of it, is fetched by now."""
    page.evaluate(_FETCH, list(parts))


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
