"""How fast a device may send: nothing is lost, and what one sends costs the others little."""

from datetime import timedelta

import pytest

from runboard.floor.changing.runs import Wish, open_run
from runboard.floor.pressing.access import CREW, GUEST, LEAD
from runboard.floor.pressing.rates import LIMITS, MOST_AT_ONCE, Rates
from runboard.floor.pressing.taps import take_taps
from runboard.run.refusal import Refused
from tests.floor.fakes import MONDAY, workshop
from tests.scenario import shop


def sends(rates: Rates, presses: int, after: float = 0, access: str = LEAD, device: str = "phone") -> int:
    """The seconds that the device has to wait before it may send so many; 0 where it has sent them."""
    try:
        with rates.sending(device, access, presses, MONDAY + timedelta(seconds=after)):
            return 0
    except Refused as refused:
        assert refused.code == "too fast"
        return int(refused.facts["seconds"])


@pytest.mark.parametrize("access", [LEAD, CREW])
def test_a_whole_day_without_a_network_is_sent_at_once(access: str) -> None:
    rates = Rates()

    assert [sends(rates, 100, access=access) for _ in range(20)] == [0] * 20
    assert sends(rates, 100, access=access) == 5
    assert sends(rates, 100, after=5, access=access) == 0


def test_a_guest_sends_less_and_a_long_outbox_gets_in_all_the_same() -> None:
    rates = Rates()

    assert sends(rates, 100, access=GUEST) == 0  # 40 more than at once
    assert sends(rates, 1, access=GUEST) == 21
    assert sends(rates, 100, after=49, access=GUEST) == 1
    assert sends(rates, 100, after=50, access=GUEST) == 0


def test_one_device_takes_nothing_from_another() -> None:
    rates = Rates()
    sends(rates, 2000)

    assert (sends(rates, 1), sends(rates, 1, device="other")) == (1, 0)


def test_a_clock_that_is_set_back_costs_nobody_anything() -> None:
    rates = Rates()
    sends(rates, 1000, after=3600)

    assert sends(rates, 1000) == 0


def test_a_device_sends_few_batches_at_once() -> None:
    rates = Rates()

    with rates.sending("phone", LEAD, 1, MONDAY), rates.sending("phone", LEAD, 1, MONDAY):
        assert MOST_AT_ONCE == 2
        assert (sends(rates, 1), sends(rates, 1, device="other")) == (1, 0)
    assert sends(rates, 1) == 0


def test_what_failed_is_no_longer_being_sent() -> None:
    rates = Rates()
    for _ in range(3):
        with pytest.raises(ValueError), rates.sending("phone", LEAD, 1, MONDAY):
            raise ValueError

    assert sends(rates, 1) == 0


def test_devices_that_are_long_silent_are_forgotten_and_debts_are_not() -> None:
    rates = Rates()
    sends(rates, 2000, access=GUEST, device="guest")
    for number in range(1200):
        sends(rates, 1, device=f"phone-{number}", after=number)

    assert len(rates._left) <= 1001
    assert sends(rates, 1, access=GUEST, device="guest") > 900


def test_too_many_presses_are_not_taken_and_not_refused() -> None:
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 12}]), "ann")
    most = LIMITS[LEAD].burst
    at = made.clock.now().isoformat()
    taps = [
        {"id": f"note-{number:05d}", "kind": "note written", "at": at, "run": "r1", "body": {"text": "dry"}}
        for number in range(most + 1)
    ]
    take_taps(made, {"device": "phone", "taps": taps[:most]})

    with pytest.raises(Refused) as refused:
        take_taps(made, {"device": "phone", "taps": taps[most:]})
    made.clock.pass_(1 / 60)
    (answer,) = take_taps(made, {"device": "phone", "taps": taps[most:]})["taps"]

    assert (refused.value.code, refused.value.facts) == ("too fast", {"seconds": 1})
    assert answer["answer"] == "accepted"
