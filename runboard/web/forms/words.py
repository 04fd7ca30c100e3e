"""The words that forms use for what the book keeps as stored words."""

from runboard.web.forms.field import Choices, Field

KINDS: Choices = (
    ("bench", "bench"),
    ("cnc", "CNC router"),
    ("hand cutter", "cutter worked by hand: router table, saw, planer"),
    ("sander", "sander"),
    ("laser", "laser"),
    ("heater", "oven, heater"),
    ("finishing", "finishing: oil, varnish"),
    ("clamping", "clamping, glue-up"),
    ("other machine", "other machine"),
)
ACCESS: Choices = (("lead", "lead: everything"), ("crew", "helper: the Now screen"))
DAYS: Choices = (
    ("mon", "Monday"),
    ("tue", "Tuesday"),
    ("wed", "Wednesday"),
    ("thu", "Thursday"),
    ("fri", "Friday"),
    ("sat", "Saturday"),
    ("sun", "Sunday"),
)
UNITS: Choices = (("mm", "millimetres"), ("in", "inches"))
LATE_COUNTS: Choices = (
    ("minutes", "least lateness altogether"),
    ("lines", "fewest late order lines"),
)
ATTENDANCE: Choices = (
    ("hands-on", "hands on: somebody works at it all the time"),
    ("watched", "stay and watch: somebody keeps it in sight"),
    ("none", "nothing asked: nothing there cuts or heats"),
)
SIZES: Choices = (
    ("tray", "a tray"),
    ("piece", "one piece"),
    ("jig", "a jig-full"),
    ("board", "a board"),
    ("run", "the whole run"),
)
WAITS: Choices = (
    ("", "no wait"),
    ("dry", "dry"),
    ("cure", "cure"),
    ("clamp", "stay in clamps"),
    ("cool", "cool"),
    ("settle", "settle"),
)
PER: Choices = (
    ("setup", "after each setup, and each day"),
    ("load", "with each load"),
    ("run", "once a run"),
)


def in_words(choices: Choices, value: str) -> str:
    """What a stored word is called on a screen, as far as the colon."""
    return next((label.partition(":")[0] for word, label in choices if word == value), value)


def hours(name: str, label: str, hint: str) -> Field:
    """A field of windows of the week."""
    window = (
        Field("days", "Days", "several", choices=DAYS),
        Field("from", "From", "time", half=True),
        Field("to", "To", "time", hint="0:00 is the end of the day.", ending=True, half=True),
    )
    return Field(name, label, "rows", hint=hint, rows=window, one="time of the week")
