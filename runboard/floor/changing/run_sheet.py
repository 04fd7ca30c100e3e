"""Looking a run through before it starts: what is found, and somebody's initials to go past it."""

from runboard.floor.changing.runs import new_event
from runboard.floor.looking.at_hand import shop_now
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.plan.before.finding import BeforeRun
from runboard.plan.before.looked_at import LookedAt
from runboard.plan.before.looks import LOOKS
from runboard.plan.before.run_sheet import Checked, RunSheet, run_sheet
from runboard.run.refusal import Refused
from runboard.shop.hours import local_day

MOST_INITIALS = 8


def run_sheet_of(workshop: Workshop, run: str, looked: LookedAt | None = None) -> RunSheet:
    """All that is found of a run now; ``looked`` are the files that were looked at. Refused 'run unknown'."""
    with workshop.lock:
        found = find_run(workshop, run)
    book, state = shop_now(workshop)
    day = local_day(workshop.clock.now(), book.time_zone)
    asked = BeforeRun(book, state, found, estimates_now(workshop), day, looked or LookedAt())
    return run_sheet(asked, LOOKS)


def pass_look(
    workshop: Workshop,
    run: str,
    check: str,
    found: str,
    initials: str,
    person: str = "",
    looked: LookedAt | None = None,
) -> None:
    """Somebody looked at what a check found, and goes on; ``found`` is the mark of what stood before them.

    Refused 'run unknown', 'run closed', 'initials missing', 'look changed' where something else is found by now, 'look stops'
    where it has to be mended.
    """
    initials = initials.strip()[:MOST_INITIALS]
    if not initials:
        raise Refused("initials missing")
    with workshop.lock:
        at = _found(run_sheet_of(workshop, run, looked), check)
        if at is None or at.finding.mark != found:
            raise Refused("look changed")
        if at.finding.level == "stop":
            raise Refused("look stops")
        if at.is_open:
            body = {"check": check, "found": found, "initials": initials}
            record_events(workshop, [new_event(workshop, "look passed", body, run=run, person=person, device="server")])


def take_look_back(workshop: Workshop, run: str, check: str, person: str = "") -> None:
    """Nobody went past it, after all. Refused 'run unknown', 'look not passed'."""
    with workshop.lock:
        catch_up(workshop)
        passed = find_run(workshop, run).passed.get(check)
        if passed is None:
            raise Refused("look not passed")
        undone = new_event(workshop, "event undone", {"event": passed.event}, person=person, device="server")
        record_events(workshop, [undone])


def _found(sheet: RunSheet, check: str) -> Checked | None:
    return next((each for each in sheet.checked if each.finding.check == check), None)
