"""Other things at hand for the pages of a house than those it was built with."""

from dataclasses import replace
from typing import Any

from runboard.house import House
from runboard.web.fittings import fit_out, fitted


def fit(house: House, **others: Any) -> None:
    """Let the pages of a house have these instead."""
    fit_out(house.app, replace(fitted(house.app), **others))
