"""A second pair of eyes: the review of a run as a file to send, the answers that come back, and codes that show it here."""

from contextlib import suppress
from dataclasses import dataclass

from flask import Blueprint, Response, abort, request

from runboard.cards.friends_file import FriendsFile, friends_file
from runboard.cards.friends_page import file_html
from runboard.cards.pdf import PACKAGES, NoPango
from runboard.floor.changing.answers import (
    ASIDE,
    NEW,
    TRIED,
    KeptAnswer,
    Taken,
    kept_answer,
    kept_answers,
    operations_of,
    set_answer,
    take_answers,
)
from runboard.floor.changing.kept_changes import keep_change
from runboard.floor.letting_in.friend_codes import (
    MOST_DAYS,
    USUAL_DAYS,
    friend_codes,
    make_friend_code,
    revoke_friend_code,
)
from runboard.floor.long_work import TaskSeen
from runboard.floor.looking.at_hand import book_now
from runboard.review.answers import MOST_BYTES, read_answers
from runboard.review.essentials import Essentials
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.numbers import whole_number
from runboard.web.door.pages import page, refusal, said, see_other, unkept, workshop
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.door.ways import drawn, first_page
from runboard.web.fittings import fittings
from runboard.web.review.looked import review_of
from runboard.web.review.to_try import change_of, form_of, said_of
from runboard.words.facts import number_in_words
from runboard.words.review import five_lines
from runboard.words.sentences import say, sentence
from runboard.words.trying import words_of_change

# What a press makes of an answer.
_BECOMES = {"try": TRIED, "aside": ASIDE, "back": NEW}

part = Blueprint("friend", __name__)


@dataclass(frozen=True)
class AnswerShown:
    """An answer with what it says in words; ``saves`` is '' where nothing was said."""

    kept: KeptAnswer
    way: str
    saves: str


def friends_file_of(essentials: Essentials, *, names: bool) -> FriendsFile:
    """The file of a run as it is known now; what is still worked out is left out."""

    def lines(found: Essentials) -> list[str]:
        return [line.sentence for line in five_lines(found) if not line.is_coming]

    return friends_file(essentials, lines, names=names, people=book_now(workshop()).people)


@part.get("/review/runs/<key>/answers")
def answers(key: str) -> Response:
    """What friends answered at each operation; how the review is sent, and how answers come in."""
    run = known_run(key)
    with suppress(Refused):  # what takes long is begun before somebody wants the file
        review_of(run.id)
    return _page(run, taken=_number("new"), known=_number("known"))


@part.post("/review/runs/<key>/answers")
def take(key: str) -> Response:
    """Take in the answers of a file, or of text that was put in."""
    run, sent = known_run(key), request.files.get("file")
    raw = sent.stream.read(MOST_BYTES + 1) if sent else b""
    try:
        sheet = read_answers(raw or request.form.get("text", "").encode("utf-8", "surrogatepass"))
        taken = take_answers(workshop(), fittings().settings, run.id, sheet)
    except Refused as refused:
        return _page(run, problem=refusal(refused), text=request.form.get("text", ""), status=422)
    return see_other(f"/review/runs/{run.id}/answers?new={taken.new}&known={taken.known}")


@part.post("/review/runs/<key>/answers/<answer>")
def settle(key: str, answer: str) -> Response:
    """Try what an answer says, set it aside, or bring it back."""
    run = known_run(key)
    becomes = _BECOMES.get(request.form.get("becomes", "")) or abort(400)
    kept, there = kept_answer(fittings().settings, run.id, answer), ""
    try:
        there = _tried(run, kept) if becomes == TRIED else ""
    except Refused as refused:
        return _page(run, problem=refusal(refused), status=422)
    set_answer(workshop(), fittings().settings, run.id, kept.id, becomes)
    return see_other(there or f"/review/runs/{run.id}/answers#{kept.operation}")


def _tried(run: RunState, answer: KeptAnswer) -> str:
    """Where it is tried: kept as a change, or as a form that asks for the rest."""
    found = review_of(run.id)
    change = change_of(found, answer)
    if change is None:
        return form_of(run, answer)
    words = {"change": words_of_change(found.past.book, found.past.run, change), "answer": said_of(answer)}
    keep_change(workshop(), fittings().settings, run.id, words, known_person(), change)
    return f"/review/runs/{run.id}/changes"


# the file


@part.get("/review/runs/<key>/friend.html")
def as_file(key: str) -> Response:
    """The review as one file, to be sent; with names where they are wanted."""
    found = review_of(key)
    if not found.is_weighed:
        return _page(known_run(key), problem=said("friends", "still weighing"), status=409)
    made = friends_file_of(found, names="names" in request.args)
    response = Response(file_html(made), content_type="text/html; charset=utf-8")
    response.headers.set("Content-Disposition", "attachment", filename=f"review-{made.slug}.html")
    return unkept(response)


@part.post("/review/runs/<key>/friend")
def order_pdf(key: str) -> Response:
    """Begin to make the same as a PDF."""
    run, found = known_run(key), review_of(key)
    if not found.is_weighed:
        return _page(run, problem=said("friends", "still weighing"), status=409)
    task = fittings().cards.make_friends(run.id, friends_file_of(found, names="names" in request.form))
    if task is None:
        return _page(run, problem=said("friends", "pdf waiting"), status=409)
    return see_other(f"/review/runs/{run.id}/friend/{task.id}")


@part.get("/review/runs/<key>/friend/<task_id>")
def progress(key: str, task_id: str) -> Response:
    """Whether the PDF is made; then the PDF."""
    run, task = known_run(key), fittings().cards.look(key, task_id)
    if task is None:
        return see_other(f"/review/runs/{key}/answers")
    return page("review/friend_pdf.html", "progress", run=run, task=task, why=_why(task))


@part.get("/review/runs/<key>/friend/<task_id>.pdf")
def pdf(key: str, task_id: str) -> Response:
    """The PDF; 404 where it is not made, or not any more."""
    task = fittings().cards.look(key, task_id)
    content = (fittings().cards.pdf(task) if task else None) or abort(404)
    called = friends_file_of(review_of(key), names=False).slug  # it is sent on as it is called
    headers = {"Content-Disposition": f'inline; filename="review-{called}.pdf"'}
    return unkept(Response(content, content_type="application/pdf", headers=headers))


# a code


@part.post("/review/runs/<key>/codes")
def make_code(key: str) -> Response:
    """A code that opens this review, as a link and as QR. The page itself is the answer: the code is kept nowhere."""
    run = known_run(key)
    days = whole_number(request.form.get("days", str(USUAL_DAYS))) or 0
    try:
        secret, code = make_friend_code(workshop(), fittings().settings, run.id, days, "names" in request.form)
    except Refused as refused:
        return _page(run, problem=refusal(refused), status=422)
    link = f"{first_page()}friend/{secret}"
    picture = drawn(link, sentence("friends-qr"))
    return page("review/friend_code.html", cached=False, run=run, code=code, link=link, picture=picture)


@part.post("/review/runs/<key>/codes/<code>/revoke")
def revoke_code(key: str, code: str) -> Response:
    """Take a code back, now."""
    revoke_friend_code(workshop(), fittings().settings, known_run(key).id, code)
    return see_other(f"/review/runs/{key}/answers#codes")


def _page(
    run: RunState,
    problem: str = "",
    text: str = "",
    taken: int | None = None,
    known: int | None = None,
    status: int = 200,
) -> Response:
    now = workshop().clock.now()
    codes = friend_codes(fittings().settings, run.id)
    new = None if taken is None else Taken(taken, known or 0)
    return page(
        "review/friend.html",
        status=status,
        run=run,
        operations=answers_shown(run),
        problem=problem,
        text=text,
        taken=said("friends", "answers taken", vars(new)) if new else "",
        codes=[(code, code.is_open(now)) for code in codes],
        days=(USUAL_DAYS, MOST_DAYS),
    )


def answers_shown(run: RunState) -> list[tuple[str, str, list[AnswerShown]]]:
    """(key, name, answers) of each operation to which there are any, in the order of the route."""
    kept = kept_answers(fittings().settings, run.id)
    found = [
        (key, name, [_shown(one) for one in kept if one.operation == key]) for key, name in operations_of(run).items()
    ]
    return [one for one in found if one[2]]


def _shown(kept: KeptAnswer) -> AnswerShown:
    saves = "" if kept.saves_minutes is None else number_in_words(kept.saves_minutes)
    return AnswerShown(kept, say("friend-way", kept.do), saves)


def _number(name: str) -> int | None:
    return whole_number(request.args.get(name, ""), 10_000)


def _why(task: TaskSeen) -> str:
    if task.failure is None:
        return ""
    if task.failure.kind == NoPango.__name__:
        return said("cards", "no pango", {"packages": PACKAGES})
    return said("friends", "pdf failed")
