"""What never comes under a machine that heats is known by its other names and inside words; what nobody knows is asked
about."""

import pytest

from runboard.plan.next_move import moves
from runboard.run.refusal import Refused
from runboard.run.rules.materials import FINE, FORBIDDEN, LOOK, UNKNOWN, judged
from runboard.shop.book import FORBIDDEN as SHOPS
from tests.core.pressing import Floor


@pytest.mark.parametrize(
    ("material", "by"),
    [
        ("PVC", "PVC"),
        ("PVC/ABS", "PVC"),
        ("uPVC", "PVC"),
        ("CPVC pipe", "PVC"),
        ("PVC-U, white", "PVC"),
        ("soft-PVC", "PVC"),
        ("vinyl, black", "PVC"),
        ("Vinylboden", "PVC"),
        ("polyvinyl chloride", "PVC"),
        ("vinilo", "PVC"),
        ("vinyle noir", "PVC"),
        ("ABS", "ABS"),
        ("ABS-Platte", "ABS"),
        ("PC/ABS blend", "ABS"),
        ("abs 2 mm", "ABS"),
        ("faux leather", "artificial leather"),
        ("Faux-Leather, brown", "artificial leather"),
        ("PU leather", "artificial leather"),
        ("Kunstleder", "artificial leather"),
        ("similicuir", "artificial leather"),
        ("polipiel", "artificial leather"),
        ("pressure-treated pine", "treated wood"),
        ("pine, treated", "treated wood"),
        ("Fichte, kesseldruckimprägniert", "treated wood"),
        ("madera tratada", "treated wood"),
        ("bois traité", "treated wood"),
        ("polycarbonate", "polycarbonate"),
        ("Polycarbonat", "polycarbonate"),
        ("policarbonato", "polycarbonate"),
        ("river table (epoxy)", "epoxy"),
        ("Epoxidharz", "epoxy"),
        ("époxy", "epoxy"),
    ],
)
def test_what_is_forbidden_is_known_inside_words_and_by_its_other_names(material: str, by: str) -> None:
    verdict = judged(material, SHOPS)

    assert verdict.says == FORBIDDEN
    assert judged(material, (by,)).says == FORBIDDEN


@pytest.mark.parametrize(
    "material",
    ["ash", "oak, 18 mm", "walnut", "birch plywood", "cast acrylic", "leather, vegetable tanned", "cork", "cardboard",
     "crabs apple", "tabs of maple", "absorbent felt", "slabs of elm", "untreated pine", "madera no tratada", "bois non traité", "heat-treated ash", "Esche", "fresno",
     "frêne", "abstract veneer", "basswood", "slate"],
)  # fmt: skip
def test_what_only_sounds_like_it_is_let_in(material: str) -> None:
    assert judged(material, SHOPS).says == FINE


@pytest.mark.parametrize(
    "material", ["MDF with resin unknown", "MDF", "chipboard", "melamine board", "some plastic", "Kunststoff"]
)
def test_what_is_glued_with_nobody_knows_what_is_looked_at_first(material: str) -> None:
    assert judged(material, SHOPS).says == LOOK


@pytest.mark.parametrize("material", ["", "  ", "-", "?"])
def test_no_material_at_all_is_unknown(material: str) -> None:
    assert judged(material, SHOPS).says == UNKNOWN


def test_the_shops_own_words_are_forbidden_as_they_stand() -> None:
    assert judged("oily teak offcuts", ("oily teak",)).says == FORBIDDEN
    assert judged("teak", ("oily teak",)).says == FINE
    assert judged("PVC", ()).says == FINE


# at the machine


def loaded(wood: str) -> Floor:
    """Tray 1 of a run of this wood stands at the laser, sanded and ready."""
    floor = Floor()
    floor.open_run(wood=wood)
    for step in ("cut", "clean", "sand:120", "sand:180"):
        floor.press("pieces counted", {"good": 5}, run="r1", tray="1", operation=step)
    return floor


def refusal(floor: Floor, kind: str, body: dict[str, object] | None = None) -> str:
    with pytest.raises(Refused) as refused:
        floor.press(kind, body, run="r1", load="engrave/1")
    return refused.value.code


@pytest.mark.parametrize("wood", ["PVC/ABS", "vinyl, black", "pressure-treated pine"])
def test_now_never_offers_to_engrave_what_is_forbidden(wood: str) -> None:
    floor = loaded(wood)

    offered = moves(floor.state, floor.book, "ann", floor.now, 50)

    assert "engrave" not in [one.step for one in offered]
    assert "engrave" in [one.step for one in moves(loaded("ash").state, floor.book, "ann", floor.now, 50)]


def test_a_material_that_is_changed_after_loading_stops_the_start() -> None:
    floor = loaded("ash")
    floor.press("load started", run="r1", load="engrave/1")
    floor.press("wood noted", {"wood": "uPVC"}, run="r1", tray="1")

    assert refusal(floor, "machine started", {"minutes": 20}) == "material forbidden"


def test_nothing_starts_that_nobody_named() -> None:
    floor = loaded("")
    floor.press("load started", run="r1", load="engrave/1")

    assert refusal(floor, "machine started", {"minutes": 20}) == "material unknown"
    floor.press("wood noted", {"wood": "ash"}, run="r1", tray="1")
    floor.press("machine started", {"minutes": 20}, run="r1", load="engrave/1")


def test_what_its_name_does_not_tell_is_looked_at_once_a_run() -> None:
    floor = loaded("MDF with resin unknown")
    floor.press("load started", run="r1", load="engrave/1")

    assert refusal(floor, "machine started", {"minutes": 20}) == "material look"
    looked = {"minutes": 20, "materials": ["MDF with resin unknown"]}
    floor.press("machine started", looked, run="r1", load="engrave/1")
    floor.press("load done", run="r1", load="engrave/1")
    floor.press("load started", {"pieces": {"2": 5}}, run="r1", load="engrave/2")
    floor.press("machine started", {"minutes": 20}, run="r1", load="engrave/2")
