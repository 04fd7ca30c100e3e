"""What the dispatch rule's functions are written in means the same translated as it does in Python."""

from array import array
from collections.abc import Callable
from ctypes import CFUNCTYPE, c_int64, c_void_p
from types import FunctionType

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from llvmlite import binding as llvm

from runboard.plan.schedule.kernel.row import Row
from runboard.plan.schedule.kernel.translate import NotForeseen, translated

STEP = 3


def shared(one: int, by: int) -> tuple[int, int, int]:
    if by == 0:
        return -1, one, 0
    return one // 7, one - by, STEP * by


def is_odd(one: int) -> bool:
    return one - 2 * (one // 2) == 1


def a_bit_of_everything(r: Row, many: int) -> None:
    first, _, last = shared(r[0], r[1])
    r[0], r[1] = r[1], r[0]
    r[2] += first if last > STEP and not is_odd(many) else -first
    for at in range(3, many):
        if r[at] < 0:
            continue
        if r[at] == 50:
            break
        if STEP <= r[at] < 9:
            r[at] -= STEP
        else:
            r[at] = max(r[at - 1], min(r[at], 20))
    found = False
    while many > 0:
        many -= 1
        # Behind the row's end is looked at by neither: the first is settled.
        found = found or (many >= 8 and is_odd(r[many])) or many == -1
        if many < 2:
            pass
    r[2] += 1 if found else 0


def machine_code(functions: list[FunctionType], entry: str) -> Callable[[int, int], None]:
    llvm.initialize_native_target()
    llvm.initialize_native_asmprinter()
    machine = llvm.Target.from_default_triple().create_target_machine(opt=0, jit=True)
    engine = llvm.create_mcjit_compiler(llvm.parse_assembly(translated(functions, entry)), machine)
    engine.finalize_object()
    call = CFUNCTYPE(None, c_void_p, c_int64)(engine.get_function_address(entry))
    call.engine = engine
    return call


EVERYTHING = machine_code([shared, is_odd, a_bit_of_everything], "a_bit_of_everything")


@given(st.lists(st.integers(-60, 60), min_size=3, max_size=12))
@settings(deadline=None)
def test_what_is_translated_does_what_python_does(numbers: list[int]):
    plain, row = list(numbers), array("i", numbers)

    a_bit_of_everything(plain, len(plain))
    EVERYTHING(row.buffer_info()[0], len(row))

    assert list(row) == plain


def divides(r: Row, many: int) -> None:
    r[0] = r[1] // many


def calls_out(r: Row, many: int) -> None:
    r[0] = abs(many)


def steps(r: Row, many: int) -> None:
    r[0] = [many][0]


@pytest.mark.parametrize("function", [divides, calls_out, steps])
def test_what_is_not_foreseen_is_refused(function: FunctionType):
    with pytest.raises(NotForeseen):
        translated([function], function.__name__)
