"""Which fields of a record stand together in its form, what is short beside the next in its row, and what is asked elsewhere. A
record that is named nowhere here has one part with all its fields."""

from collections.abc import Mapping
from dataclasses import dataclass

from runboard.plan.engraving.question import Engraving
from runboard.plan.feeds.feeding import Feed
from runboard.plan.fits.driving import Drive
from runboard.plan.fits.moving import Swell
from runboard.plan.fits.seating import Seat
from runboard.plan.jig.question import Layout
from runboard.plan.money.question import Expense, Price
from runboard.plan.program.question import Program
from runboard.plan.stock.cut_list import CutLength, LengthsQuestion
from runboard.plan.stock.question import StockQuestion
from runboard.shop.book import Book, Person, Station
from runboard.shop.fasteners import Fastening, Insert, Screw
from runboard.shop.finish import Finish
from runboard.shop.hours import Hours
from runboard.shop.machines import Cutter, GoodFeed
from runboard.shop.product import Check, Operation, Pass, Product, Use
from runboard.shop.stocked import Piece, Stock, Supply


@dataclass(frozen=True)
class FormPart:
    """A part of a form: its heading, and the names of its fields."""

    title: str = ""
    names: str = ""
    folded: bool = False
    note: str = ""


PARTS: Mapping[type, tuple[FormPart, ...]] = {
    Book: (
        FormPart("", "name time_zone units emergency late_counts hour_rate"),
        FormPart("Standard times", "rating allowance allowance_of", folded=True),
        FormPart("Never in a laser", "forbidden"),
        FormPart(
            "Noise",
            "noise_rule noise_limit_db noise_exchange_db",
            note="Each person's day is added up as information. A low figure does not mean no harm.",
        ),
        FormPart("", "money"),
    ),
    Station: (
        FormPart("", "name kind room services"),
        FormPart("Watching", "watch_usual watch_from watch_every_minutes", folded=True),
        FormPart("Noise and eyewear", "noise_db eyewear", folded=True),
        FormPart("Quiet hours", "quiet", folded=True),
        FormPart(
            "How it moves",
            "motion",
            folded=True,
            note="See its manual or its control. Program times are worked out from this.",
        ),
        FormPart("Cost", "hour_rate", folded=True),
    ),
    Program: (
        FormPart("", "station product step loads"),
        FormPart(
            "The stock",
            "stock_length stock_width stock_thickness",
            folded=True,
            note="Cuts beyond it are pointed out.",
        ),
        FormPart("How the machine moves", "rapid accel corner", folded=True, note="Empty: as set at its station."),
    ),
    Engraving: (
        FormPart("", "station product step jig_fulls pieces"),
        FormPart("Places", "columns rows"),
        FormPart(
            "Without a drawing",
            "mark_width mark_height pitch_x pitch_y filled line",
            folded=True,
            note="One box of this size on each place. A drawing replaces them.",
        ),
        FormPart("The drawing", "apart left_out", folded=True),
        FormPart(
            "How the head moves",
            "speed accel spacing run_up trims rapid trace_speed",
            folded=True,
            note="Empty: as set at its station.",
        ),
    ),
    Layout: (
        FormPart("", "station product step name"),
        FormPart("The piece", "piece_length piece_width pieces fit clearance"),
        FormPart("Places", "columns rows gap pitch_x pitch_y margin numbers"),
        FormPart("The beam and the corner mark", "kerf corner_x corner_y"),
    ),
    Price: (
        FormPart("", "product pieces price"),
        FormPart("Good and started pieces", "start good_rate certainty", folded=True),
        FormPart("Hours and material", "hour_rate watched material_each packing_each others", folded=True),
        FormPart("Margin and fees", "margin margin_of fee_share fee_each"),
        FormPart("A new jig or tool", "tool tool_saves_minutes tool_saves_money pieces_a_month", folded=True),
    ),
    Person: (
        FormPart("", "name access skills"),
        FormPart("Usual hours", "hours"),
        FormPart("Start-up and tidy-up", "start_up_minutes tidy_up_minutes"),
    ),
    Finish: (
        FormPart("", "name sheet_date"),
        FormPart(
            "Times",
            "recoat_minutes handle_minutes cure_minutes",
            note="Dry to the touch is not cured. Cold and damp make all of them longer.",
        ),
        FormPart("Rags and air", "self_heats solvent airing_minutes ventilation"),
    ),
    Product: (
        FormPart("", "name pieces_a_tray wood picture"),
        FormPart(
            "Material",
            "piece",
            folded=True,
            note="Size of one piece as cut, to count boards. Leave the length empty if not known.",
        ),
    ),
    StockQuestion: (
        FormPart("", "product pieces length width thickness grain"),
        FormPart("Gaps and margins", "gap margin tabs"),
        FormPart("Boards", "wood stocks aim thorough", folded=True),
        FormPart("A board not in the shop’s book", "own_length own_width own_thickness own_grain", folded=True),
    ),
    LengthsQuestion: (
        FormPart("", "lengths gap trim"),
        FormPart("Boards", "width thickness stocks own_length aim", folded=True),
    ),
    Screw: (
        FormPart("", "name length gauge diameter head"),
        FormPart(
            "Measured, or from its maker",
            "root thread head_height pilot_hard pilot_soft source",
            note="Makers differ. Empty fields follow a rule, and the answer says so.",
        ),
    ),
    Insert: (
        FormPart("", "name what diameter length"),
        FormPart(
            "From its maker, or what works for you",
            "hole depth source",
            note="Makers differ: their figures win over any rule.",
        ),
    ),
    Drive: (
        FormPart("", "screw gauge length diameter head"),
        FormPart("Layers of wood", "through into washer sunk"),
        FormPart("The wood", "wood hardness gravity grain margin"),
        FormPart("Where to keep it", "product step", folded=True),
    ),
    Seat: (
        FormPart("", "insert what diameter length"),
        FormPart("Its hole", "fit glue hole depth"),
        FormPart("The wood", "thickness sunk edge wall margin"),
    ),
    Swell: (
        FormPart("", "wood width sawn room"),
        FormPart("Moisture", "before after"),
        FormPart("Or from the air", "humidity_before humidity_after celsius", folded=True),
        FormPart("A wood not in the Wood Handbook", "coefficient", folded=True),
    ),
    Feed: (
        FormPart("", "cutter diameter flutes rpm surface feed chip"),
        FormPart("Where it cuts", "wood station depth"),
        FormPart("What you saw", "note torn torn_of torn_in"),
        FormPart("Where to keep it", "product step", folded=True),
    ),
    Operation: (
        FormPart("", "name station attendance services guess"),
        FormPart("Loads and times", "passes jig"),
        FormPart("Wait afterwards", "wait", folded=True),
        FormPart("Start list", "checklist", folded=True),
        FormPart("Setup sheet", "setup_sheet", folded=True),
        FormPart("First-piece checks", "checks", folded=True),
        FormPart("Cautions", "cautions", folded=True),
        FormPart("Supplies and cutter", "uses cutter", folded=True),
        FormPart("Turns and feed", "rpm feed", folded=True),
        FormPart("Screws it drives", "fastenings", folded=True),
        FormPart("Skill, texts, good rate", "skill personal good_rate", folded=True),
        FormPart("Finish, watching", "finish watch_every_minutes", folded=True),
        FormPart("Instructions", "instructions", folded=True),
    ),
}

# What has forms of its own, and what nobody is asked.
ELSEWHERE: Mapping[type, str] = {
    Book: "revision rooms walks services stations people jobs finishes products stocks supplies screws inserts cutters "
    "feeds jigs",
    Product: "operations",
    Pass: "reckoned",
    Program: "factor factor_times factor_programs",
    Person: "removed",
    Price: "times counted",  # what the log taught
}
# What is short stands beside the next in its row.
HALF: Mapping[type, str] = {
    Hours: "from to",
    Pass: "size pieces setup_minutes loading_minutes machine_minutes unloading_minutes hand_minutes",
    Check: "plus minus",
    Use: "each unit",
    Stock: "length width thickness have price",
    Piece: "length width thickness gap margin tabs",
    StockQuestion: "length width thickness gap margin tabs own_length own_width own_thickness",
    CutLength: "length pieces",
    LengthsQuestion: "gap trim width thickness",
    Fastening: "through into washer sunk margin",
    Screw: "length gauge diameter root thread head_height pilot_hard pilot_soft",
    Insert: "diameter length hole depth",
    GoodFeed: "rpm feed torn torn_of",
    Drive: "gauge length washer sunk through into wood gravity",
    Seat: "diameter length hole depth thickness sunk edge wall",
    Swell: "before after humidity_before humidity_after",
    Feed: "diameter flutes rpm surface feed chip torn torn_of",
    Supply: "unit pack price low",
    Cutter: "diameter flutes life life_in",
    Price: "pieces price margin margin_of fee_share fee_each",
    Expense: "amount each",
}
