"""What a checked file got wrong, in words: the key as people write it, and what stands there against what must."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pydantic_core import ErrorDetails

SHOWN_VALUE = 40


def dotted(place: Sequence[int | str]) -> str:
    """A key for people: sites[2].covariance[1][1]. Entries count from 1."""
    text = ""
    for step in place:
        text += f"[{step + 1}]" if isinstance(step, int) else f"{'.' if text else ''}{step}"
    return text


def must_be(detail: ErrorDetails) -> str:
    """One fault of a value, as pydantic tells it: key, what it must be, and what it is."""
    must = detail["msg"].replace("Input should", "must", 1)
    shown = json.dumps(detail["input"], default=str)
    shown = shown if len(shown) <= SHOWN_VALUE else shown[: SHOWN_VALUE - 1] + "…"
    return f"{dotted(detail['loc'])} {must[:1].lower()}{must[1:]}, not {shown}"
