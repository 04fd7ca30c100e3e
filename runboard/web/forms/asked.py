"""The fields by which a form asks for a record of the book, as its dataclass declares them (``shop/record``): name, kind,
choices, what an empty one stands for. What they are called stands in the catalogue (``en.forms.ftl``), and which of them stand
together here; one that is named nowhere comes in the first part of its form, under its own name."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from runboard.plan.feeds.feeding import Feed
from runboard.plan.fits.driving import Drive
from runboard.plan.fits.moving import Swell
from runboard.plan.fits.seating import Seat
from runboard.plan.money.question import OtherCost, Price
from runboard.plan.program.question import Program
from runboard.plan.stock.cut_list import CutLength, LengthsQuestion
from runboard.plan.stock.question import StockQuestion
from runboard.shop import record as declared
from runboard.shop.book import STATION_KINDS, Book, Person, Station
from runboard.shop.care import SELDOM, SELDOM_HEAT
from runboard.shop.durations import format_duration
from runboard.shop.fasteners import Fastening, Insert, Screw
from runboard.shop.finish import Finish
from runboard.shop.hours import Hours
from runboard.shop.machines import Cutter, GoodFeed, Motion
from runboard.shop.product import Check, Operation, Pass, Product, Use
from runboard.shop.record import to_json
from runboard.shop.stocked import Piece, Stock, Supply
from runboard.web.forms.field import Choices, Field, Kind, Section
from runboard.words.sentences import catalogue, message_name, sentence

Record = dict[str, Any]

_KINDS: Mapping[declared.Kind, Kind] = {
    "text": "text", "long": "long", "picture": "picture", "date": "date", "flag": "tick", "count": "count",
    "number": "number", "share": "percent", "length": "length", "minutes": "minutes", "wait": "minutes", "time": "time",
    "closing": "time", "texts": "lines", "keys": "several", "choices": "several", "choice": "choice", "key": "choice",
    "records": "rows", "pairs": "rows",
}  # fmt: skip
# What has forms of its own, and what nobody is asked.
_ELSEWHERE: Mapping[type, str] = {
    Book: "revision rooms walks services stations people jobs finishes products stocks supplies screws inserts cutters "
    "feeds jigs",
    Product: "operations",
    Pass: "reckoned",
    Program: "factor factor_times factor_programs",
    Person: "removed",
    Price: "times counted",  # what the log taught
}
# What is short stands beside the next in its row.
_HALF: Mapping[type, str] = {
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
    GoodFeed: "rpm feed",
    Drive: "gauge length washer sunk through into wood gravity",
    Seat: "diameter length hole depth thickness sunk edge wall",
    Swell: "before after humidity_before humidity_after",
    Feed: "diameter flutes rpm surface feed chip",
    Supply: "unit pack price low",
    Cutter: "diameter flutes life life_in",
    Price: "pieces price margin margin_of fee_share fee_each",
    OtherCost: "amount each",
}
_PAIR = (Field("label", "What", hint="Program, cutter, zero …"), Field("text", "How", "long"))


@dataclass(frozen=True)
class FormPart:
    """A part of a form: its heading, and the names of its fields."""

    title: str = ""
    names: str = ""
    folded: bool = False
    note: str = ""


_PARTS: Mapping[type, tuple[FormPart, ...]] = {
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
        FormPart("What was seen", "note torn torn_in", folded=True),
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


def form_of(record: type, book: Record, key: str = "", own: Iterable[Field] = ()) -> list[Section]:
    """The form of a record of this kind, for what is in this book. ``key`` is that of the record itself, which is not among
    its own choices; ``own`` are fields of the form's own, or in place of one of the record's."""
    fields = {field.name: field for field in (*fields_for(record, book, key), *own)}
    parts = _PARTS.get(record, (FormPart(),))
    placed = []
    for part in parts:
        named = [at for name in part.names.split() for at in fields if at == name or at.startswith(f"{name}.")]
        placed.append([fields.pop(name) for name in named])
    placed[0] += fields.values()
    return [Section(part.title, tuple(some), part.folded, part.note) for part, some in zip(parts, placed, strict=True)]


def fields_for(record: type, book: Record, key: str = "", within: str = "") -> Iterator[Field]:
    """The fields that ask for a record, their names after ``within``."""
    for name, field in declared.fields_of(record).items():
        if field.of.kind == "key" or name in _ELSEWHERE.get(record, "").split():
            continue
        if field.kind == "by choice":  # a part of the form each, made where the choices are known
            continue
        if field.kind == "record":
            yield from fields_for(field.inner, book, within=f"{within}{name}.")
        elif field.kind == "counts":
            for thing, called in named(book, field.of.refers):
                label = f"{_label(record, name)}: {called}"
                yield Field(f"{within}{name}.{thing}", label, "count", empty=None)
        else:
            yield _field(record, field, book, key, within)


def _field(record: type, field: declared.RecordField, book: Record, key: str, within: str) -> Field:
    return Field(
        name=f"{within}{field.name}",
        label=_label(record, field.name),
        kind=_KINDS[field.kind],
        hint=_said(record, field.name, "hint"),
        choices=_choices(record, field, book, key),
        rows=_rows(field, book),
        empty=_empty(record, field),
        wrong=_said(record, field.name, "wrong"),
        one=_said(record, field.name, "one") or field.noun,
        ending=field.kind == "closing",
        half=field.name in _HALF.get(record, "").split(),
    )


def _rows(field: declared.RecordField, book: Record) -> tuple[Field, ...]:
    if field.kind != "records":
        return _PAIR if field.kind == "pairs" else ()
    key = (Field("key", "", "kept"),) if "key" in declared.fields_of(field.inner) else ()
    return (*key, *fields_for(field.inner, book))


def _empty(record: type, field: declared.RecordField) -> Any:
    """What an empty input stands for: null where the field may be, a length's usual one, no time where none is usual, none used up
    a piece, nought where that is the default, of how a machine moves what is usual; else the empty text, which the book's reader
    refuses where there must be something."""
    if field.default is None:
        return None
    if record is Motion:
        return to_json(Motion())[field.name]
    if field.kind == "length" and field.default is not declared.REQUIRED:
        return field.default
    is_none = field.kind == ("number" if field.default is declared.REQUIRED else "minutes")
    is_nought = field.kind in ("count", "number", "length", "share") and field.default == 0
    return 0 if is_none or is_nought else ""


def _choices(record: type, field: declared.RecordField, book: Record, key: str) -> Choices:
    nothing = _said(record, field.name, "nothing")
    said = named(book, field.of.refers, key) if field.of.refers else ()
    words = tuple(
        (word, choice_word(record, field.name, word))
        for word in sorted(field.choices, key=lambda word: word != field.default)
    )
    return ((("", nothing),) if nothing else ()) + said + words


def named(book: Record, noun: str, but: str = "") -> Choices:
    """What the shop has of a kind of thing, by key and name, but the one with this key."""
    places = [name for name, of in declared.fields_of(Book).items() if of.kind == "records" and of.noun == noun]
    return tuple((thing["key"], thing["name"]) for name in places for thing in book[name] if thing["key"] != but)


def choice_word(record: type, name: str, word: str) -> str:
    """What a form calls a stored word."""
    return _said(record, name, word) or word


def _label(record: type, name: str) -> str:
    message = message_name("ask", f"{record.__name__} {name}")
    plain = name.removesuffix("_minutes").replace("_", " ").capitalize()
    return sentence(message) if catalogue("en").has_message(message) else plain


def _said(record: type, name: str, what: str) -> str:
    return sentence(message_name("ask", f"{record.__name__} {name} {what}"), {"usual": _usual_watching()})


@cache
def _usual_watching() -> str:
    """'CNC router 10 min; laser 2 min; oven, heater 2 min. At what heats 5 min at most, elsewhere 30 min.'"""
    said = [
        f"{sentence(message_name('ask', f'station kind {key}')).partition(':')[0] or key} {format_duration(kind.watch_every)}"
        for key, kind in STATION_KINDS.items()
        if kind.watch_every is not None
    ]
    heat, other = format_duration(SELDOM_HEAT), format_duration(SELDOM)
    return f"{'; '.join(said)}. At what heats {heat} at most, elsewhere {other}."
