"""The same rule compiled by numba, kept on disk for the next start, and its records as arrays. Imported only where it is
wanted: importing it raises ImportError where there is no compiler."""

from collections.abc import Callable
from dataclasses import fields, is_dataclass
from operator import attrgetter
from pathlib import Path
from types import FunctionType
from typing import Any, NamedTuple, get_args, get_type_hints

import numba
import numpy
from numba.core import datamodel
from numba.extending import models, register_jitable, register_model

from runboard.plan.schedule.rule.kernel import dispatch, keeping, limits, placing
from runboard.plan.schedule.rule.kernel.records import Shop

# No function asks for memory or divides by what may be nothing.
_OPTIONS: dict[str, Any] = {"_nrt": False, "error_model": "numpy"}
_INSIDE = {**_OPTIONS, "no_cpython_wrapper": True, "no_cfunc_wrapper": True}
_KIND = "rule"


class _Form(NamedTuple):
    """A field of the shop: how a record of it is read, what it is in an array, and how many lists lie about it."""

    get: Callable[[Any], Any]
    dtype: Any
    depth: int


def _form(hint: Any) -> _Form:
    depth = 0
    while get_args(hint):
        (hint,), depth = get_args(hint), depth + 1
    names = [field.name for field in fields(hint)] if is_dataclass(hint) else []
    dtype = numpy.dtype([(name, "i8") for name in names] or "i8", align=True)
    return _Form(attrgetter(*names) if names else int, dtype, depth)


_FORMS = {name: _form(hint) for name, hint in get_type_hints(Shop).items()}


_ARRAY = ("meminfo", "parent", "nitems", "itemsize", "data", "shape", "strides")
_models: Any = datamodel
if _models.default_manager.lookup(numba.types.Array(numba.int64, 1, "C"))._fields != _ARRAY:
    raise ImportError("numba keeps arrays in another way than it did")


class _ShopType(numba.types.Record):
    """The shop as one record that is handed over by its address: arrays handed over one by one take four times as long to
    call, or, with every function put into its callers, three times as long to compile."""

    def __init__(self) -> None:
        found: Any = []
        at = 0
        for name, (_, dtype, depth) in _FORMS.items():
            made = numba.from_dtype(dtype)
            found.append((name, {"type": numba.types.Array(made, depth, "C") if depth else made, "offset": at}))
            at += 8 * (len(_ARRAY) - 2 + 2 * depth) if depth else dtype.itemsize
        super().__init__(found, at, aligned=True)

    @property
    def dtype(self) -> Any:
        return numpy.dtype(("V", self.size))


register_model(_ShopType)(models.RecordModel)


def as_arrays(shop: Shop) -> tuple[Any, Any]:
    """(the same records as arrays, whose names are their class's fields; what the compiled rule is called with)."""
    return bound(Shop._make(_array(values, form) for values, form in zip(shop, _FORMS.values(), strict=True)))


def copied(shop: Any) -> tuple[Any, Any]:
    """The same of other arrays, for a go beside."""
    return bound(Shop._make(array.copy() for array in shop))


def _array(values: Any, form: _Form) -> Any:
    rows = [values] if form.depth == 0 else values
    flat = [form.get(value) for row in rows for value in row] if form.depth == 2 else [form.get(row) for row in rows]
    shape = (len(rows), len(rows[0]) if rows else 0) if form.depth == 2 else (len(rows),)
    array = numpy.array(flat, dtype=form.dtype).reshape(shape)
    found = array.view(numpy.recarray) if form.dtype.names else array
    return found if form.depth else found[0]


def bound(shop: Any) -> tuple[Any, Any]:
    """(the shop, the record of ``_ShopType``): its first words are the go's own, then where each array lies. It is good as
    long as the arrays are."""
    words = list(shop.go.tolist())
    for array in shop[1:]:
        words += (0, 0, array.size, array.itemsize, array.ctypes.data, *array.shape, *array.strides)
    record = numpy.array(words)
    go = record[: len(shop.go)].view(_FORMS["go"].dtype).view(numpy.recarray)[0]
    return shop._replace(go=go), record.view([("words", "i8", len(words))])[0]


def compiled() -> Callable[..., None]:
    """``replicate``, compiled, for a shop as arrays and rows of 64-bit whole numbers.

    Other threads go on while it works, and it may be called from several, each with a shop of its own.
    """
    return keeping.kept(_KIND, Path(__file__).parent, _entry)


def _entry(is_kept: bool) -> Callable[..., None]:
    """A copy of every function, compiled, each after those that it calls."""
    row, rows = numba.int64[::1], numba.int64[:, ::1]
    made: Any = numba.njit(numba.void(_ShopType(), row, rows, row, rows), nogil=True, cache=is_kept, **_OPTIONS)(
        dispatch.replicate
    )
    # Its one form is called as it is: the shop's record is of no type that NumPy could tell.
    entry: Callable[..., None] = made.overloads[made.signatures[0]].entry_point
    return entry


for _module in (limits, placing, dispatch):
    for _one in list(vars(_module).values()):
        if isinstance(_one, FunctionType) and _one.__module__ == _module.__name__ and _one is not dispatch.replicate:
            register_jitable(**_INSIDE)(_one)


def is_kept() -> bool:
    """Whether the rule is there already, so that it need not be compiled."""
    return keeping.is_kept(_KIND, Path(__file__).parent)
