"""One run on the Plan screen: its orders, route and boards, and its end."""

from collections.abc import Callable, Sequence

from flask import Blueprint, Response, request

from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.kept_changes import with_changes
from runboard.floor.changing.pictures import with_pictures
from runboard.floor.changing.run_sheet import run_sheet_of
from runboard.floor.changing.runs import (
    add_board,
    close_run,
    losable_boards,
    lose_board,
    orders_tag,
    set_orders,
)
from runboard.floor.looking.at_hand import book_now
from runboard.floor.looking.files_looked_at import files_looked_at
from runboard.floor.looking.look_back import estimates_now
from runboard.floor.looking.shopping import shopping_now
from runboard.plan.opening import board_pieces
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.run.rules.allotted import lines_of
from runboard.web.door.pages import json_file, page, refusal, said, see_other, workshop
from runboard.web.door.pictures import shelf
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.fittings import fittings
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.run import order_rows, orders_section, read_orders
from runboard.web.plan.schedule import latest
from runboard.web.plan.when import run_when
from runboard.words.before.supplies import top_in_words
from runboard.words.dues import pieces_of, whom_of
from runboard.words.route import route_lines, route_times

part = Blueprint("plan_run", __name__)


@part.get("/plan/runs/<key>")
def run(key: str) -> Response:
    """The run as it stands."""
    found = known_run(key)
    return _page(found, _orders(found))


@part.post("/plan/runs/<key>/orders")
def change_orders(key: str) -> Response:
    """The order lines are now these."""
    found = known_run(key)
    form = posted([orders_section()], request.form)
    lines = read_orders(form, form.record(), book_now(workshop()).time_zone)
    if request.form.get("seen") != orders_tag(found):
        form.problems.append(said("refused", "book outdated"))
        form.problems += [pieces_of(order, order.pieces) for order in found.orders]
    if not form.is_wrong:
        form.problems += _refused(lambda: set_orders(workshop(), key, lines, known_person()))
    return _page(known_run(key), form, 422) if form.is_wrong else see_other(f"/plan/runs/{key}")


@part.post("/plan/runs/<key>/end")
def end(key: str) -> Response:
    """Finished, or abandoned."""
    found, asked = known_run(key), request.form
    kind = "run abandoned" if asked.get("how") == "abandoned" else "run finished"
    return _done(found, lambda: close_run(workshop(), key, kind, known_person(), asked.get("note", "").strip()))


@part.post("/plan/runs/<key>/boards")
def boards(key: str) -> Response:
    """One more board with its trays, or one that is lost."""
    found, lost, why = known_run(key), request.form.get("lost", ""), request.form.get("why", "").strip()
    if lost:
        return _done(found, lambda: lose_board(workshop(), key, lost, why, known_person()))
    return _done(found, lambda: add_board(workshop(), key, known_person()))


@part.get("/plan/runs/<key>/run.json")
def download(key: str) -> Response:
    """The run with its events, pictures and changes to try, as ``runboard export --run`` writes it."""
    record = with_changes(fittings().settings, export_run(workshop(), key))
    return json_file(with_pictures(shelf(), record), f"run-{known_run(key).id}.json")


def _done(run: RunState, do: Callable[[], None]) -> Response:
    """Back to the run once it is done; where it is refused, the run with why."""
    problems = _refused(do)
    return _page(run, _orders(run), 422, problems) if problems else see_other(f"/plan/runs/{run.id}")


def _refused(do: Callable[[], None]) -> list[str]:
    try:
        do()
    except Refused as refused:
        return [refusal(refused)]
    return []


def _orders(run: RunState) -> Form:
    return shown([orders_section()], {"orders": order_rows(run.orders, book_now(workshop()).time_zone)})


def _page(run: RunState, form: Form, status: int = 200, problems: Sequence[str] = ()) -> Response:
    trays = list(run.trays.values())
    sheet = run_sheet_of(workshop(), run.id, files_looked_at(fittings().settings)) if run.state == "open" else None
    return page(
        "plan/run.html",
        status=status,
        run=run,
        sheet=sheet,
        form=form,
        problems=[*problems, *(form.problems if run.state != "open" else ())],
        tag=orders_tag(run),
        lines=route_lines(run.route.product, book_now(workshop())),
        runs_out=top_in_words(shopping_now(workshop()), run.id),
        times=route_times(estimates_now(workshop()), run),
        when=run_when(latest(), run),
        wanted=sum(order.pieces for order in run.orders),
        started=sum(tray.started for tray in trays),
        good=sum(tray.good for tray in trays),
        scrap=sum(tray.scrapped for tray in trays),
        in_process=sum(tray.in_process for tray in trays),
        has_boards=bool(board_pieces(run.route)),
        losable=[(key, key.split("/")[-1]) for key in losable_boards(run)],
        ready=[(whom_of(line.order), line) for line in lines_of(run) if line.is_for_now],
    )
