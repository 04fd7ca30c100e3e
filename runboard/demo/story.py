"""The demo's story: runs that are finished, and one in full swing that ends at the moment it is made for.

Everything is told backwards from that moment: sessions lie at the time of day that it is now, so that whoever tries
the demo at three in the morning meets a shop that works at three in the morning.
"""

from datetime import datetime, timedelta

from runboard.demo.acts import DAY, HOUR, MINUTE, SESSION, Spans, for_the_post, house_numbers, play
from runboard.demo.book import CREW, LEAD
from runboard.demo.finished import tell_finished
from runboard.demo.incidents import Incident
from runboard.demo.phone import Shopfloor, draft
from runboard.demo.worker import DemoWorker
from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.changing.supplies import count_supplies
from runboard.run.fold.state import ShopState
from runboard.run.log.event import write_moment

# The CNC began its board so long before the demo's moment; its 38 minutes end 16 or 17 minutes after it.
CNC_SINCE = timedelta(minutes=21)


# What was counted before the run in full swing: the oil does not last for all of it.
COUNTED = (
    ("brass hooks", 240),
    ("brass screws 3 x 16", 310),
    ("hard oil", 280),
    ("sanding discs", 14),
    ("cartons", 66),
    ("wood glue", 420),
)


def tell(floor: Shopfloor, now: datetime) -> None:
    """Everything, up to ``now``. The run in full swing has a chance of its own, whatever came before it."""
    own = floor.chance.getrandbits(32)
    tell_finished(floor, now)
    floor.chance.seed(own)
    _run_in_full_swing(floor, now)


def _run_in_full_swing(floor: Shopfloor, now: datetime) -> None:
    first = now - 3 * DAY - HOUR
    floor.clock.moment = first - HOUR
    count_supplies(floor.workshop, COUNTED, "c0" * 16, LEAD)
    next_post = for_the_post(now + 2 * HOUR, floor.book.time_zone)
    dues = [next_post, next_post + 2 * DAY, next_post + 5 * DAY]
    wish = Wish("rails", house_numbers(floor, 22, 2, dues), name="Key rails, fourth batch", wood="ash")
    run = open_run(floor.workshop, wish, LEAD)
    lead = DemoWorker(floor, LEAD, called=0.1)
    _two_boards(floor, run, lead, first)
    _engrave_first_board(floor, run, lead, first + DAY)
    _engrave_on(floor, run, lead, first + 2 * DAY)
    _today(floor, run, lead, now)


def _two_boards(floor: Shopfloor, run: str, lead: DemoWorker, begins: datetime) -> None:
    """Two boards are cut; then the collet is worn, and a new one has to come."""
    out = draft("station out of use", {"why": "collet worn, a new one is on its way"}, station="cnc")
    lead.incidents.append(Incident(lambda state: "cut/2" in state.runs[run].past, lambda state: [out]))
    play(floor, [(begins, lead.session(begins + SESSION))])


def _engrave_first_board(floor: Shopfloor, run: str, lead: DemoWorker, begins: datetime) -> None:
    """Both boards are sanded, the first is engraved and oiled."""

    def oiled(state: ShopState) -> bool:
        return all("oil" in state.runs[run].trays[tray].rests for tray in ("1", "2", "3"))

    play(floor, [(begins, lead.session(begins + 5 * HOUR, oiled))])


def _engrave_on(floor: Shopfloor, run: str, lead: DemoWorker, begins: datetime) -> None:
    """Two trays more are engraved; the third waits for a number. The hooks are left to the helper."""

    def engraved(state: ShopState) -> bool:
        return all(state.runs[run].trays[tray].at.get("oil") for tray in ("4", "5"))

    given = draft("operation given", {"to": CREW, "trays": ["1", "2", "3"]}, run=run, operation="hooks")
    why = {"why": "the house number is not confirmed", "waiting_for": "an answer from Bridge End"}
    held = draft(
        "pieces held",
        {**why, "until": write_moment(for_the_post(begins + DAY, floor.book.time_zone))},
        run=run,
        tray="6",
        operation="engrave",
    )
    lead.incidents.append(Incident(lambda state: True, lambda state: [given]))
    lead.incidents.append(
        Incident(lambda state: bool(state.runs[run].trays["6"].free("engrave")), lambda state: [held])
    )
    play(floor, [(begins, lead.session(begins + SESSION, engraved))])


def _today(floor: Shopfloor, run: str, lead: DemoWorker, now: datetime) -> None:
    """The new collet is there. One board is cut, the next is on the CNC at ``now``; the helper fits hooks."""
    back = draft("station back in use", station="cnc")
    lead.incidents.append(Incident(lambda state: True, lambda state: [back]))
    helper = DemoWorker(floor, CREW)
    comings = [
        (now - 76 * MINUTE, helper.session(now + HOUR)),
        (now - 96 * MINUTE, _lead_today(floor, run, lead, now)),
    ]
    play(floor, comings, until=now)


def _lead_today(floor: Shopfloor, run: str, lead: DemoWorker, now: datetime) -> Spans:
    def board_cut(state: ShopState) -> bool:
        loads = state.runs[run].loads.values()
        return "cut/3" in state.runs[run].past and not any(load.station != "cnc" and not load.people for load in loads)

    yield from lead.arrive(now + 2 * HOUR)
    yield from lead.work(board_cut)
    mine = {"to": LEAD, "trays": ["7", "8", "9"]}
    lead.press(*(draft("operation given", mine, run=run, operation=step) for step in ("clean", "sand:120")))
    spare = now - CNC_SINCE - 2 * MINUTE - floor.now
    if spare > MINUTE:
        lead.press(draft("person called away"))
        yield spare
        lead.press(draft("person came back"))
    yield from lead.work()
