"""Devices paired without a press: through the store of a data folder, also while a server serves it."""

from pathlib import Path
from typing import Any

from runboard.floor.letting_in.devices import make_code, pair
from runboard.floor.pressing.access import LEAD
from runboard.opening import open_door
from runboard.web.door.sessions import COOKIE


def paired(data: Path, access: str = LEAD, name: str = "phone") -> str:
    """The secret of a new device's session."""
    store, door = open_door(data)
    try:
        code, _ = make_code(door, access)
        token, _ = pair(door, code, name, "a test")
    finally:
        store.close()
    return token


def cookies(token: str) -> dict[str, str]:
    """The cookie of a session, for httpx."""
    return {COOKIE: token}


def browser_cookie(token: str) -> Any:
    """The same for a browser's context: ``context.add_cookies([browser_cookie(token)])``. It holds for every port."""
    return {"name": COOKIE, "value": token, "url": "http://127.0.0.1/", "httpOnly": True, "sameSite": "Strict"}
