"""What the forms of the shop ask for the sake of care: finishes, watching, noise, eyewear, forbidden materials."""

from collections.abc import Mapping
from typing import Any

from runboard.shop.book import STATION_KINDS
from runboard.shop.care import SELDOM, SELDOM_HEAT
from runboard.shop.durations import format_duration
from runboard.web.forms.field import Choices, Field, Section
from runboard.web.forms.words import KINDS, in_words

Record = dict[str, Any]

COMMON_PRACTICE = "common practice, read the label"

# Level of a day of eight hours, and by how many dB it rises as the hours halve.
NOISE_RULES: Mapping[str, tuple[float, float]] = {
    "85/3": (85, 3),
    "90/5": (90, 5),
    "85/5": (85, 5),
    "80/3": (80, 3),
}
_NOISE_WORDS: Choices = (
    ("85/3", "85 dB, 3 dB: NIOSH"),
    ("90/5", "90 dB, 5 dB: OSHA, limit"),
    ("85/5", "85 dB, 5 dB: OSHA, action level"),
    ("80/3", "80 dB, 3 dB: EU, lower action value"),
    ("own", "own figures, below"),
)


def finish_form() -> list[Section]:
    """A finish as its label and data sheet say."""
    return [
        Section(
            "",
            (
                Field("name", "Name", hint="As on the tin."),
                Field(
                    "sheet_date",
                    "Label or data sheet of",
                    "date",
                    hint=f"Without a date the figures count as {COMMON_PRACTICE}.",
                ),
            ),
        ),
        Section("Times", _times(), note="Dry to the touch is not cured. Cold and damp make all of them longer."),
        Section("Rags and air", _rags_and_air()),
    ]


def _times() -> tuple[Field, ...]:
    return (
        Field("recoat_minutes", "Next coat after", "minutes", hint="As in 12 h, 2 days.", empty=None),
        Field("handle_minutes", "May be handled after", "minutes", empty=None),
        Field("cure_minutes", "Cured through after", "minutes", hint="As in 14 days. One that never cures: empty.", empty=None),
    )  # fmt: skip


def _rags_and_air() -> tuple[Field, ...]:
    return (
        Field(
            "self_heats",
            "Its rags can take fire by themselves",
            "tick",
            hint="Linseed, tung and most oils that dry heat up as they do. Untick it only where the label or sheet says so.",
        ),
        Field(
            "solvent",
            "It has a solvent in it",
            "tick",
            hint="While that is in the air: no laser, sanding, heater or charger in the room.",
        ),
        Field("airing_minutes", "The solvent is in the air for", "minutes", hint="As in 12 h.", empty=None),
        Field("ventilation", "Ventilation", hint="As the label says: both doors open, fan outdoors."),
    )


def watching() -> Field:
    """How often somebody who watches a station is asked."""
    return Field(
        "watch_every_minutes",
        "Ask to look at it every",
        "minutes",
        hint=f"Empty: the usual of its kind. {usual_watching()} An answer shows that somebody answered; it is no fire watch.",
        empty=None,
    )


def usual_watching() -> str:
    """'CNC router 10 min; laser 2 min; oven, heater 2 min. At what heats 5 min at most, elsewhere 30 min.'"""
    said = [
        f"{in_words(KINDS, key)} {format_duration(kind.watch_every)}"
        for key, kind in STATION_KINDS.items()
        if kind.watch_every is not None
    ]
    heat, other = format_duration(SELDOM_HEAT), format_duration(SELDOM)
    return f"{'; '.join(said)}. At what heats {heat} at most, elsewhere {other}."


def station_care() -> Section:
    """A station's noise and eyewear."""
    return Section(
        "Noise and eyewear",
        (
            Field(
                "noise_db",
                "Noise at the ear, dB(A)",
                "number",
                hint="As measured there at work, or from its manual. It adds up each person's day, as information.",
                empty=None,
            ),
            Field("eyewear", "Eyewear", hint="For a laser: wavelength and optical density, as its manual says."),
        ),
        folded=True,
    )


def limits_form() -> list[Section]:
    """Materials that no laser may touch, and the rule by which noise is added up."""
    return [
        Section(
            "Never in a laser",
            (
                Field(
                    "forbidden",
                    "Forbidden materials",
                    "lines",
                    hint="One a line. Their fumes poison or corrode. What is not known does not go in either: unknown means no.",
                ),
            ),
        ),
        Section(
            "Noise",
            (
                Field(
                    "noise_rule",
                    "Add up by",
                    "choice",
                    choices=_NOISE_WORDS,
                    hint="The level that eight hours a day may have, and by how much it rises as the hours halve.",
                ),
                Field("noise_limit_db", "Level of an eight-hour day, dB(A)", "number", hint="For own figures."),
                Field("noise_exchange_db", "Hours halve every so many dB", "number", hint="For own figures."),
            ),
            note="Each person's day is added up as information. It is never a measure of what does no harm.",
        ),
    ]


def limits_shown(record: Record) -> Record:
    """What that form shows of the book's record."""
    said = (record["noise_limit_db"], record["noise_exchange_db"])
    rule = next((name for name, figures in NOISE_RULES.items() if figures == said), "own")
    return {**record, "noise_rule": rule}


def limits_said(said: Record) -> Record:
    """The part of the book's record that it says: a rule that is chosen wins over the figures below it."""
    figures = NOISE_RULES.get(said.pop("noise_rule"))
    if figures is not None:
        said["noise_limit_db"], said["noise_exchange_db"] = figures
    return said
