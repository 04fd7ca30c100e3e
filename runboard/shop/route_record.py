"""Products with their routes, written as JSON records; ``route_json`` reads them back to the same."""

from typing import Any

from runboard.shop.book import Check, Operation, Pass, Product, Use, Wait
from runboard.shop.durations import minutes_of
from runboard.shop.instruction import Translation


def product_to_json(product: Product) -> dict[str, Any]:
    """The record of a product, every field written out."""
    return {
        "key": product.key,
        "name": product.name,
        "pieces_a_tray": product.pieces_a_tray,
        "wood": product.wood,
        "picture": product.picture,
        "operations": [operation_to_json(operation) for operation in product.operations],
    }


def operation_to_json(operation: Operation) -> dict[str, Any]:
    """The record of an operation, every field written out."""
    return {
        "key": operation.key,
        "name": operation.name,
        "station": operation.station,
        "attendance": operation.attendance,
        "services": list(operation.services),
        "wait": _wait(operation.wait) if operation.wait else None,
        "checklist": list(operation.checklist),
        "setup_sheet": [list(line) for line in operation.setup_sheet],
        "checks": [_check(check) for check in operation.checks],
        "cautions": list(operation.cautions),
        "skill": operation.skill,
        "uses": [_use(use) for use in operation.uses],
        "personal": operation.personal,
        "good_rate": operation.good_rate,
        "guess": operation.guess,
        "finish": operation.finish,
        "watch_every_minutes": None if operation.watch_every is None else minutes_of(operation.watch_every),
        "instructions": [{"text": one.text, "picture": one.picture} for one in operation.instructions],
        "translations": {language: _translation(one) for language, one in operation.translations.items()},
        "passes": [_pass(one) for one in operation.passes],
    }


def _translation(one: Translation) -> dict[str, Any]:
    lists = ("instructions", "checklist", "cautions", "checks")
    return {"name": one.name, **{name: list(getattr(one, name)) for name in lists}}


def _pass(one: Pass) -> dict[str, Any]:
    return {
        "key": one.key,
        "name": one.name,
        "size": one.size,
        "pieces": one.pieces,
        "setup_minutes": minutes_of(one.setup),
        "loading_minutes": minutes_of(one.loading),
        "machine_minutes": minutes_of(one.machine),
        "unloading_minutes": minutes_of(one.unloading),
        "hand_minutes": minutes_of(one.hand),
    }


def _wait(wait: Wait) -> dict[str, Any]:
    return {
        "why": wait.why,
        "least_minutes": minutes_of(wait.least),
        "latest_minutes": None if wait.latest is None else minutes_of(wait.latest),
        "holds": dict(wait.holds),
    }


def _check(check: Check) -> dict[str, Any]:
    return {
        "key": check.key,
        "text": check.text,
        "per": check.per,
        "nominal": check.nominal,
        "plus": check.plus,
        "minus": check.minus,
    }


def _use(use: Use) -> dict[str, Any]:
    return {"supply": use.supply, "each": use.each, "unit": use.unit}
