"""What every screen needs: the workshop, who asks, a whole page or one block of it, local times, sentences."""

from collections.abc import Mapping
from datetime import UTC, datetime, tzinfo
from typing import Any, cast
from urllib.parse import quote

from flask import Flask, Response, current_app, make_response, redirect, render_template, request
from htmx_flask import Htmx
from htmx_flask.requests import HtmxHeaders

from runboard.floor.workshop import Workshop
from runboard.web.fittings import fittings
from runboard.words.sentences import moment_in_words, say, zone_of
from runboard.words.spans import span_in_words

PERSON_COOKIE = "person"


def init_app(app: Flask) -> None:
    """Plug into the app: htmx, and what templates may call."""
    Htmx(app)
    app.jinja_env.filters.update(local=local, span=span_in_words)
    app.jinja_env.globals.update(say=said)


def workshop() -> Workshop:
    """The one workshop of this app."""
    return fittings().workshop


def asking_person() -> str:
    """The key of the person who asks: named in the address, else who this browser said it is; empty if nobody."""
    return request.args.get("person") or request.cookies.get(PERSON_COOKIE, "")


def number_asked(name: str) -> int:
    """The small number of that name in the address; 0 for none, and for what is no number."""
    asked = request.args.get(name, "")
    return int(asked) if asked.isascii() and asked.isdigit() and len(asked) < 6 else 0


def shop_zone() -> tzinfo:
    """The shop's time zone."""
    return zone_of(workshop().books.latest().time_zone)


def page(template: str, block: str = "", status: int = 200, **context: Any) -> Response:
    """A whole page, or only its ``block`` where htmx asks for a part.

    ``Vary`` keeps a cached part from being shown as a page, and restoring history always gets the page.
    """
    htmx = cast(HtmxHeaders, cast(Any, request).htmx)
    if block and htmx and not htmx.history_restore_request:
        text = _render_block(template, block, context)
    else:
        text = render_template(template, **context)
    response = make_response(text, status)
    response.vary.add("HX-Request")
    return response


# What has a meaning in an address, and what is quoted already.
_OF_AN_ADDRESS = "%/:?#@!$&'()*+,;=~"


def see_other(address: str) -> Response:
    """After a form: go and look there (303)."""
    return cast(Response, redirect(quote(address, safe=_OF_AN_ADDRESS), code=303))


def said(family: str, code: str, facts: Mapping[str, Any] | None = None) -> str:
    """The sentence of a code in the shop's own time."""
    return say(family, code, facts, zone=shop_zone())


def local(moment: datetime | None) -> str:
    """A moment as weekday and time of day where the shop is; a dash where there is none."""
    return "–" if moment is None else moment_in_words(moment.astimezone(UTC), shop_zone())


def _render_block(template: str, block: str, context: Mapping[str, Any]) -> str:
    current_app.update_template_context(filled := dict(context))
    found = current_app.jinja_env.get_template(template)
    return "".join(found.blocks[block](found.new_context(filled)))
