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
            note="Each person's day is added up as information. It is never a measure of what does no harm.",
        ),
        FormPart("", "money"),
    ),
    Station: (
        FormPart("", "name kind room services"),
        FormPart("Watching it", "watch_usual watch_from watch_every_minutes", folded=True),
        FormPart("Noise and eyewear", "noise_db eyewear", folded=True),
        FormPart("Quiet hours", "quiet", folded=True),
        FormPart(
            "How it moves",
            "motion",
            folded=True,
            note="Its manual says it, or its control does. The times of its programs are reckoned with this.",
        ),
        FormPart("What it costs", "hour_rate", folded=True),
    ),
    Program: (
        FormPart("", "station product step loads"),
        FormPart(
            "The stock",
            "stock_length stock_width stock_thickness",
            folded=True,
            note="What is cut beyond it is said.",
        ),
        FormPart("How the machine moves", "rapid accel corner", folded=True, note="Empty: as its station says."),
    ),
    Engraving: (
        FormPart("", "station product step jig_fulls pieces"),
        FormPart("Places", "columns rows"),
        FormPart(
            "Without a drawing",
            "mark_width mark_height pitch_x pitch_y filled line",
            folded=True,
            note="Boxes of this size, one on each place. With a drawing they do not count.",
        ),
        FormPart("The drawing", "apart left_out", folded=True),
        FormPart(
            "How the head moves",
            "speed accel spacing run_up trims rapid trace_speed",
            folded=True,
            note="Empty: as its station says.",
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
        FormPart("Good ones and started ones", "start good_rate certainty", folded=True),
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
            "What it is made of",
            "piece",
            folded=True,
            note="The size of one piece as it is cut, so that boards can be counted. No length: not said.",
        ),
    ),
    StockQuestion: (
        FormPart("", "product pieces length width thickness grain"),
        FormPart("Room between and around", "gap margin tabs"),
        FormPart("Boards", "wood stocks aim thorough", folded=True),
        FormPart("A board that is not written down", "own_length own_width own_thickness own_grain", folded=True),
    ),
    LengthsQuestion: (
        FormPart("", "lengths gap trim"),
        FormPart("Boards", "width thickness stocks own_length aim", folded=True),
    ),
    Screw: (
        FormPart("", "name length gauge diameter head"),
        FormPart(
            "Measured, or as its maker says",
            "root thread head_height pilot_hard pilot_soft source",
            note="Makers differ. What is left empty follows a rule, and the answer says so.",
        ),
    ),
    Insert: (
        FormPart("", "name what diameter length"),
        FormPart(
            "As its maker says, or as you found good",
            "hole depth source",
            note="Makers differ: theirs wins over any rule.",
        ),
    ),
    Drive: (
        FormPart("", "screw gauge length diameter head"),
        FormPart("What it goes through and into", "through into washer sunk"),
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
        FormPart("By the air instead", "humidity_before humidity_after celsius", folded=True),
        FormPart("A wood that is not known", "coefficient", folded=True),
    ),
    Feed: (
        FormPart("", "cutter diameter flutes rpm surface feed chip"),
        FormPart("Where it cuts", "wood station depth"),
        FormPart("What was seen", "note torn torn_of torn_in"),
        FormPart("Where to keep it", "product step", folded=True),
    ),
    Operation: (
        FormPart("", "name station attendance services guess"),
        FormPart("Loads and times", "passes jig"),
        FormPart("The wait after it", "wait", folded=True),
        FormPart("Start list", "checklist", folded=True),
        FormPart("Setup sheet", "setup_sheet", folded=True),
        FormPart("First-piece checks", "checks", folded=True),
        FormPart("Cautions", "cautions", folded=True),
        FormPart("What it uses up", "uses cutter", folded=True),
        FormPart("Turns and feed", "rpm feed", folded=True),
        FormPart("Screws that it drives", "fastenings", folded=True),
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
