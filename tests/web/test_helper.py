"""A stranger's phone with a tray's card: it comes in, sees one step in its language, and is kept from the rest."""

import json
import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from typing import Any

import pytest
from flask.testing import FlaskClient

from runboard.app import build
from runboard.floor.changing.runs import Wish, close_run, new_event, open_run
from runboard.floor.letting_in.devices import make_code, pair, revoke_device
from runboard.floor.letting_in.guests import guests
from runboard.floor.letting_in.travellers import TravellerLink, read_keys, set_hours, traveller_link
from runboard.floor.letting_in.tries import MOST_FROM_ONE
from runboard.floor.pressing.taps import record_events
from runboard.house import House, Settings
from runboard.run.log.event import write_moment
from runboard.web.door.sessions import COOKIE
from runboard.web.fittings import fitted
from tests.attack.cast import token_of
from tests.attack.matrix import routes
from tests.attack.promises import GUEST, who_may
from tests.attack.sentences import sentence_in
from tests.conftest import HandClock
from tests.fitting import fit
from tests.scenario import shop
from tests.web.test_access import asked_for_the_stream

GERMAN = {"Accept-Language": "de-AT,de;q=0.9,en;q=0.5"}
DE = {
    "name": "Schleifen",
    "instructions": ["Körnung prüfen."],
    "checklist": [],
    "cautions": ["Scheibe flach halten"],
    "checks": [],
}


def told_shop(picture: str = "") -> dict[str, Any]:
    """The small shop, with sanding told to somebody who never saw it."""
    record = shop()
    sand = next(one for one in record["products"][0]["operations"] if one["key"] == "sand")
    steps = [{"text": "Check the grit.", "picture": picture or None}, {"text": "Sand with the grain.", "picture": None}]
    sand.update(instructions=steps, cautions=["keep the disc flat", "rags"], translations={"de": DE})
    return record


@pytest.fixture
def house(tmp_path: Path, clock: HandClock) -> Iterator[House]:
    built = build(Settings(tmp_path, clock))
    built.workshop.books.save(told_shop(), clock.now())
    orders = [{"line": str(number), "pieces": 1, "text": f"No. {number}"} for number in range(1, 31)]
    begun = {"1": "engrave", "4": "sand:120", "5": "sand:120"}
    open_run(built.workshop, Wish("rail", orders, name="Key rails", begun=begun), "ann")
    yield built
    built.close()


def link_of(house: House, tray: str = "4") -> TravellerLink:
    return traveller_link(read_keys(house.store.settings), "r1", tray)


def guest_at(house: House, tray: str = "4", name: str = "Mia") -> FlaskClient:
    """A phone that came by a tray's card."""
    client = house.app.test_client()
    assert client.post(link_of(house, tray).path, data={"name": name}).headers["Location"] == "/helper"
    return client


def lead_of(house: House, access: str = "lead") -> FlaskClient:
    code, _ = make_code(house.door, access)
    token, _ = pair(house.door, code, "Ann's phone", "10.0.0.2")
    client = house.app.test_client()
    client.set_cookie(COOKIE, token)
    return client


def state_of(client: FlaskClient, **headers: str) -> dict[str, Any]:
    answer = client.get("/helper/state", headers=headers)
    assert answer.status_code == 200, answer.text
    found: dict[str, Any] = answer.json or {}
    return found


def show(house: House, person: str, station: str = "sander") -> None:
    record_events(
        house.workshop, [new_event(house.workshop, "shown how", {"person": person}, station=station, person="ann")]
    )


def tap(
    house: House, client: FlaskClient, kind: str, body: dict[str, Any] | None = None, **fields: Any
) -> dict[str, Any]:
    state = state_of(client)
    clock = house.workshop.clock
    assert isinstance(clock, HandClock)
    at = write_moment(clock.forward(seconds=1))
    common = {"id": f"press-{clock.moment.timestamp():.0f}", "kind": kind, "at": at, "person": state["person"]}
    event = {**common, **state["about"], "body": body or {}, "seen": state["seq"], **fields}
    answer = client.post("/taps", json={"device": "x", "taps": [event]})
    assert answer.status_code == 200 and answer.json is not None, answer.text
    found: dict[str, Any] = answer.json["taps"][0]
    return found


def person_there(house: House) -> dict[str, str]:
    """Who is there of those that are in no book, by name."""
    people = house.workshop.ledger.state.people.values()
    return {one.key: one.name for one in people if one.name and one.came_at is not None}


# The language that each text is in


def test_a_text_that_nobody_translated_says_that_it_is_english(house: House) -> None:
    client = guest_at(house)
    client.get("/helper?language=de")

    step = state_of(client)["step"]

    assert (step["name"], step.get("lang")) == ("Schleifen 120", None)
    assert [(one["text"], one.get("lang")) for one in step["instructions"]] == [
        ("Körnung prüfen.", None),
        ("Sand with the grain.", "en"),
    ]
    assert {one["text"]: one.get("lang") for one in step["cautions"]}["Scheibe flach halten."] is None
    assert {one.get("lang") for one in step["cautions"]} == {None}


def test_a_name_that_nobody_translated_is_english_within_a_sentence_in_german(house: House) -> None:
    client = house.app.test_client()

    assert 'Hier helfen: <span lang="en">Engrave</span>' in client.get(link_of(house, "1").path + "?language=de").text
    assert "Hier helfen: Schleifen 120" in client.get(link_of(house).path + "?language=de").text


def test_on_an_english_page_nothing_says_its_language_again(house: House) -> None:
    assert '"lang"' not in json.dumps(state_of(guest_at(house))["step"])
    assert "<span lang" not in house.app.test_client().get(link_of(house).path + "?language=en").text


# Coming in


def test_a_card_says_the_tray_and_its_step_and_asks_a_first_name(house: House) -> None:
    page = house.app.test_client().get(link_of(house).path)

    assert page.status_code == 200
    assert "Tray 4 of Key rails" in page.text and "Your step: Sand 120" in page.text
    assert "<script" not in page.text and '<nav class="screens"' not in page.text
    assert page.headers["Cache-Control"] == "no-store"


def test_a_name_opens_the_session_and_is_in_the_log(house: House) -> None:
    guest_at(house, name="  Mia \n")

    (guest,) = guests(house.workshop, house.door)
    came = house.workshop.ledger.held[-1]
    assert (came.kind, came.get("name"), came.person) == ("person came", "Mia", f"guest-{guest.device.id[:8]}")
    assert came.device == guest.device.id
    assert (guest.device.access, guest.device.run, guest.device.tray) == ("guest", "r1", "4")


def test_without_a_name_nobody_comes_in(house: House) -> None:
    client = house.app.test_client()

    answer = client.post(link_of(house).path, data={"name": " \u200b "})

    assert answer.status_code == 422 and "Write your first name" in answer.text
    assert client.get("/helper").status_code == 401


def test_the_short_code_leads_to_the_card(house: House) -> None:
    client = house.app.test_client()
    link = link_of(house)

    assert client.get("/t").status_code == 200
    answer = client.post("/t", data={"code": link.code.lower().replace("-", " ")})

    assert (answer.status_code, answer.headers["Location"]) == (303, link.path)


@pytest.mark.parametrize("code", ["", "AAAA-AAAA", "é", "x" * 500])
def test_a_wrong_code_opens_nothing(house: House, code: str) -> None:
    answer = house.app.test_client().post("/t", data={"code": code})

    assert answer.status_code == 404 and "not valid" in answer.text


def test_who_guesses_has_to_wait_though_the_next_one_were_right(house: House) -> None:
    client = house.app.test_client()
    for _ in range(MOST_FROM_ONE):
        assert client.get("/t/AAAAAAAAAAAAAAAA").status_code == 404

    answer = client.post("/t", data={"code": link_of(house).code})

    assert answer.status_code == 429 and "Too many wrong codes" in answer.text
    assert client.get(link_of(house).path).status_code == 429


@pytest.mark.parametrize("access", ["lead", "crew"])
def test_a_leads_or_crews_phone_goes_to_trays_instead(house: House, access: str) -> None:
    client = lead_of(house, access)

    for answer in (client.get(link_of(house).path), client.post(link_of(house).path, data={"name": "Ann"})):
        assert (answer.status_code, answer.headers["Location"]) == (303, "/trays?run=r1#tray-4")
    assert list(guests(house.workshop, house.door)) == []
    assert client.get("/helper").status_code == client.get("/helper/state").status_code == 404


def test_coming_again_keeps_the_phones_id_and_another_card_moves_it(house: House) -> None:
    client = guest_at(house)
    (before,) = guests(house.workshop, house.door)
    assert client.get(link_of(house).path).headers["Location"] == "/helper"
    page = client.get(link_of(house, "5").path)
    assert 'value="Mia"' in page.text

    client.post(link_of(house, "5").path, data={"name": "Mia"})

    (after,) = guests(house.workshop, house.door)
    assert (after.device.id, after.device.tray, after.ends_at) == (before.device.id, "5", before.ends_at)
    assert state_of(client)["title"] == "Tray 5"


def test_a_post_from_another_sites_page_lets_nobody_in(house: House) -> None:
    client = house.app.test_client()

    answer = client.post(link_of(house).path, data={"name": "Mia"}, headers={"Origin": "https://shop.example"})

    assert answer.status_code == 403


class SecureWays:
    """A network with a secure door."""

    http_port, https_port, troubles, trusted = 8210, 8443, (), None
    vouched = frozenset({"localhost"})

    def pages(self, scheme: str) -> tuple[str, ...]:
        return ()


def test_the_shops_own_phone_is_shown_the_way_to_where_it_is_known(house: House) -> None:
    path = link_of(house).path
    assert "own phone? Open runboard" not in house.app.test_client().get(path).text

    fit(house, ways=SecureWays())

    assert f'href="https://localhost:8443{path}"' in house.app.test_client().get(path).text


# What the page shows


def test_the_state_is_the_trays_current_step_in_words(house: House) -> None:
    state = state_of(guest_at(house))

    step = state["step"]
    assert (state["title"], state["run"], step["line"], step["name"]) == (
        "Tray 4",
        "Key rails",
        "Step 3 of 7",
        "Sand 120",
    )
    assert (step["place"], step["pieces"]) == ("Sander, Shop", "5 pieces")
    assert [one["text"] for one in step["instructions"]] == ["Check the grit.", "Sand with the grain."]
    cautions = {one["text"]: one["signs"] for one in step["cautions"]}
    assert cautions["Eye protection on."] == ["M004"] and cautions["Keep the disc flat."] == []
    assert "Call 112" in state["emergency"]


def test_nothing_of_another_tray_or_run_is_in_it(house: House) -> None:
    client = guest_at(house)

    text = client.get("/helper/state").text

    assert "No. 1" not in text and "Ann" not in text and "Ben" not in text
    assert set(state_of(client)["about"]) == {"run", "load", "operation", "station", "revision"}


def test_it_speaks_the_phones_language_and_the_routes_own_texts_do_where_they_can(house: House) -> None:
    client = guest_at(house)

    step = state_of(client, **GERMAN)["step"]

    assert (step["line"], step["name"], step["pieces"]) == ("Schritt 3 von 7", "Schleifen 120", "5 Stück")
    assert [one["text"] for one in step["instructions"]] == ["Körnung prüfen.", "Sand with the grain."]
    assert "Scheibe flach halten." in [one["text"] for one in step["cautions"]]


@pytest.mark.parametrize(
    ("language", "words"), [("de", "Vorname"), ("es", "Tu nombre"), ("fr", "Votre prénom"), ("en", "Your first name")]
)
def test_a_language_is_chosen_by_a_link_and_holds(house: House, language: str, words: str) -> None:
    client = house.app.test_client()

    assert words in client.get(f"{link_of(house).path}?language={language}", headers=GERMAN).text

    page = client.get(link_of(house).path, headers=GERMAN)
    assert words in unescape(page.text) and f'<html lang="{language}">' in page.text


def test_another_word_is_no_language(house: House) -> None:
    page = house.app.test_client().get(f"{link_of(house).path}?language=../../etc", headers={"Accept-Language": "pt"})

    assert "Your first name" in page.text and "Set-Cookie" not in page.headers


def test_what_has_not_changed_is_not_sent_again(house: House) -> None:
    client = guest_at(house)
    tag = client.get("/helper/state").headers["ETag"]

    assert client.get("/helper/state", headers={"If-None-Match": tag}).status_code == 304
    assert client.get("/helper/state", headers={"If-None-Match": tag, **GERMAN}).status_code == 200
    show(house, state_of(client)["person"])
    assert client.get("/helper/state", headers={"If-None-Match": tag}).status_code == 200


def test_a_machine_waits_until_the_lead_has_shown_it(house: House) -> None:
    client = guest_at(house)
    state = state_of(client)

    assert state["blocked"] and state["show"]["words"] == "Call the lead to show me"
    assert [one["text"] for one in state["notices"]] == ["Ask the lead to show you: Sander"]
    assert state["show"]["drafts"][0]["body"] == {"why": "help", "note": "Sander"}
    show(house, state["person"])
    assert not state_of(client)["blocked"]


def test_the_step_is_worked_through_by_the_presses_that_the_page_offers(house: House) -> None:
    client = guest_at(house)
    show(house, state_of(client)["person"])

    (start,) = state_of(client)["views"]["none"]["presses"]
    assert tap(house, client, **start["drafts"][0])["answer"] == "accepted"
    state = state_of(client)
    assert state["at"] == "working"
    done = state["views"]["working"]["presses"][0]
    assert done["words"] == "Done: all 5 good"
    assert tap(house, client, **done["drafts"][0])["answer"] == "accepted"

    state = state_of(client)
    assert state["step"]["name"] == "Sand 180"
    assert "Sand 120 is done: 5 good. Take the tray to: Sander, Shop" in [one["text"] for one in state["notices"]]


def test_texts_by_position_show_where_pieces_are_personal_and_start_with_the_load(house: House) -> None:
    client = guest_at(house, "1")
    show(house, state_of(client)["person"], "laser")

    state = state_of(client)

    assert state["step"]["texts"] == [[f"position {at}", f"No. {at}"] for at in range(1, 6)]
    (start,) = state["views"]["none"]["presses"]
    assert tap(house, client, **start["drafts"][0])["answer"] == "accepted"
    assert state_of(client)["step"]["texts"] == state["step"]["texts"]


def test_a_machine_asks_for_its_list_and_then_to_be_looked_at(house: House, clock: HandClock) -> None:
    client = guest_at(house, "1")
    show(house, state_of(client)["person"], "laser")
    tap(house, client, **state_of(client)["views"]["none"]["presses"][0]["drafts"][0])

    run = state_of(client)["views"]["loading"]["presses"][0]
    assert run["do"] == "run" and run["minutes"] == 22
    assert run["points"][0]["text"].startswith(
        "The extinguisher that its manual and the local code ask for is in reach"
    )
    assert len(run["points"]) == len(run["items"]) == 8
    assert tap(house, client, "machine started", {"minutes": 22})["sentence"] == "Tick the start list first."
    tap(house, client, "checklist ticked", {"list": "full", "items": run["items"]})
    assert state_of(client)["views"]["loading"]["presses"][0]["points"] == []
    assert tap(house, client, "machine started", {"minutes": 22})["answer"] == "accepted"

    watch = state_of(client)["watch"]
    assert watch["mine"] and watch["every_ms"] == 120_000 and watch["check"] == 0
    assert watch["sentence"].startswith("Stay and watch. Confirm: no flame")
    assert "not a fire watch" in watch["note"]
    clock.forward(minutes=2)
    assert tap(house, client, "watch checked", {"at_check": 0})["answer"] == "accepted"
    assert state_of(client)["watch"]["check"] == 1


def test_a_tray_that_dries_is_left_where_it_is(house: House, clock: HandClock) -> None:
    client = guest_at(house)
    record = {"good": 5}
    event = new_event(house.workshop, "pieces counted", record, run="r1", tray="4", operation="oil", person="ann")
    record_events(house.workshop, [event])

    state = state_of(client)

    assert state["blocked"] and "Drying until 22:00. Leave it where it is." in [one["text"] for one in state["notices"]]
    clock.forward(hours=12, minutes=1)
    set_hours(house.store.settings, 48)
    assert client.get("/helper/state").status_code == 401  # the hours of this phone were eight


def test_what_the_lead_gave_with_a_look_is_shown_before_it_is_done(house: House) -> None:
    client = guest_at(house)
    person = state_of(client)["person"]
    show(house, person)
    body = {"to": person, "trays": ["4"], "look": True}
    given = new_event(house.workshop, "operation given", body, run="r1", operation="sand:120", person="ann")
    record_events(house.workshop, [given])
    tap(house, client, **state_of(client)["views"]["none"]["presses"][0]["drafts"][0])

    look = state_of(client)["views"]["working"]["presses"][0]
    assert look["words"] == "Show the first piece" and look["drafts"][0]["body"] == {"why": "look"}
    assert tap(house, client, **look["drafts"][0])["answer"] == "accepted"
    assert "(first piece)" in state_of(client)["calls"][0]
    assert [one["words"] for one in state_of(client)["views"]["working"]["presses"]] == ["Put it aside for now"]
    looked = new_event(
        house.workshop, "look given", {"result": "pass"}, run="r1", tray="4", operation="sand:120", person="ann"
    )
    record_events(house.workshop, [looked])
    assert state_of(client)["views"]["working"]["presses"][0]["words"] == "Done: all 5 good"


def test_pictures_of_the_current_step_only(tmp_path: Path, house: House) -> None:
    shelf = fitted(house.app).pictures
    own, other = shelf.keep(b"\xff\xd8\xffown", "jpg"), shelf.keep(b"\xff\xd8\xffother", "jpg")
    house.workshop.books.save(told_shop(own), house.workshop.clock.now())
    open_run(house.workshop, Wish("rail", [{"line": "1", "pieces": 5}], begun={"1": "sand:120"}), "ann")
    client = house.app.test_client()
    client.post(traveller_link(read_keys(house.store.settings), "r2", "1").path, data={"name": "Mia"})

    assert state_of(client)["step"]["instructions"][0]["picture"] == f"/helper/pictures/{own}"
    assert client.get(f"/helper/pictures/{own}").data == b"\xff\xd8\xffown"
    assert client.get(f"/helper/pictures/{other}").status_code == 404
    assert client.get(f"/pictures/{own}").status_code == 403


# What is not theirs


def test_a_guests_phone_reaches_its_own_page_and_nothing_else(house: House) -> None:
    client = guest_at(house)

    for method, address, endpoint in [*routes(house), ("GET", "/nowhere", ""), ("GET", "/stream", "")]:
        if GUEST in (who_may(endpoint, address.removeprefix("/static/") if "static" in endpoint else "") or ()):
            continue
        answer = client.open(address, method=method)

        assert answer.status_code == 403, (method, address)
        assert method == "HEAD" or "only for tray 4" in sentence_in(answer)
        assert "Ann" not in answer.text and "Sand" not in answer.text


def test_a_guests_phone_hears_no_stream(house: House) -> None:
    client = guest_at(house)

    page = asked_for_the_stream(house, f"{COOKIE}={token_of(client)}")

    assert page.status == 403


@pytest.mark.parametrize(
    ("name", "status"),
    [
        ("helper/helper.js", 200),
        ("door/outbox.js", 200),
        ("vendor/lit-html-3.3.3.js", 200),
        ("signs/M004.svg", 200),
        ("now/now.js", 403),
        ("trays/trays.js", 403),
        ("words/en.ftl", 403),
        ("helper/../now/now.js", 403),
    ],
)
def test_the_files_that_its_page_needs_and_no_others(house: House, name: str, status: int) -> None:
    assert guest_at(house).get(f"/static/{name}").status_code == status


def test_every_file_that_the_page_imports_is_one_that_it_may_have(house: House) -> None:
    client = guest_at(house)
    left, seen = ["/static/helper/helper.js"], set()
    while left:
        address = left.pop()
        answer = client.get(address)
        assert answer.status_code == 200, address
        seen.add(address)
        for found in re.findall(r"""from "(\.[^"]+)\"""", answer.text):
            parts = [*address.split("/")[:-1], *found.split("/")]
            while ".." in parts:
                at = parts.index("..")
                del parts[at - 1 : at + 1]
            name = "/".join(one for one in parts if one != ".")
            left += [name] if name not in seen else []
    assert "/static/door/outbox.js" in seen


def test_a_press_for_another_tray_is_refused_in_the_helpers_language(house: House) -> None:
    client = guest_at(house)
    client.get("/helper?language=fr")

    answer = tap(house, client, "load started", load="sand:120/5", tray="5")

    assert answer["answer"] == "refused"
    assert answer["sentence"] == "Ce téléphone ne sert qu'au plateau 4."
    assert "facts" not in answer


# The end


def test_the_lead_shuts_a_phone_out_and_lets_it_in_again(house: House) -> None:
    client, lead = guest_at(house), lead_of(house)
    (guest,) = guests(house.workshop, house.door)
    assert person_there(house) == {f"guest-{guest.device.id[:8]}": "Mia"}
    assert "Mia" in lead.get("/shop").text and "tray 4 of Key rails" in lead.get(f"/helpers/{guest.device.id}").text

    assert lead.post(f"/helpers/{guest.device.id}/revoke").headers["Location"] == "/shop#helpers"

    answer = client.post("/taps", json={"device": "x", "taps": []})
    assert answer.status_code == 401 and answer.json is not None
    assert answer.json["sentence"] == "Your help at this tray has ended. Ask the lead."
    assert "Your help at this tray has ended" in client.get("/helper").text
    assert "was shut out" in client.post(link_of(house).path, data={"name": "Mia"}).text
    assert person_there(house) == {}

    assert lead.post(f"/helpers/{guest.device.id}/again").status_code == 303
    assert state_of(client)["title"] == "Tray 4"
    assert person_there(house) == {f"guest-{guest.device.id[:8]}": "Mia"}


@pytest.mark.parametrize("was", ["lead", "crew", "guest"])
def test_a_phone_that_was_shut_out_comes_in_by_no_card(house: House, was: str) -> None:
    client = guest_at(house) if was == "guest" else lead_of(house, was)
    (device,) = house.door.devices.devices()
    revoke_device(house.door, device.id)

    for tray in ("4", "5"):
        answer = client.post(link_of(house, tray).path, data={"name": "Mia"})
        assert answer.status_code == 422 and "This phone was shut out. Ask the lead." in answer.text
    assert client.get("/helper").status_code == 401
    assert [one.id for one in house.door.devices.devices()] == [device.id]


@pytest.mark.parametrize(("paired_by", "comes_by"), [("https", "http"), ("http", "https")])
def test_a_phone_that_was_shut_out_is_known_at_the_other_address_too(
    house: House, paired_by: str, comes_by: str
) -> None:
    client = house.app.test_client()
    code, _ = make_code(house.door, "crew")
    client.post("/pair", data={"code": code, "name": "Ben"}, base_url=f"{paired_by}://localhost")
    (device,) = house.door.devices.devices()
    revoke_device(house.door, device.id)

    answer = client.post(link_of(house).path, data={"name": "Ben"}, base_url=f"{comes_by}://localhost")

    assert answer.status_code == 422 and "This phone was shut out" in answer.text
    assert len(house.door.devices.devices()) == 1


def test_a_phone_that_is_shut_out_while_it_comes_in_stays_out(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    client = guest_at(house)
    (device,) = house.door.devices.devices()
    looks = house.door.devices.ends

    def shut_out_meanwhile(*asked: object) -> bool:
        revoke_device(house.door, device.id)
        return False

    monkeypatch.setattr("runboard.floor.letting_in.guests.was_revoked", shut_out_meanwhile)
    monkeypatch.setattr("runboard.floor.letting_in.guests.why_over", lambda *asked: "")
    answer = client.post(link_of(house, "5").path, data={"name": "Mia"})
    monkeypatch.undo()

    assert answer.status_code == 422 and "This phone was shut out" in answer.text
    assert client.get("/helper").status_code == 401
    assert list(looks()) == [device.id]


def test_a_card_lets_in_as_many_phones_as_work_at_a_tray(house: House, clock: HandClock) -> None:
    first, *_ = [guest_at(house, name=f"Mia {number}") for number in range(12)]

    late = house.app.test_client().post(link_of(house).path, data={"name": "Tom"}, headers=GERMAN)
    guest_at(house, "5", "Tom")
    assert late.status_code == 422 and "schon genug Telefone. Werkstattleitung fragen." in late.text
    assert first.post(link_of(house).path, data={"name": "Mia"}).status_code == 303

    clock.forward(minutes=61)
    guest_at(house, name="Tom")


def test_a_card_lets_in_so_many_new_phones_an_hour(house: House) -> None:
    came = [house.app.test_client().post(link_of(house).path, data={"name": "Mia"}).status_code]
    for _ in range(40):
        for guest in list(guests(house.workshop, house.door)):
            revoke_device(house.door, guest.device.id)
        came.append(house.app.test_client().post(link_of(house).path, data={"name": "Mia"}).status_code)

    assert came == [303] * 30 + [422] * 11


def test_who_comes_again_and_again_has_to_wait(house: House) -> None:
    client = guest_at(house)

    answers = [client.post(link_of(house, tray).path, data={"name": "Mia"}) for tray in "54545454"]

    assert [one.status_code for one in answers] == [303] * 5 + [422] * 3
    assert len(house.store.log.events()) < 10


def test_a_trays_card_is_revoked_with_everybody_who_came_by_it(house: House) -> None:
    first, second, other = guest_at(house), guest_at(house, name="Tom"), guest_at(house, "5")
    lead, card = lead_of(house), link_of(house)
    device = next(one.device for one in guests(house.workshop, house.door) if one.device.tray == "4")

    lead.post(f"/helpers/{device.id}/cards")

    assert {client.get("/helper/state").status_code for client in (first, second)} == {401}
    assert other.get("/helper/state").status_code == 200
    assert house.app.test_client().get(card.path).status_code == 404
    assert house.app.test_client().get(link_of(house).path).status_code == 200


def test_the_hours_are_over(house: House, clock: HandClock) -> None:
    lead = lead_of(house)
    assert lead.post("/helpers/hours", data={"hours": "2,5"}).status_code == 303
    client = guest_at(house)
    assert "helping until 12:30" in client.get("/helper").text

    clock.forward(hours=2, minutes=31)

    answer = client.get("/helper/state", headers=GERMAN)
    assert answer.status_code == 401 and answer.json is not None
    assert answer.json["sentence"] == "Die Zeit an diesem Kasten ist um. Die Werkstattleitung kann verlängern."
    assert "hours are over" in client.post(link_of(house).path, data={"name": "Mia"}).text
    (guest,) = guests(house.workshop, house.door)
    assert "Let in again for 2.5\u00a0h" in lead.get(f"/helpers/{guest.device.id}").text


def test_using_the_hours_makes_them_no_longer(house: House, clock: HandClock) -> None:
    set_hours(house.store.settings, 72)
    client = guest_at(house)

    for _ in range(7):
        clock.forward(hours=10)
        assert client.get("/helper/state").status_code == 200
    clock.forward(hours=3)

    assert client.get("/helper/state").status_code == 401


@pytest.mark.parametrize("hours", ["", "0", "-1", "x", "nan", "inf", "400"])
def test_hours_that_are_none_are_asked_again(house: House, hours: str) -> None:
    answer = lead_of(house).post("/helpers/hours", data={"hours": hours})

    assert answer.status_code == 422 and "Write a number of hours" in answer.text


def test_it_ends_with_the_run(house: House) -> None:
    client, card = guest_at(house), link_of(house)

    close_run(house.workshop, "r1", "run finished", "ann")

    answer = client.post("/taps", json={"device": "x", "taps": []})
    assert answer.status_code == 401 and answer.json is not None
    assert answer.json["sentence"] == "This run is over. Thank you for your help!"
    assert house.app.test_client().get(card.path).status_code == 410


def test_a_helper_goes_by_their_own_press(house: House) -> None:
    client = guest_at(house)

    answer = client.post("/helper/leave")

    assert answer.status_code == 200 and "Thank you" in answer.text
    assert client.get("/helper").status_code == 401
    assert person_there(house) == {}


def test_crew_does_nothing_with_helpers_phones(house: House) -> None:
    guest_at(house)
    (guest,) = guests(house.workshop, house.door)
    crew = lead_of(house, "crew")

    for address in ("revoke", "again", "cards"):
        assert crew.post(f"/helpers/{guest.device.id}/{address}").status_code == 403
    assert crew.post("/helpers/hours", data={"hours": "1"}).status_code == 403
    assert crew.get(f"/helpers/{guest.device.id}").status_code == 403
    assert "Mia" not in crew.get("/shop").text
