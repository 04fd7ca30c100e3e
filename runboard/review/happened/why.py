"""Why somebody, a machine or a tray waited: a closed list of codes, each said by ``review-waits-…``."""

NO_LOAD = "no load"  # the pieces were not there yet
MACHINE = "machine"  # all that was left hung on a running machine
OTHER_TRAYS = "other trays"  # a tray waited for those that went on with it
STATION_TAKEN = "station taken"
SERVICE_TAKEN = "service taken"
DRYING = "drying"
RESTING = "resting"  # in clamps, cooling, settling
AIR = "air"  # dust, a wet finish or a solvent in the room
SUPPLY = "supply"
HELD = "held"
FIRST_PIECE = "first piece"
OUT_OF_USE = "out of use"
QUIET = "quiet hours"
STOPPED = "stopped"
PUT_ASIDE = "put aside"
NEEDS_UNLOADING = "needs unloading"
NO_PERSON = "no person"  # ready, but everybody's hands were elsewhere
NOBODY_THERE = "nobody there"
OTHER_ROOM = "other room"  # ready, but whoever was free was in another room
START_UP = "start-up"
TIDY_UP = "tidy-up"
NOT_SAID = "not said"  # ready, with somebody free: nobody said why
NOT_KNOWN = "not known"

WHY_WAITING = (
    NO_LOAD, MACHINE, OTHER_TRAYS, STATION_TAKEN, SERVICE_TAKEN, DRYING, RESTING, AIR, SUPPLY, HELD, FIRST_PIECE,
    OUT_OF_USE, QUIET, STOPPED, PUT_ASIDE, NEEDS_UNLOADING, NO_PERSON, NOBODY_THERE, OTHER_ROOM, START_UP, TIDY_UP,
    NOT_SAID, NOT_KNOWN,
)  # fmt: skip

_OF = "\n"


def because_of(why: str, key: str) -> str:
    """A reason with what it is about, such as the service that was taken, as it goes about in this room."""
    return f"{why}{_OF}{key}" if key else why


def parts_of(why: str) -> tuple[str, str]:
    """A code of ``WHY_WAITING``, and what it is about: '' where that goes without saying."""
    code, _, key = why.partition(_OF)
    return code, key
