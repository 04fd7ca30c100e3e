"""The presses that keep something of an answer: a button each, and more than a few of one sort in one form to choose from."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import takewhile

from runboard.plan.before.kind import Keep

# Buttons of one sort that stand below an answer: more are one list.
MOST_BUTTONS = 3


@dataclass(frozen=True)
class Presses:
    """What one form keeps: (key, words) of each press. ``label`` are the words that all of them begin with, '' where there are
    none; the words of each then go on from there."""

    choices: tuple[tuple[str, str], ...]
    label: str = ""


def presses_of(keeps: Sequence[Keep], words: Sequence[str]) -> tuple[Presses, ...]:
    """A form each, in their order; ``words`` are what each press says."""
    of_sort = Counter(each.code for each in keeps)
    forms: dict[tuple[str, bool], list[tuple[str, str]]] = {}
    for each, text in zip(keeps, words, strict=True):
        are_many = of_sort[each.code] > MOST_BUTTONS
        form = (each.code if are_many else each.key, are_many)
        forms.setdefault(form, []).append((each.key, text))
    return tuple(_form(choices) for choices in forms.values())


def _form(choices: Sequence[tuple[str, str]]) -> Presses:
    """A phone shows the beginning of what is chosen: what all of them say alike stands above it."""
    texts = [text.split(" ") for _, text in choices]
    alike = [said[0] for said in takewhile(lambda said: len(set(said)) == 1, zip(*texts, strict=False))]
    if len(choices) == 1 or not alike or any(len(text) == len(alike) for text in texts):
        return Presses(tuple(choices))
    rest = ((key, " ".join(text[len(alike) :])) for (key, _), text in zip(choices, texts, strict=True))
    return Presses(tuple(rest), " ".join(alike))
