"""The catalogue of cautions: whole, in every language, and beside the operations where it belongs."""

import re
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from runboard.run.care.cautions import (
    CATALOGUE,
    WHEN,
    Basis,
    CautionKind,
    ShownCaution,
    cautions_for,
    entry_for,
    start_points,
    watch_check_of,
)
from runboard.shop.book import STATION_KINDS, Book, Room, Station
from runboard.shop.finish import Finish
from runboard.shop.product import Operation, Pass

STATIC = Path(__file__).parents[2] / "static"
LANGUAGES = ("en", "de", "es", "fr")
OIL = Finish("oil", "Hard oil", recoat=timedelta(hours=12), self_heats=True)
LACQUER = Finish("lacquer", "Lacquer", self_heats=False, solvent=True)


def book_with(kind: str, **station: object) -> Book:
    machine = replace(Station("machine", "Machine", kind, "shop"), **station)
    return Book(rooms=(Room("shop", "Shop"),), stations=(machine,), finishes=(OIL, LACQUER))


def operation(*cautions: str, attendance: str = "hands-on", finish: str | None = None) -> Operation:
    return Operation(
        "step", "Step", "machine", (Pass("all", "all"),), attendance=attendance, cautions=cautions, finish=finish
    )


def keys(book: Book, asked: Operation, after_finish: bool = False) -> list[str]:
    return [one.key for one in cautions_for(book, asked, after_finish)]


def messages(language: str) -> dict[str, str]:
    text = (STATIC / "words" / f"{language}.care.ftl").read_text("utf-8")
    return dict(re.findall(r"^(care-[a-z-]+) = (.+)$", text, flags=re.MULTILINE))


def all_texts() -> list[tuple[str, str, str]]:
    return [(language, key, text) for language in LANGUAGES for key, text in messages(language).items()]


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_entry_has_its_text_and_every_text_its_entry(language: str) -> None:
    assert sorted(messages(language)) == sorted(f"care-{key}" for key in CATALOGUE)


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_text_names_the_same_facts_in_every_language(language: str) -> None:
    def facts(text: str) -> set[str]:
        return set(re.findall(r"\$([a-z]+)", text))

    english, other = messages("en"), messages(language)

    assert {key: facts(text) for key, text in other.items()} == {key: facts(text) for key, text in english.items()}


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_caution_is_short_enough_for_a_row_of_a_card(language: str) -> None:
    texts = messages(language)
    rows = [texts[f"care-{one.key}"] for one in CATALOGUE.values() if one.kind in ("caution", "start")]

    # Only the rags need all their words: what to do with them is no place to be brief.
    assert [row for row in rows if len(row) > 130] == [texts["care-rags"]]


@pytest.mark.parametrize("entry", CATALOGUE.values(), ids=lambda one: one.key)
def test_an_entry_is_whole(entry) -> None:
    assert entry.kind in get_args(CautionKind)
    assert entry.basis in get_args(Basis)
    assert entry.source
    assert entry.shown
    assert entry.url == "" or entry.url.startswith("http")
    assert set(entry.stations) <= set(STATION_KINDS)
    assert entry.when in {"", "oiled before", *WHEN}
    assert entry.yields_to == "" or entry.yields_to in CATALOGUE
    assert all((STATIC / "signs" / f"{sign}.svg").is_file() for sign in entry.signs)


def test_a_law_a_standard_and_what_was_published_are_named() -> None:
    unnamed = [one.key for one in CATALOGUE.values() if one.source == one.basis]

    assert all(CATALOGUE[key].basis == "common practice, no source" for key in unnamed)


def test_no_two_entries_share_a_shops_words() -> None:
    words = [word for one in CATALOGUE.values() for word in one.words]

    assert len(words) == len(set(words))
    assert all(word == " ".join(word.casefold().split()) for word in words)


@pytest.mark.parametrize(("language", "key", "text"), all_texts())
def test_no_text_allows_leaving_a_machine_that_runs(language: str, key: str, text: str) -> None:
    allows = {
        "en": r"may (be left|leave)|can (be left|leave|go)|safe to|unattended|no need",
        "de": r"(darf|kann|können|dürfen) .*(allein|weg|verlassen)|(?<!Nie )unbeaufsichtigt|nicht nötig",
        "es": r"pued(e|es|en) .*(dejar|irte|salir)|sin vigilancia|no hace falta",
        "fr": r"peut .*(laisser|quitter|partir)|pouvez|sans surveillance|pas besoin",
    }

    assert not re.search(allows[language], text, flags=re.IGNORECASE)


def test_whoever_watches_is_told_never_to_leave_in_every_language() -> None:
    never = {"en": "never", "de": "nie", "es": "nunca", "fr": "jamais"}

    for language, word in never.items():
        texts = messages(language)
        assert word in texts["care-stay-and-watch"].casefold()
        assert word in texts["care-never-leave"].casefold()


def test_a_watch_check_confirms_flame_work_air_and_exhaust_and_claims_no_more() -> None:
    texts = messages("en")

    assert texts["care-watch-check-laser"] == "Stay and watch. Confirm: no flame, work flat, air assist and exhaust on."
    assert texts["care-watch-note"] == "It only shows that someone answered. It is not a fire watch."


def test_a_look_confirms_the_things_of_its_own_station() -> None:
    said = {
        kind: messages("en")[f"care-{watch_check_of(kind)}"] for kind in ("laser", "cnc", "heater", "other machine")
    }

    assert "air assist and exhaust on" in said["laser"]
    assert not any("exhaust" in said[kind] or "flat" in said[kind] for kind in ("cnc", "heater", "other machine"))
    assert "work still held, extraction on" in said["cnc"]
    assert all("smoke" in said[kind] for kind in ("cnc", "heater", "other machine"))


def test_dusty_work_asks_for_extraction_and_no_compressed_air_and_by_hand_for_a_mask() -> None:
    for kind in ("cnc", "hand cutter", "sander"):
        assert {"extraction", "blown-dust"} <= set(keys(book_with(kind), operation()))
    for kind in ("hand cutter", "sander"):
        assert "dust-mask" in keys(book_with(kind), operation())


def test_a_cutter_fed_by_hand_warns_of_kickback_and_is_no_place_to_be_alone() -> None:
    assert {"kickback", "hands-clear", "alone"} <= set(keys(book_with("hand cutter"), operation()))
    assert "kickback" not in keys(book_with("cnc"), operation())


@pytest.mark.parametrize("name", ["Spray on", "Sprühlack", "Spritzen", "Laca en aerosol", "Pulvériser"])
def test_a_finish_that_is_sprayed_says_so_in_each_language(name: str) -> None:
    spraying = replace(operation(finish="lacquer"), name=name)

    assert "spraying" in keys(book_with("finishing"), spraying)
    assert "spraying" not in keys(book_with("finishing"), operation(finish="lacquer"))


def test_a_coat_minds_temperature_and_humidity() -> None:
    assert "climate" in keys(book_with("finishing"), operation(finish="lacquer"))


def test_a_laser_and_a_cnc_ask_for_an_extinguisher_before_and_beside_the_step() -> None:
    for kind in ("laser", "cnc", "heater"):
        assert "fire" in keys(book_with(kind), operation())
        assert "start-extinguisher" in start_points(book_with(kind), operation())


def test_crushing_carries_its_own_sign() -> None:
    assert CATALOGUE["crushing"].signs == ("W024",)


def test_every_source_is_opened_or_said_to_be_from_memory() -> None:
    unread = {one.key for one in CATALOGUE.values() if not one.read}

    assert all(CATALOGUE[key].basis == "common practice, no source" or not CATALOGUE[key].url for key in unread)


def test_rags_go_outdoors_in_a_single_layer_or_into_water_and_never_into_a_heap() -> None:
    text = messages("en")["care-rags"]

    for words in ("single layer outdoors in the shade, away from buildings", "into water in the lidded metal can"):
        assert words in text
    assert text.endswith("Never in a pile, a bin, a pocket or a dryer.")


def test_only_one_text_speaks_of_food_and_it_calls_nothing_safe_for_it() -> None:
    said = {key: text for key, text in messages("en").items() if "food" in text}

    assert said == {
        "care-not-food-safe": "Nothing for food before the full cure. "
        "No finish is called food safe here, dry or cured. Ask its maker."
    }


def test_the_lock_up_list_is_the_one_of_the_now_screen() -> None:
    script = (STATIC / "sheets" / "leaving.js").read_text("utf-8")
    listed = re.search(r"const LOCK_UP = \[(.+?)\]", script)

    assert listed is not None
    points = [f"lockup-{key}" for key in re.findall(r'"([a-z-]+)"', listed[1])]
    assert [key for key in CATALOGUE if key.startswith("lockup-")] == points


def test_a_watched_load_says_stay_and_watch_first() -> None:
    for kind in ("laser", "heater", "cnc"):
        assert keys(book_with(kind), operation(attendance="watched"))[0] == "stay-and-watch"


def test_a_cutter_forbids_gloves_and_demands_to_disconnect_it_before_the_cutter_is_changed() -> None:
    for kind in ("cnc", "hand cutter"):
        shown = {one.key: one.signs for one in cautions_for(book_with(kind), operation())}
        assert shown["no-gloves"] == ("P028",)
        assert shown["disconnect"] == ("M021",)


def test_gloves_are_never_asked_for_where_they_are_forbidden() -> None:
    shown = keys(book_with("hand cutter"), operation("gloves", "nitrile gloves"))

    assert "no-gloves" in shown
    assert "gloves" not in shown


def test_a_finish_brings_its_rags_only_where_it_heats_itself() -> None:
    bench = book_with("finishing")

    assert "rags" in keys(bench, operation(finish="oil"))
    assert "rags" in keys(bench, operation())  # nobody wrote down which: the careful reading
    assert "rags" not in keys(bench, operation(finish="lacquer"))


def test_a_solvent_in_the_air_forbids_flame() -> None:
    shown = {one.key: one.signs for one in cautions_for(book_with("finishing"), operation(finish="lacquer"))}

    assert shown["solvent-air"] == ("P003",)


def test_sanding_wood_that_was_oiled_before_warns_of_its_dust() -> None:
    sander = book_with("sander")

    assert "oiled-dust" in keys(sander, operation(), after_finish=True)
    assert "oiled-dust" not in keys(sander, operation())


def test_a_station_as_loud_as_the_shops_limit_asks_for_ears() -> None:
    assert "hearing-protection" in keys(book_with("bench", noise_db=85.0), operation())
    assert "hearing-protection" not in keys(book_with("bench", noise_db=84.9), operation())


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("eye protection", "eye-protection"),
        ("Eyes.", "eye-protection"),
        ("hearing  protection", "hearing-protection"),
        ("ears", "hearing-protection"),
        ("dust mask", "dust-mask"),
        ("Stay and watch!", "stay-and-watch"),
        ("no gloves", "no-gloves"),
        ("rags", "rags"),
        ("nitrile gloves", "gloves"),
        ("air the room", "air-the-room"),
        ("exhaust and air on", "exhaust-and-air"),
        ("push pad", "hands-clear"),
    ],
)
def test_a_shops_own_words_find_their_entry(words: str, key: str) -> None:
    found = entry_for(words)

    assert found is not None
    assert found.key == key


def test_words_the_catalogue_does_not_know_come_last_as_they_were_written() -> None:
    shown = cautions_for(book_with("bench"), operation("Mind the cat", "eyes", "eye protection", "Mind the cat"))

    assert shown == (ShownCaution("eye-protection", "", ("M004",)), ShownCaution("", "Mind the cat", ()))


@given(st.sampled_from(sorted(STATION_KINDS)), st.lists(st.text(max_size=30), max_size=5), st.booleans())
def test_no_caution_stands_twice_beside_an_operation(kind: str, words: list[str], after_finish: bool) -> None:
    shown = cautions_for(book_with(kind), operation(*words), after_finish)

    assert len({(one.key, one.text) for one in shown}) == len(shown)
    assert all(one.key or one.text in words for one in shown)


def test_a_laser_starts_only_after_its_eight_points() -> None:
    assert start_points(book_with("laser"), operation()) == (
        "start-extinguisher",
        "start-eyewear",
        "start-door",
        "start-guards",
        "start-exhaust",
        "start-bed",
        "start-fresh",
        "start-material",
    )


def test_a_cutter_starts_with_the_work_held_down_and_no_gloves() -> None:
    for kind in ("cnc", "hand cutter"):
        points = start_points(book_with(kind), operation())
        assert {"start-held", "start-no-gloves", "start-small"} <= set(points)


def test_a_bench_has_no_start_list() -> None:
    assert start_points(book_with("bench"), operation()) == ()


def test_an_operation_at_a_station_nobody_knows_asks_for_what_its_words_say() -> None:
    assert [one.key for one in cautions_for(Book(), operation("ears"))] == ["hearing-protection"]
    assert start_points(Book(), operation()) == ()
