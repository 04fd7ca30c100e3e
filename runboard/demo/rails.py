"""The demo's first product: entry key rails in ash with four brass hooks and an engraved house number.

Its route lets a tray of five go from the first cut to packed in eight presses: hand work that is the same for a whole
board is one load, and only what differs from tray to tray is pressed tray by tray.
"""

from typing import Any

from runboard.demo import translations
from runboard.demo.files import GAP, LENGTH, MARGIN, THICK, WIDTH
from runboard.demo.route import check, operation, pass_, steps, wait

# Hand work that is alike for every piece goes board by board: one load, one press.
BOARD_PIECES = 15


def key_rails() -> dict[str, Any]:
    """The product's record, as in the book's JSON."""
    return {
        "key": "rails",
        "name": "Entry key rails",
        "pieces_a_tray": 5,
        "wood": "ash",
        "piece": {
            "length": LENGTH,
            "width": WIDTH,
            "thickness": THICK,
            "gap": GAP,
            "margin": MARGIN,
            "tabs": 0,
            "grain": "length",
            "stocks": ["ash-panel", "ash-plank"],
        },
        "price": 34,
        "operations": [_cut(), _clean(), _sand(), _engrave(), _oil(), _hooks(), _pack()],
    }


def _cut() -> dict[str, Any]:
    return operation(
        "cut",
        "Cut",
        "cnc",
        pass_(size="board", pieces=15, setup=4, loading=2, machine=38, unloading=2),
        attendance="watched",
        services=["extraction"],
        skill="cnc",
        good_rate=0.97,
        checklist=["Zero set on the bed", "Clamps tight"],
        setup_sheet=[
            ["Program", "rail-board.ngc, version 3"],
            ["Cutter", "6 mm two-flute upcut, then 60 degree V for the edges"],
            ["Zero", "front left corner, on the bed"],
            ["Workholding", "four edge clamps, tape under the middle"],
        ],
        checks=[
            check("width", "Width of the rail", nominal=60, plus=0.3, minus=0.2),
            check("bore", "Bore for the hook", nominal=3, plus=0.1, minus=0),
        ],
        cautions=["eye protection", "hearing protection", "stay and watch", "no gloves"],
        cutter="six",
        rpm=18000,
        feed=2160,
    )


def _clean() -> dict[str, Any]:
    return operation(
        "clean",
        "Clean up",
        "bench",
        pass_(hand=1, size="run", pieces=BOARD_PIECES),
        good_rate=0.99,
        cautions=["eye protection", "dust mask"],
        instructions=steps(
            "Free the rails from the board: saw through the three tabs.",
            "Plane what is left of the tabs flush, always away from your body.",
            "Brush out the bores for the hooks, the extractor's hose beside them. The glasses stay on.",
            "Good pieces go into the tray, split ones beside it.",
        ),
        translations=translations.CLEAN,
    )


def _sand() -> dict[str, Any]:
    return operation(
        "sand",
        "Sand",
        "sander",
        pass_("120", setup=1, hand=1.5, size="run", pieces=BOARD_PIECES),
        pass_("180", setup=1, hand=1, size="run", pieces=BOARD_PIECES),
        good_rate=0.99,
        setup_sheet=[["Discs", "120 before 180, edges by hand"]],
        cautions=["dust mask", "hearing protection"],
        uses=[{"supply": "sanding discs", "each": 0.2}],
        instructions=steps(
            "Connect the extraction and switch it on, mask on.",
            "120 first, then 180: the faces with the sander, along the grain.",
            "Break the edges by hand, two strokes will do.",
            "Hold it against the light: no scratch across the grain is left.",
        ),
        translations=translations.SAND,
    )


def _engrave() -> dict[str, Any]:
    return operation(
        "engrave",
        "Engrave",
        "laser",
        pass_(size="jig", pieces=5, setup=3, loading=2, machine=14, unloading=1),
        attendance="watched",
        good_rate=0.97,
        personal=True,
        skill="laser",
        checklist=["Lens clean", "Air assist on", "Jig seated"],
        setup_sheet=[
            ["Program", "number-jig.svg, version 5"],
            ["Power and speed", "62 %, 250 mm/s"],
            ["Focus", "7 mm above the face"],
            ["Jig", "five places, numbered from the left"],
        ],
        checks=[check("depth", "Depth of the number", nominal=0.5, plus=0.15, minus=0.1)],
        cautions=["stay and watch", "eye protection", "exhaust and air on"],
        jig="numbers",
    )


def _oil() -> dict[str, Any]:
    return operation(
        "oil",
        "Oil",
        "finishing",
        pass_(hand=0.8, size="run", pieces=BOARD_PIECES),
        good_rate=0.99,
        wait=wait("dry", 720, rack=1),
        cautions=["rags", "nitrile gloves", "air the room"],
        uses=[{"supply": "hard oil", "each": 6, "unit": "ml"}],
        finish="hard-oil",
        instructions=steps(
            "Gloves on, both doors open, the can for rags at hand.",
            "Bring the oil on thinly, and do not flood the number.",
            "After ten minutes wipe it off until nothing shines.",
            "Stand the pieces on the rack so that none touches another.",
            "Every rag goes into the can of water, lid on. Never on a heap.",
        ),
        translations=translations.OIL,
    )


def _hooks() -> dict[str, Any]:
    return operation(
        "hooks",
        "Fit hooks",
        "bench",
        pass_(setup=1, hand=2, size="run", pieces=BOARD_PIECES),
        good_rate=0.99,
        checks=[check("hook", "Hook stands square, screw does not show", per="run")],
        cautions=["eye protection"],
        uses=[{"supply": "brass hooks", "each": 4}, {"supply": "brass screws 3 x 16", "each": 4}],
        fastenings=[{"screw": "s3x16", "through": 2, "into": THICK, "margin": 3, "washer": 0}],
        instructions=steps(
            "Lay the rail into the jig, number up.",
            "Start the four hooks by hand, then drive them at torque 3.",
            "Are they square? Does no screw come through the back?",
        ),
        translations=translations.HOOKS,
    )


def _pack() -> dict[str, Any]:
    return operation(
        "pack",
        "Inspect and pack",
        "table",
        pass_(hand=2),
        uses=[{"supply": "cartons", "each": 1}],
    )
