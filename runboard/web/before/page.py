"""Questions before a run: all kinds of them, and one page that asks, answers, draws and keeps for every kind."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import timedelta
from typing import Any
from urllib.parse import urlencode

from flask import Blueprint, Response, abort, request
from markupsafe import Markup

from runboard.floor.changing.keep_answer import keep_of
from runboard.floor.looking.answers import Answered, Coming
from runboard.floor.looking.files_looked_at import note_look
from runboard.plan.before.asking import kinds_reading
from runboard.plan.money.cents import Amount
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.shop.numbers import whole_number
from runboard.web.before.asked import KEPT, SEEN, Asked, answers, asked_in, known_kind, take_file
from runboard.web.before.drawn import drawn
from runboard.web.before.presses import Presses, presses_of
from runboard.web.door.pages import asks_for_a_part, page, refusal, said, see_other, workshop
from runboard.web.fittings import fittings
from runboard.web.forms.kinds import kinds_shown, title_of
from runboard.words.before.said import Download, Said
from runboard.words.before.sayings import said_of
from runboard.words.facts import exact_span_in_words, money_in_words
from runboard.words.sentences import message_name, sentence

part = Blueprint("before", __name__)

# Signs: what is longer is answered where it was sent, since not every browser and server takes such an address.
LONGEST_ADDRESS = 8_000


@dataclass(frozen=True)
class Shown:
    """What is shown of an answer: in words, drawn, and what may be kept of it; or how far it is, or why there is none."""

    said: Said | None = None
    drawings: tuple[Markup, ...] = ()
    keeps: tuple[Presses, ...] = ()
    coming: Coming | None = None
    wrong: str = ""
    kept: tuple[str, str] = ("", "")
    files: tuple[tuple[str, Download], ...] = ()


@part.get("/before")
def kinds() -> Response:
    """All kinds of questions."""
    keys = {name: request.args[name] for name in ("product", "run") if request.args.get(name)}
    return page("before/kinds.html", groups=kinds_shown(), keys=keys, about=f"?{urlencode(keys)}" if keys else "")


@part.get("/before/<kind>")
def look(kind: str) -> Response:
    """The form of a question, and the answer where it is asked."""
    return _page(asked_in(known_kind(kind), request.args))


@part.post("/before/<kind>")
def ask(kind: str) -> Response:
    """Work it out. The answer has an address of its own; what is wrong comes back at its field, with all that was typed."""
    asked = asked_in(known_kind(kind), request.form, request.files)
    _note(asked)
    address = asked.address()
    return _page(asked) if asked.form.is_wrong or len(address) > LONGEST_ADDRESS else see_other(address)


@part.post("/before/file")
def drop() -> Response:
    """A file that was dropped on a product: to the kind of question that reads it, by its ending."""
    file, product = request.files.get("file"), request.form.get("product", "")
    back = f"/plan/products/{product}" if product else "/before"
    if file is None or not file.filename:
        return see_other(back)
    reading = kinds_reading(file.filename)
    if not reading:
        return _turned_down(said("refused", "looked-at file unknown", {"name": file.filename}), back)
    try:
        taken = take_file(file)
    except Refused as refused:
        return _turned_down(refusal(refused), back)
    begun = asked_in(reading[0], request.form)
    begun.file, begun.is_sent = taken, True
    _note(begun)
    return see_other(begun.address())


def _note(asked: Asked) -> None:
    """A file that was sent for a product is the newest of its name."""
    product = getattr(asked.question, "product", None)
    if product and asked.file and asked.is_sent:
        note_look(workshop(), fittings().settings, product, asked.file.name, asked.file.digest)


def _turned_down(why: str, back: str) -> Response:
    return page("before/turned_down.html", status=422, why=why, back=back)


@part.post("/before/<kind>/keep")
def keep(kind: str) -> Response:
    """Keep a part of the answer in the book."""
    asked = asked_in(known_kind(kind), request.form)
    if asked.form.is_wrong:
        return _page(asked)
    key, seen = request.form.get("keep", ""), whole_number(request.form.get(SEEN, "")) or 0
    try:
        found = answers().ask(asked.kind, asked.question, asked.file)
        if isinstance(found, Coming):
            return see_other(asked.address())
        keep_of(workshop(), answers(), found, key, seen)
    except Refused as refused:
        code = "answer outdated" if refused.code == "book outdated" else refused.code
        asked.form.problems.append(said("refused", code, refused.facts))
        return _page(asked)
    except BookError as error:
        asked.form.problems += [problem.sentence for problem in error.problems]
        return _page(asked)
    return see_other(asked.address(kept=key))


@part.post("/before/<kind>/end")
def end(kind: str) -> Response:
    """The answer is not wanted any more."""
    asked = asked_in(known_kind(kind), request.form)
    if not asked.form.is_wrong:
        answers().end(asked.kind, asked.question, asked.file)
    asked.is_asked = False
    return page("before/question.html", asked=asked, title=title_of(asked.kind), shown=Shown(), here="")


@part.get("/before/<kind>/files/<number>")
def download(kind: str, number: str) -> Response:
    """A file that an answer offers."""
    asked = asked_in(known_kind(kind), request.args)
    if asked.question is None:
        abort(404)
    found = answers().ask(asked.kind, asked.question, asked.file)
    if isinstance(found, Coming):
        abort(404)
    offered = said_of(found.kind, found.book, found.question, found.answer).downloads
    at = whole_number(number)
    if at is None or at >= len(offered):
        abort(404)
    response = Response(offered[at].text, content_type=f"{offered[at].mimetype}; charset=utf-8")
    response.headers.set("Content-Disposition", "attachment", filename=offered[at].name)
    return response


# what is shown


def _page(asked: Asked) -> Response:
    shown = _shown(asked) if asked.is_asked and not asked.form.is_wrong else Shown()
    # htmx puts nothing in its place that came with another status.
    status = 422 if (asked.form.is_wrong or shown.wrong) and not asks_for_a_part() else 200
    context: dict[str, Any] = {"asked": asked, "title": title_of(asked.kind), "shown": shown, "others": _others(asked)}
    context["here"] = asked.address()
    return page("before/question.html", "asked", status, **context)


def _others(asked: Asked) -> list[tuple[str, str]]:
    """(address, title) of what else can be asked about the same file."""
    reading = kinds_reading(asked.file.name) if asked.file else []
    about = [("product", getattr(asked.question, "product", None) or ""), *asked.file_pairs]
    return [(f"/before/{kind.name}?{urlencode(about)}", title_of(kind)) for kind in reading if kind is not asked.kind]


def _shown(asked: Asked) -> Shown:
    try:
        found = answers().ask(asked.kind, asked.question, asked.file)
    except Refused as refused:
        return Shown(wrong=refusal(refused))
    if isinstance(found, Coming):
        return Shown(coming=found)
    keeps = [each for each in found.keeps() if not each.is_so]
    answer = said_of(found.kind, found.book, found.question, found.answer)
    return Shown(
        answer,
        drawn(found.kind, found.book, found.question, found.answer),
        presses_of(keeps, [said("before-keep", each.code, in_plain_words(each.facts)) for each in keeps]),
        kept=_kept(found, request.args.get(KEPT, "")),
        files=tuple((asked.address(f"/files/{at}"), offered) for at, offered in enumerate(answer.downloads)),
    )


def _kept(found: Answered, key: str) -> tuple[str, str]:
    """What is said once a part was kept, and where it stands now."""
    if not key:
        return "", ""
    each = next((each for each in found.keeps() if each.key == key), None)
    code = each.code if each else "part"
    text = sentence(message_name("before-kept", code), in_plain_words(each.facts) if each else {}) or said(
        "before-kept", "part"
    )
    product = getattr(found.question, "product", None)
    usual = f"/plan/products/{product}" if product else "/shop"
    return text, str((each.facts if each else {}).get("link", usual))


def in_plain_words(facts: Mapping[str, Any]) -> dict[str, Any]:
    """Facts of a press with spans said exactly, and amounts as the shop writes them."""
    return {name: _in_plain_words(fact) for name, fact in facts.items()}


def _in_plain_words(fact: Any) -> Any:
    if isinstance(fact, Amount):
        return money_in_words(fact.number, fact.money)
    return exact_span_in_words(fact) if isinstance(fact, timedelta) else fact
