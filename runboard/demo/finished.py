"""The runs that are finished: three of key rails with what their reviews have to tell, and one of serving boards.

Fitting hooks takes longer than the route guesses, in every run. In the first two the drying rack is a place too small for the
last tray, which costs an evening; one board of the second chips at Clean up. Then the rack is made larger, and the third run
shows what that was worth. A first evening is too short for anything to be oiled on it: what holds a run is the rack alone.
"""

from datetime import datetime, timedelta

from runboard.demo.acts import DAY, HOUR, MINUTE, for_the_post, house_numbers, play
from runboard.demo.book import LEAD, RACK
from runboard.demo.checking import answers_to_reminders
from runboard.demo.incidents import out_of_hooks
from runboard.demo.phone import Shopfloor
from runboard.demo.rails import BOARD_PIECES
from runboard.demo.worker import DemoWorker
from runboard.floor.changing.adopt import adopt_change, judge_change
from runboard.floor.changing.runs import Wish, close_run, open_run
from runboard.plan.change import Capacity
from runboard.review.changes.nouns import Idea, Span3, Tried
from runboard.run.fold.state import RunState
from runboard.run.log.event import write_moment

MOST_SESSIONS = 9
# The first evening of a run is a short one.
FIRST, SESSION = timedelta(hours=2, minutes=10), timedelta(hours=4)
# Each run of rails: so many order lines of two pieces, from so many boards.
LINES, BOARDS = 12, 2
# Of the second run's board 2: what chips in which of its trays.
CHIPPED = {"4": 1, "5": 2}
# What the larger rack costs, what trying it on the second run promises, and what its trays waited less in the third: all
# three as the program reckons them, which a test holds.
RACK_COST = 25.0
PROMISED = Span3(1268 * MINUTE, 1294 * MINUTE, 1318 * MINUTE)
PROMISED_HANDS = Span3(6 * MINUTE, 6 * MINUTE, 6 * MINUTE)
SAVED = 1269 * MINUTE
# So long before the demo's moment the shop has its first book.
BEGINS = 40 * DAY


def tell_finished(floor: Shopfloor, now: datetime) -> None:
    """All of them, the oldest first."""
    _first_batch(floor, now - 38 * DAY - HOUR)
    second = _second_batch(floor, now - 31 * DAY - HOUR)
    change = _larger_rack(floor, second)
    _boards(floor, now - 20 * DAY - HOUR)
    third = _third_batch(floor, now - 12 * DAY - HOUR)
    _judge(floor, change, third)


def _first_batch(floor: Shopfloor, first: datetime) -> None:
    run = _open_rails(floor, first, "Key rails, first batch")
    lead = DemoWorker(floor, LEAD, called=0.15, slips=0.1, trouble="engrave")
    lead.incidents += out_of_hooks(run, floor)
    _work_until_good(floor, run, first, [lead])


def _second_batch(floor: Shopfloor, first: datetime) -> str:
    run = _open_rails(floor, first, "Key rails, second batch")
    floor.chips = {("clean", tray): pieces for tray, pieces in CHIPPED.items()}
    _work_until_good(floor, run, first, [DemoWorker(floor, LEAD, called=0.1)])
    floor.chips = {}
    return run


def _larger_rack(floor: Shopfloor, run: str) -> str:
    """The evening after a run the change that its review offers first is adopted; answers which that is."""
    floor.clock.moment += HOUR
    idea = Idea("rack", Capacity("rack", RACK), "service holds", cost=RACK_COST)
    return adopt_change(floor.workshop, run, Tried(idea, PROMISED, PROMISED_HANDS), LEAD).id


def _judge(floor: Shopfloor, change: str, run: str) -> None:
    floor.clock.moment += HOUR
    judge_change(floor.workshop, change, run, "kept", LEAD, Span3(SAVED, SAVED, SAVED))


def _third_batch(floor: Shopfloor, first: datetime) -> str:
    run = _open_rails(floor, first, "Key rails, third batch")
    _work_until_good(floor, run, first, [DemoWorker(floor, LEAD, called=0.1)])
    return run


def _boards(floor: Shopfloor, first: datetime) -> None:
    floor.clock.moment = first - HOUR
    due = write_moment(for_the_post(first + 6 * DAY, floor.book.time_zone))
    orders = [{"line": "1", "pieces": 6, "for": "the farm shop", "due": due}]
    run = open_run(floor.workshop, Wish("boards", orders, name="Serving boards", wood="maple"), LEAD)
    _work_until_good(floor, run, first, [DemoWorker(floor, LEAD, slips=0.1, trouble="flatten:a")])


def _open_rails(floor: Shopfloor, first: datetime, name: str) -> str:
    """A run of key rails, two pieces an order line, opened an hour before its first session."""
    floor.clock.moment = first - HOUR
    orders = house_numbers(floor, LINES, 2, [for_the_post(first + 4 * DAY, floor.book.time_zone)])
    return open_run(floor.workshop, Wish("rails", orders, name=name, wood="ash", start=BOARDS * BOARD_PIECES), LEAD)


def _work_until_good(floor: Shopfloor, run: str, first: datetime, workers: list[DemoWorker]) -> None:
    """A session a day until every piece is good or scrap; then the lead answers what is asked by then, and closes the run."""
    for number in range(MOST_SESSIONS):
        begins = first + number * DAY
        comings = [
            (
                begins + at * 12 * MINUTE,
                worker.session(begins + (SESSION if number else FIRST), lambda state: _is_through(state.runs[run])),
            )
            for at, worker in enumerate(workers)
        ]
        play(floor, comings)
        if _is_through(floor.state.runs[run]):
            break
    floor.clock.moment += 5 * MINUTE
    for answer in answers_to_reminders(floor):  # a rag may be due to be looked at between the last session and now
        floor.press(LEAD, answer)
    close_run(floor.workshop, run, "run finished", LEAD)


def _is_through(run: RunState) -> bool:
    return not any(tray.in_process for tray in run.trays.values())
