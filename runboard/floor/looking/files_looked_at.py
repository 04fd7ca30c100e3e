"""Which files were looked at for which product: the newest of each name, so that a time taken from an older one is known to be old."""

from runboard.floor.workshop import KeptSettings, Workshop
from runboard.plan.before.looked_at import LookedAt
from runboard.shop.hours import local_day

_SETTING = "files_looked_at"
MOST_PRODUCTS, MOST_NAMES = 200, 50


def files_looked_at(settings: KeptSettings) -> LookedAt:
    """All of them."""
    kept = settings.get(_SETTING)
    return LookedAt(
        {product: {name: (said[0], said[1]) for name, said in names.items()} for product, names in kept.items()}
    )


def note_look(workshop: Workshop, settings: KeptSettings, product: str, name: str, digest: str) -> None:
    """Somebody sent a file to be looked at for a product. The ones of longest ago are forgotten where there are very many."""
    with workshop.lock:
        kept = settings.get(_SETTING)
        names = kept.pop(product, {})
        names.pop(name, None)
        day = local_day(workshop.clock.now(), workshop.book.time_zone).isoformat()
        kept[product] = {**dict(list(names.items())[1 - MOST_NAMES :]), name: [digest, day]}
        settings.put(_SETTING, dict(list(kept.items())[-MOST_PRODUCTS:]))
