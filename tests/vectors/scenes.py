"""What the presses are pressed in: a shop with a watched interval, and rails that dry with a latest end."""

from typing import Any

from tests.scenario import a_pass, key_rails, operation, shop


def rails() -> dict[str, Any]:
    """The key rails, with a latest end to the oil's wait, and checks for the run, the setup and the load."""
    product = key_rails()
    oil = next(one for one in product["operations"] if one["key"] == "oil")
    oil["wait"] = {"why": "dry", "least_minutes": 30, "latest_minutes": 90, "holds": {}}
    cut = product["operations"][0]
    cut["checks"] = [
        {"key": "length", "text": "Length", "per": "run", "nominal": 300.0},
        {"key": "edge", "text": "As the sample piece", "per": "load"},
    ]
    return product


def the_shop() -> dict[str, Any]:
    """The small shop with the rails, and a CNC that asks every ten minutes."""
    record = shop()
    record["stations"][0]["watch_every_minutes"] = 10
    record["people"].append({"key": "cleo", "name": "Cleo", "access": "crew", "hours": record["people"][0]["hours"]})
    record["products"] = [rails()]
    record["finishes"] = [
        {"key": "wax", "name": "Hard wax", "self_heats": True, "recoat_minutes": 15, "handle_minutes": 30}
    ]
    return record


def shelves() -> dict[str, Any]:
    """A second product with a short route: one machine, one hand operation."""
    return {
        "key": "shelf",
        "name": "Small shelves",
        "pieces_a_tray": 2,
        "wood": "oak",
        "operations": [
            operation("cut", "cnc", a_pass(size="jig", pieces=2, loading=1, machine=12), attendance="watched"),
            operation("glue", "bench", a_pass(hand=4), wait={"why": "clamp", "least_minutes": 20}),
            operation("wax", "finishing", a_pass(hand=1), finish="wax"),
            operation("rub", "sander", a_pass(hand=1)),
        ],
    }


def opened(product: dict[str, Any], trays: int, pieces: int, board: int | None) -> dict[str, Any]:
    """The body of a 'run opened': trays of so many pieces; boards of so many trays where the product cuts boards."""
    keys = [str(number) for number in range(1, trays + 1)]
    first = product["operations"][0]["key"]
    boards = {}
    if board:
        fed = [keys[at : at + board] for at in range(0, trays, board)]
        boards = {f"{first}/{number}": dict.fromkeys(some, pieces) for number, some in enumerate(fed, 1)}
    return {
        "name": product["name"],
        "product": product,
        "orders": [
            {"line": "1", "pieces": 4, "text": "12", "due": "2026-06-05T12:00:00Z"},
            {"line": "2", "pieces": 3, "text": "7"},
        ],
        "trays": [{"tray": key, "pieces": pieces} for key in keys],
        "boards": boards,
        "wood": product["wood"],
    }
