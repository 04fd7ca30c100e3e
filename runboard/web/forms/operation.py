"""The forms of a product and of one operation: everything that an operation can ask."""

from typing import Any

from runboard.web.forms.care import usual_watching
from runboard.web.forms.field import Choices, Field, Section
from runboard.web.forms.instructions import instructions_section, translation_sections, translations_said
from runboard.web.forms.words import ATTENDANCE, PER, SIZES, WAITS

Record = dict[str, Any]

_PERCENT = "Write a number from 1 to 100."


def product_form() -> list[Section]:
    """A product without its route."""
    return [
        Section(
            "",
            (
                Field("name", "Name"),
                Field("pieces_a_tray", "Pieces a tray", "count"),
                Field("wood", "Wood"),
                Field("picture", "Picture", "picture", empty=None),
            ),
        )
    ]


def operation_form(book: Record, operation: Record) -> list[Section]:
    """One operation as it is now, for the stations, services and finishes of this book's record."""
    return [
        Section("", _work(book)),
        Section("Loads and times", (Field("passes", "Passes", "rows", rows=_PASS, one="pass", hint=_PASSES),)),
        Section("The wait after it", _wait(book), folded=True),
        Section("Start list", (_lines("checklist", "To tick before the machine starts"),), folded=True),
        Section(
            "Setup sheet",
            (Field("setup_sheet", "Setup sheet", "rows", rows=_SHEET, one="line", hint=_SHEETS),),
            folded=True,
        ),
        Section("First-piece checks", (Field("checks", "Checks", "rows", rows=_CHECK, one="check"),), folded=True),
        Section("Cautions", (_lines("cautions", "Said before the step"),), folded=True),
        Section("What it uses up", (Field("uses", "Uses", "rows", rows=_USE, one="supply"),), folded=True),
        Section("Skill, texts, good rate", _more(), folded=True),
        Section("Finish, watching", _care(book), folded=True),
        instructions_section(),
        *translation_sections(operation),
    ]


_PASSES = "One go over the pieces is enough for most. A grit or a side each is a pass of its own."
_SHEETS = "Program, cutter, zero, workholding, power, speed, focus."


def _named(things: list[Record]) -> Choices:
    return tuple((one["key"], one["name"]) for one in things)


def _lines(name: str, label: str) -> Field:
    return Field(name, label, "lines", hint="One a line.")


def _work(book: Record) -> tuple[Field, ...]:
    return (
        Field("name", "Name"),
        Field("station", "Station", "choice", choices=_named(book["stations"])),
        Field("attendance", "While it runs", "choice", choices=ATTENDANCE),
        Field("services", "It draws on", "several", choices=_named(book["services"])),
        Field("guess", "These times are a guess", "tick"),
    )


_PASS = (
    Field("key", "", "kept"),
    Field("name", "Name", hint="The grit or the side: 120, side A."),
    Field("size", "A load is", "choice", choices=SIZES, half=True),
    Field("pieces", "Pieces on it", "count", hint="On a board, in a jig.", empty=None, half=True),
    Field(
        "setup_minutes", "Setup", "minutes", hint="Minutes, once while the station stays on this.", empty=0, half=True
    ),
    Field("loading_minutes", "Loading", "minutes", hint="Minutes a load.", empty=0, half=True),
    Field("machine_minutes", "Machine time", "minutes", hint="Minutes a load.", empty=0, half=True),
    Field("unloading_minutes", "Unloading", "minutes", hint="Minutes a load.", empty=0, half=True),
    Field("hand_minutes", "Hand time", "minutes", hint="Minutes a piece: 3, 90 s.", empty=0, half=True),
)
_SHEET = (Field("label", "What", hint="Program, cutter, zero …"), Field("text", "How", "long"))
_CHECK = (
    Field("key", "", "kept"),
    Field("text", "What to look at"),
    Field("per", "How often", "choice", choices=PER),
    Field("nominal", "Measure", "length", hint="5 1/2 in, 12.5 mm; empty for 'matches the sample piece'.", empty=None),
    Field("plus", "May be more by", "length", empty=None, half=True),
    Field("minus", "May be less by", "length", empty=None, half=True),
)
_USE = (
    Field("supply", "What", hint="Screws, oil, discs."),
    Field("each", "So much a piece", "number", empty=0, half=True),
    Field("unit", "Unit", hint="pieces, ml; may stay empty.", half=True),
)


def _wait(book: Record) -> tuple[Field, ...]:
    holds = tuple(
        Field(f"wait.holds.{one['key']}", f"It holds so many of: {one['name']}", "count", empty=None)
        for one in book["services"]
    )
    return (
        Field("wait.why", "Afterwards the pieces", "choice", choices=WAITS),
        Field("wait.least_minutes", "At least", "minutes", hint="Minutes, or 12 h, 3 days, overnight."),
        Field(
            "wait.latest_minutes",
            "At most, from the first piece",
            "minutes",
            hint="Where it must be wiped off before it turns tacky. Else leave it empty.",
            empty=None,
        ),
        *holds,
    )


def _more() -> tuple[Field, ...]:
    return (
        Field("skill", "Skill that it needs", hint="As it is named with a person. Empty: anybody.", empty=None),
        Field("personal", "From here each piece carries a text of its own", "tick"),
        Field(
            "good_rate", "Of 100 pieces so many come good", "percent", hint="Your guess, until enough are counted.",
            empty=None, wrong=_PERCENT,
        ),
    )  # fmt: skip


def _care(book: Record) -> tuple[Field, ...]:
    return (
        Field(
            "finish",
            "Finish that it brings on",
            "choice",
            choices=(("", "none"), *_named(book["finishes"])),
            hint="Finishes are written down on the Shop page. At a finishing station without one, its rags count as "
            "ones that can take fire by themselves.",
            empty=None,
        ),
        Field(
            "watch_every_minutes",
            "Ask to look at it every",
            "minutes",
            hint=f"Empty: as the station says, else as its kind does. {usual_watching()}",
            empty=None,
        ),
    )


def operation_shown(operation: Record) -> Record:
    """What the form shows of an operation's record."""
    sheet = [{"label": label, "text": text} for label, text in operation.get("setup_sheet", ())]
    return {**operation, "setup_sheet": sheet}


def operation_said(said: Record) -> Record:
    """The operation's record that a form says; its keys are put in by whoever saves it."""
    wait = said["wait"]
    holds = {key: count for key, count in wait.get("holds", {}).items() if count is not None}
    return {
        **said,
        "wait": {**wait, "holds": holds} if wait["why"] else None,
        "setup_sheet": [[one["label"], one["text"]] for one in said["setup_sheet"]],
        "passes": [{**one, "name": one["name"] or "1"} for one in said["passes"]],
        "translations": translations_said(said["translations"]),
    }
