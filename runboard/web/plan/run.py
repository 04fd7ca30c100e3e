"""One run on the Plan screen: its orders, route and boards, and its end."""

import hashlib
from collections.abc import Sequence
from typing import Any

from flask import Blueprint, Flask, Response, request

from runboard.floor.changing.exchange import export_run
from runboard.floor.changing.kept_changes import with_changes
from runboard.floor.changing.pictures import with_pictures
from runboard.floor.changing.runs import close_run, new_event
from runboard.floor.pressing.taps import record_events
from runboard.plan.opening import board_pieces, lay_out
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.numbers import whole_number
from runboard.web.door.pages import page, said, see_other, workshop
from runboard.web.door.pictures import shelf
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.forms.form import Form, posted, shown
from runboard.web.forms.run import order_rows, orders_section, read_orders
from runboard.web.plan.page import book
from runboard.web.plan.route_times import route_times
from runboard.web.plan.route_words import route_lines
from runboard.web.plan.schedule import latest, run_when
from runboard.web.plan.trying import list_settings
from runboard.web.shop.book_file import json_file

part = Blueprint("plan_run", __name__)


def init_app(app: Flask) -> None:
    """Plug into the app."""
    app.register_blueprint(part)


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
    lines = read_orders(form, form.record(), book().time_zone)
    if request.form.get("seen") != _orders_tag(found):
        form.problems.append(said("refused", "book outdated"))
        form.problems += [f"{one.pieces} for {one.whom or '–'} {one.text}".strip() for one in found.orders]
    if not form.is_wrong and not lines:
        form.problems.append(said("refused", "nothing wanted"))
    if not form.is_wrong:
        form.problems += _refusals(found, "orders changed", {"orders": lines})
    if not form.is_wrong:
        return see_other(f"/plan/runs/{key}")
    return _page(known_run(key), form, 422)


@part.post("/plan/runs/<key>/end")
def end(key: str) -> Response:
    """Finished, or abandoned."""
    found = known_run(key)
    kind = "run abandoned" if request.form.get("how") == "abandoned" else "run finished"
    try:
        close_run(workshop(), key, kind, known_person(), request.form.get("note", "").strip())
    except Refused as refused:
        return _page(found, _orders(found), 422, [said("refused", refused.code, refused.facts)])
    return see_other(f"/plan/runs/{key}")


@part.post("/plan/runs/<key>/boards")
def boards(key: str) -> Response:
    """One more board with its trays, or one that is lost."""
    found = known_run(key)
    lost = request.form.get("lost", "")
    if lost:
        problems = _refusals(found, "board lost", {"board": lost, "why": request.form.get("why", "").strip()})
    else:
        problems = _refusals(found, "board added", next_board(found))
    return _page(found, _orders(found), 422, problems) if problems else see_other(f"/plan/runs/{key}")


@part.get("/plan/runs/<key>/run.json")
def download(key: str) -> Response:
    """The run with its events, pictures and changes to try, as ``runboard export --run`` writes it."""
    record = with_changes(list_settings(), export_run(workshop(), key))
    return json_file(with_pictures(shelf(), record), f"run-{known_run(key).id}.json")


def next_board(run: RunState) -> dict[str, Any]:
    """The body of 'board added' for one more full board: its key, and new trays behind the last."""
    step, pieces = run.route.steps[0], board_pieces(run.route) or 1
    number = max((whole_number(key.split("/")[-1]) or 0 for key in run.boards), default=0) + 1
    last = max((whole_number(tray) or 0 for tray in run.trays), default=0)
    a_tray = max((tray.started for tray in run.trays.values()), default=run.route.product.pieces_a_tray)
    trays, _ = lay_out(run.route, pieces, a_tray or 1, pieces)
    return {
        "board": f"{step.key}/{number}",
        "pieces": {str(last + at): count for at, (_, count) in enumerate(trays, 1)},
    }


def _refusals(run: RunState, kind: str, body: dict[str, Any]) -> list[str]:
    """Record an event of the run; what refused it, as sentences."""
    shop = workshop()
    try:
        record_events(shop, [new_event(shop, kind, body, run=run.id, person=known_person(), device="server")])
    except Refused as refused:
        return [said("refused", refused.code, refused.facts)]
    return []


def _orders(run: RunState) -> Form:
    return shown([orders_section()], {"orders": order_rows(run.orders, book().time_zone)})


def _orders_tag(run: RunState) -> str:
    """What the order lines are, shortened: a form filled from others is outdated."""
    return hashlib.sha256(repr(run.orders).encode()).hexdigest()[:16]


def _page(run: RunState, form: Form, status: int = 200, problems: Sequence[str] = ()) -> Response:
    trays = list(run.trays.values())
    uncut = {step.key: step for step in run.route.steps[:1]}
    return page(
        "plan/run.html",
        status=status,
        run=run,
        form=form,
        problems=[*problems, *(form.problems if run.state != "open" else ())],
        tag=_orders_tag(run),
        lines=route_lines(run.route.product, book()),
        times=route_times(workshop(), run),
        when=run_when(latest(), run),
        wanted=sum(one.pieces for one in run.orders),
        started=sum(one.started for one in trays),
        good=sum(one.good for one in trays),
        scrap=sum(one.scrapped for one in trays),
        in_process=sum(one.in_process for one in trays),
        has_boards=bool(board_pieces(run.route)),
        losable=[
            key for key, fed in run.boards.items() if any(run.trays[tray].free(step) for tray in fed for step in uncut)
        ],
    )
