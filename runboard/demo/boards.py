"""The demo's second product: serving boards in maple. Glued up from strips, worked on two sides, no laser."""

from typing import Any

from runboard.demo.route import check, operation, pass_, steps, wait


def serving_boards() -> dict[str, Any]:
    """The product's record, as in the book's JSON."""
    return {
        "key": "boards",
        "name": "Serving boards",
        "pieces_a_tray": 4,
        "wood": "maple",
        "operations": [_glue(), _scrape(), _flatten(), _round(), _sand(), _oil(), _pack()],
    }


def _glue() -> dict[str, Any]:
    """The glue must be scraped off while it is rubbery: not before it has set, and not once it is hard."""
    return operation(
        "glue",
        "Glue up",
        "clamping",
        pass_(setup=2, hand=5),
        wait=wait("clamp", 20, 75, clamps=8),
        instructions=steps("Glue both faces, strips in their marked order.", "Two clamps a board, snug."),
        good_rate=0.99,
        setup_sheet=[["Glue", "waterproof wood glue, both faces"], ["Clamps", "two a board, snug, not starved"]],
        cautions=["nitrile gloves"],
        uses=[{"supply": "wood glue", "each": 30, "unit": "g"}],
    )


def _scrape() -> dict[str, Any]:
    return operation(
        "scrape",
        "Scrape glue",
        "clamping",
        pass_(hand=1.5),
        wait=wait("cure", 240, clamps=8),
        cautions=["sharp edge"],
    )


def _flatten() -> dict[str, Any]:
    def side(key: str, name: str) -> dict[str, Any]:
        return pass_(key, name, size="jig", pieces=2, setup=4, loading=2, machine=9, unloading=1)

    return operation(
        "flatten",
        "Flatten",
        "cnc",
        side("a", "side A"),
        side("b", "side B"),
        attendance="watched",
        services=["extraction"],
        skill="cnc",
        good_rate=0.98,
        instructions=steps("Two boards between the stops, wedges tight.", "Turn them for side B."),
        checklist=["Work flat on the bed", "Stops seated"],
        setup_sheet=[
            ["Program", "flatten-board.ngc, version 2"],
            ["Cutter", "25 mm surfacing cutter"],
            ["Zero", "top of the work, centre"],
            ["Workholding", "two boards between stops, wedges"],
        ],
        checks=[check("thickness", "Thickness", per="setup", nominal=20, plus=0.4, minus=0.2)],
        cautions=["eye protection", "hearing protection", "stay and watch", "no gloves"],
    )


def _round() -> dict[str, Any]:
    return operation(
        "round",
        "Round over",
        "router",
        pass_(setup=3, hand=2),
        services=["extraction"],
        good_rate=0.98,
        checklist=["Fence set", "Push blocks at hand"],
        setup_sheet=[["Bit", "6 mm roundover with bearing"], ["Feed", "against the turn, end grain first"]],
        checks=[check("sample", "Matches the sample piece", per="setup")],
        cautions=["hands clear of the bit", "eye protection", "hearing protection", "no gloves"],
    )


def _sand() -> dict[str, Any]:
    return operation(
        "sand",
        "Sand",
        "sander",
        pass_("120", setup=1, hand=3),
        pass_("180", setup=1, hand=2),
        cautions=["dust mask", "hearing protection"],
        uses=[{"supply": "sanding discs", "each": 0.5}],
    )


def _oil() -> dict[str, Any]:
    return operation(
        "oil",
        "Oil",
        "finishing",
        pass_(size="run", pieces=12, hand=2),
        wait=wait("dry", 720, rack=1),
        cautions=["rags", "nitrile gloves", "air the room"],
        uses=[{"supply": "hard oil", "each": 15, "unit": "ml"}],
        finish="hard-oil",
    )


def _pack() -> dict[str, Any]:
    return operation("pack", "Inspect and pack", "table", pass_(hand=2), uses=[{"supply": "cartons", "each": 1}])
