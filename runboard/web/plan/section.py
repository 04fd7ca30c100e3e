"""The section of the Plan page as it was rendered last: twelve reloads of the same plan render it once."""

import threading
from dataclasses import dataclass, field
from typing import Any

from flask import render_template
from markupsafe import Markup

from runboard.floor.planning.plans import Shown
from runboard.web.door.pages import workshop
from runboard.web.door.run_pages import known_person
from runboard.web.plan.schedule import when_done

MOST_KEPT = 24


@dataclass
class _Sections:
    lock: threading.Lock = field(default_factory=threading.Lock)
    kept: dict[Any, tuple[Any, Markup]] = field(default_factory=dict)


def when_section(shown: Shown | None, first: int) -> Markup:
    """When it will be done, its chart from the sitting ``first`` on, for whoever asks."""
    sections: _Sections = workshop().kept.setdefault("sections", _Sections())
    at, stands = (known_person(), first), _stands(shown)
    with sections.lock:  # whoever asks meanwhile waits, and has the same
        known = sections.kept.get(at)
        if known is None or known[0] != stands:
            made = Markup(render_template("plan/_when.html", when=when_done(shown, first)))  # noqa: S704 - escaped there
            if len(sections.kept) >= MOST_KEPT:
                sections.kept.clear()
            known = sections.kept[at] = (stands, made)
        return known[1]


def _stands(shown: Shown | None) -> tuple[Any, ...]:
    """Everything that the section says, so that another is rendered where any of it is another."""
    shop = workshop()
    now = shop.clock.now().replace(second=0, microsecond=0)
    if shown is None:
        return now, _Same(shop.planned)
    runs = [(one.id, one.name, one.state, one.orders, len(one.revisions)) for one in shop.ledger.state.runs.values()]
    return now, _Same(shown.figures), _Same(shown.plan), shown.planned.calmer, shown.is_older, shop.book.revision, runs


@dataclass(frozen=True)
class _Same:
    """Equal to itself alone, and kept as long as it is compared with."""

    thing: Any

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.thing is self.thing

    def __hash__(self) -> int:
        return id(self.thing)
