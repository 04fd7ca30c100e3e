"""A review without names: of people, of customers, of what they ordered.

What holds a name in its place is given another there, before anything is worded: 'lead', 'helper', 'order 2'. Names that
stand in what people typed (an operation's name, why a piece was lost) are then put out of the finished text.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from runboard.review.essentials import Essentials
from runboard.review.past import Past
from runboard.run.fold.state import OrderLine, RunState, Tray
from runboard.shop.book import Book, Person
from runboard.words.facts import date_in_words, zone_of
from runboard.words.sentences import sentence

# Letters of a name that is looked for: 'Jo' is one, 'jo' may be anything.
_LEAST, _LEAST_IN_ANY_CASE = 2, 3
_WORD = re.compile(r"[^\W\d_]+")
_PART = re.compile(r"[^\W\d_]{3,}")
_LONG_PART = re.compile(r"[^\W\d_]{4,}")


@dataclass(frozen=True)
class Unnamed:
    """Puts names out of a text. ``people`` and ``others`` say what stands in place of which name, ``parts`` of which part of
    a customer's."""

    people: Mapping[str, str]
    others: Mapping[str, str]
    parts: Mapping[str, str]

    def __call__(self, text: str) -> str:
        """The text without any of the names as they are written, whole words only."""
        return _without(text, {**self.others, **self.people})

    def typed(self, text: str) -> str:
        """The same of what somebody typed in haste: in whatever case, and a customer by a part of the name."""
        return self(_without(text, {**self.parts, **self.others, **self.people}, re.IGNORECASE))


AS_IT_IS = Unnamed({}, {}, {})


def unnamed(essentials: Essentials, people: Sequence[Person] = ()) -> tuple[Essentials, Unnamed]:
    """The essentials with nobody's name in its place, and what puts names out of texts. ``people`` are those of the book as it
    is now: who came after the run was opened pressed in it all the same, and a key reads like a name."""
    happened = essentials.happened
    past = _with_people(essentials.past, people)
    stand_ins = _stand_ins(past.book)
    others = dict(_others(past.run))
    called = [*past.book.people, *people]
    said = Unnamed(dict(_people(past, called, stand_ins)), others, dict(_parts(past.run, others)))
    name = _name_of(past, said)
    if name != past.run.name:
        said = replace(said, others={**_run_itself(past.run), **others})
    lines = tuple(replace(line, line=_order(at), whom="", text="") for at, line in enumerate(happened.order_lines, 1))
    lost = tuple(
        replace(one, reason=said.typed(one.reason), wood=said.typed(one.wood), board=said.typed(one.board))
        for one in happened.lost
    )
    found = replace(
        essentials,
        past=_past(past, stand_ins, name),
        happened=replace(happened, order_lines=lines, lost=lost),
    )
    return found, said


def _with_people(past: Past, people: Sequence[Person]) -> Past:
    known = {one.key for one in past.book.people}
    more = tuple(one for one in people if one.key not in known)
    return replace(past, book=replace(past.book, people=(*past.book.people, *more)))


def _past(past: Past, stand_ins: Mapping[str, str], name: str) -> Past:
    book = replace(past.book, people=tuple(replace(one, name=stand_ins[one.key]) for one in past.book.people))
    people = {key: replace(one, name=_guest()) if one.name else one for key, one in past.state.people.items()}
    run = replace(
        past.run,
        name=name,
        orders=tuple(_line(at, one) for at, one in enumerate(past.run.orders, 1)),
        trays={key: _tray(tray) for key, tray in past.run.trays.items()},
    )
    state = replace(past.state, people=people, runs={**past.state.runs, run.id: run})
    return replace(past, book=book, state=state, run=run)


def _name_of(past: Past, said: Unnamed) -> str:
    """A run's own name where it holds none that is known, and no word that could be one, which is every word not written
    small but for those that its product is called by; else its product and day."""
    run = past.run
    product = {word.lower() for word in _WORD.findall(run.route.product.name)}
    if said.typed(run.name) == run.name and all(
        word.islower() or word.lower() in product for word in _WORD.findall(run.name)
    ):
        return run.name
    day = date_in_words(run.opened_at.astimezone(zone_of(past.book.time_zone)), with_year=True)
    return sentence("friend-run-of", {"product": said(run.product_name), "day": day})


def _line(at: int, line: OrderLine) -> OrderLine:
    return replace(line, line=_order(at), whom="", text="")


def _tray(tray: Tray) -> Tray:
    return replace(tray, places=dict.fromkeys(tray.places, ("", ""))) if tray.places else tray


def _stand_ins(book: Book) -> dict[str, str]:
    """Key → 'lead', 'helper'; with a number where there are several."""
    found = {}
    for access in dict.fromkeys(one.access for one in book.people):
        of_it: list[Person] = [one for one in book.people if one.access == access]
        for number, one in enumerate(of_it, 1):
            found[one.key] = sentence(f"friend-{access}", {"number": number if len(of_it) > 1 else 0})
    return found


def _guest() -> str:
    return sentence("friend-guest")


def _order(at: int) -> str:
    return sentence("friend-order", {"number": at})


def _people(past: Past, called: Iterable[Person], stand_ins: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """Whole names and their parts: of those in the book, by whatever name they went, and of guests."""
    named = [(one.name, stand_ins[one.key]) for one in called]
    named += [(one.name, _guest()) for one in past.state.people.values() if one.name]
    for name, stand_in in named:
        yield from ((part, stand_in) for part in (*_PART.findall(name), name.strip()) if part)


def _others(run: RunState) -> Iterator[tuple[str, str]]:
    """What is known of who ordered: for whom, the text, the number that the order has elsewhere."""
    texts = [(text, "friend-order-text") for order in run.orders for text in (order.text, *_placed(run, order))]
    whom = [(order.whom, "friend-customer") for order in run.orders]
    for name, stand_in in (*texts, *whom):
        if _PART.search(name):  # '12' is no name, and stands in every figure
            yield name.strip(), sentence(stand_in)


def _run_itself(run: RunState) -> dict[str, str]:
    return {run.name.strip(): sentence("friend-this-run")} if _PART.search(run.name) else {}


def _parts(run: RunState, others: Mapping[str, str]) -> Iterator[tuple[str, str]]:
    """The words of those names, but for words of the trade that the product itself is called by."""
    product = run.route.product
    own = {part.lower() for name in (product.name, product.wood, *(one.name for one in product.operations))
           for part in _LONG_PART.findall(name)}  # fmt: skip
    for name, stand_in in others.items():
        yield from ((part, stand_in) for part in _LONG_PART.findall(name) if part.lower() not in own)


def _placed(run: RunState, order: OrderLine) -> Iterable[str]:
    return (text for tray in run.trays.values() for line, text in tray.places.values() if line == order.line)


def _without(text: str, names: Mapping[str, str], flags: int = 0) -> str:
    least = _LEAST_IN_ANY_CASE if flags else _LEAST
    found = sorted((name for name in names if len(name) >= least), key=len, reverse=True)
    if not found or not text:
        return text
    known = {name.lower(): names[name] for name in reversed(found)}
    pattern = re.compile("|".join(rf"(?<!\w){re.escape(name)}(?!\w)" for name in found), flags)
    return pattern.sub(lambda match: known[match[0].lower()], text)
