"""A shop's book as a JSON record with every field in it, and a Hypothesis strategy of valid books."""

import copy
from datetime import time, timedelta
from types import MappingProxyType
from typing import Any

from hypothesis import strategies as st

from runboard.shop.book import STATION_KINDS, Book, Job, Person, Room, Service, Station
from runboard.shop.finish import Finish
from runboard.shop.hours import Window
from runboard.shop.product import LANGUAGES, Check, Instruction, Operation, Pass, Product, Translation, Use, Wait

_EVERYTHING: dict[str, Any] = {
    "runboard_book": 1,
    "name": "Ann's shop",
    "time_zone": "Europe/Berlin",
    "units": "in",
    "emergency": "112",
    "late_counts": "lines",
    "revision": 3,
    "rooms": [{"key": "shop", "name": "Shop"}, {"key": "house", "name": "House"}],
    "walks": [{"rooms": ["shop", "house"], "minutes": 2}],
    "services": [
        {"key": "clamps", "name": "Clamps", "capacity": 12},
        {"key": "air", "name": "Extraction", "capacity": 1},
    ],
    "stations": [
        {
            "key": "cnc",
            "name": "The CNC",
            "kind": "cnc",
            "room": "shop",
            "services": ["air"],
            "watch_from": ["bench"],
            "quiet": [{"days": ["mon", "sun"], "from": "22:00", "to": "24:00"}],
            "watch_every_minutes": 10,
            "noise_db": 92,
            "eyewear": "clear, side shields",
            "motion": {
                "travel_x": 600,
                "travel_y": 400,
                "travel_z": 80,
                "rapid": 4000,
                "rapid_z": 1000,
                "accel_x": 300,
                "accel_y": 250,
                "accel_z": 150,
                "corner": 0.05,
                "tool_change_minutes": 3,
                "spindle_most": 24000,
                "scan_speed": None,
                "scan_accel": None,
                "line_spacing": None,
            },
            "hour_rate": 6,
        },
        {"key": "bench", "name": "The bench", "kind": "bench", "room": "shop", "watch_from": None},
        {"key": "laser", "name": "The laser", "kind": "laser", "room": "house"},
    ],
    "people": [
        {
            "key": "ann",
            "name": "Ann",
            "access": "lead",
            "skills": ["laser"],
            "hours": [{"days": ["mon", "tue"], "from": "18:00", "to": "22:00"}],
            "start_up_minutes": 5,
            "tidy_up_minutes": 10,
            "removed": False,
        }
    ],
    "jobs": [{"key": "bin", "name": "Empty the bin", "minutes": 5, "room": "shop"}],
    "finishes": [
        {
            "key": "hard-oil",
            "name": "Hard oil",
            "recoat_minutes": 720,
            "handle_minutes": 1440,
            "cure_minutes": 20160,
            "airing_minutes": 120,
            "self_heats": True,
            "solvent": True,
            "ventilation": "both doors open",
            "sheet_date": "2026-03-14",
        }
    ],
    "forbidden": ["PVC", "vinyl"],
    "noise_limit_db": 85,
    "noise_exchange_db": 3,
    "hour_rate": 38,
    "rating": 0.9,
    "allowance": 0.15,
    "allowance_of": "day",
    "money": {
        "currency": "EUR",
        "locale": "de-DE",
        "margin": 0.35,
        "margin_of": "cost",
        "fee_share": 0.08,
        "fee_each": 0.3,
        "packing_each": 0.9,
    },
    "stocks": [
        {
            "key": "ash-board",
            "name": "Ash board",
            "length": 1200,
            "width": 160,
            "thickness": 20,
            "wood": "ash",
            "grain": "length",
            "have": 2,
            "for_sale": True,
            "price": 21.5,
        }
    ],
    "supplies": [{"key": "hooks", "name": "hooks", "unit": "", "pack": 50, "price": 9.9, "low": 20}],
    "screws": [
        {
            "key": "s6",
            "name": "No. 6, 16 mm",
            "length": 16,
            "gauge": 6,
            "diameter": 3.5,
            "root": 2.5,
            "thread": 11,
            "head": "round",
            "head_height": 1.5,
            "pilot_hard": 2.8,
            "pilot_soft": 2.2,
            "source": "the packet",
        }
    ],
    "inserts": [
        {
            "key": "m4",
            "name": "M4 insert",
            "diameter": 8,
            "length": 10,
            "what": "magnet",
            "hole": 7.6,
            "depth": 11,
            "source": "the maker",
        }
    ],
    "cutters": [
        {
            "key": "six",
            "name": "6 mm, two flutes",
            "what": "blade",
            "diameter": 6,
            "flutes": 2,
            "life": 400,
            "life_in": "minutes",
            "price": 18,
            "supply": "hooks",
        }
    ],
    "feeds": [
        {
            "key": "ash-six",
            "cutter": "six",
            "rpm": 18000,
            "feed": 1800,
            "wood": "ash",
            "station": "cnc",
            "depth": 3,
            "note": "clean",
            "tore_out": True,
            "torn": 3,
            "torn_of": 20,
        }
    ],
    "jigs": [
        {
            "key": "rails",
            "name": "Five rails",
            "station": "laser",
            "columns": 1,
            "rows": 5,
            "piece_length": 220,
            "piece_width": 55,
            "pitch_x": 230,
            "pitch_y": 65,
            "corner_x": 12,
            "corner_y": 8,
            "clearance": 0.3,
            "kerf": 0.1,
            "note": "mark to the left, in front",
        }
    ],
    "products": [
        {
            "key": "rail",
            "name": "Key rail",
            "pieces_a_tray": 5,
            "wood": "ash",
            "picture": None,
            "piece": {
                "length": 220,
                "width": 55,
                "thickness": 18,
                "gap": 6,
                "margin": 8,
                "tabs": 2,
                "grain": "length",
                "stocks": ["ash-board"],
            },
            "price": 34,
            "operations": [
                {
                    "key": "cut",
                    "name": "Cut",
                    "station": "cnc",
                    "attendance": "watched",
                    "services": ["air"],
                    "wait": {"why": "settle", "least_minutes": 10, "latest_minutes": 20, "holds": {"clamps": 2}},
                    "checklist": ["collet tight"],
                    "setup_sheet": [["program", "rail.ngc v3"]],
                    "checks": [
                        {"key": "width", "text": "Width", "per": "setup", "nominal": 40, "plus": 0.1, "minus": 0}
                    ],
                    "cautions": ["dust"],
                    "skill": "cnc",
                    "uses": [{"supply": "screws", "each": 4, "unit": "pieces"}],
                    "fastenings": [{"screw": "s6", "through": 2, "into": 18, "margin": 3, "washer": 0.5, "sunk": 0}],
                    "cutter": "six",
                    "rpm": 18000,
                    "feed": 1800,
                    "jig": "rails",
                    "personal": False,
                    "good_rate": 0.95,
                    "guess": True,
                    "finish": "hard-oil",
                    "watch_every_minutes": 5,
                    "instructions": [{"text": "Lay the board on the bed.", "picture": "bed.png"}],
                    "translations": {
                        "de": {
                            "name": "Fräsen",
                            "instructions": ["Brett auflegen."],
                            "checklist": ["Spannzange fest"],
                            "cautions": ["Staub"],
                            "checks": ["Breite"],
                        }
                    },
                    "passes": [
                        {
                            "key": "a",
                            "name": "side A",
                            "size": "board",
                            "pieces": 15,
                            "setup_minutes": 4,
                            "loading_minutes": 2,
                            "machine_minutes": 38.5,
                            "unloading_minutes": 2,
                            "hand_minutes": 0,
                            "reckoned": {
                                "what": "program",
                                "name": "rail.ngc",
                                "digest": "5f",
                                "seconds": 2100,
                                "day": "2026-03-14",
                                "reach_x": 310,
                                "reach_y": 70,
                                "reach_z": 30,
                            },
                        }
                    ],
                }
            ],
        }
    ],
}


def everything() -> dict[str, Any]:
    """A record in which every field of the file occurs, for a test to change."""
    return copy.deepcopy(_EVERYTHING)


keys = st.text("abcdefghij0123456789", min_size=1, max_size=6)
names = st.text(st.characters(exclude_categories=("Cs", "Cc")), min_size=1, max_size=12)
texts = st.text(st.characters(exclude_categories=("Cs",), exclude_characters="\0"), max_size=12)
intervals = st.timedeltas(timedelta(minutes=1), timedelta(days=60))
spans = st.timedeltas(timedelta(0), timedelta(days=60))
millimetres = st.floats(0, 1e6, allow_nan=False)


@st.composite
def windows(draw: st.DrawFn) -> Window:
    opens = draw(st.integers(0, 1438))
    closes = draw(st.integers(opens + 1, 1440)) % 1440
    return Window(draw(st.integers(0, 6)), time(*divmod(opens, 60)), time(*divmod(closes, 60)))


@st.composite
def passes(draw: st.DrawFn, key: str) -> Pass:
    size = draw(st.sampled_from(["piece", "jig", "board", "tray", "run"]))
    pieces = draw(st.integers(1, 50)) if size in ("jig", "board") else None
    return Pass(key, draw(names), size, pieces, *(draw(spans) for _ in range(5)))


@st.composite
def checks(draw: st.DrawFn, key: str) -> Check:
    nominal = draw(st.none() | millimetres)
    plus = None if nominal is None else draw(st.none() | millimetres)
    return Check(key, draw(names), draw(st.sampled_from(["run", "setup", "load"])), nominal, plus, plus)


@st.composite
def waits(draw: st.DrawFn, services: dict[str, int]) -> Wait:
    least = draw(spans)
    latest = draw(st.none() | st.timedeltas(least, timedelta(days=69)))
    holds = {key: draw(st.integers(1, capacity)) for key, capacity in services.items() if draw(st.booleans())}
    return Wait(draw(st.sampled_from(["dry", "cure", "clamp"])), least, latest, MappingProxyType(holds))


@st.composite
def finishes(draw: st.DrawFn, key: str) -> Finish:
    waits_ = [draw(st.none() | spans) for _ in range(3)]
    date = draw(st.just("") | st.dates().map(str))
    return Finish(key, draw(names), *waits_, None, draw(st.booleans()), draw(st.booleans()), draw(texts), date)


@st.composite
def translations(draw: st.DrawFn) -> Translation:
    return Translation(draw(texts), *(tuple(draw(st.lists(names, max_size=1))) for _ in range(4)))


@st.composite
def operations(
    draw: st.DrawFn, key: str, stations: tuple[Station, ...], services: dict[str, int], finish: str | None
) -> Operation:
    station = draw(st.sampled_from(stations))
    ranks = ("none", "watched", "hands-on")
    attendance = draw(st.sampled_from(ranks[ranks.index(STATION_KINDS[station.kind].least) :]))
    return Operation(
        key=key,
        name=draw(names),
        station=station.key,
        passes=tuple(draw(passes(key)) for key in draw(st.lists(keys, min_size=1, max_size=2, unique=True))),
        attendance=attendance,
        services=tuple(key for key in services if draw(st.booleans())),
        wait=draw(st.none() | waits(services)),
        checklist=tuple(draw(st.lists(names, max_size=2))),
        setup_sheet=tuple(draw(st.lists(st.tuples(texts, texts), max_size=2))),
        checks=tuple(draw(checks(key)) for key in draw(st.lists(keys, max_size=2, unique=True))),
        cautions=tuple(draw(st.lists(names, max_size=2))),
        skill=draw(st.none() | texts),
        uses=tuple(draw(st.lists(st.builds(Use, names, millimetres, texts), max_size=1))),
        personal=draw(st.booleans()),
        good_rate=draw(st.none() | st.floats(0.01, 1)),
        guess=draw(st.booleans()),
        finish=finish,
        watch_every=draw(st.none() | intervals),
        instructions=tuple(draw(st.lists(st.builds(Instruction, names, st.none() | texts), max_size=2))),
        translations=MappingProxyType(draw(st.dictionaries(st.sampled_from(LANGUAGES), translations(), max_size=1))),
    )


@st.composite
def books(draw: st.DrawFn) -> Book:
    """Any book that keeps the rules: one or two of everything."""
    room_keys = draw(st.lists(keys, min_size=1, max_size=2, unique=True))
    capacities = draw(st.dictionaries(keys, st.integers(1, 20), max_size=2))
    station_keys = draw(st.lists(keys, min_size=1, max_size=2, unique=True))
    stations = tuple(
        Station(
            key,
            draw(names),
            draw(st.sampled_from(list(STATION_KINDS))),
            draw(st.sampled_from(room_keys)),
            tuple(capacities),
            draw(st.sampled_from([None, (), (key,)])),
            tuple(draw(st.lists(windows(), max_size=3))),
            draw(st.none() | intervals),
            draw(st.none() | st.floats(0, 150)),
            draw(texts),
        )
        for key in station_keys
    )
    people = st.builds(
        Person,
        key=keys,
        name=names,
        access=st.sampled_from(["lead", "crew"]),
        skills=st.lists(names, max_size=1).map(tuple),
        hours=st.lists(windows(), max_size=4).map(tuple),
        start_up=spans,
        tidy_up=spans,
        removed=st.booleans(),
    )
    product_keys = draw(st.lists(keys, max_size=1, unique=True))
    finish = draw(st.none() | keys)
    return Book(
        name=draw(names),
        time_zone=draw(st.sampled_from(["UTC", "Europe/Berlin", "America/New_York"])),
        units=draw(st.sampled_from(["mm", "in"])),
        emergency=draw(texts),
        rooms=tuple(Room(key, draw(names)) for key in room_keys),
        walks=MappingProxyType({tuple(sorted(room_keys)): draw(spans)} if len(room_keys) == 2 else {}),
        services=tuple(Service(key, draw(names), capacity) for key, capacity in capacities.items()),
        stations=stations,
        people=tuple(draw(st.lists(people, max_size=1))),
        jobs=tuple(Job(key, draw(names), draw(spans), room_keys[0]) for key in product_keys),
        products=tuple(
            Product(
                key,
                draw(names),
                tuple(
                    draw(operations(one, stations, capacities, finish))
                    for one in draw(st.lists(keys, max_size=2, unique=True))
                ),
                draw(st.integers(1, 100)),
                draw(texts),
                draw(st.none() | texts),
            )
            for key in product_keys
        ),
        finishes=() if finish is None else (draw(finishes(finish)),),
        forbidden=tuple(draw(st.lists(names, max_size=2))),
        late_counts=draw(st.sampled_from(("minutes", "lines"))),
        hour_rate=draw(st.none() | st.floats(0.01, 500)),
        noise_limit_db=draw(st.floats(60, 120)),
        noise_exchange_db=draw(st.floats(2, 6)),
        rating=draw(st.none() | st.floats(0.25, 2)),
        allowance=draw(st.none() | st.floats(0, 0.9)),
        allowance_of=draw(st.sampled_from(("work", "day"))),
        revision=draw(st.integers(0, 1000)),
    )
