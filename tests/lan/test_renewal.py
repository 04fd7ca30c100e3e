"""Whatever the time and the network do: the leaf that is kept serves, and it is made anew only when it must be."""

from datetime import UTC, date, datetime, timedelta
from ipaddress import IPv4Address
from pathlib import Path
from tempfile import TemporaryDirectory

from cryptography import x509
from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.lan.addresses import Whereabouts
from runboard.lan.authority import Certificates
from runboard.lan.scope import subjects
from runboard.words.sentences import in_words
from tests.lan.places import HOME, NOW, at, said, verify

PLACES = [
    HOME,
    at(),
    at("10.0.0.5"),
    at("192.168.1.20", "10.0.0.5"),
    at("192.168.1.21", host="bench"),
    at("100.64.0.9"),
]
STEPS = st.lists(
    st.tuples(st.timedeltas(timedelta(0), timedelta(days=500)), st.sampled_from(PLACES)), min_size=1, max_size=7
)


@settings(max_examples=60)
@given(STEPS)
def test_the_leaf_serves_at_any_time_in_any_place(steps: list[tuple[timedelta, Whereabouts]]) -> None:
    with TemporaryDirectory() as folder:
        certificates = Certificates(Path(folder))
        now, before = NOW, None
        for passed, where in steps:
            now += passed
            kept = certificates.keep(now, where)
            names, addresses, _ = subjects(kept.authority, where)

            for subject in [*names, *map(str, addresses)]:
                verify(kept.leaf, kept.authority, subject, now)
            assert kept.leaf.not_valid_after_utc - now >= min(
                timedelta(days=30), kept.authority.not_valid_after_utc - now
            )
            assert not certificates.keep(now, where).made
            if before:
                assert kept.authority == before.authority
                same = _subjects(kept.leaf) == _subjects(before.leaf)
                lasted = before.leaf.not_valid_after_utc - now >= timedelta(days=30)
                assert kept.made is not (same and lasted)
            before = kept


@settings(max_examples=40)
@given(st.lists(st.integers(-4000, 3600), min_size=1, max_size=5))
def test_a_clock_that_jumps_about_loses_nothing(days: list[int]) -> None:
    """A computer without a battery wakes up in its own past."""
    with TemporaryDirectory() as folder:
        certificates = Certificates(Path(folder))
        authority = certificates.keep(NOW, HOME).authority
        for day in days:
            certificates.keep(NOW + timedelta(days=day), HOME)

        kept = certificates.keep(NOW, HOME)

        assert kept.authority == authority
        verify(kept.leaf, authority, "shop-pc.local")


def test_a_day_before_thirty_are_left_nothing_is_done_and_a_day_later_it_is(tmp_path: Path) -> None:
    certificates = Certificates(tmp_path)
    ends = certificates.keep(NOW, HOME).leaf.not_valid_after_utc

    assert not certificates.keep(ends - timedelta(days=31), HOME).made
    assert certificates.keep(ends - timedelta(days=29), HOME).made


def test_a_clock_before_the_authority_is_said_and_the_leaf_left_alone(tmp_path: Path) -> None:
    certificates = Certificates(tmp_path)
    certificates.keep(NOW, HOME)

    kept = certificates.keep(datetime(1970, 1, 2, tzinfo=NOW.tzinfo), at("10.1.1.1"))

    assert not kept.made
    assert [said(trouble) for trouble in kept.troubles] == [
        f"This computer's clock says {in_words(date(1970, 1, 2), UTC)}. That is before its certificates were made. Set the clock."
    ]


def test_a_leaf_made_while_the_clock_was_ahead_is_made_again(tmp_path: Path) -> None:
    certificates = Certificates(tmp_path)
    certificates.keep(NOW, HOME)
    certificates.keep(NOW + timedelta(days=3000), HOME)

    assert certificates.keep(NOW, HOME).made


def test_an_authority_that_ends_soon_is_told_long_before(tmp_path: Path) -> None:
    certificates = Certificates(tmp_path)
    ends = certificates.keep(NOW, HOME).authority.not_valid_after_utc

    last = certificates.keep(ends - timedelta(days=10), HOME)

    assert last.leaf.not_valid_after_utc == ends
    assert [said(trouble) for trouble in last.troubles] == [
        f"The shop's certificate authority ends on {in_words(ends.date(), UTC)}. Then every phone has to trust a new one."
    ]


def test_another_order_of_addresses_is_no_change(tmp_path: Path) -> None:
    certificates = Certificates(tmp_path)
    certificates.keep(NOW, at("192.168.1.20", "10.0.0.5"))

    assert not certificates.keep(NOW, at("10.0.0.5", "192.168.1.20")).made


def _subjects(leaf: x509.Certificate) -> set[str | IPv4Address]:
    told = leaf.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    return {*told.get_values_for_type(x509.DNSName), *told.get_values_for_type(x509.IPAddress)}
