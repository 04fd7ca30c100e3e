"""A friend's answers come in once, for their own run, whole; and a code opens one review until it is over."""

from datetime import timedelta

import pytest

from runboard.floor.changing.answers import (
    ASIDE,
    MOST_KEPT,
    NEW,
    TRIED,
    Taken,
    kept_answers,
    opened_in_file,
    set_answer,
    take_answers,
)
from runboard.floor.letting_in.devices import Door
from runboard.floor.letting_in.friend_codes import (
    MOST_DAYS,
    MOST_OPEN,
    MOST_SHEETS,
    answer_by_code,
    friend_codes,
    make_friend_code,
    open_by_code,
    revoke_friend_code,
)
from runboard.floor.letting_in.tries import MOST_FROM_ONE
from runboard.review.answers import Answer, AnswerSheet
from runboard.run.refusal import Refused
from tests.floor.test_exchange import Shop
from tests.floor.test_travellers import FakeSettings

HOOKS = Answer("hooks", "simplify", "A stop on the jig.", 0.5)


@pytest.fixture
def shop() -> Shop:
    return Shop()


@pytest.fixture
def settings() -> FakeSettings:
    return FakeSettings()


def a_sheet(shop: Shop, *answers: Answer, run: str = "r1", friend: str = "Sam") -> AnswerSheet:
    opened = opened_in_file(shop.workshop.ledger.state.runs[run])
    return AnswerSheet(run, opened, friend, answers or (HOOKS,))


def code_of(refused: pytest.ExceptionInfo[Refused]) -> str:
    return refused.value.code


def test_answers_are_kept_with_the_run_and_no_other(shop: Shop, settings: FakeSettings) -> None:
    taken = take_answers(shop.workshop, settings, "r1", a_sheet(shop))

    kept = kept_answers(settings, "r1")
    assert taken == Taken(1, 0)
    assert [(one.friend, one.operation, one.do, one.saves_minutes, one.state) for one in kept] == [
        ("Sam", "hooks", "simplify", 0.5, NEW)
    ]
    assert kept_answers(settings, "r2") == []


def test_the_same_file_twice_is_known_and_what_became_of_an_answer_stays(shop: Shop, settings: FakeSettings) -> None:
    take_answers(shop.workshop, settings, "r1", a_sheet(shop))
    set_answer(shop.workshop, settings, "r1", kept_answers(settings, "r1")[0].id, ASIDE)

    again = take_answers(shop.workshop, settings, "r1", a_sheet(shop, HOOKS, Answer("cut", "leave", "Fine.")))

    assert again == Taken(1, 1)
    assert [(one.operation, one.state) for one in kept_answers(settings, "r1")] == [("hooks", ASIDE), ("cut", NEW)]


def test_the_same_said_twice_in_one_file_comes_once(shop: Shop, settings: FakeSettings) -> None:
    assert take_answers(shop.workshop, settings, "r1", a_sheet(shop, HOOKS, HOOKS)) == Taken(1, 0)


def test_two_friends_who_say_the_same_are_both_kept(shop: Shop, settings: FakeSettings) -> None:
    for friend in ("Sam", ""):
        take_answers(shop.workshop, settings, "r1", a_sheet(shop, friend=friend))

    assert [one.friend for one in kept_answers(settings, "r1")] == ["Sam", ""]


def test_answers_to_another_run_are_turned_away_by_its_name(shop: Shop, settings: FakeSettings) -> None:
    with pytest.raises(Refused) as why:
        take_answers(shop.workshop, settings, "r1", a_sheet(shop, run="r2"))

    assert (why.value.code, why.value.facts) == (
        "answers other run",
        {"there": shop.workshop.ledger.state.runs["r2"].name},
    )
    assert kept_answers(settings, "r1") == []


def test_a_run_of_another_shop_with_the_same_key_is_another_run(shop: Shop, settings: FakeSettings) -> None:
    with pytest.raises(Refused) as why:
        take_answers(shop.workshop, settings, "r1", AnswerSheet("r1", "2020-01-01T00:00:00Z", "", (HOOKS,)))

    assert code_of(why) == "answers elsewhere"


def test_a_sheet_is_taken_whole_or_not_at_all(shop: Shop, settings: FakeSettings) -> None:
    with pytest.raises(Refused) as why:
        take_answers(shop.workshop, settings, "r1", a_sheet(shop, HOOKS, Answer("polish", "eliminate")))

    assert (code_of(why), why.value.facts) == ("answers step gone", {"operation": "polish"})
    assert kept_answers(settings, "r1") == []


def test_a_sheet_without_an_answer_says_so(shop: Shop, settings: FakeSettings) -> None:
    opened = opened_in_file(shop.workshop.ledger.state.runs["r1"])
    with pytest.raises(Refused) as why:
        take_answers(shop.workshop, settings, "r1", AnswerSheet("r1", opened, "Sam", ()))

    assert code_of(why) == "answers none"


def test_no_more_are_kept_than_can_be_read_and_none_is_lost_for_it(shop: Shop, settings: FakeSettings) -> None:
    many = [Answer("cut", "leave", str(number)) for number in range(MOST_KEPT)]
    take_answers(shop.workshop, settings, "r1", a_sheet(shop, *many))

    with pytest.raises(Refused) as why:
        take_answers(shop.workshop, settings, "r1", a_sheet(shop))

    assert code_of(why) == "answers kept many"
    assert len(kept_answers(settings, "r1")) == MOST_KEPT


def test_an_answer_that_is_not_there_cannot_be_tried(shop: Shop, settings: FakeSettings) -> None:
    with pytest.raises(Refused) as why:
        set_answer(shop.workshop, settings, "r1", "nobody", TRIED)

    assert code_of(why) == "answer unknown"


# by a code


def test_a_code_opens_its_review_and_its_secret_is_kept_nowhere(shop: Shop, settings: FakeSettings) -> None:
    secret, made = make_friend_code(shop.workshop, settings, "r1", 7)

    assert open_by_code(shop.workshop, settings, secret) == made
    assert (made.run, made.names) == ("r1", False)
    assert secret not in str(settings.records)
    assert len(secret) >= 22


def test_a_code_ends_with_its_days(shop: Shop, settings: FakeSettings) -> None:
    secret, _ = make_friend_code(shop.workshop, settings, "r1", 2)
    shop.workshop.clock.pass_(timedelta(days=2) / timedelta(minutes=1))  # type: ignore[attr-defined]

    with pytest.raises(Refused) as why:
        open_by_code(shop.workshop, settings, secret)

    assert code_of(why) == "friend over"


def test_a_code_that_was_taken_back_opens_nothing_at_once_and_another_does(shop: Shop, settings: FakeSettings) -> None:
    secret, made = make_friend_code(shop.workshop, settings, "r1", 7)
    other, _ = make_friend_code(shop.workshop, settings, "r1", 7)

    for _ in range(2):
        revoke_friend_code(shop.workshop, settings, "r1", made.id)

    with pytest.raises(Refused) as why:
        open_by_code(shop.workshop, settings, secret)
    assert code_of(why) == "friend revoked"
    assert open_by_code(shop.workshop, settings, other).run == "r1"


def test_a_code_is_taken_back_from_its_own_run_alone(shop: Shop, settings: FakeSettings) -> None:
    _, made = make_friend_code(shop.workshop, settings, "r1", 7)

    with pytest.raises(Refused) as why:
        revoke_friend_code(shop.workshop, settings, "r2", made.id)

    assert code_of(why) == "friend code unknown"
    assert friend_codes(settings, "r1") == [made]


def test_who_guesses_codes_waits_as_with_pairing(shop: Shop, settings: FakeSettings) -> None:
    door = Door(None, shop.workshop.clock)  # type: ignore[arg-type]
    secret, _ = make_friend_code(shop.workshop, settings, "r1", 7)
    codes = []

    for _ in range(MOST_FROM_ONE + 1):
        with pytest.raises(Refused) as why:
            open_by_code(shop.workshop, settings, "guess", door, "10.0.0.9")
        codes.append(code_of(why))

    assert codes == ["friend unknown"] * MOST_FROM_ONE + ["friend too often"]
    assert open_by_code(shop.workshop, settings, secret, door, "10.0.0.8")


@pytest.mark.parametrize("days", [0, -1, MOST_DAYS + 1])
def test_a_code_is_for_some_days(shop: Shop, settings: FakeSettings, days: int) -> None:
    with pytest.raises(Refused) as why:
        make_friend_code(shop.workshop, settings, "r1", days)

    assert code_of(why) == "friend days"


def test_there_are_so_many_open_codes_and_one_that_is_taken_back_makes_room(shop: Shop, settings: FakeSettings) -> None:
    made = [make_friend_code(shop.workshop, settings, "r1", 7)[1] for _ in range(MOST_OPEN)]
    with pytest.raises(Refused) as why:
        make_friend_code(shop.workshop, settings, "r1", 7)
    assert code_of(why) == "friend codes many"

    revoke_friend_code(shop.workshop, settings, "r1", made[0].id)

    assert make_friend_code(shop.workshop, settings, "r1", 7)


def test_one_code_brings_so_many_sheets(shop: Shop, settings: FakeSettings) -> None:
    _, made = make_friend_code(shop.workshop, settings, "r1", 7)
    for number in range(MOST_SHEETS):
        answer_by_code(shop.workshop, settings, made, a_sheet(shop, Answer("cut", "leave", str(number))))

    with pytest.raises(Refused) as why:
        answer_by_code(shop.workshop, settings, made, a_sheet(shop))

    assert code_of(why) == "friend sheets many"
    assert len(kept_answers(settings, "r1")) == MOST_SHEETS
    assert friend_codes(settings, "r1")[0].sheets == MOST_SHEETS
