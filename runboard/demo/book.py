"""The demo's book: an invented home shop with a CNC in the shop, a laser in the house and a corner for finishing."""

from datetime import datetime, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from runboard.demo.boards import serving_boards
from runboard.demo.kept import CNC, LASER, what_it_keeps
from runboard.demo.rails import key_rails

EVERY_DAY = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
LEAD, CREW = "robin", "kim"
# Places of the drying rack: so many at first, so many since it was made larger.
SMALL_RACK, RACK = 5, 9
_HOURS_BEFORE, _HOURS_AFTER = 3, 4


def demo_book(now: datetime, zone: str, rack: int = RACK) -> dict[str, Any]:
    """The book's record. Usual hours lie around ``now``, so that whoever tries the demo meets the shop at work."""
    hours = usual_hours(now, zone)
    return {
        "runboard_book": 1,
        "name": "The shop behind the house",
        "time_zone": zone,
        "units": "mm",
        "emergency": "112",
        "hour_rate": 35,
        "rooms": [
            {"key": "shop", "name": "Shop"},
            {"key": "house", "name": "House"},
            {"key": "corner", "name": "Finishing corner"},
        ],
        "walks": [
            {"rooms": ["house", "shop"], "minutes": 2},
            {"rooms": ["corner", "shop"], "minutes": 1},
            {"rooms": ["corner", "house"], "minutes": 2},
        ],
        "services": [
            {"key": "extraction", "name": "Dust extraction, CNC or router table", "capacity": 1},
            {"key": "clamps", "name": "Clamps", "capacity": 24},
            {"key": "rack", "name": "Drying rack places", "capacity": rack},
        ],
        "stations": _stations(),
        "people": [
            {
                "key": LEAD,
                "name": "Robin",
                "access": "lead",
                "skills": ["cnc", "laser"],
                "hours": hours,
                "start_up_minutes": 4,
                "tidy_up_minutes": 10,
            },
            {"key": CREW, "name": "Kim", "access": "crew", "hours": hours, "start_up_minutes": 2, "tidy_up_minutes": 5},
        ],
        "jobs": [
            {"key": "bins", "name": "Empty the dust bin", "minutes": 5, "room": "shop"},
            {"key": "cartons", "name": "Fold cartons", "minutes": 10, "room": "house"},
            {"key": "strips", "name": "Sort offcuts", "minutes": 12, "room": "shop"},
        ],
        "finishes": [_hard_oil()],
        **what_it_keeps(),
        "products": [key_rails(), serving_boards()],
    }


def _hard_oil() -> dict[str, Any]:
    """A finish of the demo's own: its figures are as invented as its label."""
    return {
        "key": "hard-oil",
        "name": "Hard oil",
        "recoat_minutes": 720,
        "handle_minutes": 960,
        "cure_minutes": 14 * 1440,
        "airing_minutes": 180,
        "self_heats": True,
        "solvent": True,
        "ventilation": "both doors open, and the fan outdoors",
        "sheet_date": "2026-03-14",
    }


def _stations() -> list[dict[str, Any]]:
    def station(key: str, name: str, kind: str, room: str = "shop", **more: Any) -> dict[str, Any]:
        return {"key": key, "name": name, "kind": kind, "room": room, **more}

    return [
        station(
            "cnc", "CNC", "cnc", watch_from=["bench", "sander", "clamping"], watch_every_minutes=10,
            noise_db=88, eyewear="clear, with side shields", motion=CNC, hour_rate=4,
        ),
        station("router", "Router table", "hand cutter", noise_db=96, eyewear="clear, with side shields"),
        station("sander", "Sander", "sander", noise_db=87),
        station("bench", "Bench", "bench", noise_db=72),
        station("clamping", "Clamping bench", "clamping"),
        station("table", "Packing table", "bench", room="house"),
        station("laser", "Laser", "laser", room="house", noise_db=68, eyewear="450 nm, optical density 6 or more", motion=LASER, hour_rate=3),
        station("finishing", "Finishing bench", "finishing", room="corner"),
    ]  # fmt: skip


def usual_hours(now: datetime, zone: str) -> list[dict[str, Any]]:
    """Seven hours of every day around the time of day that it is now; cut in two where they lie over midnight."""
    local = now.astimezone(ZoneInfo(zone))
    opens = (local - timedelta(hours=_HOURS_BEFORE)).hour
    closes = (local + timedelta(hours=_HOURS_AFTER)).hour
    if closes == 0 or opens < closes:
        return [_window(opens, closes or 24)]
    return [_window(opens, 24), _window(0, closes)]


def _window(opens: int, closes: int) -> dict[str, Any]:
    return {"days": EVERY_DAY, "from": f"{opens:02d}:00", "to": f"{closes:02d}:00"}
