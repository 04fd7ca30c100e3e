"""What stands on each kind of card: frozen records of finished text, ready to be sent to another process.

They are made in one language by ``of_a_run.py``; nothing here is looked up again.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Link:
    """What opens a tray: the address in its QR code, and the short code to type."""

    address: str
    code: str


@dataclass(frozen=True)
class Care:
    """A caution with the ISO 7010 numbers of its signs."""

    text: str
    signs: tuple[str, ...] = ()


@dataclass(frozen=True)
class FirstPiece:
    """A first-piece check and when it is due; ``measure`` has nominal and tolerance, or is empty for one by eye.
    ``limits`` are what a good one lies between."""

    when: str
    text: str
    measure: str = ""
    limits: str = ""


@dataclass(frozen=True)
class Cell:
    """A labelled place for a moment or a text: printed where it is known, else blank to write in. ``mark`` is its label where
    there is room for a number alone."""

    label: str
    text: str = ""
    mark: str = field(default="", compare=False)


@dataclass(frozen=True)
class CardWait:
    """The wait after an operation: what it is, its moments, and what else to know. The first ``bounds`` of its cells say from
    when it may go on, and until when it must."""

    title: str
    cells: tuple[Cell, ...] = ()
    notes: tuple[str, ...] = ()
    bounds: int = 0


@dataclass(frozen=True)
class StepLine:
    """One step with its boxes. A step that is done carries its counts."""

    number: int
    name: str
    where: str
    done: bool = False
    good: str = ""
    scrap: str = ""


@dataclass(frozen=True)
class Work:
    """One operation on a tray's traveller. ``signs`` are its cautions in two words each, in the same order as ``care``."""

    steps: tuple[StepLine, ...]
    care: tuple[Care, ...] = ()
    signs: tuple[Care, ...] = ()
    how: tuple[str, ...] = ()
    setup: tuple[tuple[str, str], ...] = ()
    checks: tuple[FirstPiece, ...] = ()
    places: tuple[Cell, ...] = ()
    wait: CardWait | None = None

    @property
    def done(self) -> bool:
        return all(step.done for step in self.steps)


@dataclass(frozen=True)
class Foot:
    """What stands at the foot of every card; on what leaves the shop only which one it is."""

    bad: str
    danger: str
    print: str


@dataclass(frozen=True)
class Traveller:
    """The card that goes with a tray. ``about`` is pieces and wood, ``due`` when they are wanted. A ``full`` one has on it
    what else stands on the station's sheet, on as many cards as that takes."""

    tray: str
    run: str
    product: str
    about: tuple[str, ...]
    due: str
    orders: tuple[str, ...]
    works: tuple[Work, ...]
    link: Link
    foot: Foot
    picture: str | None = None
    full: bool = False


@dataclass(frozen=True)
class Shown:
    """One line of an operation's instructions, with its picture where it has one."""

    text: str
    picture: str | None = None


@dataclass(frozen=True)
class StationWork:
    """One operation as a station's sheet tells it. ``at`` says which steps of the route it is."""

    name: str
    at: str
    care: tuple[Care, ...] = ()
    start: tuple[str, ...] = ()
    setup: tuple[tuple[str, str], ...] = ()
    how: tuple[Shown, ...] = ()
    checks: tuple[FirstPiece, ...] = ()
    supplies: str = ""
    wait: tuple[str, ...] = ()


@dataclass(frozen=True)
class StationSheet:
    """What stays at a station for a run: all that is too long for a tray's card. ``care`` and ``start`` are of all that is
    done there, ``about`` is what it is and of which run."""

    station: str
    about: str
    care: tuple[Care, ...]
    start: tuple[str, ...]
    works: tuple[StationWork, ...]
    on_a_phone: str
    foot: Foot

    @property
    def pictures(self) -> tuple[str, ...]:
        return tuple(shown.picture for work in self.works for shown in work.how if shown.picture)


@dataclass(frozen=True)
class JigLabel:
    """What stays at a jig or a machine for one operation: its places, setup sheet, start list and cautions."""

    operation: str
    station: str
    product: str
    places: tuple[Cell, ...]
    setup: tuple[tuple[str, str], ...]
    start: tuple[str, ...]
    checks: tuple[FirstPiece, ...]
    care: tuple[Care, ...]
    foot: Foot


@dataclass(frozen=True)
class ShelfLabel:
    """What stands at a tray that dries, cures or is in clamps. ``until`` is empty where the wait has not begun."""

    tray: str
    run: str
    product: str
    about: tuple[str, ...]
    title: str
    until: str
    cells: tuple[Cell, ...]
    notes: tuple[str, ...]
    care: tuple[Care, ...]
    link: Link
    foot: Foot


@dataclass(frozen=True)
class TrayLine:
    """A tray on the run's summary: a mark for each step (``''`` to do, ``done``, ``wait``), and its next step."""

    tray: str
    about: str
    next: str
    code: str
    marks: tuple[str, ...]


@dataclass(frozen=True)
class RunSheet:
    """A whole run on paper."""

    run: str
    product: str
    about: tuple[str, ...]
    orders: tuple[tuple[str, str, str], ...]
    steps: tuple[StepLine, ...]
    trays: tuple[TrayLine, ...]
    supplies: tuple[tuple[str, str], ...]
    foot: Foot


@dataclass(frozen=True)
class PackingSlip:
    """What goes into the parcel of one order line. ``what`` is how many of what, ``text`` what each carries."""

    shop: str
    whom: str
    title: str
    what: str
    text: str
    cells: tuple[Cell, ...]
    foot: Foot


Card = Traveller | StationSheet | JigLabel | ShelfLabel | RunSheet | PackingSlip


@dataclass(frozen=True)
class CardOrder:
    """What is to be printed: cards on a paper (``a6``, ``4x6``, ``a4``, ``letter``).

    ``words`` are the page's own words in ``language`` (``page_words``). ``pictures`` maps a picture's name to its file
    for ``write_pdf``, or to its address for ``page_html``. It can be pickled.
    """

    cards: tuple[Card, ...]
    paper: str
    words: Mapping[str, str]
    language: str = "en"
    title: str = "Cards"
    pictures: Mapping[str, str] = field(default_factory=dict)
