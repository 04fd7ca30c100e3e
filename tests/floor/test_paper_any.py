"""Whatever was pressed before and whatever a card says: it is entered as it says, or refused and nothing is stored."""

from datetime import timedelta
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from runboard.floor.changing.runs import Wish, new_event, open_run
from runboard.floor.pressing.paper import TypedCard, enter_paper, try_paper
from runboard.floor.pressing.paper_rows import CardRow, RowRefused, totals
from runboard.floor.pressing.taps import record_events
from runboard.floor.workshop import Workshop
from runboard.run.refusal import Refused
from tests.floor.fakes import MONDAY, workshop
from tests.scenario import shop

STEPS = ("cut", "clean", "sand:120", "sand:180", "engrave", "oil", "hooks")
KINDS = ("load started", "machine started", "unloading started", "load done", "pieces counted", "load stopped")
ROWS = st.lists(
    st.builds(
        CardRow,
        st.sampled_from(STEPS),
        st.integers(0, 6),
        st.none() | st.integers(0, 3),
        st.just("knot"),
        st.sampled_from(("", "ann", "ben")),
        st.none() | st.integers(0, 300).map(lambda minutes: MONDAY + timedelta(minutes=minutes)),
    ),
    min_size=1,
    max_size=4,
    unique_by=lambda row: row.step,
)


def worked_on(chance: Random, presses: int) -> Workshop:
    """A run of three trays, after so many presses of which many are refused."""
    made = workshop(shop())
    open_run(made, Wish("rail", [{"line": "1", "pieces": 15}], start=15), "ann")
    for _ in range(presses):
        made.clock.pass_(chance.randint(0, 20))
        step, tray, kind = chance.choice(STEPS), chance.choice("123"), chance.choice(KINDS)
        load = chance.choice([f"{step}/{tray}", f"{step}/1+2"]) if step != "cut" else "cut/1"
        fields = {"tray": tray, "operation": step} if kind == "pieces counted" else {"load": load}
        body = {"pieces counted": {"good": chance.randint(0, 5)}, "load stopped": {"why": "slip"}}.get(kind, {})
        try:
            record_events(made, [new_event(made, kind, body, run="r1", person="ann", **fields)])
        except Refused:
            continue
    made.clock.pass_(200)
    return made


@settings(max_examples=60)
@given(st.integers(0, 2**32 - 1).map(Random), st.integers(0, 12), st.sampled_from("123"), ROWS)
def test_a_card_is_entered_as_it_says_or_not_at_all(
    chance: Random, presses: int, tray: str, rows: list[CardRow]
) -> None:
    made = worked_on(chance, presses)
    events, before = made.log.events(), made.ledger.state.runs["r1"].trays[tray]
    paper = TypedCard("r1", tray, rows, "ann", "a" * 32)

    try:
        expected = try_paper(made, paper)
        entered = enter_paper(made, paper)
    except (RowRefused, Refused):
        assert made.log.events() == events
        assert made.ledger.state.runs["r1"].trays[tray] == before
        return

    run = made.ledger.state.runs["r1"]
    after = run.trays[tray]
    assert entered == expected
    assert all(totals(after, row.step)[0] == row.good for row in rows)
    assert all(totals(after, row.step)[1] == row.scrap for row in rows if row.scrap is not None)
    assert sum(one.started for one in run.trays.values()) == sum(
        one.in_process + one.scrapped + one.good for one in run.trays.values()
    )
    assert made.ledger.state.unsettled == {}
    assert {one.basis for one in made.log.events()[len(events) :]} == {"paper"}
