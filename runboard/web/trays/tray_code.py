"""A tray's code shown on the lead's phone, for a helper's to scan: the same as on its card, though nothing was printed."""

from flask import Blueprint, Response, abort, request

from runboard.floor.letting_in.guest_look import who_has, work_now
from runboard.floor.letting_in.guests import let_anyone
from runboard.floor.letting_in.helper import TrayWork
from runboard.floor.letting_in.print_cards import full_trays
from runboard.floor.letting_in.travellers import read_keys, traveller_link
from runboard.web.door.pages import page, see_other, workshop
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.door.ways import drawn, first_page, only_here
from runboard.web.fittings import fittings

part = Blueprint("tray_code", __name__)


@part.get("/plan/runs/<key>/codes")
def trays(key: str) -> Response:
    """Whose code it is to be."""
    run = known_run(key)
    return page("trays/codes.html", run=run, trays=full_trays(run), cached=False)


@part.get("/plan/runs/<key>/trays/<tray>/code")
def show(key: str, tray: str) -> Response:
    """The code as large as the phone is wide, its eight characters, and which tray and step it opens."""
    run, work = known_run(key), _known(key, tray)
    link, address = traveller_link(read_keys(fittings().settings), key, tray), first_page().rstrip("/")
    return page(
        "trays/code.html",
        cached=False,
        run=run,
        tray=tray,
        step=work.step,
        given_to=who_has(workshop(), work),
        code=link.code,
        picture=drawn(address + link.path, link.code),
        typed_at=f"{address}/t",
        only_here=only_here(),
    )


@part.post("/plan/runs/<key>/trays/<tray>/code")
def anyone(key: str, tray: str) -> Response:
    """Whoever scans it may do the step that the page was shown with."""
    _known(key, tray)
    let_anyone(workshop(), (key, tray), request.form.get("step", ""), known_person())
    return see_other(f"/plan/runs/{key}/trays/{tray}/code")


def _known(key: str, tray: str) -> TrayWork:
    work = work_now(workshop(), key, tray) if tray in known_run(key).trays else None
    return work or abort(404)
