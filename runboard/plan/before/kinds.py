"""Every kind of question about a run before it starts, in the order in which a page lists them."""

from collections.abc import Mapping

from runboard.plan.before.kind import Kind

_KINDS: tuple[Kind, ...] = ()
KINDS: Mapping[str, Kind] = {kind.name: kind for kind in _KINDS}
