"""Made-up shops by seed, with what is ordered from them and what happens meanwhile: to see what becomes of people who obey.

Numbers 0 and 1 are the demo's own two products in the demo's own shop. The others have one to three people with hours of
their own, two to four rooms, machines that must be watched, waits with clamps and racks and latest ends, setups, services,
boards and jigs, and order lines some of which are tight. In half of them six pieces more are wanted by tomorrow in the
middle of the run; somebody leaves early, and a machine breaks for an hour.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any

from runboard.demo.boards import serving_boards
from runboard.demo.book import demo_book
from runboard.demo.rails import key_rails
from runboard.demo.route import operation, pass_, wait
from runboard.plan.opening import plan_opening
from runboard.run.log.event import write_moment
from runboard.shop.book import Book
from runboard.shop.book_json import book_from_json, product_to_json
from runboard.shop.hours import open_windows
from runboard.shop.product import Product

MONDAY = datetime(2026, 6, 1, tzinfo=UTC)
WEEKDAYS = ["mon", "tue", "wed", "thu", "fri"]
WEEKEND = ["sat", "sun"]
EVENINGS = [
    {"days": WEEKDAYS, "from": "18:00", "to": "22:00"},
    {"days": WEEKEND, "from": "09:00", "to": "12:30"},
    {"days": WEEKEND, "from": "13:30", "to": "18:00"},
]
DAYS = [
    {"days": WEEKDAYS, "from": "08:00", "to": "12:00"},
    {"days": WEEKDAYS, "from": "13:00", "to": "17:00"},
]
MORNINGS = [{"days": [*WEEKDAYS, "sat"], "from": "07:30", "to": "13:00"}]
AFTERNOONS = [{"days": WEEKDAYS, "from": "14:00", "to": "18:30"}, {"days": ["sat"], "from": "10:00", "to": "15:00"}]
RUSH_PIECES, BROKEN = 6, timedelta(hours=1)
ROOMS = ("shop", "house", "corner", "shed")
AHEAD = timedelta(days=60)
# About how many loads are planned in a shop, at least and at most.
LOADS = (30, 110)


@dataclass(frozen=True)
class Opening:
    """A run that is opened at the beginning: its id, and the body of the event."""

    run: str
    body: Mapping[str, Any]


@dataclass(frozen=True)
class Happening:
    """What nobody plans: an event of this kind at a moment. ``word`` is rush, leaves, breaks or back."""

    at: datetime
    word: str
    kind: str
    body: Mapping[str, Any] = field(default_factory=dict)
    fields: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Shop:
    """A made-up shop at ``start``: its book as a record, the runs that are opened then, and what happens later."""

    seed: int
    name: str
    record: Mapping[str, Any]
    start: datetime
    openings: Sequence[Opening]
    happenings: Sequence[Happening]

    @property
    def book(self) -> Book:
        return book_from_json(self.record)


def shops(count: int, seed: int = 0, loads: tuple[int, int] = LOADS) -> Iterator[Shop]:
    """So many shops; the same seeds make the same."""
    return (shop(one, loads) for one in range(seed, seed + count))


def shop(seed: int, loads: tuple[int, int] = LOADS) -> Shop:
    """One shop. ``loads`` is about how many loads are planned in it, at least and at most."""
    chance = Random(f"shop {seed}")
    record, wanted, start = _demo(seed) if seed < 2 else _made(seed, chance, loads)
    book = book_from_json(record)
    start = _first_opening(book, start)
    openings = _openings(book, wanted, start, chance)
    happenings = _happenings(book, openings, start, seed, chance)
    return Shop(seed, str(record["name"]), record, start, openings, happenings)


def _demo(seed: int) -> tuple[dict[str, Any], list[tuple[str, int]], datetime]:
    record = demo_book(MONDAY + timedelta(hours=15), "UTC")
    product, pieces = ((key_rails(), 45), (serving_boards(), 32))[seed]
    return {**record, "name": product["name"]}, [(product["key"], pieces)], MONDAY


# a book


def _made(seed: int, chance: Random, loads: tuple[int, int]) -> tuple[dict[str, Any], list[tuple[str, int]], datetime]:
    rooms = ROOMS[: chance.choice((2, 3, 3, 4))]
    where = _places(rooms, chance)
    makers = chance.sample((_rail, _board, _box, _strap), chance.choice((1, 1, 2)))
    products = [make(chance) for make in makers]
    people = _people(chance)
    record = {
        "runboard_book": 1,
        "name": f"shop {seed}",
        "time_zone": "UTC",
        "units": "mm",
        "emergency": "112",
        "rooms": [{"key": key, "name": key.capitalize()} for key in rooms],
        "walks": [
            {"rooms": sorted((one, other)), "minutes": chance.choice((1, 1, 2, 2, 3))}
            for at, one in enumerate(rooms)
            for other in rooms[:at]
        ],
        "services": [
            {"key": "extraction", "name": "Dust extraction", "capacity": chance.choice((1, 1, 2))},
            {"key": "clamps", "name": "Clamps", "capacity": chance.choice((12, 16, 24))},
            {"key": "rack", "name": "Rack places", "capacity": chance.choice((4, 6, 9))},
        ],
        "stations": _stations(where, chance),
        "people": people,
        "jobs": [{"key": "bins", "name": "Empty the bins", "minutes": 5, "room": rooms[0]}][: chance.randint(0, 1)],
        "finishes": [_hard_oil(), _lacquer()],
        "products": products,
    }
    wanted = _wanted(products, chance.randint(*loads), chance)
    return record, wanted, MONDAY + timedelta(days=chance.choice((0, 0, 1, 4)))


def _places(rooms: Sequence[str], chance: Random) -> dict[str, str]:
    """In which room each station is: a finish is brought on apart from dust where there is room for it."""
    aside = rooms[-1] if len(rooms) > 2 else chance.choice(rooms)
    other = rooms[1]
    there = dict.fromkeys(("cnc", "router", "sander", "bench", "clamping"), rooms[0])
    return {**there, "laser": other, "table": other, "finishing": aside, "stitching": chance.choice(rooms)}


def _stations(where: Mapping[str, str], chance: Random) -> list[dict[str, Any]]:
    kinds = {
        "cnc": "cnc",
        "router": "hand cutter",
        "sander": "sander",
        "bench": "bench",
        "clamping": "clamping",
        "laser": "laser",
        "table": "bench",
        "finishing": "finishing",
        "stitching": "bench",
    }
    found = [{"key": key, "name": key.capitalize(), "kind": kind, "room": where[key]} for key, kind in kinds.items()]
    if chance.random() < 0.5:
        found[0]["watch_from"] = ["bench", "clamping", "sander"]  # type: ignore[assignment]
    return found


def _people(chance: Random) -> list[dict[str, Any]]:
    hours = chance.choice((EVENINGS, EVENINGS, DAYS, MORNINGS))
    others = {id(EVENINGS): (EVENINGS, EVENINGS), id(DAYS): (DAYS, AFTERNOONS), id(MORNINGS): (MORNINGS, DAYS)}
    found: list[dict[str, Any]] = []
    for key in ("ann", "ben", "cleo")[: chance.choice((1, 1, 2, 2, 2, 3))]:
        found.append(
            {
                "key": key,
                "name": key.capitalize(),
                "access": "crew" if found else "lead",
                "skills": ["cnc", "laser"] if not found else chance.choice(([], ["cnc"], ["cnc", "laser"])),
                "hours": chance.choice(others[id(hours)]) if found else hours,
                "start_up_minutes": chance.choice((0, 2, 4)),
                "tidy_up_minutes": chance.choice((0, 5, 10)),
            }
        )
    return found


def _hard_oil() -> dict[str, Any]:
    return {
        "key": "hard-oil",
        "name": "Hard oil",
        "recoat_minutes": 480,
        "handle_minutes": 720,
        "airing_minutes": 120,
        "self_heats": True,
        "solvent": True,
        "ventilation": "the door open",
        "sheet_date": "2026-03-14",
    }


def _lacquer() -> dict[str, Any]:
    return {
        "key": "lacquer",
        "name": "Water lacquer",
        "recoat_minutes": 90,
        "handle_minutes": 180,
        "self_heats": False,
        "solvent": False,
        "ventilation": "the door open",
        "sheet_date": "2026-03-14",
    }


# products


def _rail(chance: Random) -> dict[str, Any]:
    """Cut from a board, engraved, finished, fitted."""
    a_tray = chance.choice((4, 5, 6))
    board = a_tray * chance.choice((2, 3))
    cut = pass_(
        size="board", pieces=board, setup=4, loading=chance.randint(2, 4), machine=chance.randint(20, 45), unloading=2
    )
    laser = pass_(size=chance.choice(("jig", "tray")), pieces=a_tray, setup=chance.choice((0, 3)), loading=2,
                  machine=chance.randint(8, 22), unloading=1)  # fmt: skip
    return _product(
        "rails",
        a_tray,
        operation("cut", "Cut", "cnc", cut, attendance="watched", services=["extraction"], skill="cnc"),
        operation("clean", "Clean up", "bench", pass_(hand=1, size=chance.choice(("run", "tray")), pieces=board)),
        operation("sand", "Sand", "sander", *_grits(chance, board)),
        operation("engrave", "Engrave", "laser", laser, attendance="watched", skill="laser", personal=True),
        _coat(chance, "oil"),
        operation("fit", "Fit", "bench", pass_(setup=1, hand=chance.choice((1, 2)))),
        operation("pack", "Pack", "table", pass_(hand=chance.choice((1, 2)))),
    )


def _board(chance: Random) -> dict[str, Any]:
    """Glued up, scraped while it is rubbery, flattened on two sides, rounded, sanded, oiled."""
    a_tray = chance.choice((3, 4))
    side = {"size": "jig", "pieces": 2, "setup": 4, "loading": 2, "machine": chance.randint(6, 12), "unloading": 1}
    clamps = chance.choice((4, 6))
    return _product(
        "boards",
        a_tray,
        operation("glue", "Glue up", "clamping", pass_(setup=2, hand=chance.choice((3, 5))),
                  wait=wait("clamp", 20, chance.choice((75, 90, 120)), clamps=clamps)),
        operation("scrape", "Scrape", "clamping", pass_(hand=1.5), wait=wait("cure", chance.choice((120, 240)), clamps=clamps)),
        operation("flatten", "Flatten", "cnc", pass_("a", "side A", **side), pass_("b", "side B", **side),
                  attendance="watched", services=["extraction"], skill="cnc"),
        operation("round", "Round over", "router", pass_(setup=3, hand=2), services=["extraction"]),
        operation("sand", "Sand", "sander", *_grits(chance, 12)),
        _coat(chance, "oil"),
        operation("pack", "Pack", "table", pass_(hand=2)),
    )  # fmt: skip


def _box(chance: Random) -> dict[str, Any]:
    """Shaped by hand, glued, sanded, two coats with sanding between."""
    a_tray = chance.choice((4, 5))
    return _product(
        "boxes",
        a_tray,
        operation("shape", "Shape", "router", pass_(setup=chance.choice((3, 6)), hand=chance.choice((2, 3))), services=["extraction"]),
        operation("glue", "Glue", "clamping", pass_(hand=3), wait=wait("clamp", 45, clamps=4)),
        operation("sand", "Sand", "sander", *_grits(chance, 10)),
        _coat(chance, "first", "first coat"),
        operation("denib", "Rub down", "bench", pass_(hand=1)),
        _coat(chance, "second", "second coat"),
        operation("pack", "Pack", "table", pass_(hand=2)),
    )  # fmt: skip


def _strap(chance: Random) -> dict[str, Any]:
    """Cut and engraved by laser, dyed, stitched by hand, pressed."""
    a_tray = chance.choice((5, 6))
    cut = pass_(size="tray", setup=2, loading=2, machine=chance.randint(6, 14), unloading=2)
    return _product(
        "straps",
        a_tray,
        operation("cut", "Cut", "laser", cut, attendance="watched", skill="laser"),
        operation("edge", "Edge", "bench", pass_(hand=2)),
        operation("dye", "Dye", "stitching", pass_(setup=3, hand=1, size="run", pieces=2 * a_tray), wait=wait("settle", 60, rack=1)),
        operation("stitch", "Stitch", "stitching", pass_(hand=chance.choice((4, 6)))),
        operation("press", "Press", "clamping", pass_(hand=1), wait=wait("clamp", 90, 600, clamps=2)),
        operation("pack", "Pack", "table", pass_(hand=1, size="run", pieces=3 * a_tray)),
    )  # fmt: skip


def _product(key: str, a_tray: int, *operations: dict[str, Any]) -> dict[str, Any]:
    name = f"Made-up {key}"
    return {"key": key, "name": name, "pieces_a_tray": a_tray, "wood": "ash", "operations": list(operations)}


def _grits(chance: Random, most: int) -> list[dict[str, Any]]:
    size = chance.choice(("run", "tray"))
    grits = ("120", "180")[: chance.choice((1, 2))]
    return [pass_(grit, grit, setup=1, hand=chance.choice((1.5, 2, 3)), size=size, pieces=most) for grit in grits]


def _coat(chance: Random, key: str, name: str = "Oil") -> dict[str, Any]:
    finish, least = chance.choice((("hard-oil", 720), ("hard-oil", 720), ("lacquer", 180)))
    if key in ("first", "second"):
        finish, least = "lacquer", 90
    size, pieces = chance.choice((("run", 12), ("run", 15), ("tray", None)))
    hands = pass_(hand=chance.choice((0.8, 1, 2)), size=size, pieces=pieces)
    return operation(key, name.capitalize(), "finishing", hands, finish=finish, wait=wait("dry", least, rack=1))


# what is wanted


def _wanted(products: Sequence[Mapping[str, Any]], loads: int, chance: Random) -> list[tuple[str, int]]:
    """How many pieces of each product, in whole trays."""
    found, share = [], loads / len(products)
    for product in products:
        steps = sum(len(one["passes"]) for one in product["operations"])
        trays = max(2, round(share / steps))
        found.append((product["key"], trays * product["pieces_a_tray"] - chance.choice((0, 0, 1))))
    return found


def _openings(book: Book, wanted: Sequence[tuple[str, int]], start: datetime, chance: Random) -> list[Opening]:
    works = [_work(book, key, pieces) for key, pieces in wanted]
    found = []
    for number, (key, pieces) in enumerate(wanted, 1):
        product = book.product(key)
        assert product is not None
        orders = _orders(book, product, pieces, sum(works, timedelta(0)), start, chance)
        found.append(Opening(f"r{number}", body_of(book, key, orders, pieces)))
    return found


def body_of(book: Book, key: str, orders: Sequence[Mapping[str, Any]], pieces: int) -> dict[str, Any]:
    """The body of 'run opened' for exactly so many pieces of a product."""
    product = book.product(key)
    assert product is not None
    opening = plan_opening(product, pieces, start=pieces)
    trays = [{"tray": one.tray, "pieces": one.pieces} for one in opening.trays]
    boards = {one: dict(fed) for one, fed in opening.boards.items()}
    named = {"name": product.name, "product": product_to_json(product), "wood": product.wood}
    return {**named, "orders": [dict(one) for one in orders], "trays": trays, "boards": boards}


def _work(book: Book, key: str, pieces: int) -> timedelta:
    """Roughly how long so many pieces keep hands, or eyes where nothing else may be done."""
    product = book.product(key)
    assert product is not None
    total = timedelta(0)
    for one in product.operations:
        for a_pass in one.passes:
            a_load = a_pass.pieces or product.pieces_a_tray
            each = a_pass.loading + a_pass.unloading + a_pass.machine * 0.6
            total += a_pass.setup + a_pass.hand * pieces + each * (pieces / a_load)
    return total


def _through_waits(book: Book, product: Product, moment: datetime) -> datetime:
    """When somebody is there again after each of a product's waits, one after another."""
    for one in product.operations:
        finish = book.finish(one.finish)
        said = (finish.handle or timedelta(0)) if finish is not None else timedelta(0)
        least = one.wait.least if one.wait is not None else timedelta(0)
        if max(said, least):
            moment = max(moment + max(said, least), sessions(book, moment + max(said, least))[0][0])
    return moment


def _orders(
    book: Book, product: Product, pieces: int, work: timedelta, start: datetime, chance: Random
) -> list[dict[str, Any]]:
    """Order lines with due moments: at a full hour, by which some are there easily and some just so."""
    lines = min(chance.choice((2, 3, 3, 4, 5)), pieces)
    cuts = sorted(chance.sample(range(1, pieces), lines - 1))
    found, before = [], 0
    for number, until in enumerate([*cuts, pieces], 1):
        share = max(0.25, until / pieces)
        tight = chance.choice((1.15, 1.3, 1.5, 2.0))
        worked = _after(book, start, work * share * tight / (0.6 + 0.4 * len(book.people)))
        due = _through_waits(book, product, worked).replace(minute=0) + timedelta(hours=1)
        line: dict[str, Any] = {"line": str(number), "pieces": until - before, "text": str(number)}
        found.append({**line, "due": write_moment(due)} if chance.random() < 0.85 else line)
        before = until
    return found


def _after(book: Book, start: datetime, work: timedelta) -> datetime:
    """When the lead has been there for so long."""
    for opens, closes in sessions(book, start):
        if closes - opens >= work:
            return (opens + work).replace(second=0, microsecond=0)
        work -= closes - opens
    raise AssertionError("no end in sight")


def sessions(book: Book, start: datetime, person: int = 0) -> list[tuple[datetime, datetime]]:
    """The hours of somebody, by default the lead, from ``start`` on."""
    return open_windows(book.people[person].hours, book.time_zone, start, start + AHEAD)


def _first_opening(book: Book, start: datetime) -> datetime:
    return sessions(book, start)[0][0]


# what happens


def _happenings(book: Book, openings: Sequence[Opening], start: datetime, seed: int, chance: Random) -> list[Happening]:
    total = sum((_work(book, one.body["product"]["key"], _pieces(one)) for one in openings), timedelta(0))
    length = total / (0.6 + 0.4 * len(book.people))
    found = []
    if seed % 2 == 0:
        middle = _after(book, start, length * chance.uniform(0.25, 0.5))
        opens = next(opens for opens, closes in sessions(book, start) if closes > middle)
        at = opens if opens > start else middle
        found.append(_rush(book, openings, at + timedelta(minutes=chance.randint(5, 40)), chance))
    if len(book.people) > 1 and chance.random() < 0.5:
        at = _after(book, start, length * chance.uniform(0.1, 0.4))
        body = {"until": write_moment(at + timedelta(minutes=15))}
        found.append(Happening(at, "leaves", "time said", body, {"person": book.people[-1].key}))
    if chance.random() < 0.5:
        at = _after(book, start, length * chance.uniform(0.1, 0.6))
        used = sorted({one["station"] for opening in openings for one in opening.body["product"]["operations"]})
        station = chance.choice([one for one in used if one in ("cnc", "laser", "sander", "router")])
        about = {"station": station, "person": book.people[0].key}
        said = {"until": write_moment(at + BROKEN)} if chance.random() < 0.7 else {}
        found.append(Happening(at, "breaks", "station out of use", {"why": "broken", **said}, about))
        found.append(Happening(at + BROKEN, "back", "station back in use", {}, about))
    return sorted(found, key=lambda one: one.at)


def _pieces(opening: Opening) -> int:
    return sum(one["pieces"] for one in opening.body["trays"])


def _rush(book: Book, openings: Sequence[Opening], at: datetime, chance: Random) -> Happening:
    """Six pieces more, due when tomorrow's last session ends: of a run that goes on, or as a run of their own."""
    tomorrow = at.replace(hour=0, minute=0) + timedelta(days=1)
    due = next(closes for opens, closes in reversed(sessions(book, at)) if opens < _day_after(book, tomorrow))
    line = {"line": "rush", "pieces": RUSH_PIECES, "text": "rush", "due": write_moment(due)}
    opening = chance.choice(openings)
    person = {"person": book.people[0].key}
    *others, last = opening.body["orders"]
    if last["pieces"] > RUSH_PIECES and chance.random() < 0.5:
        # No more are wanted than are made: the last line gives what the rush takes.
        body = {"orders": [*others, {**last, "pieces": last["pieces"] - RUSH_PIECES}, line]}
        return Happening(at, "rush", "orders changed", body, {"run": opening.run, **person})
    body = body_of(book, opening.body["product"]["key"], [line], RUSH_PIECES)
    return Happening(at, "rush", "run opened", body, {"run": f"r{len(openings) + 1}", **person})


def _day_after(book: Book, tomorrow: datetime) -> datetime:
    """The end of the first day from ``tomorrow`` on with hours of the lead."""
    opens, _ = sessions(book, tomorrow)[0]
    return opens.replace(hour=0, minute=0) + timedelta(days=1)
