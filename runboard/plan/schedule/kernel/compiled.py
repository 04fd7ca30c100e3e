"""The same source, compiled by LLVM when it is first asked for, and kept on disk for the next start.

Where the compiler is not to be had, ``compiled`` answers None, and all goes on with the plain functions, which give the
same plans more slowly.
"""

import hashlib
import os
from collections.abc import Callable, Iterator
from contextlib import suppress
from ctypes import CFUNCTYPE, c_int64, c_void_p
from pathlib import Path
from types import FunctionType, ModuleType
from typing import Any

from runboard.plan.schedule.kernel import (
    attending,
    dispatch,
    front,
    grouping,
    limits,
    moments,
    placing,
    replicate,
)
from runboard.plan.schedule.kernel.row import Row

# In the order in which they build on each other.
_MODULES = (attending, limits, front, placing, moments, grouping, dispatch, replicate)
_ENTRY = replicate.replicate
_DIGEST = hashlib.sha256().digest_size
# How the entry is called: a row is an address.
_CALLED: dict[Any, Any] = {Row: c_void_p, int: c_int64, None: None}


def compiled() -> Callable[..., None] | None:
    """``replicate``, compiled, for rows given as addresses of 32-bit whole numbers; ``None`` without a compiler.

    Other threads go on while it works, and it may be called from several, each with a state of its own.
    """
    try:
        from llvmlite import binding as llvm
    except ImportError:
        return None
    llvm.initialize_native_target()
    llvm.initialize_native_asmprinter()
    features = llvm.get_host_cpu_features().flatten()
    target = llvm.Target.from_default_triple()
    machine = target.create_target_machine(cpu=llvm.get_host_cpu_name(), features=features, opt=2, jit=True)
    engine = llvm.create_mcjit_compiler(llvm.parse_assembly(""), machine)
    engine.add_object_file(llvm.ObjectFileRef.from_data(_object(llvm, machine, features)))
    engine.finalize_object()
    answers, *takes = (_CALLED[hint] for hint in (None, *list(_ENTRY.__annotations__.values())[:-1]))
    called: Any = CFUNCTYPE(answers, *takes)(engine.get_function_address(_ENTRY.__name__))
    called.engine = engine  # holds the machine code for as long as it may be called
    return called  # type: ignore[no-any-return]


def _object(llvm: Any, machine: Any, features: str) -> bytes:
    """The machine code: as it was kept for this source, compiler and processor, or compiled now and kept."""
    kept = _kept_as(f"{llvm.llvm_version_info} {machine.triple} {llvm.get_host_cpu_name()} {features}")
    with suppress(OSError):
        # Its digest comes first: half a file would bring the server down.
        whole = b"" if kept is None else kept.read_bytes()
        if whole and hashlib.sha256(whole[_DIGEST:]).digest() == whole[:_DIGEST]:
            return whole[_DIGEST:]
    made: bytes = _made(llvm, machine)
    with suppress(OSError):  # no folder that can be written to: it is compiled at each start
        if kept is not None:
            kept.parent.mkdir(parents=True, exist_ok=True)
            fresh = kept.with_suffix(f".{os.getpid()}")
            fresh.write_bytes(hashlib.sha256(made).digest() + made)
            fresh.replace(kept)
    return made


def _made(llvm: Any, machine: Any) -> Any:
    from runboard.plan.schedule.kernel.translate import translated

    functions = [function for module in _MODULES for function in _functions(module)]
    code = llvm.parse_assembly(translated(functions, _ENTRY.__name__))
    code.verify()
    # Loops of two or three goes: to unroll them, or to look for more, takes half the time and makes them slower.
    tuning = llvm.create_pipeline_tuning_options(speed_level=1)
    tuning.loop_unrolling = tuning.loop_vectorization = tuning.slp_vectorization = False
    builder = llvm.create_pass_builder(machine, tuning)
    builder.getModulePassManager().run(code, builder)
    return machine.emit_object(code)


def _functions(module: ModuleType) -> Iterator[FunctionType]:
    found = [value for value in vars(module).values() if isinstance(value, FunctionType)]
    return (function for function in found if function.__module__ == module.__name__)


def _kept_as(compiler: str) -> Path | None:
    """The file for the machine code, by a digest of its whole source and of what compiles it; None without a home."""
    digest = hashlib.sha256(compiler.encode())
    for source in sorted(Path(__file__).parent.glob("*.py")):
        digest.update(source.read_bytes())
    try:
        home = Path.home()
    except RuntimeError:  # nobody's home is known
        return None
    return home / ".cache" / "runboard" / f"rule-{digest.hexdigest()[:16]}.o"
