"""Cards of a run: what to print on which paper, made as a PDF beside the server, or printed from the browser."""

from collections.abc import Callable
from dataclasses import replace
from urllib.parse import urlencode

from flask import Blueprint, Response, abort, request, url_for
from werkzeug.datastructures import MultiDict

from runboard.cards.count import counted
from runboard.cards.page import More, page_html
from runboard.cards.papers import PAPERS
from runboard.cards.pdf import PACKAGES
from runboard.floor.letting_in.print_cards import begin_prints, full_trays, note_prints, prints_to_make
from runboard.floor.long_work import TaskSeen
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.web.door.pages import number_asked, page, refusal, said, see_other, workshop
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.door.ways import first_page, only_here
from runboard.web.fittings import fittings
from runboard.web.trays.card_desk import WHAT, CardDesk
from runboard.web.trays.card_orders import KINDS, SLIPS, USUAL, Sources, Wanted, card_order
from runboard.words.dues import whom_of
from runboard.words.sentences import LANGUAGES

NO_PANGO = "NoPango"
# Printed once for a run, whatever the trays.
FOR_A_RUN = ("stations", "jigs", "sheet", SLIPS)
# So many trays' cards are on one page of the browser's print: a hundred take a second to make, and everybody waits.
TRAYS_A_PAGE = 12

part = Blueprint("cards", __name__)


def desk() -> CardDesk:
    """Where this server makes cards."""
    return fittings().cards


@part.get("/plan/runs/<key>/cards")
def choose(key: str) -> Response:
    """What to print; from a tray's own link, its card alone."""
    run = known_run(key)
    return _form_page(run, _wanted(run, request.args, USUAL if run.state == "open" else (SLIPS,)))


@part.post("/plan/runs/<key>/cards")
def order(key: str) -> Response:
    """Make them. Each traveller's print is noted; the same cards printed again are another print."""
    run = known_run(key)
    wanted = _wanted(run, request.form)
    try:
        if request.form.get("how") == "browser":
            return _to_browser(run, wanted)
        return _to_pdf(run, wanted)
    except Refused as refused:
        return _form_page(run, wanted, [refusal(refused)], 422)


def _to_browser(run: RunState, wanted: Wanted) -> Response:
    prints = _prints(run, wanted)
    card_order(workshop(), run, wanted, prints, _sources(desk().picture))  # what cannot be made is not noted
    note_prints(workshop(), run.id, prints, known_person())
    return see_other(f"/plan/runs/{run.id}/cards/print?{_query(wanted)}")


def _to_pdf(run: RunState, wanted: Wanted) -> Response:
    prints = _prints(run, wanted)
    made = card_order(workshop(), run, wanted, prints, _sources(desk().picture))  # takes a while
    task = begin_prints(workshop(), run.id, prints, lambda: desk().make(run.id, made), desk().work, known_person())
    return see_other(f"/plan/runs/{run.id}/cards/{task.id}")


@part.get("/plan/runs/<key>/cards/print")
def sheets(key: str) -> Response:
    """The cards as a page to print from the browser: the prints that were noted last; of many trays some at a time, the
    first with what is printed once."""
    run = known_run(key)
    everything, first = _wanted(run, request.args), number_asked("from")
    wanted = _some(everything, first)
    prints = {tray: run.trays[tray].print for tray in wanted.trays}

    def address(name: str) -> str:
        return url_for("pictures.show", name=name)

    try:
        made = card_order(workshop(), run, wanted, prints, _sources(address))
    except Refused as refused:
        return _form_page(run, wanted, [refusal(refused)], 422)
    more = _more(run, everything, first + len(wanted.trays))
    return Response(page_html(made, "/static/", more), headers={"Cache-Control": "private, no-store"})


def _some(wanted: Wanted, first: int) -> Wanted:
    """The trays of one page."""
    kinds = tuple(kind for kind in wanted.kinds if not first or kind not in FOR_A_RUN)
    return replace(wanted, trays=wanted.trays[first : first + TRAYS_A_PAGE], kinds=kinds)


def _more(run: RunState, wanted: Wanted, at: int) -> More | None:
    left = len(wanted.trays) - at
    if left <= 0 or not set(wanted.kinds) - set(FOR_A_RUN):
        return None
    words = said("cards", "more", {"count": min(left, TRAYS_A_PAGE), "left": left, "all": len(wanted.trays)})
    return More(words, f"/plan/runs/{run.id}/cards/print?{_query(wanted)}&from={at}")


@part.get("/plan/runs/<key>/cards/<task_id>")
def progress(key: str, task_id: str) -> Response:
    """How far an order is; then its PDF."""
    run = known_run(key)
    task = desk().look(key, task_id)
    if task is None:
        return see_other(f"/plan/runs/{key}/cards")
    return page("trays/progress.html", "progress", run=run, task=task, why=_why(task))


@part.post("/plan/runs/<key>/cards/<task_id>/end")
def end(key: str, task_id: str) -> Response:
    """Stop making it."""
    task = desk().look(key, task_id)
    if task is not None:
        desk().work.end(task.id)
    return see_other(f"/plan/runs/{key}/cards/{task_id}")


@part.get("/plan/runs/<key>/cards/<task_id>.pdf")
def pdf(key: str, task_id: str) -> Response:
    """The PDF; 404 where it is not made, or not any more."""
    run = known_run(key)
    task = desk().look(key, task_id)
    content = desk().pdf(task) if task else None
    if content is None:
        abort(404)
    # The codes on it open trays: no shared cache keeps it.
    headers = {"Cache-Control": "private, no-store", "Content-Disposition": f'inline; filename="cards-{run.id}.pdf"'}
    return Response(content, content_type="application/pdf", headers=headers)


def _wanted(run: RunState, asked: MultiDict[str, str], usual: tuple[str, ...] = USUAL) -> Wanted:
    """What the form or the address says; what it does not say is the usual."""
    picked = tuple(tray for tray in dict.fromkeys(asked.getlist("tray")) if tray in run.trays)
    kinds = tuple(kind for kind in KINDS if kind in asked.getlist("kind"))
    paper, language = asked.get("paper", ""), asked.get("language", "")
    return Wanted(
        picked or full_trays(run),
        kinds or usual,
        paper if paper in PAPERS else next(iter(PAPERS)),
        language if language in LANGUAGES else "en",
        tuple(order.line for order in run.orders if order.line in asked.getlist("line")),
        "every" in asked,
        "full" in asked,
    )


def _query(wanted: Wanted) -> str:
    return urlencode(
        [("paper", wanted.paper), ("language", wanted.language)]
        + [("kind", kind) for kind in wanted.kinds]
        + [("tray", tray) for tray in wanted.trays]
        + [("line", line) for line in wanted.lines]
        + [("every", "1")] * wanted.every
        + [("full", "1")] * wanted.full
    )


def _prints(run: RunState, wanted: Wanted) -> dict[str, int]:
    if wanted.are_all_slips:  # what is ready is packed after the run is over too
        return {}
    return prints_to_make(run, wanted.trays, "travellers" in wanted.kinds)


def _sources(picture: Callable[[str], str | None]) -> Sources:
    return Sources(first_page(), desk().keys(), picture)


def _why(task: TaskSeen) -> str:
    """Why it failed, as a sentence."""
    if task.failure is None:
        return ""
    if task.failure.kind == NO_PANGO:
        return said("cards", "no pango", {"packages": PACKAGES})
    return said("cards", "died" if task.failure.kind == "died" else "failed", {"why": task.failure.says})


def _sides(run: RunState, wanted: Wanted) -> str:
    """How many sides it will be; why there is nothing to print."""
    try:
        found = counted(card_order(workshop(), run, wanted, {}, _sources(desk().picture)))
    except Refused as refused:
        return refusal(refused)
    told = (
        ("trays", {"trays": found.trays, "sides": found.tray_sides}),
        ("stations", {"stations": found.stations, "sides": found.station_sides}),
        ("others", {"sides": found.other_sides}),
    )
    parts = [said("cards", f"sides {what}", facts) for what, facts in told if facts["sides"]]
    return f"{', '.join(parts)}. {said('cards', 'sides pages', {'pages': found.pages})}."


def _form_page(run: RunState, wanted: Wanted, problems: list[str] | None = None, status: int = 200) -> Response:
    last = desk().work.newest(WHAT, run.id)
    everything = wanted.trays == full_trays(run)
    return page(
        "trays/choose.html",
        "sides",
        status=status,
        run=run,
        only_here=only_here(),
        wanted=wanted,
        kinds=KINDS if run.state == "open" else (SLIPS,),
        lines=[(order.line, whom_of(order)) for order in run.by_due],
        problems=problems or [],
        sides=_sides(run, wanted),
        everything=everything,
        papers={key: said("paper-size", key) for key in PAPERS},
        languages=LANGUAGES,
        last=last,
        why=_why(last) if last and last.failure and last.failure.kind == NO_PANGO else "",
    )
