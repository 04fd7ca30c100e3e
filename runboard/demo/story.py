"""The demo's story: two runs that are finished, and one in full swing that ends at the moment it is made for.

Everything is told backwards from that moment: sessions lie at the time of day that it is now, so that whoever tries
the demo at three in the morning meets a shop that works at three in the morning.
"""

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from heapq import heapify, heappop, heappush
from typing import Any
from zoneinfo import ZoneInfo

from runboard.demo.book import CREW, LEAD
from runboard.demo.phone import Draft, Shopfloor, draft
from runboard.demo.worker import DemoWorker, Incident, Spans
from runboard.floor.changing.runs import Wish, close_run, open_run
from runboard.run.fold.state import RunState, ShopState
from runboard.run.log.event import write_moment

DAY, HOUR, MINUTE = timedelta(days=1), timedelta(hours=1), timedelta(minutes=1)
# A press takes a second of the clock, and one turn may be some presses.
_LAST_TURN_BEFORE = timedelta(seconds=10)
SESSION = timedelta(hours=2, minutes=50)
MOST_SESSIONS = 9
# The CNC began its board so long before the demo's moment; its 38 minutes end 16 or 17 minutes after it.
CNC_SINCE = timedelta(minutes=21)
STREETS = ("Mill Lane", "Harbour Street", "Quarry Road", "Orchard Way", "Station Road", "Bridge End")


def tell(floor: Shopfloor, now: datetime) -> None:
    """Everything, up to ``now``."""
    _finished_rails(floor, now)
    _finished_boards(floor, now)
    _run_in_full_swing(floor, now)


def house_numbers(floor: Shopfloor, lines: int, pieces: int, dues: Sequence[datetime]) -> list[dict[str, Any]]:
    """Order lines: a house number each, for a street, the first of them due first."""
    numbers = floor.chance.sample(range(2, 98), lines)
    return [
        {
            "line": str(line),
            "pieces": pieces,
            "for": STREETS[line % len(STREETS)],
            "text": str(number),
            "due": write_moment(dues[(line - 1) * len(dues) // lines]),
        }
        for line, number in enumerate(numbers, 1)
    ]


def _for_the_post(moment: datetime, zone: str) -> datetime:
    """The next five o'clock in the afternoon, when the post goes."""
    local = moment.astimezone(ZoneInfo(zone))
    today = local.replace(hour=17, minute=0, second=0, microsecond=0)
    return (today if today >= local else today + DAY).astimezone(UTC)


# the two that are finished


def _finished_rails(floor: Shopfloor, now: datetime) -> None:
    first = now - 24 * DAY - HOUR
    floor.clock.moment = first - HOUR
    orders = house_numbers(floor, 6, 2, [_for_the_post(first + 5 * DAY, floor.book.time_zone)])
    run = open_run(floor.workshop, Wish("rails", orders, name="Key rails, first batch", wood="ash"), LEAD)
    lead = DemoWorker(floor, LEAD, called=0.15, slips=0.1, trouble="engrave")
    lead.incidents += _out_of_hooks(run, floor)
    _work_until_good(floor, run, first, [lead])


def _finished_boards(floor: Shopfloor, now: datetime) -> None:
    first = now - 15 * DAY - HOUR
    floor.clock.moment = first - HOUR
    due = write_moment(_for_the_post(first + 6 * DAY, floor.book.time_zone))
    orders = [{"line": "1", "pieces": 10, "for": "the farm shop", "due": due}]
    run = open_run(floor.workshop, Wish("boards", orders, name="Serving boards", wood="maple"), LEAD)
    workers = [DemoWorker(floor, LEAD, called=0.1, trouble="flatten:a"), DemoWorker(floor, CREW, slips=0.1)]
    _work_until_good(floor, run, first, workers)


def _work_until_good(floor: Shopfloor, run: str, first: datetime, workers: list[DemoWorker]) -> None:
    """A session a day until every piece is good or scrap; then the lead closes the run."""
    for number in range(MOST_SESSIONS):
        begins = first + number * DAY
        comings = [
            (begins + at * 12 * MINUTE, worker.session(begins + SESSION, lambda state: _is_through(state.runs[run])))
            for at, worker in enumerate(workers)
        ]
        play(floor, comings)
        if _is_through(floor.state.runs[run]):
            break
    floor.clock.moment += 5 * MINUTE
    close_run(floor.workshop, run, "run finished", LEAD)


def _is_through(run: RunState) -> bool:
    return not any(tray.in_process for tray in run.trays.values())


def _out_of_hooks(run: str, floor: Shopfloor) -> list[Incident]:
    """When the rails are oiled there are no hooks left; the next day there are some again."""
    supply = "brass hooks"

    def oiled(state: ShopState) -> bool:
        return "oil" in state.runs[run].trays["1"].rests

    def out(state: ShopState) -> list[Draft]:
        return [draft("supply out", {"supply": supply, "until": write_moment(floor.now + 20 * HOUR)}, run=run)]

    def are_there(state: ShopState) -> bool:
        until = state.runs[run].out.get(supply)
        return until is not None and until <= floor.now

    def back(state: ShopState) -> list[Draft]:
        seen = [
            draft("alert answered", {"alert": due.id, "answer": "done"}, run=run) for due in floor.ringing("supply due")
        ]
        return [*seen, draft("supply in", {"supply": supply}, run=run)]

    return [Incident(oiled, out), Incident(are_there, back)]


# the one in full swing


def _run_in_full_swing(floor: Shopfloor, now: datetime) -> None:
    first = now - 3 * DAY - HOUR
    floor.clock.moment = first - HOUR
    next_post = _for_the_post(now + 2 * HOUR, floor.book.time_zone)
    dues = [next_post, next_post + 2 * DAY, next_post + 5 * DAY]
    wish = Wish("rails", house_numbers(floor, 22, 2, dues), name="Key rails, second batch", wood="ash")
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
        {**why, "until": write_moment(_for_the_post(begins + DAY, floor.book.time_zone))},
        run=run,
        tray="6",
        operation="engrave",
    )
    lead.incidents.append(Incident(lambda state: True, lambda state: [given]))
    lead.incidents.append(Incident(lambda state: True, lambda state: [held]))
    play(floor, [(begins, lead.session(begins + SESSION, engraved))])


def _today(floor: Shopfloor, run: str, lead: DemoWorker, now: datetime) -> None:
    """The new collet is there. One board is cut, the next is on the CNC at ``now``; the helper fits hooks."""
    back = draft("station back in use", station="cnc")
    lead.incidents.append(Incident(lambda state: True, lambda state: [back]))
    helper = DemoWorker(floor, CREW)
    comings = [
        (now - 57 * MINUTE, helper.session(now + HOUR)),
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


# side by side


def play(floor: Shopfloor, comings: Sequence[tuple[datetime, Spans]], until: datetime | None = None) -> None:
    """Let everybody work from when they come until they have gone, or until a moment: then they stay as they are."""
    queue = [(moment, number, spans) for number, (moment, spans) in enumerate(comings)]
    heapify(queue)
    while queue and (until is None or queue[0][0] < until - _LAST_TURN_BEFORE):
        moment, number, spans = heappop(queue)
        floor.clock.moment = max(floor.clock.moment, moment)
        span = next(spans, None)
        if span is not None:
            heappush(queue, (floor.now + span, number, spans))
    if until is not None:
        floor.clock.moment = max(floor.clock.moment, until)
