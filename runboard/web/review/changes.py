"""Changes to try on what was measured: what each would have saved, the best two together, and another idea of one's own."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta
from itertools import pairwise
from typing import Any
from urllib.parse import urlencode

from flask import Blueprint, Response, request

from runboard.floor.changing.adopt import adopt_change
from runboard.floor.changing.kept_changes import MOST_COST, KeptChange, keep_change, kept_changes
from runboard.floor.looking.at_hand import book_now, shop_now
from runboard.floor.looking.look_back import estimates_now
from runboard.plan.change import Change, Helper
from runboard.plan.changed_route import can_be_one_visit
from runboard.review.changes.adopting import Adopting, adopting_of
from runboard.review.changes.nouns import NOUGHT, Span3, Tried
from runboard.review.essentials import Essentials
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book import Book
from runboard.shop.numbers import any_number
from runboard.web.door.pages import page, said, see_other, shop_zone, workshop
from runboard.web.door.run_pages import known_person
from runboard.web.fittings import fittings
from runboard.web.forms.changes import change_asked, choices, number_in
from runboard.web.review.looked import review_of
from runboard.words.changes import reason_of
from runboard.words.facts import number_in_words, span_in_words, unbroken
from runboard.words.making import done_in_words, making_in_words
from runboard.words.review import line_said
from runboard.words.review_things import DAYS_FROM, about, begun, idea_in_words
from runboard.words.sentences import say
from runboard.words.trying import words_of_change

LEDGER = "/review/changes"
_HALF_A_MINUTE = timedelta(seconds=30)

part = Blueprint("review_changes", __name__)


@dataclass(frozen=True)
class Shown:
    """A change as the page shows it: its sentence, why it is offered, what it would have saved as (what, said, how sure) rows, and in
    one word what comes first of it; ``refused`` says why it cannot be tried. ``kept`` is its id where somebody kept it, ``heard``
    how it was said then. ``done`` says that nothing is left to adopt, and ``moves`` what is from what to what, and from when on;
    ``notes`` where no book can say it. ``no_more`` says that a smaller one saves as much; ``is_wish`` that only its person speaks
    for it."""

    id: str
    sentence: str
    because: str = ""
    rows: tuple[tuple[str, str, str], ...] = ()
    refused: str = ""
    helps: bool = False
    kept: str = ""
    cost: str = ""
    heard: str = ""
    done: str = ""
    moves: tuple[str, ...] = ()
    notes: bool = False
    no_more: str = ""
    is_wish: bool = False


@part.get("/review/runs/<key>/changes")
def changes(key: str) -> Response:
    """What was tried, the most helpful first; asked for again until it is there."""
    found = review_of(key)
    run, book = found.past.run, book_now(workshop())
    asked = request.args.get("ask", "")
    kept = {change.id: change for change in kept_changes(fittings().settings, run.id)}
    tried = _shown(found, found.tried or (), kept)
    left = {one.id: one.sentence for one in tried if not one.done}
    return page(
        "review/changes.html",
        "tried",
        run=run,
        line=unbroken(line_said(found, "try")),
        tried=tried,
        is_coming=not found.is_weighed,
        to_try=[change for change in kept.values() if all(change.id != one.kept for one in tried)],
        together=_together(found, left),
        order=_order(found, left),
        given=request.args,
        ask=asked,
        again=asked and f"?{urlencode({'ask': asked})}",
        seen=book.revision,
        **_forms(run, book),
    )


def _forms(run: RunState, book: Book) -> dict[str, Any]:
    """What an idea of one's own can be made of."""
    pairs = list(pairwise(run.route.product.operations))
    return {
        **choices(book),
        "ticked": [],
        "skills": sorted({skill for person in book.people for skill in person.skills}),
        "pairs": pairs,
        "visits": [pair for pair in pairs if can_be_one_visit(book, *pair)],
    }


@part.post("/review/runs/<key>/changes")
def keep(key: str) -> Response:
    """Keep another idea, to be tried on what was measured."""
    found = review_of(key)
    return _kept(found, change_asked(request.form, found.past.run.id, shop_zone()))


@part.post("/review/runs/<key>/changes/cost")
def cost(key: str) -> Response:
    """What an idea costs: it is kept with that, and paid back or not."""
    found = review_of(key)
    return _kept(found, _asked_for(found).idea.change)


@part.post("/review/runs/<key>/changes/adopt")
def adopt(key: str) -> Response:
    """A change holds from the next run on."""
    found = review_of(key)
    tried, seen = _asked_for(found), number_in(request.form.get("seen", ""))
    made = adopt_change(workshop(), found.past.run.id, tried, known_person(), seen, _sentence(found, tried))
    return see_other(f"{LEDGER}?made={made.id}#{made.id}")


def _kept(found: Essentials, change: Change) -> Response:
    run, typed = found.past.run, request.form.get("cost", "").strip()
    worth = any_number(typed) if typed else None
    if typed and worth is None:
        raise Refused("cost wrong", most=MOST_COST)
    words = {"change": words_of_change(book_now(workshop()), run, change), "answer": ""}
    keep_change(workshop(), fittings().settings, run.id, words, known_person(), change, worth)
    return see_other(f"/review/runs/{run.id}/changes")


def _asked_for(found: Essentials) -> Tried:
    """Refused 'idea not tried' where the review has none of that id."""
    asked = request.form.get("idea", "")
    idea = next((tried for tried in found.tried or () if tried.idea.id == asked), None)
    if idea is None:
        raise Refused("idea not tried")
    return idea


def _shown(found: Essentials, some: Iterable[Tried], kept: Mapping[str, KeptChange]) -> list[Shown]:
    ordered = sorted(some, key=_place)
    book, state = shop_now(workshop())
    adopting = adopting_of(found.past, book, state, [tried.idea.change for tried in ordered], estimates_now(workshop()))
    names = {tried.idea.id: idea_in_words(found.past, tried.idea.change) for tried in ordered}
    return [
        _one(book, tried, names, kept.get(tried.idea.id), adopting[tried.idea.change])
        for tried in ordered
        if tried.idea.id in kept or not _is_idle_helper(tried)
    ]


def _place(tried: Tried) -> tuple[bool, bool, timedelta, timedelta]:
    """What is tried first comes first; wishes stand below."""
    return tried.idea.is_wish, tried.refused is not None, -tried.earlier.mid, -tried.hands.mid


def _is_idle_helper(tried: Tried) -> bool:
    """A helper who is offered because hands held the run, and saves nothing: nobody knows why, so it only puzzles."""
    return isinstance(tried.idea.change, Helper) and tried.refused is None and not tried.helps


def _one(book: Book, tried: Tried, names: Mapping[str, str], kept: KeptChange | None, adopting: Adopting) -> Shown:
    idea, other = tried.idea, names.get(tried.no_more_than, "")
    refused = tried.refused or (adopting.refused and (adopting.refused.code, adopting.refused.facts))
    if tried.refused is None and adopting.line is not None:  # what was promised then, not what is reckoned now
        tried = replace(tried, earlier=adopting.line.earlier, hands=adopting.line.hands, sooner=1.0)
    return Shown(
        idea.id,
        begun(names[idea.id]),
        unbroken(reason_of(idea)),
        () if tried.refused else tuple((what, *_parted(unbroken(said))) for what, said in _rows(tried)),
        _refusal(*refused) if refused and not adopting.is_done else "",
        helps=tried.helps,
        kept="" if kept is None else kept.id,
        cost="" if idea.cost is None else number_in_words(idea.cost),
        heard="" if kept is None else kept.answer,
        done=unbroken(done_in_words(book, idea.change, adopting)),
        moves=() if refused else tuple(map(unbroken, making_in_words(adopting))),
        notes=adopting.made is not None and adopting.made.did == "noted",
        is_wish=idea.is_wish,
        no_more=say("review-change", "no more", {"other": other}) if other else "",
    )


def _parted(said: str) -> tuple[str, str]:
    """A figure and its range in brackets, which may stand below it; '' where it has none."""
    figure, _, rest = said.partition(" (")
    return figure, rest and f"({rest}"


def _refusal(code: str, facts: Mapping[str, Any]) -> str:
    """A day to come is what a plan asks for; a run that is over asks for one of its own."""
    return said("refused", "try hours then" if code == "try hours" else code, facts)


def _sentence(found: Essentials, tried: Tried) -> str:
    return begun(idea_in_words(found.past, tried.idea.change))


def _rows(tried: Tried) -> Iterable[tuple[str, str]]:
    yield _moved("earlier", "later", tried.earlier, tried.sooner)
    yield _moved("hands", "more hands", tried.hands)
    if round(tried.pieces):
        yield say("review-change", "pieces"), number_in_words(round(tried.pieces))
    if tried.idea.cost is not None:
        yield say("review-change", "cost"), number_in_words(tried.idea.cost)
    if tried.payback_runs is not None:
        facts = {
            "runs": number_in_words(round(tried.payback_runs, 1)),
            "months": "none" if tried.payback_months is None else number_in_words(round(tried.payback_months, 1)),
        }
        yield say("review-change", "payback"), say("review-change", "payback after", facts)


def _moved(less: str, more: str, span: Span3, sooner: float = 1.0) -> tuple[str, str]:
    """What is less of it; where it is more, that, the other way round; where it is neither, that alone."""
    if not (span.low or span.mid or span.high):
        return say("review-change", f"no {less}"), ""
    if span.mid < NOUGHT:
        return say("review-change", more), range_of(Span3(-span.high, -span.mid, -span.low))
    return say("review-change", less), range_of(span, sooner)


def range_of(span: Span3, goes: float = 1.0) -> str:
    """'a day (20 h to 22 h)', '10 min (−5 min to 25 min)', 'nothing'; of what not all goes have, in how many of ten."""
    if not (span.low or span.mid or span.high):
        return say("review-worth", "nothing")
    mid, is_days = _signed(span.mid), abs(span.mid) >= DAYS_FROM
    low, high = ((_exact(each) if is_days else _signed(each)) for each in (span.low, span.high))
    if low == high and goes == 1:
        return mid
    in_ten = round(10 * goes)
    some = {"mid": mid, "low": low if span.low else say("review-worth", "nothing"), "high": high, "goes": in_ten}
    return say("review-change", "range in ten" if 0 < in_ten < 10 and span.low <= NOUGHT else "range", some)


def some_of(span: Span3) -> str:
    """The same for a sentence that has its own words for nothing: 'none'."""
    return range_of(span) if span.low or span.mid or span.high else "none"


def _exact(span: timedelta) -> str:
    """In whole hours: what stands in brackets beside 'a day'."""
    hours = round(abs(span) / timedelta(hours=1)) * timedelta(hours=1)
    return ("−" if span <= -_HALF_A_MINUTE else "") + span_in_words(hours)


def _signed(span: timedelta) -> str:
    return ("−" if span <= -_HALF_A_MINUTE else "") + about(span)


def _together(found: Essentials, left: Mapping[str, str]) -> str:
    """The best two at once; '' where one of them is done already."""
    together = found.together
    if together is None or together.pair is None or together.earlier is None or together.hands is None:
        return ""
    if not {*together.pair} <= {*left}:
        return ""
    changes = {tried.idea.id: tried.idea.change for tried in found.tried or ()}
    one, other = (idea_in_words(found.past, changes[id_]) for id_ in together.pair)
    facts = {
        "one": begun(one),
        "other": other,
        "earlier": some_of(together.earlier),
        "hands": some_of(together.hands),
    }
    return unbroken(say("review-change", "together", facts))


def _order(found: Essentials, left: Mapping[str, str]) -> list[str]:
    return [left[id_] for id_ in found.together.order if id_ in left] if found.together else []
