import pytest

from runboard.run.refusal import Refused
from tests.core.pressing import Floor, conserved


def sanded() -> Floor:
    floor = Floor()
    floor.open_run()
    floor.press("load done", run="r1", load="cut/1")
    for tray in "123":
        floor.press("load done", run="r1", load=f"sand:120/{tray}")
    return floor


def test_rework_leaves_as_a_tray_of_its_own_and_may_join_again():
    floor = sanded()
    body = {"to": "1a", "pieces": 1, "to_operation": "clean", "why": "rework"}
    floor.press("pieces moved", body, run="r1", tray="1", operation="sand:180")

    assert floor.run.trays["1a"].at == {"clean": 1}
    floor.press("load done", run="r1", load="clean/1a")
    floor.press("load done", run="r1", load="sand:120/1a")
    back = {"to": "1", "pieces": 1, "to_operation": "sand:180", "why": "merge"}
    floor.press("pieces moved", back, run="r1", tray="1a", operation="sand:180")

    assert floor.run.trays["1"].at == {"sand:180": 5}
    assert floor.run.trays["1a"].in_process == 0
    assert conserved(floor.run)


def test_pieces_never_move_forward_in_the_route():
    floor = sanded()

    with pytest.raises(Refused) as refused:
        floor.press(
            "pieces moved", {"to": "2", "pieces": 1, "to_operation": "oil"}, run="r1", tray="1", operation="sand:180"
        )

    assert refused.value.code == "moves only back"


def test_held_pieces_do_not_block_the_others():
    floor = sanded()
    floor.press("pieces held", {"why": "crack", "pieces": 2}, run="r1", tray="1", operation="sand:180")

    floor.press("load started", run="r1", load="sand:180/1")

    assert floor.run.loads["sand:180/1"].pieces == {"1": 3}
    floor.press("load done", run="r1", load="sand:180/1")
    floor.press("pieces released", run="r1", tray="1", operation="sand:180")
    assert floor.run.trays["1"].free("sand:180") == 2


def test_a_wait_is_asked_about_before_it_is_cut_short():
    floor = sanded()
    floor.press("load done", run="r1", load="oil/1+2", body={"counts": {"1": {"good": 5}, "2": {"good": 5}}})

    with pytest.raises(Refused) as refused:
        floor.press("load started", run="r1", load="hooks/1")
    floor.press("load started", {"early": True}, run="r1", load="hooks/1")

    assert refused.value.code == "still waiting"
    assert floor.run.trays["1"].rests["oil"].early
    assert floor.run.trays["2"].rests["oil"].ended_at is None


def test_a_lost_board_scraps_what_is_not_cut():
    floor = Floor()
    floor.open_run(trays=6)
    floor.press("board lost", {"board": "cut/2", "why": "split"}, run="r1")

    assert sum(tray.scrapped for tray in floor.run.trays.values()) == 15
    assert conserved(floor.run)


def test_a_new_route_that_would_strand_pieces_is_refused():
    floor = sanded()
    product = dict(floor.ledger.arrived["event-00001"].body["product"])
    product["operations"] = [one for one in product["operations"] if one["key"] != "sand"]

    with pytest.raises(Refused) as refused:
        floor.press("route revised", {"product": product, "from_tray": "2"}, run="r1")

    assert refused.value.code == "would strand"


def test_a_new_route_holds_from_a_tray_on():
    floor = sanded()
    product = dict(floor.ledger.arrived["event-00001"].body["product"])
    product["operations"] = [one for one in product["operations"] if one["key"] != "oil"]

    floor.press("route revised", {"product": product, "from_tray": "2"}, run="r1")

    assert [tray.revision for tray in floor.run.trays.values()] == [1, 2, 2]
    assert floor.run.route_of(floor.run.trays["3"]).after("engrave") == "hooks"


def test_a_spoiled_personal_piece_gives_its_text_back():
    from runboard.run.rules.texts import text_queue

    floor = sanded()
    placed = [{"position": at, "line": "1", "text": "12"} for at in range(1, 6)]
    floor.press("load started", {"places": {"1": placed}}, run="r1", load="engrave/1")
    before = len(text_queue(floor.run))

    counts = {"1": {"good": 4, "scrap": [{"pieces": 1, "why": "burnt", "positions": [3]}]}}
    floor.press("load done", {"counts": counts}, run="r1", load="engrave/1")

    assert 3 not in floor.run.trays["1"].places
    assert len(text_queue(floor.run)) == before + 1
