"""Where a route lives that is being changed: in the book, or in a run on its way, from a tray on."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, Protocol

from flask import abort, request

from runboard.floor.changing.route_change import first_untouched, revise_route, run_product
from runboard.floor.changing.shop_book import book_record
from runboard.run.fold.state import RunState
from runboard.run.refusal import Refused
from runboard.shop.book_json import BookError
from runboard.web.door.pages import said, workshop
from runboard.web.door.run_pages import known_person, known_run
from runboard.web.forms.form import Form
from runboard.web.forms.saving import Record, save_form, seen

Change = Callable[[Record], None]


class Home(Protocol):
    """``product`` is the record of the route as it is; ``save`` puts a change of it there, or says in the form why not."""

    base: str
    back: str
    screen_title: str

    @property
    def run(self) -> RunState | None: ...
    def product(self) -> Record: ...
    def revision(self) -> int: ...
    def save(self, form: Form, change: Change, about: Callable[[Record], object], operation: str) -> bool: ...


@dataclass
class InBook:
    """A product's route in the book."""

    key: str
    run: RunState | None = None

    @property
    def base(self) -> str:
        return f"/plan/products/{self.key}"

    @property
    def back(self) -> str:
        return self.base

    @property
    def screen_title(self) -> str:
        return str(self.product()["name"])

    def product(self) -> Record:
        return self._of(book_record(workshop()))

    def revision(self) -> int:
        return int(book_record(workshop())["revision"])

    def _of(self, record: Record) -> Record:
        found: Record | None = next((one for one in record["products"] if one["key"] == self.key), None)
        return found or abort(404)

    def save(self, form: Form, change: Change, about: Callable[[Record], object], operation: str) -> bool:
        record = book_record(workshop())
        at = [one["key"] for one in record["products"]].index(self.key) if self._of(record) else 0
        place = _place(record["products"][at], operation)

        def within(latest: Record) -> None:
            change(next(one for one in latest["products"] if one["key"] == self.key))

        def shown(latest: Record) -> object:
            return about(self._of(latest)) if any(one["key"] == self.key for one in latest["products"]) else None

        return save_form(form, within, shown, f"products[{at}]{place}", lambda latest: form)


@dataclass
class InRun:
    """The route of a run on its way; every change is an event that says from which tray on it holds."""

    key: str

    @property
    def run(self) -> RunState:
        return known_run(self.key)

    @property
    def base(self) -> str:
        return f"/plan/runs/{self.key}"

    @property
    def back(self) -> str:
        return f"{self.base}/route"

    @property
    def screen_title(self) -> str:
        return self.run.name

    def product(self) -> Record:
        return run_product(workshop(), self.key)

    def revision(self) -> int:
        return len(self.run.revisions)

    def from_tray(self) -> str:
        """The tray that the form names, else the first one that nobody has begun."""
        return request.form.get("from_tray") or first_untouched(self.run)

    def save(self, form: Form, change: Change, about: Callable[[Record], object], operation: str) -> bool:
        form.seen = seen()
        if form.seen != self.revision():
            form.seen = self.revision()
            form.problems.append(said("refused", "book outdated"))
            return False
        why = request.form.get("why", "").strip()
        try:
            revise_route(workshop(), self.key, change, self.from_tray(), why, known_person())
        except BookError as error:
            form.take(error.problems, f"product{_place(self.product(), operation)}")
        except Refused as refused:
            form.problems.append(said("refused", refused.code, refused.facts))
        return not form.is_wrong


def _place(product: Record, operation: str) -> str:
    keys = [one["key"] for one in product["operations"]]
    return f".operations[{keys.index(operation)}]" if operation in keys else ""


def home_of(where: str, key: str) -> Any:
    """The home of a route by its address: 'products' or 'runs', and the key. 404 for what nobody knows."""
    home = InBook(key) if where == "products" else InRun(key)
    home.product()
    return home
