"""One decorator for compiled loops: cached on disk where a cache can be written, lock-free everywhere."""

from __future__ import annotations

import importlib
import sys
from collections.abc import Callable
from types import ModuleType
from typing import Any, TypeVar, cast

BLAS = "scipy.linalg"


def _numba_without_blas() -> ModuleType:
    """numba, kept from loading SciPy's linear algebra: that costs 0.2 s at each start, and no loop here needs it."""
    kept = BLAS not in sys.modules
    if kept:
        sys.modules[BLAS] = cast(ModuleType, None)  # what the import system takes for "not to be had"
    try:
        numba = importlib.import_module("numba")
        importlib.import_module("numba.np.arraymath")
    finally:
        if kept:
            del sys.modules[BLAS]
    return numba


numba = _numba_without_blas()

F = TypeVar("F", bound=Callable[..., Any])


def compiled(function: F) -> F:
    """Compile `function` with numba, releasing the interpreter lock.

    Machine code is kept in numba's cache folder; where none can be written (a read-only home) the
    function is compiled anew in each process, which costs seconds but changes no result.
    """
    try:
        return cast(F, numba.njit(cache=True, nogil=True, error_model="numpy")(function))
    except RuntimeError:
        return cast(F, numba.njit(nogil=True, error_model="numpy")(function))
