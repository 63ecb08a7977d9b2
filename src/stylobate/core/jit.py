"""One decorator for compiled loops: cached on disk where a cache can be written, lock-free everywhere."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar, cast

import numba

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
