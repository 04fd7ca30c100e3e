"""What the demo's shop keeps and what its machines can do: boards, supplies, screws, cutters, good values, a jig, its money.

All of it is invented, prices too.
"""

from typing import Any

CNC = {
    "travel_x": 1050, "travel_y": 650, "travel_z": 90, "rapid": 5000, "rapid_z": 1500, "accel_x": 400, "accel_y": 400,
    "accel_z": 200, "corner": 0.02, "tool_change_minutes": 1.5, "spindle_most": 24000,
}  # fmt: skip
LASER = {"travel_x": 400, "travel_y": 410, "scan_speed": 250, "scan_accel": 3000, "line_spacing": 0.1}


def what_it_keeps() -> dict[str, Any]:
    """The parts of the book's record that say it."""
    return {
        "money": {
            "currency": "EUR",
            "locale": "en-IE",
            "margin": 0.25,
            "margin_of": "price",
            "fee_share": 0.06,
            "fee_each": 0.3,
            "packing_each": 0.8,
        },
        "stocks": [
            _stock("ash-panel", "Ash panel", 1000, 350, 18, "ash", have=2, price=36),
            _stock("ash-plank", "Ash plank, planed", 1200, 150, 18, "ash", have=1, price=19),
            _stock("maple-strip", "Maple strip", 900, 45, 25, "maple", have=30, price=4.2),
        ],
        "supplies": [
            _supply("brass hooks", pack=50, price=16.5, low=40),
            _supply("brass screws 3 x 16", pack=200, price=7.8, low=80),
            _supply("hard oil", "ml", pack=750, price=29, low=250),
            _supply("sanding discs", pack=25, price=12, low=10),
            _supply("cartons", pack=20, price=11, low=10),
            _supply("wood glue", "g", pack=750, price=9.5, low=200),
        ],
        "screws": [
            {
                "key": f"s3x{length}",
                "name": f"Brass screw 3 x {length}",
                "length": length,
                "diameter": 3.0,
                "root": 2.0,
                "thread": length - 5,
                "head": "countersunk",
                "head_height": 1.7,
                "source": "measured on ten of the packet",
            }
            for length in (12, 16, 20)
        ],
        "inserts": [
            {
                "key": "magnet-6",
                "name": "Magnet 6 x 2",
                "what": "magnet",
                "diameter": 6,
                "length": 2,
                "source": "measured",
            }
        ],
        "cutters": [
            {
                "key": "six",
                "name": "6 mm upcut, two flutes",
                "what": "cutter",
                "diameter": 6,
                "flutes": 2,
                "life": 900,
                "life_in": "minutes",
                "price": 21,
            },
        ],
        "feeds": [
            {
                "key": "ash-six",
                "cutter": "six",
                "wood": "ash",
                "station": "cnc",
                "rpm": 18000,
                "feed": 2160,
                "depth": 6.1,
                "note": "clean, chips and no dust",
            },
            {
                "key": "ash-six-fast",
                "cutter": "six",
                "wood": "ash",
                "station": "cnc",
                "rpm": 18000,
                "feed": 3200,
                "depth": 6.1,
                "note": "tore out at the ends of the rails",
                "tore_out": True,
            },
        ],
        "jigs": [
            {
                "key": "numbers",
                "name": "Five rails for their numbers",
                "station": "laser",
                "columns": 1,
                "rows": 5,
                "piece_length": 320,
                "piece_width": 60,
                "pitch_x": 328,
                "pitch_y": 68,
                "corner_x": 20,
                "corner_y": 30,
                "clearance": 0.2,
                "kerf": 0.1,
                "note": "the notch to the left, in front",
            }
        ],
    }


def _stock(
    key: str, name: str, length: float, width: float, thickness: float, wood: str, **more: Any
) -> dict[str, Any]:
    return {"key": key, "name": name, "length": length, "width": width, "thickness": thickness, "wood": wood, **more}


def _supply(name: str, unit: str = "", **more: Any) -> dict[str, Any]:
    return {"key": name.replace(" ", "-"), "name": name, "unit": unit, **more}
