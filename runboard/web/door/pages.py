"""What every screen needs: the workshop, who asks, a whole page or one block of it, local times, sentences."""

import json
from collections.abc import Mapping
from datetime import datetime, tzinfo
from functools import lru_cache
from hashlib import blake2b
from typing import Any, cast
from urllib.parse import quote

from flask import Flask, Response, current_app, make_response, redirect, render_template, request
from fluent.runtime.types import fluent_number
from htmx_flask import Htmx
from htmx_flask.requests import HtmxHeaders
from markupsafe import Markup, escape

from runboard.floor.workshop import Workshop
from runboard.run.log.event import write_moment
from runboard.run.refusal import Refused
from runboard.web.door.packing import LEAST, packed_behind
from runboard.web.fittings import fittings
from runboard.words.facts import moment_in_words, span_in_words, unbroken_page, zone_of
from runboard.words.sentences import catalogue, say

PERSON_COOKIE = "person"


def init_app(app: Flask) -> None:
    """Plug into the app: htmx, and what templates may call."""
    Htmx(app)
    app.jinja_env.filters.update(local=local, span=span_in_words, words=words)
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


def page(template: str, block: str = "", status: int = 200, *, cached: bool = True, **context: Any) -> Response:
    """A whole page, or only its ``block`` where htmx asks for a part.

    ``Vary`` keeps a cached part from being shown as a page, and restoring history always gets the page. What must lie in
    no browser's cache is not ``cached``.
    """
    whole = not (block and asks_for_a_part())
    text = render_template(template, **context) if whole else _render_block(template, block, context)
    response = make_response(unbroken_page(text), status)
    response.vary.add("HX-Request")
    return response if cached else unkept(response)


def asks_for_a_part() -> bool:
    """Whether htmx asks for a part of a page that is there."""
    htmx = cast(HtmxHeaders, cast(Any, request).htmx)
    return bool(htmx) and not htmx.history_restore_request


def unkept(response: Response) -> Response:
    """The same answer, which no cache keeps."""
    response.headers["Cache-Control"] = "no-store"
    return response


def json_file(record: Mapping[str, Any], name: str) -> Response:
    """A record as a file to keep."""
    response = Response(json.dumps(record, indent=1, ensure_ascii=False) + "\n", content_type="application/json")
    response.headers.set("Content-Disposition", "attachment", filename=name)
    return unkept(response)


def what_changed(tag: str, text: str) -> Response:
    """A JSON object for a page that asks again and again: 304 while ``tag`` is the same, else with the time as ``now``."""
    # The tag names the asking person as the address did; a header takes only some characters.
    etag = blake2b(tag.encode("utf-8", "surrogatepass"), digest_size=12).hexdigest()
    response = Response(content_type="application/json")
    response.headers["Cache-Control"] = "private, no-cache"
    response.set_etag(etag, weak=True)
    if request.if_none_match.contains_weak(etag):
        response.status_code = 304
    else:  # the text is kept from one answer to the next, the time is not: the page sets its clock by it
        _fill(response, f'{{"now":"{write_moment(workshop().clock.now())}",', text)
    return response


def _fill(response: Response, head: str, text: str) -> None:
    """A JSON object with ``head`` for its brace, gzipped where the browser takes it: the object itself only once."""
    response.vary.add("Accept-Encoding")
    if len(text) >= LEAST and "gzip" in request.headers.get("Accept-Encoding", ""):
        response.set_data(packed_behind(head, text, skip=1))
        response.headers["Content-Encoding"] = "gzip"
    else:
        response.set_data(head + text[1:])


# What has a meaning in an address, and what is quoted already.
_OF_AN_ADDRESS = "%/:?#@!$&'()*+,;=~"


def see_other(address: str) -> Response:
    """After a form: go and look there (303)."""
    return cast(Response, redirect(quote(address, safe=_OF_AN_ADDRESS), code=303))


def said(family: str, code: str, facts: Mapping[str, Any] | None = None) -> str:
    """The sentence of a code in the shop's own time."""
    return say(family, code, facts, zone=shop_zone(), now=workshop().clock.now())


# Markup that any text of a page may have around its words.
_AROUND = {
    "b": Markup("<b>"), "end_b": Markup("</b>"), "code": Markup("<code>"), "end_code": Markup("</code>"),
    "end_link": Markup("</a>"), "end_span": Markup("</span>"),
}  # fmt: skip


# A filter, for then a text without facts is said once, when its template is compiled. Typed, for a fact that is markup is no text that reads like it.
@lru_cache(maxsize=4096, typed=True)
def words(name: str, /, **facts: Any) -> Markup:
    """A text of a page (``static/words/en.pages.*.ftl``) with its facts, which are escaped; the text itself is markup already:
    ``{{ "plan-remove"|words(product=product.name) }}``.

    ``link`` (or ``link_…``, where there are two) is an address, for ``{ $link }there{ $end_link }``, or a whole tag as markup.
    A fact that may be missing is 0 then, which chooses the variant without it.
    """
    ready = {key: _ready(key, value) for key, value in facts.items()}
    text, _wrong = catalogue("en").format_pattern(catalogue("en").get_message(name).value, _AROUND | ready)
    return Markup(text)  # noqa: S704 - facts are escaped above, and a test keeps markup out of the texts


def _ready(name: str, fact: Any) -> Any:
    """A whole number chooses the plural and is written without marks between thousands, as everywhere on the pages."""
    if isinstance(fact, int):
        return fluent_number(fact, useGrouping=False)
    is_address = name.startswith("link") and not isinstance(fact, Markup)
    return Markup('<a href="{}">').format(fact) if is_address else escape(fact)


def refusal(refused: Refused) -> str:
    """The sentence of what was refused."""
    return said("refused", refused.code, refused.facts)


def local(moment: datetime | None) -> str:
    """A moment as weekday and time of day where the shop is, dated where it is far; a dash where there is none."""
    return "–" if moment is None else moment_in_words(moment, shop_zone(), now=workshop().clock.now())


def _render_block(template: str, block: str, context: Mapping[str, Any]) -> str:
    current_app.update_template_context(filled := dict(context))
    found = current_app.jinja_env.get_template(template)
    return "".join(found.blocks[block](found.new_context(filled)))
