"""Which trays get a card, and which print of it each one is."""

from collections.abc import Callable, Iterable, Mapping

from runboard.floor.changing.runs import new_event
from runboard.floor.long_work import LongWork, TaskSeen
from runboard.floor.pressing.taps import record_events
from runboard.floor.warm import catch_up, find_run
from runboard.floor.workshop import Workshop
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.numbers import whole_number


def full_trays(run: RunState) -> tuple[str, ...]:
    """The trays that hold pieces, whatever became of those: one that was merged away needs no card."""
    return tuple(tray.id for tray in run.trays.values() if tray.in_process or tray.good)


def named_trays(run: RunState, text: str) -> tuple[str, ...]:
    """The trays that ``1,2,5-8`` names, each once; all that hold pieces where it names none.

    Refused 'trays unreadable', 'tray unknown'.
    """
    parts = [part.strip() for part in text.replace(";", ",").split(",") if part.strip()]
    found = dict.fromkeys(tray for part in parts for tray in _range(run, part))
    for tray in found:
        if tray not in run.trays:
            raise Refused("tray unknown", tray=tray)
    return tuple(found) or full_trays(run)


def _range(run: RunState, part: str) -> Iterable[str]:
    first, dash, last = part.partition("-")
    if part in run.trays or not dash:
        return (part,)
    begin, end = whole_number(first), whole_number(last)
    if begin is None or end is None or begin > end:
        raise Refused("trays unreadable", text=part[:40])
    return (str(tray) for tray in range(begin, min(end, begin + len(run.trays)) + 1))


def next_prints(run: RunState, trays: Iterable[str]) -> dict[str, int]:
    """Which print of its card each tray gets next."""
    return {tray: run.trays[tray].print + 1 for tray in trays}


def prints_to_make(run: RunState, trays: Iterable[str], travellers: bool) -> dict[str, int]:
    """The prints that an order of cards makes; none where no ``travellers`` are in it. Refused 'run closed'."""
    if run.state != "open":
        raise Refused("run closed", run=run.name, state=run.state)
    return next_prints(run, trays) if travellers else {}


def begin_prints(
    workshop: Workshop,
    run: str,
    prints: Mapping[str, int],
    begin: Callable[[], TaskSeen | None],
    work: LongWork,
    person: str,
) -> TaskSeen:
    """Let cards be made that are laid out as these ``prints``, and note them.

    Refused 'cards busy' where somebody printed the same cards meanwhile, or too much is waiting; then none is noted.
    """
    with workshop.lock:
        found = find_run(workshop, run)
        still = not prints or prints_to_make(found, prints, travellers=True) == prints
        task = begin() if still else None
        if task is None:
            raise Refused("cards busy")
        try:
            note_prints(workshop, run, prints, person)
        except BaseException:
            work.end(task.id)
            raise
    return task


def note_prints(workshop: Workshop, run: str, prints: Mapping[str, int], person: str = "") -> None:
    """These cards are printed. Refused where the run is over, and then none is noted."""
    with workshop.lock:
        catch_up(workshop)
        made = [
            new_event(workshop, "card printed", {"print": number}, run=run, tray=tray, person=person, device="server")
            for tray, number in prints.items()
        ]
        if made:
            record_events(workshop, made)
