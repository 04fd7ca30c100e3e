"""The goal that a tray of the demo's key rails takes no more presses than a person has patience for."""

from tests.bench.presses import GOAL, Counted, count, table


def test_a_tray_takes_at_most_eight_presses_from_first_cut_to_packed() -> None:
    counted = count()

    assert counted.trays == ["1", "2", "3"]
    assert all(counted.total(tray) <= GOAL for tray in counted.trays)


def test_hand_work_takes_one_press_a_load_and_a_machine_at_most_four() -> None:
    a_load = loads(count())

    assert a_load["sand:120"] == 1
    assert a_load["pack"] == 1
    assert max(a_load.values()) <= 4


def loads(counted: Counted) -> dict[str, float]:
    """The presses of a whole load at each step; one of one tray in the middle is as good as any."""
    shared = {"engrave": 1, "pack": 1}
    return {
        step: round(share * shared.get(step, 3), 2) for (step, tray), share in counted.a_tray.items() if tray == "2"
    }


def test_the_table_says_the_goal() -> None:
    lines = list(table(count()))

    assert any("goal" in line for line in lines)
    assert any(line.startswith("engrave") for line in lines)
