"""Which doubts about a program would stop the machine, spoil the piece or hurt: they stand first. And which leave its time unknown."""

from collections.abc import Iterable

from runboard.plan.program.doubt import Doubt

# Cuts that nobody said how fast: their time is in no total.
WITHOUT_FEED = frozenset({"feed-missing", "feed-missing-g93", "feed-nought"})
# With these no time is to be taken: the machine would not run it, or nobody knows how long.
UNTRUSTED = WITHOUT_FEED | {"beyond-travel"}
GRAVE = UNTRUSTED | {"beyond-stock", "through-stock", "fast-across", "fast-down"}


def is_trusted(doubts: Iterable[Doubt]) -> bool:
    """Whether the time is one to plan with."""
    return not any(doubt.code in UNTRUSTED for doubt in doubts)


def sorted_out(doubts: Iterable[Doubt]) -> tuple[list[tuple[Doubt, int]], list[Doubt]]:
    """The grave ones, of each kind the first with how many more there are, and all others in their order: those more among them."""
    first: dict[str, Doubt] = {}
    more: dict[str, int] = {}
    rest = []
    for doubt in doubts:
        kind = doubt.code + str(doubt.facts.get("axis", ""))
        if doubt.code in GRAVE and kind not in first:
            first[kind], more[kind] = doubt, 0
            continue
        named = doubt.facts["of"] if doubt.code == "more" else kind
        if named in more:
            more[named] += _many(doubt)
        rest.append(doubt)
    return [(doubt, more[kind]) for kind, doubt in first.items()], rest


def _many(doubt: Doubt) -> int:
    return int(doubt.facts["count"]) if doubt.code == "more" else 1
