"""What a guest's page looks at: the current operation of its tray, and which of the presses on offer would be taken."""

from collections.abc import Callable
from typing import Any

from runboard.floor.changing.runs import new_event
from runboard.floor.letting_in.guest_rights import guest_person, name_of
from runboard.floor.letting_in.helper import TrayWork, with_bad, work_at
from runboard.floor.pressing.access import GUEST
from runboard.floor.pressing.taps import Sender, why_refused
from runboard.floor.warm import catch_up
from runboard.floor.workshop import Workshop
from runboard.run.calls.device import Session
from runboard.run.fold.state import ShopState
from runboard.run.refusal import Refused
from runboard.shop.book import Book

Record = dict[str, Any]
# Words it: of the shop, its book, the tray's work, the guest's person, and what says why a press would be refused.
Tell = Callable[[ShopState, Book, TrayWork, str, Callable[[Record], Refused | None]], Record]


def work_now(workshop: Workshop, run: str, tray: str) -> TrayWork | None:
    """The current operation of a tray; None where there is no such tray."""
    with workshop.lock:
        catch_up(workshop)
        work = work_at(workshop.ledger.state, run, tray)
        return work and with_bad(work, workshop.ledger.held)


def who_has(workshop: Workshop, work: TrayWork) -> str:
    """Who alone may begin the tray's step, by name; '' where anyone may."""
    to = str(work.given.get("to", ""))
    return name_of(workshop.ledger.state, workshop.book, to) or to


def look_as_guest(workshop: Workshop, session: Session, tell: Tell) -> Record | None:
    """What ``tell`` makes of it, with the log's last arrival as ``seq``; None where the tray is gone."""
    device, person = session.device, guest_person(session.device.id)
    sender = Sender(device.id, GUEST, (device.run, device.tray))
    with workshop.lock:
        work = work_now(workshop, device.run, device.tray)
        if work is None:
            return None
        about: Record = {"run": work.run.id, "person": person, "load": work.load_id}
        if work.step is not None:
            about |= {"operation": work.step.key, "station": work.step.operation.station}

        def refused(draft: Record) -> Refused | None:
            made = new_event(workshop, draft["kind"], draft["body"], **about, revision=work.tray.revision)
            return why_refused(workshop, made, sender)

        record = tell(workshop.ledger.state, workshop.book, work, person, refused)
        return {**record, "seq": workshop.ledger.last_seq}


def stations_shown(workshop: Workshop, device_id: str) -> list[str]:
    """The names of the stations that a guest was shown how to run."""
    catch_up(workshop)
    seen = workshop.ledger.state.people.get(guest_person(device_id))
    return [station.name for key in (seen.shown if seen else ()) if (station := workshop.book.station(key))]
