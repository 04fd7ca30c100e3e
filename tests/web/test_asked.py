"""A form asks for what the dataclass of a record declares, in the words of the catalogue."""

from dataclasses import dataclass
from datetime import timedelta
from typing import Literal

from werkzeug.datastructures import MultiDict

from runboard.plan.before.kinds import KINDS
from runboard.shop.book import Book, Person, Service, Station
from runboard.shop.book_json import book_to_json
from runboard.shop.product import Product
from runboard.shop.record import fields_of
from runboard.web.forms import asked, placed
from runboard.web.forms.asked import form_of
from runboard.web.forms.form import posted
from runboard.words.sentences import catalogue, message_name

SHOP = book_to_json(Book(services=(Service("air", "Extraction", 1),)))
RECORDS = (
    Book,
    Product,
    *(one.inner for one in fields_of(Book).values() if one.inner is not object),
    *(kind.question for kind in KINDS.values()),
)


@dataclass(frozen=True)
class Vice(Station):
    """A station of somebody who wrote a few more lines."""

    jaws: Literal["wood", "steel"] = "wood"
    warm_up: timedelta = timedelta(0)
    spare: tuple[str, ...] = ()


def within(record: type) -> set[type]:
    inner = {one.inner for one in fields_of(record).values() if one.inner is not object}
    return {record}.union(*map(within, inner))


def test_a_field_that_is_added_is_asked_for() -> None:
    fields = {one.name: one for one in form_of(Vice, SHOP)[0].fields}

    assert (fields["jaws"].label, fields["jaws"].kind) == ("Jaws", "choice")
    assert fields["jaws"].choices == (("wood", "wood"), ("steel", "steel"))
    assert (fields["warm_up_minutes"].label, fields["warm_up_minutes"].empty) == ("Warm up", 0)
    assert fields["services"].choices == (("air", "Extraction"),)


def test_and_what_is_typed_there_goes_into_the_record() -> None:
    form = posted(form_of(Vice, SHOP), MultiDict({"jaws": "steel", "warm_up_minutes": "5", "spare": "pads\nkeys"}))

    said = form.record()

    assert (said["jaws"], said["warm_up_minutes"], said["spare"]) == ("steel", "5", ["pads", "keys"])


def test_the_parts_of_the_forms_name_fields_that_there_are() -> None:
    own = {"noise_rule", "watch_usual"}
    named = [
        (record, name)
        for table in (placed.ELSEWHERE, placed.HALF)
        for record, names in table.items()
        for name in names.split()
    ]
    named += [(record, name) for record, parts in placed.PARTS.items() for part in parts for name in part.names.split()]

    assert [(record, name) for record, name in named if name not in {*fields_of(record), *own}] == []


def test_every_word_of_the_forms_is_of_a_field() -> None:
    more = ("", "hint", "one", "nothing", "wrong")
    known = {
        message_name("ask", f"{asked.words_of(record)} {name} {word}")
        for record in set().union(*map(within, RECORDS))
        for name, one in fields_of(record).items()
        for word in (*more, *one.choices)
    }

    assert {name for name in catalogue("en").names if name.startswith("ask-")} - known == set()


def test_nobody_is_asked_who_is_gone() -> None:
    assert "removed" not in {one.name for section in form_of(Person, SHOP) for one in section.fields}
