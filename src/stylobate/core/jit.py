"""One decorator for compiled loops: cached on disk where a cache can be written, lock-free everywhere."""

from __future__ import annotations

import importlib
import sys
from collections.abc import Callable
from types import ModuleType
from typing import Any, TypeVar, cast

from stylobate.core import process

BLAS = ("scipy", "numba.np.arraymath")
FOR_OTHERS = (("cffi", "numba.core.typing.cffi_utils"), ("yaml", "numba.core.config"))
"""Modules that numba takes where they are to be had, no loop here needs, and cost 0.2 s (SciPy's) or 0.03 s at each
start; and the module of numba's that takes them."""


def _numba_alone() -> ModuleType:
    """numba, kept from loading what no loop here needs."""
    takes = dict([BLAS, *(FOR_OTHERS if process.ours else ())])
    hidden = [name for name in takes if name not in sys.modules]
    for name in hidden:
        sys.modules[name] = cast(ModuleType, None)  # what the import system takes for "not to be had"
    try:
        numba = importlib.import_module("numba")
        for name in hidden:
            importlib.import_module(takes[name])
    finally:
        for name in hidden:
            del sys.modules[name]
    return numba


numba = _numba_alone()

F = TypeVar("F", bound=Callable[..., Any])


def compiled(function: F) -> F:
    """Compile `function` with numba, releasing the interpreter lock.

    Machine code is kept in numba's cache folder; where none can be written (a read-only home) the
    function is compiled anew in each process, which costs seconds but changes no result.
    """
    try:
        return cast(F, _soon_loaded(numba.njit(cache=True, nogil=True, error_model="numpy")(function)))
    except RuntimeError:
        return cast(F, numba.njit(nogil=True, error_model="numpy")(function))


def _soon_loaded(dispatcher: Any) -> Any:
    """The function, its machine code loaded from disk without what numba needs to compile (0.1 s at each start).

    numba calls for that before it looks on disk; when it compiles, it calls for it once more.
    """
    cache: Any = getattr(dispatcher, "_cache", None)

    def load(signature: Any, context: Any) -> Any:
        numba.core.runtime.rtsys.initialize(context)
        with cache._guard_against_spurious_io_errors():
            return cache._load_overload(signature, context)

    if all(hasattr(cache, name) for name in ("_load_overload", "_guard_against_spurious_io_errors")):
        cache.load_overload = load
    return dispatcher
