"""Linear algebra on one thread: sites are measured side by side, where its own threads only get in the way."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

from threadpoolctl import threadpool_limits

P = ParamSpec("P")
R = TypeVar("R")


def one_blas_thread(function: Callable[P, R]) -> Callable[P, R]:
    """The function, with BLAS held to one thread while it runs."""

    @wraps(function)
    def held(*args: P.args, **kwargs: P.kwargs) -> R:
        with threadpool_limits(1, "blas"):
            return function(*args, **kwargs)

    return held
