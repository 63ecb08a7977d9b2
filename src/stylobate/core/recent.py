"""What takes long to make, kept in memory for the keys asked for last."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

Value = TypeVar("Value")


class Recent(Generic[Value]):
    """Values by key, each made when it is first asked for; the `most` asked for last are kept."""

    def __init__(self, most: int) -> None:
        self._most = most
        self._values: dict[str, Value] = {}

    def of(self, key: str, make: Callable[[], Value]) -> Value:
        """The value of a key. Two threads that ask for a new one at a time may both make it."""
        value = self._values.pop(key, None)
        if value is None:
            value = make()
        self._values[key] = value
        for oldest in list(self._values)[: -self._most]:
            self._values.pop(oldest, None)
        return value
