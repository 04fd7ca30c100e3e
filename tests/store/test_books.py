"""The shop's book on disk: every save a revision, each as it was saved."""

import sqlite3
from datetime import timedelta

import pytest

from runboard.shop.book import Book
from runboard.shop.book_json import BookError
from runboard.store.books import BookFile
from runboard.store.open import Store
from tests.store.log_contract import NOON


def a_record(name: str = "Ann's shop") -> dict[str, object]:
    return {"runboard_book": 1, "name": name, "time_zone": "Europe/Berlin", "rooms": [{"key": "shop", "name": "Shop"}]}


def test_before_the_first_save_the_book_is_empty(books: BookFile) -> None:
    assert (books.revision(), books.latest()) == (0, Book())


def test_each_save_is_a_revision(books: BookFile) -> None:
    saved = [books.save(a_record(name), NOON).revision for name in ("one", "two")]

    assert saved == [1, 2]
    assert (books.latest().name, books.latest().revision) == ("two", 2)
    assert books.record(1)["name"] == "one"


def test_a_wrong_record_is_not_stored(books: BookFile) -> None:
    with pytest.raises(BookError):
        books.save({**a_record(), "rooms": [{"key": "shop"}]}, NOON)

    assert books.revision() == 0


def test_a_record_saved_is_the_record_read(books: BookFile) -> None:
    books.save(a_record(), NOON)
    first = books.record()

    books.save(first, NOON)

    assert {**books.record(), "revision": 0} == {**first, "revision": 0}


def test_the_latest_book_knows_how_care_was_judged_before(books: BookFile) -> None:
    shop = {**a_record(), "finishes": []}
    oil = {"key": "oil", "name": "Oil", "self_heats": True}
    for hour, finishes in enumerate(([oil], [oil], [{**oil, "self_heats": False}], [])):
        books.save({**shop, "name": f"Shop {hour}", "finishes": finishes}, NOON + timedelta(hours=hour))
    bench = {"key": "bench", "name": "Bench", "kind": "bench", "room": "shop"}
    books.save({**shop, "stations": [bench]}, NOON + timedelta(hours=4))
    books.save({**shop, "stations": [{**bench, "kind": "finishing"}]}, NOON + timedelta(hours=5))

    latest = books.latest()

    assert [until for until, _ in latest.earlier] == [
        NOON + timedelta(hours=5)
    ]  # a book without stations judges nothing
    (bench_then,) = latest.as_of(NOON + timedelta(hours=4, minutes=30)).stations
    assert bench_then.kind == "bench"
    assert latest.as_of(NOON + timedelta(hours=6)) is latest


def test_a_revision_that_is_not_there_is_an_error(books: BookFile) -> None:
    with pytest.raises(KeyError):
        books.record(3)


def test_a_revision_is_never_changed(store: Store) -> None:
    store.books.save(a_record(), NOON)

    with pytest.raises(sqlite3.IntegrityError, match="stays as it was saved"):
        store.connections.here().conn.execute("UPDATE book SET record = '{}'")


def test_a_save_is_a_new_version_of_the_shop(store: Store) -> None:
    before = store.log.version()

    store.books.save(a_record(), NOON)

    assert store.log.version() > before
