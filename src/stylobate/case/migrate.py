"""Older case.json → the present form, one version at a time. The log keeps the hash of each state ever written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from stylobate.case.model import FORMAT, VERSION
from stylobate.core.errors import CaseError

Step = Callable[[dict[str, Any]], dict[str, Any]]


def _second(values: dict[str, Any]) -> dict[str, Any]:
    """Version 2 keeps joins, and each output names the result it was made of: the last that was added before it."""
    results = [(str(entry["time"]), entry["id"]) for entry in values.get("results", [])]

    def named(entry: dict[str, Any]) -> dict[str, Any]:
        before = [identity for time, identity in results if time <= str(entry["time"])]
        return {**entry, "result": before[-1] if before else None}

    return {"joins": [], **values, "outputs": [named(entry) for entry in values.get("outputs", [])]}


STEPS: Mapping[int, Step] = {1: _second}
"""Version n → the function that makes version n + 1 of it. Version 1 is the first."""


def current(values: Any, name: str, version: int = VERSION, steps: Mapping[int, Step] = STEPS) -> dict[str, Any]:
    """`values` of any known version as the present one. Raises CaseError: no case, or from a newer program."""
    if not isinstance(values, dict) or values.get("format") != FORMAT:
        raise CaseError(f"{name}: is not a case; name a folder that 'stylobate case new' made")
    stated = values.get("version")
    if not isinstance(stated, int) or isinstance(stated, bool) or stated < 1:
        raise CaseError(f"{name}: its version is not a number; restore the folder from a copy")
    if stated > version:
        raise CaseError(
            f"{name}: was written by a newer stylobate (version {stated} of the format, known here: {version}); "
            "update this program"
        )
    present: dict[str, Any] = values
    for older in range(stated, version):
        try:
            present = {**steps[older](present), "version": older + 1}
        except (KeyError, TypeError, AttributeError):
            raise CaseError(f"{name}: is damaged; restore the folder from a copy") from None
    return present
