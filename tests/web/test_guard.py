"""Who may ask: this computer only, and no page of another site."""

import pytest
from flask.testing import FlaskClient

from runboard.web.door.guard import is_known_host, is_own_page
from runboard.web.door.ways import HOSTS


@pytest.mark.parametrize("host", ["localhost", "localhost:8210", "127.0.0.1:8210", "127.0.0.1", "[::1]:8210", "[::1]"])
def test_this_computer_is_known_by_its_names(host: str) -> None:
    assert is_known_host(host, HOSTS)


@pytest.mark.parametrize("host", ["", "shop.example", "shop.example:8210", "127.0.0.1.example", "localhost.example:1"])
def test_another_name_for_this_computer_is_turned_away(client: FlaskClient, host: str) -> None:
    answer = client.get("/table.json", headers={"Host": host})

    assert not is_known_host(host, HOSTS)
    assert answer.status_code == 400


@pytest.mark.parametrize(
    ("origin", "site", "own"),
    [
        (None, None, True),
        (None, "same-origin", True),
        (None, "cross-site", False),
        ("http://localhost:8210", "same-origin", True),
        ("http://localhost:9999", "same-site", False),
        ("https://shop.example", "cross-site", False),
        ("null", None, False),
        ("http://[", None, False),
    ],
)
def test_only_a_page_of_this_host_may_write(origin: str | None, site: str | None, own: bool) -> None:
    assert is_own_page(origin, site, "localhost:8210") is own


def test_a_press_from_another_sites_page_is_turned_away_with_a_sentence(client: FlaskClient) -> None:
    answer = client.post("/taps", json={"taps": []}, headers={"Origin": "https://shop.example"})

    assert answer.status_code == 403
    assert answer.json == {
        "sentence": "That came from another site's page, so nothing was done. Open runboard itself and press again."
    }


@pytest.mark.parametrize("address", ["/table.json", "/static/base.css", "/nowhere"])
def test_every_answer_forbids_what_comes_from_elsewhere(client: FlaskClient, address: str) -> None:
    headers = client.get(address).headers

    assert headers["Content-Security-Policy"].startswith("default-src 'self'; ")
    assert "unsafe" not in headers["Content-Security-Policy"]
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "same-origin"
