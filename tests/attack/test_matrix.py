"""Every route by every role and method: what was promised is what comes, and a route without a promise fails."""

from collections.abc import Iterator
from itertools import cycle
from pathlib import Path

import pytest

from runboard.house import House
from tests.attack.cast import Cast, cast, shut_house
from tests.attack.matrix import METHODS, OTHER_SITES, READING, addresses, broken, promised, routes, unpromised
from tests.attack.promises import CREW, GUEST, LEAD, NOBODY, REVOKED, ROLES, SENSOR
from tests.attack.sentences import sentence_in
from tests.conftest import HandClock

OF_THE_SHOP = ("Key rail", "Entry key rails", "Ann", "Dust extraction")


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    with shut_house(tmp_path, clock) as built:
        yield built


@pytest.fixture
def everybody(house: House) -> Cast:
    return cast(house)


def test_every_route_has_a_promise(house: House) -> None:
    assert unpromised(house) == []


def test_a_route_without_a_promise_is_found(house: House) -> None:
    house.app.add_url_rule("/new", "now.new", lambda: "")

    assert unpromised(house) == ["now.new"]


@pytest.mark.parametrize("role", ROLES)
def test_each_route_answers_each_role_as_promised(everybody: Cast, role: str) -> None:
    assert list(broken(everybody, role)) == []


@pytest.mark.parametrize("role", [NOBODY, SENSOR, REVOKED])
def test_a_stranger_is_told_to_pair_and_nothing_of_the_shop(everybody: Cast, role: str) -> None:
    client = everybody.clients[role]

    for route in addresses(everybody.house):
        for method in METHODS:
            if promised(route, role, method) != {401}:
                continue
            answer = client.open(route.address, method=method)

            # A sensor comes as far as a button's address, where its token is another's.
            told = (
                "That token is unknown"
                if (role, method, route.takes.get(method)) == (SENSOR, "POST", "signals.press")
                else "paired"
            )
            assert method == "HEAD" or told in sentence_in(answer) or "Pair this device" in answer.text
            assert not any(word in answer.text for word in OF_THE_SHOP), (method, route.address)


def test_nothing_that_is_not_there_is_told_from_what_is(everybody: Cast) -> None:
    for role in (NOBODY, SENSOR, REVOKED):
        for method in METHODS:
            assert everybody.clients[role].open("/nowhere", method=method).status_code == 401


@pytest.mark.parametrize("role", [GUEST, CREW])
def test_whoever_may_not_is_told_so_in_a_sentence(everybody: Cast, role: str) -> None:
    for route in addresses(everybody.house, everybody.card):
        for method in (set(METHODS) - {"HEAD"}) & route.takes.keys():
            if promised(route, role, method) == {403}:
                answer = everybody.clients[role].open(route.address, method=method)

                assert len(sentence_in(answer)) > 20
                assert role != CREW or "Only a lead's phone" in sentence_in(answer)
                assert role != GUEST or not any(word in answer.text for word in OF_THE_SHOP)


@pytest.mark.parametrize("role", ROLES)
def test_no_route_takes_a_write_from_another_page(everybody: Cast, role: str) -> None:
    origins = cycle(OTHER_SITES)
    for route in addresses(everybody.house, everybody.card):
        for method in set(METHODS) - set(READING):
            # A lead's page could do most, so each of its requests comes from every other site.
            for origin in OTHER_SITES if role == LEAD else [next(origins)]:
                answer = everybody.clients[role].open(route.address, method=method, headers={"Origin": origin})

                assert answer.status_code == 403, (method, route.address, origin)
                assert "another site's page" in sentence_in(answer)


@pytest.mark.parametrize("site", ["cross-site", "same-site"])
def test_no_route_takes_a_write_from_another_site_that_hides_where_it_is(everybody: Cast, site: str) -> None:
    for method, address, _ in routes(everybody.house, everybody.card):
        if method not in READING:
            answer = everybody.clients[LEAD].open(address, method=method, headers={"Sec-Fetch-Site": site})

            assert answer.status_code == 403, (method, address)


@pytest.mark.parametrize("role", ROLES)
def test_no_route_tells_another_sites_script_anything(everybody: Cast, role: str) -> None:
    asked = {"Origin": OTHER_SITES[0], "Access-Control-Request-Method": "POST"}
    for route in addresses(everybody.house, everybody.card):
        for method in READING:
            answer = everybody.clients[role].open(route.address, method=method, headers=asked)

            assert not [name for name, _ in answer.headers if name.startswith("Access-Control")]


@pytest.mark.parametrize("role", ROLES)
def test_no_route_answers_to_another_name(everybody: Cast, role: str) -> None:
    for method, address, _ in routes(everybody.house, everybody.card):
        answer = everybody.clients[role].open(address, method=method, headers={"Host": "shop.example"})

        assert answer.status_code == 400, address


@pytest.mark.parametrize("role", ROLES)
def test_each_answer_has_a_strict_policy(everybody: Cast, role: str) -> None:
    for method, address, _ in routes(everybody.house, everybody.card):
        headers = everybody.clients[role].open(address, method=method).headers
        policy = headers["Content-Security-Policy"]

        assert policy.startswith("default-src 'self'; ")
        assert "unsafe" not in policy and "frame-ancestors 'none'" in policy
        assert headers["X-Content-Type-Options"] == "nosniff"
