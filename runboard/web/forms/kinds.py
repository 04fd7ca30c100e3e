"""The kinds of questions before a run as a page lists them, by groups."""

from collections.abc import Mapping
from dataclasses import dataclass

from runboard.plan.before.kind import Kind
from runboard.plan.before.kinds import KINDS
from runboard.web.door.pages import said
from runboard.words.sentences import message_name, sentence

# Which kinds stand together in the list; one that stands nowhere here comes last.
GROUPS: Mapping[str, tuple[str, ...]] = {
    "machines": ("program", "engraving", "jig", "feed"),
    "material": ("stock", "lengths", "supplies", "wear", "screw", "fit", "movement"),
    "money": ("price",),
}


@dataclass(frozen=True)
class KindShown:
    """A kind in the list."""

    name: str
    title: str
    about: str


def kinds_shown() -> list[tuple[str, list[KindShown]]]:
    """Every kind with its sentence, by groups; those without a kind are left out."""
    named = {name for names in GROUPS.values() for name in names}
    groups = [*GROUPS.items(), ("other", tuple(name for name in KINDS if name not in named))]
    shown = [(group, [_kind_shown(KINDS[name]) for name in names if name in KINDS]) for group, names in groups]
    return [(said("before-group", group), found) for group, found in shown if found]


def _kind_shown(kind: Kind) -> KindShown:
    return KindShown(kind.name, title_of(kind), sentence(message_name("before-about", kind.name)))


def title_of(kind: Kind) -> str:
    """What a kind of question is called."""
    return said("before-kind", kind.name)
