"""Saving a form into the book: what is wrong comes back at its field, and an outdated form says what changed."""

from collections.abc import Callable
from typing import Any

from flask import request

from runboard.floor.changing.shop_book import book_record, change_book
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.shop.numbers import whole_number
from runboard.web.door.pages import said, workshop
from runboard.web.forms.form import Form

Record = dict[str, Any]


def seen() -> int:
    """The revision that the posted form was filled from."""
    return whole_number(request.form.get("seen", "")) or 0


def save_form(
    form: Form,
    change: Callable[[Record], None],
    about: Callable[[Record], object],
    prefix: str,
    fresh: Callable[[Record], Form],
) -> bool:
    """Whether the book was saved with ``change``. If not, the form says why, and holds all that was typed.

    ``prefix`` is where the form's part stands in the record. Where somebody saved the same part meanwhile, the form
    says what it is now (``fresh`` shows the latest) and takes the new revision: pressing Save again keeps this one.
    """
    form.seen = seen()
    try:
        change_book(workshop(), form.seen, change, about)
    except BookError as error:
        form.take(error.problems, prefix)
    except Refused as refused:
        form.problems.append(said("refused", refused.code, refused.facts))
        if refused.code == "book outdated":
            latest = book_record(workshop())
            form.seen = latest["revision"]
            form.problems += differences(form, fresh(latest))
    return not form.is_wrong


def differences(form: Form, latest: Form) -> list[str]:
    """What stands in the book now where it is not what the form says: 'Name: the CNC'."""
    found = []
    for field in latest.fields:
        if field.kind == "rows":
            names = {name for form_ in (form, latest) for name in form_.texts if name.startswith(f"{field.name}.")}
            if any(form.all(name) != latest.all(name) for name in names):
                found.append(f"{field.label}: they are others now")
        elif form.all(field.name) != latest.all(field.name) and field.kind != "kept":
            labels = dict(field.choices)
            texts = ["another"] if field.kind == "picture" and latest.text(field.name) else latest.all(field.name)
            now = ", ".join(labels.get(text, text) for text in texts)
            found.append(f"{field.label}: {now or 'nothing'}")
    return found
