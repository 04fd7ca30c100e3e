"""A finish known by its words, wherever somebody wrote them down: what they mean for rags and air until a label is typed in.

Common practice, no source: the label of the product in the shop's hand wins. Where words leave it open which finish it is,
and where nobody knows it, the careful reading holds: it heats by itself and gives off solvent.
"""

import re
import unicodedata
from functools import lru_cache

from runboard.shop.finish import UNKNOWN_FINISH, Finish

# (name, heats by itself, gives off solvent, words): the first whose word is found. A word stands alone, with its usual
# endings where it ends in '*'; several words stand side by side.
_KNOWN: tuple[tuple[str, bool, bool, tuple[str, ...]], ...] = (
    ("mineral oil", False, False, ("mineral oil", "mineralol", "aceite mineral", "huile minerale", "paraffin oil")),
    ("soap", False, False, ("soap", "soaping", "soaped", "soap flakes", "seife*", "jabon", "savon")),
    (
        "water-based varnish", True, False,
        (
            "water based", "waterbased", "waterborne", "water borne", "acrylic varnish", "acrylic lacquer", "wasserlack",
            "wasserbasiert*", "acryllack", "al agua", "base de agua", "a l eau", "acrilico", "acrylique",
        ),
    ),
    ("shellac", False, True, ("shellac*", "french polish*", "schellack*", "goma laca", "gomme laque")),
    (
        "drying oil", True, True,
        (
            "linseed*", "flaxseed oil", "tung", "walnut oil", "danish", "teak oil", "hardwax*", "hard wax oil", "hard wax",
            "drying oil", "stand oil", "leinol*", "hartwachs*", "tungol", "nussol", "linaza", "aceite de tung", "aceite danes",
            "aceite de teca", "huile de lin", "huile de tung", "huile danoise", "huile dure", "hempseed oil",
        ),
    ),
    (
        "oil-based varnish", True, True,
        (
            "oil based", "oilbased", "alkyd*", "spar varnish", "wiping varnish", "gel varnish", "wipe on poly", "kunstharzlack",
            "alkydlack", "barniz al aceite", "vernis gras", "oil varnish",
        ),
    ),
    (
        "lacquer", True, True,
        (
            "nitro*", "nitrocellulose", "cellulose lacquer", "spray can", "spray lacquer", "spray*", "rattle can", "spruhlack",
            "spruhdose", "aerosol*", "nitrolack",
        ),
    ),
    ("wax", True, True, ("wax", "waxes", "waxing", "waxed", "beeswax", "wachs*", "cera", "encer*", "cire", "cirer", "cires")),
)  # fmt: skip
# Words that say that a finish is brought on, and not which.
_UNCLEAR = (
    "oil", "oils", "oiling", "oiled", "varnish*", "poly", "polyurethane", "lacquer*", "stain", "stains", "staining",
    "stained", "paint", "paints", "painting", "painted", "topcoat*", "ol", "olen", "einolen", "geolt", "lack", "lackier*",
    "beize*", "aceite", "aceit*", "barniz*", "laca", "lacar", "huile", "huil*", "vernis", "vernir", "laque*", "laquer",
)  # fmt: skip


@lru_cache(maxsize=512)  # asked for every load that Now offers and the plan holds, of few words
def finish_by_words(text: str) -> Finish | None:
    """What the words of a step say that it brings on: a finish without times; ``UNKNOWN_FINISH`` where they leave it open
    which; None where they speak of none."""
    plain = f" {plain_words(text)} "
    for name, heats, solvent, words in _KNOWN:
        if any(_holds(plain, word) for word in words):
            return Finish("", name, self_heats=heats, solvent=solvent)
    return UNKNOWN_FINISH if any(_holds(plain, word) for word in _UNCLEAR) else None


def plain_words(text: str) -> str:
    """The words of a text in small letters without accents, one space between two."""
    bare = "".join(one for one in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(one))
    return re.sub(r"[^a-z]+", " ", bare).strip()


def _holds(plain: str, word: str) -> bool:
    return f" {word[:-1]}" in plain if word.endswith("*") else f" {word} " in plain
