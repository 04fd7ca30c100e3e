"""Products with their routes, read from JSON records and written back; a run's snapshot of a product is the same."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any, get_args

from runboard.shop.book import (
    NOTHING,
    STATION_KINDS,
    ZERO,
    Attendance,
    Check,
    LoadSize,
    Operation,
    Pass,
    Product,
    Service,
    Station,
    Use,
    Wait,
    WaitWhy,
)
from runboard.shop.durations import OVERNIGHT, minutes_of
from runboard.shop.fields import Fields, shown
from runboard.shop.finish import Finish
from runboard.shop.instruction import Instruction, Translation
from runboard.shop.problem import BookError, Problem
from runboard.shop.units import Unit

ATTENDANCES = get_args(Attendance)
SIZES = get_args(LoadSize)
WHYS = get_args(WaitWhy)
PER = ("run", "setup", "load")

# hands-on asks more of a person than watched, and watched more than none.
_RANK = {attendance: rank for rank, attendance in enumerate(reversed(ATTENDANCES))}

_PRODUCT = frozenset(("key", "name", "pieces_a_tray", "wood", "picture", "operations"))
_ASKS = ("services", "wait", "checklist", "setup_sheet", "checks", "cautions", "skill", "uses")
_CARE = ("finish", "watch_every_minutes", "instructions", "translations")
_OPERATION = frozenset(
    ("key", "name", "station", "attendance", *_ASKS, *_CARE, "personal", "good_rate", "guess", "passes")
)
_SPANS = ("setup", "loading", "machine", "unloading", "hand")
_PASS = frozenset(("key", "name", "size", "pieces", *(f"{span}_minutes" for span in _SPANS)))
_WAIT = frozenset(("why", "least_minutes", "latest_minutes", "holds"))
_CHECK = frozenset(("key", "text", "per", "nominal", "plus", "minus"))
_USE = frozenset(("supply", "each", "unit"))
_INSTRUCTION = frozenset(("text", "picture"))
LANGUAGES = ("de", "es", "fr")
_TRANSLATED = ("instructions", "checklist", "cautions", "checks")
_TRANSLATION = frozenset(("name", *_TRANSLATED))


@dataclass(frozen=True)
class Around:
    """What the shop has, for checking a route against it. ``None`` stands for 'not known here': a run's snapshot is
    read without its shop, which may have changed since."""

    stations: Mapping[str, Station] | None = None
    services: Mapping[str, Service] | None = None
    units: Unit = "mm"
    finishes: Mapping[str, Finish] | None = None


@dataclass
class Seen:
    """Keys met so far in one list, to find one used twice."""

    keys: set[str] = field(default_factory=set)

    def key(self, fields: Fields, within: str) -> str:
        key = fields.key()
        if key and key in self.keys:
            fields.wrong("key used twice", "key", key=key, field=within)
        self.keys.add(key)
        return key


def these_are(nouns: str, keys: Iterable[str]) -> str:
    """'Stations are: bench, cnc.', or 'There are no stations yet.'"""
    known = ", ".join(keys)
    return f"{nouns.capitalize()} are: {known}." if known else f"There are no {nouns} yet."


def check_reference(fields: Fields, name: str, key: str, known: Mapping[str, Any] | None, noun: str) -> None:
    """Note a key that names nothing the shop has."""
    if known is not None and key and key not in known:
        fields.wrong(
            "unknown reference",
            name,
            noun=noun,
            key=key,
            these=these_are(f"{noun}es" if noun.endswith("sh") else f"{noun}s", known),
        )


def product_from_json(record: object, around: Around | None = None) -> Product:
    """A product from its record. With ``around`` its stations, services and attendances are checked too.

    Raises ``BookError`` with everything that is wrong.
    """
    around = around or Around()
    problems: list[Problem] = []
    fields = Fields({"product": record}, problems, around.units).inside(record, "product")
    product = read_product(fields, Seen(), around) if fields else None
    if problems or product is None:
        raise BookError(problems)
    return product


def operation_from_json(record: object, around: Around | None = None) -> Operation:
    """An operation from its record, checked as in ``product_from_json``."""
    around = around or Around()
    problems: list[Problem] = []
    fields = Fields({"operation": record}, problems, around.units).inside(record, "operation")
    operation = _operation(fields, Seen(), around) if fields else None
    if problems or operation is None:
        raise BookError(problems)
    return operation


def read_product(fields: Fields, seen: Seen, around: Around) -> Product:
    """A product from its fields; problems are noted there."""
    fields.only(_PRODUCT)
    operations = Seen()
    return Product(
        key=seen.key(fields, "products"),
        name=fields.name(),
        operations=tuple(
            _operation(one, operations, around) for one in fields.each("operations", "operation", required=True)
        ),
        pieces_a_tray=fields.count("pieces_a_tray", 5, least=1),
        wood=fields.text("wood", ""),
        picture=fields.text("picture", None),
    )


def _operation(fields: Fields, seen: Seen, around: Around) -> Operation:
    fields.only(_OPERATION)
    passes = Seen()
    operation = Operation(
        key=seen.key(fields, "operations"),
        name=fields.name(),
        station=fields.key("station"),
        passes=tuple(_pass(one, passes) for one in fields.each("passes", "pass", required=True, least=1)),
        attendance=fields.choice("attendance", ATTENDANCES, "hands-on"),
        services=fields.keys("services"),
        wait=_wait(fields, around),
        checklist=fields.texts("checklist"),
        setup_sheet=_setup_sheet(fields),
        checks=_checks(fields),
        cautions=fields.texts("cautions"),
        skill=fields.text("skill", None),
        uses=tuple(_use(one) for one in fields.each("uses", "use")),
        personal=fields.flag("personal", False),
        good_rate=_good_rate(fields),
        guess=fields.flag("guess", True),
        finish=None if fields.record.get("finish") is None else fields.key("finish"),
        watch_every=fields.minutes("watch_every_minutes", None, least=0.5),
        instructions=tuple(_instruction(one) for one in fields.each("instructions", "instruction")),
        translations=_translations(fields),
    )
    _check_against_shop(fields, operation, around)
    return operation


def _check_against_shop(fields: Fields, operation: Operation, around: Around) -> None:
    check_reference(fields, "station", operation.station, around.stations, "station")
    for service in operation.services:
        check_reference(fields, "services", service, around.services, "service")
    check_reference(fields, "finish", operation.finish or "", around.finishes, "finish")
    station = (around.stations or {}).get(operation.station)
    if station is None or station.kind not in STATION_KINDS:
        return
    least = STATION_KINDS[station.kind].least
    if _RANK[operation.attendance] < _RANK[least]:
        attendance, name = operation.attendance, f"'{station.key}'"
        fields.wrong(
            "attendance too small", "attendance", attendance=attendance, station=name, kind=station.kind, least=least
        )


def _pass(fields: Fields, seen: Seen) -> Pass:
    fields.only(_PASS)
    key, size = seen.key(fields, "passes"), fields.choice("size", SIZES, "tray")
    pieces = fields.count("pieces", None, least=1)
    if size in ("jig", "board") and pieces is None:
        fields.wrong("jig without pieces", "pieces", size=size)
    spans = {span: fields.minutes(f"{span}_minutes", ZERO) for span in _SPANS}
    return Pass(key=key, name=fields.name(), size=size, pieces=pieces, **spans)


def _wait(fields: Fields, around: Around) -> Wait | None:
    record = fields.record.get("wait")
    wait = None if record is None else fields.inside(record, "wait")
    if wait is None:
        return None
    wait.only(_WAIT)
    least = wait.minutes("least_minutes", overnight=OVERNIGHT)
    latest = wait.minutes("latest_minutes", None, overnight=OVERNIGHT)
    if latest is not None and latest < least:
        wait.wrong("latest before least", "latest_minutes", latest=minutes_of(latest), least=minutes_of(least))
    return Wait(wait.choice("why", WHYS), least, latest, _holds(wait, around))


def _holds(wait: Fields, around: Around) -> Mapping[str, int]:
    record = wait.record.get("holds", NOTHING)
    holds = wait.inside(record, "holds")
    if holds is None or not record:
        return NOTHING
    found = {}
    for key in record:
        if holds.is_full:
            break
        check_reference(holds, key, key, around.services, "service")
        found[key] = holds.count(key, least=1)
        service = (around.services or {}).get(key)
        if service and found[key] > service.capacity:
            holds.wrong("more than there are", key, key=key, count=found[key], capacity=service.capacity)
    return MappingProxyType(found)


def _setup_sheet(fields: Fields) -> tuple[tuple[str, str], ...]:
    found = []
    for at, line in enumerate(fields.items("setup_sheet")):
        if isinstance(line, list | tuple) and len(line) == 2 and all(isinstance(part, str) for part in line):
            found.append((line[0], line[1]))
        else:
            fields.wrong("wrong type", f"setup_sheet[{at}]", wanted="a label and a text, in a list", found=shown(line))
    return tuple(found)


def _checks(fields: Fields) -> tuple[Check, ...]:
    seen = Seen()
    return tuple(_check(one, seen) for one in fields.each("checks", "check"))


def _check(fields: Fields, seen: Seen) -> Check:
    fields.only(_CHECK)
    key = seen.key(fields, "checks")
    nominal, plus, minus = fields.length("nominal"), fields.length("plus"), fields.length("minus")
    for name, value in (("plus", plus), ("minus", minus)):
        if value is not None and fields.record.get("nominal") is None:
            fields.wrong("tolerance without nominal", name)
    text = fields.text("text", least=1)
    return Check(key, text, fields.choice("per", PER, "setup"), nominal, plus, minus)


def _use(fields: Fields) -> Use:
    fields.only(_USE)
    return Use(fields.text("supply", least=1, most=200), fields.number("each"), fields.text("unit", ""))


def _instruction(fields: Fields) -> Instruction:
    fields.only(_INSTRUCTION)
    return Instruction(fields.text("text", least=1), fields.text("picture", None))


def _translations(fields: Fields) -> Mapping[str, Translation]:
    record = fields.record.get("translations", NOTHING)
    said = fields.inside(record, "translations")
    if said is None or not record:
        return MappingProxyType({})
    said.only(frozenset(LANGUAGES))
    found = {}
    for language in filter(record.__contains__, LANGUAGES):
        one = said.inside(record[language], language)
        if one is not None:
            one.only(_TRANSLATION)
            texts = {name: one.texts(name) for name in _TRANSLATED}
            found[language] = Translation(one.text("name", ""), **texts)
    return MappingProxyType(found)


def _good_rate(fields: Fields) -> float | None:
    rate: float | None = fields.number("good_rate", None, least=0.01, most=1.0)
    return rate
