"""A small shop and its key rails, for tests: a CNC and a bench in the shop, a laser in the house."""

from typing import Any

ALL_WEEK = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]


def a_pass(key: str = "all", size: str = "tray", **minutes: Any) -> dict[str, Any]:
    found = {"key": key, "name": key, "size": size, "pieces": minutes.pop("pieces", None)}
    return found | {f"{name}_minutes": value for name, value in minutes.items()}


def operation(key: str, station: str, *passes: dict[str, Any], **more: Any) -> dict[str, Any]:
    return {"key": key, "name": key.capitalize(), "station": station, "passes": list(passes) or [a_pass()], **more}


def key_rails() -> dict[str, Any]:
    """Cut, clean up, sand twice, engrave, oil and dry, fit hooks."""
    return {
        "key": "rail",
        "name": "Entry key rails",
        "pieces_a_tray": 5,
        "wood": "ash",
        "operations": [
            operation(
                "cut",
                "cnc",
                a_pass(size="board", pieces=15, setup=4, loading=2, machine=38, unloading=2),
                attendance="watched",
                services=["extraction"],
            ),
            operation("clean", "bench", a_pass(size="piece", hand=1)),
            operation("sand", "sander", a_pass("120", setup=1, hand=3), a_pass("180", setup=1, hand=2)),
            operation(
                "engrave",
                "laser",
                a_pass(size="jig", pieces=5, loading=2, machine=22, unloading=1),
                attendance="watched",
                personal=True,
                checks=[{"key": "depth", "text": "Depth of the number", "per": "setup", "nominal": 0.5}],
            ),
            operation(
                "oil",
                "finishing",
                a_pass(size="run", hand=1),
                wait={"why": "dry", "least_minutes": 720, "latest_minutes": None, "holds": {}},
            ),
            operation("hooks", "bench", a_pass(hand=2), uses=[{"supply": "hooks", "each": 4}]),
        ],
    }


def shop() -> dict[str, Any]:
    """The book of the small shop as its JSON record."""
    hours = [{"days": ALL_WEEK, "from": "08:00", "to": "22:00"}]
    return {
        "runboard_book": 1,
        "name": "Test shop",
        "time_zone": "Europe/Berlin",
        "units": "mm",
        "emergency": "112",
        "rooms": [{"key": "shop", "name": "Shop"}, {"key": "house", "name": "House"}],
        "walks": [{"rooms": ["house", "shop"], "minutes": 2}],
        "services": [{"key": "extraction", "name": "Dust extraction", "capacity": 1}],
        "stations": [
            {"key": "cnc", "name": "CNC", "kind": "cnc", "room": "shop"},
            {"key": "bench", "name": "Bench", "kind": "bench", "room": "shop"},
            {"key": "sander", "name": "Sander", "kind": "sander", "room": "shop"},
            {"key": "finishing", "name": "Finishing corner", "kind": "finishing", "room": "shop"},
            {"key": "laser", "name": "Laser", "kind": "laser", "room": "house"},
        ],
        "people": [
            {"key": "ann", "name": "Ann", "access": "lead", "hours": hours, "tidy_up_minutes": 10},
            {"key": "ben", "name": "Ben", "access": "crew", "hours": hours},
        ],
        "jobs": [{"key": "bins", "name": "Empty the bins", "minutes": 5, "room": "shop"}],
        "products": [key_rails()],
    }


def shop_without_looks() -> dict[str, Any]:
    """The small shop with a machine that nobody has to watch where its CNC was: for tests of other alerts."""
    record = shop()
    station, step = record["stations"][0], record["products"][0]["operations"][0]
    station["kind"], step["attendance"] = "other machine", "none"
    return record
