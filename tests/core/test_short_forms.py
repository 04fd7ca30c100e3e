"""Short forms of steps: read at a glance, and never two alike."""

from hypothesis import given, settings
from hypothesis import strategies as some

from runboard.words.short_forms import Short, short_forms

RAILS = ["Cut", "Clean up", "Sand 120", "Sand 180", "Engrave", "Oil", "Fit hooks", "Inspect and pack"]
STEPS = some.sampled_from(
    [*RAILS, "Sand", "Sand 2.5", "sand 120", "Flatten A", "Flatten B", "Flat A", "Engrave back", "Ölen", "—"]
)


def test_a_step_is_known_again_by_its_short_form() -> None:
    found = short_forms(RAILS)

    assert [found[name].form for name in RAILS] == ["Cut", "Cle", "S120", "S180", "Eng", "Oil", "Fit", "Ins"]
    assert [found[name].letter for name in RAILS] == ["C", "L", "S", "A", "E", "O", "F", "I"]


def test_sides_and_words_that_begin_alike_are_told_apart() -> None:
    found = short_forms(
        ["Flatten A", "Flatten B", "Glue up", "Scrape 120", "Sand 120", "Engrave front", "Engrave back"]
    )

    assert [one.form for one in found.values()] == ["FlaA", "FlaB", "Glue", "S120", "Sa120", "Eng", "EngB"]


def test_the_same_step_of_two_routes_has_one_short_form() -> None:
    assert short_forms(["Cut", "Oil", "Cut"]) == {"Cut": Short("Cut", "C"), "Oil": Short("Oil", "O")}


@settings(max_examples=60)
@given(some.lists(STEPS | some.text(min_size=1, max_size=12), max_size=40))
def test_however_a_route_s_steps_are_called_their_short_forms_differ_and_are_short(names: list[str]) -> None:
    found = short_forms(names)

    assert list(found) == list(dict.fromkeys(names))
    assert len({one.form.casefold() for one in found.values()}) == len(found)
    assert len({one.letter for one in found.values()}) == len(found)
    assert all(0 < len(one.form) <= 17 and one.letter for one in found.values())
