"""Short ways to write an operation's record down, so that a route reads like a route."""

from typing import Any

_SPANS = ("setup", "loading", "machine", "unloading", "hand")


def operation(key: str, name: str, station: str, *passes: dict[str, Any], **more: Any) -> dict[str, Any]:
    """An operation's record; ``more`` is whatever else it asks."""
    return {"key": key, "name": name, "station": station, "passes": list(passes), **more}


def pass_(
    key: str = "all", name: str = "", size: str = "tray", pieces: int | None = None, **minutes: float
) -> dict[str, Any]:
    """A pass's record; ``minutes`` are setup, loading, machine, unloading and hand."""
    spans = {f"{span}_minutes": minutes[span] for span in _SPANS if minutes.get(span)}
    return {"key": key, "name": name or key, "size": size, "pieces": pieces, **spans}


def wait(why: str, least: float, latest: float | None = None, **holds: int) -> dict[str, Any]:
    """A wait's record: minutes at least and at most, and what it holds meanwhile."""
    return {"why": why, "least_minutes": least, "latest_minutes": latest, "holds": holds}


def check(key: str, text: str, per: str = "setup", **measure: float) -> dict[str, Any]:
    """A first-piece check's record: a measure in millimetres, or 'matches the sample piece' where none is given."""
    return {"key": key, "text": text, "per": per, **measure}


def steps(*texts: str) -> list[dict[str, Any]]:
    """An operation's instructions, without pictures."""
    return [{"text": text, "picture": None} for text in texts]
