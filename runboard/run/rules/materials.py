"""What may come under a machine that heats: the shop's forbidden list, each entry also by its other names and inside
words, and what nobody knows without its data sheet.

The names are common practice, no source: which plastics give off hydrogen chloride, cyanide or phosgene under a laser is in
the machine's manual and in the material's data sheet, and those win.
"""

from dataclasses import dataclass
from functools import lru_cache

from runboard.shop.finish import plain_words

FORBIDDEN, LOOK, FINE, UNKNOWN = "forbidden", "look", "fine", "unknown"

# Other names of the same thing, in the languages of the shop: whoever forbids one means them all.
SAME = (
    ("pvc", "vinyl", "vinil", "polyvinyl", "chlorid"),
    ("abs", "acrylonitrile", "acrylnitril"),
    ("polycarbonat", "policarbonat"),
    ("epox",),
    (
        "artificial leather", "faux leather", "imitation leather", "fake leather", "synthetic leather", "vegan leather",
        "pu leather", "leatherette", "pleather", "kunstleder", "cuero artificial", "cuero sintetico", "polipiel",
        "similicuir", "cuir synthetique", "simili cuir",
    ),
    (
        "treated wood", "treated", "impregnated", "creosote", "druckimpragniert", "kesseldruck", "impragniert", "tratada",
        "impregnada", "bois traite", "impregne", "autoclave",
    ),
    ("ptfe", "fluoropolymer"),
)  # fmt: skip
# Wood that was treated with heat alone is meant by nobody, nor what is not treated.
NOT_TREATED = (
    "heat treated",
    "thermally treated",
    "thermo treated",
    "not treated",
    "non treated",
    "no tratada",
    "non traite",
)
# Names so short that other words hold them by chance ('tabs'): they stand alone, or in these.
SHORT = {"abs": frozenset(("abs", "pcabs", "abspc", "abskante"))}
# What is bound, glued or coated with nobody knows what: its data sheet is looked at first.
LOOKS = (
    "mdf", "hdf", "chipboard", "particle board", "particleboard", "spanplatte", "osb", "laminate", "laminat", "melamin",
    "resin", "harz", "plastic", "kunststoff", "plastico", "plastique", "foam", "schaum", "rubber", "gummi", "fibreglass",
    "fiberglass", "carbon fib", "composite", "unknown", "unbekannt", "desconocid", "inconnu", "painted", "lackiert",
)  # fmt: skip


@dataclass(frozen=True)
class Verdict:
    """What the shop says of a material under a machine that heats; ``by`` is the entry of its list, or the word."""

    says: str
    by: str = ""


@lru_cache(maxsize=256)  # asked for every load that Now offers and the plan holds, of few materials
def judged(material: str, forbidden: tuple[str, ...]) -> Verdict:
    """FORBIDDEN where the shop's list has it, by this or another name; LOOK where its data sheet has to be read first;
    UNKNOWN where nobody said what it is; else FINE, as far as its name tells."""
    plain = plain_words(material)
    if not plain:
        return Verdict(UNKNOWN)
    for other in NOT_TREATED:
        plain = plain.replace(other, "")
    for entry in forbidden:
        if any(_holds(plain, name) for name in _names(entry)):
            return Verdict(FORBIDDEN, entry)
    return next((Verdict(LOOK, word) for word in LOOKS if _holds(plain, word)), Verdict(FINE))


def _names(entry: str) -> tuple[str, ...]:
    plain = plain_words(entry)
    same = (group for group in SAME if any(_holds(plain, name) for name in group))
    return (*((plain,) if plain else ()), *(name for group in same for name in group))


def _holds(plain: str, name: str) -> bool:
    if name in SHORT:
        return not SHORT[name].isdisjoint(plain.split())
    if name == "treated" or (len(name) <= 3 and name != "pvc"):
        return name in plain.split()
    return name in plain
