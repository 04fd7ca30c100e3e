"""One review, shown to who has a code for it: read, and answered by a form. Nobody has to pair for it, and nothing else opens."""

from collections.abc import Mapping

from flask import Blueprint, Response, request

from runboard.cards.friends_file import FriendsFile
from runboard.cards.friends_page import Shown, said_html, shown_html
from runboard.floor.letting_in.friend_codes import FriendCode, answer_by_code, open_by_code
from runboard.floor.looking.at_hand import made_once
from runboard.review.answers import sheet_from
from runboard.run.refusal import Refused
from runboard.web.door.pages import refusal, see_other, unkept, workshop
from runboard.web.door.sessions import door
from runboard.web.fittings import fittings
from runboard.web.review.friend import friends_file_of
from runboard.web.review.looked import review_of
from runboard.words.sentences import sentence

KEPT_SECONDS = 10
_STATUS = {"friend too often": 429, "friend unknown": 404, "friend over": 410, "friend revoked": 410}

part = Blueprint("friend_code", __name__)


@part.get("/friend/<token>")
def look(token: str) -> Response:
    """The review, with the form; afterwards the thanks."""
    try:
        code = _open(token)
        return _said(sentence("friends-thanks"), 200) if "sent" in request.args else _review(token, code)
    except Refused as refused:
        return _said(refusal(refused), _STATUS.get(refused.code, 409))


@part.post("/friend/<token>")
def answer(token: str) -> Response:
    """Take the answers of the form in; what cannot be taken stands there again, with why."""
    try:
        code = _open(token)
    except Refused as refused:
        return _said(refusal(refused), _STATUS.get(refused.code, 409))
    try:
        answer_by_code(workshop(), fittings().settings, code, sheet_from(_record(request.form)))
    except Refused as refused:
        return _review(token, code, request.form, refusal(refused), 422)
    return see_other(f"/friend/{token}?sent=1")


def _open(token: str) -> FriendCode:
    return open_by_code(workshop(), fittings().settings, token, door(), request.remote_addr or "")


def _review(
    token: str, code: FriendCode, typed: Mapping[str, str] | None = None, problem: str = "", status: int = 200
) -> Response:
    file = _file(code)
    return _answered(shown_html(file, f"/friend/{token}", typed or {}, problem), status)


def _file(code: FriendCode) -> FriendsFile:
    """The review, made once in a while: whoever loads it again and again has no more of the server than its share."""
    while_it_lasts = workshop().clock.now().timestamp() // KEPT_SECONDS
    return made_once(
        workshop(),
        "friend",
        (code.run, code.names),
        while_it_lasts,
        lambda: friends_file_of(review_of(code.run), names=code.names),
    )


def _record(form: Mapping[str, str]) -> dict[str, object]:
    """What the form says, as a file would say it."""
    keys = dict.fromkeys(name.partition("-")[2] for name in form if name.startswith(("do-", "why-", "saves-")))
    some = [
        {
            "operation": key,
            "do": form.get(f"do-{key}", ""),
            "why": form.get(f"why-{key}", ""),
            "saves_minutes": form.get(f"saves-{key}", ""),
        }
        for key in keys
    ]
    head = {name: form.get(name, "") for name in ("run", "opened", "from")}
    return {"runboard_answers": 1, **head, "answers": some}


def _said(text: str, status: int) -> Response:
    return _answered(said_html(text, text), status)


def _answered(shown: Shown, status: int) -> Response:
    response = unkept(Response(shown.text, status, content_type="text/html; charset=utf-8"))
    response.headers["Content-Security-Policy"] = shown.policy
    return response
